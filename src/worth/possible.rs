//! The possible players: each a draw of everything that is not known, each as likely before anything was seen.

use super::constants::{
    AFTER_BOUNCE, BALL_AT_BAT, CONTACT, Constant, IN_TIME, IN_TIME_BEFORE_SEEN, JUDGED_PLACE,
    LATE_BALL, LAW, PATH, PITCH, RESTITUTION, RISE, TORQUE_NOISE, by_age,
};
use super::meeting::Scatter;
use super::steadiness::Steadiness;
use crate::calibration::errors::Shared;
use crate::calibration::posterior::{LASTING, Possible as Strength};
use crate::calibration::response::{Triangle, times, triangle};
use crate::measurement::nets::{Lasting, PART_COUNT};
use crate::measurement::plan::Bowling;
use crate::normal;
use crate::player::Player;
use crate::player::calibrated::table_covariance;

/// Possible players behind every advice.
pub const DRAWS: usize = 512;
/// Possible players that are weighed where something was seen; [`DRAWS`] of them are kept.
pub const WEIGHED: usize = 4096;
/// Scramble of the sequence that the draws are taken from: the same numbers every time.
pub const SEED: u32 = 14;

/// One possible player, with everything else that is not known.
#[derive(Clone, Debug, PartialEq)]
pub struct Possible {
    /// Strength, as logarithms over the likeliest, and lasting fatigue.
    pub strength: Strength,
    /// Way from the stored path to the one that suits player and bat best, 0 to 1.
    pub path: f64,
    /// Way from the quick to the slow rise of torque, 0 to 1.
    pub rise: f64,
    /// Way from the law of following to one that holds to the path three times as hard, 0 to 1.
    pub law: f64,
    /// Bowler's speed from ball to ball, one standard deviation as a share.
    pub bowler: f64,
    /// Pace kept off the pitch, one standard deviation as a share.
    pub pitch: f64,
    /// Own start of the stroke, one standard deviation, s.
    pub own_start_s: f64,
    /// Share of the short balls that are met in time, fresh, with the bat now used, as a standard normal value.
    pub margin_sd: f64,
    /// Scatter of a joint's torque as a share of it, for a joint of 70 N m.
    pub torque_noise: f64,
    /// Timing of the meeting with the ball, one standard deviation, s.
    pub timing_s: f64,
    /// Where the ball is thought to come, one standard deviation each way, m.
    pub judged_place_m: f64,
    /// Restitution of ball on bat.
    pub restitution: f64,
    /// How long ball and bat touch, s.
    pub contact_s: f64,
    /// Mass of the ball, kg.
    pub ball_kg: f64,
    /// Speed of the ball at the bat over that out of the hand.
    pub ball_at_bat: f64,
    /// What a late ball is worth over one in time.
    pub late_ball: f64,
    /// Errors of weight, balance point and swing moment of each bat at the bench, independent standard normal.
    pub bench: Vec<[f64; 3]>,
}

impl Possible {
    /// Scatter of the time there is against a ball that flies so long, one standard deviation, s.
    pub fn spread_s(&self, flight_s: f64) -> f64 {
        let bowler_s = flight_s * self.bowler;
        let pitch_s = flight_s * AFTER_BOUNCE.value * self.pitch;
        libm::sqrt(bowler_s * bowler_s + pitch_s * pitch_s + self.own_start_s * self.own_start_s)
    }

    /// Where the ball meets the blade with a bat that comes to it as steadily as this, and what comes of it.
    pub fn scatter(&self, steadiness: &Steadiness) -> Scatter {
        let [along_m, across_m] =
            steadiness.scatter_m(self.torque_noise, self.timing_s, self.judged_place_m);
        Scatter {
            along_m,
            across_m,
            restitution: self.restitution,
            contact_s: self.contact_s,
            ball_kg: self.ball_kg,
        }
    }
}

/// What is known of one player before anything was seen.
#[derive(Clone, Copy, Debug)]
pub struct Prior {
    /// Lower triangle L of the covariance L Lᵀ of the strengths.
    pub spread: Triangle,
    lasting: Shared,
    bowler: Constant,
    own_start: Constant,
    timing: Constant,
    in_time: Constant,
    ball_kg: f64,
    bats: usize,
}

impl Prior {
    /// Of a player by the tables or by the nets, against this bowling; `bats` is how many were weighed. Where the
    /// player was `seen`, how often he or she is in time is left open.
    pub fn new(player: &Player, bowling: &Bowling, ball_kg: f64, bats: usize, seen: bool) -> Self {
        let spread = match &player.calibration {
            Some(nets) => nets.ln_spread,
            None => triangle(&table_covariance(player)),
        };
        let lasting = match player.lasting {
            it if it == Lasting::UNKNOWN => LASTING,
            it => Shared { mean: it.central, sd: (it.high - it.low) / (2.0 * NINE_IN_TEN_SD) },
        };
        let [mut bowler, own_start, timing] = by_age(player.age_y);
        if let Some([slow, quick]) = bowling.nine_in_ten_m_s {
            let share = (quick - slow) / (2.0 * NINE_IN_TEN_SD * bowling.speed_m_s);
            bowler = Constant { value: share, range: [share, share], ..bowler };
        }
        let in_time = if seen { IN_TIME_BEFORE_SEEN } else { IN_TIME };
        Self { spread, lasting, bowler, own_start, timing, in_time, ball_kg, bats }
    }

    /// The possible player of that number.
    pub fn draw(&self, number: usize) -> Possible {
        let at = |coordinate: usize| {
            f64::from(sobol_burley::sample(number as u32, coordinate as u32, SEED)) + HALF_STEP
        };
        let z: [f64; PART_COUNT] = core::array::from_fn(|i| normal::quantile(at(i)));
        let lasting = match self.lasting.sd > 0.0 {
            true => self.lasting.above_nought(at(3)),
            false => self.lasting.mean.max(0.0),
        };
        let strength = Strength { ln_strength: times(&self.spread, z), lasting };
        let errors =
            |bat: usize| core::array::from_fn(|i| normal::quantile(at(FIXED + 3 * bat + i)));
        let bench = (0..self.bats).map(errors).collect();
        self.player(strength, at(5), bench, |it, coordinate| it.at(at(coordinate)))
    }

    /// The likeliest of them: everything at its central value.
    pub fn likeliest(&self) -> Possible {
        let strength = Strength { ln_strength: [0.0; PART_COUNT], lasting: self.lasting.mean };
        let rise = (RISE.value - RISE.range[0]) / (RISE.range[1] - RISE.range[0]);
        self.player(strength, rise, vec![[0.0; 3]; self.bats], |it, _| it.value)
    }

    /// One of them; `of` takes each constant's value, by its coordinate of the sequence.
    fn player(
        &self,
        strength: Strength,
        rise: f64,
        bench: Vec<[f64; 3]>,
        of: impl Fn(&Constant, usize) -> f64,
    ) -> Possible {
        Possible {
            strength,
            path: of(&PATH, 4),
            rise,
            law: of(&LAW, 17),
            bowler: of(&self.bowler, 6),
            pitch: of(&PITCH, 7),
            own_start_s: of(&self.own_start, 8),
            margin_sd: normal::quantile(of(&self.in_time, 9)),
            torque_noise: of(&TORQUE_NOISE, 10),
            timing_s: of(&self.timing, 11),
            judged_place_m: of(&JUDGED_PLACE, 16),
            restitution: of(&RESTITUTION, 12),
            contact_s: of(&CONTACT, 13),
            ball_kg: self.ball_kg,
            ball_at_bat: of(&BALL_AT_BAT, 14),
            late_ball: of(&LATE_BALL, 15),
            bench,
        }
    }
}

/// Standard deviations either side between which nine in ten lie.
const NINE_IN_TEN_SD: f64 = 1.644_853_626_951_472_2;
/// Coordinates before those of the bats.
const FIXED: usize = 18;
/// Half the distance between two neighbouring numbers of the sequence: keeps it off 0.
const HALF_STEP: f64 = 1.0 / 33_554_432.0;
