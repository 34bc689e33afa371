//! The pelvis as a body that turns on the legs: the lowest part of the trunk, and what of the thighs turns
//! with it.

use super::growth::by_sex;
use super::{Segment, Segments};
use crate::measurement::person::Sex;

/// Lower trunk (navel to hips) and thigh after de Leva 1996, J Biomech 29:1223, Table 4, read second-hand:
/// lengths over stature, masses over body mass, the rest over the segment's own length.
struct Rows {
    length: f64,
    mass: f64,
    /// Centre of mass from the navel.
    com: f64,
    gyration: [f64; 3],
    thigh_length: f64,
    thigh_mass: f64,
    /// Centre of mass of the thigh from the hip joint.
    thigh_com: f64,
    /// About a transverse and about the long axis.
    thigh_gyration: [f64; 2],
}

const MAN: Rows = Rows {
    length: 0.1457 / 1.741,
    mass: 0.1117,
    com: 0.6115,
    gyration: [0.615, 0.551, 0.587],
    thigh_length: 0.4222 / 1.741,
    thigh_mass: 0.1416,
    thigh_com: 0.4095,
    thigh_gyration: [0.329, 0.149],
};

const WOMAN: Rows = Rows {
    length: 0.1815 / 1.735,
    mass: 0.1247,
    com: 0.4920,
    gyration: [0.433, 0.402, 0.444],
    thigh_length: 0.3685 / 1.735,
    thigh_mass: 0.1478,
    thigh_com: 0.3612,
    thigh_gyration: [0.366, 0.162],
};

/// Half the distance between the hip joints over stature (assumption: some 9 cm in an adult).
pub const HIP_HALF_BREADTH: f64 = 0.050;

/// Share of the pelvis's turn that a thigh makes about its own long axis: half at the hip, half at knee and
/// foot (assumption; nought to one).
const THIGH_TURN: f64 = 0.5;

/// The lower trunk of a person whose body but the head weighs as much as that of an adult of `adult_kg`; its
/// centre of mass is counted from the hips.
pub(super) fn pelvis(sex: Sex, stature_m: f64, adult_kg: f64) -> Segment {
    let it = by_sex(sex, &MAN, &WOMAN);
    let length_m = it.length * stature_m;
    Segment {
        length_m,
        mass_kg: it.mass * adult_kg,
        com_m: (1.0 - it.com) * length_m,
        gyration_m: it.gyration.map(|r| r * length_m),
    }
}

/// Moment of inertia of both thighs about the vertical between the hips, per turn of the pelvis, kg m².
///
/// Assumption, range nought to twice that: the knees stand still, so that the hip joints carry the upper ends of
/// the thighs round, and each thigh turns about its own axis by half of the pelvis's turn. Shanks and feet stand.
pub(super) fn legs_turning_kg_m2(sex: Sex, stature_m: f64, adult_kg: f64) -> f64 {
    let it = by_sex(sex, &MAN, &WOMAN);
    let half_m = HIP_HALF_BREADTH * stature_m;
    let from_knee = 1.0 - it.thigh_com;
    let [across, along] = it.thigh_gyration;
    let carried = (from_knee * from_knee + across * across) * half_m * half_m;
    let turned_m = THIGH_TURN * along * it.thigh_length * stature_m;
    2.0 * it.thigh_mass * adult_kg * (carried + turned_m * turned_m)
}

impl Segments {
    /// The trunk, head and neck without the pelvis: with it, standing upright, the whole again.
    pub fn above_pelvis(&self) -> Segment {
        let (all, part) = (&self.trunk, &self.pelvis);
        let mass_kg = all.mass_kg - part.mass_kg;
        let com_m = (all.mass_kg * all.com_m - part.mass_kg * part.com_m) / mass_kg;
        let gyration_m = core::array::from_fn(|axis| {
            let moment = |it: &Segment| {
                let off_m = if axis == 2 { 0.0 } else { it.com_m - com_m };
                it.mass_kg * (it.gyration_m[axis] * it.gyration_m[axis] + off_m * off_m)
            };
            libm::sqrt((moment(all) - moment(part)) / mass_kg)
        });
        Segment { mass_kg, com_m, gyration_m, ..*all }
    }
}
