//! What the swing does: figures of both bats and the difference.

use egui::{ProgressBar, Response, Slider, Ui};

use super::deeds::button;
use super::table::{Table, name};
use super::words::{bat_mark, fault, head, measure, pending, quiet, sentence, why};
use crate::studio::action::Action;
use crate::studio::figures::Told;
use crate::studio::state::{Filming, Studio};
use crate::studio::work::Question;

pub fn swing(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    sentence(ui, &it.pair_sentence());
    let late = it.playback.second && !it.is_compared();
    pending(ui, late && it.playback.bats[0] != it.playback.bats[1]);
    head(ui, &heading(it));
    rows(ui, it);
    score(ui, it, out).on_hover_text("How tired the player is");
    failed(ui, it);
    pictures(ui, it, out);
    quiet(
        ui,
        "± one standard deviation. What is in doubt about the player is much the same for both bats, so the difference is surer than the figures",
    );
}

/// Which stroke the figures are of, and when.
pub fn heading(it: &Studio) -> String {
    format!("The {}, {}", it.playback.stroke, it.when())
}

/// The score at which the stroke is played.
pub fn score(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) -> Response {
    let mut score = it.playback.runs;
    let slider = ui.add(Slider::new(&mut score, 0..=100).suffix(" runs").text("score"));
    if slider.changed() {
        out.push(Action::Score(score));
    }
    slider
}

/// A clip and a page to be sent.
fn pictures(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let writing = it.work.job(Question::Pictures).map(|it| it.share as f32);
    if let Some(share) = it.filming.as_ref().map(Filming::share).or(writing) {
        ui.add(ProgressBar::new(share).text("taking pictures"));
        button(ui, out, "Stop", Action::CancelFilm);
        return;
    }
    ui.horizontal_wrapped(|ui| {
        button(ui, out, "Write a clip…", Action::AskClip)
            .on_hover_text("The stroke as an animated GIF, as it is seen now");
        button(ui, out, "Write a page…", Action::AskPage)
            .on_hover_text("Pictures, figures and cautions on one page, to be sent");
    });
}

pub fn rows(ui: &mut Ui, it: &Studio) {
    let both = it.playback.second && it.playback.bats[0] != it.playback.bats[1];
    let shares: &[f32] = if both { &[1.2, 1.0, 1.0, 1.3] } else { &[1.2, 1.0] };
    let table = Table::new(ui, shares);
    table.row(ui, |ui, column| match column {
        1 | 2 => bat_mark(ui, &it.look, it.playback.bats[column - 1]),
        3 => quiet(ui, "second less first"),
        _ => {}
    });
    for row in it.swing_rows() {
        table.row(ui, |ui, column| match column {
            0 => name(ui, row.name),
            1 | 2 => value(ui, row.values.get(column - 1).and_then(Option::as_ref), row.why),
            _ => difference(ui, row.difference.as_ref()),
        });
    }
}

fn value(ui: &mut Ui, told: Option<&Told>, words: &str) {
    match told {
        Some(told) => {
            let all = match told.doubt.as_str() {
                "" => words.to_owned(),
                doubt => format!("{doubt}. {words}"),
            };
            why(ui, &told.value, &all);
            quiet(ui, &told.doubt);
        }
        None => quiet(ui, "…"),
    }
}

fn difference(ui: &mut Ui, told: Option<&(String, bool)>) {
    let Some((words, real)) = told else { return };
    let sure = match real {
        true => "More than the doubt of the difference: real",
        false => "Within the doubt of the difference: not real as far as can be told",
    };
    measure(ui, words, sure);
    quiet(ui, if *real { "real" } else { "within the doubt" });
}

/// Why a bat has no figures.
pub fn failed(ui: &mut Ui, it: &Studio) {
    for bat in it.playback.bats {
        let key = it.derived.bat_keys.get(bat);
        for why in key.map_or(&[][..], |key| it.answers.faults(*key)) {
            fault(ui, why, &format!("{}: {}", it.label(bat), why.message));
        }
    }
}
