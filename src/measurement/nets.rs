//! What was read in the nets: how long a stroke took on a film, or how fast a device says the bat was.

use super::out_of_range::OutOfRange;
use super::person::{PersonReading, Sex};

/// What the player was asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Asked {
    /// "As fast as you can still control it."
    Fastest,
    /// The pace the player chose.
    OwnPace,
}

/// One figure read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Read {
    /// From the top of the backlift to the ball, on a film.
    Time {
        /// Time, s.
        time_s: f64,
        /// Pictures a second at which the film was taken, Hz.
        frame_rate_hz: f64,
    },
    /// Speed of the bat where it meets the ball, by any device.
    Speed {
        /// Speed, m/s.
        speed_m_s: f64,
    },
}

/// One swing in the nets.
#[derive(Clone, Debug, PartialEq)]
pub struct NetReading {
    /// Index of the bat among the scenario's.
    pub bat: usize,
    /// Name of the stroke.
    pub stroke: String,
    /// The figure.
    pub read: Read,
    /// Runs scored (or their worth of balls faced and runs run) before this swing; 0 when fresh.
    pub runs: f64,
    /// What the player was asked for.
    pub asked: Asked,
}

/// Shortest and longest time a stroke can take, s: what the model itself tries (assumption, wide).
pub const STROKE_TIME_S: [f64; 2] = [0.08, 1.6];
/// Slowest and fastest bat at the ball, m/s: assumption, wide on purpose.
pub const BAT_SPEED_M_S: [f64; 2] = [2.0, 45.0];
/// Slowest and fastest film, pictures a second: assumption; phones take 24 to 960.
pub const FRAME_RATE_HZ: [f64; 2] = [10.0, 10_000.0];
/// Fewest pictures from the top of the backlift to the ball that tell anything: below it one picture
/// is more than a tenth of the stroke (assumption).
pub const FEWEST_FRAMES: f64 = 10.0;
/// Runs after which a swing can be read.
pub const RUNS: [f64; 2] = [0.0, 500.0];

/// A reading that cannot be.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum NetFault {
    /// Outside what can be, or not a finite number.
    #[error("{}", .0.words(format_args!("{:.3}", .0.value)))]
    OutOfRange(OutOfRange),
    /// Too few pictures to tell anything.
    #[error(
        "the stroke is {frames:.1} pictures long at {frame_rate_hz:.0} a second: one picture more or less is {share:.0} % of it"
    )]
    TooFewFrames {
        /// Pictures.
        frames: f64,
        /// Pictures a second.
        frame_rate_hz: f64,
        /// One picture, per cent of the stroke.
        share: f64,
    },
    /// A stroke that is not swung.
    #[error("there is no such stroke")]
    NoSuchStroke,
}

impl NetFault {
    /// Column of the table at fault.
    pub fn field(&self) -> &'static str {
        match self {
            Self::OutOfRange(it) => it.field,
            Self::TooFewFrames { .. } => "frame_rate",
            Self::NoSuchStroke => "stroke",
        }
    }
}

impl NetReading {
    /// The first thing about it that no swing of these strokes can have, if any.
    pub fn fault(&self, strokes: &[&str]) -> Option<NetFault> {
        let outside = |field, value: f64, unit, limits: [f64; 2]| {
            OutOfRange::check(field, value, unit, limits).map(NetFault::OutOfRange)
        };
        if !strokes.contains(&self.stroke.as_str()) {
            return Some(NetFault::NoSuchStroke);
        }
        let read = match self.read {
            Read::Time { time_s, frame_rate_hz } => {
                let frames = time_s * frame_rate_hz;
                outside("frame_rate", frame_rate_hz, "a second", FRAME_RATE_HZ)
                    .or_else(|| outside("time", time_s, "s", STROKE_TIME_S))
                    .or_else(|| {
                        let share = 100.0 / frames;
                        let fault = NetFault::TooFewFrames { frames, frame_rate_hz, share };
                        (frames < FEWEST_FRAMES).then_some(fault)
                    })
            }
            Read::Speed { speed_m_s } => outside("speed", speed_m_s, "m/s", BAT_SPEED_M_S),
        };
        read.or_else(|| outside("runs", self.runs, "runs", RUNS))
    }

    /// Whether anything had been played before it.
    pub fn is_fresh(&self) -> bool {
        self.runs == 0.0
    }
}

/// Parts of the body whose strength readings in the nets can tell apart.
pub const PART_COUNT: usize = 3;

/// What readings in the nets said about a player's strength, as kept with the player.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Calibration {
    /// Natural logarithm of strength over what the tables say: trunk, shoulders and elbows, forearms
    /// and wrists.
    pub ln_factor: [f64; PART_COUNT],
    /// Lower triangle L of the covariance L Lᵀ of those logarithms.
    pub ln_spread: [[f64; PART_COUNT]; PART_COUNT],
    /// How much of what legs lose in an innings this player's trunk and arms lose.
    pub lasting: Lasting,
}

impl Calibration {
    /// Covariance of the logarithms of strength.
    pub fn ln_covariance(&self) -> [[f64; PART_COUNT]; PART_COUNT] {
        let row = |i: usize| self.ln_spread[i].iter();
        core::array::from_fn(|i| {
            core::array::from_fn(|j| row(i).zip(row(j)).map(|(a, b)| a * b).sum())
        })
    }
}

/// A calibration as it stands in a scenario.
#[derive(Clone, Debug, PartialEq)]
pub struct Kept {
    /// What the nets said.
    pub calibration: Calibration,
    /// From how many readings, in words.
    pub readings: String,
    /// The player it was made for, as [`made_for`] says it.
    pub made_for: String,
}

/// The figures from which the tables' strength follows, in one line: when one of them is changed, a
/// calibration belongs to another estimate.
pub fn made_for(player: &PersonReading) -> String {
    let sex = match player.sex {
        Sex::Female => "female",
        Sex::Male => "male",
    };
    let grip = |it: Option<f64>| it.map_or("not measured".to_owned(), |it| format!("{it:.0} N"));
    let hold = player.wrist_hold.map_or(String::new(), |it| format!(", hold {:.1} s", it.time_s));
    format!(
        "{sex}, {:.2} years, {:.3} m, grip {} and {}{hold}",
        player.age_y,
        player.stature_m,
        grip(player.grip_top_n),
        grip(player.grip_bottom_n)
    )
}

/// Lasting fatigue of trunk and arms, as shares of what the knee loses in like work.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lasting {
    /// Low end: 5 % lie below.
    pub low: f64,
    /// Best guess.
    pub central: f64,
    /// High end: 5 % lie above.
    pub high: f64,
}

impl Lasting {
    /// Of a player of whom nothing is known. Low: none, as thirty greatest grips with 25 s rests
    /// showed no fall (Kramer & Knudson 1992, read). Central: a third, assumption, no source. High:
    /// all of it.
    pub const UNKNOWN: Self = Self { low: 0.0, central: 1.0 / 3.0, high: 1.0 };
}
