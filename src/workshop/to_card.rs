//! Shapes that meet a card: what is asked, what the wood and craft allow, and which demand breaks it.

use super::carved::{Carved, Figures, Held, carve};
use super::reads::reads;
use crate::bat::blade::{HOLLOW, Station};
use crate::bat::described::{Cleft, sound};
use crate::bat::laws::Limits;
use crate::bat::shape::BatShape;
use crate::bat::shaped::{ShapedBat, figures};
use crate::bat::sizes::{Craft, Size};
use crate::card::{Asked, Card, Figure};
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

/// Why a carved shape cannot be made, or may not be used.
#[derive(Clone, Debug, PartialEq)]
pub struct Objection {
    /// In plain words, with the nearest that will do.
    pub words: String,
}

/// One shape for the card.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// What is particular about it.
    pub name: &'static str,
    /// The bat.
    pub bat: ShapedBat,
    /// Figures of the card that it meets, each with what came out, in the card's unit.
    pub met: Vec<(Figure, f64)>,
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
    /// Shapes that meet the card, the plainest first; empty where none can.
    pub answers: Vec<Answer>,
    /// What breaks it; empty where there are answers.
    pub broken: Vec<BrokenDemand>,
    /// The nearest that can be made, where no shape meets the card.
    pub nearest: Option<Answer>,
}

/// How far the swell, the hollowing and the edges are moved for the other answers.
const SWELL_MOVE_M: f64 = 0.025;
const HOLLOW_MOVE: f64 = 0.25;
const EDGE_MOVE_M: f64 = 0.003;
/// Steps from what can be made towards what was asked: a sixty-fourth is far inside any tolerance.
const HALVINGS: usize = 7;

/// Finds shapes for a card; what comes once `is_stopped` says so is worth nothing.
pub fn to_card(start: &Start<'_>, card: &Card, is_stopped: &dyn Fn() -> bool) -> ToCard {
    let targets = Targets::of(card, is_stopped);
    let handle = card.asked(Figure::HandleDiameter);
    let [thin_m, thick_m] = handle.tolerance;
    // A thicker handle shifts the balance: within its limits it may give way to the blade.
    let diameters_m = [handle.target, thin_m, thick_m].map(|it| inside(handle.target, it));
    let starts = diameters_m.map(|it| on_card(start, card, it));
    let found = |name: &'static str, held: &Held| {
        let first = |it: &Start<'_>| answer(name, &targets.nearest_within(it, held)?, it, card);
        starts.iter().find_map(first)
    };
    let plain = found("plain", &start.held);
    let like = plain.as_ref().map_or(&starts[0].shape, |it| &it.bat.shape);
    let others: Vec<Answer> = variants(&start.held, like)
        .into_iter()
        .filter_map(|(name, held)| found(name, &held))
        .collect();
    let answers: Vec<Answer> = plain.into_iter().chain(others).collect();
    if !answers.is_empty() {
        return ToCard { answers, broken: Vec::new(), nearest: None };
    }
    let mut broken = targets.broken(&starts[0]);
    broken.extend(handle_broken(&targets, start, card));
    if broken.iter().any(|it| it.nearest.is_some()) {
        broken.retain(|it| it.nearest.is_some());
    }
    let nearest = targets.nearest(&starts[0]);
    let nearest = nearest.and_then(|it| answer("nearest that can be made", &it, &starts[0], card));
    ToCard { answers, broken, nearest }
}

/// The handle's thickness as the demand that breaks the card, if another would do.
fn handle_broken(targets: &Targets<'_>, start: &Start<'_>, card: &Card) -> Option<BrokenDemand> {
    let asked = card.asked(Figure::HandleDiameter);
    let handle = &start.shape.handle;
    let own_m = handle.diameter_over_grip_m(handle.bottom_hand_m());
    let can = |it: f64| {
        let start = on_card(start, card, it);
        targets.nearest_within(&start, &start.held).is_some()
    };
    let nearest = nearest_between(asked.target, own_m, can)?;
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
    out
}

/// Others than the plain answer, each named for how it differs from it, where the maker left room.
fn variants(held: &Held, plain: &BatShape) -> Vec<(&'static str, Held)> {
    let held = *held;
    let mut out = Vec::new();
    let blade = &plain.blade;
    if held.swell_from_toe_m.is_none() {
        let now_m = plain.swell_from_toe_m();
        for (name, by) in [("lower middle", -SWELL_MOVE_M), ("higher middle", SWELL_MOVE_M)] {
            out.push((name, Held { swell_from_toe_m: Some(now_m + by), ..held }));
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
    Some(Answer { name, bat, met })
}

/// Slack for what was solved to [`carve`]'s nearness.
const SLACK: f64 = 1e-9;

fn within(value: f64, asked: Asked) -> bool {
    let [low, high] = asked.tolerance;
    value >= low - SLACK && value <= high + SLACK
}

/// So much of the way to a limit is gone: what is kept of a shape is rounded, and must still be within.
const INSIDE: f64 = 0.99;

fn inside(target: f64, limit: f64) -> f64 {
    target + INSIDE * (limit - target)
}

/// The three demands that wood has to meet, weight, balance and swing moment.
struct Targets<'a> {
    asked: [(Figure, Asked); 3],
    sweet_spot: Asked,
    length_m: f64,
    is_stopped: &'a dyn Fn() -> bool,
}

impl<'a> Targets<'a> {
    fn of(card: &Card, is_stopped: &'a dyn Fn() -> bool) -> Self {
        let asked = [Figure::DeadWeight, Figure::Balance, Figure::SwingMoment]
            .map(|figure| (figure, card.asked(figure)));
        let (sweet_spot, length_m) = (card.asked(Figure::SweetSpot), card.length_m);
        Self { asked, sweet_spot, length_m, is_stopped }
    }

    /// The shape nearest to the middle of the card within its limits; none where nothing there can be made.
    fn nearest_within(&self, start: &Start<'_>, held: &Held) -> Option<Carved> {
        self.tried(|_, asked| asked.tolerance)
            .into_iter()
            .find_map(|values| self.make(start, held, values).ok())
    }

    /// Middle of the card first, then its limits, the swing moment kept longest.
    fn tried(&self, limits: impl Fn(Figure, Asked) -> [f64; 2]) -> Vec<[f64; 3]> {
        let choices = self.asked.map(|(figure, asked)| {
            let [low, high] = limits(figure, asked).map(|it| inside(asked.target, it));
            [asked.target, 0.5 * (asked.target + low), 0.5 * (asked.target + high), low, high]
        });
        let mut out = Vec::new();
        for (s, swing) in choices[2].iter().enumerate() {
            for (b, balance) in choices[1].iter().enumerate() {
                for (m, mass) in choices[0].iter().enumerate() {
                    out.push((s * s + b * b + m * m, [*mass, *balance, *swing]));
                }
            }
        }
        out.sort_by_key(|it| it.0);
        out.into_iter().map(|it| it.1).collect()
    }

    /// One shape with these figures, or what stands in its way.
    fn make(
        &self,
        start: &Start<'_>,
        held: &Held,
        [mass_kg, balance_m, swing_moment_kg_m2]: [f64; 3],
    ) -> Result<Carved, Objection> {
        if (self.is_stopped)() {
            return Err(Objection { words: "the search was stopped".to_owned() });
        }
        let mut from = start.shape.clone();
        let mut density_kg_m3 = start.density_kg_m3.value;
        if !start.willow_given {
            // As in a size's family: a part of the weight by choosing the cleft.
            let ratio = mass_kg / from.mass_moments().mass_kg;
            density_kg_m3 *= libm::pow(ratio, start.size.craft.density_share);
            let [low, high] = start.size.craft.density_kg_m3;
            density_kg_m3 = density_kg_m3.clamp(low, high);
        }
        from.blade.density_kg_m3 = density_kg_m3;
        let figures = Figures { mass_kg, balance_m, swing_moment_kg_m2: Some(swing_moment_kg_m2) };
        let carved = carve(&from, &start.size.craft, &figures, held).ok_or_else(|| Objection {
            words: "no thickness along this blade gives these figures together".to_owned(),
        })?;
        match objection(&carved, start).or_else(|| self.sweet_spot_missed(&carved)) {
            Some(objection) => Err(objection),
            None => Ok(carved),
        }
    }

    /// The centre of percussion follows from the other three; a card may still ask another.
    fn sweet_spot_missed(&self, carved: &Carved) -> Option<Objection> {
        let bat = carved.shape.bat("").ok()?;
        let from_toe_m = self.length_m - bat.percussion_m();
        let missed = !within(from_toe_m, self.sweet_spot);
        let words = format!(
            "weight, balance and swing moment put the sweet spot {:.0} mm from the toe",
            1e3 * from_toe_m
        );
        missed.then_some(Objection { words })
    }

    /// Which demand, given up alone, lets the others be met.
    fn broken(&self, start: &Start<'_>) -> Vec<BrokenDemand> {
        let target = self.asked.map(|(_, asked)| asked.target);
        let why = self
            .make(start, &start.held, target)
            .err()
            .map_or_else(|| "its limits leave no room".to_owned(), |it| it.words);
        let own = start.shape.mass_moments();
        let own = [own.mass_kg, own.com_B().x, own.swing_moment_kg_m2()];
        let alone: Vec<BrokenDemand> = (0..3)
            .filter_map(|k| {
                let (figure, asked) = self.asked[k];
                let at = |value: f64| {
                    let mut values = target;
                    values[k] = value;
                    self.make(start, &start.held, values).is_ok()
                };
                let nearest = nearest_along(asked.target, own[k], at)?;
                Some(BrokenDemand { figure, asked, nearest: Some(nearest), why: why.clone() })
            })
            .collect();
        if !alone.is_empty() {
            return alone;
        }
        self.asked
            .iter()
            .map(|(figure, asked)| BrokenDemand {
                figure: *figure,
                asked: *asked,
                nearest: None,
                why: why.clone(),
            })
            .collect()
    }

    /// The nearest that can be made on the way from the card to what the start itself has.
    fn nearest(&self, start: &Start<'_>) -> Option<Carved> {
        let target = self.asked.map(|(_, asked)| asked.target);
        let own = start.shape.mass_moments();
        let own = [own.mass_kg, own.com_B().x, own.swing_moment_kg_m2()];
        let free =
            Self { sweet_spot: Asked { target: 0.0, tolerance: [f64::MIN, f64::MAX] }, ..*self };
        let at = |share: f64| {
            let values = core::array::from_fn(|k| target[k] + share * (own[k] - target[k]));
            free.make(start, &start.held, values)
        };
        let share = nearest_along(0.0, 1.0, |share| at(share).is_ok())?;
        at(share).ok()
    }
}

/// Looks both ways from what was asked, farther and farther, then halves back to the limit.
fn nearest_along(asked: f64, own: f64, can: impl Fn(f64) -> bool) -> Option<f64> {
    let reach = (own - asked).abs().max(0.15 * asked.abs()) * if own == asked { -1.0 } else { 1.0 };
    let toward = if own < asked { -reach.abs() } else { reach.abs() };
    let looks = (1..=32).flat_map(|n| {
        let far = f64::from(n) / 32.0;
        [asked + far * toward, asked - far * toward]
    });
    let (mut yes, mut no) = (looks.into_iter().find(|it| can(*it))?, asked);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (yes + no);
        *(if can(middle) { &mut yes } else { &mut no }) = middle;
    }
    Some(yes)
}

/// Steps from what was asked to what the start has, of the handle: each tries the card anew.
const HANDLE_STEPS: u32 = 8;

/// The first on the way from what was asked to the start's own that will do.
fn nearest_between(asked: f64, own: f64, can: impl Fn(f64) -> bool) -> Option<f64> {
    let steps = (1..=HANDLE_STEPS).map(|n| f64::from(n) / f64::from(HANDLE_STEPS));
    steps.map(|share| asked + share * (own - asked)).find(|it| can(*it))
}

/// What craft, the Laws, the cleft or sound wood say against a carved shape.
fn objection(carved: &Carved, start: &Start<'_>) -> Option<Objection> {
    let craft: &Craft = &start.size.craft;
    let (blade, limits) = (&carved.shape.blade, start.limits);
    let over = |is: bool, words: String| is.then_some(Objection { words });
    let depth_m = blade.deepest().map_or(0.0, |it| it.depth_m);
    let (thick_m, thin_m) = (blade.thickest_edge_m(), blade.thinnest_edge_m());
    let mm = |it: f64| 1e3 * it;
    over(
        depth_m > limits.depth_m,
        format!(
            "it would be {:.1} mm deep; the Laws allow {:.0} mm",
            mm(depth_m),
            mm(limits.depth_m)
        ),
    )
    .or_else(|| {
        over(
            thick_m > limits.edge_m,
            format!(
                "its edges would be {:.1} mm thick; the Laws allow {:.0} mm",
                mm(thick_m),
                mm(limits.edge_m)
            ),
        )
    })
    .or_else(|| {
        over(
            thin_m < craft.thinnest_edge_m,
            format!(
                "its edges would be {:.1} mm thin; below {:.0} mm they do not last",
                mm(thin_m),
                mm(craft.thinnest_edge_m)
            ),
        )
    })
    .or_else(|| {
        let most = craft.greatest_taper;
        let words = format!("the blade would taper by {:.2}; makers go to {most}", carved.taper);
        over(carved.taper.abs() > most, words)
    })
    .or_else(|| {
        let most = craft.greatest_swell_move;
        let words = format!(
            "the swell would move by {:.2} of the blade; makers go to {most}",
            carved.swell_move
        );
        over(carved.swell_move.abs() > most, words)
    })
    .or_else(|| {
        let words = format!(
            "the ends of the blade would need {:.1} times the wood that makers shift there",
            carved.ends.abs()
        );
        over(carved.ends.abs() > 1.0, words)
    })
    .or_else(|| {
        sound(&carved.shape).into_iter().next().map(|it| Objection { words: it.to_string() })
    })
    .or_else(|| {
        let [fullest, hollowest] = HOLLOW;
        let odd = |it: &Station| !(fullest..=hollowest).contains(&it.hollow);
        let words = "its back would be fuller or hollower than can be described".to_owned();
        over(blade.stations.iter().any(odd), words)
    })
    .or_else(|| {
        let held = start.cleft.as_ref().map(|it| it.holds(blade));
        held.and_then(Result::err).map(|it| Objection { words: it.to_string() })
    })
}
