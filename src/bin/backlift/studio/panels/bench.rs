//! The bench: what is measured of the bat and of the player as people write it, and what follows from it.

use backlift::bat::laws::Verdict;
use backlift::units::{Quantity, spoken};
use egui::{Grid, Ui};

use super::deeds::{button, button_if, tick};
use super::field::{choice, fields};
use super::table::{Table, name};
use super::words::{bat_mark, caution, head, quiet, sentence, why};
use crate::figure::{capital, measured, percent};
use crate::studio::action::Action;
use crate::studio::fields::{ASKED, BAT, HANDED, PLAYER, SEX};
use crate::studio::figures::swing_moment;
use crate::studio::state::Studio;

/// What a coach could say of the bench.
pub fn told(it: &Studio) -> String {
    let label = it.label(it.bench_bat);
    match it.at_bench() {
        Some(bat) => format!(
            "{} weighs {} and picks up like {}; its swing moment is sure to {}",
            capital(&label),
            spoken(Quantity::Mass, bat.mass_kg.value, bat.mass_kg.sd, it.look.units),
            measured(Quantity::Mass, bat.pickup_weight_kg, it.look.units),
            percent(bat.swing_moment_kg_m2.relative_sd(), 1)
        ),
        None => format!("Weigh {label}, and everything else can follow"),
    }
}

/// All of the bench but its pendulum: the bat, and the player.
pub fn all(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    button(ui, out, "Step by step", Action::Way(Some(it.next_step())))
        .on_hover_text("Who, which bats, what was seen, the answer");
    sentence(ui, &told(it));
    ui.horizontal_wrapped(|ui| {
        each(ui, it, out);
        button(ui, out, "Another bat", Action::AddBat);
        button(ui, out, "A copy", Action::DuplicateBat(it.bench_bat))
            .on_hover_text("The same figures under a new name");
        let more = it.document.bat_count() > 1;
        button_if(ui, out, more, "Take it away", Action::RemoveBat(it.bench_bat));
    });
    head(ui, "Today");
    super::today::asked(ui, it, out);
    super::today::short(ui, it);
    head(ui, "This bat");
    let bat = it.bench_bat;
    Grid::new(("bench", bat)).num_columns(2).show(ui, |ui| {
        fields(ui, it, out, &format!("bats.{bat}."), &BAT);
    });
    follows(ui, it);
    super::diagram::bat(ui, &it.look);
    player(ui, it, out);
}

/// The bats, one of them at the bench.
pub fn each(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    for bat in 0..it.document.bat_count() {
        if ui.selectable_label(it.bench_bat == bat, it.label(bat)).clicked() {
            out.push(Action::BenchBat(bat));
        }
    }
}

fn follows(ui: &mut Ui, it: &Studio) {
    let Some(bat) = it.at_bench() else { return };
    let units = it.look.units;
    ui.horizontal(|ui| {
        head(ui, "What follows");
        bat_mark(ui, &it.look, it.bench_bat);
    });
    let timed = match bat.reading.pendulum {
        Some(_) => "From the pendulum below, moved to 6 in from the top",
        None => "Estimated from size, weight and balance point; a pendulum test makes it surer",
    };
    let rows = [
        ("swing moment", swing_moment(bat.swing_moment_kg_m2), timed),
        (
            "picks up like",
            measured(Quantity::Mass, bat.pickup_weight_kg, units),
            "Scale weight of the standard bat of this size that is as hard to get moving",
        ),
        (
            "sweet spot, from the top",
            measured(Quantity::Length, bat.percussion_m, units),
            "Centre of percussion for a hand 6 in from the top: a ball there does not jar it",
        ),
    ];
    let table = Table::new(ui, &[1.0, 1.4]);
    for (words, value, from) in rows {
        table.row(ui, |ui, n| match n {
            0 => name(ui, words),
            _ => why(ui, &value, from),
        });
    }
    let law = match bat.law.verdict {
        Verdict::Yes => "Within the Laws",
        Verdict::No => "The Laws forbid it",
        Verdict::NotMeasured => "Too little is measured to say whether the Laws allow it",
    };
    quiet(ui, &format!("Size {}. {law}", bat.size));
    let path = format!("bats.{}", it.bench_bat);
    for warning in it.derived.about(&path) {
        quiet(ui, &it.beside(warning).message);
    }
}

/// The player as measured: tape, dynamometer, wrist hold.
fn player(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    head(ui, "The player");
    quiet(ui, "Age, sex and height are enough; each of the others makes the advice surer");
    Grid::new("player").num_columns(2).show(ui, |ui| {
        fields(ui, it, out, "", &PLAYER);
        choice(ui, it, out, SEX, &["female", "male"]);
        choice(ui, it, out, HANDED, &["right", "left"]);
    });
    caution(ui, "Wrist hold: stop at 30 s, and at once if anything hurts");
    super::diagram::player(ui, &it.look);
    head(ui, "What is asked");
    Grid::new("asked").num_columns(2).show(ui, |ui| fields(ui, it, out, "", &ASKED));
    let invented = it.document.at("invented").starts_with(['y', 't']);
    tick(ui, out, invented, "Made-up people and figures", |on| {
        let word = if on { "yes" } else { "no" };
        Action::Set("invented".to_owned(), word.to_owned())
    });
}
