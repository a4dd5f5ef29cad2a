//! Set-ups as a link: what follows `#` in the page's address. Compact, versioned, safe to receive.
//!
//! `1` and a dash, then the set-up's JSON, deflated (RFC 1951) and written in base64url (RFC 4648).

use alloc::string::String;
use core::fmt;

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use miniz_oxide::{deflate::compress_to_vec, inflate::decompress_to_vec_with_limit};

use super::Entries;

/// Opens every link of this version.
const OPENING: &str = "1-";
/// Longest link that is read, in characters.
const LONGEST: usize = 32_768;
/// Largest set-up a link may unfold to, in bytes.
const LARGEST: usize = 131_072;
/// The densest compression the library offers.
const DENSEST: u8 = 10;

/// Why a link cannot be opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LinkError {
    /// It does not begin as links of this version do.
    Version,
    /// It is longer than any set-up.
    TooLong,
    /// Characters are missing or changed.
    Damaged,
    /// It unfolds, but not to a set-up.
    NotASetup,
}

impl fmt::Display for LinkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Version => "it is not a link of this page, or one of a newer version",
            Self::TooLong => "it is longer than any set-up can be",
            Self::Damaged => "characters are missing or changed, as when a mail program breaks a line",
            Self::NotASetup => "it opens, but what it holds is not a set-up",
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
        let mut link = String::from(OPENING);
        URL_SAFE_NO_PAD.encode_string(compress_to_vec(self.to_json().as_bytes(), DENSEST), &mut link);
        link
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
        let bytes = URL_SAFE_NO_PAD.decode(payload).map_err(|_| LinkError::Damaged)?;
        let json = decompress_to_vec_with_limit(&bytes, LARGEST).map_err(|_| LinkError::Damaged)?;
        let json = core::str::from_utf8(&json).map_err(|_| LinkError::Damaged)?;
        Self::from_json(json).map_err(|_| LinkError::NotASetup)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn junk_of_any_size_is_refused() {
        assert_eq!(Entries::from_link(""), Err(LinkError::Version), "empty");
        assert_eq!(Entries::from_link(&"x".repeat(1 << 20)), Err(LinkError::TooLong), "a megabyte");
        assert_eq!(Entries::from_link("1-%%%"), Err(LinkError::Damaged), "not base64url");
        let bomb = compress_to_vec(&alloc::vec![b' '; 4 << 20], DENSEST);
        let link = alloc::format!("{OPENING}{}", URL_SAFE_NO_PAD.encode(bomb));
        assert_eq!(Entries::from_link(&link), Err(LinkError::Damaged), "unfolds beyond the bound");
        let other = compress_to_vec(br#"{"schema":1,"part":{"colour":"red"}}"#, DENSEST);
        let link = alloc::format!("{OPENING}{}", URL_SAFE_NO_PAD.encode(other));
        assert_eq!(Entries::from_link(&link), Err(LinkError::NotASetup), "an unknown entry");
    }
}
