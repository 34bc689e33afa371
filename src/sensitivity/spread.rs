//! How far each input may be off: the spreads that measurements, tables and assumptions carry.

use super::input::Input;
use crate::bat::figures::WeighedBat;
use crate::comparison::bats::FLIGHT_RELATIVE_SD;
use crate::measurement::person::PersonReading;
use crate::measurement::plan::{Bowling, InningsPlan};
use crate::player::capacity::WRIST_HOLD_RELATIVE_SD;
use crate::player::grip::FRICTION;
use crate::player::joints::Group;
use crate::player::segments::ADULT_FROM_Y;
use crate::player::{Player, player};
use crate::stroke::Stroke;

/// Where an input's value comes from, and so what can be done about its doubt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Measured; more care narrows it.
    Measured,
    /// Not measured, but it could be.
    Measurable,
    /// Nobody can measure it with what a club has.
    OutOfReach,
}

/// An input with its spread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moved {
    /// Which.
    pub input: Input,
    /// One standard deviation as a share of the value; for [`Input::LastingFatigue`], drawn evenly from
    /// nothing to all of its band, that of such a draw about the band's middle.
    pub relative_sd: f64,
    /// Where the value comes from.
    pub standing: Standing,
}

impl Moved {
    /// The input as it is called here: the swing moment of a bat that was not swung is no pendulum time.
    pub fn words(&self) -> &'static str {
        match (self.input, self.standing) {
            (Input::SwingMoment, Standing::Measurable) => "pendulum test",
            (input, _) => input.words(),
        }
    }
}

/// One standard deviation of a stature taken without shoes at a wall, m: assumption. People are a
/// centimetre shorter at night.
pub const STATURE_SD_M: f64 = 0.005;
/// One standard deviation of a measured arm, m: assumption. The bony point is felt, not seen.
pub const ARM_SD_M: f64 = 0.010;
/// One standard deviation of an arm estimated from the stature, as a share: adults, children; as the
/// player's own list of estimates says.
const ARM_OF_STATURE_RELATIVE_SD: [f64; 2] = [0.03, 0.05];
/// One standard deviation of the masses of trunk and arms, as a share: adults, children; from the same.
const SEGMENT_MASS_RELATIVE_SD: [f64; 2] = [0.10, 0.20];
/// One standard deviation of a handle measured with string or calipers, m: assumption.
pub const HANDLE_SD_M: f64 = 0.001;
/// One standard deviation of a handle that was not measured, m: assumption. They run from about 30 to
/// 38 mm over the grip.
pub const HANDLE_UNMEASURED_SD_M: f64 = 0.002;
/// One standard deviation of the bowling speed as a share: assumption. A guess without a speed gun, and
/// bowlers differ.
pub const BOWLING_RELATIVE_SD: f64 = 0.10;
/// One standard deviation of a reaction time, s: assumption, between people of one age.
pub const REACTION_SD_S: f64 = 0.03;
/// One standard deviation of the time constant of torque, as a share: assumption, such that
/// two of them reach from 15 to 60 ms, half to twice. The muscle models that the
/// 30 ms lie between let activation rise in 10 to 15 ms and fall in 40 to 60 ms. From rest an isometric
/// effort rises slower still, men's with 105 ms (steepest rise 9.5 of the greatest torque a second: Falk
/// et al. 2009, read), boys' with 139 ms; muscles in a backlift are not at rest, and nobody measured a swing.
pub const TORQUE_RISE_RELATIVE_SD: f64 = 0.5 * core::f64::consts::LN_2;
/// Standard deviation of an even draw between nought and one, over its mean of a half.
const EVEN_RELATIVE_SD: f64 = 0.577_350_269_189_625_8;

/// What the inputs of a study are read off.
#[derive(Clone, Copy, Debug)]
pub struct Known<'a> {
    /// The player as measured.
    pub reading: &'a PersonReading,
    /// The same, ready to swing.
    pub player: &'a Player,
    /// The bat studied.
    pub bat: &'a WeighedBat,
    /// One to set against it.
    pub other: Option<&'a WeighedBat>,
    /// Bowling faced.
    pub delivery: Bowling,
}

/// What is studied.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// The player and the bats.
    pub known: Known<'a>,
    /// Strokes of the innings.
    pub strokes: &'a [Stroke],
    /// Index of the stroke looked at.
    pub pull: usize,
    /// Innings; the figures are those at its end.
    pub plan: &'a InningsPlan,
    /// Stroke time at which loads and shares are taken, by stroke, the same for all draws, s.
    pub asked_time_s: &'a [f64],
    /// Rows of the design: draws of everything, twice; best a power of two.
    pub rows: usize,
}

/// Every input of a player and bats with its spread, in the order of [`Input::all`]; the wrist hold test
/// only where it was done and said something.
pub fn inputs(known: &Known<'_>) -> Vec<Moved> {
    let spread = |input: Input| -> (f64, Standing) {
        let Known { reading, player, .. } = known;
        let child = usize::from(reading.age_y < ADULT_FROM_Y);
        let standing = |measured: bool| match measured {
            true => Standing::Measured,
            false => Standing::Measurable,
        };
        match input {
            Input::Stature => (STATURE_SD_M / reading.stature_m, Standing::Measured),
            Input::ArmLength => match reading.arm_length_m {
                Some(arm_m) => (ARM_SD_M / arm_m, Standing::Measured),
                None => (ARM_OF_STATURE_RELATIVE_SD[child], Standing::Measurable),
            },
            Input::HandLength => {
                (player.hand_length_m.relative_sd(), standing(reading.hand_length_m.is_some()))
            }
            Input::BodyMass => (player.mass_kg.relative_sd(), standing(reading.mass_kg.is_some())),
            Input::SegmentMasses => (SEGMENT_MASS_RELATIVE_SD[child], Standing::OutOfReach),
            Input::Grip => {
                let measured = reading.grip_top_n.is_some() || reading.grip_bottom_n.is_some();
                (grip_relative_sd(player), standing(measured))
            }
            Input::Trunk => (own_relative_sd(known, Group::Trunk), Standing::OutOfReach),
            Input::Shoulders => (own_relative_sd(known, Group::TopShoulder), Standing::OutOfReach),
            Input::Elbows => (own_relative_sd(known, Group::TopElbow), Standing::OutOfReach),
            Input::Wrists => (own_relative_sd(known, Group::BottomWrist), Standing::OutOfReach),
            Input::WristHold => match hold_weight(known) > 0.0 {
                true => (WRIST_HOLD_RELATIVE_SD, Standing::Measured),
                false => (0.0, Standing::Measurable),
            },
            Input::TorqueRise => (TORQUE_RISE_RELATIVE_SD, Standing::OutOfReach),
            Input::ScaleWeight => (of_bats(known, |it| it.mass_kg.relative_sd()), standing(true)),
            Input::Balance => (
                of_bats(known, |it| it.balance_m.relative_sd()),
                standing(bats(known).all(|it| !it.balance_m.is_estimated())),
            ),
            Input::SwingMoment => (
                of_bats(known, |it| it.swing.own_sd_kg_m2 / it.swing.value_kg_m2),
                standing(bats(known).all(|it| it.reading.pendulum.is_some())),
            ),
            Input::HandleDiameter => {
                let measured = bats(known).all(|it| it.reading.handle_diameter_m.is_some());
                let sd_m = if measured { HANDLE_SD_M } else { HANDLE_UNMEASURED_SD_M };
                let handle_m = known.bat.reading.handle_diameter_m;
                (sd_m / handle_m.unwrap_or(player.comfortable_handle_m()), standing(measured))
            }
            Input::Friction => (FRICTION.relative_sd(), Standing::OutOfReach),
            Input::LastingFatigue => (EVEN_RELATIVE_SD, Standing::OutOfReach),
            Input::BowlingSpeed => (BOWLING_RELATIVE_SD, Standing::Measurable),
            Input::ReactionTime => {
                (REACTION_SD_S / known.delivery.reaction_time_s, Standing::OutOfReach)
            }
            Input::BallFlight => (FLIGHT_RELATIVE_SD, Standing::OutOfReach),
        }
    };
    Input::all()
        .map(|input| {
            let (relative_sd, standing) = spread(input);
            Moved { input, relative_sd, standing }
        })
        .filter(|it| it.relative_sd > 0.0)
        .collect()
}

/// The widest of the bats.
fn of_bats(known: &Known<'_>, of: impl Fn(&WeighedBat) -> f64) -> f64 {
    bats(known).map(of).fold(0.0, f64::max)
}

fn bats<'a>(known: &Known<'a>) -> impl Iterator<Item = &'a WeighedBat> {
    core::iter::once(known.bat).chain(known.other)
}

/// Both hands of one person are strong or weak together: the mean of the two spreads.
fn grip_relative_sd(player: &Player) -> f64 {
    0.5 * (player.grip_top_n.relative_sd() + player.grip_bottom_n.relative_sd())
}

/// The same player before the wrist hold test.
fn untested(known: &Known<'_>) -> Option<Player> {
    player(&PersonReading { wrist_hold: None, ..known.reading.clone() }).ok()
}

/// A group's spread besides that of the grip, which all groups share, and before any wrist hold test.
fn own_relative_sd(known: &Known<'_>, group: Group) -> f64 {
    let strength = untested(known).map_or(known.player.strength, |it| it.strength);
    let (sd, grip) = (strength.relative_sd[group as usize], grip_relative_sd(known.player));
    libm::sqrt((sd * sd - grip * grip).max(0.0))
}

/// Weight of the wrist hold test against grip and tables in the top wrist's strength, as the player's
/// strength has it: the test leaves `√(1 − weight)` of the spread there was.
pub(super) fn hold_weight(known: &Known<'_>) -> f64 {
    let group = Group::TopWrist as usize;
    let left = known.player.strength.relative_sd[group];
    untested(known).map_or(0.0, |it| {
        let before = it.strength.relative_sd[group];
        1.0 - left * left / (before * before)
    })
}
