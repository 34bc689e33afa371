//! The advice with its least certain inputs moved.

use super::fitting::Recommendation;
use super::order::{FitFault, Order, Progress};
use super::rule::{Worth, highest_goal_m_s};
use super::search::{Cell, OneSize, choose_finely};
use super::setting::{Setting, Slow};
use super::surrogate::{CORNERS, SurrogateFault};
use crate::bat::Bat;
use crate::player::joints::{GROUP_COUNT, Group};
use crate::swing::activation::FROM_REST_S;
use crate::swing::assumed::Assumed;
use crate::swing::batter::Batter;
use core::ops::ControlFlow;
use rayon::prelude::*;

/// What happens to the advice when an uncertain input is moved.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// What was moved, in plain words.
    pub what: &'static str,
    /// The bat the rule would choose then.
    pub chosen: Worth,
    /// Whether the recommended bat would no longer do: fails the demand where another keeps it, or is
    /// worth less than the tie allows.
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
    let strength = |factors: [f64; GROUP_COUNT]| Setting {
        batter: setting.batter.with_strength(order.player.strength.times(&factors)),
        ..setting.clone()
    };
    let slow = |slow: Slow| Setting { slow, ..setting.clone() };
    let mut changes = match order.player.weaker_by_nets() {
        // By what the nets left in doubt: the trunk, and with it what goes with the trunk. The words are
        // short, for they stand on the card.
        Some([trunk, ..]) => vec![
            ("the trunk is weaker", strength(trunk)),
            ("the trunk is stronger", strength(trunk.map(|it| 1.0 / it))),
            ("less tiredness lasts", slow(Slow::Low)),
            ("more tiredness lasts", slow(Slow::High)),
        ],
        None => {
            let trunk = |factor: f64| {
                let mut factors = [1.0; GROUP_COUNT];
                factors[Group::Trunk as usize] = factor;
                strength(factors)
            };
            vec![
                ("the trunk is 30 % weaker", trunk(0.7)),
                ("the trunk is 30 % stronger", trunk(1.3)),
                ("no tiredness lasts", slow(Slow::Low)),
                ("tiredness lasts as long as it can", slow(Slow::High)),
            ]
        }
    };
    if !order.strokes_otherwise.is_empty() {
        let any_bat = &one.surrogate.domain.middle;
        let batter = Batter::new(
            order.player,
            order.strokes_otherwise,
            any_bat,
            setting.batter.handle_diameter_m,
        )?;
        let asked_time_s =
            Setting::asked_times_s(&batter, any_bat, order.limits.asked_time_factor)?;
        let otherwise = Setting { batter, asked_time_s, ..setting.clone() };
        changes.push(("the bat takes another path", otherwise));
    }
    changes.push(("torque rises as slowly as from rest", slow_to_rise(order, setting)));
    let total = (changes.len() * CORNERS) as f64;
    let done = core::sync::atomic::AtomicUsize::new(0);
    let swung = || {
        let n = done.fetch_add(1, core::sync::atomic::Ordering::Relaxed) + 1;
        let share = (n as f64 / total).min(1.0);
        progress("asking what could change the advice", 0.5 + 0.5 * share)
    };
    let found: Vec<Option<Moved>> = changes
        .par_iter()
        .map(|(what, changed)| moved(order, one, recommendation, what, changed, &swung))
        .collect::<Result<_, _>>()?;
    Ok(found.into_iter().flatten().collect())
}

/// The player whose torque rises as slowly as people's do from rest.
fn slow_to_rise(order: &Order<'_>, setting: &Setting) -> Setting {
    let batter = &setting.batter;
    let assumed = Assumed { activation_time_s: FROM_REST_S, ..batter.assumed };
    let batter = batter.in_place(order.player, batter.handle_diameter_m, assumed);
    Setting { batter, ..setting.clone() }
}

/// Chooses again for a setting a little changed; nothing where nothing could be chosen then.
fn moved(
    order: &Order<'_>,
    one: &OneSize,
    recommendation: &Recommendation,
    what: &'static str,
    changed: &Setting,
    swung: &(dyn Fn() -> ControlFlow<()> + Sync),
) -> Result<Option<Moved>, SurrogateFault> {
    let shifted = one.surrogate.shifted(changed, swung)?;
    let changed = &changed.judged_by(&shifted.at(&shifted.domain.middle));
    let worth = |bat: &Bat| Worth::new(changed, bat.clone(), shifted.at(bat));
    let again = |c: &Cell| Cell { worth: worth(&c.worth.bat), ..c.clone() };
    let grid: Vec<Cell> = one.cells.iter().map(again).collect();
    let asked = worth(&recommendation.worth.bat);
    let tie = order.limits.tie_width;
    Ok(choose_finely(order, changed, &shifted, &one.range, &grid).map(|(_, chosen)| {
        let best = highest_goal_m_s(grid.iter().map(|c| &c.worth));
        let still_does = if chosen.passes() {
            asked.passes() && asked.goal_m_s >= best * (1.0 - tie)
        } else {
            asked.slack >= chosen.slack - tie
        };
        Moved { what, changes_advice: !still_does, chosen }
    }))
}
