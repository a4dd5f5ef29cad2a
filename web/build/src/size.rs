//! What a visitor downloads.

use std::io::Write;
use std::path::Path;

use crate::evidence::EVIDENCE;
use crate::fault::{Fault, Outcome};
use crate::site::{SINGLE_FILE, read_folder};

/// The most the page with all it needs may weigh as hosts send it, compressed with Brotli, in bytes.
pub const BUDGET: usize = 456_600;

/// Prints the size of every file and holds their sum to the budget. The one-file edition, which repeats the
/// others, and the page of evidence, which the calculator does not need, are printed but not counted.
///
/// # Errors
/// When the site is over its budget.
pub fn check(site: &Path) -> Outcome<()> {
    let mut sum = 0;
    println!("  {:>9} {:>9}  file", "bytes", "brotli");
    for (name, content) in read_folder(site)? {
        let sent = brotli(&content)?;
        println!("  {:>9} {sent:>9}  {name}", content.len());
        if ![SINGLE_FILE, EVIDENCE].contains(&name.as_str()) {
            sum += sent;
        }
    }
    println!("  {:>9} {sum:>9}  all but {SINGLE_FILE} and {EVIDENCE}, of {BUDGET} allowed", "");
    if sum > BUDGET {
        return Err(Fault::new(format!("the site weighs {sum} bytes, more than the {BUDGET} it may")));
    }
    Ok(())
}

fn brotli(content: &[u8]) -> Outcome<usize> {
    let mut packer = brotli::CompressorWriter::new(Vec::new(), 4096, 11, 22);
    packer.write_all(content)?;
    packer.flush()?;
    Ok(packer.into_inner().len())
}
