//! The page as one file that needs no host: opened from a disk, or placed in another page's frame.
//!
//! Styles, scripts, icon and module are written into the page, and its policy allows exactly
//! these, by their hashes.

use base64::Engine;
use base64::prelude::BASE64_STANDARD;

use crate::bind::Bound;
use crate::fault::{Fault, Outcome, While};
use crate::offline::integrity;
use crate::site::{Files, replace_only, text};

/// Writes the one-file page from the site's handwritten files and the bound module.
///
/// # Errors
/// When the page's head has another form than expected here, or a script or style contains a
/// character sequence that would end it early.
pub fn write(files: &Files, bound: &Bound) -> Outcome<String> {
    let mut allowed = Allowed::default();
    let page = text(files, "index.html")?;
    // Alone it has no page of evidence beside it; the styles hide what leads there.
    let page = replace_only(page, "<html lang=\"en\">", "<html lang=\"en\" data-alone>")?;
    let page = without(&page, "<link rel=\"manifest\"", ">")?;
    let page = with_icon(&page, files)?;
    let page = with_styles(&page, files, &mut allowed)?;
    let page = with_scripts(&page, files, bound, &mut allowed)?;
    let page = with_policy(&page, &allowed)?;
    refuse_addresses(&page)?;
    Ok(page)
}

#[derive(Default)]
struct Allowed {
    scripts: Vec<String>,
    styles: Vec<String>,
}

fn hash(content: &str) -> String {
    format!("'{}'", integrity(content.as_bytes()))
}

/// The part of the page from `opening` through the next `closing`.
fn part<'a>(page: &'a str, opening: &str, closing: &str) -> Option<&'a str> {
    let from = page.find(opening)?;
    let inside = page.get(from..)?;
    let length = inside.find(closing)? + closing.len();
    inside.get(..length)
}

fn expected<'a>(page: &'a str, opening: &str, closing: &str) -> Outcome<&'a str> {
    part(page, opening, closing).ok_or_else(|| Fault::new(format!("index.html has no {opening}")))
}

fn without(page: &str, opening: &str, closing: &str) -> Outcome<String> {
    replace_only(page, expected(page, opening, closing)?, "")
}

fn value<'a>(tag: &'a str, attribute: &str) -> Outcome<&'a str> {
    let opening = format!(" {attribute}=\"");
    part(tag, &opening, "\"")
        .and_then(|_| tag.split_once(&opening))
        .and_then(|(_, rest)| rest.split_once('"'))
        .map(|(value, _)| value)
        .ok_or_else(|| Fault::new(format!("{tag} has no {attribute}")))
}

fn inline(content: &str, element: &str) -> Outcome<()> {
    let lower = content.to_ascii_lowercase();
    let ends_early = lower.contains(&format!("</{element}")) || lower.contains("<!--");
    if ends_early || content.contains('\r') {
        return Err(Fault::new(format!(
            "a {element} contains </{element}, <!-- or a carriage return: it cannot be inlined"
        )));
    }
    Ok(())
}

fn with_icon(page: &str, files: &Files) -> Outcome<String> {
    let tag = expected(page, "<link rel=\"icon\"", ">")?;
    let name = value(tag, "href")?;
    let data = format!("data:image/svg+xml;base64,{}", BASE64_STANDARD.encode(text(files, name)?));
    replace_only(page, tag, &tag.replace(name, &data))
}

fn with_styles(page: &str, files: &Files, allowed: &mut Allowed) -> Outcome<String> {
    let mut page = page.to_owned();
    while let Some(tag) = part(&page, "<link rel=\"stylesheet\"", ">") {
        let name = value(tag, "href")?;
        let style = text(files, name)?;
        inline(style, "style").during(name)?;
        allowed.styles.push(hash(style));
        page = replace_only(&page, tag, &format!("<style>{style}</style>"))?;
    }
    Ok(page)
}

fn with_scripts(page: &str, files: &Files, bound: &Bound, allowed: &mut Allowed) -> Outcome<String> {
    let tag = expected(page, "<script type=\"module\"", "</script>")?;
    let boot = text(files, value(tag, "src")?)?;
    inline(boot, "script").during("boot script")?;
    inline(&bound.glue, "script").during("glue")?;
    allowed.scripts.extend([hash(&bound.glue), hash(boot)]);
    let module = BASE64_STANDARD.encode(&bound.module);
    let scripts = format!(
        "<script type=\"application/octet-stream\" id=\"module\">{module}</script>\n\
         <script>{}</script>\n\
         <script type=\"module\">{boot}</script>",
        bound.glue
    );
    replace_only(page, tag, &scripts)
}

fn with_policy(page: &str, allowed: &Allowed) -> Outcome<String> {
    let tag = expected(page, "<meta http-equiv=\"Content-Security-Policy\"", ">")?;
    let policy = format!(
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; \
         script-src {} 'wasm-unsafe-eval'; style-src {}; img-src data:; \
         base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; \
         trusted-types holdround-markup\">",
        allowed.scripts.join(" "),
        allowed.styles.join(" ")
    );
    replace_only(page, tag, &policy)
}

/// A file that stands alone may not name another in its head.
fn refuse_addresses(page: &str) -> Outcome<()> {
    let head = part(page, "<head>", "</head>").unwrap_or(page);
    for tag in ["<link ", "<script "].into_iter().flat_map(|opening| head.split(opening).skip(1)) {
        let tag = tag.split('>').next().unwrap_or(tag);
        let names_another = [" src=\"", "href=\""]
            .into_iter()
            .any(|name| tag.split_once(name).is_some_and(|(_, address)| !address.starts_with("data:")));
        if names_another {
            return Err(Fault::new(format!("the single file still names another file: {tag}")));
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::{Bound, Files, hash, write};

    const PAGE: &str = "<html lang=\"en\"><head>\
        <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'self'\">\
        <link rel=\"icon\" href=\"icon.svg\"><link rel=\"manifest\" href=\"m\">\
        <link rel=\"stylesheet\" href=\"a.css\"><link rel=\"stylesheet\" href=\"b.css\">\
        <script type=\"module\" src=\"boot.js\"></script></head>";

    fn single(boot: &str, page: &str) -> Result<String, String> {
        let files: Files =
            [("index.html", page), ("icon.svg", "<svg/>"), ("a.css", "a{}"), ("b.css", "b{}"), ("boot.js", boot)]
                .map(|(name, content)| (name.to_owned(), content.into()))
                .into();
        let bound = Bound { glue: "let wasm_bindgen;".into(), module: b"\0asm".to_vec() };
        write(&files, &bound).map_err(|fault| fault.to_string())
    }

    #[test]
    fn everything_is_inside_and_allowed_by_its_hash() {
        let page = single("boot()", PAGE).unwrap();
        for inside in ["<style>a{}</style>", "<style>b{}</style>", ">boot()</script>", ">AGFzbQ==</script>"] {
            assert!(page.contains(inside), "{inside} is not in {page}");
        }
        for content in ["a{}", "b{}", "boot()", "let wasm_bindgen;"] {
            assert!(page.contains(&hash(content)), "the policy does not allow {content}: {page}");
        }
        assert!(!page.contains("'self'") && !page.contains("manifest"), "the host's parts are still in {page}");
    }

    /// The digest of the empty string is printed in many places, among them NIST's examples of
    /// FIPS 180-4; in base64 it is what a policy must say of an empty script.
    #[test]
    fn a_hash_is_written_as_a_policy_wants_it() {
        assert_eq!(hash(""), "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='", "SHA-256 of nothing");
    }

    #[test]
    fn a_script_that_would_end_early_is_refused() {
        assert!(single("x = '</script>'", PAGE).is_err(), "an early end must be refused");
    }

    #[test]
    fn another_file_in_the_head_is_refused() {
        let page = PAGE.replace("</head>", "<script defer src=\"other.js\"></script></head>");
        assert!(single("boot()", &page).is_err(), "the second script is not inlined and must be refused");
    }
}
