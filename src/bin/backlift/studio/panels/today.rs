//! Today's bats: the sentence of `fit`, each bat's figures, what they rest on, and what was seen.

use backlift::innings::score::runs_words;
use backlift::measurement::plan::{Goal, HowOften};
use backlift::questions::loaded::Loaded;
use backlift::worth::suits::{Suits, suits_words};
use backlift::worth::today::Given;
use egui::{ProgressBar, Ui, WidgetType};

use super::table::{Table, name};
use super::words::{bat_mark, fault, head, measure, named, pending, quiet, sentence, why};
use crate::figure::{number, percent, speed_unit};
use crate::sentences::advice;
use crate::studio::action::Action;
use crate::studio::bench::{SEEN_BALLS, SEEN_RUNS};
use crate::studio::state::Studio;
use crate::studio::work::Question;

/// Which bat to use today, in the words of `fit`; what is said while nobody knows yet.
pub fn told(it: &Studio) -> String {
    match it.advice() {
        Some((loaded, now)) => advice::which_today(loaded, now),
        None => "Which of these bats to use today is being worked out".to_owned(),
    }
}

pub fn headline(ui: &mut Ui, it: &Studio) {
    sentence(ui, &told(it));
    is_of_now(ui, it);
}

/// The headline with little room.
pub fn short(ui: &mut Ui, it: &Studio) {
    ui.label(told(it));
    is_of_now(ui, it);
}

/// Whether the advice is of an earlier state, and why there is none.
fn is_of_now(ui: &mut Ui, it: &Studio) {
    pending(ui, it.advice().is_some() && !it.is_advised());
    for it in it.answers.faults(it.today_key()) {
        fault(ui, it, &it.message);
    }
}

pub fn under_way(ui: &mut Ui, it: &Studio) {
    if let Some(job) = it.work.job(Question::Today) {
        ui.add(ProgressBar::new(job.share as f32).text(&job.doing));
    }
}

/// All that is known before any search.
pub fn so_far(ui: &mut Ui, it: &Studio) {
    headline(ui, it);
    under_way(ui, it);
    bats(ui, it);
    if let Some(job) = it.work.job(Question::Fit) {
        head(ui, "The bat to order");
        ui.add(ProgressBar::new(job.share as f32).text(&job.doing));
    }
}

pub fn bats(ui: &mut Ui, it: &Studio) {
    table(ui, it);
    rests(ui, it);
}

fn table(ui: &mut Ui, it: &Studio) {
    let Some((loaded, now)) = it.advice() else { return };
    let (unit, per_m_s) = speed_unit(it.look.units);
    let runs = runs_words(now.setting.plan.runs);
    head(ui, "Today's bats");
    let table = Table::new(ui, &[0.7, 0.8, 1.2, 0.8, 0.9]);
    let ball = format!("{}, {unit}", mean_of(loaded));
    let in_time = format!("in time at {runs}");
    let heads = ["", "suits", ball.as_str(), in_time.as_str(), "near best"];
    table.row(ui, |ui, n| name(ui, heads.get(n).unwrap_or(&"")));
    for (bat, given) in now.today.given.iter().enumerate() {
        table.row(ui, |ui, n| match (n, &given.worth) {
            (0, _) => bat_mark(ui, &it.look, bat),
            (1, _) => {
                ui.label(suits_words(given.suits));
            }
            (2, Some(worth)) => {
                let [mean, sd] =
                    [worth.mean_m_s(), worth.sd_m_s()].map(|it| number(per_m_s * it, 1));
                let words = "Ball speed that may be expected over the innings, late balls and mishits counted; its doubt is mostly the player's, alike for all bats";
                measure(ui, &format!("{mean} ± {sd}"), words);
            }
            (3, Some(worth)) => {
                let words =
                    format!("Short balls met in time at {runs}, over everybody this player may be");
                why(ui, &percent(worth.chance_in_time, 0), &words);
            }
            (4, Some(_)) => {
                let words = "Chance that it is within half a per cent of the best of these";
                why(ui, &percent(given.chance_near_best, 0), words);
            }
            (2, None) => quiet(ui, "beyond control"),
            _ => {}
        });
    }
}

/// What the mean over the innings is of, as bats are judged here.
pub fn mean_of(loaded: &Loaded) -> &'static str {
    match loaded.scenario.fit.goal {
        Goal::BallSpeed => "expected ball",
        Goal::BatSpeed => "expected bat speed",
    }
}

/// What the advice rests on, and what would change it.
pub fn rests(ui: &mut Ui, it: &Studio) {
    let Some((_, now)) = it.advice() else { return };
    let mut words = vec![advice::rests_on(now)];
    words.extend(advice::left_alone(now));
    words.push(advice::would_settle(now));
    words.retain(|it| !it.is_empty());
    quiet(ui, &words.join(" "));
}

/// A size that does not suit, beside its bat.
pub fn suits(ui: &mut Ui, given: Option<&Given>) {
    if let Some(given) = given.filter(|it| it.suits != Suits::Yes) {
        let words = format!("{} for this stature", suits_words(given.suits));
        ui.label(egui::RichText::new(words).small());
    }
}

/// Which bat is used now, and what was seen with it.
pub fn asked(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let labels: Vec<String> = (0..it.document.bat_count()).map(|bat| it.label(bat)).collect();
    ui.horizontal_wrapped(|ui| {
        ui.label("Which bat does the player use now?");
        let used = labels.get(it.document.used_bat()).cloned().unwrap_or_default();
        if let Some(label) = one_of(ui, "the bat used now", &used, &labels) {
            out.push(Action::Set("uses".to_owned(), label));
        }
    });
    seen(ui, it, out, &labels);
}

fn seen(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>, labels: &[String]) {
    let at = |name: &str| it.document.at(&format!("seen.0.{name}"));
    let how_often = at("in_time");
    let is_seen = it.document.is_seen();
    let label = it.label(it.document.used_bat());
    ui.horizontal_wrapped(|ui| {
        ui.label("What was seen:");
        if is_seen {
            // What stands there, or what counts where nothing does, and what may be chosen for it.
            let mut put = |ui: &mut Ui, name: &str, called: &str, usual: &str, all: &[String]| {
                let now = at(name);
                let now = if now.is_empty() { usual } else { &now };
                let chosen = one_of(ui, called, now, all);
                out.extend(chosen.map(|it| Action::Set(format!("seen.0.{name}"), it)));
            };
            put(ui, "bat", "the bat that was seen", &label, labels);
            let strokes = it.derived.loaded.iter().flat_map(|it| &it.strokes);
            let strokes: Vec<String> =
                strokes.filter(|it| it.answers_short_ball).map(|it| it.name.clone()).collect();
            put(ui, "stroke", "the stroke that was seen", "", &strokes);
            ui.label("after");
            put(ui, "runs", "runs before it was seen", "0", &SEEN_RUNS.map(str::to_owned));
            ui.label("runs, of about");
            put(ui, "balls", "short balls seen", "20", &SEEN_BALLS.map(str::to_owned));
            ui.label("short balls that were hit at, in time:");
        } else {
            let stroke = it.lead_stroke();
            ui.label(format!("fresh, the {stroke} with {label} met short balls in time:"));
        }
        for often in HowOften::ALL {
            let chosen = is_seen && how_often.replace('_', " ").eq_ignore_ascii_case(often.words());
            let [low, high] = often.shares().map(|it| 100.0 * it);
            let button = ui.selectable_label(chosen, often.words());
            let of =
                format!("{low:.0} to {high:.0} of 100; balls that were left alone do not count");
            if button.on_hover_text(of).clicked() && !chosen {
                out.push(Action::Saw(often.words().to_owned()));
            }
        }
        if is_seen && ui.button("Clear").on_hover_text("Nothing was seen").clicked() {
            out.push(Action::ForgetSeen);
        }
    });
    for name in ["bat", "stroke", "runs", "balls", "in_time"] {
        for about in it.derived.about(&format!("seen.0.{name}")) {
            let about = it.beside(about);
            fault(ui, &about, &about.message);
        }
    }
    let more = it.document.fields().seen.len().saturating_sub(1);
    if more > 0 {
        quiet(ui, &format!("The file holds {more} more that count too"));
    }
}

/// One of some words from a list that opens; what was chosen anew.
fn one_of(ui: &mut Ui, name: &str, now: &str, all: &[String]) -> Option<String> {
    let mut chosen = None;
    // A button wraps with the words around it.
    let shown = ui.menu_button(now, |ui| {
        for it in all {
            if ui.selectable_label(it.eq_ignore_ascii_case(now), it).clicked() {
                chosen = Some(it.clone());
                ui.close();
            }
        }
    });
    named(&shown.response, WidgetType::Button, &format!("{name}: {now}"));
    chosen.filter(|it| !it.eq_ignore_ascii_case(now))
}
