//! Late in the innings: the score, the curves, the mark at fifty.

use backlift::drawing::axis::Axis;
use backlift::drawing::palette::bat_look;
use backlift::innings::played::{FIFTY, StrokeNow};
use backlift::innings::score::runs_words;
use backlift::measurement::bench::bat_letter;
use backlift::questions::any_score::{Of, Point};
use backlift::units::{Quantity, spoken};
use egui::{Align, Align2, Layout, Sense, Ui, WidgetType};

use super::chart::Chart;
use super::deeds::{button, has_keyboard};
use super::words::{big, head, named, pending, quiet};
use crate::figure::{percent, speed_unit};
use crate::studio::action::Action;
use crate::studio::state::Studio;
use crate::studio::style::{ink, mixed, theme, thinned};

/// Score at the right end.
const LAST: f64 = 100.0;

/// Bat speed the first bat has lost by fifty: the least there may be, what is believed, the most; m/s and
/// as a share.
fn lost(it: &Studio) -> Option<[(f64, f64); 3]> {
    let innings = it.innings(0)?.it;
    let stroke = innings.stroke(&it.playback.stroke)?;
    let fresh = innings.at(stroke, 0.0, StrokeNow::bat_speed_m_s)?.best;
    let late = innings.at(stroke, FIFTY, StrokeNow::bat_speed_m_s)?;
    Some([late.high, late.best, late.low].map(|it| (fresh - it, (fresh - it) / fresh)))
}

/// What a coach could say of the first bat.
pub fn told(it: &Studio) -> String {
    let bat = it.label(it.playback.bats[0]);
    let Some([_, (lost_m_s, _), _]) = lost(it) else {
        return format!("The innings with {bat} is being played");
    };
    let speed = spoken(Quantity::Speed, lost_m_s, 0.3 * lost_m_s.abs(), it.look.units);
    format!(
        "By fifty the {} with {bat} has lost {speed}; how much is not known well, since nobody has measured lasting fatigue",
        it.playback.stroke,
    )
}

pub fn beside(ui: &mut Ui, it: &Studio, _: &mut Vec<Action>) {
    super::today::headline(ui, it);
    ui.label(told(it));
    if let Some([least, believed, most]) = lost(it) {
        let [least, believed, most] = [least, believed, most].map(|it| percent(it.1, 1));
        let name = format!(
            "of its bat speed by fifty; anything from {least} to {most}, the bands on the curves"
        );
        let why = "The least: only what a rest brings back. The most: all that legs lose in such an innings";
        big(ui, &believed, &name, why);
    }
    pending(ui, it.playback.bats.iter().any(|bat| it.is_pending(*bat)));
    super::today::bats(ui, it);
    head(ui, &super::swing::heading(it));
    super::swing::rows(ui, it);
    super::swing::failed(ui, it);
}

/// A chart that is narrower, px at scale 1, has no room for its words.
const NARROWEST: f32 = 150.0;

/// Draws score and curves in the width there is.
pub fn innings(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        super::swing::score(ui, it, out);
        let balls = it.innings(0).and_then(|at| at.it.balls_at(f64::from(it.playback.runs)));
        if let Some(balls) = balls {
            quiet(ui, &format!("about {balls:.0} balls faced"));
        }
        button(ui, out, "Fresh", Action::Score(0));
        button(ui, out, "At fifty", Action::Score(FIFTY as u32));
        super::playback::strokes(ui, it, out);
    });
    let (unit, per_m_s) = speed_unit(it.look.units);
    let space = ui.available_size();
    let third = (space.x - 2.0 * ui.spacing().item_spacing.x) / 3.0;
    // Too narrow for their words they stand one under the other.
    let scale = it.look.text_scale;
    let are_stacked = third < NARROWEST * scale;
    let (size, layout) = match are_stacked {
        true => ([space.x, NARROWEST * scale], Layout::top_down(Align::Min)),
        false => {
            let height = space.y.clamp(12.0 * 8.0, 40.0 * 8.0);
            ([third, height], Layout::left_to_right(Align::Min))
        }
    };
    let curves: [(&str, Of, f64, f64); 3] = [
        (&format!("bat speed, {unit}"), StrokeNow::bat_speed_m_s, per_m_s, 2.0 * per_m_s),
        ("wrist share, %", |it| it.wrist_share, 100.0, 4.0),
        ("time in hand, ms", |it| it.time_in_hand_s, 1000.0, 20.0),
    ];
    ui.with_layout(layout, |ui| {
        for (name, of, scale, least) in curves {
            one(ui, it, out, size, name, &|now| scale * of(now), least);
        }
    });
}

fn one(
    ui: &mut Ui,
    it: &Studio,
    out: &mut Vec<Action>,
    size: [f32; 2],
    name: &str,
    of: &dyn Fn(&StrokeNow) -> f64,
    least: f64,
) {
    let (whole, response) = ui.allocate_exact_size(size.into(), Sense::click_and_drag());
    let runs = f64::from(it.playback.runs);
    let words = format!("{name} through the innings, now at {}", runs_words(runs));
    named(&response, WidgetType::Slider, &words);
    let shown = if it.playback.second { 2 } else { 1 };
    let lines: Vec<(usize, Vec<[f64; 4]>)> = (0..shown)
        .filter_map(|slot| {
            let innings = it.innings(slot)?.it;
            let stroke = innings.stroke(&it.playback.stroke)?;
            let point = |it: &Point| {
                let low = of(it.most_tired.get(stroke)?);
                let best = of(it.at.with_slow.get(stroke)?);
                let high = of(it.at.without_slow.get(stroke)?);
                Some([it.at.left.runs, low, best, high])
            };
            Some((*it.playback.bats.get(slot)?, innings.points.iter().filter_map(point).collect()))
        })
        .collect();
    let values = lines.iter().flat_map(|it| it.1.iter().flat_map(|it| [it[1], it[2], it[3]]));
    let y = Axis::around(name, values, least);
    let x = Axis { label: "runs".to_owned(), range: [0.0, LAST] };
    let theme = theme(&it.look);
    let chart = Chart::new(ui, &it.look, whole, x, y, 16.0);
    chart.ground();
    for (bat, points) in &lines {
        let colour = bat_look(theme, *bat).0;
        let band: Vec<_> = points.iter().map(|it| (it[0], it[1], it[3])).collect();
        // Pale, and then thinned: in linear light a dark colour thinned alone is grey.
        chart.band(&band, thinned(mixed(theme.ground, colour, 0.35), 0.6));
    }
    for (bat, points) in &lines {
        let colour = ink(bat_look(theme, *bat).0);
        let line: Vec<_> = points.iter().map(|it| (it[0], it[2])).collect();
        chart.curve(&line, *bat, colour);
        if let Some((x, y)) = line.last() {
            let end = chart.at(*x, *y) + egui::vec2(4.0, 0.0);
            chart.words(end, Align2::LEFT_CENTER, &bat_letter(*bat), colour);
        }
    }
    let end = it.innings(0).map(|it| it.it.end_runs).filter(|it| *it != FIFTY && *it < LAST);
    for (at, name) in [(FIFTY, "fifty")].into_iter().chain(end.map(|it| (it, "end"))) {
        chart.upright(at, ink(theme.quiet), 1.0);
        let mark = chart.at(at, chart.y.range[0]) + egui::vec2(3.0, 0.0);
        chart.words(mark, Align2::LEFT_BOTTOM, name, ink(theme.quiet));
    }
    chart.upright(runs, ink(theme.ink), 2.0);
    if let Some(place) = response.interact_pointer_pos() {
        let score = chart.under(place)[0].clamp(0.0, LAST).round() as u32;
        if score != it.playback.runs {
            out.push(Action::Score(score));
        }
    }
    if has_keyboard(ui, &response, whole) {
        let step = |key| ui.input(|input| input.key_pressed(key));
        if step(egui::Key::ArrowRight) {
            out.push(Action::Score(it.playback.runs + 1));
        }
        if step(egui::Key::ArrowLeft) {
            out.push(Action::Score(it.playback.runs.saturating_sub(1)));
        }
    }
}
