//! Figures of outside programs (`tests/reference/`), read for the stages that are compared with them.
//!
//! The facts here need no dynamics of ours: that the files describe one and the same chain, and that
//! the outside programs agree among themselves closely enough to judge others by.
#![allow(dead_code, reason = "the fields are the files' format")]

mod chain;
pub mod fatigue;
mod free_motion;
mod law;
mod motions;

use serde::de::DeserializeOwned;

/// The content of one file of `tests/reference`.
pub fn read<T: DeserializeOwned>(file: &str) -> T {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference").join(file);
    let text = std::fs::read_to_string(&path).unwrap();
    serde_json::from_str(&text).unwrap_or_else(|fault| panic!("{}: {fault}", path.display()))
}
