//! The middle that a customer wishes: how far a shape is from it, and where a swell is tried for it.
//!
//! A wish chooses among shapes that meet the card, and looks for one that has it where none of them does. The card's
//! limits, and what makers of the size cut, stand above it. What a low or a high middle is, is the fit's own rule.

use super::Answer;
use crate::bat::sizes::Size;
use crate::fit::middle_of::{middle_of, swells_m};
use crate::measurement::plan::Middle;

/// A swell tried for a wish lies so far inside its middle, m: less than anybody carves.
const INSIDE_M: f64 = 0.0005;

/// Steps from the wished middle back to the plain shape: a few millimetres each.
const SHORT_STEPS: u32 = 20;

/// A wished middle in one size.
#[derive(Clone, Copy, Debug)]
pub(super) struct Wished {
    middle: Middle,
    standard_m: f64,
    makers_m: [f64; 2],
}

impl Wished {
    /// In a size, on a blade so long.
    pub(super) fn of(middle: Middle, size: &Size, blade_m: f64) -> Self {
        let makers_m = size.craft.swell_from_toe.map(|it| it * blade_m);
        Self { middle, standard_m: size.reference.swell_from_toe_m(), makers_m }
    }

    /// How far a swell lies outside the wished middle, m; nought within.
    pub(super) fn away_m(&self, swell_from_toe_m: f64) -> f64 {
        if middle_of(swell_from_toe_m, self.standard_m) == self.middle {
            return 0.0;
        }
        let [low_m, high_m] = swells_m(self.middle, self.standard_m, [f64::MIN, f64::MAX]);
        (low_m - swell_from_toe_m).max(swell_from_toe_m - high_m).max(f64::MIN_POSITIVE)
    }

    /// What a shape tried for it is called that has such a swell.
    pub(super) fn name(&self, swell_from_toe_m: f64) -> &'static str {
        match (self.middle, self.away_m(swell_from_toe_m) > 0.0) {
            (Middle::High, false) => "for a high middle",
            (Middle::Usual, false) => "for a usual middle",
            (Middle::Low, false) => "for a low middle",
            (Middle::High, true) => "toward a high middle",
            (Middle::Usual, true) => "toward a usual middle",
            (Middle::Low, true) => "toward a low middle",
        }
    }

    /// Swells to try, best first, where `plain_m` is that of the plain shape and `nearest_m` the distance of the
    /// nearest shape there is: those with the wished middle, the nearest to the plain one first, then those on the
    /// way there that are nearer than any.
    pub(super) fn swells_m(&self, plain_m: f64, nearest_m: f64) -> Vec<f64> {
        let [low_m, high_m] = swells_m(self.middle, self.standard_m, self.makers_m);
        let (low_m, high_m) = (low_m + INSIDE_M, high_m - INSIDE_M);
        let mut out = Vec::new();
        if low_m <= high_m {
            let near_m = plain_m.clamp(low_m, high_m);
            let far_m = if plain_m - low_m > high_m - plain_m { low_m } else { high_m };
            out.extend([0.0, 0.5, 1.0].map(|share| near_m + share * (far_m - near_m)));
        }
        let toward_m = plain_m.clamp(low_m.min(high_m), high_m.max(low_m));
        let [least_m, most_m] = self.makers_m;
        let shares = (1..SHORT_STEPS).map(|n| f64::from(n) / f64::from(SHORT_STEPS));
        let short = shares.map(|share| toward_m + share * (plain_m - toward_m));
        out.extend(short.map(|it| it.clamp(least_m, most_m)));
        out.retain(|it| self.away_m(*it) < nearest_m);
        out
    }
}

/// What of a customer's wish for the middle the shapes have.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WishedMiddle {
    /// Which is wished.
    pub middle: Middle,
    /// Shapes that have it: they stand first.
    pub have_it: usize,
    /// How far the first shape's swell lies outside it, m; nought where it has it.
    pub first_away_m: f64,
}

impl WishedMiddle {
    /// Of shapes of which the first is the nearest.
    pub(super) fn of(wished: &Wished, answers: &[Answer]) -> Self {
        let away_m = |it: &Answer| wished.away_m(it.bat.shape.swell_from_toe_m());
        Self {
            middle: wished.middle,
            have_it: answers.iter().filter(|it| away_m(it) == 0.0).count(),
            first_away_m: answers.first().map_or(0.0, away_m),
        }
    }
}
