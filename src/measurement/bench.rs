//! What was weighed, balanced and timed at the bench.

/// Station of the pickup axis and the default pendulum pivot, m from the top of the handle (6 in).
/// Source: arrangement of ASTM F2398 for ball bats.
pub const PICKUP_AXIS_FROM_TOP_M: f64 = 0.1524;

/// Half-swing of a pendulum test when none is stated, rad (5°): assumption.
pub const USUAL_AMPLITUDE_RAD: f64 = 5.0 * core::f64::consts::PI / 180.0;

/// One standard deviation of a kitchen scale, kg. Assumption: most read to 1 g and hold 5 g.
pub const SCALE_SD_KG: f64 = 0.005;
/// One standard deviation of a balance point found over a pencil, m. Assumption.
pub const BALANCE_SD_M: f64 = 0.002;
/// One standard deviation of an overall length by tape, m. Assumption.
pub const LENGTH_SD_M: f64 = 0.002;
/// One standard deviation of the whole time taken with a hand-held watch, s: start and stop together.
/// Assumption after common human reaction scatter.
pub const STOPWATCH_SD_S: f64 = 0.15;
/// One standard deviation of the pivot's station, m. Assumption.
pub const PIVOT_SD_M: f64 = 0.001;

/// One bat as it was measured. Everything but the label and the scale weight may be missing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BatReading {
    /// Name by which the user calls the bat.
    pub label: String,
    /// Trade size: "1" … "6", "Harrow", "short handle", "long handle".
    pub size: Option<String>,
    /// Overall length, m.
    pub length_m: Option<f64>,
    /// Scale weight, kg.
    pub mass_kg: f64,
    /// Balance point, m from the top of the handle.
    pub balance_m: Option<f64>,
    /// Greatest width of the blade, m.
    pub width_m: Option<f64>,
    /// Greatest edge thickness, m.
    pub edge_m: Option<f64>,
    /// Greatest depth (face to spine), m.
    pub depth_m: Option<f64>,
    /// Handle diameter over the grip at the bottom hand, m.
    pub handle_diameter_m: Option<f64>,
    /// Pendulum test, if done.
    pub pendulum: Option<PendulumReading>,
}

/// Pendulum test: the bat hung face first on two rods bound to the handle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PendulumReading {
    /// Number of full swings (out and back) timed.
    pub swings: u32,
    /// Time of all of them, s.
    pub time_s: f64,
    /// Pivot, m from the top of the handle.
    pub pivot_from_top_m: f64,
    /// Half-swing amplitude, rad.
    pub amplitude_rad: f64,
}

impl BatReading {
    /// A bat that was put on the scale, and no more.
    pub fn weighed(label: impl Into<String>, mass_kg: f64) -> Self {
        Self { label: label.into(), mass_kg, ..Self::default() }
    }
}

impl PendulumReading {
    /// Ten swings from the pickup axis, of the usual amplitude.
    pub fn ten(time_s: f64) -> Self {
        Self {
            swings: 10,
            time_s,
            pivot_from_top_m: PICKUP_AXIS_FROM_TOP_M,
            amplitude_rad: USUAL_AMPLITUDE_RAD,
        }
    }
}

/// The letter of a bat, by its place in the list: A to Z, then its number.
pub fn bat_letter(bat: usize) -> String {
    u8::try_from(bat)
        .ok()
        .filter(|it| *it < 26)
        .map_or_else(|| (bat + 1).to_string(), |it| char::from(b'A' + it).to_string())
}
