//! Readings from the nets: a table (CSV), a swing a line, every fault at its line and column.

mod row;

use std::path::Path;

use super::document::{Kind, text_of_file};
use super::fault::{Fault, Faults, Source};
use super::table::{Form, Table};
use crate::measurement::nets::{NetFault, NetReading};
use crate::measurement::plan::Scenario;
use crate::stroke::PULL;

/// The columns there may be.
pub const COLUMNS: [&str; 8] =
    ["bat", "stroke", "frames", "frame_rate", "time", "speed", "runs", "asked"];

const FORM: Form = Form {
    columns: &COLUMNS,
    needed: &[
        (&["bat"], "add a column bat: the labels of the scenario's bats"),
        (&["stroke"], "add a column stroke: drive, pull or hook"),
        (
            &["frames", "time", "speed"],
            "add a column frames (with frame_rate), time (with frame_rate) or speed",
        ),
    ],
    rows: "readings",
    most_rows: 500, // more are no afternoon in the nets
    too_many: "leave at most 500, the latest",
    empty: "write one to start from with `backlift calibrate --new FILE`",
};

const TABLE: Kind = Kind {
    what: "a table of readings",
    noun: "table of readings",
    named: "a .csv file",
    like: "a table of readings has a line a swing; name the .csv file that holds it",
    none: "write one to start from with `backlift calibrate --new FILE`",
};

/// The table that comes with the demo: invented.
pub const DEMO: &str = include_str!("../../assets/nets/junior.csv");

/// The text of a table; without a path that of the demo.
pub fn text_of(path: Option<&Path>) -> Result<Source, Fault> {
    match path {
        Some(path) => text_of_file(path, &TABLE),
        None => Ok(Source::new("assets/nets/junior.csv (built in)", DEMO)),
    }
}

/// Readings with their places.
#[derive(Clone, Debug)]
pub struct Readings {
    /// In the order of the table.
    pub readings: Vec<NetReading>,
    table: Table,
}

/// Reads a table. `labels` are the scenario's bats, `strokes` those that it swings. All faults come together.
pub fn read(source: Source, labels: &[String], strokes: &[&str]) -> Result<Readings, Faults> {
    let table = Table::of(source, &FORM)?;
    let mut faults = Vec::new();
    let mut readings = Vec::with_capacity(table.rows.len());
    for n in 0..table.rows.len() {
        match row::reading(&table, n, labels, strokes) {
            Ok(reading) => match reading.fault(strokes) {
                Some(fault) => {
                    faults.push(placed(&table, n, fault.field(), &fault.to_string(), mend(&fault)))
                }
                None => readings.push(reading),
            },
            Err(mut found) => faults.append(&mut found),
        }
    }
    if faults.is_empty() { Ok(Readings { readings, table }) } else { Err(Faults(faults)) }
}

impl Readings {
    /// Line of a reading, counted from 1.
    pub fn line(&self, reading: usize) -> usize {
        self.table.line(reading)
    }

    /// A fault about one reading: at the column if something stands there, else at the whole line.
    pub fn fault(&self, reading: usize, column: &str, message: &str, help: &str) -> Fault {
        placed(&self.table, reading, column, message, help)
    }

    /// A fault about the table as a whole.
    pub fn whole(&self, message: &str, help: &str) -> Fault {
        Fault::new(message).at(&self.table.source, self.table.header.clone()).help(help)
    }
}

/// A fault about one reading; a time may have been written as pictures.
fn placed(table: &Table, row: usize, column: &str, message: &str, help: &str) -> Fault {
    let counted = column == "time" && !table.has(row, "time");
    table.fault(row, if counted { "frames" } else { column }, message, help)
}

fn mend(fault: &NetFault) -> &'static str {
    match fault {
        NetFault::TooFewFrames { .. } => {
            "film in slow motion, at 120 pictures a second or more, and count again"
        }
        NetFault::OutOfRange(it) => match it.field {
            "frame_rate" => "write the pictures a second at which the film was taken, like 240",
            "time" => {
                "count from the top of the backlift to the ball; write the rate at which the film was taken, not played"
            }
            "runs" => "write 0 for a fresh player, or the runs so far",
            _ => "check the number and its unit",
        },
        NetFault::NoSuchStroke => "add it to the scenario's strokes, or leave the reading out",
    }
}

const NOTES: &str = "\
# Swings in the nets, one a line. Lines that start with # are notes.
# Film from the side in slow motion, 120 pictures a second or more, the whole swing in the picture.
# Ask for \"as fast as you can still control it\", and say so for every swing.
# frames: pictures from the top of the backlift (the bat stands still) to the ball.
# frame_rate: the rate at which the film was TAKEN. Or time, like 0.45 s, with its frame_rate.
# speed: bat speed where it meets the ball, by any device, like 45 km/h, in place of frames.
# runs: 0 when fresh; tired, the runs so far, run between the wickets as in a match.
# asked: fastest, or own pace (which says much less).
# Warm up first; an adult is there, the ball is soft, and there is a rest after every six swings.
# Not below 10 years (assumption): forty full swings are much for a child. Pain ends the session.
# Fill in the empty values, add lines, and take out what was not swung.
";

/// Swings of each state to start with.
const LINES: usize = 6;

/// A table to fill in for the first of a scenario's bats.
pub fn to_fill_in(scenario: &Scenario) -> String {
    let label = scenario.bats.first().map_or("0", |it| &it.label);
    let label = match label.contains([',', '"', ';']) {
        true => format!("\"{}\"", label.replace('"', "\"\"")),
        false => label.to_owned(),
    };
    let mut text = format!("{NOTES}{}\n", COLUMNS.join(","));
    for (runs, stroke) in [(0.0, PULL), (0.0, "drive"), (scenario.innings.runs, PULL)] {
        text += &format!("{label},{stroke},,240,,,{runs},fastest\n").repeat(LINES);
    }
    text
}
