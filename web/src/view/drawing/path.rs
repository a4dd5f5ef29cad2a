//! Points in view units and the paths through them; x to the right, y down, the axis at the origin.

/// A point in view units.
pub(in crate::view) type Point = (f64, f64);

/// Beyond this a coordinate is far outside any sheet, and is held here.
pub(super) const FARTHEST: f64 = 1e5;

/// A coordinate as an attribute: two decimals, always a number.
pub(in crate::view) fn coordinate(value: f64) -> String {
    let mut written = String::new();
    put(&mut written, value);
    written
}

/// The same, added to `data`. A drawing has thousands, with every frame that moves: digits by hand take a fifth of
/// the time that formatting takes.
fn put(data: &mut String, value: f64) {
    const PLACES: usize = 2;
    let value = held(value, -FARTHEST, FARTHEST);
    let mut rest = (value.abs() * 100.0 + 0.5) as u32;
    if value < 0.0 && rest > 0 {
        data.push('-');
    }
    let mut digits = [b'0'; 10];
    let mut most = 0;
    for (place, digit) in digits.iter_mut().enumerate() {
        *digit += (rest % 10) as u8;
        rest /= 10;
        if *digit != b'0' {
            most = place;
        }
    }
    let least = digits.iter().position(|digit| *digit != b'0').unwrap_or(PLACES).min(PLACES);
    for place in (least..=most.max(PLACES)).rev() {
        data.push(char::from(digits[place]));
        if place == PLACES && least < PLACES {
            data.push('.');
        }
    }
}

/// `value` between two bounds; what is not a number is held nearest zero.
pub(super) fn held(value: f64, least: f64, most: f64) -> f64 {
    if value.is_nan() { held(0.0, least, most) } else { value.max(least).min(most) }
}

/// The point at `radius` and `angle` clockwise from straight up.
pub(in crate::view) fn polar(radius: f64, angle: f64) -> Point {
    (radius * libm::sin(angle), -radius * libm::cos(angle))
}

/// Points along an arc about the axis, close enough together to look round.
pub(in crate::view) fn arc(radius: f64, from: f64, to: f64) -> Vec<Point> {
    const STEP: f64 = 0.06;
    let steps = ((to - from).abs() / STEP).ceil().clamp(1.0, 120.0);
    (0..=steps as usize).map(|at| polar(radius, from + (to - from) * at as f64 / steps)).collect()
}

/// Path data through `points`.
pub(in crate::view) fn open(points: &[Point]) -> String {
    let mut data = String::with_capacity(16 * points.len() + 1);
    for (at, (x, y)) in points.iter().enumerate() {
        data.push(if at == 0 { 'M' } else { 'L' });
        put(&mut data, *x);
        data.push(' ');
        put(&mut data, *y);
    }
    data
}

/// Path data around `points`.
pub(in crate::view) fn closed(points: &[Point]) -> String {
    open(points) + "Z"
}

/// Points of a freehand break line (ISO 128-2, line 01.1 freehand) from one point to another.
pub(in crate::view) fn wavy(from: Point, to: Point) -> Vec<Point> {
    const WAVE: f64 = 26.0;
    const DEPTH: f64 = 2.5;
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let length = (dx * dx + dy * dy).sqrt().max(1e-6);
    let steps = (length / WAVE * 8.0).ceil().clamp(2.0, 200.0);
    (0..=steps as usize)
        .map(|at| {
            let share = at as f64 / steps;
            let aside = DEPTH * libm::sin(share * length / WAVE * core::f64::consts::TAU);
            (from.0 + dx * share - dy / length * aside, from.1 + dy * share + dx / length * aside)
        })
        .collect()
}
