//! What is swung on the screen, and from where it is seen.

use backlift::questions::any_score::Tempo;
use serde::{Deserialize, Serialize};

/// Where the scene is seen from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Camera {
    /// From the bowler's end.
    Bowler,
    /// From behind the stumps.
    Keeper,
    /// Square of the wicket, on the side the batter faces.
    #[default]
    Side,
    Above,
    /// From the batter's eyes.
    Batter,
}

/// How far the eye was dragged from where its camera stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Orbit {
    /// Round the upright, rad.
    pub turn_rad: f32,
    /// Higher, rad.
    pub raise_rad: f32,
    /// Nearer, 1 as it stands.
    pub nearness: f32,
}

impl Orbit {
    pub fn drag(&mut self, turn_rad: f32, raise_rad: f32) {
        if turn_rad.is_finite() && raise_rad.is_finite() {
            self.turn_rad = (self.turn_rad + turn_rad) % std::f32::consts::TAU;
            self.raise_rad = (self.raise_rad + raise_rad).clamp(-1.5, 1.5);
        }
    }

    pub fn come_nearer(&mut self, times: f32) {
        if times.is_finite() && times > 0.0 {
            self.nearness = (self.nearness * times).clamp(0.4, 4.0);
        }
    }
}

impl Default for Orbit {
    fn default() -> Self {
        Self { turn_rad: 0.0, raise_rad: 0.0, nearness: 1.0 }
    }
}

/// The stroke on the screen.
#[derive(Clone, Debug, PartialEq)]
pub struct Playback {
    /// Stroke by name.
    pub stroke: String,
    /// Both bats in the same time; else with the same effort.
    pub same_time: bool,
    /// Score at which it is played: the tiredness of the player.
    pub runs: u32,
    /// First and second bat, by their place in the scenario.
    pub bats: [usize; 2],
    pub second: bool,
    /// Time from the top of the backlift, s.
    pub time_s: f64,
    pub playing: bool,
    /// Seconds of the stroke in a second on the screen.
    pub rate: f64,
    /// Whether it slows down towards the ball, where one bat falls behind the other.
    pub slows: bool,
    pub looping: bool,
    pub camera: Camera,
    pub orbit: Orbit,
    /// Both bats in one place; else side by side.
    pub overlay: bool,
}

impl Default for Playback {
    fn default() -> Self {
        Self {
            stroke: "pull".to_owned(),
            same_time: false,
            runs: 0,
            bats: [0, 1],
            second: true,
            time_s: 0.0,
            playing: true,
            rate: 0.4,
            slows: true,
            looping: true,
            camera: Camera::Side,
            orbit: Orbit::default(),
            overlay: true,
        }
    }
}

/// Length of a stroke of which nothing is known yet, s.
pub const USUAL_LENGTH_S: f64 = 0.3;
/// How long the end of the stroke stands before it starts again, s on the screen.
const REST_S: f64 = 1.2;
/// From this share of the stroke on it slows down towards the ball, to this share of its rate.
const SLOW_FROM: f64 = 0.55;
const SLOWED: f64 = 0.125;
/// A step of one picture, s of the stroke.
pub const STEP_S: f64 = 0.005;

impl Playback {
    /// Time runs on for so long on the screen; the stroke is `length_s` long.
    pub fn advance(&mut self, passed_s: f64, length_s: f64) {
        if !self.playing || !passed_s.is_finite() {
            return;
        }
        self.time_s += passed_s.clamp(0.0, 0.25) * self.rate_now(length_s);
        if self.time_s > length_s + REST_S * self.rate_now(length_s) && self.looping {
            self.time_s = 0.0;
        } else if self.time_s > length_s && !self.looping {
            (self.time_s, self.playing) = (length_s, false);
        }
    }

    /// In which time the strokes are seen.
    pub fn tempo(&self) -> Tempo {
        if self.same_time { Tempo::Asked } else { Tempo::Fastest }
    }

    /// Seconds of the stroke in a second on the screen, at this instant.
    fn rate_now(&self, length_s: f64) -> f64 {
        let is_slow = self.slows && self.time_s > SLOW_FROM * length_s;
        self.rate * if is_slow { SLOWED } else { 1.0 }
    }
}
