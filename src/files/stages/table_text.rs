//! A log as a table: a weighing a line; size and target of a bat stand in its first line, or in each.

use super::super::document::values::MISSING;
use super::super::document::{Part, Text};
use super::super::fault::{Fault, Faults, Source};
use super::super::table::{Form, Table};
use super::entry::{EntryV1, all_texts, entry, target};
use super::value::{length_text, mass_text, time_text};
use super::{COLUMNS, judged};
use crate::bat::sizes::{Size, named};
use crate::workshop::stages::{BatLog, BenchLog};

const FORM: Form = Form {
    columns: &COLUMNS,
    needed: &[
        (&["bat"], "add a column bat: a label for each bat"),
        (&["size"], "add a column size: the trade size of each bat"),
        (&["stage"], "add a column stage: cleft, pressed, roughed and so on"),
        (&["at"], "add a column at: day and time of each weighing"),
        (&["mass"], "add a column mass: what the scale said"),
    ],
    rows: "weighings",
    most_rows: 5000,
    too_many: "leave at most 5000: one log a season",
    empty: "write one to start from with `backlift stages --new FILE`",
};

const TARGETS: [&str; 3] = ["target_mass", "target_balance", "target_ten_swings"];

/// A bat with the rows of its entries.
struct Rows {
    log: BatLog,
    rows: Vec<usize>,
}

/// Reads a log.
pub(super) fn read(source: Source, sizes: &[Size]) -> Result<BenchLog, Faults> {
    let table = Table::of(source, &FORM)?;
    let mut faults = Vec::new();
    let mut bats: Vec<Rows> = Vec::new();
    let mut invented = false;
    for row in 0..table.rows.len() {
        let text = |column: &str| Some(table.value(row, column)).filter(|it| !it.is_empty());
        let mut keep = |field: &str, message: &str, help: &str| {
            faults.push(table.fault(row, field, message, help));
        };
        match text("invented").map(str::to_lowercase).as_deref() {
            None | Some("no") => {}
            Some("yes") => invented = true,
            Some(_) => keep("invented", "it is neither yes nor no", "write yes or no"),
        }
        let label = text("bat").unwrap_or_default();
        if label.is_empty() {
            keep("bat", MISSING, "write the label of the bat");
        }
        let n = bats.iter().position(|it| it.log.label == label).unwrap_or(bats.len());
        if n == bats.len() {
            let target = target(TARGETS.map(text), TARGETS, &mut keep);
            let size = text("size").unwrap_or_default().to_owned();
            if size.is_empty() {
                keep("size", MISSING, "write the trade size, like 6");
            }
            let log =
                BatLog { label: label.to_owned(), size, target, card: None, entries: Vec::new() };
            bats.push(Rows { log, rows: Vec::new() });
        }
        let Some(bat) = bats.get_mut(n) else { continue };
        // What stands in a later line of a bat must be what stands in its first.
        if let Some(&first) = bat.rows.first() {
            for column in ["size"].into_iter().chain(TARGETS) {
                let (here, there) = (table.value(row, column), table.value(first, column));
                if !here.is_empty() && here != there {
                    let message = format!("{here:?} here, {there:?} in the bat's first line");
                    keep(column, &message, "write it once, or the same each time");
                }
            }
        }
        let mut written = EntryV1::default();
        for column in EntryV1::NAMES {
            if let (Some(field), Some(value)) = (written.at(&[column]), text(column)) {
                *field = Some(Text(value.to_owned()));
            }
        }
        let length_m = named(sizes, &bat.log.size).map(Size::length_m);
        let before = bat.log.last().map(|it| it.stage);
        bat.log.entries.extend(entry(&written, length_m, before, &mut keep));
        bat.rows.push(row);
    }
    if bats.is_empty() {
        let help = "add a line for each weighing";
        faults.push(
            Fault::new("there is no weighing").at(&table.source, table.header.clone()).help(help),
        );
    }
    let (logs, rows): (Vec<_>, Vec<_>) = bats.into_iter().map(|it| (it.log, it.rows)).unzip();
    let log = BenchLog { invented, bats: logs };
    if faults.is_empty() {
        // What is said of a bat itself stands in its first line.
        faults = judged(&log, sizes, |bat, entry, field, message, help| {
            let row = rows.get(bat).and_then(|it| it.get(entry.unwrap_or(0)));
            table.fault(row.copied().unwrap_or(0), field, message, help)
        });
    }
    if faults.is_empty() { Ok(log) } else { Err(Faults(faults)) }
}

/// The log as a table.
pub fn write(log: &BenchLog) -> Result<String, Fault> {
    let mut writer = csv::WriterBuilder::new()
        .comment(Some(b'#'))
        .terminator(csv::Terminator::Any(b'\n'))
        .from_writer(Vec::new());
    let unwritable = |error: &dyn std::fmt::Display| {
        Fault::new(format!("the log cannot be written as a table: {error}"))
    };
    writer.write_record(COLUMNS).map_err(|it| unwritable(&it))?;
    let or_empty = |it: Option<String>| it.unwrap_or_default();
    for bat in &log.bats {
        for mut it in all_texts(&bat.entries) {
            let of_bat = [
                bat.label.clone(),
                bat.size.clone(),
                if log.invented { "yes" } else { "no" }.to_owned(),
                or_empty(bat.target.mass_kg.map(mass_text)),
                or_empty(bat.target.balance_m.map(length_text)),
                or_empty(bat.target.ten_swings_s.map(time_text)),
            ];
            let of_entry = COLUMNS
                .into_iter()
                .skip(of_bat.len())
                .map(|column| or_empty(it.at(&[column]).and_then(|it| it.take()).map(|it| it.0)));
            let record: Vec<String> = of_bat.into_iter().chain(of_entry).collect();
            writer.write_record(record).map_err(|it| unwritable(&it))?;
        }
    }
    let bytes = writer.into_inner().map_err(|it| unwritable(&it))?;
    String::from_utf8(bytes).map_err(|it| unwritable(&it))
}
