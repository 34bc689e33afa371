//! The ways in which one player may swing, none of them known to be this player's, in the innings asked.

use super::constants::BALL_AT_BAT;
use super::order::Asked;
use super::scores::Scores;
use crate::calibration::tiredness::Tiredness;
use crate::innings::played::{InningsFault, ball_loads, fresh, schedule};
use crate::measurement::plan::InningsPlan;
use crate::swing::activation::FROM_REST_S;
use crate::swing::assumed::Assumed;
use crate::swing::batter::Batter;
use crate::swing::control::Control;
use crate::swing::player_stroke::{Held, PlayerStroke, SwingFault, where_it_closes};
use rayon::prelude::*;

/// The player's batter, the same on other joint paths, with torque that rises slowly, and holding harder to the path.
#[derive(Clone, Debug, PartialEq)]
pub struct Ways {
    /// As stored.
    pub batter: Batter,
    /// By stroke, on the other paths that this player's arms can follow.
    pub other_paths: Vec<Vec<PlayerStroke>>,
    /// With torque that rises as from rest.
    pub slow_rise: Batter,
    /// Holding to the path three times as hard.
    pub held_harder: Batter,
    /// Innings to last.
    plan: InningsPlan,
    /// Stroke time at which loads are taken, by stroke, s.
    pub asked_time_s: Vec<f64>,
    /// Speed of the ball at the bat, m/s.
    pub ball_m_s: f64,
}

impl Ways {
    /// Of the batter asked, on the same strokes' other paths, many of one name. Their swings take fewer steps: a search
    /// is off by as much, and two bats alike.
    pub fn new(asked: &Asked<'_>) -> Result<Self, SwingFault> {
        let batter = asked.batter.in_fewer_steps();
        let (player, handle_m) = (&batter.player, batter.handle_diameter_m);
        let control = Control { activation_time_s: FROM_REST_S, ..batter.assumed.control };
        let slow_rise = Assumed { control, ..batter.assumed };
        let law = batter.assumed.control;
        let harder = Control {
            weight_posture: HARDER * law.weight_posture,
            weight_rotation: HARDER * law.weight_rotation,
            ..law
        };
        let harder = Assumed { control: harder, ..batter.assumed };
        let slow_rise = batter.in_place(player, handle_m, slow_rise);
        let held_harder = batter.in_place(player, handle_m, harder);
        let closing = |stored: &PlayerStroke| -> Result<Vec<PlayerStroke>, SwingFault> {
            let otherwise = asked.order.strokes_otherwise.iter();
            let of_this = otherwise.filter(|it| it.name == stored.stroke.name);
            let on = |path| where_it_closes(stored.on(path, asked.standard)).transpose();
            of_this.filter_map(on).collect()
        };
        let other_paths = batter.strokes.par_iter().map(closing).collect::<Result<_, _>>()?;
        Ok(Self {
            batter,
            other_paths,
            slow_rise,
            held_harder,
            plan: asked.order.plan.clone(),
            asked_time_s: asked.asked_time_s.to_vec(),
            ball_m_s: BALL_AT_BAT.value * asked.order.bowling.speed_m_s,
        })
    }

    /// What each score leaves of the strength, with a bat taken up.
    pub fn tiredness(
        &self,
        taken_up: &[Held],
        scores: &Scores,
    ) -> Result<Vec<Tiredness>, SwingsFault> {
        let loads = ball_loads(taken_up, &self.plan, &fresh(taken_up, &self.asked_time_s));
        let schedule = schedule(&self.plan, &self.batter);
        Ok(Tiredness::at(&schedule, &loads, &scores.runs).map_err(InningsFault::from)?)
    }
}

/// How much harder the other law holds to the path.
const HARDER: f64 = 3.0;

/// Why the bats of a player could not be swung.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SwingsFault {
    /// No bat of all can be controlled by players like this one.
    #[error(
        "no bat of these can be brought to the ball under control by a player of this strength"
    )]
    BeyondControl,
    /// The caller asked to stop.
    #[error("cancelled")]
    Cancelled,
    /// An innings failed.
    #[error(transparent)]
    Innings(#[from] InningsFault),
}

impl From<SwingFault> for SwingsFault {
    fn from(fault: SwingFault) -> Self {
        Self::Innings(fault.into())
    }
}
