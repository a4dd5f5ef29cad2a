//! Putting the finished site together: a folder of plain files for any file host.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use crate::bind::{self, Flavour, NAME};
use crate::evidence::{self, EVIDENCE};
use crate::fault::{Fault, Outcome, While};
use crate::first_words::{self, SCRIPT};
use crate::workspace::Workspace;
use crate::{offline, single_file};

/// The one-file edition's name within the site.
pub const SINGLE_FILE: &str = "holdround.html";

/// Files by their path within the site, in the order of the paths.
pub type Files = BTreeMap<String, Vec<u8>>;

/// Builds the page and writes the whole site, in place of an earlier one.
///
/// # Errors
/// When the page does not compile, or one of its files lacks what the build fills in.
pub fn assemble(workspace: &Workspace) -> Outcome<PathBuf> {
    let product = bind::compile(workspace)?;
    let files = files(workspace, &product)?;
    let folder = workspace.site();
    if folder.exists() {
        fs::remove_dir_all(&folder).during(folder.display())?;
    }
    for (name, content) in &files {
        let path = folder.join(name);
        fs::create_dir_all(path.parent().unwrap_or(&folder))?;
        fs::write(&path, content).during(path.display())?;
    }
    println!("  the site is in {}", folder.display());
    Ok(folder)
}

fn files(workspace: &Workspace, product: &PathBuf) -> Outcome<Files> {
    let mut files = read_folder(&workspace.www())?;
    for (name, content) in files.iter_mut().filter(|(name, _)| name.ends_with(".css")) {
        *content = without_comments(std::str::from_utf8(content).during(name)?).into_bytes();
    }
    let words = first_words::fill_in(text(&files, SCRIPT)?, &workspace.root.join("web/language/de.po"))?;
    files.insert(SCRIPT.into(), words.into_bytes());
    let single = single_file::write(&files, &bind::bind(workspace, product, Flavour::SingleFile)?)?;
    let bound = bind::bind(workspace, product, Flavour::Site)?;
    files.insert(format!("{NAME}.js"), bound.glue.into_bytes());
    files.insert(format!("{NAME}_bg.wasm"), bound.module);
    files.insert(EVIDENCE.into(), evidence::write(workspace)?.into_bytes());
    offline::fill_in(&mut files)?;
    files.insert(SINGLE_FILE.into(), single.into_bytes());
    Ok(files)
}

/// All files below a folder.
///
/// # Errors
/// When one cannot be read or has a name that is not UTF-8.
pub fn read_folder(folder: &Path) -> Outcome<Files> {
    let mut files = Files::new();
    let mut waiting = vec![folder.to_path_buf()];
    while let Some(next) = waiting.pop() {
        for entry in fs::read_dir(&next).during(next.display())? {
            let path = entry?.path();
            if path.is_dir() {
                waiting.push(path);
            } else {
                files.insert(name(folder, &path)?, fs::read(&path).during(path.display())?);
            }
        }
    }
    Ok(files)
}

fn name(folder: &Path, path: &Path) -> Outcome<String> {
    path.strip_prefix(folder)?
        .iter()
        .map(|part| part.to_str())
        .collect::<Option<Vec<_>>>()
        .map(|parts| parts.join("/"))
        .ok_or_else(|| Fault::new(format!("{} is not UTF-8", path.display())))
}

/// A style sheet without its comments: they are for whoever reads its source.
fn without_comments(sheet: &str) -> String {
    let mut pieces = sheet.split("/*");
    let first = pieces.next().unwrap_or_default();
    let after = |piece: &'_ str| piece.split_once("*/").map(|(_, rest)| rest.trim_start_matches('\n').to_owned());
    std::iter::once(first.to_owned()).chain(pieces.filter_map(after)).collect()
}

/// The text of one of the site's files.
///
/// # Errors
/// When there is no such file or it is not UTF-8.
pub fn text<'a>(files: &'a Files, name: &str) -> Outcome<&'a str> {
    let content = files.get(name).ok_or_else(|| Fault::new(format!("the site has no file {name}")))?;
    std::str::from_utf8(content).during(name)
}

/// Puts `new` in place of `old`, which must stand in the text exactly once.
///
/// # Errors
/// When it stands there never or more than once.
pub fn replace_only(text: &str, old: &str, new: &str) -> Outcome<String> {
    match text.matches(old).count() {
        1 => Ok(text.replacen(old, new, 1)),
        count => Err(Fault::new(format!("{old} must stand once in the file, but stands {count} times"))),
    }
}

#[cfg(test)]
mod tests {
    use super::{replace_only, without_comments};

    #[test]
    fn comments_are_left_out_of_style_sheets() {
        let sheet = "/* all */\na { b: c; } /* why */\n/* d * / */e { f: g; }\n/* open";
        assert_eq!(without_comments(sheet), "a { b: c; } e { f: g; }\n", "nothing else");
    }

    #[test]
    fn a_place_to_fill_in_must_be_there_once() {
        assert_eq!(replace_only("a-b", "-", "+").unwrap(), "a+b", "the only one is replaced");
        assert!(replace_only("ab", "-", "+").is_err(), "none must be refused");
        assert!(replace_only("a-b-c", "-", "+").is_err(), "two must be refused");
    }
}
