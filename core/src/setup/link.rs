//! Set-ups as a link: what follows `#` in the page's address. Compact, versioned, safe to receive.
//!
//! `2-`, eight hexadecimal digits that tell whether anything was lost on the way, then the entries, each opened by
//! `$`: three letters or digits that stand for its path; the index and `:` if it is an item of a list; and what was
//! typed. It is written with what a QR code packs closest (ISO/IEC 18004, alphanumeric mode) and an address takes as
//! it is: a small letter as its capital, a capital as `*` and itself, a space as `+`, everything unusual as `%` and two
//! hexadecimal digits (RFC 3986). `*` alone stands for what is assumed when nothing is typed; the digits in front then
//! answer for that too.
//!
//! Links of version 1 open as ever: `1-`, entries opened by `~`, `:` in every entry, letters as they are, a space as `_`.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use super::Entries;
use super::inputs::{declared, every_input};
use crate::text::Text;

/// How entries are written in a link of one version.
struct Version {
    /// Opens every link.
    opening: &'static str,
    /// Opens every entry.
    entry: char,
    /// Whether letters are as they are.
    as_they_are: bool,
    /// Stands for a space.
    space: u8,
}

const FIRST: Version = Version { opening: "1-", entry: '~', as_they_are: true, space: b'_' };
const PRESENT: Version = Version { opening: "2-", entry: '$', as_they_are: false, space: b'+' };
/// Stands for what is assumed when nothing is typed.
const AS_ASSUMED: &str = "*";
/// Longest link that is read, in characters.
const LONGEST: usize = 32_768;

/// Why a link cannot be opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LinkError {
    /// It does not begin as links of this version do.
    Version,
    /// It is longer than any set-up.
    TooLong,
    /// Characters are missing or changed.
    Damaged,
    /// It is whole, but not a set-up that this page knows.
    NotASetup,
}

impl From<&LinkError> for Text {
    fn from(error: &LinkError) -> Self {
        Self::Words(match error {
            LinkError::Version => "it is not a link of this page, or one of a newer version",
            LinkError::TooLong => "it is longer than any set-up can be",
            LinkError::Damaged => {
                "characters are missing or changed, as when a mail program breaks a line; or it was printed by a page that assumes other values"
            }
            LinkError::NotASetup => "it is whole, but what it holds is not a set-up",
        })
    }
}

impl fmt::Display for LinkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl Entries {
    /// The set-up as the part of an address after `#`.
    ///
    /// ```
    /// use holdround_core::setup::{Entries, LinkError};
    /// let mut entries = Entries::default();
    /// entries.set("part.length", "2 1/4 in");
    /// let link = entries.to_link();
    /// assert_eq!(Entries::from_link(&link), Ok(entries));
    /// assert_eq!(Entries::from_link(&link[..link.len() - 3]), Err(LinkError::Damaged));
    /// ```
    #[must_use]
    pub fn to_link(&self) -> String {
        self.written(false)
    }

    /// The set-up as a link for a code on paper: what is typed as it would be assumed is marked, not written out. Where
    /// something else is assumed by then, the link is refused, not read as another set-up.
    ///
    /// ```
    /// use holdround_core::setup::Entries;
    /// let mut entries = Entries::default();
    /// entries.set("chuck.max_grip", "75 kN");
    /// assert!(entries.to_short_link().len() < entries.to_link().len(), "75 kN is assumed anyway");
    /// assert_eq!(Entries::from_link(&entries.to_short_link()), Ok(entries), "and has been typed all the same");
    /// ```
    #[must_use]
    pub fn to_short_link(&self) -> String {
        self.written(true)
    }

    fn written(&self, short: bool) -> String {
        let (mut body, mut assumed) = (String::new(), String::new());
        for (path, text) in self.iter() {
            let (general, index) = without_index(path);
            body.push(PRESENT.entry);
            body.push_str(&PRESENT.letters(&general));
            if !index.is_empty() {
                body.push_str(index);
                body.push(':');
            }
            if short && declared(path).is_some_and(|input| input.default == text) {
                body.push_str(AS_ASSUMED);
                assumed.push_str(text);
            } else {
                escape(text, &mut body);
            }
        }
        let sum = digest((body.clone() + &assumed).as_bytes());
        format!("{}{sum:08X}{body}", PRESENT.opening)
    }

    /// Reads what follows `#` in an address.
    ///
    /// # Errors
    /// [`LinkError`] says what is wrong with the link.
    pub fn from_link(link: &str) -> Result<Self, LinkError> {
        if link.len() > LONGEST {
            return Err(LinkError::TooLong);
        }
        let versions = [PRESENT, FIRST];
        let mut opened = versions.iter().filter_map(|version| Some((version, link.strip_prefix(version.opening)?)));
        let (version, payload) = opened.next().ok_or(LinkError::Version)?;
        let (sum, body) = payload.split_at_checked(8).ok_or(LinkError::Damaged)?;
        let (mut entries, mut assumed) = (Self::default(), String::new());
        let mut listed = body.split(version.entry).skip(1);
        let known = listed.all(|entry| entries.take_linked(version, entry, &mut assumed).is_some());
        if u32::from_str_radix(sum, 16) != Ok(digest((String::from(body) + &assumed).as_bytes())) {
            return Err(LinkError::Damaged);
        }
        if known { Ok(entries) } else { Err(LinkError::NotASetup) }
    }

    /// Takes one entry over; what is assumed for it, if the link leaves it at that, goes into `assumed`.
    fn take_linked(&mut self, version: &Version, entry: &str, assumed: &mut String) -> Option<()> {
        let (name, rest) = entry.split_at_checked(3)?;
        let input = every_input().find(|input| version.letters(input.path) == name)?;
        let in_list = input.in_list().is_some();
        let (index, text) = if in_list || version.as_they_are { rest.split_once(':')? } else { ("", rest) };
        if in_list == index.is_empty() {
            return None;
        }
        let path = input.path.replace('*', index);
        if text == AS_ASSUMED && !version.as_they_are {
            assumed.push_str(input.default);
            return self.set(&path, input.default).then_some(());
        }
        self.set(&path, &version.unescape(text)?).then_some(())
    }
}

/// The path as declared, with `*` in place of an index, and that index.
fn without_index(path: &str) -> (String, &str) {
    let mut parts = path.split('.');
    match (parts.next(), parts.next(), parts.next()) {
        (Some(list), Some(index), Some(field)) => (format!("{list}.*.{field}"), index),
        _ => (path.into(), ""),
    }
}

impl Version {
    /// Three letters drawn from a path as declared; a test sees to it that no two inputs share them.
    fn letters(&self, path: &str) -> String {
        const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
        const CAPITALS: &[u8; 36] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
        let digest = digest(path.as_bytes()) as usize;
        let (alphabet, mut rest): (&[u8], _) =
            if self.as_they_are { (ALPHABET, digest) } else { (CAPITALS, digest >> 4) };
        let mut next = || {
            let letter = alphabet[rest % alphabet.len()];
            rest /= alphabet.len();
            char::from(letter)
        };
        [next(), next(), next()].iter().collect()
    }

    fn unescape(&self, text: &str) -> Option<String> {
        let mut bytes = Vec::new();
        let mut rest = text.as_bytes();
        while let [byte, after @ ..] = rest {
            rest = after;
            bytes.push(match byte {
                byte if *byte == self.space => b' ',
                b'%' => {
                    let (digits, after) = rest.split_at_checked(2)?;
                    rest = after;
                    u8::from_str_radix(core::str::from_utf8(digits).ok()?, 16).ok()?
                }
                byte if self.as_they_are => *byte,
                b'*' => {
                    let (capital, after) = rest.split_first()?;
                    rest = after;
                    *capital
                }
                byte => byte.to_ascii_lowercase(),
            });
        }
        String::from_utf8(bytes).ok()
    }
}

/// The 32-bit FNV-1a hash (RFC 9923), folded so that every bit counts in the low ones.
pub(crate) fn digest(bytes: &[u8]) -> u32 {
    let hash = bytes.iter().fold(0x811c_9dc5_u32, |hash, byte| (hash ^ u32::from(*byte)).wrapping_mul(0x0100_0193));
    hash ^ (hash >> 15)
}

fn escape(text: &str, link: &mut String) {
    for byte in text.bytes() {
        match byte {
            b' ' => link.push('+'),
            b'a'..=b'z' | b'0'..=b'9' | b'.' | b'-' | b'/' => link.push(byte.to_ascii_uppercase().into()),
            b'A'..=b'Z' => link.extend(['*', byte.into()]),
            _ => link.push_str(&format!("%{byte:02X}")),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::setup::Input;
    use alloc::collections::BTreeMap;

    fn sealed(version: &Version, body: &str) -> String {
        format!("{}{:08x}{body}", version.opening, digest(body.as_bytes()))
    }

    #[test]
    fn no_two_inputs_share_their_letters() {
        for version in [FIRST, PRESENT] {
            let mut taken: BTreeMap<String, &Input> = BTreeMap::new();
            for input in every_input() {
                let before = taken.insert(version.letters(input.path), input);
                assert!(before.is_none(), "{} and {before:?}", input.path);
            }
        }
    }

    fn strange() -> Entries {
        Entries::typed(&[
            ("job.name", "a_b ~ %41 *+$ : \u{b5} \u{1f600} \\\"<&#"),
            ("cuts.7.feed", "0,2 mm/rev"),
            ("part.length", ""),
        ])
    }

    #[test]
    fn whatever_was_typed_comes_back() {
        let entries = strange();
        let link = entries.to_link();
        // ISO/IEC 18004, table 5, without the space: alphanumeric mode; all but % stand for themselves in a fragment
        // of an address (RFC 3986, 3.5), and % only opens two digits.
        assert!(
            link.chars().all(|c| c.is_ascii_uppercase() || c.is_ascii_digit() || "$%*+-./:".contains(c)),
            "safe in an address and a code: {link}"
        );
        assert_eq!(Entries::from_link(&link), Ok(entries), "{link}");
    }

    #[test]
    fn links_of_the_first_version_still_open() {
        let link = "1-2da4c96a~uud:a_%5FB~hxN7:0,2_mm/rev~86l:75_kN";
        let mut wanted = Entries::default();
        for (path, text) in [("job.name", "a _B"), ("cuts.7.feed", "0,2 mm/rev"), ("chuck.max_grip", "75 kN")] {
            wanted.set(path, text);
        }
        assert_eq!(Entries::from_link(link), Ok(wanted), "{link}");
    }

    #[test]
    fn a_short_link_is_the_same_set_up_and_refused_where_something_else_is_assumed() {
        for example in crate::examples::EXAMPLES {
            let Ok(entries) = Entries::from_json(example.json) else { panic!("{} is no set-up", example.id) };
            let short = entries.to_short_link();
            assert!(short.len() < entries.to_link().len(), "{}: {short}", example.id);
            assert_eq!(Entries::from_link(&short), Ok(entries), "{}", example.id);
        }
        // As a page would have written it that assumes 80 kN.
        let body = format!("${}*", PRESENT.letters("chuck.max_grip"));
        let link = format!("2-{:08X}{body}", digest(format!("{body}80 kN").as_bytes()));
        assert_eq!(Entries::from_link(&link), Err(LinkError::Damaged), "{link}");
    }

    #[test]
    fn junk_of_any_size_is_refused() {
        assert_eq!(Entries::from_link(""), Err(LinkError::Version), "empty");
        assert_eq!(Entries::from_link(&"x".repeat(1 << 20)), Err(LinkError::TooLong), "a megabyte");
        for junk in ["1-", "1-%%%", "1-0000000\u{b5}", "1-00000000~", "2-", "2-00000000$", "2-0000000\u{b5}"] {
            assert_eq!(Entries::from_link(junk), Err(LinkError::Damaged), "{junk}");
        }
        for version in [FIRST, PRESENT] {
            let (length, feed) = (version.letters("part.length"), version.letters("cuts.*.feed"));
            let refused = |entry: &str| {
                let entry = entry.replace('F', &feed).replace('L', &length);
                let link = sealed(&version, &format!("{}{entry}", version.entry));
                assert_eq!(Entries::from_link(&link), Err(LinkError::NotASetup), "{entry}");
            };
            for entry in ["", "AAA", "AAA:1", "\u{b5}\u{b5}:1", ":"] {
                refused(entry);
            }
            for entry in ["F:1", "F8:1", "F-1:1", "F00:1", "F1", "L%", "L%4", "L%zz", "L%C2"] {
                refused(entry);
            }
            let own: &[&str] = if version.as_they_are { &["L1", "L0:1", "L:%"] } else { &["L1*", "L%4"] };
            own.iter().for_each(|entry| refused(entry));
        }
    }

    #[test]
    fn a_changed_letter_is_noticed() {
        let mut entries = Entries::default();
        entries.set("part.length", "30 mm");
        let link = entries.to_link();
        for at in PRESENT.opening.len()..link.len() {
            let mut changed = link.clone().into_bytes();
            changed[at] = if changed[at] == b'x' { b'y' } else { b'x' };
            let changed = String::from_utf8(changed).unwrap();
            assert!(Entries::from_link(&changed).is_err(), "{changed}");
        }
    }
}
