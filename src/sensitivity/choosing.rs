//! What is gained by choosing among many paths of a stroke: by a player, in speed, and by one bat over another.
//!
//! An advice lets each bat choose among the few paths that serve nearly everybody. Here each of two bats goes along
//! every path there is, and takes its fastest: what the player gains, and whether choosing favours one bat.

use crate::bat::Bat;
use crate::player::Player;
use crate::player::joints::FRESH;
use crate::stroke::Stroke;
use crate::swing::player_stroke::{PlayerStroke, SwingFault, where_it_closes};
use core::ops::ControlFlow;
use rayon::prelude::*;

/// One stroke along many paths with two bats.
#[derive(Clone, Debug, PartialEq)]
pub struct Choosing {
    /// Stroke.
    pub stroke: String,
    /// Fastest controlled bat speed on the stored path, by bat, m/s; none where it is beyond control.
    pub stored_m_s: [Option<f64>; 2],
    /// The same on each path.
    pub by_path_m_s: Vec<[Option<f64>; 2]>,
}

impl Choosing {
    /// Fastest of all paths, the stored one among them, m/s.
    pub fn best_m_s(&self, bat: usize) -> Option<f64> {
        let all = self.by_path_m_s.iter().chain([&self.stored_m_s]).filter_map(|it| it[bat]);
        all.max_by(f64::total_cmp)
    }

    /// What the player gains by choosing, as a share of the speed on the stored path.
    pub fn player_gains(&self, bat: usize) -> Option<f64> {
        Some(self.best_m_s(bat)? / self.stored_m_s[bat]? - 1.0)
    }

    /// Speed with the second bat over that with the first, on the stored path.
    pub fn stored_ratio(&self) -> Option<f64> {
        Some(self.stored_m_s[1]? / self.stored_m_s[0]?)
    }

    /// The same with each bat on its own fastest path.
    pub fn chosen_ratio(&self) -> Option<f64> {
        Some(self.best_m_s(1)? / self.best_m_s(0)?)
    }

    /// The same on each path where both are under control.
    pub fn ratios(&self) -> Vec<f64> {
        self.by_path_m_s.iter().filter_map(|[a, b]| Some((*b)? / (*a)?)).collect()
    }
}

/// Why nothing was found.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ChoosingFault {
    /// A stroke could not be set up.
    #[error(transparent)]
    Swing(#[from] SwingFault),
    /// The caller asked to stop.
    #[error("cancelled")]
    Cancelled,
}

/// Swings two bats along the stored path of a stroke and along others.
pub fn choosing(
    player: &Player,
    stroke: &Stroke,
    paths: &[Stroke],
    bats: [&Bat; 2],
    step: &(dyn Fn() -> ControlFlow<()> + Sync),
) -> Result<Choosing, ChoosingFault> {
    let along = |path: &Stroke| -> Result<[Option<f64>; 2], ChoosingFault> {
        if step().is_break() {
            return Err(ChoosingFault::Cancelled);
        }
        let Some(own) = where_it_closes(PlayerStroke::new(player, path, bats[0]))? else {
            return Ok([None; 2]);
        };
        let speed_m_s = |bat: &Bat| -> Result<Option<f64>, ChoosingFault> {
            match own.hold(bat)?.fastest(&FRESH, None) {
                Ok(it) => Ok(Some(it.bat_speed_m_s)),
                Err(SwingFault::NoControlledSwing { .. }) => Ok(None),
                Err(fault) => Err(fault.into()),
            }
        };
        Ok([speed_m_s(bats[0])?, speed_m_s(bats[1])?])
    };
    let by_path_m_s = paths.par_iter().map(along).collect::<Result<_, _>>()?;
    Ok(Choosing { stroke: stroke.name.clone(), stored_m_s: along(stroke)?, by_path_m_s })
}
