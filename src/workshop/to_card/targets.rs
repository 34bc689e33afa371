//! What a card asks of the wood, and the shapes that are tried for it.

use super::objection::objection;
use super::{BrokenDemand, Start, inside, within};
use crate::card::{Asked, Card, Figure};
use crate::workshop::carved::{Carved, Figures, Held, carve};

/// A shape as it was carved for its figures, within craft and the Laws; or what stands in its way.
pub(super) fn made(carved: Option<Carved>, start: &Start<'_>) -> Result<Carved, String> {
    let carved = carved.ok_or("no thickness along this blade gives these figures together")?;
    objection(&carved, start).map_or(Ok(carved), Err)
}

/// The three demands that wood has to meet, weight, balance and swing moment.
pub(super) struct Targets<'a> {
    asked: [(Figure, Asked); 3],
    sweet_spot: Asked,
    length_m: f64,
    is_stopped: &'a dyn Fn() -> bool,
}

impl<'a> Targets<'a> {
    pub(super) fn of(card: &Card, is_stopped: &'a dyn Fn() -> bool) -> Self {
        let asked = [Figure::DeadWeight, Figure::Balance, Figure::SwingMoment]
            .map(|figure| (figure, card.asked(figure)));
        let (sweet_spot, length_m) = (card.asked(Figure::SweetSpot), card.length_m);
        Self { asked, sweet_spot, length_m, is_stopped }
    }

    /// The shape nearest to the middle of the card within its limits; none where nothing there can be made.
    pub(super) fn nearest_within(&self, start: &Start<'_>, held: &Held) -> Option<Carved> {
        self.tried().into_iter().find_map(|values| self.make(start, held, values).ok())
    }

    /// Middle of the card first, then its limits, the swing moment kept longest.
    fn tried(&self) -> Vec<[f64; 3]> {
        let choices = self.asked.map(|(_, asked)| {
            let [low, high] = asked.tolerance.map(|it| inside(asked.target, it));
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
    ) -> Result<Carved, String> {
        if (self.is_stopped)() {
            return Err("the search was stopped".to_owned());
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
        // A swell that goes with the taper goes no further than makers cut it.
        let craft = &start.size.craft;
        let [low_m, high_m] = craft.swell_from_toe.map(|it| it * from.blade.length_m);
        let free = carve(&from, craft, &figures, held);
        let swell_m = free.as_ref().map(|it| it.shape.swell_from_toe_m());
        let outside =
            swell_m.filter(|it| held.swell_from_toe_m.is_none() && !(low_m..=high_m).contains(it));
        let kept =
            outside.map(|it| Held { swell_from_toe_m: Some(it.clamp(low_m, high_m)), ..*held });
        let kept = kept.and_then(|it| carve(&from, craft, &figures, &it));
        let carved = made(kept.or(free), start)?;
        match self.sweet_spot_missed(&carved) {
            Some(why) => Err(why),
            None => Ok(carved),
        }
    }

    /// The centre of percussion follows from the other three; a card may still ask another.
    fn sweet_spot_missed(&self, carved: &Carved) -> Option<String> {
        let bat = carved.shape.bat("").ok()?;
        let from_toe_m = self.length_m - bat.percussion_m();
        let missed = !within(from_toe_m, self.sweet_spot);
        let words = format!(
            "weight, balance and swing moment put the sweet spot {:.0} mm from the toe",
            1e3 * from_toe_m
        );
        missed.then_some(words)
    }

    /// What stands in the way of the figures asked.
    pub(super) fn why(&self, start: &Start<'_>) -> String {
        let target = self.asked.map(|(_, asked)| asked.target);
        let made = self.make(start, &start.held, target);
        made.err().unwrap_or_else(|| "its limits leave no room".to_owned())
    }

    /// Which demand, given up alone, lets the others be met.
    pub(super) fn broken(&self, start: &Start<'_>) -> Vec<BrokenDemand> {
        let target = self.asked.map(|(_, asked)| asked.target);
        let why = self.why(start);
        let own = start.shape.mass_moments();
        let own = [own.mass_kg, own.com_B().x, own.swing_moment_kg_m2()];
        let demand = |k: usize, nearest: Option<f64>| {
            let (figure, asked) = self.asked[k];
            BrokenDemand { figure, asked, nearest, why: why.clone() }
        };
        let alone: Vec<BrokenDemand> = (0..3)
            .filter_map(|k| {
                let at = |value: f64| {
                    let mut values = target;
                    values[k] = value;
                    self.make(start, &start.held, values).is_ok()
                };
                Some(demand(k, Some(nearest_along(target[k], own[k], at)?)))
            })
            .collect();
        match alone.is_empty() {
            true => (0..3).map(|k| demand(k, None)).collect(),
            false => alone,
        }
    }

    /// The nearest that can be made on the way from the card to what the start itself has.
    pub(super) fn nearest(&self, start: &Start<'_>) -> Option<Carved> {
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

/// Steps from what can be made towards what was asked: a sixty-fourth is far inside any tolerance.
const HALVINGS: usize = 7;

/// The nearest to what was asked that can be: looks both ways from it, farther and farther, then halves back to the limit.
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
