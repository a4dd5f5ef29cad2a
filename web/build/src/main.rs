//! `cargo run` builds the site and serves it; `cargo run -- site` only builds it;
//! `cargo run -- test` checks everything; `cargo run -- release` packs the site with a list of hashes.

use std::env;
use std::process::ExitCode;

use holdround_build::fault::{Fault, Outcome};
use holdround_build::serve::Server;
use holdround_build::workspace::Workspace;
use holdround_build::{checks, release, site};

/// The port that is tried first, so that a browser finds its kept files again the next day.
const PORT: u16 = 4317;

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(fault) => {
            eprintln!("{fault}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Outcome<()> {
    let workspace = Workspace::find()?;
    let arguments: Vec<String> = env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        [] => serve(&workspace),
        ["site"] => site::assemble(&workspace).map(drop),
        ["test"] => checks::run(&workspace),
        ["release"] => release::write(&workspace).map(drop),
        _ => Err(Fault::new("usage: cargo run [-- site | -- test | -- release]")),
    }
}

fn serve(workspace: &Workspace) -> Outcome<()> {
    let folder = site::assemble(workspace)?;
    let server = Server::start(folder.clone(), PORT).or_else(|_taken| Server::start(folder, 0))?;
    println!("Holdround is at {}  (Ctrl+C stops it)", server.url());
    server.wait();
    Ok(())
}
