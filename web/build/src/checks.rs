//! Everything that must hold before a change is taken: one step a line.

use std::process::Command;
use std::time::Instant;

use crate::fault::{Fault, Outcome};
use crate::target::{BARE, WASM};
use crate::workspace::Workspace;
use crate::{advisories, axe, chromium, dependencies, examples, origins, shell, site, size, target};

type Step = (&'static str, fn(&Workspace) -> Outcome<()>);

const STEPS: [Step; 15] = [
    ("the code is formatted", formatted),
    ("clippy finds nothing, natively", linted),
    ("clippy finds nothing, for the browser", linted_for_the_browser),
    ("every library may be used, and the lock file fits", dependencies::check),
    ("no library has a fault that is known", advisories::check),
    ("the core needs no operating system", core_alone),
    ("the site is built and opens as one file", built),
    ("no file of the site names another host", kept_to_itself),
    ("the site is within its size", sized),
    ("unit, reference, documentation and browser tests pass", tested),
    ("the page's own tests pass in a browser", page_tested),
    ("what takes time in the page is told beside what is wanted", timed),
    ("the benchmarks compile", benches_compile),
    ("the documentation has no fault", documented),
    ("all that the core offers is shown in examples", shown),
];

/// What the random cases of the property tests are drawn from here, so that the same change is judged by the
/// same cases every time. A `cargo test` by hand draws new ones.
const DRAWN_FROM: (&str, &str) = ("PROPTEST_RNG_SEED", "20260");

/// Runs every step, even after one has failed, and closes with a line that counts them. A step that could not be
/// checked is counted apart: it is no pass, and only a failure fails.
///
/// # Errors
/// When a step has failed.
pub fn run(workspace: &Workspace) -> Outcome<()> {
    let (mut failed, mut unchecked) = (Vec::new(), Vec::new());
    for (claim, step) in STEPS {
        println!("\n== {claim}");
        let start = Instant::now();
        let outcome = step(workspace);
        let seconds = start.elapsed().as_secs_f64();
        match outcome {
            Ok(()) => println!("== yes: {claim} ({seconds:.0} s)"),
            Err(fault) if fault.is_unchecked() => {
                println!("== NOT CHECKED: {claim} ({seconds:.0} s)\n   {fault}");
                unchecked.push(claim);
            }
            Err(fault) => {
                println!("== NO: {claim} ({seconds:.0} s)\n   {fault}");
                failed.push(claim);
            }
        }
    }
    println!();
    for claim in &failed {
        println!("failed: {claim}");
    }
    for claim in &unchecked {
        println!("not checked: {claim}");
    }
    let passed = STEPS.len() - failed.len() - unchecked.len();
    println!("{passed} passed, {} failed, {} not checked", failed.len(), unchecked.len());
    if failed.is_empty() { Ok(()) } else { Err(Fault::new("not everything holds")) }
}

fn formatted(workspace: &Workspace) -> Outcome<()> {
    shell::run(workspace.cargo().args(["fmt", "--all", "--check"]))
}

fn linted(workspace: &Workspace) -> Outcome<()> {
    shell::run(workspace.cargo().args(["clippy", "--workspace", "--all-targets", "--", "-D", "warnings"]))
}

fn linted_for_the_browser(workspace: &Workspace) -> Outcome<()> {
    target::provide(workspace, WASM)?;
    shell::run(
        workspace
            .cargo()
            .args(["clippy", "--package=holdround-web", "--all-targets", "--target", WASM])
            .args(["--", "-D", "warnings"]),
    )
}

fn core_alone(workspace: &Workspace) -> Outcome<()> {
    target::provide(workspace, BARE)?;
    for features in [&["--no-default-features"][..], &[]] {
        shell::run(workspace.cargo().args(["build", "--package=holdround-core", "--target", BARE]).args(features))?;
    }
    Ok(())
}

fn built(workspace: &Workspace) -> Outcome<()> {
    site::assemble(workspace).map(drop)
}

fn kept_to_itself(workspace: &Workspace) -> Outcome<()> {
    origins::check(&workspace.site())
}

fn sized(workspace: &Workspace) -> Outcome<()> {
    size::check(&workspace.site())
}

/// Where the tests lie that take the page's time: beside others they would measure those.
const TIMING: &str = "timing::";

/// The runner has no tests, and would be compiled once more with the features that the workspace's crates share.
fn tested(workspace: &Workspace) -> Outcome<()> {
    shell::run(
        tests(workspace)?
            .args(["--workspace", "--exclude=holdround-runner", "--no-fail-fast"])
            .args(["--", "--skip", TIMING])
            .env(DRAWN_FROM.0, DRAWN_FROM.1),
    )
}

fn timed(workspace: &Workspace) -> Outcome<()> {
    shell::run(tests(workspace)?.args(["--package=holdround-tests", "--test=page"]).args([
        "--",
        "--nocapture",
        "--test-threads=1",
        TIMING,
    ]))
}

/// `cargo test` with the variables that the tests' own crate reads.
fn tests(workspace: &Workspace) -> Outcome<Command> {
    let chromium = chromium::provide()?;
    let mut command = workspace.cargo();
    command
        .arg("test")
        .env("HOLDROUND_SITE", workspace.site())
        .env("HOLDROUND_CHROMIUM", chromium.browser)
        .env("HOLDROUND_CHROMEDRIVER", chromium.driver)
        .env("HOLDROUND_AXE", axe::provide(workspace)?);
    Ok(command)
}

fn page_tested(workspace: &Workspace) -> Outcome<()> {
    target::provide(workspace, WASM)?;
    shell::run(
        workspace
            .cargo()
            .args(["test", "--package=holdround-web", "--lib", "--tests", "--target", WASM])
            .env("CHROMEDRIVER", chromium::provide()?.driver)
            // The default of 20 s says more about the machine than about the page.
            .env("WASM_BINDGEN_TEST_TIMEOUT", "600"),
    )
}

fn benches_compile(workspace: &Workspace) -> Outcome<()> {
    shell::run(workspace.cargo().args(["test", "--workspace", "--exclude=holdround-runner", "--benches", "--no-run"]))
}

fn documented(workspace: &Workspace) -> Outcome<()> {
    shell::run(workspace.cargo().args(["doc", "--workspace", "--no-deps"]).env("RUSTDOCFLAGS", "-D warnings"))
}

fn shown(workspace: &Workspace) -> Outcome<()> {
    examples::check(&workspace.target.join("doc"))
}
