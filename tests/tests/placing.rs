//! Tooth, boring ring and recut by the way every user's entries go.

#![allow(clippy::unwrap_used, clippy::panic, reason = "what is known to be found and is not must fail")]

use holdround_core::findings::{Findings, Mark, Weight};
use holdround_core::setup::Setup;
use holdround_tests::job::Job;

/// Jaws of 70 mm on a 210 mm chuck, as a shop would measure them.
const BLANK: [(&str, &str); 8] = [
    ("stroke.plan", "yes"),
    ("stroke.first_groove", "28 mm"),
    ("blank.near_screw", "32 mm"),
    ("blank.far_screw", "52 mm"),
    ("blank.counterbore", "20 mm"),
    ("blank.counterbore_depth", "25 mm"),
    ("blank.nut", "40 mm"),
    ("blank.first_groove", "1 mm"),
];

/// Small jaws, and a sleeve that they can grip either way.
const SMALL: [(&str, &str); 12] = [
    ("part.bore_diameter", "62 mm"),
    ("part.outside_diameter", "90 mm"),
    ("cuts.0.diameter", "90 mm"),
    ("cuts.1.diameter", "62 mm"),
    ("jaws.width", "15 mm"),
    ("jaws.length", "30 mm"),
    ("blank.near_screw", "14 mm"),
    ("blank.far_screw", "22 mm"),
    ("blank.counterbore", "7 mm"),
    ("blank.nut", "15 mm"),
    ("jaws.step", "4 mm"),
    ("stroke.first_groove", "2 mm"),
];

fn job(entries: &[(&str, &str)]) -> Job {
    let entries = BLANK.iter().chain(entries).map(|(path, text)| ((*path).to_string(), (*text).to_string())).collect();
    Job { example: Some("fast-sleeve".into()), entries }
}

fn found(entries: &[(&str, &str)]) -> Findings {
    job(entries).findings().unwrap()
}

fn value(findings: &Findings, id: &str) -> f64 {
    let finding = findings.get(id).unwrap_or_else(|| panic!("no finding {id}"));
    finding.value.clone().unwrap_or_else(|why| panic!("{id} is refused: {why}"))
}

fn refusal(findings: &Findings, id: &str) -> String {
    findings.get(id).unwrap_or_else(|| panic!("no finding {id}")).value.clone().unwrap_err().to_string()
}

fn caution(findings: &Findings, id: &str) -> String {
    findings.get(id).and_then(|finding| finding.caution.as_ref()).map(ToString::to_string).unwrap_or_default()
}

#[test]
fn nothing_is_told_that_was_not_asked_for() {
    let findings = Job { example: Some("fast-sleeve".into()), ..Job::default() }.findings().unwrap();
    for topic in ["stroke.", "ring.", "rings.", "recut."] {
        assert!(!findings.findings.iter().any(|finding| finding.id.starts_with(topic)), "{topic} was left out");
    }
    assert!(findings.scene.placing.is_none() && findings.scene.procedures.is_empty(), "nor is anything drawn");
}

#[test]
fn a_tooth_is_found_for_the_assumed_job_and_nothing_on_it_is_beyond_its_limit() {
    let entries = [("stroke.plan".to_string(), "yes".to_string())].into();
    let findings = Job { example: None, entries }.findings().unwrap();
    assert!(value(&findings, "stroke.tooth").fract() == 0.0, "a whole tooth");
    let topics = ["stroke.", "ring."];
    for finding in findings.findings.iter().filter(|finding| topics.iter().any(|topic| finding.id.starts_with(topic))) {
        assert!(!matches!(finding.mark(), Mark::Beyond | Mark::Refused), "{}: {finding:?}", finding.id);
    }
}

#[test]
fn teeth_that_serve_are_told_first_and_the_best_of_them_is_the_one_taken() {
    let placing = found(&[]).scene.placing.unwrap();
    let serve: Vec<bool> = placing.teeth.iter().map(|tooth| tooth.faults.is_empty()).collect();
    assert!(serve[0] && !serve[serve.len() - 1], "some serve, others do not: {serve:?}");
    assert!(serve.windows(2).all(|pair| pair[0] >= pair[1]), "those that serve first: {serve:?}");
    assert_eq!(placing.teeth[0].tooth, placing.tooth, "the best of them is the one taken");
}

#[test]
fn the_tooth_recommended_and_the_same_tooth_typed_are_one() {
    let recommended = found(&[]);
    let tooth = value(&recommended, "stroke.tooth").to_string();
    let typed = found(&[("stroke.tooth", &tooth)]);
    for finding in recommended.findings.iter().filter(|finding| finding.id.starts_with("stroke.")) {
        assert_eq!(Some(finding), typed.get(&finding.id), "{}", finding.id);
    }
    let next = found(&[("stroke.tooth", &(value(&recommended, "stroke.tooth") + 1.0).to_string())]);
    let moved = value(&recommended, "stroke.step") - value(&next, "stroke.step");
    assert!((moved - 1.5e-3).abs() < 1e-15, "the next tooth leaves a pitch less: {moved}");
}

#[test]
fn a_tooth_that_will_not_do_names_its_fault_and_one_that_will() {
    let findings = found(&[("stroke.tooth", "-9")]);
    let says = caution(&findings, "stroke.tooth");
    assert!(says.contains("counterbore") && says.contains("Tooth 0 would do"), "{says}");
    assert_eq!(findings.get("stroke.wall").unwrap().mark(), Mark::Beyond, "and the metal is marked");
}

#[test]
fn where_no_tooth_will_do_what_would_is_told() {
    // The screws sit where the bored face must come, as in a blank mounted the wrong way round.
    let turned = [("blank.near_screw", "18 mm"), ("blank.far_screw", "38 mm"), ("stroke.first_groove", "35 mm")];
    let deep = [turned.as_slice(), &[("blank.counterbore_depth", "36 mm")]].concat();
    let findings = found(&deep);
    let why = refusal(&findings, "stroke.tooth");
    assert!(why.starts_with("No tooth will do. Nearest comes tooth"), "{why}");
    assert!(why.contains("jaws turned round, on tooth"), "{why}");
    let again = found(&[deep.as_slice(), &[("stroke.mounted", "turned")]].concat());
    let tooth = format!("jaws turned round, on tooth {}", value(&again, "stroke.tooth"));
    assert!(why.contains(&tooth), "turned round, that tooth is found: {why}, {tooth}");
    assert_eq!(caution(&again, "stroke.tooth"), "", "and nothing is wrong with it");
}

#[test]
fn bored_on_a_ring_of_the_diameter_told_the_jaws_stand_in_the_middle() {
    for side in ["outside", "inside"] {
        let bearings: &[_] = if side == "outside" { &["counterbores", "plug"] } else { &["counterbores", "around"] };
        for bearing in bearings {
            let ground = [SMALL.as_slice(), &[("grip.side", side), ("ring.bearing", bearing)]].concat();
            let findings = found(&ground);
            let diameter = format!("{} mm", 1e3 * value(&findings, "ring.diameter"));
            let (outside, inside) =
                if side == "outside" { (diameter.clone(), "0 mm") } else { ("200 mm".into(), &*diameter) };
            let tooth = value(&findings, "stroke.tooth").to_string();
            let own = [
                ("rings.0.outside", outside.as_str()),
                ("rings.0.inside", inside),
                ("ring.used", "1"),
                ("stroke.tooth", &tooth),
            ];
            let on_it = found(&[ground.as_slice(), &own].concat());
            let position = value(&on_it, "stroke.bored");
            assert!((position - 1.85e-3).abs() < 1e-12, "{side}, {bearing}: {position}");
            let listed = value(&on_it, "rings.0.position");
            assert!((listed - position).abs() < 1e-12, "{side}, {bearing}: the list says {listed}");
        }
    }
}

#[test]
fn a_ring_that_would_not_stop_these_jaws_is_refused_plainly() {
    for (side, bearing) in [("outside", "around"), ("inside", "plug")] {
        let findings = found(&[SMALL.as_slice(), &[("grip.side", side), ("ring.bearing", bearing)]].concat());
        let why = refusal(&findings, "ring.diameter");
        assert!(why.contains("would not stop them"), "{side}, {bearing}: {why}");
        assert!(findings.scene.placing.unwrap().ring.is_none(), "and none is drawn");
    }
}

#[test]
fn where_no_ring_clears_the_groove_and_its_ring_are_told_with_the_order_of_steps() {
    let entries = [
        ("jaws.step", "4 mm"),
        ("jaws.width", "20 mm"),
        ("ring.thickness", "6 mm"),
        ("blank.near_screw", "50 mm"),
        ("blank.far_screw", "60 mm"),
        ("blank.nut", "30 mm"),
        ("stroke.first_groove", "25 mm"),
        ("ring.bearing", "groove"),
    ];
    let findings = found(&entries);
    let width = value(&findings, "ring.groove.outside") - value(&findings, "ring.groove.inside");
    assert!((width - 14e-3).abs() < 1e-12, "twice a ring of 6 mm and its play of 1 mm: {width}");
    let fit = value(&findings, "ring.made.outside") - value(&findings, "ring.groove.outside");
    assert!(fit.abs() < 1e-12, "jaws that close push with the outer wall: {fit}");
    let procedure = findings.scene.procedures.iter().find(|procedure| procedure.id == "ring.groove").unwrap();
    assert!(procedure.steps.len() >= 5, "{procedure:?}");
    let thick = found(&[entries.as_slice(), &[("ring.thickness", "40 mm")]].concat());
    assert!(refusal(&thick, "ring.groove.outside").contains("thinner"), "a ring too thick for any strip");
    assert!(value(&thick, "ring.groove.room") < 41e-3, "and the widest strip is told");
}

#[test]
fn a_ring_that_the_cut_would_meet_is_marked_and_a_groove_is_told_instead() {
    let entries = [
        ("jaws.length", "110 mm"),
        ("blank.near_screw", "24 mm"),
        ("blank.far_screw", "44 mm"),
        ("stroke.least_wall", "1 mm"),
        ("ring.thickness", "22 mm"),
        ("ring.height", "20 mm"),
    ];
    let findings = found(&entries);
    assert_eq!(findings.get("ring.clearance").unwrap().mark(), Mark::Beyond, "a ring of 22 mm reaches into the bore");
    let says = caution(&findings, "ring.diameter");
    assert!(says.contains("nor would any other: cut a groove"), "{says}");
    let placing = findings.scene.placing.as_ref().unwrap();
    assert!(placing.bearings.iter().all(|way| !way.clears) && placing.bearings.len() == 2, "{:?}", placing.bearings);
    let (groove, screws) = (placing.groove.unwrap(), placing.screws);
    assert!(groove.radii[0] > screws[1] + 11e-3 - 1e-12, "it lies behind both counterbores: {groove:?}, {screws:?}");
    let thin = found(&[entries.as_slice(), &[("ring.thickness", "15 mm")]].concat());
    assert_eq!(caution(&thin, "ring.diameter"), "", "a thinner ring clears");
    assert!(thin.get("ring.groove.outside").is_none(), "and needs no groove");
}

#[test]
fn jaws_that_come_back_on_size_and_mounted_as_before_are_not_cut() {
    let back = [
        ("recut.jaws", "bored"),
        ("recut.standing", "80.01 mm"),
        ("recut.as_before", "yes"),
        ("recut.runout", "10 µm"),
    ];
    let findings = found(&back);
    assert!(caution(&findings, "recut.off_size").starts_with("Use the jaws as they are"), "{findings:?}");
    assert_eq!(findings.get("recut.stock").unwrap().mark(), Mark::Told, "no stock is asked of them");
    let moved = found(&[back.as_slice(), &[("recut.as_before", "no")]].concat());
    let says = caution(&moved, "recut.off_size");
    assert!(says.contains("must be recut: not known to be mounted as before."), "{says}");
    assert_eq!(moved.get("recut.stock").unwrap().mark(), Mark::Beyond, "and there is nothing to bore");
}

#[test]
fn wasteful_jaws_are_given_a_ring_that_wastes_nothing() {
    let ground = [
        ("recut.jaws", "bored"),
        ("recut.standing", "77 mm"),
        ("rings.0.outside", "140 mm"),
        ("rings.0.inside", "120 mm"),
        ("ring.used", "1"),
    ];
    let findings = found(&ground);
    assert!(caution(&findings, "recut.stock").contains("more than one recut should"), "1.5 mm per side");
    let wasted = value(&findings, "recut.wasted");
    let spare = value(&findings, "recut.stock") - value(&findings, "recut.needed");
    assert!(wasted > 0.0 && wasted < spare, "what is cut away beyond what a recut may take: {wasted} of {spare}");
    let heeded = |findings: &Findings| {
        findings
            .cautions
            .iter()
            .any(|caution| caution.weight == Weight::Model && caution.says.contains("more jaw than"))
    };
    assert!(heeded(&findings), "and it is a caution: {:?}", findings.cautions);
    let larger = value(&findings, "recut.ring_change");
    let other = format!("{} mm", 140.0 + 1e3 * larger);
    let both = found(&[ground.as_slice(), &[("rings.1.outside", &other), ("rings.1.inside", "122 mm")]].concat());
    assert_eq!(value(&both, "recut.own_ring"), 2.0, "that ring in the list is named");
    // On it the jaws stand larger by as much.
    let standing = format!("{} mm", 77.0 + 1e3 * larger);
    let after = found(&[("recut.jaws", "bored"), ("recut.standing", &standing)]);
    assert!(caution(&after, "recut.stock").contains("It cleans up."), "{}", caution(&after, "recut.stock"));
    assert!(after.get("recut.wasted").is_none() && !heeded(&after), "and nothing is wasted any more");
}

#[test]
fn rings_of_ones_own_are_judged_by_where_they_bear_and_what_kind_they_are() {
    let with = |entries: &[(&str, &str)]| {
        let findings = found(entries);
        let against = findings.scene.placing.as_ref().unwrap().own_rings[0].against.clone();
        (findings, against)
    };
    // A ring for mid-stroke in the counterbores serves there; the same diameter solid, or thicker than they are, not.
    let diameter = format!("{} mm", 1e3 * value(&found(&[]), "ring.diameter"));
    let ring = |inside: &'static str| [("rings.0.outside", diameter.clone()), ("rings.0.inside", inside.to_string())];
    for (inside, wrong) in [("125 mm", None), ("0 mm", Some("a plug, where a ring")), ("85 mm", Some("too thick"))] {
        let entries = ring(inside);
        let entries: Vec<_> = entries.iter().map(|(path, text)| (*path, text.as_str())).collect();
        let (findings, against) = with(&entries);
        match wrong {
            None => assert_eq!(value(&findings, "ring.best_own"), 1.0, "{against:?}"),
            Some(wrong) => {
                assert!(against.iter().any(|why| why.contains(wrong)), "{inside}: {against:?}");
                assert!(refusal(&findings, "ring.best_own").contains("None of them"), "{inside}");
            }
        }
    }
    // For a groove: the ring told to be made serves as one's own, one that would lie in the counterbores does not.
    let ground = [
        ("jaws.step", "4 mm"),
        ("jaws.width", "20 mm"),
        ("ring.thickness", "6 mm"),
        ("blank.near_screw", "50 mm"),
        ("blank.far_screw", "60 mm"),
        ("blank.nut", "30 mm"),
        ("stroke.first_groove", "25 mm"),
        ("ring.bearing", "groove"),
    ];
    let made = found(&ground);
    let size = |id: &str, by: f64| format!("{:.6} mm", 1e3 * value(&made, id) + by);
    for (by, serves) in [(0.0, true), (40.0, false)] {
        let (outside, inside) = (size("ring.made.outside", by), size("ring.made.inside", by));
        let own = [("rings.0.outside", outside.as_str()), ("rings.0.inside", inside.as_str()), ("ring.used", "1")];
        let (findings, against) = with(&[ground.as_slice(), &own].concat());
        assert_eq!(against.is_empty(), serves, "{by} larger: {against:?}");
        assert_eq!(findings.get("ring.groove.outside").unwrap().value.is_ok(), serves, "and the groove is cut for it");
        assert!(findings.get("ring.made.outside").is_none(), "there is none to make");
    }
}

#[test]
fn a_ring_that_leaves_the_right_stock_but_cannot_be_used_is_not_named() {
    let ground = [
        ("recut.jaws", "bored"),
        ("recut.standing", "77 mm"),
        ("rings.0.outside", "140 mm"),
        ("rings.0.inside", "120 mm"),
        ("ring.used", "1"),
    ];
    let other = format!("{} mm", 140.0 + 1e3 * value(&found(&ground), "recut.ring_change"));
    // As thick as reaches into the bore.
    let both = found(&[ground.as_slice(), &[("rings.1.outside", &other), ("rings.1.inside", "60 mm")]].concat());
    assert!(refusal(&both, "recut.own_ring").contains("clears cut and bar"), "the cut would meet it");
}

#[test]
fn before_the_jaws_are_measured_the_way_to_do_it_is_told() {
    let findings = found(&[("recut.jaws", "bored")]);
    assert!(refusal(&findings, "recut.stock").contains("Touch the jaws off"), "nothing is guessed");
    let procedure = findings.scene.procedures.iter().find(|procedure| procedure.id == "recut.touch_off").unwrap();
    assert!(procedure.steps.len() >= 5, "{procedure:?}");
}

#[test]
fn what_cannot_be_is_refused_at_its_entry() {
    let cases: [(&[(&str, &str)], &str); 5] = [
        (&[("stroke.tooth", "2.5")], "stroke.tooth"),
        (&[("ring.used", "1")], "ring.used"),
        (&[("rings.0.outside", "90 mm"), ("ring.used", "2")], "ring.used"),
        (&[("rings.0.outside", "90 mm"), ("rings.0.inside", "90 mm")], "rings.0.inside"),
        (&[("stroke.travel", "0 mm")], "stroke.travel"),
    ];
    for (entries, path) in cases {
        let faults = Setup::read(&job(entries).entries().unwrap()).unwrap_err();
        assert!(faults.iter().any(|fault| fault.path == path), "{entries:?}: {faults:?}");
    }
    let findings = found(&[("blank.far_screw", "30 mm")]);
    let why = refusal(&findings, "stroke.tooth");
    assert!(why.contains("far screw"), "sizes that contradict each other are told, not computed with: {why}");
}
