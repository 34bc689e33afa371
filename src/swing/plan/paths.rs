//! Many joint paths of one stroke, each fast for the reference player: keys drawn within what a coach would still call
//! that stroke, the fastest among them drawn round again, and those kept that are fast and unlike each other.

use super::{Effort, PlanFault, plan};
use crate::bat::Bat;
use crate::player::Player;
use crate::player::joints::FRESH;
use crate::stroke::Stroke;
use crate::stroke::joint_path::JointPath;
use crate::stroke::range::{MOVES, moved};
use crate::swing::player_stroke::PlayerStroke;
use core::ops::ControlFlow;
use core::sync::atomic::{AtomicUsize, Ordering};
use rayon::prelude::*;

/// A path of the stroke, and how fast it is.
#[derive(Clone, Debug, PartialEq)]
pub struct FoundPath {
    /// Where its keys lie, each from −1 to 1 of its range.
    pub moves: [f64; MOVES],
    /// The stroke on it.
    pub stroke: Stroke,
    /// Bat speed of the fastest controlled swing of the reference player, m/s.
    pub bat_speed_m_s: f64,
}

/// Seed of the Sobol sequence from which the keys are drawn.
pub const SEED: u32 = 20_261_129;
/// Stroke times for which paths are planned, as a share of the stroke's own.
const PLAN_TIME: [f64; 2] = [0.9, 1.25];
/// How long each path is worked on, if that is enough for the stroke's own keys; else as long as its own path was.
const BRIEF: Effort =
    Effort { pose_iterations: 60, slowest_s: 0.60, ratio: 0.93, torque_iterations: 15 };
/// Draws over the whole ranges, then rounds of draws about the fastest found so far.
const FIRST: u32 = 48;
const ROUNDS: u32 = 2;
const ROUND: u32 = 24;
/// How many of the fastest a round is drawn about, and how far, over the ranges.
const ABOUT: usize = 8;
const REACH: f64 = 0.5;
/// Paths slower than this share of the fastest are kept only where there are too few others.
const SLOWEST_KEPT: f64 = 0.9;

/// At most so many paths of the stroke; the fastest first, then each as unlike those before as may be.
///
/// `told` hears how many paths are done and how many there will be, and is asked at each step whether to go on.
pub fn paths(
    stroke: &Stroke,
    player: &Player,
    bat: &Bat,
    most: usize,
    told: &(dyn Fn(usize, usize) -> ControlFlow<()> + Sync),
) -> Result<Vec<FoundPath>, PlanFault> {
    let all = (FIRST + ROUNDS * ROUND) as usize;
    let done = AtomicUsize::new(0);
    let goes_on = || told(done.load(Ordering::Relaxed), all);
    // The stroke planned with its keys moved, and swung; none where it cannot be.
    let planned = |effort: &Effort, moves: &[f64; MOVES], plan_time: f64| {
        let mut stroke = moved(stroke, moves);
        stroke.plan_time_s *= plan_time;
        stroke.joint_path = plan(effort, &stroke, player, bat, &|_| goes_on()).ok()?.path;
        stroke.bottom_hand_holds = true;
        let held = PlayerStroke::new(player, &stroke, bat).and_then(|it| it.hold(bat)).ok()?;
        let bat_speed_m_s = held.fastest(&FRESH, None).ok()?.bat_speed_m_s;
        Some(FoundPath { moves: *moves, stroke, bat_speed_m_s })
    };
    let own_keys = planned(&BRIEF, &[0.0; MOVES], 1.0);
    let effort = own_keys.map_or(Effort::default(), |_| BRIEF);
    let try_draw = |number: u32, middles: &[[f64; MOVES]]| {
        let tried = planned(&effort, &moves(number, middles), plan_time(number));
        done.fetch_add(1, Ordering::Relaxed);
        if goes_on().is_break() { Err(PlanFault::Stopped) } else { Ok(tried) }
    };
    let round = |numbers: core::ops::Range<u32>, middles: &[[f64; MOVES]]| {
        let found: Result<Vec<Option<FoundPath>>, PlanFault> =
            numbers.into_par_iter().map(|number| try_draw(number, middles)).collect();
        Ok::<_, PlanFault>(found?.into_iter().flatten())
    };
    let mut found: Vec<FoundPath> = round(0..FIRST, &[])?.collect();
    for n in 0..ROUNDS {
        found.sort_by(|a, b| b.bat_speed_m_s.total_cmp(&a.bat_speed_m_s));
        let middles: Vec<[f64; MOVES]> = found.iter().take(ABOUT).map(|it| it.moves).collect();
        let from = FIRST + n * ROUND;
        found.extend(round(from..from + ROUND, &middles)?);
    }
    Ok(unlike(found, most))
}

/// A number of the sequence along one axis, from 0 to 1.
fn even(number: u32, axis: usize) -> f64 {
    f64::from(sobol_burley::sample(number, axis as u32, SEED))
}

/// Moves of one draw: over the whole ranges, or about one of the middles.
fn moves(number: u32, middles: &[[f64; MOVES]]) -> [f64; MOVES] {
    core::array::from_fn(|i| {
        let here = 2.0 * even(number, i) - 1.0;
        match middles {
            [] => here,
            _ => (middles[number as usize % middles.len()][i] + REACH * here).clamp(-1.0, 1.0),
        }
    })
}

fn plan_time(number: u32) -> f64 {
    let [low, high] = PLAN_TIME;
    low + (high - low) * even(number, MOVES)
}

/// The fastest, then one after another the one furthest from all that were taken.
fn unlike(mut found: Vec<FoundPath>, most: usize) -> Vec<FoundPath> {
    found.sort_by(|a, b| b.bat_speed_m_s.total_cmp(&a.bat_speed_m_s));
    let slowest = found.first().map_or(0.0, |it| SLOWEST_KEPT * it.bat_speed_m_s);
    let fast = found.iter().take_while(|it| it.bat_speed_m_s >= slowest).count();
    found.truncate(fast.max(most));
    let mut kept: Vec<FoundPath> = Vec::new();
    while kept.len() < most && !found.is_empty() {
        let apart = |it: &FoundPath| {
            let nearest = kept
                .iter()
                .map(|kept| distance_rad(&kept.stroke.joint_path, &it.stroke.joint_path));
            // The first has none to be unlike: the fastest goes first.
            if kept.is_empty() { it.bat_speed_m_s } else { nearest.fold(f64::INFINITY, f64::min) }
        };
        let next = (0..found.len()).max_by(|a, b| apart(&found[*a]).total_cmp(&apart(&found[*b])));
        kept.extend(next.map(|i| found.swap_remove(i)));
    }
    kept
}

/// Root mean square of how far the joints of two paths lie apart, rad.
pub fn distance_rad(a: &JointPath, b: &JointPath) -> f64 {
    let all = || a.control_rad.iter().flatten().zip(b.control_rad.iter().flatten());
    let squares: f64 = all().map(|(a, b)| (a - b) * (a - b)).sum();
    libm::sqrt(squares / all().count() as f64)
}
