//! The player as measured: tape measure, dynamometer, wrist hold test.

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
