//! That all the core offers is shown in running examples.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use crate::fault::{Fault, Outcome};
use crate::site::{Files, read_folder};

/// The crates whose documentation is looked through, as cargo names their folders.
const CRATES: [&str; 2] = ["holdround_core", "holdround_mechanics"];
/// Kinds of items that must be shown, as their pages are named; a constant is told by its own words.
const KINDS: [&str; 4] = ["struct", "enum", "fn", "trait"];

/// Holds every public type, function and method to an example of its module, on whichever page of it, that names it.
/// Cargo has written the documentation into `doc`, and the examples are run with the tests.
///
/// # Errors
/// With every item that no example names.
pub fn check(doc: &Path) -> Outcome<()> {
    let mut unshown = Vec::new();
    let mut items = 0;
    for name in CRATES {
        for (module, pages) in modules(&read_folder(&doc.join(name))?) {
            let shown = Shown::on(&pages);
            let asked: BTreeSet<Item<'_>> = pages.iter().flat_map(|(page, text)| items_of(page, text)).collect();
            items += asked.len();
            unshown.extend(
                asked.into_iter().filter(|item| !shown.has(item)).map(|item| format!("{name}/{module}: {item:?}")),
            );
        }
    }
    println!("  {items} items are looked for in examples");
    match (items, unshown.is_empty()) {
        (0, _) => Err(Fault::new("the documentation has no items")),
        (_, true) => Ok(()),
        (_, false) => Err(Fault::new(unshown.join("\n   "))),
    }
}

#[derive(Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Item<'a> {
    Named(&'a str),
    Method(&'a str, &'a str),
}

/// The pages of each module, by the name of their file.
fn modules(files: &Files) -> BTreeMap<String, BTreeMap<String, String>> {
    let mut modules = BTreeMap::<String, BTreeMap<String, String>>::new();
    for (path, content) in files {
        let (module, page) = path.rsplit_once('/').unwrap_or(("", path));
        let text = String::from_utf8_lossy(content);
        // Where an item once lay, a page only sends on.
        if page.ends_with(".html") && !text.contains("http-equiv=\"refresh\"") {
            modules.entry(module.into()).or_default().insert(page.into(), text.into_owned());
        }
    }
    modules
}

/// The item of a page and its own methods.
fn items_of<'a>(page: &'a str, text: &'a str) -> Vec<Item<'a>> {
    let mut words = page.split('.');
    let (Some(kind), Some(name)) = (words.next(), words.next()) else { return Vec::new() };
    if !KINDS.contains(&kind) {
        return Vec::new();
    }
    let methods = text.split("<section id=\"method.").skip(1).filter_map(|rest| {
        let (method, rest) = rest.split_once('"')?;
        // Those of a trait it has are the trait's.
        rest.starts_with(" class=\"method\"").then_some(Item::Method(name, method))
    });
    [Item::Named(name)].into_iter().chain(methods).collect()
}

/// The names in the examples of a module.
struct Shown {
    named: BTreeSet<String>,
    called: BTreeSet<String>,
}

impl Shown {
    fn on(pages: &BTreeMap<String, String>) -> Self {
        let mut shown = Self { named: BTreeSet::new(), called: BTreeSet::new() };
        for text in pages.values() {
            for example in text.split("<pre class=\"rust rust-example-rendered\">").skip(1) {
                shown.read(&untagged(example.split("</pre>").next().unwrap_or_default()));
            }
        }
        shown
    }

    fn read(&mut self, code: &str) {
        let mut before = ' ';
        for piece in code.split_inclusive(|c: char| !c.is_alphanumeric() && c != '_') {
            let word = piece.trim_end_matches(|c: char| !c.is_alphanumeric() && c != '_');
            if !word.is_empty() {
                self.named.insert(word.into());
                if matches!(before, '.' | ':') {
                    self.called.insert(word.into());
                }
            }
            before = piece.chars().next_back().unwrap_or(before);
        }
    }

    fn has(&self, item: &Item<'_>) -> bool {
        match item {
            Item::Named(name) => self.named.contains(*name),
            Item::Method(_, name) => self.called.contains(*name),
        }
    }
}

/// Code without the marks that colour it.
fn untagged(code: &str) -> String {
    code.split('<').map(|piece| piece.split_once('>').map_or(piece, |(_, rest)| rest)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_no_example_of_its_module_names_is_told() {
        let page = |methods: &[(&str, &str)], code: &str| {
            let methods: String = methods
                .iter()
                .map(|(name, class)| format!("<section id=\"method.{name}\" class=\"{class}\">"))
                .collect();
            format!("{methods}<pre class=\"rust rust-example-rendered\"><code>{code}</code></pre>")
        };
        let methods = [("height", "method"), ("of", "method"), ("fmt", "method trait-impl")];
        let code = "<span class=\"kw\">let </span>wave = Wave::of(height)";
        let files: Files = [
            ("fit/struct.Wave.html", page(&methods, code)),
            ("fit/fn.fit.html", page(&[], "refit()")),
            ("fit/struct.Old.html", "<meta http-equiv=\"refresh\">".into()),
            ("other/index.html", page(&[], "fit().height()")),
        ]
        .map(|(name, text)| (name.to_owned(), text.into_bytes()))
        .into();
        let pages = &modules(&files)["fit"];
        let shown = Shown::on(pages);
        let unshown: Vec<Item<'_>> =
            pages.iter().flat_map(|(page, text)| items_of(page, text)).filter(|item| !shown.has(item)).collect();
        let wanted = [Item::Named("fit"), Item::Method("Wave", "height")];
        assert_eq!(unshown, wanted, "part of a word, a name that is not called, and another module do not count");
    }
}
