//! An archive of the site with a list of hashes, once two builds that share nothing have come out the same.

use std::fmt::Write;
use std::fs;
use std::io::Cursor;
use std::path::PathBuf;

use sha2::{Digest, Sha256};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipWriter};

use crate::fault::{Fault, Outcome, While};
use crate::site::{self, Files, read_folder};
use crate::workspace::Workspace;

/// The list of hashes, in the form that `sha256sum --check` reads.
const HASHES: &str = "SHA256SUMS";

/// Builds the site twice, in folders that share nothing, and packs it if both are the same to the byte. Gives the
/// folder with the archive and the hashes.
///
/// # Errors
/// When a build fails, the two differ, or the archive cannot be written.
pub fn write(workspace: &Workspace) -> Outcome<PathBuf> {
    let again = Workspace { target: workspace.target.join("again"), ..workspace.clone() };
    if again.target.exists() {
        fs::remove_dir_all(&again.target).during(again.target.display())?;
    }
    let first = read_folder(&site::assemble(workspace)?)?;
    let second = read_folder(&site::assemble(&again)?)?;
    let apart = different(&first, &second);
    if !apart.is_empty() {
        return Err(Fault::new(format!("two builds differ in {}", apart.join(", "))));
    }
    println!("  two builds are the same in all {} files", first.len());
    let name = format!("holdround-{}.zip", env!("CARGO_PKG_VERSION"));
    let archive = pack(&first)?;
    let list = hashes(
        first
            .iter()
            .map(|(name, content)| (name.as_str(), content.as_slice()))
            .chain([(name.as_str(), archive.as_slice())]),
    );
    let folder = workspace.target.join("release-archive");
    fs::create_dir_all(&folder).during(folder.display())?;
    fs::write(folder.join(HASHES), &list)?;
    fs::write(folder.join(&name), &archive)?;
    println!("  {name} and {HASHES} are in {}", folder.display());
    Ok(folder)
}

/// Names of files that are not the same in both.
fn different<'a>(first: &'a Files, second: &'a Files) -> Vec<&'a str> {
    let names = first.keys().chain(second.keys().filter(|name| !first.contains_key(*name)));
    names.filter(|name| first.get(*name) != second.get(*name)).map(String::as_str).collect()
}

/// The files in order of name, each with the same time, so that the same site makes the same archive.
fn pack(files: &Files) -> Outcome<Vec<u8>> {
    let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
    let options = SimpleFileOptions::default()
        .compression_method(CompressionMethod::Stored)
        .last_modified_time(zip::DateTime::default())
        .unix_permissions(0o644);
    for (name, content) in files {
        archive.start_file(name.as_str(), options)?;
        std::io::Write::write_all(&mut archive, content)?;
    }
    Ok(archive.finish()?.into_inner())
}

fn hashes<'a>(files: impl Iterator<Item = (&'a str, &'a [u8])>) -> String {
    let mut list = String::new();
    for (name, content) in files {
        let hash: String = Sha256::digest(content).iter().map(|byte| format!("{byte:02x}")).collect();
        let _written = writeln!(list, "{hash}  {name}");
    }
    list
}

#[cfg(test)]
mod tests {
    use super::{Files, different, hashes, pack};

    fn files(content: &str) -> Files {
        [("a.css", content), ("b/c.js", "x")].map(|(name, content)| (name.to_owned(), content.into())).into()
    }

    #[test]
    fn the_same_site_makes_the_same_archive_and_another_another() {
        assert_eq!(pack(&files("p {}")).unwrap(), pack(&files("p {}")).unwrap(), "the same");
        assert_ne!(pack(&files("p {}")).unwrap(), pack(&files("q {}")).unwrap(), "another");
    }

    #[test]
    fn what_differs_between_two_builds_is_named() {
        let mut more = files("q {}");
        more.insert("d".into(), Vec::new());
        assert_eq!(different(&files("p {}"), &more), ["a.css", "d"], "what changed and what came");
        assert_eq!(different(&more, &files("p {}")), ["a.css", "d"], "and the other way round");
    }

    /// The digest of "abc" is the first example of NIST's FIPS 180-4.
    #[test]
    fn hashes_are_listed_as_the_usual_tool_checks_them() {
        let wanted = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  a.txt\n";
        assert_eq!(hashes([("a.txt", "abc".as_bytes())].into_iter()), wanted, "hash, two spaces, name");
    }
}
