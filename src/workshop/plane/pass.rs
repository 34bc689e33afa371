//! One pass of the plane: the reading to expect after it, and as much of it as is safe.

use super::PickupMoments;
use super::additions::Finish;
use super::cuts::{Place, Room, amount_for, cut, greatest};
use super::goal::Goal;
use super::thinner::{Deepest, deepest};
use crate::bat::shape::BatShape;
use crate::uncertain::independent_sd;

/// One pass.
#[derive(Clone, Debug, PartialEq)]
pub struct Pass {
    /// Where.
    pub place: Place,
    /// What comes off, kg.
    pub off_kg: f64,
    /// What of it comes off the left side and off the right, seen from the face with the toe down, kg; none where the
    /// place has no two sides.
    pub sides_kg: Option<[f64; 2]>,
    /// Where it comes off deepest; of the handle see [`Pass::handle_m`].
    pub deepest: Deepest,
    /// Diameter of the handle after it, m, across at the bottom hand over what is on it now; none where the pass leaves
    /// the handle alone.
    pub handle_m: Option<f64>,
    /// The reading to expect on the bench after it, what is still to go on not counted.
    pub then: PickupMoments,
    /// Chance that weight or swing moment are below the card's low limit after it, finished.
    pub overshoot: f64,
    /// The shape after it.
    pub shape: BatShape,
}

/// A pass smaller than this is not worth the clamp, kg.
pub const SMALLEST_PASS_KG: f64 = 0.001;
/// A pass larger than this is broken in two, so that the maker can stop and check, kg.
pub const LARGEST_PASS_KG: f64 = 0.025;

/// Diameter of the handle across at the bottom hand, m, over twine and grips of the finished bat.
pub(super) fn over_grip_m(shape: &BatShape) -> f64 {
    shape.handle.diameter_over_grip_m(shape.handle.bottom_hand_m())
}

impl Goal<'_> {
    /// The pass that leaves `after` of `shape`.
    pub(super) fn pass(
        &self,
        reading: PickupMoments,
        shape: &BatShape,
        place: Place,
        after: BatShape,
    ) -> Pass {
        let bench = self.bench;
        let off = PickupMoments::of_shape(shape) - PickupMoments::of_shape(&after);
        let then = reading - off;
        let sd = |bench_sd: f64, off: f64, to_come: f64| {
            independent_sd(&[bench_sd, bench.planing_sd * off, to_come])
        };
        let overshoot = self.overshoot(
            &then,
            sd(bench.reading.mass_kg.sd, off.mass_kg, self.to_come_sd[0]),
            sd(bench.reading.swing_moment_kg_m2.sd, off.second_kg_m2, self.to_come_sd[2]),
        );
        let Finish { bound, grips, .. } = bench.finish;
        let to_come_m = after.handle.still_to_cover_m(bound, grips);
        Pass {
            place,
            off_kg: off.mass_kg,
            sides_kg: place.has_two_sides().then_some([0.5 * off.mass_kg; 2]),
            deepest: deepest(shape, &after),
            handle_m: (place == Place::Handle).then(|| over_grip_m(&after) - to_come_m),
            then,
            overshoot,
            shape: after,
        }
    }

    /// The pass, or as much of it as keeps to the chance of overshooting.
    pub(super) fn safe_pass(
        &self,
        reading: PickupMoments,
        shape: &BatShape,
        room: &Room,
        off_kg: f64,
    ) -> Option<Pass> {
        let at = |off_kg: f64| {
            let after = cut(shape, room.place, amount_for(shape, room, off_kg));
            self.pass(reading, shape, room.place, after)
        };
        let limit = self.bench.overshoot_limit();
        let whole = at(off_kg);
        if whole.overshoot <= limit {
            return Some(whole);
        }
        let safe_kg = greatest(off_kg, |it| at(it).overshoot <= limit);
        (safe_kg >= SMALLEST_PASS_KG).then(|| at(safe_kg))
    }
}
