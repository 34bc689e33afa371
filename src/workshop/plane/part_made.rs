//! The shape of a bat on the bench that was weighed but not measured all over.

use crate::bat::shape::BatShape;
use crate::bat::sizes::Craft;
use crate::workshop::carved::{Figures, Held, carve};

use super::additions::{Finish, additions};

/// `like` made thicker or thinner along the blade until it has this weight and balance once everything of
/// `wanted` that is not in `now` is on; `like` itself where no such blade can be carved.
pub fn part_made(
    like: &BatShape,
    craft: &Craft,
    [mass_kg, balance_m]: [f64; 2],
    now: &Finish,
    wanted: &Finish,
) -> BatShape {
    let to_come_kg: f64 = additions(like, now, wanted).iter().map(|it| it.adds.mass_kg).sum();
    let figures = Figures { mass_kg: mass_kg + to_come_kg, balance_m, swing_moment_kg_m2: None };
    carve(like, craft, &figures, &Held::default()).map_or_else(|| like.clone(), |it| it.shape)
}
