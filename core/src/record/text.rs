//! Documents as JSON text (RFC 8259), the same text for the same document wherever it is written.

use alloc::string::String;

use crate::setup::Document;

/// The document as JSON text.
///
/// ```
/// use holdround_core::{record::to_text, setup::Document};
/// let list = Document::List(vec![Document::Number("1.50".into()), Document::Text("3\" jaws\n".into())]);
/// assert_eq!(to_text(&list), r#"[1.50,"3\" jaws\u000a"]"#);
/// ```
#[must_use]
pub fn to_text(document: &Document) -> String {
    let mut text = String::new();
    write(document, &mut text);
    text
}

fn write(document: &Document, text: &mut String) {
    match document {
        Document::Nothing => text.push_str("null"),
        // Whoever reads a number too large for it may call it something that JSON has no word for.
        Document::Number(number) if number.ends_with(|last: char| last.is_ascii_digit()) => text.push_str(number),
        Document::Text(words) | Document::Number(words) | Document::Strange(words) => quote(words, text),
        Document::List(items) => {
            text.push('[');
            for (at, item) in items.iter().enumerate() {
                part(at, text);
                write(item, text);
            }
            text.push(']');
        }
        Document::Group(fields) => {
            text.push('{');
            for (at, (name, value)) in fields.iter().enumerate() {
                part(at, text);
                quote(name, text);
                text.push(':');
                write(value, text);
            }
            text.push('}');
        }
    }
}

fn part(at: usize, text: &mut String) {
    if at > 0 {
        text.push(',');
    }
}

fn quote(words: &str, text: &mut String) {
    text.push('"');
    for letter in words.chars() {
        match letter {
            '"' | '\\' => text.extend(['\\', letter]),
            control if control < ' ' => {
                text.push_str("\\u00");
                for digit in [control as u32 >> 4, control as u32 & 15] {
                    text.extend(char::from_digit(digit, 16));
                }
            }
            letter => text.push(letter),
        }
    }
    text.push('"');
}
