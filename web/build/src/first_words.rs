//! What may have to be said before the page's module has started: the script has it in English, and in German out of
//! the catalogue.

use std::path::Path;

use polib::po_file;

use crate::fault::{Fault, Outcome, While};
use crate::site::replace_only;

/// The script that says it.
pub const SCRIPT: &str = "boot.js";
const ENGLISH: &str = "const ENGLISH = {\n";
const GERMAN: &str = "const GERMAN = {};";

/// The texts of the script, each with the name it has there.
///
/// # Errors
/// When they do not stand a line each where they are looked for.
pub fn english(script: &str) -> Outcome<Vec<(&str, String)>> {
    let block = script.split_once(ENGLISH).and_then(|(_, after)| after.split_once("\n};"));
    let (block, _) = block.ok_or_else(|| Fault::new(format!("{SCRIPT} has no {ENGLISH}")))?;
    let word = |line| {
        let (name, text): (&str, &str) = str::trim(line).trim_end_matches(',').split_once(": ")?;
        Some((name, serde_json::from_str(text).ok()?))
    };
    let words = block.lines().map(|line| word(line).ok_or_else(|| Fault::new(format!("{SCRIPT}: {line} is no text"))));
    words.collect()
}

/// The script with its German texts filled in.
///
/// # Errors
/// When the catalogue cannot be read, or has no pair for one of the texts.
pub fn fill_in(script: &str, catalogue: &Path) -> Outcome<String> {
    let catalogue = po_file::parse(catalogue).map_err(|error| error.to_string()).during(catalogue.display())?;
    let mut german = String::from("const GERMAN = {\n");
    for (name, text) in english(script)? {
        let pair = catalogue.find_message(None, &text, None).and_then(|message| message.msgstr().ok());
        let pair = pair.ok_or_else(|| Fault::new(format!("{SCRIPT}: {text:?} is not in the catalogue")))?;
        german += &format!("  {name}: {},\n", serde_json::to_string(pair)?);
    }
    replace_only(script, GERMAN, &(german + "};"))
}

#[cfg(test)]
mod tests {
    use super::*;

    const BOOT: &str = "const ENGLISH = {\n  use: \"Use it\",\n  said: \"It said: \",\n};\nconst GERMAN = {};\n";

    #[test]
    fn the_script_speaks_both_languages() {
        let folder = tempfile::tempdir().unwrap();
        let catalogue = folder.path().join("de.po");
        let written = |pairs: &str| {
            let head = "msgid \"\"\nmsgstr \"\"\n\"Language: de\\n\"\n\"Content-Type: text/plain; charset=UTF-8\\n\"\n";
            std::fs::write(&catalogue, format!("{head}\n{pairs}")).unwrap();
            fill_in(BOOT, &catalogue).map_err(|fault| fault.to_string())
        };
        let one = "msgid \"Use it\"\nmsgstr \"„Nimm“ es\"\n";
        let both = written(&format!("{one}\nmsgid \"It said: \"\nmsgstr \"Es sagte: \"\n")).unwrap();
        assert!(both.contains("const GERMAN = {\n  use: \"„Nimm“ es\",\n  said: \"Es sagte: \",\n};"), "{both}");
        let refused = written(one).unwrap_err();
        assert!(refused.contains("It said: "), "what is not in the catalogue is named: {refused}");
    }
}
