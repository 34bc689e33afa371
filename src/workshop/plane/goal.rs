//! What the bench must read for the card's figures once all is on that is still to go on.

use super::PickupMoments;
use super::additions::Addition;
use super::bench::Bench;
use crate::card::{Card, Figure};
use crate::normal;
use crate::uncertain::independent_sd;

/// What the bench must read, and what a plan counts its misses in.
pub(super) struct Goal<'a> {
    pub(super) bench: &'a Bench<'a>,
    /// What the bench must read for the card's figures, finished.
    pub(super) target: [f64; 3],
    /// Half the tolerance, as the unit of a miss.
    pub(super) unit: [f64; 3],
    /// Low limits of weight and swing moment, bench side.
    low_kg: f64,
    low_kg_m2: f64,
    /// Doubt of what goes on: kg, kg m, kg m².
    pub(super) to_come_sd: [f64; 3],
}

impl<'a> Goal<'a> {
    pub(super) fn of(
        bench: &'a Bench<'a>,
        card: &Card,
        adds: PickupMoments,
        to_come: &[Addition],
    ) -> Self {
        let (mass, swing) = (card.asked(Figure::DeadWeight), card.asked(Figure::SwingMoment));
        let balance = card.asked(Figure::Balance);
        let half = |it: [f64; 2]| (0.5 * (it[1] - it[0])).max(1e-6);
        let target = PickupMoments::of(mass.target, balance.target, swing.target) - adds;
        let sd = |of: fn(&PickupMoments) -> f64| {
            let each: Vec<f64> =
                to_come.iter().map(|it| it.relative_sd * of(&it.adds).abs()).collect();
            independent_sd(&each)
        };
        Self {
            bench,
            target: target.array(),
            unit: [
                half(mass.tolerance),
                half(balance.tolerance) * mass.target,
                half(swing.tolerance),
            ],
            low_kg: mass.tolerance[0] - adds.mass_kg,
            low_kg_m2: swing.tolerance[0] - adds.second_kg_m2,
            to_come_sd: [sd(|it| it.mass_kg), sd(|it| it.first_kg_m), sd(|it| it.second_kg_m2)],
        }
    }

    /// Chance that weight or swing moment are below their low limits; the larger of the two, for they move
    /// together.
    pub(super) fn overshoot(&self, after: &PickupMoments, sd_kg: f64, sd_kg_m2: f64) -> f64 {
        let below = |value: f64, low: f64, sd: f64| normal::below((low - value) / sd);
        let light = below(after.mass_kg, self.low_kg, sd_kg);
        light.max(below(after.second_kg_m2, self.low_kg_m2, sd_kg_m2))
    }
}
