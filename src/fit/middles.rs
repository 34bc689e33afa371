//! High, usual and low middle: the best weight of each, what it is worth, and what holds it.

use super::candidates::MAP_STEP;
use super::map::{Cell, OneSize};
use crate::bat::makeable::MadeBat;
use crate::measurement::plan::Middle;
use crate::worth::constants::GROWN_FROM_Y;
use crate::worth::expected::is_near;
use crate::worth::order::Order;
use crate::worth::today::Today;

/// What keeps a middle's best weight from going on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LimitedBy {
    /// The lightest that is commonly sold, or was asked for.
    LightestUsual,
    /// The lightest that can be made.
    LightestPossible,
    /// The heaviest that is commonly sold, or was asked for.
    HeaviestUsual,
    /// The heaviest that can be made.
    HeaviestPossible,
}

impl LimitedBy {
    /// As other programs read it.
    pub fn key(self) -> &'static str {
        match self {
            Self::LightestUsual => "lightest_usual",
            Self::LightestPossible => "lightest_possible",
            Self::HeaviestUsual => "heaviest_usual",
            Self::HeaviestPossible => "heaviest_possible",
        }
    }
}

/// The best bat of one middle.
#[derive(Clone, Debug, PartialEq)]
pub struct MiddleRow {
    /// Which middle.
    pub middle: Middle,
    /// The bat to make of it: its best, or a junior's lightest of those as good.
    pub best: Cell,
    /// The one worth most.
    top: Cell,
    /// What its weight rests against, if it does.
    pub limited_by: Option<LimitedBy>,
    /// What going on beyond the usual weights would gain, m/s; none where it rests against nothing usual.
    pub beyond_gains_m_s: Option<f64>,
}

/// The rows, from high to low; a middle that cannot be made in the weights asked for is left out.
pub(super) fn middles(order: &Order<'_>, today: &Today, one: &OneSize) -> Vec<MiddleRow> {
    Middle::ALL.into_iter().filter_map(|middle| row(order, today, one, middle)).collect()
}

fn row(order: &Order<'_>, today: &Today, one: &OneSize, middle: Middle) -> Option<MiddleRow> {
    let junior = today.swings.ways.batter.player.age_y < GROWN_FROM_Y;
    let usual_kg = weights_kg(order, one);
    let inside = |it: &Cell| {
        it.middle == middle && (usual_kg[0]..=usual_kg[1]).contains(&it.made.bat.mass_kg())
    };
    let coarse = best(one.cells.iter().filter(|it| inside(it)))?;
    let near = one.range.near(coarse.made.bat.mass_kg(), coarse.made.bat.balance_m(), order.laws);
    let fine: Vec<Cell> = near
        .into_iter()
        .filter(|made| on_the_map(made, one))
        .map(|made| one.cell(today, made))
        .filter(|it| inside(it))
        .collect();
    let top = best(fine.iter().chain([coarse]))?;
    let chosen = if junior { lightest_as_good(&fine, one, top, &inside) } else { top.clone() };
    let everywhere = best(one.cells.iter().filter(|it| it.middle == middle))?;
    let (limited_by, beyond_gains_m_s) = limited(&chosen, top, everywhere, usual_kg, one);
    Some(MiddleRow { middle, best: chosen, top: top.clone(), limited_by, beyond_gains_m_s })
}

/// Whether a bat between the map's places lies on it: not beyond the furthest balance points of its neighbours.
fn on_the_map(made: &MadeBat, one: &OneSize) -> bool {
    let (mass_kg, balance_m) = (made.bat.mass_kg(), made.bat.balance_m());
    let beside = |it: &&Cell| (it.made.bat.mass_kg() - mass_kg).abs() < MAP_STEP[0];
    let balances = || one.cells.iter().filter(beside).map(|it| it.made.bat.balance_m());
    let (nearest, furthest) =
        (balances().fold(f64::INFINITY, f64::min), balances().fold(0.0, f64::max));
    (nearest - ROUNDING_M..=furthest + ROUNDING_M).contains(&balance_m)
}

/// Keeps a bat on the rim from falling off it by a rounding, m.
const ROUNDING_M: f64 = 1e-9;

/// Lightest and heaviest weight to ask for, kg: what is usual in the size, unless the player asked for other limits
/// or none of the usual can be made.
fn weights_kg(order: &Order<'_>, one: &OneSize) -> [f64; 2] {
    let limits = order.limits;
    let [low, high] = one.range.size.usual_kg;
    let made = |it: &Cell| (low..=high).contains(&it.made.bat.mass_kg());
    let open = limits.beyond_usual || !one.cells.iter().any(made);
    let [low, high] = if open { [0.0, f64::INFINITY] } else { [low, high] };
    [limits.lightest_kg.unwrap_or(low), limits.heaviest_kg.unwrap_or(high)]
}

fn best<'a>(cells: impl Iterator<Item = &'a Cell>) -> Option<&'a Cell> {
    cells.max_by(|a, b| a.worth.mean_m_s().total_cmp(&b.worth.mean_m_s()))
}

/// Of the bats that are as good as the best to this model, the one that picks up lightest: a junior is never sent
/// towards the heavier of two doubtful bats.
fn lightest_as_good(
    fine: &[Cell],
    one: &OneSize,
    top: &Cell,
    inside: &dyn Fn(&Cell) -> bool,
) -> Cell {
    fine.iter()
        .chain(one.cells.iter().filter(|it| inside(it)))
        .filter(|it| as_good(it, top))
        .min_by(|a, b| pickup_kg_m2(a).total_cmp(&pickup_kg_m2(b)))
        .unwrap_or(top)
        .clone()
}

/// Whether a bat is as good as the best to this model: near it in enough draws, and by what is expected of it (the card
/// takes what loses as much again).
fn as_good(it: &Cell, top: &Cell) -> bool {
    is_near(it.worth.mean_m_s(), top.worth.mean_m_s()) && it.worth.often_near(&top.worth)
}

fn pickup_kg_m2(it: &Cell) -> f64 {
    it.made.bat.swing_moment_kg_m2()
}

fn limited(
    chosen: &Cell,
    top: &Cell,
    everywhere: &Cell,
    usual_kg: [f64; 2],
    one: &OneSize,
) -> (Option<LimitedBy>, Option<f64>) {
    let mass_kg = |it: &Cell| it.made.bat.mass_kg();
    let possible = one.cells.iter().map(mass_kg);
    let [low, high] = [
        possible.clone().fold(f64::INFINITY, f64::min),
        possible.fold(f64::NEG_INFINITY, f64::max),
    ];
    let at = |limit: f64| (mass_kg(chosen) - limit).abs() < RESTS_WITHIN_KG;
    let by = if at(usual_kg[0].max(low)) {
        Some(if usual_kg[0] > low { LimitedBy::LightestUsual } else { LimitedBy::LightestPossible })
    } else if at(usual_kg[1].min(high)) {
        Some(if usual_kg[1] < high {
            LimitedBy::HeaviestUsual
        } else {
            LimitedBy::HeaviestPossible
        })
    } else {
        None
    };
    let gain = matches!(by, Some(LimitedBy::LightestUsual | LimitedBy::HeaviestUsual))
        .then(|| (everywhere.worth.mean_m_s() - top.worth.mean_m_s()).max(0.0));
    (by, gain)
}

/// A weight this near a limit rests against it, kg: half a step of the map.
const RESTS_WITHIN_KG: f64 = 0.008;

/// The row to order: the middle asked for, or the one worth most; a junior's is the one that picks up lightest of those
/// as good.
pub(super) fn asked_for(
    rows: &[MiddleRow],
    middle: Option<Middle>,
    age_y: f64,
) -> Option<&MiddleRow> {
    let wish = rows.iter().find(|it| Some(it.middle) == middle);
    let worth = |it: &MiddleRow| it.top.worth.mean_m_s();
    let best = rows.iter().max_by(|a, b| worth(a).total_cmp(&worth(b)))?;
    let lightest = || {
        let doubtful = rows.iter().filter(|it| as_good(&it.best, &best.top));
        doubtful.min_by(|a, b| pickup_kg_m2(&a.best).total_cmp(&pickup_kg_m2(&b.best)))
    };
    wish.or_else(|| if age_y < GROWN_FROM_Y { lightest() } else { Some(best) }).or(Some(best))
}
