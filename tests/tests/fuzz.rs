//! Texts from outside, kept and changed at random: `HOLDROUND_FUZZ_CASES` sets how many of each kind. The same number
//! makes the same texts. `fuzz/` has targets that look for untrodden paths instead; the fewest texts that tread all
//! they have found lie in the folders `found`, and are tried as they are.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a kept text that cannot be read must fail")]

use std::env;
use std::fs;
use std::path::Path;

use holdround_core::examples::EXAMPLES;
use holdround_core::setup::Entries;
use holdround_tests::fuzz::TARGETS;

const CASES: usize = 3_000;
/// Longest text that is made.
const LONGEST: usize = 8_192;
/// What texts are made of, apart from each other.
const TOKENS: [&str; 24] = [
    "{",
    "}",
    "[",
    "]",
    "\"",
    ":",
    ",",
    "null",
    "1e308",
    "-0",
    "9999999999999999999999",
    "__proto__",
    "\u{0}",
    "\u{202e}",
    "\\u0000",
    "$",
    "*",
    "%",
    "2-",
    "3-",
    "~",
    "(",
    "\n",
    "ß",
];

/// The 64-bit mix of Steele, Lea and Flood 2014 (SplitMix).
struct Chance(u64);

impl Chance {
    fn below(&mut self, bound: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((mixed ^ (mixed >> 31)) % bound.max(1) as u64) as usize
    }
}

/// A text changed in one to six places; some keep their sum right, which a change would almost never.
fn changed(kept: &[String], chance: &mut Chance) -> String {
    let mut text = kept[chance.below(kept.len())].clone().into_bytes();
    for _ in 0..=chance.below(6) {
        let (from, to) = (chance.below(text.len() + 1), chance.below(text.len() + 1));
        let (from, to) = (from.min(to), from.max(to));
        let piece = match chance.below(6) {
            0 => Vec::new(),
            1 => TOKENS[chance.below(TOKENS.len())].into(),
            2 => vec![chance.below(256) as u8],
            3 => text[from..to].repeat(2),
            4 => {
                let other = kept[chance.below(kept.len())].as_bytes();
                other[chance.below(other.len())..].to_vec()
            }
            _ => {
                text.splice(from..from, *b"0");
                continue;
            }
        };
        let end = if chance.below(2) == 0 { to } else { (from + 1).min(text.len()) };
        text.splice(from..end, piece);
        text.truncate(LONGEST);
    }
    String::from_utf8_lossy(&text).into_owned()
}

/// The texts in a folder beside the targets of `fuzz/`, in order of their names.
fn texts(folder: &str) -> Vec<String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("fuzz/corpus").join(folder);
    let files = fs::read_dir(&folder).expect("a folder of kept texts").map(|file| file.unwrap().path());
    let mut files: Vec<_> = files.filter(|path| path.is_file()).collect();
    files.sort();
    files.iter().map(|file| String::from_utf8_lossy(&fs::read(file).unwrap()).into_owned()).collect()
}

/// What is changed: texts of ours, and the worked examples.
fn kept(target: &str) -> Vec<String> {
    let texts = texts(target).into_iter();
    let examples = EXAMPLES.iter().map(|example| example.json.to_owned());
    match target {
        "setup_json" => texts.chain(examples).collect(),
        "link" => texts.chain(examples.map(|json| Entries::from_json(&json).unwrap().to_link())).collect(),
        _ => texts.collect(),
    }
}

#[test]
fn whatever_text_comes_from_outside_is_refused_in_words_or_keeps_its_meaning() {
    let cases = env::var("HOLDROUND_FUZZ_CASES").ok().and_then(|cases| cases.parse().ok()).unwrap_or(CASES);
    for (name, target) in TARGETS {
        let kept = kept(name);
        assert!(kept.len() >= 4, "{name} has texts to begin with");
        let found = texts(&format!("{name}/found"));
        assert!(found.len() >= 10, "{name} has texts that were found");
        kept.iter().chain(&found).for_each(|text| target(text));
        let mut chance = Chance(20_260);
        for _ in 0..cases {
            target(&changed(&kept, &mut chance));
        }
    }
}

#[test]
fn a_link_made_of_changed_entries_keeps_its_meaning() {
    // A changed link is nearly always refused by its sum: the entries are changed before it is made.
    let texts = kept("setup_json");
    let mut chance = Chance(20_261);
    let mut made = 0;
    for _ in 0..CASES {
        let mut entries = Entries::from_json(EXAMPLES[chance.below(EXAMPLES.len())].json).unwrap();
        let paths: Vec<String> = entries.iter().map(|(path, _)| path.to_owned()).collect();
        let text: String = changed(&texts, &mut chance).chars().take(200).collect();
        entries.set(&paths[chance.below(paths.len())], &text);
        let link = entries.to_link();
        assert_eq!(Entries::from_link(&link), Ok(entries), "as a link and back: {link}");
        made += 1;
    }
    assert_eq!(made, CASES, "every one was tried");
}
