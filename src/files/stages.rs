//! The log of a bench as RON and as a table (CSV): texts with units, every fault in its place.

pub(super) mod entry;
mod finish;
mod ron_text;
mod table_text;
pub(super) mod value;

pub use finish::finish;
pub use value::{balance, meter, moment, note, planed, side, stage};

use super::document::Kind;
use super::fault::{Fault, Faults, Source};
use crate::bat::sizes::{Size, find};
use crate::workshop::stages::BenchLog;

/// What stands in the field `schema` of a log.
pub const SCHEMA: &str = "backlift/stages/1";

/// A log to start from: invented, a note at every field.
pub const STARTER: &str = include_str!("../../scenarios/bench-log.ron");

/// Columns of a log as a table.
pub const COLUMNS: [&str; 22] = [
    "bat",
    "size",
    "invented",
    "target_mass",
    "target_balance",
    "target_ten_swings",
    "stage",
    "at",
    "mass",
    "balance",
    "ten_swings",
    "meter",
    "air",
    "planed",
    "asked",
    "on",
    "swings",
    "time",
    "handle",
    "side",
    "grains",
    "note",
];

pub(super) const LOG: Kind = Kind {
    what: "a log of the bench",
    noun: "log of the bench",
    named: "its .ron or .csv file",
    like: "a log is some pages of text; name the .ron or .csv file that holds it",
    none: "write one to start from with `backlift stages --new FILE`",
};

/// Reads a log, as RON if it starts with a bracket (after notes), else as a table. `sizes` are the trade's. All
/// faults come together, and nothing is left out silently.
pub fn read(source: Source, sizes: &[Size]) -> Result<BenchLog, Faults> {
    let is_ron = source
        .text()
        .lines()
        .map(str::trim_start)
        .find(|it| !it.is_empty() && !it.starts_with("//") && !it.starts_with("#!"))
        .is_some_and(|it| it.starts_with(['(', '/']));
    if is_ron { ron_text::read(source, sizes) } else { table_text::read(source, sizes) }
}

/// The log as RON.
pub fn to_ron(log: &BenchLog) -> Result<String, Fault> {
    ron_text::write(log)
}

/// The log as a table.
pub fn to_table(log: &BenchLog) -> Result<String, Fault> {
    table_text::write(log)
}

/// Where a part of a log was written.
trait Written {
    /// A fault at a field of one bat.
    fn at_bat(&self, bat: usize, field: &str, message: &str, help: &str) -> Fault;
    /// A fault at a field of one entry of one bat.
    fn at_entry(&self, bat: usize, entry: usize, field: &str, message: &str, help: &str) -> Fault;
}

/// What the core says of a log, in its places.
fn judged(log: &BenchLog, sizes: &[Size], written: &dyn Written) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (n, bat) in log.bats.iter().enumerate() {
        if log.bats.iter().take(n).any(|it| it.label == bat.label) {
            let message = format!("there is another bat {:?}", bat.label);
            faults.push(written.at_bat(n, "bat", &message, "give each bat a label of its own"));
        }
        let size = match find(sizes, &bat.size) {
            Ok(size) => size,
            Err(unknown) => {
                faults.push(written.at_bat(n, "size", &unknown.to_string(), &unknown.mend()));
                continue;
            }
        };
        for it in bat.faults(size) {
            let (message, help) = (it.fault.to_string(), it.fault.mend());
            faults.push(written.at_entry(n, it.entry, it.field, &message, help));
        }
    }
    faults
}
