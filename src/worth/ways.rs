//! The ways in which one player may swing, none of them known to be this player's.

use super::other_path::closing;
use crate::bat::Bat;
use crate::stroke::Stroke;
use crate::swing::activation::FROM_REST_S;
use crate::swing::assumed::Assumed;
use crate::swing::batter::Batter;
use crate::swing::control::Control;
use crate::swing::player_stroke::{PlayerStroke, SwingFault};
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
}

impl Ways {
    /// From the batter and the same strokes on other paths, many of one name. Their swings take fewer steps: a search
    /// is off by as much, and two bats alike.
    pub fn new(batter: &Batter, otherwise: &[Stroke], any_bat: &Bat) -> Result<Self, SwingFault> {
        let batter = batter.in_fewer_steps();
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
        let other_paths = batter
            .strokes
            .par_iter()
            .map(|stroke| closing(stroke, otherwise, any_bat))
            .collect::<Result<_, _>>()?;
        Ok(Self { batter, other_paths, slow_rise, held_harder })
    }
}

/// How much harder the other law holds to the path.
const HARDER: f64 = 3.0;
