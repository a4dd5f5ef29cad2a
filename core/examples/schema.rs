//! Prints the JSON Schema of a set-up:
//!
//! ```text
//! cargo run -q -p holdround-core --example schema > setup.schema.json
//! ```

fn main() {
    println!("{:#}", holdround_core::setup::json_schema());
}
