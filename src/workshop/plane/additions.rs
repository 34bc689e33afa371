//! What still goes on the bat: counted before the plane comes out.

use crate::bat::shape::BatShape;
use crate::card::{Card, Condition};
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;

use super::PickupMoments;

/// What is on the bat already; the card says what shall be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Finish {
    /// Rubber grips on the handle.
    pub grips: u32,
    /// Twine round the handle.
    pub bound: bool,
    /// The toe guard.
    pub toe_guard: bool,
    /// The first oil.
    pub oiled: bool,
    /// Labels and face sheet.
    pub labels: bool,
}

impl Finish {
    /// Nothing is on it.
    pub const BARE: Self =
        Self { grips: 0, bound: false, toe_guard: false, oiled: false, labels: false };

    /// Everything that an ordinary bat has.
    pub const ALL: Self =
        Self { grips: 1, bound: true, toe_guard: true, oiled: true, labels: true };

    /// What a card asks to be on the finished bat.
    pub fn of(card: &Card) -> Self {
        let Condition { grips, toe_guard, oiled } = card.condition;
        Self { grips, bound: true, toe_guard, oiled, labels: true }
    }

    /// What is wanted on a bat and not on this one, with its words.
    pub fn lacks(&self, wanted: &Self) -> Vec<(Part, &'static str)> {
        let grips = if wanted.grips == self.grips + 1 { "a grip" } else { "grips" };
        let all = [
            (wanted.grips > self.grips, Part::Grips, grips),
            (wanted.bound && !self.bound, Part::Twine, "twine"),
            (wanted.toe_guard && !self.toe_guard, Part::ToeGuard, "a toe guard"),
            (wanted.labels && !self.labels, Part::Labels, "labels"),
            (wanted.oiled && !self.oiled, Part::Oil, "the first oil"),
        ];
        all.into_iter().filter(|it| it.0).map(|(_, part, words)| (part, words)).collect()
    }
}

/// What goes on a bat after the plane.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Rubber grips.
    Grips,
    /// Twine round the handle.
    Twine,
    /// The toe guard.
    ToeGuard,
    /// Labels and face sheet.
    Labels,
    /// The first oil.
    Oil,
}

/// One thing to come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Addition {
    /// What.
    pub what: &'static str,
    /// What it adds.
    pub adds: PickupMoments,
    /// One standard deviation of its mass as a share of it.
    pub relative_sd: f64,
}

impl Addition {
    /// Tape of so much weight, whose middle lies there from the top of the handle.
    pub fn tape(mass_kg: f64, from_top_m: f64) -> Self {
        let arm_m = from_top_m - PICKUP_AXIS_FROM_TOP_M;
        let adds = PickupMoments::of(mass_kg, from_top_m, mass_kg * arm_m * arm_m);
        Self { what: "tape", adds, relative_sd: PART_SD }
    }
}

/// First oil that a blade takes up, kg for each kilogram of willow: assumption, no source.
pub const OIL_SHARE: f64 = 0.012;
/// One standard deviation of a part's mass as a share, assumptions: rubber, guards and labels come as they come,
/// twine takes as much glue as it takes, oil depends on the hand.
pub const PART_SD: f64 = 0.10;
/// See [`PART_SD`].
pub const TWINE_SD: f64 = 0.30;
/// See [`PART_SD`].
pub const OIL_SD: f64 = 0.40;

/// What `shape`, the finished bat, has that the bench's bat has not.
pub fn additions(shape: &BatShape, now: &Finish, wanted: &Finish) -> Vec<Addition> {
    let mut finished = shape.clone();
    finished.handle.grips = wanted.grips;
    let with = |change: &dyn Fn(&mut BatShape)| {
        let mut bare = finished.clone();
        change(&mut bare);
        PickupMoments::of_shape(&finished) - PickupMoments::of_shape(&bare)
    };
    let of = |part: Part| match part {
        Part::Grips => (with(&|it| it.handle.grips = now.grips), PART_SD),
        Part::Twine => (with(&|it| it.handle.twine_kg_m3 = 0.0), TWINE_SD),
        Part::ToeGuard => (with(&|it| it.blade.toe_guard_m = 0.0), PART_SD),
        Part::Labels => (with(&|it| it.blade.face_cover_kg_m2 = 0.0), PART_SD),
        Part::Oil => (with(&|it| it.blade.density_kg_m3 *= 1.0 - OIL_SHARE), OIL_SD),
    };
    let lacking = now.lacks(wanted).into_iter().map(|(part, what)| {
        let (adds, relative_sd) = of(part);
        Addition { what, adds, relative_sd }
    });
    lacking.filter(|it| it.adds.mass_kg > 0.0).collect()
}
