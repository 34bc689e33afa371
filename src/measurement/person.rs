//! The player as measured: tape measure, dynamometer, wrist hold test.

use super::out_of_range::OutOfRange;

/// Sex, as the strength and growth tables divide people.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sex {
    /// Girl or woman.
    Female,
    /// Boy or man.
    Male,
}

/// Batting hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Handed {
    /// Left hand at the top of the handle.
    Right,
    /// Right hand at the top of the handle.
    Left,
}

impl Handed {
    /// In a word.
    pub fn words(self) -> &'static str {
        match self {
            Self::Right => "right",
            Self::Left => "left",
        }
    }
}

/// One player as measured. Age, sex and stature are enough; the rest narrows the result.
#[derive(Clone, Debug, PartialEq)]
pub struct PersonReading {
    /// Age, years.
    pub age_y: f64,
    /// Sex.
    pub sex: Sex,
    /// Stature, m.
    pub stature_m: f64,
    /// Batting hand.
    pub handed: Handed,
    /// Body mass, kg.
    pub mass_kg: Option<f64>,
    /// From the bony point of the shoulder to the centre of the grip, m.
    pub arm_length_m: Option<f64>,
    /// From the wrist crease to the tip of the middle finger, m.
    pub hand_length_m: Option<f64>,
    /// Dynamometer reading of the top hand, N.
    pub grip_top_n: Option<f64>,
    /// Dynamometer reading of the bottom hand, N.
    pub grip_bottom_n: Option<f64>,
    /// Wrist hold test, if done.
    pub wrist_hold: Option<WristHold>,
}

/// Wrist hold test: forearm supported and horizontal, the top hand alone holds a named bat level.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WristHold {
    /// Static moment of the bat about the pickup axis, N m.
    pub hold_moment_n_m: f64,
    /// Seconds until the toe dropped.
    pub time_s: f64,
    /// Stopped at the limit of 30 s with the toe still up: the capacity is a lower bound.
    pub stopped_at_limit: bool,
}

/// To the thousandth, without the binary dust of a converted unit.
fn readable(value: &f64) -> f64 {
    libm::round(value * 1e3) / 1e3
}

/// A figure no player has. Names the field as a scenario spells it.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum PersonFault {
    /// Outside what any player can have, or not a finite number.
    #[error("{}", .0.words(readable(&.0.value)))]
    OutOfRange(OutOfRange),
    /// Possible by itself, but not together with the stature.
    #[error(
        "{} {unit} does not go with a stature of {stature_m:.2} m, where {low:.2} to {high:.2} {unit} is possible",
        readable(.value)
    )]
    OutOfProportion {
        /// Field as a scenario spells it.
        field: &'static str,
        /// The offending value.
        value: f64,
        /// Unit of the value and the limits.
        unit: &'static str,
        /// The player's stature.
        stature_m: f64,
        /// Least value accepted at this stature.
        low: f64,
        /// Greatest value accepted at this stature.
        high: f64,
    },
}

impl PersonFault {
    /// Field at fault, as a scenario spells it.
    pub fn field(&self) -> &'static str {
        match self {
            Self::OutOfRange(it) => it.field,
            Self::OutOfProportion { field, .. } => field,
        }
    }
}

impl PersonReading {
    /// A right-hander of whom nothing is measured but what must be.
    pub fn of(sex: Sex, age_y: f64, stature_m: f64) -> Self {
        Self {
            age_y,
            sex,
            stature_m,
            handed: Handed::Right,
            mass_kg: None,
            arm_length_m: None,
            hand_length_m: None,
            grip_top_n: None,
            grip_bottom_n: None,
            wrist_hold: None,
        }
    }

    /// Every figure that no player can have; empty when the reading may be used.
    ///
    /// Limits are wide on purpose (assumption, no source): they catch a wrong unit or a slip of the
    /// pen, not an unusual person. Proportions: body mass index 9–70 kg/m², arm 0.28–0.50 and hand
    /// 0.08–0.15 of the stature (means 0.38 and 0.11).
    pub fn faults(&self) -> Vec<PersonFault> {
        let mut faults = Vec::new();
        let mut within = |field, value: f64, unit, limits: [f64; 2]| {
            let fault = OutOfRange::check(field, value, unit, limits);
            faults.extend(fault.map(PersonFault::OutOfRange));
            fault.is_none()
        };
        within("age", self.age_y, "years", [5.0, 100.0]);
        let stature_m = self.stature_m;
        let stature_is_fine = within("stature", stature_m, "m", [0.9, 2.3]);
        for (field, grip) in [("grip_top", self.grip_top_n), ("grip_bottom", self.grip_bottom_n)] {
            if let Some(grip_n) = grip {
                within(field, grip_n, "N", [20.0, 1000.0]);
            }
        }
        if let Some(hold) = self.wrist_hold {
            within("wrist_hold.hold_moment", hold.hold_moment_n_m, "N m", [0.5, 15.0]);
            within("wrist_hold.time", hold.time_s, "s", [0.5, 600.0]);
        }
        let tall_squared = stature_m * stature_m;
        // Field, figure, unit; possible at all; possible for each of the last.
        let proportions = [
            ("mass", self.mass_kg, "kg", [10.0, 250.0], [9.0, 70.0], tall_squared),
            ("arm_length", self.arm_length_m, "m", [0.2, 1.2], [0.28, 0.5], stature_m),
            ("hand_length", self.hand_length_m, "m", [0.07, 0.3], [0.08, 0.15], stature_m),
        ];
        let mut disproportions = Vec::new();
        for (field, value, unit, range, shares, whole) in proportions {
            let Some(value) = value else { continue };
            let [low, high] = shares.map(|it| it * whole);
            if within(field, value, unit, range)
                && stature_is_fine
                && !(low..=high).contains(&value)
            {
                let fault =
                    PersonFault::OutOfProportion { field, value, unit, stature_m, low, high };
                disproportions.push(fault);
            }
        }
        faults.extend(disproportions);
        faults
    }
}
