//! The shape of a bat on the bench: as it was weighed first, and every pass of the plane since.

use crate::bat::shape::BatShape;
use crate::bat::sizes::{Craft, Size};
use crate::card::Card;
use crate::workshop::carved::{Figures, Held, carve};
use crate::workshop::pickup_moments::PickupMoments;

use super::additions::{Finish, additions};

/// `like` made thicker or thinner along the blade until it has the weight and balance that the bat on the bench
/// will have once everything of `wanted` that is not in `now` is on; none where no such blade can be carved.
pub fn part_made(
    like: &BatShape,
    craft: &Craft,
    [mass_kg, balance_m]: [f64; 2],
    now: &Finish,
    wanted: &Finish,
) -> Option<BatShape> {
    // The swing moment plays no part in weight and balance.
    let bench = PickupMoments::of(mass_kg, balance_m, 0.0);
    let whole = additions(like, now, wanted).iter().fold(bench, |sum, it| sum + it.adds);
    let (mass_kg, balance_m) = (whole.mass_kg, whole.balance_m());
    let figures = Figures { mass_kg, balance_m, swing_moment_kg_m2: None };
    carve(like, craft, &figures, &Held::default()).map(|it| it.shape)
}

/// What the solid on the bench was made from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DrawnOn {
    /// The blade that is described, at the bat's weight and balance.
    Described,
    /// The size's own blade, at the bat's weight and balance.
    Size,
    /// A blade of the size that no carving brings to the bat's weight and balance.
    OtherWeight,
}

/// What was read of a bat on the bench.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lies {
    /// Weight, kg, and balance point, m from the top.
    pub reading: [f64; 2],
    /// Diameter of the handle across at the bottom hand, m, over what is on it.
    pub handle_m: Option<f64>,
    /// What is on it.
    pub finish: Finish,
}

impl Lies {
    /// The shape with the handle that was read.
    pub fn with_handle(&self, shape: BatShape) -> BatShape {
        let Some(handle_m) = self.handle_m else { return shape };
        let to_come_m = shape.handle.still_to_cover_m(self.finish.bound, self.finish.grips);
        shape.with_handle_over_grip_m(handle_m + to_come_m)
    }
}

/// The bat on the bench as a solid, with everything that the card wants on it, and what it is made from: a blade that
/// is described, or the size's own on the card's handle, at the weight and balance that were read; where no blade gets
/// there, as it is.
pub fn on_the_bench(
    lies: &Lies,
    card: &Card,
    size: &Size,
    described: Option<&BatShape>,
) -> (BatShape, DrawnOn) {
    let mut like = described.unwrap_or(&size.reference).clone();
    like.handle.grips = card.condition.grips;
    if described.is_none() {
        like = like.with_length_m(card.length_m);
        like = like.with_handle_over_grip_m(card.handle_diameter_m());
    }
    like = lies.with_handle(like);
    let wanted = Finish::of(card);
    match (part_made(&like, &size.craft, lies.reading, &lies.finish, &wanted), described) {
        (Some(shape), Some(_)) => (shape, DrawnOn::Described),
        (Some(shape), None) => (shape, DrawnOn::Size),
        (None, _) => (like, DrawnOn::OtherWeight),
    }
}
