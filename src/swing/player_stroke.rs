//! One player ready to play one stroke with any bat.

use super::assumed::Assumed;
use super::chain::{Chain, Grip};
use super::close_path::{PathDoesNotClose, close_path};
use super::contact::Contact;
use super::fastest_controlled::{NoControlledSwing, fastest_controlled};
use super::reference::Reference;
use super::run::STEPS;
use super::swinger::Swinger;
use crate::bat::Bat;
use crate::dynamics::tree::TreeFault;
use crate::player::grip::{HAND_BREADTH_PER_LENGTH, cross_limit_n_m, traction_n, twist_limit_n_m};
use crate::player::joints::{FRESH, GROUP_COUNT};
use crate::player::{Player, Strength};
use crate::stroke::Stroke;
use crate::stroke::joint_path::JointPath;
use crate::stroke::key_spline::KeySpline;

/// Why no swing could be set up or found.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SwingFault {
    /// The chain is not a tree.
    #[error(transparent)]
    Chain(#[from] TreeFault),
    /// The hands cannot stay on the handle.
    #[error("{stroke}: {fault}")]
    Path {
        /// Stroke.
        stroke: String,
        /// What is left open.
        fault: PathDoesNotClose,
    },
    /// No controlled swing.
    #[error("{stroke} with {bat}: {fault}")]
    NoControlledSwing {
        /// Stroke.
        stroke: String,
        /// Bat.
        bat: String,
        /// Up to what time.
        fault: NoControlledSwing,
    },
}

/// The player's own path, or none where keys that suit the reference player do not close for this one: a path less to
/// choose from.
pub fn where_it_closes(
    own: Result<PlayerStroke, SwingFault>,
) -> Result<Option<PlayerStroke>, SwingFault> {
    match own {
        Err(SwingFault::Path { .. }) => Ok(None),
        other => other.map(Some),
    }
}

/// Length of an adult bat, for which the strokes' contact point is given, m.
const ADULT_BAT_M: f64 = 0.85;

/// A player's own joint path of a stroke; the same for every bat he or she takes up.
#[derive(Clone, Debug, PartialEq)]
pub struct PlayerStroke {
    /// Player.
    pub player: Player,
    /// Stroke.
    pub stroke: Stroke,
    /// The player's joint path.
    pub path: JointPath,
    curves: KeySpline,
    grip: Grip,
    /// Diameter of a handle that was not measured, m.
    handle_diameter_m: f64,
    assumed: Assumed,
    /// Steps from the top of the backlift to the planned contact.
    pub steps: usize,
}

/// Player, stroke and bat: what is swung.
#[derive(Clone, Debug)]
pub struct Held {
    /// Player and bat as a chain.
    pub chain: Chain,
    /// The plan for it.
    pub reference: Reference,
    /// Diameter of its handle over the grip, m: as measured, or the one assumed for bats whose is not.
    pub handle_diameter_m: f64,
    /// What the stroke rests on besides.
    pub assumed: Assumed,
    strength: Strength,
    stroke: Stroke,
    bat_label: String,
}

impl PlayerStroke {
    /// Finds the player's own path of a stroke. A stand-in bat serves: the path does not depend on it.
    pub fn new(player: &Player, stroke: &Stroke, any_bat: &Bat) -> Result<Self, SwingFault> {
        let mut it = Self::unchecked(player, stroke, any_bat)?;
        let slow = it.hold(any_bat)?.swinger(&FRESH).swing(SLOW_S, None);
        if slow.error > 1.0 {
            it.steps = 2 * STEPS;
        }
        Ok(it)
    }

    /// The player's own path, in the usual number of steps, be the player slow or not.
    fn unchecked(player: &Player, stroke: &Stroke, any_bat: &Bat) -> Result<Self, SwingFault> {
        let grip = Grip::for_stature(player.stature_m, stroke.oblique_rad, stroke.roll_rad);
        let chain = Chain::new(player, any_bat, grip)?;
        let path = close_path(&chain, &stroke.joint_path)
            .map_err(|fault| SwingFault::Path { stroke: stroke.name.clone(), fault })?;
        Ok(Self {
            player: player.clone(),
            stroke: stroke.clone(),
            path,
            curves: stroke.curves(),
            grip,
            handle_diameter_m: player.comfortable_handle_m(),
            assumed: Assumed::default(),
            steps: STEPS,
        })
    }

    /// The same with this diameter for handles that were not measured, which decides what couple the bottom
    /// hand can hold about them, and with other assumptions; a comfortable one and the usual ones until told.
    pub fn with_handle(self, handle_diameter_m: f64, assumed: Assumed) -> Self {
        Self { handle_diameter_m, assumed, ..self }
    }

    /// Another path of the same stroke for this player, in as many steps.
    pub fn on(&self, stroke: &Stroke, any_bat: &Bat) -> Result<Self, SwingFault> {
        let it = Self::unchecked(&self.player, stroke, any_bat)?;
        Ok(Self { steps: self.steps, ..it.with_handle(self.handle_diameter_m, self.assumed) })
    }

    /// The same stroke by the same body with another strength: for studies of what is uncertain.
    pub fn with_strength(&self, strength: Strength) -> Self {
        Self { player: Player { strength, ..self.player.clone() }, ..self.clone() }
    }

    /// Takes up a bat.
    pub fn hold(&self, bat: &Bat) -> Result<Held, SwingFault> {
        let handle_diameter_m = bat.handle_diameter_m().unwrap_or(self.handle_diameter_m);
        let grip = match self.stroke.bottom_hand_holds {
            true => holding(self.grip, &self.player, handle_diameter_m, self.assumed.friction),
            false => self.grip,
        };
        let chain = Chain::new(&self.player, bat, grip)?;
        let contact_m = contact_station_m(&self.stroke, bat.length_m());
        let reference = Reference::new(&chain, &self.path, &self.curves, contact_m, 2 * self.steps);
        Ok(Held {
            chain,
            reference,
            handle_diameter_m,
            assumed: self.assumed,
            strength: self.player.strength,
            stroke: self.stroke.clone(),
            bat_label: bat.label().to_owned(),
        })
    }
}

/// The grip with what the bottom hand can hold on a handle of this diameter.
///
/// A bat has next to no inertia about its long axis: what one hand twists, the other must hold. So the
/// weaker grip of the two limits both.
fn holding(grip: Grip, player: &Player, handle_diameter_m: f64, friction: f64) -> Grip {
    let grip_n = player.grip_bottom_n.value;
    let weaker_n = grip_n.min(player.grip_top_n.value);
    let across = cross_limit_n_m(grip_n, HAND_BREADTH_PER_LENGTH * player.hand_length_m.value);
    let about = twist_limit_n_m(weaker_n, handle_diameter_m, friction);
    grip.holding([about, across, across], traction_n(weaker_n, friction))
}

/// Contact point on a bat of this length, m from the top of the handle.
pub fn contact_station_m(stroke: &Stroke, length_m: f64) -> f64 {
    length_m * (1.0 - stroke.contact_from_toe_m / ADULT_BAT_M)
}

impl Held {
    /// The swing with each group's capacity multiplied by its factor (1 when fresh).
    pub fn swinger(&self, capacity: &[f64; GROUP_COUNT]) -> Swinger<'_> {
        let strength = self.strength.times(capacity);
        Swinger {
            control: self.assumed.control,
            gravity_m_s2: self.assumed.gravity_m_s2,
            ..Swinger::new(&self.chain, &self.reference, strength, self.stroke.tolerance)
        }
    }

    /// The fastest controlled swing with these capacities, searched from `guess_s` where a near
    /// answer is known.
    pub fn fastest(
        &self,
        capacity: &[f64; GROUP_COUNT],
        guess_s: Option<f64>,
    ) -> Result<Contact, SwingFault> {
        let swinger = self.swinger(capacity);
        let found = match guess_s {
            Some(guess) => fastest_controlled(&swinger, guess, true),
            None => fastest_controlled(&swinger, FAR * self.stroke.plan_time_s, false),
        };
        found.map_err(|fault| SwingFault::NoControlledSwing {
            stroke: self.stroke.name.clone(),
            bat: self.bat_label.clone(),
            fault,
        })
    }
}

/// A player who does not control the stroke in this time is slow and gets twice the steps: a step
/// longer than about 8 ms is unstable, whatever the player.
const SLOW_S: f64 = 0.8;
/// Where a search without a near answer starts, as a multiple of the planned time.
const FAR: f64 = 1.5;
