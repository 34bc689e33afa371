//! Shapes that meet a card: what is asked, what the wood and craft allow, and which demand breaks it.

mod objection;
mod targets;
mod wish;

pub use wish::WishedMiddle;

use std::cmp::Ordering;

use targets::Targets;
use wish::Wished;

use super::carved::{Carved, Figures, Held, carve};
use super::reads::reads;
use crate::bat::described::Cleft;
use crate::bat::laws::Limits;
use crate::bat::shape::BatShape;
use crate::bat::shaped::{ShapedBat, figures};
use crate::bat::sizes::Size;
use crate::card::{Asked, Card, Figure};
use crate::fit::middle_of::middle_of;
use crate::measurement::plan::Middle;
use crate::uncertain::Uncertain;

/// What a maker starts from.
#[derive(Clone, Debug)]
pub struct Start<'a> {
    /// The shape to carve from: a described bat, or the size's reference bat.
    pub shape: BatShape,
    /// Density of the willow, kg/m³.
    pub density_kg_m3: Uncertain,
    /// The willow is this one; else a lighter or denser cleft may be chosen within craft.
    pub willow_given: bool,
    /// The cleft, where it was measured.
    pub cleft: Option<Cleft>,
    /// The size.
    pub size: &'a Size,
    /// The Laws.
    pub limits: &'a Limits,
    /// What may not be changed.
    pub held: Held,
}

/// One shape for the card.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// What is particular about it.
    pub name: &'static str,
    /// The bat.
    pub bat: ShapedBat,
    /// Its middle.
    pub middle: Middle,
    /// Figures of the card that it meets, each with what came out, in the card's unit.
    pub met: Vec<(Figure, f64)>,
    /// How it differs from what was carved, drawn to the card's length.
    pub away: Away,
}

/// A demand that breaks the card.
#[derive(Clone, Debug, PartialEq)]
pub struct BrokenDemand {
    /// Which.
    pub figure: Figure,
    /// What the card asks.
    pub asked: Asked,
    /// The nearest that can be made with the card's other demands met; none where nothing can.
    pub nearest: Option<f64>,
    /// What stands in the way at what was asked.
    pub why: String,
}

/// What came of it.
#[derive(Clone, Debug, PartialEq)]
pub struct ToCard {
    /// Shapes that meet the card, those first that have the middle the customer wishes or come nearest to it, and of
    /// these the one that differs least from the bat they are carved from; empty where none can.
    pub answers: Vec<Answer>,
    /// What the customer wishes of the middle, and how many have it; none where nothing is wished or nothing can be
    /// made.
    pub wished: Option<WishedMiddle>,
    /// What breaks it; empty where there are answers.
    pub broken: Vec<BrokenDemand>,
    /// The nearest that can be made, where no shape meets the card.
    pub nearest: Option<Answer>,
}

/// What is more in one blade than in another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Away {
    /// Thickest edge, m.
    pub edge_m: f64,
    /// Spine height, m.
    pub depth_m: f64,
    /// Height of the swell over the toe, m.
    pub swell_m: f64,
    /// Hollowing at the swell.
    pub hollow: f64,
}

/// How far the swell is moved for the other answers.
const SWELL_MOVE_M: f64 = 0.025;
/// A swell that has room for less than this share of its move is not moved.
const LEAST_MOVE: f64 = 0.2;
/// The same of the hollowing.
pub const HOLLOW_MOVE: f64 = 0.25;
/// The same of the edges.
const EDGE_MOVE_M: f64 = 0.003;

/// The plainest shape that meets a card, its handle as thick as asked or within its limits; or what stands in the way
/// of one with the figures asked, in plain words.
pub fn plainest(start: &Start<'_>, card: &Card) -> Result<Carved, String> {
    let targets = Targets::of(card, &|| false);
    let starts = on_handles(start, card);
    let found = starts.iter().find_map(|it| targets.nearest_within(it, &it.held));
    found.ok_or_else(|| targets.why(&starts[0]))
}

/// The start carved until it has these figures, within craft and the Laws, its joint whole; or what stands in the way,
/// in plain words. Its swell goes with the taper as in the size's family, beyond the places for which a card is carved if
/// need be.
pub fn with_figures(start: &Start<'_>, figures: &Figures) -> Result<Carved, String> {
    let free = carve(&start.shape, &start.size.craft, figures, &start.held);
    let swell_from_toe_m = free.as_ref().map(|it| it.shape.swell_from_toe_m());
    let as_it_falls = Start { held: Held { swell_from_toe_m, ..start.held }, ..start.clone() };
    targets::made(free, &as_it_falls)
}

/// The start on handles of the thickness asked and of its limits: a thicker one shifts the balance, and within these it
/// may give way to the blade.
fn on_handles<'a>(start: &Start<'a>, card: &Card) -> [Start<'a>; 3] {
    let handle = card.asked(Figure::HandleDiameter);
    let [thin_m, thick_m] = handle.tolerance;
    [handle.target, thin_m, thick_m].map(|it| on_card(start, card, inside(handle.target, it)))
}

/// Finds shapes for a card; what comes once `is_stopped` says so is worth nothing.
pub fn to_card(start: &Start<'_>, card: &Card, is_stopped: &dyn Fn() -> bool) -> ToCard {
    let targets = Targets::of(card, is_stopped);
    let starts = on_handles(start, card);
    let found = |name: &'static str, held: &Held| {
        let first = |it: &Start<'_>| answer(name, &targets.nearest_within(it, held)?, it, card);
        starts.iter().find_map(first)
    };
    let plain = found("plain", &start.held);
    let like = plain.as_ref().map_or(&starts[0].shape, |it| &it.bat.shape);
    let swells_m = start.size.craft.swell_from_toe.map(|it| it * like.blade.length_m);
    let others: Vec<Answer> = variants(&start.held, like, swells_m)
        .into_iter()
        .filter_map(|(name, held)| found(name, &held))
        .collect();
    let wished = card.order.as_ref().and_then(|it| it.wish.middle);
    let wished = wished.map(|it| Wished::of(it, start.size, like.blade.length_m));
    let plain_m = like.swell_from_toe_m();
    let mut answers: Vec<Answer> = plain.into_iter().chain(others).collect();
    let away_m = |it: &Answer| wished.map_or(0.0, |of| of.away_m(it.bat.shape.swell_from_toe_m()));
    if let (Some(wished), None) = (&wished, start.held.swell_from_toe_m) {
        let nearest_m = answers.iter().map(away_m).min_by(f64::total_cmp).unwrap_or(0.0);
        let tried = |swell_m: f64| {
            let held = Held { swell_from_toe_m: Some(swell_m), ..start.held };
            found(wished.name(swell_m), &held)
        };
        answers.extend(wished.swells_m(plain_m, nearest_m).into_iter().find_map(tried));
    }
    let key = |it: &Answer| [away_m(it), it.away.steps()];
    answers.sort_by(|a, b| key(a).partial_cmp(&key(b)).unwrap_or(Ordering::Equal));
    if !answers.is_empty() {
        let wished = wished.map(|it| WishedMiddle::of(&it, &answers));
        return ToCard { answers, wished, broken: Vec::new(), nearest: None };
    }
    let mut broken = targets.broken(&starts[0]);
    broken.extend(handle_broken(&targets, start, card));
    if broken.iter().any(|it| it.nearest.is_some()) {
        broken.retain(|it| it.nearest.is_some());
    }
    let nearest = targets.nearest(&starts[0]);
    let nearest = nearest.and_then(|it| answer("nearest that can be made", &it, &starts[0], card));
    ToCard { answers, wished: None, broken, nearest }
}

/// Steps from what was asked to what the start has, of the handle: each tries the card anew.
const HANDLE_STEPS: u32 = 8;

/// The handle's thickness as the demand that breaks the card, if another would do.
fn handle_broken(targets: &Targets<'_>, start: &Start<'_>, card: &Card) -> Option<BrokenDemand> {
    let asked = card.asked(Figure::HandleDiameter);
    let handle = &start.shape.handle;
    let own_m = handle.diameter_over_grip_m(handle.bottom_hand_m());
    let can = |it: f64| {
        let start = on_card(start, card, it);
        targets.nearest_within(&start, &start.held).is_some()
    };
    let steps = (1..=HANDLE_STEPS).map(|n| f64::from(n) / f64::from(HANDLE_STEPS));
    let nearest =
        steps.map(|share| asked.target + share * (own_m - asked.target)).find(|it| can(*it))?;
    let why =
        "weight and balance of a handle so thick leave no blade that meets the rest".to_owned();
    Some(BrokenDemand { figure: Figure::HandleDiameter, asked, nearest: Some(nearest), why })
}

/// The start drawn to the card's length, with a handle so thick over the grip.
fn on_card<'a>(start: &Start<'a>, card: &Card, handle_diameter_m: f64) -> Start<'a> {
    let mut out = start.clone();
    let handle = &mut out.shape.handle;
    out.shape.blade.length_m = card.length_m - handle.length_m;
    handle.grips = card.condition.grips;
    // A card that leaves no room for cane is met by no handle, and then said not to be met.
    let _ = handle.fit_over_grip_m(handle_diameter_m);
    if !card.condition.toe_guard {
        out.shape.blade.toe_guard_m = 0.0;
    }
    if let Some(wished) = card.order.as_ref().and_then(|it| it.wish.handle_shape) {
        out.shape.handle.oval = wished.oval();
    }
    out
}

/// Others than the plain answer, each named for how it differs from it, where the maker and the places of a swell
/// leave room.
fn variants(held: &Held, plain: &BatShape, [low_m, high_m]: [f64; 2]) -> Vec<(&'static str, Held)> {
    let held = *held;
    let mut out = Vec::new();
    let blade = &plain.blade;
    if held.swell_from_toe_m.is_none() {
        let now_m = plain.swell_from_toe_m();
        for (name, by) in [("lower middle", -SWELL_MOVE_M), ("higher middle", SWELL_MOVE_M)] {
            let to_m = (now_m + by).clamp(low_m, high_m);
            if (to_m - now_m) / by > LEAST_MOVE {
                out.push((name, Held { swell_from_toe_m: Some(to_m), ..held }));
            }
        }
    }
    if let (None, None, Some(now)) =
        (held.hollow, held.depth_m, blade.deepest().map(|it| it.hollow))
    {
        for (name, by) in [("fuller back", -HOLLOW_MOVE), ("hollower back", HOLLOW_MOVE)] {
            out.push((name, Held { hollow: Some(now + by), ..held }));
        }
    }
    if held.edge_m.is_none() {
        let now_m = blade.thickest_edge_m();
        for (name, by) in [("thinner edges", -EDGE_MOVE_M), ("thicker edges", EDGE_MOVE_M)] {
            out.push((name, Held { edge_m: Some(now_m + by), ..held }));
        }
    }
    out
}

fn answer(name: &'static str, carved: &Carved, start: &Start<'_>, card: &Card) -> Option<Answer> {
    let mut density_kg_m3 = start.density_kg_m3;
    density_kg_m3.value = carved.shape.blade.density_kg_m3;
    let shape = carved.shape.clone();
    let bat = figures(name, shape, density_kg_m3, start.size, start.limits).ok()?;
    let met = Figure::ALL
        .into_iter()
        .map(|figure| (figure, reads(&bat, figure)))
        .filter(|(figure, value)| within(*value, card.asked(*figure)))
        .collect();
    let away = Away::of(&bat.shape, &start.shape);
    let standard_m = start.size.reference.swell_from_toe_m();
    let middle = middle_of(bat.shape.swell_from_toe_m(), standard_m);
    Some(Answer { name, bat, middle, met, away })
}

/// Slack for what was solved to [`carve`](super::carved::carve)'s nearness.
const SLACK: f64 = 1e-9;

fn within(value: f64, asked: Asked) -> bool {
    let [low, high] = asked.tolerance;
    Asked { tolerance: [low - SLACK, high + SLACK], ..asked }.takes(value)
}

/// So much of the way to a limit is gone: what is kept of a shape is rounded, and must still be within.
const INSIDE: f64 = 0.99;

fn inside(target: f64, limit: f64) -> f64 {
    target + INSIDE * (limit - target)
}

impl Away {
    /// What `shape` has more than `own`.
    fn of(shape: &BatShape, own: &BatShape) -> Self {
        let figures = |it: &BatShape| {
            let swell = it.blade.deepest();
            let (depth_m, hollow) = swell.map_or((0.0, 0.0), |it| (it.depth_m, it.hollow));
            [it.blade.thickest_edge_m(), depth_m, it.swell_from_toe_m(), hollow]
        };
        let (a, b) = (figures(shape), figures(own));
        let [edge_m, depth_m, swell_m, hollow] = core::array::from_fn(|k| a[k] - b[k]);
        Self { edge_m, depth_m, swell_m, hollow }
    }

    /// All of it together, in the steps by which other answers are tried; a step of the spine is one of the edges.
    fn steps(&self) -> f64 {
        let steps = [
            self.edge_m / EDGE_MOVE_M,
            self.depth_m / EDGE_MOVE_M,
            self.swell_m / SWELL_MOVE_M,
            self.hollow / HOLLOW_MOVE,
        ];
        libm::sqrt(steps.iter().map(|it| it * it).sum())
    }
}
