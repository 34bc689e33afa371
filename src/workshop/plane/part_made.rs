//! The shape of a bat on the bench that was weighed but not measured all over.

use crate::bat::shape::BatShape;
use crate::bat::sizes::Craft;
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
