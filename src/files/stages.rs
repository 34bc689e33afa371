//! The log of a bench as RON and as a table (CSV): texts with units, every fault in its place.

pub(super) mod entry;
mod ron_text;
mod table_text;
pub(super) mod value;

pub use ron_text::write as to_ron;
pub use table_text::write as to_table;
pub use value::{balance, finish, meter, moment, note, planed, side, stage};

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

/// What the core says of a log. `placed` puts it in its place: of one bat, and there of one entry or of the bat
/// itself, the field; with message and mend.
fn judged(
    log: &BenchLog,
    sizes: &[Size],
    placed: impl Fn(usize, Option<usize>, &str, &str, &str) -> Fault,
) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (n, bat) in log.bats.iter().enumerate() {
        if log.bats.iter().take(n).any(|it| it.label == bat.label) {
            let message = format!("there is another bat {:?}", bat.label);
            faults.push(placed(n, None, "bat", &message, "give each bat a label of its own"));
        }
        let size = match find(sizes, &bat.size) {
            Ok(size) => size,
            Err(unknown) => {
                faults.push(placed(n, None, "size", &unknown.to_string(), &unknown.mend()));
                continue;
            }
        };
        for it in bat.faults(size) {
            let (message, help) = (it.fault.to_string(), it.fault.mend());
            faults.push(placed(n, Some(it.entry), it.field, &message, help));
        }
    }
    faults
}
