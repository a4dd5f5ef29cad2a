//! The names by which module and script know each other, without the digits that wasm-bindgen ends them in: those keep
//! apart what several crates import, stand in both, and cannot be packed.

use std::collections::{BTreeMap, BTreeSet};
use std::mem;

/// Digits of the number that may end a name.
const DIGITS: usize = 16;

/// Takes the number off every name that ends in one, and numbers those that would be the same. Tells what each was
/// called, and what it is called now.
pub(crate) fn shorten<'a>(names: impl Iterator<Item = &'a mut String>) -> BTreeMap<String, String> {
    let mut taken = BTreeSet::new();
    let mut renamed = BTreeMap::new();
    for name in names {
        let plain = plain(name).to_owned();
        let mut short = plain.clone();
        let mut twins = 1;
        while !taken.insert(short.clone()) {
            twins += 1;
            short = format!("{plain}_{twins}");
        }
        if short != *name {
            renamed.insert(mem::replace(name, short.clone()), short);
        }
    }
    renamed
}

/// A name without the number it ends in.
fn plain(name: &str) -> &str {
    let Some((plain, number)) = name.len().checked_sub(DIGITS).and_then(|at| name.split_at_checked(at)) else {
        return name;
    };
    let ends = number.bytes().all(|digit| digit.is_ascii_hexdigit());
    let before = plain.strip_suffix("__h").or(plain.strip_suffix('_'));
    before.filter(|before| ends && !before.is_empty()).unwrap_or(name)
}

/// The script with what was renamed called so.
#[must_use]
pub(crate) fn rename(script: &str, renamed: &BTreeMap<String, String>) -> String {
    let is_of_name = |sign: char| sign.is_ascii_alphanumeric() || matches!(sign, '_' | '$');
    script
        .split_inclusive(|sign| !is_of_name(sign))
        .flat_map(|piece| {
            let name = piece.trim_end_matches(|sign| !is_of_name(sign));
            [renamed.get(name).map_or(name, String::as_str), &piece[name.len()..]]
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_go_and_what_would_be_the_same_is_told_apart() {
        let mut names = [
            "__wbg_set_0123456789abcdef",
            "__wbg_set_fedcba9876543210",
            "invoke__h0123456789abcdef",
            "start",
            "0123456789abcdef",
        ]
        .map(str::to_owned);
        let renamed = shorten(names.iter_mut());
        assert_eq!(names, ["__wbg_set", "__wbg_set_2", "invoke", "start", "0123456789abcdef"]);
        let script = "{ __wbg_set_fedcba9876543210: wasm.invoke__h0123456789abcdef($x__wbg_set_0123456789abcdef) }";
        assert_eq!(
            rename(script, &renamed),
            "{ __wbg_set_2: wasm.invoke($x__wbg_set_0123456789abcdef) }",
            "whole names"
        );
    }
}
