//! A table to fill in.

use super::COLUMNS;
use crate::measurement::plan::Scenario;
use crate::stroke::PULL;

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
