//! What weight, balance and size let expect of a bat: the rest of its mass properties, and whether a
//! pendulum agrees.

use super::family::Family;
use super::notes::{Miscount, Warning};
use super::parallel_axis::swing_moment_kg_m2;
use super::pendulum::{SwingMoment, swing_moment};
use super::{Bat, BatFault};
use crate::frames::{DMat3, DVec3};
use crate::measurement::bench::PendulumReading;
use crate::uncertain::{Uncertain, independent_sd};

/// One standard deviation of a bat's own moment of inertia about its centre of mass against our
/// parametric bat, as a share. Assumption: no measured moment of inertia of a cricket bat could be read (Curtis and
/// others 2021 have some). On the swing moment this is about 4 %.
pub const COM_MOMENT_RELATIVE_SD: f64 = 0.15;
/// One standard deviation of the twist moment against our parametric bat, as a share. Assumption.
pub const TWIST_RELATIVE_SD: f64 = 0.15;
/// Distance between pendulum and expectation, in standard deviations, from which the count is questioned.
pub const QUESTIONED_DEVIATIONS: f64 = 3.0;

/// A bat of the family with a swing moment of its own: both transverse moments move together; centre of
/// mass, twist moment and the rest are the family's at that weight and balance.
pub fn bat_with_swing_moment(
    family: &Family,
    label: &str,
    mass_kg: f64,
    balance_m: f64,
    swing_moment_kg_m2: f64,
) -> Result<Bat, BatFault> {
    let length_m = family.reference().length_m();
    Expectation::of(family, mass_kg, balance_m).bat(label, length_m, swing_moment_kg_m2)
}

/// Mass properties to expect of a bat of known size, weight and balance.
pub(crate) struct Expectation {
    mass_kg: f64,
    com_B: DVec3,
    I_Com_B: DMat3,
}

impl Expectation {
    /// The family's bat of this weight and balance; where no blade gets there, the reference bat with
    /// its mass scaled and its balance moved.
    pub(crate) fn of(family: &Family, mass_kg: f64, balance_m: f64) -> Self {
        let (com_B, I_Com_B) = match family.assumed(mass_kg, balance_m, 0.0) {
            Some(moments) => (moments.com_B(), moments.I_Com_B()),
            None => {
                let reference = family.reference().mass_moments();
                (reference.com_B(), reference.I_Com_B() * (mass_kg / reference.mass_kg))
            }
        };
        Self { mass_kg, com_B: DVec3::new(balance_m, com_B.y, com_B.z), I_Com_B }
    }

    /// A bat with these properties, but with both transverse moments moved together so that the swing
    /// moment is the one given. Their difference, twist moment and product stay.
    pub(super) fn bat(
        &self,
        label: &str,
        length_m: f64,
        swing_moment_kg_m2: f64,
    ) -> Result<Bat, BatFault> {
        let shift_kg_m2 = swing_moment_kg_m2 - self.swing_moment_kg_m2();
        let I_Com_B =
            self.I_Com_B + DMat3::from_diagonal(DVec3::new(0.0, shift_kg_m2, shift_kg_m2));
        Bat::new(label, length_m, self.mass_kg, self.com_B, I_Com_B)
    }

    fn swing_moment_kg_m2(&self) -> f64 {
        swing_moment_kg_m2(self.mass_kg, self.com_B, &self.I_Com_B)
    }

    /// The swing moment to expect, with its doubt: that of our parametric bat, and what a maker can
    /// shift at the same weight and balance (half its range).
    pub(crate) fn swing_moment(&self, family: &Family) -> SwingMoment {
        const MASS_STEP_KG: f64 = 1e-3;
        const BALANCE_STEP_M: f64 = 1e-3;
        let (mass_kg, balance_m) = (self.mass_kg, self.com_B.x);
        let at = |mass_kg, balance_m| Self::of(family, mass_kg, balance_m).swing_moment_kg_m2();
        let by_mass = at(mass_kg + MASS_STEP_KG, balance_m) - at(mass_kg - MASS_STEP_KG, balance_m);
        let by_balance =
            at(mass_kg, balance_m + BALANCE_STEP_M) - at(mass_kg, balance_m - BALANCE_STEP_M);
        let com_kg_m2 =
            |ends: f64| family.assumed(mass_kg, balance_m, ends).map(|it| it.I_Com_B().y_axis.y);
        let half_range_kg_m2 = match (com_kg_m2(-1.0), com_kg_m2(1.0)) {
            (Some(low), Some(high)) => 0.5 * (high - low).abs(),
            _ => 0.0,
        };
        SwingMoment {
            value_kg_m2: self.swing_moment_kg_m2(),
            per_mass_m2: by_mass / (2.0 * MASS_STEP_KG),
            per_balance_kg_m: by_balance / (2.0 * BALANCE_STEP_M),
            own_sd_kg_m2: independent_sd(&[
                COM_MOMENT_RELATIVE_SD * self.I_Com_B.y_axis.y,
                half_range_kg_m2,
            ]),
        }
    }
}

impl SwingMoment {
    /// The question to ask when a pendulum disagrees with this expectation by more than
    /// [`QUESTIONED_DEVIATIONS`]. Weight and balance enter both, so that their doubt partly cancels.
    pub(super) fn question(
        &self,
        measured: &Self,
        pendulum: &PendulumReading,
        mass_kg: Uncertain,
        balance_m: Uncertain,
    ) -> Option<Warning> {
        let deviations = |other: &Self| {
            let sd = independent_sd(&[
                (other.per_mass_m2 - self.per_mass_m2) * mass_kg.sd,
                (other.per_balance_kg_m - self.per_balance_kg_m) * balance_m.sd,
                other.own_sd_kg_m2,
                self.own_sd_kg_m2,
            ]);
            (other.value_kg_m2 - self.value_kg_m2).abs() / sd
        };
        let off = deviations(measured);
        if off <= QUESTIONED_DEVIATIONS {
            return None;
        }
        let counted = pendulum.swings;
        let miscounts = [
            (Miscount::OneFewer, f64::from(counted) - 1.0),
            (Miscount::OneMore, f64::from(counted) + 1.0),
            (Miscount::SinglePasses, 0.5 * f64::from(counted)),
        ];
        let likely = miscounts
            .into_iter()
            .filter(|(_, swings)| *swings > 0.0)
            .map(|(miscount, swings)| {
                let time_s = pendulum.time_s * f64::from(counted) / swings;
                let as_if = PendulumReading { time_s, ..*pendulum };
                (miscount, deviations(&swing_moment(mass_kg.value, balance_m.value, &as_if)))
            })
            .filter(|(_, deviations)| *deviations <= QUESTIONED_DEVIATIONS)
            .min_by(|a, b| a.1.total_cmp(&b.1));
        Some(Warning::PendulumUnlikeSize {
            counted,
            deviations: off,
            likely: likely.map(|(miscount, _)| miscount),
        })
    }
}
