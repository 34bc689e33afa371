//! The figures of the card: a row each, the number large, both systems of units, the tolerance as a bar.

use super::area::Area;
use super::palette::PRINT;
use super::picture::{Picture, Stroke};
use super::type_setting::{Anchor, Lettering, Size};
use super::words::{self, Part, THIN, joined};
use crate::card::{Asked, Card, Figure};

/// How a value of the figure is written.
type Written = fn(f64) -> Vec<Part>;

/// One row.
struct Row {
    name: &'static str,
    /// What stands small after the large number.
    after: String,
    big: Vec<Part>,
    /// The second line.
    below: String,
    beside: Beside,
}

/// What stands at the right of a row.
enum Beside {
    Limits(Limits),
    Note(&'static str),
}

/// A tolerance bar: its ends written in one system above, in the other below.
struct Limits {
    /// Where on it the target lies, from 0 to 1.
    target_share: f64,
    above: [String; 2],
    below: [String; 2],
}

impl Limits {
    fn new(asked: Asked, above: Written, below: Written) -> Self {
        let [low, high] = asked.tolerance;
        Self {
            target_share: if high > low { (asked.target - low) / (high - low) } else { 0.5 },
            above: ends(asked, above),
            below: ends(asked, below),
        }
    }
}

fn ends(asked: Asked, written: Written) -> [String; 2] {
    asked.tolerance.map(|it| joined(&written(it)))
}

/// Height of a row, px.
const ROW_PX: f64 = 84.0;
/// Where the tolerance bars start, px from the left of the rows, and how wide they are.
const BAR_X: f64 = 276.0;
const BAR_WIDTH: f64 = 200.0;

/// Draws the rows into an area and returns their lower edge.
pub(super) fn draw(picture: &mut Picture, area: Area, card: &Card) -> f64 {
    let mut y = area.y;
    for row in rows(card) {
        row.draw(picture, Area::new(area.x, y, area.width, ROW_PX));
        y += ROW_PX;
    }
    y
}

fn rows(card: &Card) -> [Row; 6] {
    let weight = card.asked(Figure::DeadWeight);
    let balance = card.asked(Figure::Balance);
    let time = card.pendulum_time_s;
    let sweet = card.asked(Figure::SweetSpot);
    let handle = card.asked(Figure::HandleDiameter);
    let swing = card.asked(Figure::SwingMoment);
    let trade_and_si = |trade: Written, si: Written, value: f64| {
        format!("{} ({})", joined(&trade(value)), joined(&si(value)))
    };
    [
        Row {
            name: "Dead weight",
            after: String::new(),
            big: words::pounds_ounces(weight.target),
            below: joined(&words::kilograms(weight.target)),
            beside: Beside::Limits(Limits::new(weight, words::pounds_ounces, words::kilograms)),
        },
        Row {
            name: "Balance point",
            after: " from the top".to_owned(),
            big: words::millimetres(balance.target),
            below: format!(
                "{}; {} from the toe",
                joined(&words::inches(balance.target)),
                joined(&words::millimetres(card.length_m - balance.target))
            ),
            beside: Beside::Limits(Limits::new(balance, words::inches, words::millimetres)),
        },
        Row {
            name: "Pickup weight",
            after: String::new(),
            big: words::pounds_ounces(card.pickup_weight_kg),
            below: joined(&words::kilograms(card.pickup_weight_kg)),
            beside: Beside::Note(
                "What the standard bat of this size weighs that is as hard to get moving. Follows from the swing moment.",
            ),
        },
        Row {
            name: "Swing moment, by the pendulum",
            after: format!(" for {} swings", card.pendulum_swings),
            big: words::seconds(time.target),
            below: trade_and_si(words::swing_moment, words::ounce_inches_squared, swing.target),
            beside: Beside::Limits(Limits {
                below: ends(swing, words::swing_moment),
                ..Limits::new(time, words::seconds, words::seconds)
            }),
        },
        Row {
            name: "Sweet spot",
            after: " from the toe".to_owned(),
            big: words::millimetres(sweet.target),
            below: joined(&words::inches(sweet.target)),
            beside: Beside::Limits(Limits::new(sweet, words::inches, words::millimetres)),
        },
        Row {
            name: "Handle over the grip, bottom hand",
            after: format!(" {}", words::handle_shape(card.handle_shape)),
            big: words::fine_millimetres(handle.target),
            below: joined(&words::inches(handle.target)),
            beside: Beside::Limits(Limits::new(handle, words::inches, words::fine_millimetres)),
        },
    ]
}

impl Row {
    fn draw(&self, picture: &mut Picture, area: Area) {
        let ink = PRINT.ink;
        picture.line([area.x, area.y], [area.right(), area.y], Stroke::solid(PRINT.hairline, 1.0));
        picture.text(area.x, area.y + 17.0, Lettering::new(Size::Text, ink), self.name);
        let big = Lettering::new(Size::Big, ink).bold();
        let small = Lettering::new(Size::Sentence, ink);
        let mut runs: Vec<(Lettering, String)> = Vec::new();
        for (k, (value, unit)) in self.big.iter().enumerate() {
            let gap = if k + 1 < self.big.len() { " " } else { "" };
            runs.extend([(big, value.clone()), (small, format!("{THIN}{unit}{gap}"))]);
        }
        runs.push((Lettering::new(Size::Text, ink), self.after.clone()));
        picture.runs(area.x, area.y + 51.0, &runs);
        picture.text(area.x, area.y + 75.0, Lettering::new(Size::Text, ink), &self.below);
        let bar = Area::new(area.x + BAR_X, area.y + 42.0, BAR_WIDTH, 0.0);
        match &self.beside {
            Beside::Limits(limits) => limits.draw(picture, bar),
            Beside::Note(words) => {
                let note = Lettering::new(Size::Quiet, ink);
                for (k, line) in note.wrapped(words, BAR_WIDTH).iter().enumerate() {
                    let y = area.y + 21.0 + Size::Quiet.line_px() * k as f64;
                    picture.text(bar.x, y, note, line);
                }
            }
        }
    }
}

impl Limits {
    fn draw(&self, picture: &mut Picture, bar: Area) {
        let ink = PRINT.ink;
        let y = bar.y;
        picture.line([bar.x, y], [bar.right(), y], Stroke::solid(ink, 3.0));
        for x in [bar.x, bar.right()] {
            picture.line([x, y - 6.0], [x, y + 6.0], Stroke::solid(ink, 2.0));
        }
        let x = bar.x + bar.width * self.target_share;
        let mark = [[x - 7.0, y - 11.0], [x + 7.0, y - 11.0], [x, y + 2.0]];
        picture.polygons([mark.as_slice()], ink, 1.0);
        let quiet = Lettering::new(Size::Quiet, ink);
        for (y, [low, high]) in [(y - 16.0, &self.above), (y + 22.0, &self.below)] {
            picture.text(bar.x, y, quiet, low);
            picture.text(bar.right(), y, quiet.anchored(Anchor::End), high);
        }
    }
}
