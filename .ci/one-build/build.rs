//! Nothing to do: see `Cargo.toml` beside it.
fn main() {}
