//! The program as word-address text after ISO 6983-1: only G0, G1 and G97, S, M3 or M4, M5 and M30.
//!
//! Words that mean different things on different controls are left out: units, absolute sizes, diameters on X and
//! feed per revolution are for the user to set, and the heading says so.

use alloc::format;
use alloc::string::{String, ToString};

use super::plan::{Plan, Purpose};
use crate::text::{Language, Text};

/// What stands around the moves.
#[derive(Clone, Copy, Debug)]
pub struct Heading<'a> {
    /// Whether sizes are in inches; else in millimetres.
    pub inch: bool,
    /// Whether the spindle turns backward (M4).
    pub backward: bool,
    /// Spindle speed, revolutions per minute.
    pub speed: u32,
    /// Program number; only its digits are written, and none if there are none.
    pub number: &'a str,
    /// The user's own name for it.
    pub name: &'a str,
    /// What is assumed and what to heed, a line each.
    pub notes: &'a [Text],
    /// The language of the comments.
    pub language: Language,
}

/// Longest comment, so that it fits the screen of a control: our own value.
const LONGEST: usize = 60;

/// Decimals of sizes: 0.001 mm, or 0.00001 in so that rounding stays below a thousandth of a millimetre.
///
/// ```
/// use holdround_core::program::decimals;
/// assert_eq!([false, true].map(decimals), [3, 5]);
/// ```
#[must_use]
pub const fn decimals(inch: bool) -> u32 {
    if inch { 5 } else { 3 }
}

/// Writes the program.
///
/// ```
/// # use holdround_core::{grip::Side, program::{Cutting, Heading, JawCut, Plan, Tool, text}, text::ENGLISH};
/// # let cut = JawCut {
/// #     side: Side::Outside, diameter: 0.1, taper: 0.0, depth: 0.02, chamfer: 0.0,
/// #     relief: [0.0; 2], standing: 0.0996, inner: 0.08, skim: 0.0, skim_width: 5e-3,
/// # };
/// # let tool = Tool { nose: 0.4e-3, behind: 0.5, bar: 0.02, reach: 0.06, holder: 0.04 };
/// # let cutting = Cutting { depth: 1e-3, allowance: 0.2e-3, rough_feed: 0.15e-3, finish_feed: 0.08e-3, start: 0.05 };
/// let plan = Plan::new(&cut, &tool, &cutting)?;
/// let heading = Heading { inch: false, backward: false, speed: 400, number: "12", name: "sleeve (1)", notes: &[], language: ENGLISH };
/// let text = text(&plan, &heading);
/// assert!(text.starts_with("%\nO0012\n(SLEEVE 1)\n"), "no bracket of the user's breaks out: {text}");
/// assert!(text.contains("G97 S400 M3\n") && text.ends_with("M30\n%\n"));
/// assert!(text.contains("G1 Z-20. F0.08\n"));
/// # Ok::<(), holdround_core::program::PlanError>(())
/// ```
#[must_use]
pub fn text(plan: &Plan, heading: &Heading<'_>) -> String {
    let unit = if heading.inch { 0.0254 } else { 1e-3 };
    let places = decimals(heading.inch);
    let mut out = String::from("%\n");
    let digits: String = heading.number.chars().filter(char::is_ascii_digit).take(4).collect();
    if !digits.is_empty() {
        out.push('O');
        out.extend(core::iter::repeat_n('0', 4 - digits.len()));
        out.push_str(&digits);
        out.push('\n');
    }
    if !heading.name.trim().is_empty() {
        comment(heading.name, &mut out);
    }
    for note in heading.notes {
        comment(&note.said_in(heading.language), &mut out);
    }
    let mut block = Blocks { out, number: 0 };
    let turn = if heading.backward { "M4" } else { "M3" };
    block.write(&format!("G97 S{} {turn}", heading.speed));
    let mut at: [Option<i64>; 2] = [None, None];
    let mut feed = 0;
    let mut purpose = None;
    for step in &plan.moves {
        let between = matches!(step.purpose, Purpose::Approach | Purpose::Retract);
        if !between && purpose != Some(step.purpose) {
            comment((heading.language.words)(step.purpose.words()), &mut block.out);
        }
        purpose = if between { purpose } else { Some(step.purpose) };
        let to = [counts(step.x / unit, places), counts(step.z / unit, places)];
        let [x, z] = [word('X', to[0], places), word('Z', to[1], places)];
        if at[1].is_none() {
            // Where the tool comes from is not known: along the axis first, then across.
            block.write(&format!("G0 {z}"));
            block.write(&format!("G0 {x}"));
            at = to.map(Some);
            continue;
        }
        let moved = [at[0] != Some(to[0]), at[1] != Some(to[1])];
        at = to.map(Some);
        if moved == [false, false] {
            continue;
        }
        let mut line = String::from(if step.feed > 0.0 { "G1" } else { "G0" });
        for (size, moved) in [(x, moved[0]), (z, moved[1])] {
            if moved {
                line.push(' ');
                line.push_str(&size);
            }
        }
        let asked = counts(step.feed / unit, FEED_PLACES);
        if step.feed > 0.0 && asked != feed {
            feed = asked;
            line.push(' ');
            line.push_str(&word('F', feed, FEED_PLACES));
        }
        block.write(&line);
    }
    block.write("M5");
    block.write("M30");
    block.out.push_str("%\n");
    block.out
}

/// Decimals of feeds.
const FEED_PLACES: u32 = 4;

/// Numbered blocks.
struct Blocks {
    out: String,
    number: u32,
}

impl Blocks {
    fn write(&mut self, words: &str) {
        self.number += 10;
        self.out.push_str(&format!("N{} ", self.number));
        self.out.push_str(words);
        self.out.push('\n');
    }
}

/// `value` in steps of the last decimal.
fn counts(value: f64, places: u32) -> i64 {
    libm::round(value * f64::from(10_u32.pow(places))) as i64
}

/// A word with its decimal point, without closing zeros: a control that reads whole numbers as counts sees the point.
fn word(letter: char, counts: i64, places: u32) -> String {
    let one = 10_u64.pow(places);
    let size = counts.unsigned_abs();
    let sign = if counts < 0 { "-" } else { "" };
    let whole = size / one;
    let rest = (size % one + one).to_string();
    let rest = rest.get(1..).unwrap_or_default().trim_end_matches('0');
    format!("{letter}{sign}{whole}.{rest}")
}

/// A comment of plain capitals, which is all that every control can show; nothing in `says` can end it, and long ones
/// go on in another.
fn comment(says: &str, out: &mut String) {
    let plain = |c: char| match c.to_ascii_uppercase() {
        c if c.is_ascii_uppercase() || c.is_ascii_digit() => Some(c),
        c if matches!(c, ' ' | '.' | ',' | '-' | '+' | '/' | '=' | ':') => Some(c),
        '(' | ')' | '’' | '\'' => None,
        c if c.is_whitespace() => Some(' '),
        _ => Some('?'),
    };
    let mut text = String::new();
    for c in says.chars() {
        match c {
            'ä' | 'Ä' => text.push_str("AE"),
            'ö' | 'Ö' => text.push_str("OE"),
            'ü' | 'Ü' => text.push_str("UE"),
            'ß' => text.push_str("SS"),
            c => text.extend(plain(c)),
        }
    }
    let mut line = String::new();
    for part in text.split(' ').filter(|part| !part.is_empty()) {
        if !line.is_empty() && line.len() + 1 + part.len() > LONGEST {
            out.push_str(&format!("({line})\n"));
            line.clear();
        }
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(part);
    }
    out.push_str(&format!("({line})\n"));
}
