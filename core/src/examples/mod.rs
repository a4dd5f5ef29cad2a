//! Worked examples: invented jobs, each with something to see.
//!
//! ```
//! use holdround_core::{examples::{EXAMPLES, Example}, setup::{Entries, Setup}};
//! let Example { title, json, .. } = &EXAMPLES[0];
//! let entries = Entries::from_json(json).unwrap();
//! assert!(!title.is_empty() && Setup::read(&entries).is_ok());
//! ```

/// A worked example.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Example {
    /// Its name in links.
    pub id: &'static str,
    /// Its title.
    pub title: &'static str,
    /// What there is to see in it.
    pub says: &'static str,
    /// The set-up as JSON.
    pub json: &'static str,
}

/// The examples, in the order in which they teach.
///
/// ```
/// use holdround_core::{evaluate, examples::EXAMPLES, setup::{Entries, Setup}};
/// for example in EXAMPLES {
///     let setup = Setup::read(&Entries::from_json(example.json).unwrap()).unwrap();
///     assert!(evaluate(&setup).get("hold.factor").unwrap().value.is_ok(), "{}", example.id);
/// }
/// ```
pub const EXAMPLES: &[Example] = &[
    Example {
        id: "thin-ring",
        title: "Thin ring, gripped from inside on ordinary jaws",
        says: "It holds, but the bore is pushed into three lobes. Lower the pressure and watch both.",
        json: include_str!("thin-ring.json"),
    },
    Example {
        id: "thin-ring-on-pie-jaws",
        title: "The same ring on pie jaws",
        says: "The same grip spread over the whole bore leaves the ring round.",
        json: include_str!("thin-ring-on-pie-jaws.json"),
    },
    Example {
        id: "fast-sleeve",
        title: "Sleeve, gripped outside at high speed",
        says: "The jaws are thrown outward and take the grip with them. Raise the speed and watch the hold factor.",
        json: include_str!("fast-sleeve.json"),
    },
    Example {
        id: "stubby-blank",
        title: "Heavy cut on a stubby blank",
        says: "A solid blank stays round at any pressure; here the cut against the grip is the question.",
        json: include_str!("stubby-blank.json"),
    },
    Example {
        id: "floored-cup",
        title: "Cup, gripped outside at its floor",
        says: "The floor props the wall where the jaws press, so the bore stays round up to the rim. Make the first step 3 mm long and the second 62 mm, and watch the bore at the floor.",
        json: include_str!("floored-cup.json"),
    },
    Example {
        id: "flanged-tube",
        title: "Flanged tube, gripped at its plain end",
        says: "The bore goes out of round between the jaws and nowhere else: under the flange it comes out round. Finish the bore held another way, or on pie jaws.",
        json: include_str!("flanged-tube.json"),
    },
    Example {
        id: "pump-wear-ring",
        title: "Pump wear ring, its jaws still to be made",
        says: "Tooth, boring ring, bored diameter, taper and program are worked out. Open Making the jaws, play the tool along its path, and take the other ring from the drawer.",
        json: include_str!("pump-wear-ring.json"),
    },
];
