//! Tables of the page as CSV (RFC 4180): units stand in the header, or beside the value where each line has its own.

use holdround_core::findings::{Finding, Tooth};
use holdround_core::quantity::{Kind, decimal, parse_number};
use holdround_core::text::Text;
use holdround_core::{Comparison, ROWS, Window};

use super::window::sense;
use super::{mark, steps};
use crate::language::{said, say};
use crate::page::desk::Desk;
use crate::units::Units;

/// The tables there are, each with its key and name.
pub(crate) const TABLES: [(&str, &str); 4] =
    [("findings", "all findings"), ("jaws", "other jaws"), ("window", "limits of the window"), ("teeth", "teeth")];

/// Decimals beyond those customary for a unit, for whoever reckons on with a figure.
const FINER: usize = 3;

/// A table in lines of cells, the header first.
type Lines = Vec<Vec<String>>;

/// The table `key` as CSV text; none while there is nothing in it.
pub(crate) fn table(key: &str, desk: &Desk, comparison: Option<&Comparison>) -> Option<String> {
    let (units, (_, found)) = (desk.units, desk.good.as_ref()?);
    let lines = match key {
        "findings" => findings(&found.findings, units),
        "jaws" => jaws(comparison?, units),
        "window" => window(desk.window()?, units),
        _ => teeth(&found.scene.placing.as_ref()?.teeth, units),
    };
    Some(written(&lines))
}

/// Lines as RFC 4180 has them, opened by the mark that tells spreadsheets the letters are UTF-8.
fn written(lines: &Lines) -> String {
    let mut text = String::from('\u{feff}');
    for line in lines {
        for (at, cell) in line.iter().enumerate() {
            if at > 0 {
                text.push(',');
            }
            text.push_str(&quoted(cell));
        }
        text.push_str("\r\n");
    }
    text
}

/// A cell, in quotes where it needs them. What a spreadsheet would take for a formula is marked as text.
fn quoted(cell: &str) -> String {
    let formula = cell.starts_with(['=', '+', '-', '@', '\t', '\r']) && parse_number(cell).is_err();
    let cell = if formula { format!("'{cell}") } else { cell.to_owned() };
    if cell.contains([',', '"', '\r', '\n']) { format!("\"{}\"", cell.replace('"', "\"\"")) } else { cell }
}

/// A number of a unit that is told elsewhere.
fn number(units: Units, kind: Kind, si: f64) -> String {
    let unit = units.unit(kind);
    decimal(unit.from_si(si), unit.decimals + FINER)
}

/// A column's name with its unit.
fn header(name: &str, units: Units, kind: Kind) -> String {
    match units.unit(kind).symbol {
        "" => say(name).to_owned(),
        symbol => format!("{}, {symbol}", say(name)),
    }
}

fn cells<const N: usize>(cells: [&str; N]) -> Vec<String> {
    cells.map(|cell| say(cell).to_owned()).into()
}

fn findings(findings: &[Finding], units: Units) -> Lines {
    let one = |finding: &Finding| {
        let show = |si: f64| number(units, finding.kind, si);
        let band = finding.band.map(|(least, most)| [show(least), show(most)]).unwrap_or_default();
        let limit = finding.limit.as_ref();
        let sense = limit.map_or("", |limit| steps::sense(limit.sense));
        let [least, most] = band;
        vec![
            said(&finding.name),
            finding.value.as_ref().map_or_else(|_| String::new(), |value| show(*value)),
            units.unit(finding.kind).symbol.to_owned(),
            least,
            most,
            sense.to_owned(),
            limit.map_or_else(String::new, |limit| show(limit.value)),
            limit.map_or_else(String::new, |limit| said(&limit.origin)),
            mark::word(finding).to_owned(),
            finding.value.as_ref().err().or(finding.caution.as_ref()).map(said).unwrap_or_default(),
        ]
    };
    let header =
        cells(["Finding", "Value", "Unit", "From", "To", "Allowed", "Limit", "Limit from", "Stands", "To be heeded"]);
    [header].into_iter().chain(findings.iter().map(one)).collect()
}

fn jaws(comparison: &Comparison, units: Units) -> Lines {
    let done = comparison.done();
    let name = |differs: &Text| if differs.is_empty() { say("As set").to_owned() } else { said(differs) };
    let names = done.iter().map(|one| name(&one.choice.differs));
    let mut lines = vec![[say("Line").to_owned()].into_iter().chain(names).collect()];
    for row in &ROWS {
        let values = done.iter().map(|one| one.value(row).map_or_else(String::new, |si| number(units, row.kind, si)));
        lines.push([header(row.name, units, row.kind)].into_iter().chain(values).collect());
    }
    lines
}

fn window(window: &Window, units: Units) -> Lines {
    let mut lines = vec![vec![
        say("Limit").to_owned(),
        say("Pressure is to be").to_owned(),
        header("Speed", units, Kind::RotationalSpeed),
        header("Pressure", units, Kind::Pressure),
    ]];
    for boundary in &window.boundaries {
        let sense = sense(boundary.keep());
        lines.extend(boundary.points().into_iter().map(|[speed, pressure]| {
            vec![
                said(&boundary.name),
                sense.to_owned(),
                number(units, Kind::RotationalSpeed, speed),
                number(units, Kind::Pressure, pressure),
            ]
        }));
    }
    lines
}

fn teeth(teeth: &[Tooth], units: Units) -> Lines {
    let length = |name| header(name, units, Kind::Length);
    let mut lines = vec![vec![
        say("Tooth").to_owned(),
        length("Bored at, in the stroke"),
        length("Metal left at the screws"),
        length("Clearance for loading"),
        say("Against it").to_owned(),
    ]];
    for tooth in teeth {
        let show = |si| number(units, Kind::Length, si);
        let against = tooth.faults.iter().map(|fault| say(fault)).collect::<Vec<_>>().join(" ");
        lines.push(vec![
            tooth.tooth.to_string(),
            show(tooth.bored_at),
            show(tooth.wall),
            show(tooth.clearance),
            against,
        ]);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use holdround_core::setup::Entries;

    #[test]
    fn cells_are_quoted_as_rfc_4180_has_it() {
        let lines = vec![cells(["a", "b, c", "d \"e\"", "two\nlines", ""]), cells(["-1.5", "=1+1", "-2 x", "+", "@"])];
        // RFC 4180, section 2, rules 1, 5, 6 and 7.
        let wanted = "\u{feff}a,\"b, c\",\"d \"\"e\"\"\",\"two\nlines\",\r\n-1.5,'=1+1,'-2 x,'+,'@\r\n";
        assert_eq!(written(&lines), wanted, "quotes, line ends, and no formula");
    }

    #[test]
    fn every_finding_is_a_line_with_as_many_cells_as_the_header() {
        let desk = Desk::worked_out(Entries::default());
        let found = &desk.good.as_ref().unwrap().1.findings;
        let lines = findings(found, desk.units);
        assert_eq!(lines.len(), found.len() + 1, "a line each, and the header");
        assert!(lines.iter().all(|line| line.len() == lines[0].len()), "{lines:?}");
        let speed = lines.iter().find(|line| line[2] == "rev/min").expect("a speed");
        assert!(parse_number(&speed[1]).is_ok(), "its value is a number alone: {speed:?}");
    }

    #[test]
    fn units_stand_in_the_header_and_numbers_alone_below() {
        let desk = Desk::worked_out(Entries::default());
        let tooth =
            Tooth { tooth: 4, bored_at: 0.003, step: 0.0, wall: 0.0125, clearance: -0.001, faults: vec!["Too near."] };
        let lines = teeth(&[tooth], desk.units);
        assert_eq!(lines[0][2], "Metal left at the screws, mm", "the unit stands in the header");
        assert_eq!(lines[1], cells(["4", "3", "12.5", "-1", "Too near."]), "in millimetres");
        assert_eq!(table("jaws", &desk, None), None, "nothing was compared");
    }
}
