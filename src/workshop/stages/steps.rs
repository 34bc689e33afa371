//! What each stage takes off or puts on, for a bat of one size. Assumptions throughout: nobody's shavings were
//! weighed.
//!
//! Every spread is a constant of the size, in kg and m. So what is still to come leaves the less doubt the
//! further a bat has come, whatever the scale said on the way.

use super::Stage;
use crate::bat::shape::BatShape;
use crate::bat::sizes::Size;
use crate::workshop::pickup_moments::PickupMoments;
use crate::workshop::plane::additions::{OIL_SD, OIL_SHARE, PART_SD, TWINE_SD};

/// Share of the willow that cutting the outline leaves.
const ROUGHED_KEEPS: f64 = 0.62;
/// Share that shaping leaves.
const SHAPED_KEEPS: f64 = 0.70;
/// Share that sanding leaves.
const SANDED_KEEPS: f64 = 0.985;
/// One standard deviation of what each takes off, as a share of the size's finished blade.
const TAKEN_SD: [(Stage, f64); 4] = [
    (Stage::Pressed, 0.005),
    (Stage::Roughed, 0.25),
    (Stage::Shaped, 0.12),
    (Stage::Sanded, 0.010),
];
/// One standard deviation of what is put on, as a share of it: the handle, oil, twine with its glue, and grip,
/// guard and labels.
const PUT_ON_SD: [(Stage, f64); 4] = [
    (Stage::Spliced, 0.10),
    (Stage::Oiled, OIL_SD),
    (Stage::Bound, TWINE_SD),
    (Stage::Gripped, PART_SD),
];
/// One standard deviation of where along the blade wood is taken off, as a share of the bat's length.
const PLACE_SD: f64 = 0.04;

/// Share of the willow that a stage leaves. The cleft is as it came, and pressing takes nothing off.
pub fn keeps(stage: Stage) -> f64 {
    match stage {
        Stage::Roughed => ROUGHED_KEEPS,
        Stage::Shaped => SHAPED_KEEPS,
        Stage::Sanded => SANDED_KEEPS,
        _ => 1.0,
    }
}

/// The stages of one size.
#[derive(Clone, Debug, PartialEq)]
pub struct Steps {
    /// The size's reference bat, as played.
    pub reference: PickupMoments,
    /// Its blade alone, without oil, guard and labels.
    pub blade: PickupMoments,
    handle: PickupMoments,
    oil: PickupMoments,
    twine: PickupMoments,
    grip: PickupMoments,
    length_m: f64,
}

impl Steps {
    /// Those of a size.
    pub fn of(size: &Size) -> Self {
        let shape = &size.reference;
        let whole = PickupMoments::of_shape(shape);
        let part = |change: &dyn Fn(&mut BatShape)| {
            let mut without = shape.clone();
            change(&mut without);
            whole - PickupMoments::of_shape(&without)
        };
        // The splice takes the place of willow: both are gone before the handle is in.
        let handle = part(&|it| {
            it.handle.density_kg_m3 = 0.0;
            it.handle.splice_m = 0.0;
        });
        let twine = part(&|it| it.handle.twine_kg_m3 = 0.0);
        let grip = part(&|it| {
            it.handle.grips = 0;
            it.blade.face_cover_kg_m2 = 0.0;
            it.blade.toe_guard_kg_m3 = 0.0;
        });
        let played = whole - handle - twine - grip;
        let oil = played * OIL_SHARE;
        let (blade, length_m) = (played - oil, size.length_m());
        Self { reference: whole, blade, handle, oil, twine, grip, length_m }
    }

    /// What a stage puts on a bat; none where it puts on nothing.
    pub fn put_on(&self, stage: Stage) -> Option<PickupMoments> {
        match stage {
            Stage::Spliced => Some(self.handle),
            Stage::Oiled => Some(self.oil),
            Stage::Bound => Some(self.twine),
            Stage::Gripped => Some(self.grip),
            _ => None,
        }
    }

    /// One standard deviation of the weight that a stage moves, kg.
    pub fn mass_sd_kg(&self, stage: Stage) -> f64 {
        let share = |of: &[(Stage, f64)]| of.iter().find(|it| it.0 == stage).map(|it| it.1);
        match self.put_on(stage) {
            None => share(&TAKEN_SD).unwrap_or(0.0) * self.blade.mass_kg,
            Some(moments) => share(&PUT_ON_SD).unwrap_or(0.0) * moments.mass_kg,
        }
    }

    /// Wood that a stage takes off the size's reference bat, kg.
    fn usually_taken_kg(&self, stage: Stage) -> f64 {
        let after = |stages: &[f64]| self.blade.mass_kg / stages.iter().product::<f64>();
        match stage {
            Stage::Roughed => {
                (1.0 - ROUGHED_KEEPS) * after(&[ROUGHED_KEEPS, SHAPED_KEEPS, SANDED_KEEPS])
            }
            Stage::Shaped => (1.0 - SHAPED_KEEPS) * after(&[SHAPED_KEEPS, SANDED_KEEPS]),
            Stage::Sanded => (1.0 - SANDED_KEEPS) * after(&[SANDED_KEEPS]),
            _ => 0.0,
        }
    }

    /// Where the stage's weight lies: balance point, m from the top, and radius of gyration about the pickup
    /// axis, squared, m².
    fn place(&self, stage: Stage) -> (f64, f64) {
        let moments = self.put_on(stage).unwrap_or(self.blade);
        (moments.balance_m(), moments.second_kg_m2 / moments.mass_kg)
    }

    /// One standard deviation that a stage leaves in balance point (m) and swing moment (kg m²), whether or not it was
    /// gone through: wood is not taken off evenly.
    pub(super) fn place_sd(&self, stage: Stage) -> [f64; 2] {
        let (taken_kg, radius_m) = (self.usually_taken_kg(stage), libm::sqrt(self.place(stage).1));
        [
            taken_kg * PLACE_SD * self.length_m / self.reference.mass_kg,
            taken_kg * 2.0 * radius_m * PLACE_SD * self.length_m,
        ]
    }

    /// The same of a stage still to come, by its weight.
    pub(super) fn weight_sd(&self, stage: Stage) -> [f64; 2] {
        let (balance_m, radius2_m2) = self.place(stage);
        let (mass_sd_kg, arm_m) = (self.mass_sd_kg(stage), balance_m - self.reference.balance_m());
        [mass_sd_kg * arm_m.abs() / self.reference.mass_kg, mass_sd_kg * radius2_m2]
    }
}
