//! Beside the map: what is asked of it, how far the search is, and the bats' figures at once.

use std::sync::Arc;

use backlift::fit::on_map::OnMap;
use backlift::innings::score::runs_words;
use backlift::questions::fitted::Fitted;
use backlift::stroke::PULL;
use backlift::units::{Quantity, spoken};
use egui::{ProgressBar, Ui};

use super::deeds::{button, choice};
use super::kept::kept;
use super::table::{Table, name};
use super::words::{bat_mark, big, caution, head, measure, quiet, sentence};
use crate::figure::{self, percent};
use crate::sentences::advice;
use crate::studio::action::{Action, ColourBy, View};
use crate::studio::answers::{Keyed, key};
use crate::studio::state::Studio;
use crate::studio::work::Question;

const COLOURS: [(ColourBy, &str); 4] = [
    (ColourBy::Pull, "the late pull"),
    (ColourBy::Worth, "expected ball speed"),
    (ColourBy::Gained, "what is gained"),
    (ColourBy::InTime, "in time late on"),
];

/// What a coach could say of the map: whether a new bat pays, and which it would be.
pub fn told(it: &Studio) -> [String; 2] {
    match it.fitted() {
        Some(fitted) => advice::order_in_two(fitted.it, it.look.units),
        None => [
            "Every bat that can be made, swung by these hands late in the innings: which is worth most?".to_owned(),
            String::new(),
        ],
    }
}

/// The same as it stands on the screen.
pub fn advice(ui: &mut Ui, it: &Studio) {
    let [pays, which] = told(it);
    if pays.is_empty() {
        return sentence(ui, &which);
    }
    sentence(ui, &pays);
    if !which.is_empty() {
        ui.label(which);
    }
}

/// The search: started, stopped, how far, and old.
pub fn search(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    if let Some(job) = it.work.job(Question::Fit) {
        ui.add(ProgressBar::new(job.share as f32).text(&job.doing));
        button(ui, out, "Stop the search", Action::CancelFit);
        return;
    }
    if !it.is_fit_stale() {
        return;
    }
    if it.fitted().is_some() {
        caution(ui, "The map is of an earlier state of the bench");
    }
    button(ui, out, "Find the bat", Action::Fit).on_hover_text("Takes ten to thirty seconds");
}

pub fn map_figures(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    advice(ui, it);
    search(ui, it, out);
    let Some(fitted) = it.fitted() else { return };
    let columns = columns(ui, it, &fitted);
    gained(ui, it, &columns);
    head(ui, "Shaded by");
    ui.horizontal_wrapped(|ui| {
        choice(ui, out, &COLOURS, it.colour_by, Action::ColourBy);
    });
    super::today::short(ui, it);
    head(ui, "These bats in these hands");
    table(ui, it, fitted.it, &columns);
    quiet(ui, &format!("In the net: {}", super::swing::heading(it)));
    ui.horizontal_wrapped(|ui| match it.tried {
        Some(_) => {
            button(ui, out, "Make it one of the bats", Action::AddTried);
            button(ui, out, "Take it off the map", Action::Untry);
        }
        None => quiet(ui, "Click the map, or drag on it, to try any bat there"),
    });
    button(ui, out, "See the card", Action::View(View::Card));
    quiet(
        ui,
        &format!(
            "Shades and the tried bat follow from a smooth curve through full swings of this player, {} off at most on bats and strengths it had not seen; bat speeds of the card are simulated",
            percent(fitted.it.fitting.surrogate_error(), 2)
        ),
    );
}

/// The figure of the view: what the bat tried, or else the bat to order, gains over the first.
fn gained(ui: &mut Ui, it: &Studio, columns: &[Column]) {
    let [first, other, ..] = columns else { return };
    let (Some(from), Some(to)) = (&first.on_map, &other.on_map) else { return };
    if from.bat == to.bat {
        return;
    }
    let [gain_m_s, sd_m_s] = from.worth.to(&to.worth);
    let speed = |value: f64| spoken(Quantity::Speed, value, sd_m_s, it.look.units);
    let sign = if gain_m_s > 0.0 { "+" } else { "" };
    let label = first.bat.map_or_else(String::new, |bat| it.label(bat));
    let name = format!("± {} of expected ball speed: {} over {label}", speed(sd_m_s), other.name);
    big(ui, &format!("{sign}{}", speed(gain_m_s)), &name, GAINED);
}

/// Where what is gained comes from.
const GAINED: &str = "Expected ball speed over the first bat's, player by player: what is in doubt about the player is much the same for both";

/// Largest error of what stands in a row, as a share, where it was computed.
type ErrorShare = fn(&OnMap) -> Option<f64>;

struct Column {
    /// Its place in the scenario; none for the tried bat and the bat to order.
    bat: Option<usize>,
    name: &'static str,
    on_map: Option<Arc<OnMap>>,
}

fn columns(ui: &Ui, it: &Studio, fitted: &Keyed<'_, Fitted>) -> Vec<Column> {
    let fitting = &fitted.it.fitting;
    let first = it.playback.bats[0];
    let first_key = key((fitted.key, first, &it.derived.bat_keys, it.is_fit_stale()));
    let on_map = kept(ui, "first bat on the map", first_key, || it.weighed_on_map(first));
    let mut columns = vec![Column { bat: Some(first), name: "", on_map }];
    if let Some([mass_kg, balance_m]) = it.tried {
        let tried_key = key((fitted.key, mass_kg.to_bits(), balance_m.to_bits()));
        let on_map = kept(ui, "tried bat", tried_key, || {
            fitting.on_map(fitting.bat_at(mass_kg, balance_m)?)
        });
        columns.push(Column { bat: None, name: "tried", on_map });
    }
    let on_map = kept(ui, "bat to order", fitted.key, || Some(fitting.ordered_on_map()));
    columns.push(Column { bat: None, name: "bat to order", on_map });
    columns
}

fn table(ui: &mut Ui, it: &Studio, fitted: &Fitted, columns: &[Column]) {
    let fitting = &fitted.fitting;
    let units = it.look.units;
    let pull = fitting.setting().batter.stroke_index(PULL);
    let first = columns.first().and_then(|it| it.on_map.clone());
    let speed = |value: f64, sd: f64| spoken(Quantity::Speed, value, sd, units);
    let doubted = |value: f64, sd: f64| figure::with_doubt(Quantity::Speed, value, sd, units);
    let bowled = speed(fitting.setting().delivery.speed_m_s, 0.3);
    let runs = runs_words(fitting.setting().plan.runs);
    let [bat_speed, mean_ball, in_time] = [
        format!("bat speed of the pull at {runs}"),
        format!("mean ball of pulls in time at {runs}"),
        format!("in time at {runs}"),
    ];
    let expected = format!("{}, the innings", super::today::mean_of(&fitted.loaded));
    type Cell<'a> = Box<dyn Fn(&OnMap) -> Option<String> + 'a>;
    let bats = || it.derived.loaded.iter().flat_map(|it| &it.bats);
    let weighed = |on: &OnMap| bats().find(|it| it.bat == on.bat);
    // What is weighed and measured has no share of error here.
    let measured = |_: &OnMap| None;
    let of_pull = |on: &OnMap| Some(on.pull_error_share);
    let of_worth = |on: &OnMap| Some(on.worth_error_share);
    let rows: [(&str, Cell<'_>, String, ErrorShare); 7] = [
        (
            "dead weight",
            Box::new(|on| {
                Some(match weighed(on) {
                    Some(it) => figure::measured(Quantity::Mass, it.mass_kg, units),
                    None => spoken(Quantity::Mass, on.bat.mass_kg(), 0.005, units),
                })
            }),
            "On the scale; of a bat that is chosen here, as it is asked for".to_owned(),
            measured,
        ),
        (
            "balance, from the top",
            Box::new(|on| {
                Some(match weighed(on) {
                    Some(it) => figure::measured(Quantity::Length, it.balance_m, units),
                    None => spoken(Quantity::Length, on.bat.balance_m(), 0.001, units),
                })
            }),
            "Where it balances on a pencil; of a bat that is chosen here, as it is asked for".to_owned(),
            measured,
        ),
        (
            &bat_speed,
            Box::new(|on| Some(doubted(on.pull_m_s?, on.worth.strokes.get(pull?)?.bat_sd_m_s))),
            format!("The likeliest player's fastest controlled pull at {runs}; its doubt is mostly the player's, alike for all bats"),
            of_pull,
        ),
        (
            &mean_ball,
            Box::new(|on| {
                let it = on.worth.strokes.get(pull?)?;
                Some(doubted(it.ball_m_s, it.ball_sd_m_s))
            }),
            format!("Mean over where this player meets the ball, of pulls in time at {runs} against a ball bowled at {bowled}; its doubt is mostly the player's, alike for all bats"),
            of_worth,
        ),
        (
            &in_time,
            Box::new(|on| Some(format!("{:.0} of 100", 100.0 * on.worth.chance_in_time))),
            format!("Short balls met in time at {runs}, over everybody this player may be"),
            of_worth,
        ),
        (
            &expected,
            Box::new(|on| Some(doubted(on.worth.mean_m_s(), on.worth.sd_m_s()))),
            "Ball speed that may be expected over the innings and the mix of strokes, late balls and mishits counted; its doubt is mostly the player's, alike for all bats".to_owned(),
            of_worth,
        ),
        (
            "gained",
            Box::new(|on| {
                let first = first.as_ref().filter(|first| first.bat != on.bat)?;
                let [gain, sd] = first.worth.to(&on.worth);
                Some(doubted(gain, sd))
            }),
            GAINED.to_owned(),
            of_worth,
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
    for (row, cell, words, error_share) in &rows {
        table.row(ui, |ui, n| {
            let Some(column) = n.checked_sub(1).and_then(|n| columns.get(n)) else {
                return name(ui, row);
            };
            let Some(on) = &column.on_map else { return quiet(ui, "not swung") };
            let words = match error_share(on) {
                None => words.clone(),
                Some(share) if share > 0.0 => {
                    format!("{words}. By the approximation, ± {}", percent(share, 2))
                }
                Some(_) => format!("{words}. By swings with this bat"),
            };
            measure(ui, &cell(on).unwrap_or_default(), &words);
        });
    }
}
