//! How long the findings of a set-up take, and which part of it takes how long.
fn main() {
    divan::main();
}
