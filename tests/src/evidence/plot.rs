//! Plots of one number against another, both axes by powers of ten.

use maud::{Markup, html};

use super::figure::number;

/// One row of points.
pub(super) struct Series {
    pub(super) name: &'static str,
    /// Across and up, both above zero.
    pub(super) points: Vec<[f64; 2]>,
}

/// The power by which the second number grows with the first, by least squares through the logarithms.
#[must_use]
pub fn power(points: &[[f64; 2]]) -> f64 {
    let points: Vec<[f64; 2]> = points.iter().map(|point| point.map(libm::log)).collect();
    let mean = |axis: usize| points.iter().map(|point| point[axis]).sum::<f64>() / points.len() as f64;
    let [x, y] = [mean(0), mean(1)];
    let above: f64 = points.iter().map(|point| (point[0] - x) * (point[1] - y)).sum();
    let below: f64 = points.iter().map(|point| (point[0] - x) * (point[0] - x)).sum();
    above / below
}

const SIZE: [f64; 2] = [640.0, 400.0];
const MARGIN: f64 = 80.0;

/// Room for every point, from a whole power of ten to another upward.
struct Frame {
    x: [f64; 2],
    y: [f64; 2],
}

impl Frame {
    fn around(series: &[Series]) -> Self {
        let bounds = |axis: usize| {
            let values = series.iter().flat_map(|one| &one.points).map(move |point| libm::log10(point[axis]));
            values.fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], value| [low.min(value), high.max(value)])
        };
        let [x, y] = [bounds(0), bounds(1)];
        Self { x, y: [y[0].floor(), y[1].ceil()] }
    }

    fn place(&self, point: [f64; 2]) -> [f64; 2] {
        let along = |value: f64, [low, high]: [f64; 2]| (libm::log10(value) - low) / (high - low);
        let [wide, tall] = SIZE.map(|size| size - 2.0 * MARGIN);
        [MARGIN + wide * along(point[0], self.x), MARGIN + tall * (1.0 - along(point[1], self.y))]
    }
}

/// The drawing; its figures stand in a table beside it, which the label names.
pub(super) fn draw(label: &str, [across, up]: [&str; 2], series: &[Series]) -> Markup {
    let frame = Frame::around(series);
    let [left, right] = [frame.x[0], frame.x[1]].map(|power| libm::pow(10.0, power));
    let rules: Vec<i32> = (frame.y[0] as i32..=frame.y[1] as i32).collect();
    html! {
        svg.plot viewBox=(format!("0 0 {} {}", SIZE[0], SIZE[1])) role="img" aria-label=(label) {
            @for power in rules {
                @let [x, y] = frame.place([left, libm::pow(10.0, f64::from(power))]);
                @let [end, _] = frame.place([right, 1.0]);
                line.rule x1=(at(x)) y1=(at(y)) x2=(at(end)) y2=(at(y)) {}
                text.value x=(at(x - 8.0)) y=(at(y + 5.0)) text-anchor="end" { "1e" (power) }
            }
            @for (place, one) in series.iter().enumerate() {
                @let places: Vec<[f64; 2]> = one.points.iter().map(|point| frame.place(*point)).collect();
                polyline.curve points=(places.iter().map(|[x, y]| format!("{},{}", at(*x), at(*y))).collect::<Vec<_>>().join(" ")) {}
                @for [x, y] in &places { (mark(place, *x, *y)) }
                @let [x, y] = [SIZE[0] - MARGIN, 24.0 + 22.0 * place as f64];
                (mark(place, x, y - 5.0))
                text x=(at(x - 14.0)) y=(at(y)) text-anchor="end" { (one.name) }
            }
            @for point in series.iter().take(1).flat_map(|one| &one.points) {
                @let [x, _] = frame.place(*point);
                text.value x=(at(x)) y=(at(SIZE[1] - MARGIN + 24.0)) text-anchor="middle" { (number(point[0])) }
            }
            text x=(at(SIZE[0] / 2.0)) y=(at(SIZE[1] - 12.0)) text-anchor="middle" { (across) }
            text x=(at(MARGIN)) y="24" { (up) }
        }
    }
}

/// A sign of its own for every series: not told apart by ink.
fn mark(number: usize, x: f64, y: f64) -> Markup {
    let path = match number % 3 {
        0 => format!("M{} {}h10v10h-10z", at(x - 5.0), at(y - 5.0)),
        1 => format!("M{} {}l6 10h-12z", at(x), at(y - 6.0)),
        _ => format!("M{} {}l6 6l-6 6l-6 -6z", at(x), at(y - 6.0)),
    };
    html! { path.mark d=(path) {} }
}

fn at(value: f64) -> String {
    format!("{value:.1}")
}
