//! Turns the catalogue of German texts into what the page searches: a sorted number for each English text, and the
//! German ones in the same order, a line each. The English texts themselves stand in the program already.

use std::env;
use std::error::Error;
use std::fs;
use std::path::Path;

use polib::po_file;

#[path = "src/language/key.rs"]
mod key;

use key::key;

/// The catalogue, beside this file.
const CATALOGUE: &str = "language/de.po";

/// Where the source of a text is that the page has no need of: see `holdround_build::first_words`.
const ELSEWHERE: &str = "www/boot.js";

fn main() -> Result<(), Box<dyn Error>> {
    println!("cargo::rerun-if-changed={CATALOGUE}");
    println!("cargo::rerun-if-changed=src/language/key.rs");
    let catalogue = po_file::parse(Path::new(CATALOGUE)).map_err(|error| error.to_string())?;
    let mut pairs = Vec::new();
    for message in catalogue.messages().filter(|message| message.source() != ELSEWHERE) {
        let (english, german) = (message.msgid(), message.msgstr().map_err(|error| error.to_string())?);
        if german.is_empty() || german.contains('\n') {
            return Err(format!("{english:?} needs a German text of one line").into());
        }
        pairs.push((key(english), german));
    }
    pairs.sort_unstable();
    if let Some(twins) = pairs.windows(2).find(|pair| pair[0].0 == pair[1].0) {
        return Err(format!("two English texts have the key of {:?}", twins[0].1).into());
    }
    let (keys, texts): (Vec<_>, Vec<_>) = pairs.into_iter().unzip();
    let out = env::var("OUT_DIR")?;
    fs::write(Path::new(&out).join("keys.rs"), format!("static KEYS: [u32; {}] = {keys:?};\n", keys.len()))?;
    fs::write(Path::new(&out).join("german.txt"), texts.join("\n"))?;
    Ok(())
}
