//! The fields of a record and of a boring.

/// Longest text of any field, in bytes; a set-up's link is the longest.
pub const LONGEST_TEXT: usize = 32_768;
/// Longest picture, in bytes of text: some 200 kB as JPEG.
pub const LONGEST_IMAGE: usize = 280_000;
/// Opens every picture: JPEG (ISO/IEC 10918-1) as a data address (RFC 2397).
const PICTURE: &str = "data:image/jpeg;base64,";

/// Whether `text` is a picture as photos hold one, and nothing a page could take for something else.
///
/// ```
/// use holdround_core::record::is_picture;
/// assert!(is_picture("data:image/jpeg;base64,/9j/4A=="));
/// assert!(!is_picture("data:image/svg+xml;base64,/9j/4A=="), "no other kind");
/// assert!(!is_picture("data:image/jpeg;base64,\"><b>"), "nothing that closes a quote");
/// ```
#[must_use]
pub fn is_picture(text: &str) -> bool {
    let base64 = |byte: u8| byte.is_ascii_alphanumeric() || b"+/=".contains(&byte);
    text.len() <= LONGEST_IMAGE
        && text.strip_prefix(PICTURE).is_some_and(|rest| !rest.is_empty() && rest.bytes().all(base64))
}

/// One field as the page shows it.
#[derive(Clone, Copy, Debug)]
pub struct Field {
    /// Its name in the file.
    pub key: &'static str,
    /// Its name in words.
    pub name: &'static str,
    /// What to write in it.
    pub hint: &'static str,
}

const fn field(key: &'static str, name: &'static str, hint: &'static str) -> Field {
    Field { key, name, hint }
}

/// What is written of a set of jaws; the set-up's `link` and `changed` are written by the page.
pub static FIELDS: &[Field] = &[
    field("name", "Name of the jaws", "As stamped on them."),
    field("chuck", "Chuck", "Its number or name in your shop."),
    field("numbers", "Jaw on master jaw", "Such as 1 on 1, 2 on 2, 3 on 3."),
    field("tooth", "Tooth", "The first groove of the blank sits on it."),
    field("scribe", "Scribe mark", "Where the line on jaw and master jaw is."),
    field("material", "Material", ""),
    field("recuts", "Recuts left", ""),
    field("notes", "Remarks", ""),
];

/// What is written of a boring.
pub static BORING_FIELDS: &[Field] = &[
    field("date", "Date", "Year, month, day: 2027-03-01."),
    field("diameter", "Diameter", "With its unit."),
    field("pressure", "Pressure", "With its unit."),
    field("taper", "Taper, per side", "With its unit; more metal at the tip is positive."),
];
