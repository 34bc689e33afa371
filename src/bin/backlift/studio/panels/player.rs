//! The player as measured: tape, dynamometer, wrist hold.

use egui::{Grid, Ui};

use super::deeds::tick;
use super::field::{choice, fields};
use super::words::{caution, head, quiet};
use crate::studio::action::Action;
use crate::studio::state::Studio;

/// Path, name, what may stand in it, and how to measure it.
const MEASURED: [[&str; 4]; 8] = [
    ["player.age", "Age", "13 years 4 months", "Strength and growth go by it"],
    ["player.stature", "Height", "5 ft 3 in", "Without shoes"],
    ["player.mass", "Body mass", "46 kg", "In light clothes"],
    ["player.grip_top", "Grip, top hand", "23 kg", "Best of three on a dynamometer"],
    ["player.grip_bottom", "Grip, bottom hand", "25 kg", "Best of three on a dynamometer"],
    ["player.arm_length", "Arm", "56 cm", "Point of the shoulder to the middle of the grip"],
    ["player.hand_length", "Hand", "17.2 cm", "Wrist crease to the tip of the middle finger"],
    [
        "player.wrist_hold",
        "Wrist hold",
        "14 s",
        "Forearm supported and level, the top hand alone holds the bat out, until the toe drops",
    ],
];
const ASKED: [[&str; 4]; 4] = [
    ["innings.runs", "Innings to last", "50", "Runs at which it ends: the local retirement score"],
    ["innings.mix", "Strokes", "drive 50 %, pull 35 %, hook 15 %", "How often each is played"],
    ["bowling.speed", "Bowling", "90 km/h", "Out of the hand"],
    ["bowling.pitch_length", "Pitch", "20.12 m", "Stumps to stumps"],
];

/// Draws it.
pub fn player(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    head(ui, "The player");
    quiet(ui, "Age, sex and height are enough; each of the others makes the advice surer");
    Grid::new("player").num_columns(2).show(ui, |ui| {
        fields(ui, it, out, &MEASURED);
        choice(ui, it, out, "player.sex", "Sex", &["female", "male"]);
        choice(ui, it, out, "player.handed", "Bats", &["right", "left"]);
    });
    caution(ui, "Wrist hold: stop at 30 s, and at once if anything hurts");
    super::diagram::player(ui, &it.look);
    head(ui, "What is asked");
    Grid::new("asked").num_columns(2).show(ui, |ui| fields(ui, it, out, &ASKED));
    let invented = it.document.at("invented").starts_with(['y', 't']);
    tick(ui, out, invented, "Made-up people and figures", |on| {
        let word = if on { "yes" } else { "no" };
        Action::Set("invented".to_owned(), word.to_owned())
    });
}
