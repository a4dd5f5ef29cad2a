//! From the crate `holdround-web` to a WebAssembly module and the script that loads it.

use std::fs;
use std::path::PathBuf;

use wasm_bindgen_cli_support::Bindgen;

use crate::fault::{Fault, Outcome, While};
use crate::names;
use crate::shell;
use crate::target::{self, WASM};
use crate::workspace::Workspace;

/// The name the crate's library has among cargo's products; the glue and the module carry it on.
pub const NAME: &str = "holdround_web";

/// How the glue is loaded.
#[derive(Debug, Clone, Copy)]
pub enum Flavour {
    /// As a module that fetches the WebAssembly from beside itself.
    Site,
    /// As a plain script that is handed the WebAssembly's bytes.
    SingleFile,
}

/// A WebAssembly module with its glue.
#[derive(Debug)]
pub struct Bound {
    /// The script that loads the module.
    pub glue: String,
    /// The module.
    pub module: Vec<u8>,
}

/// Compiles the page for the browser, in release mode, and gives the path of the product.
///
/// # Errors
/// When the target cannot be had or the crate does not compile.
pub fn compile(workspace: &Workspace) -> Outcome<PathBuf> {
    target::provide(workspace, WASM)?;
    let libraries = workspace.cargo_home()?.join("registry").join("src");
    let registries = fs::read_dir(&libraries).into_iter().flatten().flatten();
    let hidden = registries.map(|registry| format!("--remap-path-prefix={}=library", registry.path().display()));
    shell::run(
        workspace
            .cargo()
            .args(["build", "--release", "--package=holdround-web", "--lib", "--target", WASM])
            // Where the libraries lie on this machine is nobody's business, and would make every machine's module another.
            .env("CARGO_ENCODED_RUSTFLAGS", hidden.collect::<Vec<_>>().join("\u{1f}")),
    )?;
    Ok(workspace.target.join(WASM).join("release").join(NAME).with_extension("wasm"))
}

/// Makes the glue for a compiled page.
///
/// # Errors
/// When the product cannot be read, or was made by another release of wasm-bindgen.
pub fn bind(workspace: &Workspace, product: &PathBuf, flavour: Flavour) -> Outcome<Bound> {
    let folder = workspace.target.join("bound").join(format!("{flavour:?}"));
    let mut bindgen = Bindgen::new();
    let renamed = match flavour {
        Flavour::Site => bindgen.web(true).map(|bindgen| bindgen.omit_default_module_path(false)),
        Flavour::SingleFile => bindgen.no_modules(true).map(|bindgen| bindgen.omit_default_module_path(true)),
    }
    .and_then(|bindgen| {
        bindgen
            .input_path(product)
            .typescript(false)
            .remove_name_section(true)
            .remove_producers_section(true)
            .generate_output()
    })
    .and_then(|mut output| {
        let module = output.wasm_mut();
        let imports = module.imports.iter_mut().map(|import| &mut import.name);
        let renamed = names::shorten(imports.chain(module.exports.iter_mut().map(|export| &mut export.name)));
        output.emit(&folder).map(|()| renamed)
    })
    .map_err(|error| format!("{error:#}"))
    .during("binding the page's module")?;
    let bound = Bound {
        glue: names::rename(&fs::read_to_string(folder.join(NAME).with_extension("js"))?, &renamed),
        module: fs::read(folder.join(format!("{NAME}_bg.wasm")))?,
    };
    for folder in [workspace.cargo_home()?, workspace.root.clone()] {
        if stands_in(&bound.module, folder.as_os_str().as_encoded_bytes()) {
            return Err(Fault::new(format!("the module names {}, a folder of this machine", folder.display())));
        }
    }
    Ok(bound)
}

fn stands_in(module: &[u8], folder: &[u8]) -> bool {
    module.windows(folder.len()).any(|window| window == folder)
}

#[cfg(test)]
mod tests {
    use super::stands_in;

    #[test]
    fn a_folder_is_found_wherever_it_stands_in_the_module() {
        assert!(stands_in(b"\0asm /home/me/.cargo/x", b"/home/me/.cargo"), "in the middle");
        assert!(!stands_in(b"\0asm cargo/x", b"/home/me/.cargo"), "not what was put in its place");
    }
}
