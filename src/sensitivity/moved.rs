//! The player and the bats as one draw has them.

use super::design::Design;
use super::input::Input;
use super::spread::{Asked, Moved, hold_weight};
use crate::bat::figures::WeighedBat;
use crate::bat::{Bat, BatFault};
use crate::measurement::person::PersonFault;
use crate::measurement::plan::Bowling;
use crate::normal::quantile;
use crate::player::joints::{GROUP_COUNT, Group};
use crate::player::{Player, Segment, player};
use crate::swing::assumed::Assumed;
use crate::swing::control::Control;
use crate::swing::time_in_hand::MEAN_SPEED_SHARE;

/// Everything one draw moves.
#[derive(Clone, Debug)]
pub(super) struct Drawn {
    /// Player.
    pub player: Player,
    /// The bat studied.
    pub bat: Bat,
    /// The one it is set against.
    pub other: Option<Bat>,
    /// Where in its band the lasting fatigue lies: 0 none, 1 as much as legs lose.
    pub lasting: f64,
    /// Handle diameter over the grip, m.
    pub handle_diameter_m: f64,
    /// Friction of the grip and rise of torque.
    pub assumed: Assumed,
    /// The ball.
    pub delivery: Bowling,
}

/// Nobody's tape is off by more standard deviations than this.
const FARTHEST_SD: f64 = 3.0;

/// How draws are made.
pub(super) struct Draws<'a> {
    asked: &'a Asked<'a>,
    moved: &'a [Moved],
    design: &'a Design,
    hold_weight: f64,
}

impl<'a> Draws<'a> {
    pub(super) fn new(asked: &'a Asked<'a>, moved: &'a [Moved], design: &'a Design) -> Self {
        Self { hold_weight: hold_weight(&asked.known), asked, moved, design }
    }

    /// The player and bats at a point whose coordinates lie between 0 and 1.
    ///
    /// A value v with the relative spread s becomes `v·exp(s z)`, z normal: for small spreads the same
    /// as `v + s v z`, and nothing becomes negative. Figures of bats, whose spreads are small and
    /// belong together, move in proportion to z.
    ///
    /// # Errors
    /// Why a draw makes no player or no bat, in words.
    pub(super) fn at(&self, point: &[f64]) -> Result<Drawn, String> {
        let share = |input: Input, coordinate: usize| {
            let it = self.moved.iter().position(|it| it.input == input)?;
            point.get(self.design.places(it).start + coordinate).copied()
        };
        let z = |input: Input, coordinate: usize| {
            let z = share(input, coordinate).map_or(0.0, quantile);
            z.clamp(-FARTHEST_SD, FARTHEST_SD)
        };
        let logarithm = |input: Input| {
            let sd =
                self.moved.iter().find(|it| it.input == input).map_or(0.0, |it| it.relative_sd);
            sd * z(input, 0)
        };
        let factor = |input: Input| libm::exp(logarithm(input));

        let usual = Assumed::default();
        let known = &self.asked.known;
        let mut delivery = self.asked.known.delivery;
        delivery.speed_m_s *= factor(Input::BowlingSpeed);
        delivery.reaction_time_s *= factor(Input::ReactionTime);
        let bat = |bat: &WeighedBat, n: usize| -> Result<Bat, String> {
            let by = [Input::ScaleWeight, Input::Balance, Input::SwingMoment].map(|it| z(it, n));
            let handle_m = bat.reading.handle_diameter_m;
            let bat = moved_bat(bat, by).map_err(|it| it.to_string())?;
            let handle_m = handle_m.map(|it| it * factor(Input::HandleDiameter));
            Ok(bat.with_handle_diameter_m(handle_m))
        };
        let player = self.player(&logarithm).map_err(|it| format!("{}: {it}", it.field()))?;
        Ok(Drawn {
            player,
            bat: bat(known.bat, 0)?,
            other: known.other.map(|it| bat(it, 1)).transpose()?,
            lasting: share(Input::LastingFatigue, 0).unwrap_or(MIDDLE_OF_BAND),
            handle_diameter_m: known.player.comfortable_handle_m() * factor(Input::HandleDiameter),
            assumed: Assumed {
                friction: usual.friction * factor(Input::Friction),
                control: Control {
                    activation_time_s: usual.control.activation_time_s * factor(Input::TorqueRise),
                    ..usual.control
                },
                ..usual
            },
            delivery: slowed(delivery, factor(Input::BallFlight)),
        })
    }

    /// A player whose tables are asked again at the stature drawn.
    fn player(&self, logarithm: &dyn Fn(Input) -> f64) -> Result<Player, PersonFault> {
        let factor = |input: Input| libm::exp(logarithm(input));
        let mut reading = self.asked.known.reading.clone();
        reading.stature_m *= factor(Input::Stature);
        let expected = player(&reading)?;
        reading.mass_kg = Some(expected.mass_kg.value * factor(Input::BodyMass));
        reading.hand_length_m = Some(expected.hand_length_m.value * factor(Input::HandLength));
        let mut it = player(&reading)?;

        let arm_m = it.segments.arm_m();
        let limbs_m = it.segments.upper_arm.length_m + it.segments.forearm.length_m;
        let stretch = 1.0 + (factor(Input::ArmLength) - 1.0) * arm_m / limbs_m;
        for limb in [&mut it.segments.upper_arm, &mut it.segments.forearm] {
            stretched(limb, stretch);
        }
        it.segments = it.segments.heavier(factor(Input::SegmentMasses));

        let grip = logarithm(Input::Grip);
        it.grip_top_n = it.grip_top_n.times(libm::exp(grip));
        it.grip_bottom_n = it.grip_bottom_n.times(libm::exp(grip));
        let own = |input: Input| libm::exp(grip + logarithm(input));
        let (shoulder, elbow) = (own(Input::Shoulders), own(Input::Elbows));
        let wrist = grip + logarithm(Input::Wrists);
        let mut factors = [1.0; GROUP_COUNT];
        for (group, factor) in [
            (Group::Trunk, own(Input::Trunk)),
            (Group::TopShoulder, shoulder),
            (Group::BottomShoulder, shoulder),
            (Group::TopElbow, elbow),
            (Group::BottomElbow, elbow),
            (Group::BottomWrist, libm::exp(wrist)),
            // Grip and tables say so much of the top wrist, its hold test the rest.
            (
                Group::TopWrist,
                libm::exp(
                    (1.0 - self.hold_weight) * wrist
                        + self.hold_weight * logarithm(Input::WristHold),
                ),
            ),
        ] {
            factors[group as usize] = factor;
        }
        it.strength = it.strength.times(&factors);
        Ok(it)
    }
}

/// Half of what legs lose: the middle of the band, where nothing else is drawn.
const MIDDLE_OF_BAND: f64 = 0.5;

/// A ball that takes so many times as long from hand to bat at any speed: the same as a longer way.
fn slowed(mut delivery: Bowling, longer: f64) -> Bowling {
    let way_m = delivery.flight_s() * MEAN_SPEED_SHARE * delivery.speed_m_s;
    delivery.pitch_length_m += (longer - 1.0) * way_m;
    delivery
}

/// The same limb, longer.
fn stretched(limb: &mut Segment, by: f64) {
    limb.length_m *= by;
    limb.com_m *= by;
    limb.gyration_m = limb.gyration_m.map(|it| it * by);
}

/// A bat whose weight, balance point and own swing moment are off by so many of their standard deviations.
fn moved_bat(bat: &WeighedBat, [mass, balance, swing]: [f64; 3]) -> Result<Bat, BatFault> {
    let (mass_kg, balance_m) = (bat.mass_kg.sd * mass, bat.balance_m.sd * balance);
    let swing_kg_m2 = bat.swing.per_mass_m2 * mass_kg
        + bat.swing.per_balance_kg_m * balance_m
        + bat.swing.own_sd_kg_m2 * swing;
    bat.with(
        bat.mass_kg.value + mass_kg,
        bat.balance_m.value + balance_m,
        bat.swing_moment_kg_m2.value + swing_kg_m2,
    )
}
