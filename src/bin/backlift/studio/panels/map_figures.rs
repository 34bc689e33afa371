//! Beside the map: what is asked of it, how far the search is, and the bats' figures at once.

use backlift::fit::rule::Worth;
use backlift::innings::score::runs_words;
use backlift::units::{Quantity, spoken};
use egui::{ProgressBar, Ui};

use super::table::{Table, name};
use super::words::{bat_mark, caution, head, quiet, sentence, why};
use crate::figure::percent;
use crate::studio::action::{Action, ColourBy, View};
use crate::studio::state::Studio;
use crate::studio::work::Question;

const COLOURS: [(ColourBy, &str); 5] = [
    (ColourBy::Pull, "the late pull"),
    (ColourBy::Wrist, "wrist share"),
    (ColourBy::BallSpeed, "speed off the bat"),
    (ColourBy::Gained, "what is gained"),
    (ColourBy::Reserve, "what is risked"),
];

/// What a coach could say of the map.
pub fn told(it: &Studio) -> String {
    let Some(fitted) = &it.results.fitted else {
        return "Every bat that can be made, swung by these hands late in the innings: which is worth most?".to_owned();
    };
    let card = &fitted.it.card;
    format!(
        "Ask for {} balanced {} from the top, size {}: it picks up like {}",
        spoken(Quantity::Mass, card.mass_kg, 0.005, it.look.units),
        spoken(Quantity::Length, card.balance_m, 0.001, it.look.units),
        card.size,
        spoken(Quantity::Mass, card.pickup_weight_kg, 0.005, it.look.units)
    )
}

/// The search: started, stopped, how far, and old.
pub fn search(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    if let Some(job) = it.work.job(Question::Fit) {
        ui.add(ProgressBar::new(job.share as f32).text(&job.doing));
        if ui.button("Stop the search").clicked() {
            out.push(Action::CancelFit);
        }
        return;
    }
    if !it.is_fit_stale() {
        return;
    }
    if it.results.fitted.is_some() {
        caution(ui, "The map is of an earlier state of the bench");
    }
    if ui.button("Find the bat").on_hover_text("Takes ten to thirty seconds").clicked() {
        out.push(Action::Fit);
    }
}

/// Draws all of it.
pub fn map_figures(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    sentence(ui, &told(it));
    search(ui, it, out);
    let Some(fitted) = &it.results.fitted else { return };
    head(ui, "Shaded by");
    ui.horizontal_wrapped(|ui| {
        for (by, words) in COLOURS {
            if ui.selectable_label(it.colour_by == by, words).clicked() {
                out.push(Action::ColourBy(by));
            }
        }
    });
    let runs = fitted.it.fitting.setting.plan.runs;
    head(ui, &format!("At {}", runs_words(runs)));
    table(ui, it);
    ui.horizontal_wrapped(|ui| match it.tried {
        Some(_) => {
            if ui.button("Make it one of the bats").clicked() {
                out.push(Action::AddTried);
            }
            if ui.button("Take it off the map").clicked() {
                out.push(Action::Untry);
            }
        }
        None => {
            quiet(ui, "Click the map, or drag on it, to try any bat there");
        }
    });
    if ui.button("See the card").clicked() {
        out.push(Action::View(View::Card));
    }
    quiet(
        ui,
        &format!(
            "Figures on the map follow from an approximation of this player: at most {} off on bats it had not seen. Those of the card are simulated",
            percent(fitted.it.fitting.surrogate_error, 2)
        ),
    );
}

struct Column {
    bat: Option<usize>,
    name: &'static str,
    worth: Option<Worth>,
    error_share: f64,
}

fn table(ui: &mut Ui, it: &Studio) {
    let Some(fitted) = it.results.fitted.as_ref().map(|it| &it.it) else { return };
    let error_share = fitted.fitting.surrogate_error;
    let asked = Some(fitted.fitting.recommendation.worth.clone());
    let mut columns = vec![
        Column { bat: Some(it.playback.bats[0]), name: "", worth: it.first_worth(), error_share },
        Column { bat: None, name: "to ask for", worth: asked, error_share: 0.0 },
    ];
    if let Some([mass_kg, balance_m]) = it.tried {
        let worth = it.live(mass_kg, balance_m);
        columns.insert(1, Column { bat: None, name: "tried", worth, error_share });
    }
    let pull = fitted.fitting.setting.batter.stroke_index("pull");
    let speed = |value: f64, error: f64| {
        spoken(Quantity::Speed, value, (error * value).max(0.05), it.look.units)
    };
    type Cell<'a> = Box<dyn Fn(&Worth, f64) -> Option<String> + 'a>;
    let rows: [(&str, Cell<'_>, &str); 6] = [
        (
            "dead weight",
            Box::new(|w, _| Some(spoken(Quantity::Mass, w.bat.mass_kg(), 0.005, it.look.units))),
            "On the scale, to the 5 g a scale holds",
        ),
        (
            "balance, from the top",
            Box::new(|w, _| {
                Some(spoken(Quantity::Length, w.bat.balance_m(), 0.001, it.look.units))
            }),
            "Where it balances on a pencil",
        ),
        (
            "pull, bat speed",
            Box::new(|w, e| Some(speed(w.strokes.get(pull?)?.bat_speed_m_s, e))),
            "The fastest controlled pull with what is left at that score",
        ),
        (
            "wrist share",
            Box::new(|w, _| Some(percent(w.strokes.get(pull?)?.wrist_share, 0))),
            "Of what the busier wrist has left, at one stroke time for all bats; its doubt is some per cent of it",
        ),
        (
            "off the bat",
            Box::new(|w, e| Some(speed(w.goal_m_s, e))),
            "What the fit makes the most of, over the mix of strokes, against a ball as fast as the bat; the ball off a bat is in doubt by some per cent, alike for all",
        ),
        (
            "time to spare",
            Box::new(|w, _| Some(percent(w.slack, 1))),
            "Share of the time there is for a pull or a hook that is left over with no joint above its limit; below nought it comes late",
        ),
    ];
    let shares: Vec<f32> = std::iter::once(1.1).chain(columns.iter().map(|_| 1.0)).collect();
    let table = Table::new(ui, &shares);
    table.row(ui, |ui, n| match n.checked_sub(1).and_then(|n| columns.get(n)) {
        Some(Column { bat: Some(bat), .. }) => bat_mark(ui, &it.look, *bat),
        Some(column) => {
            ui.label(column.name);
        }
        None => {}
    });
    for (row, cell, words) in &rows {
        table.row(ui, |ui, n| {
            let Some(column) = n.checked_sub(1).and_then(|n| columns.get(n)) else {
                return name(ui, row);
            };
            let value = column.worth.as_ref().and_then(|w| cell(w, column.error_share));
            let words = match column.error_share > 0.0 {
                true => format!("{words}. By the approximation, ± {}", percent(error_share, 2)),
                false => format!("{words}. Simulated"),
            };
            why(ui, value.as_deref().unwrap_or("not swung"), &words);
        });
    }
}
