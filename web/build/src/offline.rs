//! What the service worker must know: which files to keep, and the version they make up together.

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use sha2::{Digest, Sha256};

use crate::fault::Outcome;
use crate::site::{Files, replace_only, text};

/// The service worker's name, which never changes: a browser that knows it by another would
/// keep the old site for good.
pub const WORKER: &str = "sw.js";

/// Fills the list of all other files, each with its hash, and the hash of all contents into the service worker.
///
/// # Errors
/// When the service worker is missing or lacks a place to fill in.
pub fn fill_in(files: &mut Files) -> Outcome<()> {
    let version = version(files);
    let list = serde_json::to_string(&addresses(files))?;
    let worker = replace_only(text(files, WORKER)?, "\"VERSION\"", &format!("\"{version}\""))?;
    let worker = replace_only(&worker, "[\"FILES\"]", &list)?;
    files.insert(WORKER.into(), worker.into_bytes());
    Ok(())
}

/// The first page is kept under its folder's address: some hosts redirect from its file name,
/// and a browser refuses a redirected answer from a service worker.
fn addresses(files: &Files) -> Vec<(&str, String)> {
    files
        .iter()
        .filter(|(name, _)| *name != WORKER)
        .map(|(name, content)| (if name == "index.html" { "./" } else { name.as_str() }, integrity(content)))
        .collect()
}

/// The hash of a content as browsers compare it (Subresource Integrity, W3C).
pub fn integrity(content: &[u8]) -> String {
    format!("sha256-{}", BASE64_STANDARD.encode(Sha256::digest(content)))
}

fn version(files: &Files) -> String {
    let mut hash = Sha256::new();
    for (name, content) in files {
        hash.update(name);
        hash.update([0]);
        hash.update((content.len() as u64).to_le_bytes());
        hash.update(content);
    }
    hash.finalize().iter().take(8).map(|byte| format!("{byte:02x}")).collect()
}

#[cfg(test)]
mod tests {
    use super::{Files, WORKER, fill_in, integrity, text};

    fn filled(style: &str) -> String {
        let mut files = Files::from([
            ("index.html".into(), Vec::new()),
            ("style.css".into(), style.into()),
            (WORKER.into(), b"const version = \"VERSION\"; const files = [\"FILES\"];".to_vec()),
        ]);
        fill_in(&mut files).unwrap();
        text(&files, WORKER).unwrap().to_owned()
    }

    #[test]
    fn the_list_names_every_file_but_the_worker() {
        let worker = filled("p {}");
        let list = format!(r#"[["./","{}"],["style.css","{}"]]"#, integrity(b""), integrity(b"p {}"));
        assert!(worker.contains(&list), "the list is wrong in {worker}");
    }

    #[test]
    fn the_version_changes_with_any_content_and_only_with_it() {
        assert_eq!(filled("p {}"), filled("p {}"), "the same files must make the same version");
        assert_ne!(filled("p {}"), filled("q {}"), "another content must make another version");
    }
}
