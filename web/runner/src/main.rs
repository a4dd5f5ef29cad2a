//! Runs the page's unit tests in a headless browser: cargo calls it with the compiled tests.

fn main() -> anyhow::Result<()> {
    let arguments = std::env::args_os().filter(|argument| argument != "--quiet");
    wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(arguments)
}
