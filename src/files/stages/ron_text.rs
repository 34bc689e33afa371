//! A log as RON.

use serde::{Deserialize, Serialize};

use super::super::document::{Places, Text, laid_out, options, part, version_fault, word_at};
use super::super::fault::{Fault, Faults, Source};
use super::entry::{EntryV1, all_texts, entry, target};
use super::value::{length_text, mass_text, time_text};
use super::{SCHEMA, judged};
use crate::bat::sizes::{Size, named};
use crate::workshop::stages::{BatLog, BenchLog, Entry, Target};

/// A log as it stands in a file, version 1.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename = "Log")]
struct LogV1 {
    schema: Option<Text>,
    invented: bool,
    bats: Vec<BatV1>,
}

#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename = "Bat")]
struct BatV1 {
    bat: Option<Text>,
    size: Option<Text>,
    #[serde(skip_serializing_if = "Option::is_none")]
    target: Option<TargetV1>,
    entries: Vec<EntryV1>,
}

part! {
    /// What a bat is to come to.
    TargetV1 = "Target" {
        mass,
        balance,
        ten_swings,
    }
}

/// Reads a log.
pub(super) fn read(source: Source, sizes: &[Size]) -> Result<BenchLog, Faults> {
    let file: LogV1 =
        options().from_str(source.text()).map_err(|fault| unreadable(&source, fault))?;
    let places = Places::of(source);
    if places.outline().is_cut {
        let fault = Fault::new("there is more in it than in any log of the bench");
        return Err(fault.at(places.source(), 0..0).help("write one log a season").into());
    }
    let mut faults = Vec::new();
    faults.extend(version_fault("schema", file.schema.as_ref(), SCHEMA, &places));
    if file.bats.is_empty() {
        let help = "add bats: [(bat: \"A\", size: \"6\", entries: [(stage: \"cleft\", …)])]";
        faults.push(places.fault("bats", "there is no bat", help));
    }
    let bats: Vec<BatLog> = file
        .bats
        .iter()
        .enumerate()
        .map(|(n, it)| bat(it, n, sizes, &places, &mut faults))
        .collect();
    let log = BenchLog { invented: file.invented, bats };
    // Entries that could not be read are missing from the log: its order is judged when all are there.
    if faults.is_empty() {
        faults = judged(&log, sizes, |bat, entry, field, message, help| {
            let path = match entry {
                Some(entry) => format!("bats.{bat}.entries.{entry}.{field}"),
                None => format!("bats.{bat}.{field}"),
            };
            places.fault(&path, message, help)
        });
    }
    if faults.is_empty() { Ok(log) } else { Err(Faults(faults)) }
}

fn bat(file: &BatV1, n: usize, sizes: &[Size], places: &Places, faults: &mut Vec<Fault>) -> BatLog {
    fn text(it: &Option<Text>) -> Option<&str> {
        it.as_ref().map(|it| it.0.as_str())
    }
    let mut name = |field: &str, written: &Option<Text>, like: &str| {
        let it = text(written).map(str::trim).filter(|it| !it.is_empty() && it.len() <= 200);
        if it.is_none() {
            let help = format!("add {field}: {like}");
            faults.push(places.fault(&format!("bats.{n}.{field}"), "it is missing", &help));
        }
        it.unwrap_or_default().to_owned()
    };
    let (label, size) = (name("bat", &file.bat, "\"A\""), name("size", &file.size, "\"6\""));
    let wanted = file.target.clone().unwrap_or_default();
    let texts = [text(&wanted.mass), text(&wanted.balance), text(&wanted.ten_swings)];
    let target = target(texts, ["mass", "balance", "ten_swings"], &mut |field, message, help| {
        faults.push(places.fault(&format!("bats.{n}.target.{field}"), message, help));
    });
    let length_m = named(sizes, &size).map(Size::length_m);
    let mut entries = Vec::new();
    for (k, it) in file.entries.iter().enumerate() {
        let before = entries.last().map(|it: &Entry| it.stage);
        entries.extend(entry(it, length_m, before, &mut |field, message, help| {
            faults.push(places.fault(&format!("bats.{n}.entries.{k}.{field}"), message, help));
        }));
    }
    if file.entries.is_empty() {
        let help = "add entries: [(stage: \"cleft\", at: \"2026-11-26 14:00\", mass: \"1.62 kg\")]";
        faults.push(places.fault(&format!("bats.{n}.entries"), "nothing was weighed", help));
    }
    BatLog { label, size, target, card: None, entries }
}

/// Not RON, half written, or a field that there is not.
fn unreadable(source: &Source, fault: ron::error::SpannedError) -> Fault {
    let start = fault.span.start;
    let what = match fault.code {
        ron::Error::Eof | ron::Error::ExpectedStringEnd => "the log ends early".to_owned(),
        other => other.to_string(),
    };
    Fault::new(format!("this is not a whole log of the bench: {what}"))
        .at(source, word_at(source.text(), start.line, start.col))
        .help("compare with the log that `backlift stages --new FILE` writes")
}

/// The log as RON.
pub fn write(log: &BenchLog) -> Result<String, Fault> {
    let some = |it: String| Some(Text(it));
    let bat = |it: &BatLog| BatV1 {
        bat: some(it.label.clone()),
        size: some(it.size.clone()),
        target: (it.target != Target::default()).then(|| TargetV1 {
            mass: it.target.mass_kg.map(|it| Text(mass_text(it))),
            balance: it.target.balance_m.map(|it| Text(length_text(it))),
            ten_swings: it.target.ten_swings_s.map(|it| Text(time_text(it))),
        }),
        entries: all_texts(&it.entries).collect(),
    };
    let file = LogV1 {
        schema: some(SCHEMA.to_owned()),
        invented: log.invented,
        bats: log.bats.iter().map(bat).collect(),
    };
    let layout = ron::ser::PrettyConfig::new().indentor("    ").new_line("\n");
    Ok(laid_out(&file, layout)? + "\n")
}
