//! try
use holdround_build::chromium;
fn main() { match chromium::provide() { Ok(c) => println!("{c:?}"), Err(e) => println!("{e}") } }
