//! What the player and the bats are asked to do: innings, bowling, and the limits of the fit.

use super::bench::BatReading;
use super::nets::Kept;
use super::person::{PersonReading, Sex};

/// Everything one run starts from.
#[derive(Clone, Debug, PartialEq)]
pub struct Scenario {
    /// One line saying who and what.
    pub title: String,
    /// The people and figures are made up.
    pub invented: bool,
    /// Whatever else the user wants to stand beside the result.
    pub note: Option<String>,
    /// The player as measured.
    pub player: PersonReading,
    /// What readings in the nets said about the player, if they were kept.
    pub calibration: Option<Kept>,
    /// The bats as measured, at least one, each with a label of its own.
    pub bats: Vec<BatReading>,
    /// Names of the strokes to swing, the user's own among them.
    pub strokes: Vec<String>,
    /// The innings to last.
    pub innings: InningsPlan,
    /// The bowling to face.
    pub bowling: Bowling,
    /// Index of the bat now used.
    pub uses: usize,
    /// What was seen of the player.
    pub seen: Vec<Seen>,
    /// What the fit may choose from, and how it chooses.
    pub fit: FitLimits,
}

/// The innings to last.
#[derive(Clone, Debug, PartialEq)]
pub struct InningsPlan {
    /// Score at which it ends: the local retirement score of a junior.
    pub runs: f64,
    /// Strokes by name with their shares of the balls struck; the shares sum to 1.
    pub mix: Vec<(String, f64)>,
    /// Balls faced for each run scored.
    pub balls_per_run: f64,
    /// Share of the balls bowled that this player faces.
    pub faced_share: f64,
    /// From one ball bowled to the next within an over, s.
    pub between_balls_s: f64,
    /// Added between two overs, s.
    pub between_overs_s: f64,
    /// Bat held in the stance before each ball faced, s.
    pub stance_s: f64,
}

impl InningsPlan {
    /// Strokes of the mix, in its order.
    pub fn strokes(&self) -> impl Iterator<Item = &str> {
        self.mix.iter().map(|(name, _)| name.as_str())
    }

    /// Share of the balls struck that get the stroke of this name.
    pub fn mix_share(&self, stroke: &str) -> f64 {
        self.mix.iter().filter(|(name, _)| name == stroke).map(|(_, share)| share).sum()
    }
}

impl Default for InningsPlan {
    /// Fifty runs. Assumptions, no source: the mix, 1.5 balls a run, every second ball faced, 38 s
    /// from ball to ball, 60 s more between overs, 6 s in the stance.
    fn default() -> Self {
        Self {
            runs: 50.0,
            mix: vec![("drive".into(), 0.5), ("pull".into(), 0.35), ("hook".into(), 0.15)],
            balls_per_run: 1.5,
            faced_share: 0.5,
            between_balls_s: 38.0,
            between_overs_s: 60.0,
            stance_s: 6.0,
        }
    }
}

/// The bowling to face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bowling {
    /// Speed of the ball out of the hand, m/s.
    pub speed_m_s: f64,
    /// Stumps to stumps, m.
    pub pitch_length_m: f64,
    /// From release until the player has read the ball and can start the stroke, s.
    pub reaction_time_s: f64,
    /// Slowest and quickest of nine balls in ten of the spell, m/s, where it was asked.
    pub nine_in_ten_m_s: Option<[f64; 2]>,
}

/// How often short balls that the player chose to hit were met in time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HowOften {
    /// Nine in ten or more.
    NearlyAll,
    /// Two thirds to nine in ten.
    Most,
    /// About half: a third to two thirds.
    Half,
    /// Fewer than a third.
    Few,
}

impl HowOften {
    /// All, most often first.
    pub const ALL: [Self; 4] = [Self::NearlyAll, Self::Most, Self::Half, Self::Few];

    /// As a coach says it.
    pub fn words(self) -> &'static str {
        match self {
            Self::NearlyAll => "nearly all",
            Self::Most => "most",
            Self::Half => "half",
            Self::Few => "few",
        }
    }

    /// Lowest and highest share that is called so: our definition.
    pub fn shares(self) -> [f64; 2] {
        match self {
            Self::NearlyAll => [0.90, 1.0],
            Self::Most => [0.65, 0.90],
            Self::Half => [0.35, 0.65],
            Self::Few => [0.0, 0.35],
        }
    }
}

/// What a coach saw: how often a stroke with one bat was in time. Balls left alone do not count.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// Index of the bat among the scenario's.
    pub bat: usize,
    /// Name of the stroke.
    pub stroke: String,
    /// Runs scored before; 0 when fresh.
    pub runs: f64,
    /// Speed of the bowling then, m/s; as in the scenario if not given.
    pub bowling_m_s: Option<f64>,
    /// About so many short balls that the player chose to hit.
    pub balls: u32,
    /// How often in time.
    pub how_often: HowOften,
}

/// Which middle is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Middle {
    /// Swell further from the toe than the standard bat's.
    High,
    /// Where the standard bat has it.
    Usual,
    /// Swell nearer the toe.
    Low,
}

impl Middle {
    /// All, from the hands to the toe.
    pub const ALL: [Self; 3] = [Self::High, Self::Usual, Self::Low];

    /// In a word.
    pub fn words(self) -> &'static str {
        match self {
            Self::High => "high",
            Self::Usual => "usual",
            Self::Low => "low",
        }
    }
}

impl Bowling {
    /// Usual for the age. Speed: assumption, no source (40 km/h at 5 years and 110 km/h at 18, through
    /// 60 km/h at 9). Pitch: 20.12 m (Law 6), 19.2 m under 13 and 14.63 m under 7 as recommended in
    /// England about 2017 (Harwood, King & Yeadon 2017); evenly between 6 and 12 years (assumption).
    /// Reaction: 0.2 s (McLeod 1987, about 200 ms).
    pub fn usual_at(age_y: f64) -> Self {
        let speed_km_h = match age_y {
            age if age < 9.0 => 60.0 - 5.0 * (9.0 - age).min(4.0),
            age => 60.0 + 50.0 * ((age - 9.0) / 9.0).min(1.0),
        };
        Self {
            speed_m_s: speed_km_h / 3.6,
            pitch_length_m: match age_y {
                age if age < 13.0 => 14.63 + (19.2 - 14.63) * ((age - 6.0) / 6.0).clamp(0.0, 1.0),
                _ => 20.12,
            },
            reaction_time_s: 0.2,
            nine_in_ten_m_s: None,
        }
    }
}

/// What the fit makes the most of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Goal {
    /// Speed of the ball off the bat.
    BallSpeed,
    /// Speed of the bat at the contact point.
    BatSpeed,
}

/// What the fit may choose from, and how it chooses.
#[derive(Clone, Debug, PartialEq)]
pub struct FitLimits {
    /// Sizes to choose from; none named: those that suit the player's stature.
    pub sizes: Vec<String>,
    /// Lightest bat to consider, kg; none: as light as can be made in the size.
    pub lightest_kg: Option<f64>,
    /// Heaviest bat to consider, kg; none: as heavy as can be made in the size.
    pub heaviest_kg: Option<f64>,
    /// What is made the most of.
    pub goal: Goal,
    /// The middle asked for; none: whichever is worth most.
    pub middle: Option<Middle>,
    /// Whether bats lighter or heavier than are usually sold may be asked for.
    pub beyond_usual: bool,
    /// Asked stroke time as a multiple of the fresh fastest time with the reference bat. Assumption: 1.15.
    pub asked_time_factor: f64,
    /// Mass of the ball, kg.
    pub ball_mass_kg: f64,
}

impl FitLimits {
    /// Usual for the player: the assumptions above and the ball they play with.
    pub fn usual_for(age_y: f64, sex: Sex) -> Self {
        Self {
            sizes: Vec::new(),
            lightest_kg: None,
            heaviest_kg: None,
            goal: Goal::BallSpeed,
            middle: None,
            beyond_usual: false,
            asked_time_factor: 1.15,
            ball_mass_kg: ball_mass_kg(age_y, sex),
        }
    }
}

/// Ball of the open game, kg: middle of 155.9–163 g, Law 4 (read).
pub const BALL_KG: f64 = 0.15945;
/// Women's ball, kg: middle of 140–151 g, Law 4 until 2026-09-30 (read); the new band was not seen.
pub const WOMENS_BALL_KG: f64 = 0.1455;
/// Ball under 13, kg: middle of 133–144 g, Law 4 until 2026-09-30 (read); the new band was not seen.
pub const JUNIOR_BALL_KG: f64 = 0.1385;

/// The ball that a player of this age is bowled, kg.
pub fn ball_mass_kg(age_y: f64, sex: Sex) -> f64 {
    match sex {
        _ if age_y < 13.0 => JUNIOR_BALL_KG,
        Sex::Female => WOMENS_BALL_KG,
        Sex::Male => BALL_KG,
    }
}
