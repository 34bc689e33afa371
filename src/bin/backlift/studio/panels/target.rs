//! The card that the wood is held against: which it is, and its figures as marks that turn when they are met.

use backlift::card::{Asked, Card, Figure};
use backlift::measurement::person::Handed;
use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::reads::reads;
use egui::{Color32, Painter, Pos2, Rect, Sense, Shape, Stroke, Ui, Vec2, WidgetType};

use super::deeds::button;
use super::map_figures::search;
use super::table::{Table, name};
use super::words::{caution, named, quiet, why};
use crate::figure::plain;
use crate::studio::action::Action;
use crate::studio::look::Look;
use crate::studio::state::Studio;
use crate::studio::style::{GRID, ink, theme, wash};
use crate::studio::wood::action::WoodAction;
use crate::studio::work::Question;

/// A scale reaches so many widths of the limits beyond them, either side.
const BEYOND: f64 = 1.5;
const TURN_S: f32 = 0.25;

/// A pointer that stands upright when its figure is met, and lies on its side, pointing, when not: its tip is
/// where the figure is. `turn_rad` is nought upright, above it points to the right.
pub fn pointer(painter: &Painter, look: &Look, tip: Pos2, turn_rad: f32, px: f32, is_met: bool) {
    let theme = theme(look);
    let (sin, cos) = turn_rad.sin_cos();
    let turned = |x: f32, y: f32| tip + px * Vec2::new(x * cos - y * sin, x * sin + y * cos);
    // Upright the tip points up, from below.
    let corners = vec![tip, turned(0.6, 1.2), turned(-0.6, 1.2)];
    let line = Stroke::new(1.5, ink(theme.ink));
    let fill = if is_met { ink(theme.ink) } else { Color32::TRANSPARENT };
    painter.add(Shape::convex_polygon(corners, fill, line));
}

/// One figure against the card.
pub struct Target {
    pub figure: Figure,
    pub value: f64,
    pub asked: Asked,
}

impl Target {
    pub fn is_met(&self) -> bool {
        self.asked.takes(self.value)
    }

    /// How far off, in words.
    pub fn told(&self, units: Units) -> String {
        let [low, high] = self.asked.tolerance;
        let by = match self.value {
            value if value < low => low - value,
            value if value > high => value - high,
            _ => return "met".to_owned(),
        };
        let is_low = self.value < low;
        let way = match self.figure {
            // Told from the top of the handle.
            Figure::Balance if is_low => "too near the handle",
            Figure::Balance => "too near the toe",
            // Told from the toe.
            Figure::SweetSpot if is_low => "too near the toe",
            Figure::SweetSpot => "too near the handle",
            Figure::HandleDiameter if is_low => "too thin",
            Figure::HandleDiameter => "too thick",
            _ if is_low => "too little",
            _ => "too much",
        };
        format!("{} {way}", in_units(self.figure, by, units))
    }
}

/// A figure of the card in the reader's units; what is small with enough digits never to be nought.
pub fn in_units(figure: Figure, si: f64, units: Units) -> String {
    // Small differences of weight are told in grams by every maker.
    let fine = |si: f64, unit: &str| match 1e3 * si.abs() {
        it if it >= 0.95 => plain(1e3 * si, 0, unit),
        it if it >= 0.095 => plain(1e3 * si, 1, unit),
        it if it > 0.0 => plain((1e3 * si).max(0.01), 2, unit),
        _ => plain(0.0, 0, unit),
    };
    let shown = |si: f64| plain(si, figure.about().decimals, figure.about().unit);
    match figure.about().quantity {
        Some(Quantity::Mass) if si < 0.1 => fine(si, "g"),
        Some(Quantity::Mass) => spoken(Quantity::Mass, si, 0.001, units),
        None if si < 0.5 * figure.step() => format!("less than {}", shown(figure.step())),
        None => shown(si),
        _ if si < 0.01 => fine(si, "mm"),
        _ if si < 0.06 => plain(1e3 * si, 1, "mm"),
        _ => spoken(Quantity::Length, si, 0.0005, units),
    }
}

/// The figures of the bat on the screen against the card; none without a card.
pub fn targets(it: &Studio) -> Vec<Target> {
    let (Some(card), Some(worked)) = (it.wood_card(), &it.wood.worked) else { return Vec::new() };
    Figure::ALL.map(|figure| of(card, figure, reads(&worked.bat, figure))).into()
}

pub fn of(card: &Card, figure: Figure, value: f64) -> Target {
    Target { figure, value, asked: card.asked(figure) }
}

pub fn show(ui: &mut Ui, it: &Studio, targets: &[Target]) {
    let table = Table::new(ui, &[1.25, 1.25, 1.0]);
    for target in targets {
        table.row(ui, |ui, n| match n {
            0 => {
                name(ui, target.figure.words());
                quiet(ui, &target.told(it.look.units));
            }
            1 => scale(ui, &it.look, target),
            _ => {
                let said = |si: f64| in_units(target.figure, si, it.look.units);
                let [low, high] = target.asked.tolerance.map(said);
                let asked = said(target.asked.target);
                let words = format!("The card asks {asked}, from {low} to {high}");
                why(ui, &said(target.value), &words);
            }
        });
    }
}

/// How a pointer is turned: upright within the limits, else on its side towards them, rad.
pub fn quarter_turn(value: f64, [low, high]: [f64; 2]) -> f32 {
    let way = match value {
        value if value < low => 1.0,
        value if value > high => -1.0,
        _ => 0.0,
    };
    way * std::f32::consts::FRAC_PI_2
}

/// A line with the card's limits on it, and the pointer.
fn scale(ui: &mut Ui, look: &Look, target: &Target) {
    let size = Vec2::new(ui.available_width(), 2.6 * GRID * look.text_scale);
    let (whole, response) = ui.allocate_exact_size(size, Sense::hover());
    let theme = theme(look);
    let [low, high] = target.asked.tolerance;
    let wide = (high - low).max(1e-6 * high.abs()).max(f64::MIN_POSITIVE);
    let [from, to] = [low - BEYOND * wide, high + BEYOND * wide];
    let inside = whole.shrink2(Vec2::new(8.0, 0.0));
    let x = |value: f64| {
        let share = ((value - from) / (to - from)).clamp(0.0, 1.0) as f32;
        inside.left() + share * inside.width()
    };
    let y = whole.top() + 0.4 * whole.height();
    let painter = ui.painter();
    painter.hline(inside.x_range(), y, Stroke::new(1.0, ink(theme.hairline)));
    let band = Rect::from_min_max(Pos2::new(x(low), y - 4.0), Pos2::new(x(high), y + 4.0));
    painter.rect_filled(band, 1.0, wash(theme.bats[2], 0.45));
    painter.vline(x(target.asked.target), (y - 6.0)..=(y + 6.0), Stroke::new(1.5, ink(theme.ink)));
    let is_met = target.is_met();
    let wanted = quarter_turn(target.value, [low, high]);
    let id = response.id.with("turn");
    let time_s = if look.reduced_motion { 0.0 } else { TURN_S };
    let turn = ui.ctx().animate_value_with_time(id, wanted, time_s);
    let tip = Pos2::new(x(target.value), if is_met { y + 4.0 } else { y });
    pointer(ui.painter(), look, tip, turn, 8.0 * look.text_scale.min(1.4), is_met);
    let words = format!("{}: {}", target.figure.words(), if is_met { "met" } else { "not met" });
    named(&response, WidgetType::Image, &words);
}

/// Which card, and how to get one.
pub fn card(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    match it.wood_card() {
        None => quiet(ui, "There is no card yet: open one, or find the bat for this player first"),
        Some(card) => {
            let whence = match (it.wood.own_card(), &it.wood.card) {
                (Some(_), _) => "The card in the bat's own file",
                (None, Some(_)) => "A card that was opened",
                (None, None) => "The fitting's card",
            };
            let who = player(card, it.look.units);
            quiet(ui, &format!("{whence}: size {}, for {who}", card.size));
            let own = it.wood.worked.as_ref().map(|it| it.loaded.size.name.as_str());
            if own.is_some_and(|own| own != card.size) {
                caution(ui, "The blade is of another size: start a new one, or change its size");
            }
        }
    }
    if it.wood.own_card().is_some() {
        return;
    }
    ui.horizontal_wrapped(|ui| {
        button(ui, out, "Open a card…", Action::Wood(WoodAction::AskCard));
        if it.wood.card.is_some() && it.fitted().is_some() {
            button(ui, out, "The fitting's own", Action::Wood(WoodAction::FittedCard));
        }
    });
    // Weighing a bat again does not change what was asked for: its card stays.
    if it.wood_card().is_none() || it.work.job(Question::Fit).is_some() {
        search(ui, it, out);
    } else if it.wood.card.is_none() && it.is_fit_stale() {
        quiet(
            ui,
            "The scenario has changed since: if the player did, find the bat again on the map",
        );
    }
}

fn player(card: &Card, units: Units) -> String {
    let it = &card.player;
    let hand = match it.handed {
        Handed::Right => "right-handed",
        Handed::Left => "left-handed",
    };
    let stature = spoken(Quantity::Length, it.stature_m, 0.01, units);
    let made_up = if card.invented { ", invented" } else { "" };
    format!("a player of {:.0} years, {stature}, {hand}{made_up}", it.age_y.floor())
}
