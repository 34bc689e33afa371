//! The whole search for one player.

use super::candidates::{Range, suitable};
use super::rule::{Worth, choose};
use super::setting::{Setting, Slow};
use super::surrogate::{Domain, Surrogate, SurrogateFault};
use super::tolerance::{Tolerances, tolerances};
use crate::bat::family::Family;
use crate::bat::figures::WeighedBat;
use crate::bat::laws::{Limits, Verdict};
use crate::bat::makeable::MadeBat;
use crate::bat::pickup_weight::pickup_weight_kg;
use crate::bat::sizes::Size;
use crate::bat::{Bat, BatFault};
use crate::innings::played::{InningsFault, delivery};
use crate::measurement::plan::{Bowling, FitLimits, InningsPlan};
use crate::player::Player;
use crate::player::grip::comfortable_diameter_m;
use crate::player::joints::{GROUP_COUNT, Group};
use crate::stroke::Stroke;
use crate::swing::batter::Batter;
use crate::swing::engine::EngineFault;
use crate::swing::player_stroke::SwingFault;
use core::ops::ControlFlow;
use rayon::prelude::*;

/// What a fit starts from.
#[derive(Clone, Copy, Debug)]
pub struct Order<'a> {
    /// Player.
    pub player: &'a Player,
    /// Strokes that can be played.
    pub strokes: &'a [Stroke],
    /// Bats weighed at the bench.
    pub bats: &'a [WeighedBat],
    /// Innings to last.
    pub plan: &'a InningsPlan,
    /// Bowling to face.
    pub bowling: &'a Bowling,
    /// Limits of the search and its rule.
    pub limits: &'a FitLimits,
    /// Sizes of the trade.
    pub sizes: &'a [Size],
    /// Size limits of the Laws.
    pub laws: &'a Limits,
}

/// Why there is no fitting.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum FitFault {
    /// No size to choose from.
    #[error("no size is called {names:?}")]
    NoSize {
        /// Names asked for.
        names: Vec<String>,
    },
    /// Nothing can be made within the limits.
    #[error(
        "no bat of size {size} can be made within the weights asked for; widen fit.lightest or fit.heaviest"
    )]
    NothingToMake {
        /// Size.
        size: String,
    },
    /// The reference bat of the size is no bat.
    #[error(transparent)]
    Bat(#[from] BatFault),
    /// A swing failed.
    #[error(transparent)]
    Swing(#[from] SwingFault),
    /// An innings failed.
    #[error(transparent)]
    Innings(#[from] InningsFault),
    /// A surrogate failed.
    #[error(transparent)]
    Surrogate(SurrogateFault),
    /// The engine failed.
    #[error(transparent)]
    Engine(#[from] EngineFault),
    /// The caller asked to stop.
    #[error("cancelled")]
    Cancelled,
}

impl From<SurrogateFault> for FitFault {
    fn from(fault: SurrogateFault) -> Self {
        match fault {
            SurrogateFault::Cancelled => Self::Cancelled,
            other => Self::Surrogate(other),
        }
    }
}

/// One cell of the map.
#[derive(Clone, Debug, PartialEq)]
pub struct Cell {
    /// What the bat is worth, by the surrogate.
    pub worth: Worth,
    /// Lowest and highest swing moment that can be made at this weight and balance, kg m².
    pub swing_moment_range_kg_m2: [f64; 2],
}

/// The bat to ask for.
#[derive(Clone, Debug, PartialEq)]
pub struct Recommendation {
    /// Size.
    pub size: String,
    /// The bat and what it is worth, simulated.
    pub worth: Worth,
    /// Shape it was computed for.
    pub made: MadeBat,
    /// Weight of the size's reference bat with the same swing moment, kg.
    pub pickup_weight_kg: f64,
    /// How far each figure may move.
    pub tolerances: Tolerances,
    /// Sweet spot (centre of percussion for the pickup axis) from the toe, m.
    pub sweet_spot_from_toe_m: f64,
    /// Handle diameter for this hand, m.
    pub handle_diameter_m: f64,
}

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

/// One weighed bat judged by the rule.
#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    /// Label.
    pub label: String,
    /// What it is worth, simulated.
    pub worth: Worth,
    /// Whether the Laws allow it.
    pub legal: Verdict,
}

/// The result of the search.
#[derive(Clone, Debug)]
pub struct Fitting {
    /// The player and what was asked.
    pub setting: Setting,
    /// The bat to ask for.
    pub recommendation: Recommendation,
    /// Next best by the rule that is a different bat, if there is one.
    pub runner_up: Option<Worth>,
    /// The map of the recommended size.
    pub map: Vec<Cell>,
    /// Weighed bats, in the order given.
    pub given: Vec<Given>,
    /// Index of the best of the weighed bats.
    pub best_given: Option<usize>,
    /// The advice with uncertain inputs moved.
    pub moved: Vec<Moved>,
    /// Largest error of the surrogate on bats it had not seen, as a share.
    pub surrogate_error: f64,
    /// The surrogate, for whoever wants to look further.
    pub surrogate: Surrogate,
    /// Reference bat of the size, and its fresh fastest times, s.
    pub reference: Bat,
}

/// Progress: what is being done, and the share of the whole that is done.
pub type Progress<'a> = &'a (dyn Fn(&'static str, f64) -> ControlFlow<()> + Sync);

struct OneSize {
    range: Range,
    surrogate: Surrogate,
    cells: Vec<Cell>,
    chosen: (MadeBat, Worth),
}

/// Margin of the surrogate's box round the bats of the map, so that tolerances stay inside it.
const BOX_MARGIN: [f64; 2] = [0.02, 0.003];
/// Half the range of swing moments the surrogate covers.
const SWING_SPREAD: f64 = 0.06;

/// Searches, and looks at what could change the answer.
pub fn fit(order: &Order<'_>, progress: Progress<'_>) -> Result<Fitting, FitFault> {
    let sizes = suitable(order.sizes, order.limits, order.player.stature_m);
    let Some(first) = sizes.first() else {
        return Err(FitFault::NoSize { names: order.limits.sizes.clone() });
    };
    let reference = first.reference.bat("reference")?;
    let mut setting = setting(order, &reference)?;
    let count = sizes.len() as f64;
    let mut searched = Vec::with_capacity(sizes.len());
    for (i, size) in sizes.iter().enumerate() {
        let part = |share: f64| {
            progress("swinging the bats that can be made", 0.5 * (i as f64 + share) / count)
        };
        let (surrogate, range, grid) = swing_range(order, &setting, size, &part)?;
        if i == 0 {
            setting = setting.judged_by(&surrogate.at(&surrogate.domain.middle));
        }
        let cells = cells(&setting, &surrogate, &grid);
        let chosen = choose_finely(order, &setting, &surrogate, &range, &cells)
            .ok_or_else(|| FitFault::NothingToMake { size: size.name.clone() })?;
        searched.push(OneSize { range, surrogate, cells, chosen });
    }
    let worths: Vec<Worth> = searched.iter().map(|s| s.chosen.1.clone()).collect();
    let best = choose(&worths, order.limits.tie_width).unwrap_or(0);
    let one = searched.swap_remove(best);

    let given = judge_given(order, &setting, &one.surrogate)?;
    let best_given = best_of(&given, order.limits.tie_width);
    let recommendation = recommend(order, &setting, &one)?;
    let moved = move_inputs(order, &setting, &one, &recommendation, progress)?;
    let runner_up = runner_up(order, &one, &recommendation);
    Ok(Fitting {
        setting,
        recommendation,
        runner_up,
        map: one.cells,
        given,
        best_given,
        moved,
        surrogate_error: one.surrogate.held_out_error,
        surrogate: one.surrogate,
        reference,
    })
}

/// The player with the asked times of the reference bat.
pub fn setting(order: &Order<'_>, reference: &Bat) -> Result<Setting, SwingFault> {
    let handle_diameter_m = comfortable_diameter_m(order.player.hand_length_m.value);
    let batter = Batter::new(order.player, order.strokes, reference, handle_diameter_m)?;
    let fresh = Setting::fresh_times_s(&batter, reference)?;
    Ok(Setting {
        batter,
        plan: order.plan.clone(),
        delivery: delivery(order.bowling),
        ball_kg: order.limits.ball_mass_kg,
        share_limit: order.limits.share_limit,
        goal: order.limits.goal,
        ball_at_bat_m_s: Vec::new(),
        asked_time_s: fresh.iter().map(|t| t * order.limits.asked_time_factor).collect(),
        slow: Slow::Central,
    })
}

/// Swings the bats of a size: its surrogate, and the bats of its map.
fn swing_range(
    order: &Order<'_>,
    setting: &Setting,
    size: &Size,
    progress: &(dyn Fn(f64) -> ControlFlow<()> + Sync),
) -> Result<(Surrogate, Range, Vec<MadeBat>), FitFault> {
    let range = Range::new(size, order.limits);
    let grid = range.grid(order.laws);
    let fault = || FitFault::NothingToMake { size: size.name.clone() };
    let middle = size.reference.bat(size.name.clone())?;
    let domain = domain(&grid, &range.family, middle).ok_or_else(fault)?;
    let held_out: Vec<Bat> = [0.13, 0.42, 0.68, 0.91]
        .iter()
        .filter_map(|share| grid.get((share * grid.len() as f64) as usize))
        .map(|made| made.bat.clone())
        .collect();
    let surrogate = Surrogate::fit(setting, domain, &held_out, progress)?;
    Ok((surrogate, range, grid))
}

fn domain(grid: &[MadeBat], family: &Family, middle: Bat) -> Option<Domain> {
    let span = |f: &dyn Fn(&MadeBat) -> f64, margin: f64| {
        let low = grid.iter().map(f).fold(f64::INFINITY, f64::min);
        let high = grid.iter().map(f).fold(f64::NEG_INFINITY, f64::max);
        (high >= low).then_some([low - margin, high + margin])
    };
    Some(Domain {
        family: family.clone(),
        middle,
        mass_kg: span(&|m| m.bat.mass_kg(), BOX_MARGIN[0])?,
        balance_m: span(&|m| m.bat.balance_m(), BOX_MARGIN[1])?,
        swing_spread: SWING_SPREAD,
    })
}

fn cells(setting: &Setting, surrogate: &Surrogate, grid: &[MadeBat]) -> Vec<Cell> {
    grid.iter()
        .map(|made| Cell {
            worth: Worth::new(setting, made.bat.clone(), surrogate.at(&made.bat)),
            swing_moment_range_kg_m2: made.swing_moment_range_kg_m2,
        })
        .collect()
}

/// Chooses on the map, then again among the bats near the choice.
fn choose_finely(
    order: &Order<'_>,
    setting: &Setting,
    surrogate: &Surrogate,
    range: &Range,
    cells: &[Cell],
) -> Option<(MadeBat, Worth)> {
    let tie = order.limits.tie_width;
    let worths: Vec<Worth> = cells.iter().map(|c| c.worth.clone()).collect();
    let coarse = &worths[choose(&worths, tie)?];
    let mut near = range.near(coarse.bat.mass_kg(), coarse.bat.balance_m(), order.laws);
    let mut fine: Vec<Worth> = near
        .iter()
        .map(|made| Worth::new(setting, made.bat.clone(), surrogate.at(&made.bat)))
        .collect();
    // The tie is with the best of the whole map.
    let passing = |w: &&Worth| w.passes();
    let highest = worths.iter().filter(passing).map(|w| w.goal_m_s).fold(0.0, f64::max);
    if coarse.passes() {
        let keep: Vec<bool> =
            fine.iter().map(|w| w.passes() && w.goal_m_s >= highest * (1.0 - tie)).collect();
        if keep.iter().any(|k| *k) {
            let mut k = keep.iter();
            fine.retain(|_| *k.next().unwrap_or(&false));
            let mut k = keep.iter();
            near.retain(|_| *k.next().unwrap_or(&false));
            let lightest = (0..fine.len()).min_by(|&a, &b| {
                fine[a].bat.swing_moment_kg_m2().total_cmp(&fine[b].bat.swing_moment_kg_m2())
            })?;
            return Some((near.swap_remove(lightest), fine.swap_remove(lightest)));
        }
    }
    let best = choose(&fine, tie)?;
    Some((near.swap_remove(best), fine.swap_remove(best)))
}

fn recommend(
    order: &Order<'_>,
    setting: &Setting,
    one: &OneSize,
) -> Result<Recommendation, FitFault> {
    let (made, by_surrogate) = &one.chosen;
    let guess: Vec<f64> = by_surrogate.strokes.iter().map(|s| s.time_s).collect();
    let strokes = setting.at_end(&made.bat, Some(&guess))?;
    let worth = Worth::new(setting, made.bat.clone(), strokes);
    let reference = one.range.size.reference.bat("reference")?;
    Ok(Recommendation {
        size: one.range.size.name.clone(),
        pickup_weight_kg: pickup_weight_kg(&reference, made.bat.swing_moment_kg_m2()),
        tolerances: tolerances(setting, &one.surrogate, by_surrogate, order.limits.tie_width),
        sweet_spot_from_toe_m: made.bat.length_m() - made.bat.percussion_m(),
        handle_diameter_m: setting.batter.handle_diameter_m,
        made: made.clone(),
        worth,
    })
}

fn judge_given(
    order: &Order<'_>,
    setting: &Setting,
    surrogate: &Surrogate,
) -> Result<Vec<Given>, FitFault> {
    let middle = surrogate.at(&surrogate.domain.middle);
    let times: Vec<f64> = middle.iter().map(|s| s.time_s).collect();
    order
        .bats
        .par_iter()
        .map(|weighed| {
            let near =
                super::surrogate::near_times_s(&times, &surrogate.domain.middle, &weighed.bat);
            let strokes = setting.at_end(&weighed.bat, Some(&near))?;
            Ok(Given {
                label: weighed.reading.label.clone(),
                worth: Worth::new(setting, weighed.bat.clone(), strokes),
                legal: weighed.law.verdict,
            })
        })
        .collect()
}

/// The best of the weighed bats that the Laws do not forbid.
fn best_of(given: &[Given], tie_width: f64) -> Option<usize> {
    let allowed: Vec<usize> = (0..given.len()).filter(|&i| given[i].legal != Verdict::No).collect();
    let worths: Vec<Worth> = allowed.iter().map(|&i| given[i].worth.clone()).collect();
    choose(&worths, tie_width).map(|i| allowed[i])
}

fn move_inputs(
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

/// The rule's choice among the cells that are another bat: swing moment outside the tolerance.
fn runner_up(order: &Order<'_>, one: &OneSize, it: &Recommendation) -> Option<Worth> {
    let [low, high] = it.tolerances.swing_moment_kg_m2;
    let others: Vec<Worth> = one
        .cells
        .iter()
        .map(|c| &c.worth)
        .filter(|w| {
            let swing = w.bat.swing_moment_kg_m2();
            swing < low || swing > high
        })
        .cloned()
        .collect();
    choose(&others, order.limits.tie_width).map(|i| others[i].clone())
}
