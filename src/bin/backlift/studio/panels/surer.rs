//! Beside the answer: what would make it surer, and what each of it brings.

use backlift::questions::surer::{Surer, ToMeasure};
use egui::Ui;

use super::deeds::button;
use super::words::{head, quiet};
use crate::figure::{capital, percent};
use crate::sentences::advice::worth_a_word;
use crate::studio::action::{Action, Step};
use crate::studio::state::Studio;

/// Draws it.
pub fn surer(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    head(ui, "What would make it surer");
    let Some(loaded) = &it.derived.loaded else {
        quiet(ui, "First who bats, and with what");
        return;
    };
    if let Some((_, now)) = it.advice() {
        for it in worth_a_word(now) {
            let chance = percent(it.chance, 0);
            ui.label(format!("{}: could name another bat ({chance})", capital(it.what)));
        }
    }
    let all = loaded.surer();
    let [of_bats, of_player]: [Vec<&Surer>; 2] = [true, false].map(|of_bats| {
        all.iter().filter(|it| matches!(it.what, ToMeasure::Pendulum(_)) == of_bats).collect()
    });
    part(ui, it, out, "At the bats", &of_bats, Step::Bats);
    part(ui, it, out, "At the player", &of_player, Step::Who);
    head(ui, "Estimated until then");
    for it in &loaded.player.estimated {
        let doubt = percent(it.relative_sd, 0);
        quiet(ui, &format!("{}, ± {doubt}: from {}", capital(&it.what), it.from));
    }
}

fn part(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>, name: &str, all: &[&Surer], step: Step) {
    if all.is_empty() {
        return;
    }
    head(ui, name);
    for surer in all {
        ui.label(told(it, surer));
    }
    let words = if step == Step::Bats { "Measure the bats" } else { "Measure the player" };
    button(ui, out, format!("{words} now"), Action::Way(Some(step)));
}

/// "Both hands on a dynamometer: the grip to ± 5 % in place of ± 22 %".
fn told(it: &Studio, surer: &Surer) -> String {
    let [now, then] = [surer.now, surer.then].map(|it| percent(it, 1));
    let (how, figure) = match surer.what {
        ToMeasure::Pendulum(bat) => {
            (format!("Balance and a pendulum test of {}", it.label(bat)), "its swing moment")
        }
        ToMeasure::Grip => ("Both hands on a dynamometer".to_owned(), "the grip"),
        ToMeasure::BodyMass => ("The player on a scale".to_owned(), "the body mass"),
        ToMeasure::HandLength => ("The hand by tape".to_owned(), "its length"),
    };
    format!("{how}: {figure} to ± {then} in place of ± {now}")
}
