//! The advice with its least certain inputs moved.

use super::fitting::Recommendation;
use super::order::{FitFault, Order, Progress};
use super::rule::Worth;
use super::search::{Cell, OneSize, choose_finely};
use super::setting::{Setting, Slow};
use crate::player::joints::{GROUP_COUNT, Group};

/// What happens to the advice when an uncertain input is moved.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// What was moved, in plain words.
    pub what: &'static str,
    /// The bat the rule would choose then.
    pub chosen: Worth,
    /// Whether its swing moment lies outside the recommendation's tolerance.
    pub changes_advice: bool,
}

/// Moves each input and chooses again.
pub(super) fn move_inputs(
    order: &Order<'_>,
    setting: &Setting,
    one: &OneSize,
    recommendation: &Recommendation,
    progress: Progress<'_>,
) -> Result<Vec<Moved>, FitFault> {
    let trunk = |factor: f64| {
        let mut factors = [1.0; GROUP_COUNT];
        factors[Group::Trunk as usize] = factor;
        Setting {
            batter: setting.batter.with_strength(order.player.strength.times(&factors)),
            ..setting.clone()
        }
    };
    let slow = |slow: Slow| Setting { slow, ..setting.clone() };
    let changes = [
        ("trunk 30 % weaker", trunk(0.7)),
        ("trunk 30 % stronger", trunk(1.3)),
        ("no lasting fatigue", slow(Slow::Without)),
        ("lasting fatigue at the top of its band", slow(Slow::High)),
    ];
    let [low, high] = recommendation.tolerances.swing_moment_kg_m2;
    let mut out = Vec::with_capacity(changes.len());
    for (i, (what, changed)) in changes.iter().enumerate() {
        let part = |share: f64| {
            progress("asking what could change the advice", 0.5 + 0.125 * (i as f64 + share))
        };
        let shifted = one.surrogate.shifted(changed, &part)?;
        let changed = &changed.judged_by(&shifted.at(&shifted.domain.middle));
        let grid: Vec<Cell> = one
            .cells
            .iter()
            .map(|c| Cell {
                worth: Worth::new(changed, c.worth.bat.clone(), shifted.at(&c.worth.bat)),
                ..c.clone()
            })
            .collect();
        if let Some((_, chosen)) = choose_finely(order, changed, &shifted, &one.range, &grid) {
            let swing = chosen.bat.swing_moment_kg_m2();
            out.push(Moved { what, changes_advice: swing < low || swing > high, chosen });
        }
    }
    Ok(out)
}
