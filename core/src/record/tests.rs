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
use crate::setup::{Entries, Setup};

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
    let name = prop_oneof![Just("name"), Just("date"), Just(CHANGED), Just(DELETED)].prop_map(str::to_string);
    let known =
        btree_map(name, prop_oneof![Just("1"), Just("2")].prop_map(|text| Document::Text(text.to_string())), 0..4);
    (known, btree_map("x[a-c]", value(), 0..2)).prop_map(|(mut known, unknown)| {
        known.extend(unknown);
        known
    })
}

const PICTURE: &str = "data:image/jpeg;base64,/9j/4AAQ";

/// A photo is what it was when it was taken, or deleted.
fn photo() -> impl Strategy<Value = Record> {
    any::<bool>().prop_map(|deleted| {
        let mut photo = Record::default();
        photo.set(IMAGE, PICTURE, "1");
        if deleted {
            photo.delete();
        }
        photo
    })
}

fn these(one: impl Strategy<Value = Record>) -> impl Strategy<Value = Records> {
    btree_map("[ab]", one, 0..3).prop_map(|all| Records(all.into_iter().collect()))
}

fn record() -> impl Strategy<Value = Record> {
    let boring = fields().prop_map(|fields| Record { fields, ..Record::default() });
    (fields(), these(boring), these(photo())).prop_map(|(fields, borings, photos)| Record {
        fields,
        borings,
        photos,
        earlier: Vec::new(),
    })
}

fn records() -> impl Strategy<Value = Records> {
    these(record())
}

fn merged(a: &Records, b: &Records) -> Records {
    let mut both = a.clone();
    both.merge(b.clone());
    both
}

/// Every version of every record, boring and photo, each with where it is; pictures of the living apart.
fn all_of(records: &Records, at: &str) -> Vec<(String, Fields)> {
    let mut all = Vec::new();
    for (id, record) in &records.0 {
        let at = alloc::format!("{at}/{id}");
        for version in [&record.fields].into_iter().chain(&record.earlier) {
            let mut version = version.clone();
            without_image(&mut version);
            all.push((at.clone(), version));
        }
        all.extend(all_of(&record.borings, &(at.clone() + "/bored")));
        all.extend(all_of(&record.photos, &(at + "/photo")));
    }
    all
}

/// Pictures of photos that are not deleted, by id.
fn pictures(records: &Records) -> Vec<(&str, &str, &str)> {
    let mut all = Vec::new();
    for (id, record) in &records.0 {
        for (photo, taken) in record.photos.that_are(false) {
            all.push((id.as_str(), photo.as_str(), taken.get(IMAGE)));
        }
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
        for whole in all_of(&a, "").into_iter().chain(all_of(&b, "")) {
            prop_assert!(all_of(&both, "").contains(&whole), "{:?} is lost", whole);
        }
        for (id, photo, picture) in pictures(&both) {
            prop_assert_eq!(picture, PICTURE, "the picture of {} {}", id, photo);
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
    fn what_is_deleted_is_not_brought_back_by_what_was_there_before(mut a in records()) {
        let mut old = Vec::new();
        for round in 0..3 {
            old.push(a.clone());
            for (_, record) in &mut a.0 {
                record.set("name", &round.to_string(), "0");
                record.borings.0.iter_mut().for_each(|(_, boring)| boring.set("date", &round.to_string(), "0"));
            }
        }
        for (_, record) in &mut a.0 {
            record.borings.0.iter_mut().for_each(|(_, boring)| boring.delete());
            record.delete();
        }
        for old in old {
            a.merge(old);
            for (id, record) in &a.0 {
                prop_assert!(record.is_deleted(), "{} is back", id);
                prop_assert!(record.bored().is_empty(), "a boring of {} is back: {:?}", id, record);
            }
        }
    }

    #[test]
    fn every_change_is_newer_than_what_it_changes(stamp in any::<String>(), now in any::<String>()) {
        let mut record = Record::default();
        put(&mut record.fields, CHANGED, &stamp);
        record.touch(&now);
        prop_assert!(record.get(CHANGED) > stamp.as_str(), "{:?} after {:?}", record.get(CHANGED), stamp);
    }

    #[test]
    fn a_version_of_fields_is_told_from_every_other(a in fields(), b in fields()) {
        let one = |fields: &Fields| {
            let mut records = Records::default();
            records.put("a".into(), Record { fields: fields.clone(), ..Record::default() });
            records
        };
        let both = merged(&one(&a), &one(&b));
        prop_assert_eq!(both.0[0].1.earlier.len(), usize::from(a != b), "{:?}", both);
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
        (r#"{"jaw_records": 3, "records": []}"#, "newer"),
        (r#"{"jaw_records": "2", "records": []}"#, "newer"),
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
    let which: Vec<_> = refused.iter().map(|refused| refused.which.to_string()).collect();
    assert_eq!(which, ["Flag", "Nameless", "Number 4", "Number 5", "Long"], "each is told");
    let written = to_text(&records.to_document());
    assert!(written.contains(r#""colour":{"of":["paint"]}"#), "what this page does not know is kept: {written}");
}

fn bored(entries: &Entries, diameter: &str, tooth: &str) -> Record {
    let mut record = Record::default();
    record.set("tooth", tooth, "2026-03-01T12:00:00.000Z");
    record.set("link", &entries.to_link(), "2026-03-01T12:00:00.000Z");
    let mut boring = Record::default();
    boring.set("date", "2026-03-01", "2026-03-01T12:00:00.000Z");
    boring.set("diameter", diameter, "2026-03-01T12:00:00.000Z");
    boring.set("pressure", "1.5 MPa", "2026-03-01T12:00:00.000Z");
    record.borings.put("b".into(), boring);
    record
}

#[test]
fn jaws_on_size_are_used_again_on_the_same_chuck_and_tooth_only() {
    let mut present = Entries::from_json(EXAMPLES[0].json).unwrap();
    present.set("grip.side", "outside");
    present.set("jaws.bored_diameter", "3.950 in");
    present.set("stroke.tooth", "4");
    let answer = |record: &Record, present: &Entries| reuse(record, present).unwrap();
    assert!(answer(&bored(&present, "3.950 in", "4"), &present).as_they_are, "same chuck, same tooth, on size");
    assert!(!answer(&bored(&present, "3.950 in", "5"), &present).as_they_are, "another tooth");

    let small = answer(&bored(&present, "3.935 in", "4"), &present);
    // Trade check: jaws at 3.935 in for a bore of 3.950 in leave 0.0075 in per side.
    assert!((small.stock / 0.0254 - 0.0075).abs() < 1e-9, "stock {} in; tolerance: rounding", small.stock / 0.0254);
    assert!(!small.as_they_are && small.outlook == Outlook::Enough, "to be recut, and it cleans up");
    let large = answer(&bored(&present, "3.960 in", "4"), &present);
    assert_eq!(large.outlook, Outlook::TooLarge, "nothing can be bored");

    let record = bored(&present, "3.950 in", "4");
    present.set("run.pressure", "1.5 MPa");
    assert!(!answer(&record, &present).other_pressure, "under the pressure they were bored with");
    present.set("run.pressure", "250 psi");
    assert!(answer(&record, &present).other_pressure, "1.72 MPa is another");
    let mut inside = present.clone();
    inside.set("grip.side", "inside");
    let turned = reuse(&record, &inside);
    assert!(turned.is_none_or(|turned| turned.other_side && !turned.as_they_are), "bored for the other side");
    let mut assumed = present.clone();
    assumed.unset("chuck.body_diameter");
    present.set("chuck.body_diameter", "210 mm");
    assert!(!answer(&bored(&present, "3.950 in", "4"), &assumed).other_chuck, "assumed or typed, the same chuck");
    let mut other = present.clone();
    other.set("chuck.body_diameter", "301 mm");
    assert!(answer(&record, &other).other_chuck && !answer(&record, &other).as_they_are, "another chuck");
    assert_eq!(reuse(&bored(&present, "wide", "4"), &present), None, "what cannot be read is not judged");
    assert_eq!(reuse(&Record::default(), &present), None, "nor jaws that were never bored");
}

#[test]
fn a_job_says_of_jaws_what_their_record_said_once_it_is_answered_and_asks_before() {
    let mut present = Entries::from_json(EXAMPLES[0].json).unwrap();
    present.set("grip.side", "outside");
    present.set("jaws.bored_diameter", "3.950 in");
    // Measured on other jaws, that came before these.
    present.set("recut.runout", "0.4 mm");
    present.set("recut.damage", "1 mm");
    present.set("recut.as_before", "no");
    for (diameter, fits) in [("3.950 in", true), ("3.9504 in", true), ("3.935 in", false), ("3.960 in", false)] {
        let mut record = bored(&present, diameter, "4");
        record.borings.get_mut("b").unwrap().set("taper", "12 µm", "2026-03-01T12:00:00.000Z");
        let says = reuse(&record, &present).unwrap();
        assert_eq!(says.as_they_are, fits, "{diameter}: {says:?}");
        let job = |answer| {
            let setup = Setup::read(&record.taken_over(&present, answer)).unwrap();
            let findings = crate::evaluate(&setup);
            let asked = findings.get(crate::QUESTION).is_some();
            let judged = findings.get("recut.stock").is_some_and(|stock| stock.limit.is_some());
            (setup.reuses_jaws(), asked, judged)
        };
        assert_eq!(job(None), if fits { (None, true, false) } else { (Some(false), false, true) }, "{diameter}: asked");
        assert_eq!(job(Some(true)), (Some(fits), false, !fits), "{diameter}: mounted as before");
        assert_eq!(job(Some(false)), (Some(false), false, true), "{diameter}: or not");
        let back = record.taken_over(&present, Some(true));
        assert_eq!(back.get("jaws.taper"), Some("12 µm"), "they grip with the taper they have");
        assert_eq!(back.get("jaws.boring_pressure"), Some("1.5 MPa"), "and as they were pressed");
    }
    let mut record = bored(&present, "3.950 in", "4");
    record.borings.get_mut("b").unwrap().set("pressure", "as ever", "2026-03-01T12:00:00.000Z");
    assert!(reuse(&record, &present).unwrap().as_they_are, "words for a pressure are no fault of the job");
}

fn at(day: &str) -> String {
    alloc::format!("2027-03-{day}T12:00:00.000Z")
}

fn single(record: &Record) -> Records {
    let mut records = Records::default();
    records.put("a".into(), record.clone());
    records
}

#[test]
fn an_edit_against_a_delete_is_told_and_nothing_is_lost() {
    let mut old = Record::default();
    old.set("name", "Sleeve jaws", &at("01"));
    let mut boring = Record::default();
    boring.set("date", "2027-03-01", &at("01"));
    boring.set("diameter", "80 mm", &at("01"));
    old.borings.put("b".into(), boring);
    let mut deleted = old.clone();
    deleted.borings.get_mut("b").unwrap().delete();
    let mut edited = old.clone();
    edited.borings.get_mut("b").unwrap().set("diameter", "80.02 mm", &at("05"));
    edited.touch(&at("05"));

    let mut here = single(&deleted);
    let report = here.merge(single(&old));
    let name = |diameter: &str| {
        Text::of("{}: {}")
            .with(Text::typed("Sleeve jaws"))
            .with(Text::typed(alloc::format!("2027-03-01 {diameter} mm")))
    };
    assert_eq!(report.fates, [(Fate::StaysDeleted, name("80"))], "an older file does not bring it back");
    assert!(here.0[0].1.bored().is_empty(), "{here:?}");
    let report = here.merge(single(&edited));
    assert_eq!(report.fates, [(Fate::Back, name("80.02"))], "what was not seen is back");
    assert_eq!(here.0[0].1.last_boring().unwrap().get("diameter"), "80.02 mm", "as it was changed");
    let mut there = single(&edited);
    assert_eq!(there.merge(single(&deleted)).fates[0].0, Fate::StaysHere, "the other way round it stays");
    assert_eq!(single(&old).merge(single(&deleted)).fates, [(Fate::Gone, name("80"))], "unchanged it goes");

    let mut gone = old.clone();
    gone.delete();
    let mut bored_since = old.clone();
    bored_since.borings.put("c".into(), Record::default());
    bored_since.touch(&at("07"));
    let mut both = single(&gone);
    assert_eq!(
        both.merge(single(&bored_since)).fates[0].0,
        Fate::Back,
        "a boring added elsewhere brings the jaws back"
    );
    assert_eq!(both.0[0].1.borings.0.len(), 2, "with both borings");
}

#[test]
fn a_file_of_the_first_version_is_read_twice_as_once_and_its_borings_can_be_changed() {
    let text = r#"{"jaw_records": 1, "records": [{"id": "a", "name": "Old", "changed": "2026-01-01T00:00:00.000Z",
        "borings": [{"date": "2026-01-01", "diameter": "80 mm"}, {"date": "2025-01-01", "diameter": "79 mm"}]}]}"#;
    let old = || Records::from_document(&read(text)).unwrap().0;
    let mut records = old();
    assert_eq!(records.merge(old()), Report { same: 1, ..Report::default() }, "nothing new");
    let record = &mut records.0[0].1;
    assert_eq!(record.last_boring().unwrap().get("diameter"), "80 mm", "the last by date");
    let ids: Vec<String> = record.bored().iter().map(|(id, _)| id.to_string()).collect();
    record.borings.get_mut(&ids[1]).unwrap().set("diameter", "80.5 mm", &at("01"));
    record.borings.get_mut(&ids[0]).unwrap().delete();
    records.merge(old());
    let bored = records.0[0].1.bored();
    assert_eq!(bored.len(), 1, "the deleted one does not return: {bored:?}");
    assert_eq!(bored[0].1.get("diameter"), "80.5 mm", "and the change holds");
}

#[test]
fn a_photo_is_a_jpeg_picture_of_bounded_size_or_the_record_is_refused() {
    let with = |image: &str| {
        let text = alloc::format!(
            r#"{{"jaw_records": 2, "records": [{{"id": "a", "name": "J", "photos": [{{"id": "p", "image": {image}}}]}}]}}"#
        );
        Records::from_document(&read(&text)).unwrap()
    };
    let (records, refused) = with(&alloc::format!("{PICTURE:?}"));
    assert_eq!((pictures(&records), refused.len()), (vec![("a", "p", PICTURE)], 0), "taken");
    let large = alloc::format!("{:?}", String::from(PICTURE) + &"A".repeat(LONGEST_IMAGE));
    for image in [
        "\"data:image/svg+xml;base64,PHN2Zz4=\"",
        "\"data:image/jpeg;base64,\"",
        "\"data:image/jpeg;base64,/9j\\\" onerror=\\\"x\"",
        "\"https://localhost/x.jpg\"",
        "7",
        "[\"x\"]",
        &large,
    ] {
        let (records, refused) = with(image);
        let start: String = image.chars().take(40).collect();
        assert_eq!((records.0.len(), refused.len()), (0, 1), "{start} is refused");
    }
}

#[test]
fn a_deleted_photo_keeps_no_picture_and_does_not_return() {
    let mut record = Record::default();
    let mut photo = Record::default();
    photo.set(IMAGE, PICTURE, &at("01"));
    record.photos.put("p".into(), photo);
    let old = single(&record);
    record.photos.get_mut("p").unwrap().delete();
    let mut here = single(&record);
    here.merge(old);
    assert!(pictures(&here).is_empty(), "{here:?}");
    assert!(!to_text(&here.to_document()).contains("base64"), "nor is it kept unseen");
}
