//! Set-ups as a link: what follows `#` in the page's address. Compact, versioned, safe to receive.
//!
//! `1-`, eight hexadecimal digits that tell whether anything was lost on the way, then the entries, each
//! opened by `~`: three letters that stand for its path, the index if it is an item of a list, `:`, and
//! what was typed, its spaces as `_` and everything unusual in an address as `%` and two hexadecimal digits
//! (RFC 3986).

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use super::Entries;
use super::inputs::every_input;

/// Opens every link of this version.
const OPENING: &str = "1-";
/// Longest link that is read, in characters.
const LONGEST: usize = 32_768;
/// Opens an entry.
const ENTRY: char = '~';

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

impl fmt::Display for LinkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Version => "it is not a link of this page, or one of a newer version",
            Self::TooLong => "it is longer than any set-up can be",
            Self::Damaged => "characters are missing or changed, as when a mail program breaks a line",
            Self::NotASetup => "it is whole, but what it holds is not a set-up",
        })
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
        let mut body = String::new();
        for (path, text) in self.iter() {
            let (general, index) = without_index(path);
            body.push(ENTRY);
            body.push_str(&letters(&general));
            body.push_str(index);
            body.push(':');
            escape(text, &mut body);
        }
        format!("{OPENING}{:08x}{body}", digest(body.as_bytes()))
    }

    /// Reads what follows `#` in an address.
    ///
    /// # Errors
    /// [`LinkError`] says what is wrong with the link.
    pub fn from_link(link: &str) -> Result<Self, LinkError> {
        if link.len() > LONGEST {
            return Err(LinkError::TooLong);
        }
        let payload = link.strip_prefix(OPENING).ok_or(LinkError::Version)?;
        let (sum, body) = payload.split_at_checked(8).ok_or(LinkError::Damaged)?;
        if u32::from_str_radix(sum, 16) != Ok(digest(body.as_bytes())) {
            return Err(LinkError::Damaged);
        }
        let mut entries = Self::default();
        for entry in body.split(ENTRY).skip(1) {
            entries.take_linked(entry).ok_or(LinkError::NotASetup)?;
        }
        Ok(entries)
    }

    fn take_linked(&mut self, entry: &str) -> Option<()> {
        let (key, text) = entry.split_once(':')?;
        let (name, index) = key.split_at_checked(3)?;
        let input = every_input().find(|input| letters(input.path) == name)?;
        if input.path.contains('*') == index.is_empty() {
            return None;
        }
        let path = input.path.replace('*', index);
        self.set(&path, &unescape(text)?).then_some(())
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

/// Three letters drawn from a path as declared; a test sees to it that no two inputs share them.
fn letters(path: &str) -> String {
    const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    let digest = digest(path.as_bytes());
    [0, 6, 12].map(|shift| char::from(ALPHABET[(digest >> shift) as usize & 63])).iter().collect()
}

/// The 32-bit FNV-1a hash (RFC 9923), folded so that every bit counts in the low ones.
fn digest(bytes: &[u8]) -> u32 {
    let hash = bytes.iter().fold(0x811c_9dc5_u32, |hash, byte| (hash ^ u32::from(*byte)).wrapping_mul(0x0100_0193));
    hash ^ (hash >> 15)
}

fn escape(text: &str, link: &mut String) {
    for byte in text.bytes() {
        match byte {
            b' ' => link.push('_'),
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'.' | b',' | b'-' | b'+' | b'/' => link.push(byte.into()),
            _ => link.push_str(&format!("%{byte:02X}")),
        }
    }
}

fn unescape(text: &str) -> Option<String> {
    let mut bytes = Vec::new();
    let mut rest = text.as_bytes();
    while let [byte, after @ ..] = rest {
        rest = after;
        bytes.push(match byte {
            b'_' => b' ',
            b'%' => {
                let (digits, after) = rest.split_at_checked(2)?;
                rest = after;
                u8::from_str_radix(core::str::from_utf8(digits).ok()?, 16).ok()?
            }
            byte => *byte,
        });
    }
    String::from_utf8(bytes).ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::setup::Input;
    use alloc::collections::BTreeMap;

    fn sealed(body: &str) -> String {
        format!("{OPENING}{:08x}{body}", digest(body.as_bytes()))
    }

    #[test]
    fn no_two_inputs_share_their_letters() {
        let mut taken: BTreeMap<String, &Input> = BTreeMap::new();
        for input in every_input() {
            let before = taken.insert(letters(input.path), input);
            assert!(before.is_none(), "{} and {before:?}", input.path);
        }
    }

    #[test]
    fn whatever_was_typed_comes_back() {
        let mut entries = Entries::default();
        for (path, text) in
            [("job.name", "a_b ~ %41 : \u{b5} \u{1f600} \\\"<&#"), ("cuts.7.feed", "0,2 mm/rev"), ("part.length", "")]
        {
            assert!(entries.set(path, text), "{path} is declared");
        }
        let link = entries.to_link();
        assert!(
            link.chars().all(|c| c.is_ascii_alphanumeric() || "-~:_%.,+/".contains(c)),
            "safe in an address: {link}"
        );
        assert_eq!(Entries::from_link(&link), Ok(entries), "{link}");
    }

    #[test]
    fn junk_of_any_size_is_refused() {
        assert_eq!(Entries::from_link(""), Err(LinkError::Version), "empty");
        assert_eq!(Entries::from_link(&"x".repeat(1 << 20)), Err(LinkError::TooLong), "a megabyte");
        for junk in ["1-", "1-%%%", "1-0000000\u{b5}", "1-00000000~"] {
            assert_eq!(Entries::from_link(junk), Err(LinkError::Damaged), "{junk}");
        }
        for strange in ["~", "~AAA", "~AAA:1", "~\u{b5}\u{b5}:1", "~:"] {
            assert_eq!(Entries::from_link(&sealed(strange)), Err(LinkError::NotASetup), "an unknown entry: {strange}");
        }
        let (length, feed) = (letters("part.length"), letters("cuts.*.feed"));
        for strange in ["~F:1", "~F8:1", "~F-1:1", "~F00:1", "~L:%", "~L:%4", "~L:%zz", "~L:%C2", "~L1", "~L0:1"] {
            let link = sealed(&strange.replace('F', &feed).replace('L', &length));
            assert_eq!(Entries::from_link(&link), Err(LinkError::NotASetup), "{strange}");
        }
    }

    #[test]
    fn a_changed_letter_is_noticed() {
        let mut entries = Entries::default();
        entries.set("part.length", "30 mm");
        let link = entries.to_link();
        for at in OPENING.len()..link.len() {
            let mut changed = link.clone().into_bytes();
            changed[at] = if changed[at] == b'x' { b'y' } else { b'x' };
            let changed = String::from_utf8(changed).unwrap();
            assert!(Entries::from_link(&changed).is_err(), "{changed}");
        }
    }
}
