//! What lies between the fastest controlled swing of the model and a figure read in the nets.
//!
//! On the logarithm of a stroke time: held back + own way of this stroke + scatter + film. On that of
//! a bat speed: − held back − own way + own length + device + scatter. All but scatter and film are the
//! same for many readings, so that more readings do not wear them off.

use crate::measurement::nets::{Asked, NetReading, Read};
use crate::normal;

/// A shared error on the logarithm: its mean and standard deviation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shared {
    /// Mean.
    pub mean: f64,
    /// One standard deviation.
    pub sd: f64,
}

impl Shared {
    /// The value below which a share of those at nought or above lies.
    pub fn above_nought(self, share: f64) -> f64 {
        let Self { mean, sd } = self;
        let below_nought = normal::below(-mean / sd);
        (mean + sd * normal::quantile(below_nought + (1.0 - below_nought) * share)).max(0.0)
    }
}

/// What a player holds back who was asked for "as fast as you can still control it": 5 % SD 3 %.
/// Assumption, no source.
pub const HELD_BACK: Shared = Shared { mean: 0.05, sd: 0.03 };
/// What is held back at the player's own pace: 30 % SD 20 %. Drives in ordinary play were 11.8 m/s
/// (Stretch et al. 1998, read), where the model's fastest controlled drive of a man is near 16 m/s; the
/// spread is an assumption.
pub const HELD_BACK_AT_OWN_PACE: Shared = Shared { mean: 0.30, sd: 0.20 };
/// The player's own way of playing one stroke against the stored one: how much slower, the speed as
/// much lower. 4 %; assumption: two stored paths of one pull are 7 % apart.
pub const OWN_WAY: Shared = Shared { mean: 0.0, sd: 0.04 };
/// The length of the player's own path of one stroke: how much faster in the same time. 4 %;
/// assumption: two stored paths of one pull are 4 % apart.
pub const OWN_LENGTH: Shared = Shared { mean: 0.0, sd: 0.04 };
/// Error that all readings of one device share: 4 %. Assumption, no source.
pub const DEVICE: Shared = Shared { mean: 0.0, sd: 0.04 };
/// Scatter from swing to swing of one player: 3 %. Assumption, no source; corrected by the readings.
pub const SCATTER: f64 = 0.03;
/// How many readings the assumed scatter counts for.
pub const SCATTER_COUNTS: f64 = 8.0;
/// Each end of a counted stroke lies evenly within one picture either way: pictures, one standard
/// deviation of the difference of both ends, √(2/3).
pub const FRAMES_SD: f64 = 0.816_496_580_927_726;

/// Shared errors that are no stroke's own.
const FIXED: usize = 3;

/// All shared errors in order: held back, at own pace, device; then each stroke's way and length.
pub fn shared(strokes: usize) -> Vec<Shared> {
    let each = [OWN_WAY, OWN_LENGTH].into_iter().cycle().take(2 * strokes);
    [HELD_BACK, HELD_BACK_AT_OWN_PACE, DEVICE].into_iter().chain(each).collect()
}

/// How each shared error enters one reading of the stroke of that index.
pub fn enters(reading: &NetReading, stroke: usize, strokes: usize) -> Vec<f64> {
    let mut out = vec![0.0; FIXED + 2 * strokes];
    let held_back = match reading.asked {
        Asked::Fastest => 0,
        Asked::OwnPace => 1,
    };
    let way = FIXED + 2 * stroke;
    match reading.read {
        Read::Time { .. } => {
            out[held_back] = 1.0;
            out[way] = 1.0;
        }
        Read::Speed { .. } => {
            out[held_back] = -1.0;
            out[2] = 1.0;
            out[way] = -1.0;
            out[way + 1] = 1.0;
        }
    }
    out
}

/// Logarithm of the figure read.
pub fn ln_read(reading: &NetReading) -> f64 {
    match reading.read {
        Read::Time { time_s, .. } => libm::log(time_s),
        Read::Speed { speed_m_s } => libm::log(speed_m_s),
    }
}

/// One standard deviation of the instrument alone, on the logarithm.
pub fn instrument_sd(reading: &NetReading) -> f64 {
    match reading.read {
        Read::Time { time_s, frame_rate_hz } => FRAMES_SD / (time_s * frame_rate_hz),
        Read::Speed { .. } => 0.0,
    }
}
