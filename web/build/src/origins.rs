//! That no file of the site names another host.

use std::path::Path;

use crate::fault::{Fault, Outcome};
use crate::site::read_folder;

/// The name of the vector drawings' namespace, which is a name and is never asked for (Namespaces in XML, W3C).
const NAMESPACE: &[u8] = b"http://www.w3.org/2000/svg";

/// Looks through every file of the site, the module included.
///
/// # Errors
/// With every address of another host, and the file it stands in.
pub fn check(site: &Path) -> Outcome<()> {
    let mut found = Vec::new();
    for (name, content) in read_folder(site)? {
        found.extend(addresses(&content).into_iter().map(|address| format!("{name} names {address}")));
    }
    if found.is_empty() { Ok(()) } else { Err(Fault::new(found.join("\n   "))) }
}

/// The addresses of hosts in a file: with their scheme, or with two strokes after a quote, a bracket or an equals sign.
fn addresses(content: &[u8]) -> Vec<String> {
    const SHOWN: usize = 60;
    let strokes = content.windows(2).enumerate().filter(|(_, pair)| pair == b"//").map(|(at, _)| at);
    let opens = |at: usize| match content[..at].last() {
        Some(b':') => content[..at - 1].last().is_some_and(u8::is_ascii_alphabetic),
        Some(b'"' | b'\'' | b'(' | b'=' | b'`') => content.get(at + 2).is_some_and(u8::is_ascii_alphanumeric),
        _ => false,
    };
    let is_name = |at: usize| at >= 5 && content[at - 5..].starts_with(NAMESPACE);
    strokes
        .filter(|at| opens(*at) && !is_name(*at))
        .map(|at| String::from_utf8_lossy(&content[at.saturating_sub(8)..(at + SHOWN).min(content.len())]).into_owned())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::addresses;

    #[test]
    fn addresses_of_hosts_are_found_and_comments_are_none() {
        for bad in
            ["fetch('https://host.example/x')", "<img src=\"//host.example/x\">", "url(//host.example)", "wss://h"]
        {
            assert_eq!(addresses(bad.as_bytes()).len(), 1, "{bad} names a host");
        }
        for good in ["// https is a word", "a = b; // c", "xmlns=\"http://www.w3.org/2000/svg\"", "\"//\"", "1 // 2"] {
            assert_eq!(addresses(good.as_bytes()), [""; 0], "{good} names none");
        }
    }
}
