//! Every sentence that a person reads is in the catalogue of the other language, and nothing else is. Single words are
//! looked for on the page (`page/language.rs`).

#![allow(clippy::expect_used, clippy::panic, reason = "a test that cannot go on has failed")]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use polib::po_file;
use proc_macro2::{Delimiter, TokenStream, TokenTree};

/// Texts of more words than two that are not said in another language: styles, what only a browser or a programmer sees,
/// an ending that is cut off a name, and a book.
const UNREAD: [&str; 12] = [
    " at the far end",
    "allow-scripts allow-popups allow-popups-to-escape-sandbox",
    "boring-tool on-views",
    "H. Saechtling, International Plastics Handbook",
    "index notation of linear algebra",
    "not a number that JSON has",
    "something JSON cannot hold",
    "outline jaw of-bored",
    "view face released",
    "view face clamped",
    "view face clamped spinning {}",
    "view polar sample",
];

/// Texts that stand in the source as part of others: the names of kinds of jaw before the colon, and a word before a
/// number.
const CUT_OUT: [&str; 4] = ["Ordinary", "Wide", "Pie", "under"];

#[path = "../../web/src/language/key.rs"]
mod key;

fn workspace() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// English and German, as the catalogue has them.
fn catalogue() -> BTreeMap<String, String> {
    let file = workspace().join("web/language/de.po");
    let catalogue = po_file::parse(&file).expect("a catalogue");
    catalogue.messages().map(|text| (text.msgid().to_owned(), text.msgstr().expect("one text").to_owned())).collect()
}

/// The string literals of the source that is shipped, with the file of each.
fn literals() -> Vec<(PathBuf, String)> {
    let mut found = Vec::new();
    for part in ["core/mechanics/src", "core/src", "web/src"] {
        let root = workspace().join(part);
        read(&root.join("lib.rs"), &root, &mut found);
    }
    found
}

/// Reads a file and the modules that belong to it, in `folder`.
fn read(file: &Path, folder: &Path, found: &mut Vec<(PathBuf, String)>) {
    let text = fs::read_to_string(file).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
    let tokens: TokenStream = text.parse().unwrap_or_else(|error| panic!("{}: {error}", file.display()));
    walk(tokens, file, folder, found);
}

/// Collects what is in `tokens`, leaving out documentation, other attributes and what is for tests alone.
fn walk(tokens: TokenStream, file: &Path, folder: &Path, found: &mut Vec<(PathBuf, String)>) {
    let tokens: Vec<TokenTree> = tokens.into_iter().collect();
    let mut at = 0;
    while let Some(token) = tokens.get(at) {
        at += 1;
        match token {
            TokenTree::Punct(sign) if sign.as_char() == '#' => {
                at += usize::from(matches!(tokens.get(at), Some(TokenTree::Punct(bang)) if bang.as_char() == '!'));
                let Some(TokenTree::Group(group)) = tokens.get(at).filter(|token| is_group(token, Delimiter::Bracket))
                else {
                    continue;
                };
                at += 1;
                let condition = group.stream().to_string();
                if condition.starts_with("cfg") && condition.contains("test") {
                    let ends = |token: &TokenTree| {
                        is_group(token, Delimiter::Brace)
                            || matches!(token, TokenTree::Punct(sign) if sign.as_char() == ';')
                    };
                    at += tokens[at..].iter().position(ends).map_or(0, |end| end + 1);
                }
            }
            TokenTree::Ident(word) if *word == "mod" => {
                if let (Some(TokenTree::Ident(name)), Some(TokenTree::Punct(_))) = (tokens.get(at), tokens.get(at + 1))
                {
                    let inner = folder.join(name.to_string());
                    let [alone, with_others] = [inner.with_extension("rs"), inner.join("mod.rs")];
                    read(if alone.exists() { &alone } else { &with_others }, &inner, found);
                }
            }
            TokenTree::Group(group) => walk(group.stream(), file, folder, found),
            TokenTree::Literal(literal) => {
                let text = literal.to_string();
                if let Some(inner) = text.strip_prefix('"').and_then(|text| text.strip_suffix('"')) {
                    found.push((file.to_owned(), unescaped(inner)));
                }
            }
            _ => {}
        }
    }
}

fn is_group(token: &TokenTree, delimiter: Delimiter) -> bool {
    matches!(token, TokenTree::Group(group) if group.delimiter() == delimiter)
}

/// What a literal stands for.
fn unescaped(literal: &str) -> String {
    let mut out = String::new();
    let mut rest = literal.chars().peekable();
    while let Some(sign) = rest.next() {
        match (sign, (sign == '\\').then(|| rest.next()).flatten()) {
            (_, Some('n')) => out.push('\n'),
            // A line that goes on in the next one.
            (_, Some('\n')) => while rest.next_if(|sign| sign.is_whitespace()).is_some() {},
            (_, Some(escaped)) => out.push(escaped),
            (sign, None) => out.push(sign),
        }
    }
    out
}

/// Whether three words follow one another: a sentence or part of one, not a key or a formula.
fn is_prose(text: &str) -> bool {
    let is_word = |word: &str| {
        let word = word.trim_end_matches([',', '.', ':', ';', ')', '?']).trim_start_matches(['(', '“']);
        word.chars().count() > 1 && word.chars().all(|sign| sign.is_alphabetic() || "-’'".contains(sign))
    };
    let words: Vec<bool> = text.split_whitespace().map(is_word).collect();
    words.windows(3).any(|three| three.iter().all(|word| *word))
}

#[test]
fn every_sentence_of_the_source_has_its_german() {
    let catalogue = catalogue();
    let missing: BTreeSet<String> = literals()
        .into_iter()
        .filter(|(_, text)| is_prose(text) && !UNREAD.contains(&&**text) && !catalogue.contains_key(text))
        .map(|(file, text)| format!("{}: {text:?}", file.display()))
        .collect();
    assert!(missing.is_empty(), "not in the catalogue: {missing:#?}");
}

#[test]
fn every_text_of_the_catalogue_is_in_the_source() {
    let literals: BTreeSet<String> = literals().into_iter().map(|(_, text)| text).collect();
    // What is said before the module has started: that all of it has a pair is seen to by the build.
    let script = fs::read_to_string(workspace().join("www/boot.js")).expect("a script");
    let written =
        |text: &str| literals.contains(text) || CUT_OUT.contains(&text) || script.contains(&format!(": \"{text}\",\n"));
    let stale: Vec<String> = catalogue().into_keys().filter(|text| !written(text)).collect();
    assert!(stale.is_empty(), "in no source any more: {stale:#?}");
}

#[test]
fn no_other_text_of_the_source_is_taken_for_one_of_the_catalogue() {
    let catalogue = catalogue();
    let keys: BTreeMap<u32, &String> = catalogue.keys().map(|text| (key::key(text), text)).collect();
    for (file, text) in literals() {
        let taken = keys.get(&key::key(&text));
        assert!(taken.is_none_or(|known| **known == text), "{}: {text:?} as {taken:?}", file.display());
    }
}

/// The gaps of a text, each by its number.
fn gaps(text: &str) -> Vec<String> {
    let pieces = text.split('{').skip(1).filter_map(|piece| Some(piece.split_once('}')?.0.to_owned()));
    let mut gaps: Vec<String> =
        pieces.enumerate().map(|(at, name)| if name.is_empty() { at.to_string() } else { name }).collect();
    gaps.sort();
    gaps
}

#[test]
fn both_languages_fill_the_same_gaps_and_edge_alike() {
    for (english, german) in catalogue() {
        assert_eq!(gaps(&english), gaps(&german), "{english:?} and {german:?}");
        let edges = |text: &str| [text.starts_with(' '), text.ends_with(' ')];
        assert_eq!(edges(&english), edges(&german), "blanks around {english:?} and {german:?}");
        assert!(!german.trim().is_empty() || english.trim().is_empty(), "nothing is said for {english:?}");
    }
}
