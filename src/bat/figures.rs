//! From one bat's bench measurements to the figures people are shown, each with its doubt.

use super::expected::{Expectation, TWIST_RELATIVE_SD};
use super::family::Family;
use super::laws::{GaugedSize, LawCheck, Limits, check_size};
use super::makeable::Wanted;
use super::missing::{Settled, settle};
use super::notes::{EstimatedFigure, Warning};
use super::pendulum::{SwingMoment, small_swing_period_s, swing_moment};
use super::pickup_weight::pickup_weight_kg;
use super::sizes::Size;
use super::weigh_fault::WeighFault;
use super::{Bat, BatFault};
use crate::frames::STANDARD_GRAVITY_M_S2;
use crate::measurement::absurd::{judge_bat, judge_pendulum};
use crate::measurement::bench::{BatReading, PICKUP_AXIS_FROM_TOP_M, SCALE_SD_KG};
use crate::uncertain::{Origin, Uncertain, independent_sd};

/// A bat with all its figures.
#[derive(Clone, Debug, PartialEq)]
pub struct WeighedBat {
    /// What was measured.
    pub reading: BatReading,
    /// Name of its size, as given or as found.
    pub size: String,
    /// The bat, for the simulation.
    pub bat: Bat,
    /// Overall length, m.
    pub length_m: Uncertain,
    /// Dead weight, kg.
    pub mass_kg: Uncertain,
    /// Balance point from the top of the handle, m.
    pub balance_m: Uncertain,
    /// Swing moment, kg m²: transverse axis (along y of B) through the pickup axis.
    pub swing_moment_kg_m2: Uncertain,
    /// The same with what moves it.
    pub swing: SwingMoment,
    /// Static moment about the pickup axis with the bat level, N m.
    pub hold_moment_n_m: Uncertain,
    /// Moment of inertia about the long axis through the centre of mass, kg m². Always estimated.
    pub twist_moment_kg_m2: Uncertain,
    /// Centre of percussion for the pickup axis, from the top of the handle, m.
    pub percussion_m: Uncertain,
    /// Scale weight of the reference bat of its size with the same swing moment, kg.
    pub pickup_weight_kg: Uncertain,
    /// Size check.
    pub law: LawCheck,
    /// What was not measured.
    pub estimated: Vec<EstimatedFigure>,
    /// What looks wrong.
    pub warnings: Vec<Warning>,
    family: Family,
}

impl WeighedBat {
    /// This bat with other mass properties: the transverse inertia gives the swing moment asked; centre
    /// of mass, twist moment and the small difference between the two transverse moments are those of
    /// its family at that weight and balance. The handle is its own.
    pub fn with(
        &self,
        mass_kg: f64,
        balance_m: f64,
        swing_moment_kg_m2: f64,
    ) -> Result<Bat, BatFault> {
        let length_m = self.length_m.value;
        let label = &self.reading.label;
        let bat = Expectation::of(&self.family, mass_kg, balance_m);
        let bat = bat.bat(label, length_m, swing_moment_kg_m2)?;
        Ok(bat.with_handle_diameter_m(self.reading.handle_diameter_m))
    }

    /// Covariance of dead weight, balance point and swing moment (kg, m, kg m²), to first order. Weight
    /// and balance are independent; the swing moment follows both and has doubt of its own.
    pub fn covariance(&self) -> [[f64; 3]; 3] {
        let mass = self.mass_kg.sd * self.mass_kg.sd;
        let balance = self.balance_m.sd * self.balance_m.sd;
        let swing_mass = self.swing.per_mass_m2 * mass;
        let swing_balance = self.swing.per_balance_kg_m * balance;
        let swing = self.swing_moment_kg_m2.sd * self.swing_moment_kg_m2.sd;
        [[mass, 0.0, swing_mass], [0.0, balance, swing_balance], [swing_mass, swing_balance, swing]]
    }

    /// A station from the top of the handle, measured from the toe. Length and station are read off one tape, each with
    /// its own error.
    pub fn from_toe_m(&self, from_top_m: Uncertain) -> Uncertain {
        let length_m = self.length_m;
        Uncertain {
            value: length_m.value - from_top_m.value,
            sd: independent_sd(&[length_m.sd, from_top_m.sd]),
            origin: if length_m.is_estimated() { length_m.origin } else { from_top_m.origin },
        }
    }

    /// The family of bats it was compared with: its size, drawn to its length and width.
    pub fn family(&self) -> &Family {
        &self.family
    }
}

/// All figures of one bat, or every reason why there are none.
pub fn weigh(
    reading: &BatReading,
    sizes: &[Size],
    limits: &Limits,
) -> Result<WeighedBat, Vec<WeighFault>> {
    let unusual = judge_bat(reading)
        .map_err(|faults| faults.into_iter().map(WeighFault::from).collect::<Vec<_>>())?;
    let mut settled = settle(reading, sizes).map_err(|it| vec![it])?;
    settled.warnings.splice(0..0, unusual.into_iter().map(Warning::Unusual));
    figures(reading, settled, limits).map_err(|it| vec![it])
}

fn figures(
    reading: &BatReading,
    settled: Settled,
    limits: &Limits,
) -> Result<WeighedBat, WeighFault> {
    let Settled { size, length_m, balance_m, mut estimated, mut warnings } = settled;
    let timed = reading.pendulum.as_ref().map(|it| (it, small_swing_period_s(it)));
    judge_pendulum(length_m.value, balance_m.value, timed)?;

    let mass_kg = Uncertain::measured(reading.mass_kg, SCALE_SD_KG);
    let mut shape = size.reference.with_length_m(length_m.value);
    if let Some(width_m) = reading.width_m {
        shape = shape.with_width_m(width_m);
    }
    let family = Family::around(shape, size.craft);
    let expectation = Expectation::of(&family, mass_kg.value, balance_m.value);
    let expected = expectation.swing_moment(&family);
    let wanted =
        Wanted { mass_kg: mass_kg.value, balance_m: balance_m.value, swell_from_toe_m: None };
    if let Some(reason) = family.objection(&wanted, limits) {
        warnings.push(Warning::UnlikeItsSize { size: size.name.clone(), reason });
    }

    let swing = match &reading.pendulum {
        Some(pendulum) => {
            let measured = swing_moment(mass_kg.value, balance_m.value, pendulum);
            warnings.extend(expected.question(&measured, pendulum, mass_kg, balance_m));
            measured
        }
        None => expected,
    };
    let swing_sd = swing.sd_kg_m2(mass_kg.sd, balance_m.sd);
    let swing_origin = if reading.pendulum.is_some() && !balance_m.is_estimated() {
        Origin::Computed
    } else {
        Origin::Estimated
    };
    let swing_moment_kg_m2 =
        Uncertain { value: swing.value_kg_m2, sd: swing_sd, origin: swing_origin };
    let of_blade = |what, relative_sd| EstimatedFigure {
        what,
        from: format!("blade of size {} with this weight and balance (assumption)", size.name),
        relative_sd,
    };
    if reading.pendulum.is_none() {
        estimated.push(of_blade("swing moment", swing_moment_kg_m2.relative_sd()));
    }
    let bat = expectation
        .bat(&reading.label, length_m.value, swing.value_kg_m2)?
        .with_handle_diameter_m(reading.handle_diameter_m);
    estimated.push(of_blade("twist moment", TWIST_RELATIVE_SD));

    let reference = size.reference.bat(size.name.as_str())?;
    let pickup_weight_kg = Uncertain {
        value: pickup_weight_kg(&reference, swing.value_kg_m2),
        sd: pickup_weight_kg(&reference, swing_sd),
        origin: swing_origin,
    };
    let twist = bat.twist_moment_kg_m2();
    let law = check_size(
        &GaugedSize {
            length_m: reading.length_m,
            width_m: reading.width_m,
            depth_m: reading.depth_m,
            edge_m: reading.edge_m,
        },
        limits,
    );
    Ok(WeighedBat {
        reading: reading.clone(),
        size: size.name.clone(),
        length_m,
        mass_kg,
        balance_m,
        swing_moment_kg_m2,
        swing,
        hold_moment_n_m: hold_moment_n_m(&bat, mass_kg, balance_m),
        twist_moment_kg_m2: Uncertain::estimated(twist, TWIST_RELATIVE_SD * twist),
        percussion_m: percussion_m(&bat, swing, mass_kg, balance_m, swing_origin),
        pickup_weight_kg,
        bat,
        law,
        estimated,
        warnings,
        family,
    })
}

/// `m g d`, doubt of weight and balance carried through.
fn hold_moment_n_m(bat: &Bat, mass_kg: Uncertain, balance_m: Uncertain) -> Uncertain {
    let pickup_to_com_m = balance_m.value - PICKUP_AXIS_FROM_TOP_M;
    let sd = STANDARD_GRAVITY_M_S2
        * independent_sd(&[pickup_to_com_m * mass_kg.sd, mass_kg.value * balance_m.sd]);
    let origin = if balance_m.is_estimated() { Origin::Estimated } else { Origin::Computed };
    Uncertain { value: bat.hold_moment_n_m(), sd, origin }
}

/// `0.1524 m + I/(m d)`, doubt of weight and balance carried through I as well.
fn percussion_m(
    bat: &Bat,
    swing: SwingMoment,
    mass_kg: Uncertain,
    balance_m: Uncertain,
    origin: Origin,
) -> Uncertain {
    let d = balance_m.value - PICKUP_AXIS_FROM_TOP_M;
    let static_kg_m = mass_kg.value * d;
    let by_mass = (swing.per_mass_m2 - swing.value_kg_m2 / mass_kg.value) / static_kg_m;
    let by_balance = (swing.per_balance_kg_m - swing.value_kg_m2 / d) / static_kg_m;
    let sd = independent_sd(&[
        by_mass * mass_kg.sd,
        by_balance * balance_m.sd,
        swing.own_sd_kg_m2 / static_kg_m,
    ]);
    Uncertain { value: bat.percussion_m(), sd, origin }
}
