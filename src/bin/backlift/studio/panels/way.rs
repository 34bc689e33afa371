//! The coach's way: who, which bats, what was seen, the answer; one step at a time, and Enter goes on.

use backlift::questions::surer::{Surer, ToMeasure};
use egui::{Grid, Id, ProgressBar, Ui, WidgetType};

use super::deeds::{button, button_if};
use super::field::{choice, entered, fields, focus};
use super::words::{bat_mark, caution, head, named, quiet, sentence};
use crate::figure::{capital, percent};
use crate::sentences::advice::worth_a_word;
use crate::studio::action::{Action, Step, View};
use crate::studio::fields::{BAT, HANDED, PLAYER, SEX};
use crate::studio::state::Studio;
use crate::studio::work::Question;

/// Fields of a bat that come first: name, size, dead weight.
const FIRST_OF_BAT: usize = 3;
/// Fields of the player that are needed: age, stature.
const NEEDED: usize = 2;

/// A step of the way, or the whole bench.
pub fn left(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let Some(step) = it.way else { return super::bench::all(ui, it, out) };
    strip(ui, it, out, step);
    match step {
        Step::Who => who(ui, it, out),
        Step::Bats => bats(ui, it, out),
        Step::Seen => seen(ui, it, out),
        Step::Answer => answer(ui, it, out),
    }
}

pub fn beside(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let Some(step) = it.way else { return super::pendulum::pendulum(ui, it, out) };
    match step {
        Step::Who => {
            super::diagram::player(ui, &it.look);
            quiet(ui, "Measure without shoes, in light clothes");
        }
        Step::Bats => {
            head(ui, "Surer still");
            quiet(ui, "Length and balance point, and ten swings of a pendulum: of every bat alike");
            ui.horizontal_wrapped(|ui| super::bench::each(ui, it, out));
            let bat = it.bench_bat;
            Grid::new(("surer", bat)).num_columns(2).show(ui, |ui| {
                let more = &BAT[FIRST_OF_BAT..FIRST_OF_BAT + 2];
                fields(ui, it, out, &format!("bats.{bat}."), more);
            });
            super::pendulum::pendulum(ui, it, out);
        }
        Step::Seen => {
            quiet(
                ui,
                "Count only short balls that were hit at. Without it the chances rest on an assumption, and the answer says so",
            );
            super::today::so_far(ui, it);
        }
        Step::Answer => surer(ui, it, out),
    }
}

/// The four steps, what is behind marked so; any of them is one click away.
fn strip(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>, now: Step) {
    ui.horizontal_wrapped(|ui| {
        for (n, step) in Step::ALL.into_iter().enumerate() {
            let done = if it.is_done(step) { ", done" } else { "" };
            let words = format!("{} {}{done}", n + 1, step.name());
            let shown = ui.selectable_label(now == step, &words);
            named(&shown, WidgetType::Button, &format!("step {words}"));
            if shown.clicked() {
                out.push(Action::Way(Some(step)));
            }
        }
        ui.separator();
        button(ui, out, "The whole bench", Action::Way(None))
            .on_hover_text("Every field at once; back with “Step by step”");
    });
}

/// Back and on, and what is still needed.
fn on(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>, step: Step) {
    let needed: Vec<String> = it.needed(step).iter().filter_map(|path| it.spoken(path)).collect();
    ui.horizontal_wrapped(|ui| {
        if let Some(before) = step.then(-1) {
            button(ui, out, "Back", Action::Way(Some(before)));
        }
        if step.then(1).is_some() {
            button_if(ui, out, needed.is_empty(), "Next", Action::Onward);
        }
        if !needed.is_empty() {
            quiet(ui, &format!("Still needed: {}", needed.join("; ")));
        }
    });
}

/// Enter in one of these fields goes to the next, and from the last to the next step.
fn chain(ui: &Ui, out: &mut Vec<Action>, paths: &[String], step: Step) {
    // The first field waits for the keyboard when a step is new.
    let id = Id::new("step shown");
    let shown = ui.data(|data| data.get_temp::<Step>(id));
    if shown != Some(step) {
        ui.data_mut(|data| data.insert_temp(id, step));
        if let Some(first) = paths.first() {
            focus(ui, first);
        }
    }
    let Some(done) = entered(ui) else { return };
    let Some(at) = paths.iter().position(|it| *it == done) else { return };
    match paths.get(at + 1) {
        Some(next) => focus(ui, next),
        None => out.push(Action::Onward),
    }
}

fn who(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    sentence(ui, "Who bats?");
    Grid::new("who").num_columns(2).show(ui, |ui| {
        fields(ui, it, out, "", &PLAYER[..1]);
        choice(ui, it, out, SEX, &["female", "male"]);
        fields(ui, it, out, "", &PLAYER[1..NEEDED]);
        choice(ui, it, out, HANDED, &["right", "left"]);
    });
    on(ui, it, out, Step::Who);
    head(ui, "That is enough; each of these makes the answer surer");
    Grid::new("surer").num_columns(2).show(ui, |ui| fields(ui, it, out, "", &PLAYER[NEEDED..]));
    caution(ui, "Wrist hold: stop at 30 s, and at once if anything hurts");
    let paths: Vec<String> = PLAYER[..NEEDED].iter().map(|it| it[0].to_owned()).collect();
    chain(ui, out, &paths, Step::Who);
}

fn bats(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    sentence(ui, "Which bats are there?");
    quiet(
        ui,
        "The dead weight is needed; with its size the answer is surer. A bat left empty is left out",
    );
    let count = it.document.bat_count();
    for bat in 0..count {
        ui.horizontal(|ui| {
            bat_mark(ui, &it.look, bat);
            if count > 1 {
                let away = ui.small_button("Leave it out");
                named(&away, WidgetType::Button, &format!("{}: leave it out", it.label(bat)));
                if away.clicked() {
                    out.push(Action::RemoveBat(bat));
                }
            }
        });
        Grid::new(("bat of the way", bat)).num_columns(2).show(ui, |ui| {
            fields(ui, it, out, &format!("bats.{bat}."), &BAT[..FIRST_OF_BAT]);
        });
    }
    button(ui, out, "Another bat", Action::AddBat);
    on(ui, it, out, Step::Bats);
    let path =
        |bat: usize| BAT[..FIRST_OF_BAT].iter().map(move |it| format!("bats.{bat}.{}", it[0]));
    let paths: Vec<String> = (0..count).flat_map(path).collect();
    chain(ui, out, &paths, Step::Bats);
}

fn seen(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    sentence(ui, "How often does the player meet the short ball in time?");
    let before = out.len();
    super::today::asked(ui, it, out);
    // One tap is the whole step.
    let is_said = out.iter().skip(before).any(|it| matches!(it, Action::Saw(_)));
    if is_said {
        out.push(Action::Onward);
    }
    on(ui, it, out, Step::Seen);
    chain(ui, out, &[], Step::Seen);
}

fn answer(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    super::today::headline(ui, it);
    super::today::under_way(ui, it);
    card(ui, it, out);
    super::today::bats(ui, it);
    on(ui, it, out, Step::Answer);
    chain(ui, out, &[], Step::Answer);
}

fn card(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    head(ui, "The bat to order");
    if it.fitted().is_some() {
        super::map_figures::advice(ui, it);
    }
    if it.work.job(Question::Fit).is_none() && it.fit_awaited {
        ui.add(ProgressBar::new(0.0).text("comes after today's bats"));
    } else {
        super::map_figures::search(ui, it, out);
    }
    ui.horizontal_wrapped(|ui| {
        super::card::write(ui, it, out);
        if it.fitted().is_some() {
            button(ui, out, "See the card", Action::View(View::Card));
            button(ui, out, "See the swing", Action::View(View::Swing));
        }
    });
}

/// Beside the answer: what would make it surer, and what each of it brings.
fn surer(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    head(ui, "What would make it surer");
    let Some(loaded) = &it.derived.loaded else {
        return quiet(ui, "First who bats, and with what");
    };
    if let Some((_, now)) = it.advice() {
        for it in worth_a_word(now) {
            let chance = percent(it.chance, 0);
            ui.label(format!("{}: could name another bat ({chance})", capital(it.what)));
        }
    }
    let all = loaded.surer();
    let (of_bats, of_player): (Vec<&Surer>, Vec<&Surer>) =
        all.iter().partition(|it| matches!(it.what, ToMeasure::Pendulum(_)));
    part(ui, it, out, "At the bats", &of_bats, Step::Bats);
    part(ui, it, out, "At the player", &of_player, Step::Who);
    head(ui, "Estimated until then");
    for it in &loaded.player.estimated {
        let doubt = percent(it.relative_sd, 0);
        quiet(ui, &format!("{}, ± {doubt}: from {}", capital(it.what), it.from));
    }
}

fn part(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>, name: &str, all: &[&Surer], step: Step) {
    if all.is_empty() {
        return;
    }
    head(ui, name);
    for surer in all {
        ui.label(brings(it, surer));
    }
    let words = if step == Step::Bats { "Measure the bats" } else { "Measure the player" };
    button(ui, out, format!("{words} now"), Action::Way(Some(step)));
}

/// "Both hands on a dynamometer: the grip to ± 5 % in place of ± 22 %".
fn brings(it: &Studio, surer: &Surer) -> String {
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
