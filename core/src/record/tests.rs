//! Nothing of a record is lost, whatever is read, written or merged.

use alloc::string::{String, ToString};
use alloc::vec;
use alloc::vec::Vec;

use proptest::collection::{btree_map, vec as many};
use proptest::prelude::*;
use serde_json::Value;

use super::*;
use crate::examples::EXAMPLES;
use crate::recut::Outlook;
use crate::setup::Entries;

fn read(text: &str) -> Document {
    serde_json::from_str::<Value>(text).map_or(Document::Nothing, Document::from)
}

fn value() -> impl Strategy<Value = Document> {
    let leaf = prop_oneof![
        "\\PC{0,12}".prop_map(Document::Text),
        any::<String>().prop_map(Document::Text),
        any::<i32>().prop_map(|number| Document::Number(number.to_string())),
        Just(Document::Nothing),
    ];
    leaf.prop_recursive(3, 12, 3, |inner| {
        prop_oneof![
            many(inner.clone(), 0..3).prop_map(Document::List),
            btree_map("[a-z]{1,4}", inner, 0..3).prop_map(Document::Group)
        ]
    })
}

/// Few names and values, so that records meet with the same and with different ones.
fn fields() -> impl Strategy<Value = Fields> {
    let known = btree_map(
        prop_oneof![Just("name".to_string()), Just("chuck".to_string()), Just("changed".to_string())],
        prop_oneof![Just("1"), Just("2")].prop_map(|text| Document::Text(text.to_string())),
        0..3,
    );
    (known, btree_map("x[a-c]", value(), 0..2)).prop_map(|(mut known, unknown)| {
        known.extend(unknown);
        known
    })
}

fn record() -> impl Strategy<Value = Record> {
    (fields(), many(fields(), 0..3)).prop_map(|(fields, borings)| {
        let mut record = Record { fields, ..Record::default() };
        for boring in borings {
            record.add_boring(boring);
        }
        record
    })
}

fn records() -> impl Strategy<Value = Records> {
    btree_map("[ab]", record(), 0..3).prop_map(|all| Records(all.into_iter().collect()))
}

fn merged(a: &Records, b: &Records) -> Records {
    let mut both = a.clone();
    both.merge(b.clone());
    both
}

/// Every version of every record's fields, and every boring.
fn all_of(records: &Records) -> Vec<(&String, &Fields)> {
    let mut all = Vec::new();
    for (id, Record { fields, borings, earlier }) in &records.0 {
        all.extend([fields].into_iter().chain(borings).chain(earlier).map(|fields| (id, fields)));
    }
    all
}

proptest! {
    #[test]
    fn what_is_written_can_be_read_by_any_reader_of_json_and_is_the_same(document in value()) {
        prop_assert_eq!(read(&to_text(&document)), document);
    }

    #[test]
    fn records_written_are_read_the_same(records in records()) {
        let again = Records::from_document(&read(&to_text(&records.to_document())));
        prop_assert_eq!(again, Ok((records, vec![])));
    }

    #[test]
    fn a_merge_loses_nothing_and_does_not_ask_who_came_first(a in records(), b in records(), c in records()) {
        let both = merged(&a, &b);
        for whole in all_of(&a).into_iter().chain(all_of(&b)) {
            prop_assert!(all_of(&both).contains(&whole), "{:?} is lost", whole);
        }
        prop_assert_eq!(&both, &merged(&b, &a), "either way round");
        prop_assert_eq!(&merged(&both, &b), &both, "what is there is not added again");
        prop_assert_eq!(merged(&both, &c), merged(&a, &merged(&b, &c)), "in any order");
    }

    #[test]
    fn the_newest_change_holds(mut a in record(), mut b in record()) {
        a.set("name", "older", "2026-03-01T12:00:00.000Z");
        b.set("name", "newer", "2027-03-01T12:00:00.000Z");
        a.merge(b);
        prop_assert_eq!(a.get("name"), "newer");
        prop_assert!(a.earlier.iter().any(|version| text_of(version, "name") == "older"), "the older is kept");
    }

    #[test]
    fn no_import_breaks_anything_and_every_record_is_taken_or_told(listed in many(value(), 0..6)) {
        let mut file = Fields::new();
        file.insert("jaw_records".into(), Document::Number("1".into()));
        file.insert("records".into(), Document::List(listed.clone()));
        let (records, refused) = Records::from_document(&Document::Group(file)).unwrap();
        let taken: usize = records.0.iter().map(|(_, record)| 1 + record.earlier.len()).sum();
        prop_assert!(taken + refused.len() <= listed.len() || !records.0.is_empty(), "none is made up");
        prop_assert!(records.0.len() + refused.len() <= listed.len(), "none is counted twice");
        if records.0.is_empty() {
            prop_assert_eq!(refused.len(), listed.len(), "none vanishes");
        }
    }

    #[test]
    fn a_damaged_file_is_refused_or_read_but_never_misread(records in records(), at in any::<prop::sample::Index>(), with in any::<u8>()) {
        let mut bytes = to_text(&records.to_document()).into_bytes();
        let at = at.index(bytes.len());
        bytes[at] = with;
        let damaged = String::from_utf8_lossy(&bytes).to_string();
        if let Ok((found, refused)) = Records::from_document(&read(&damaged)) {
            prop_assert!(found.0.len() + refused.len() <= records.0.len() + 1, "from {damaged}");
        }
    }
}

#[test]
fn what_is_no_file_of_records_is_refused_in_words() {
    for (text, word) in [
        ("nonsense", "no file"),
        ("[]", "no file"),
        (r#"{"schema": 1}"#, "no file"),
        (r#"{"jaw_records": 2, "records": []}"#, "newer"),
        (r#"{"jaw_records": "1", "records": []}"#, "newer"),
        (r#"{"jaw_records": 1}"#, "no list"),
    ] {
        let refused = Records::from_document(&read(text)).unwrap_err();
        assert!(refused.contains(word), "{text} is refused: {refused}");
    }
}

#[test]
fn a_record_that_cannot_be_kept_whole_is_told_by_name_and_the_others_are_taken() {
    let long = "x".repeat(LONGEST_TEXT + 1);
    let text = alloc::format!(
        r#"{{"jaw_records": 1, "records": [
            {{"id": "a", "name": "Whole", "colour": {{"of": ["paint"]}}}},
            {{"id": "b", "name": "Flag", "ready": true}},
            {{"name": "Nameless"}}, 7, {{"id": "c", "borings": 3}}, {{"id": "d", "name": "Long", "notes": "{long}"}}]}}"#
    );
    let (records, refused) = Records::from_document(&read(&text)).unwrap();
    let which: Vec<_> = refused.iter().map(|refused| refused.which.as_str()).collect();
    assert_eq!(which, ["Flag", "Nameless", "Number 4", "Number 5", "Long"], "each is told");
    let written = to_text(&records.to_document());
    assert!(written.contains(r#""colour":{"of":["paint"]}"#), "what this page does not know is kept: {written}");
}

fn bored(entries: &Entries, diameter: &str, tooth: &str) -> Record {
    let mut record = Record::default();
    record.set("tooth", tooth, "2026-03-01T12:00:00.000Z");
    record.set("link", &entries.to_link(), "2026-03-01T12:00:00.000Z");
    let mut boring = Fields::new();
    put(&mut boring, "date", "2026-03-01");
    put(&mut boring, "diameter", diameter);
    record.add_boring(boring);
    record
}

#[test]
fn jaws_on_size_are_used_again_on_the_same_chuck_and_tooth_only() {
    let mut present = Entries::from_json(EXAMPLES[0].json).unwrap();
    present.set("grip.side", "outside");
    present.set("jaws.bored_diameter", "3.950 in");
    present.set("stroke.tooth", "4");
    let answer = |record: &Record, present: &Entries| reuse(record, present).unwrap();
    assert!(answer(&bored(&present, "3.950 in", "4"), &present).as_they_are(), "same chuck, same tooth, on size");
    assert!(!answer(&bored(&present, "3.950 in", "5"), &present).as_they_are(), "another tooth");

    let small = answer(&bored(&present, "3.935 in", "4"), &present);
    // Trade check: jaws at 3.935 in for a bore of 3.950 in leave 0.0075 in per side.
    assert!((small.stock / 0.0254 - 0.0075).abs() < 1e-9, "stock {} in; tolerance: rounding", small.stock / 0.0254);
    assert!(!small.as_they_are() && small.outlook == Outlook::Enough, "to be recut, and it cleans up");
    let large = answer(&bored(&present, "3.960 in", "4"), &present);
    assert_eq!(large.outlook, Outlook::TooLarge, "nothing can be bored");

    let record = bored(&present, "3.950 in", "4");
    let mut other = present.clone();
    other.set("chuck.body_diameter", "301 mm");
    assert!(answer(&record, &other).other_chuck && !answer(&record, &other).as_they_are(), "another chuck");
    assert_eq!(reuse(&bored(&present, "wide", "4"), &present), None, "what cannot be read is not judged");
    assert_eq!(reuse(&Record::default(), &present), None, "nor jaws that were never bored");
}
