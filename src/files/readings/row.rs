//! One line of a table into one reading.

use super::super::fault::{Fault, all_there_are, nearest_or_all};
use super::super::table::Table;
use crate::measurement::nets::{Asked, NetReading, Read};
use crate::units::{Quantity, parse};

/// Reads a line; all that is wrong with it.
pub fn reading(
    table: &Table,
    row: usize,
    labels: &[String],
    strokes: &[&str],
) -> Result<NetReading, Vec<Fault>> {
    let mut line = Line { table, row, faults: Vec::new() };
    let bat = line.bat(labels);
    let stroke = line.stroke(strokes);
    let read = line.read();
    let runs = line.runs();
    let asked = line.asked();
    match (bat, stroke, read, runs, asked) {
        (Some(bat), Some(stroke), Some(read), Some(runs), Some(asked)) => {
            Ok(NetReading { bat, stroke, read, runs, asked })
        }
        _ => Err(line.faults),
    }
}

struct Line<'t> {
    table: &'t Table,
    row: usize,
    faults: Vec<Fault>,
}

impl<'t> Line<'t> {
    fn value(&self, column: &str) -> Option<&'t str> {
        Some(self.table.value(self.row, column)).filter(|it| !it.is_empty())
    }

    fn fault<T>(&mut self, column: &str, message: &str, help: &str) -> Option<T> {
        self.faults.push(self.table.fault(self.row, column, message, help));
        None
    }

    fn bat(&mut self, labels: &[String]) -> Option<usize> {
        let Some(name) = self.value("bat") else {
            return self.fault("bat", "it is missing", &all_there_are("the bats", labels));
        };
        let wanted = name.to_lowercase();
        let by_label = labels.iter().position(|it| it.to_lowercase() == wanted);
        let by_number = || wanted.parse::<usize>().ok().filter(|it| *it < labels.len());
        by_label.or_else(by_number).or_else(|| {
            let help = nearest_or_all(&wanted, "the bats", labels);
            self.fault("bat", &format!("no bat of the scenario is called {name:?}"), &help)
        })
    }

    fn stroke(&mut self, strokes: &[&str]) -> Option<String> {
        let Some(name) = self.value("stroke") else {
            return self.fault("stroke", "it is missing", &all_there_are("the strokes", strokes));
        };
        let known = strokes.iter().find(|it| it.to_lowercase() == name.to_lowercase());
        known.map(|it| (*it).to_owned()).or_else(|| {
            let help = nearest_or_all(name, "the strokes", strokes);
            self.fault("stroke", &format!("there is no stroke {name:?}"), &help)
        })
    }

    /// Exactly one of frames, time and speed.
    fn read(&mut self) -> Option<Read> {
        let [frames, time, speed] = ["frames", "time", "speed"].map(|it| self.value(it));
        match (frames, time, speed) {
            (Some(frames), None, None) => {
                let frames = self.pictures(frames);
                let frame_rate_hz = self.frame_rate();
                let (frames, frame_rate_hz) = (frames?, frame_rate_hz?);
                Some(Read::Time { time_s: frames / frame_rate_hz, frame_rate_hz })
            }
            (None, Some(time), None) => {
                let time_s = self.quantity("time", time, Quantity::Time);
                let frame_rate_hz = self.frame_rate();
                Some(Read::Time { time_s: time_s?, frame_rate_hz: frame_rate_hz? })
            }
            (None, None, Some(speed)) => {
                let speed_m_s = self.quantity("speed", speed, Quantity::Speed)?;
                Some(Read::Speed { speed_m_s })
            }
            (None, None, None) => {
                let help = "write one of them, or take the line out";
                self.fault("frames", "there is no frames, no time and no speed", help)
            }
            _ => {
                let help = "write a line for each of them";
                self.fault("frames", "there is more than one of frames, time and speed", help)
            }
        }
    }

    fn frame_rate(&mut self) -> Option<f64> {
        const HELP: &str = "write the pictures a second at which the film was taken, like 240";
        let Some(written) = self.value("frame_rate") else {
            let message = "it is missing: without it nobody knows how far off the time may be";
            return self.fault("frame_rate", message, HELP);
        };
        let lower = written.to_lowercase();
        let units = ["fps", "frames/s", "hz", "/s"];
        let number = units.into_iter().find_map(|it| lower.strip_suffix(it)).unwrap_or(&lower);
        let value = number.trim().parse::<f64>().ok().filter(|it| it.is_finite() && *it > 0.0);
        value.or_else(|| {
            self.fault(
                "frame_rate",
                &format!("{written:?} is not a number of pictures a second"),
                HELP,
            )
        })
    }

    fn pictures(&mut self, written: &str) -> Option<f64> {
        let value = written.parse::<f64>().ok().filter(|it| it.is_finite() && *it > 0.0);
        value.or_else(|| {
            let message = format!("{written:?} is not a number of pictures");
            self.fault("frames", &message, "write a number above zero, decimals with a point")
        })
    }

    fn quantity(&mut self, column: &str, written: &str, quantity: Quantity) -> Option<f64> {
        match parse(quantity, written) {
            Ok(value) => Some(value),
            Err(fault) => self.fault(column, &fault.to_string(), &fault.mend(quantity)),
        }
    }

    /// Nothing, "fresh" or 0 for a fresh player.
    fn runs(&mut self) -> Option<f64> {
        let Some(written) = self.value("runs") else { return Some(0.0) };
        if written.eq_ignore_ascii_case("fresh") {
            return Some(0.0);
        }
        let lower = written.to_lowercase();
        let number = lower.strip_suffix("runs").unwrap_or(&lower).trim();
        let value = number.parse::<f64>().ok().filter(|it| it.is_finite());
        value.or_else(|| {
            let message = format!("{written:?} is not a number of runs");
            self.fault("runs", &message, "write 0 for a fresh player, or the runs so far")
        })
    }

    fn asked(&mut self) -> Option<Asked> {
        let Some(written) = self.value("asked") else { return Some(Asked::Fastest) };
        match written.to_lowercase().replace(['_', '-'], " ").as_str() {
            "fastest" => Some(Asked::Fastest),
            "own pace" => Some(Asked::OwnPace),
            _ => {
                let help =
                    "write \"fastest\" for as fast as can still be controlled, or \"own pace\"";
                self.fault("asked", &format!("{written:?} is not known here"), help)
            }
        }
    }
}
