//! The bats of one size: swung, mapped, and the best of them found.

use super::candidates::Range;
use super::order::{FitFault, Order};
use super::rule::{Worth, choose, highest_goal_m_s, lightest_tied};
use super::setting::Setting;
use super::surrogate::{Domain, Surrogate};
use crate::bat::Bat;
use crate::bat::family::Family;
use crate::bat::makeable::MadeBat;
use crate::bat::sizes::Size;
use core::ops::ControlFlow;

/// One cell of the map.
#[derive(Clone, Debug, PartialEq)]
pub struct Cell {
    /// What the bat is worth, by the surrogate.
    pub worth: Worth,
    /// Lowest and highest swing moment that can be made at this weight and balance, kg m².
    pub swing_moment_range_kg_m2: [f64; 2],
}

/// A size searched.
pub(super) struct OneSize {
    pub(super) range: Range,
    pub(super) surrogate: Surrogate,
    pub(super) cells: Vec<Cell>,
    pub(super) chosen: (MadeBat, Worth),
}

/// Margin of the surrogate's box round the bats of the map, so that tolerances stay inside it.
const BOX_MARGIN: [f64; 2] = [0.02, 0.003];
/// Half the range of swing moments the surrogate covers.
const SWING_SPREAD: f64 = 0.06;

/// Swings the bats of a size: its surrogate, and the bats of its map.
pub(super) fn swing_range(
    order: &Order<'_>,
    setting: &Setting,
    size: &Size,
    progress: &(dyn Fn(f64) -> ControlFlow<()> + Sync),
) -> Result<(Surrogate, Range, Vec<MadeBat>), FitFault> {
    let range = Range::new(size, order.limits, setting.batter.handle_diameter_m);
    let grid = range.grid(order.laws);
    let mut swung = surrogate_of(setting, size, &range, &grid, progress);
    for share in LIGHTER_SHARES {
        let beyond = |it: &FitFault| match it {
            FitFault::Surrogate(fault) => fault.is_beyond_control(),
            _ => false,
        };
        if !swung.as_ref().is_err_and(beyond) {
            break;
        }
        swung = surrogate_of(setting, size, &range, &lighter_part(&grid, share), progress);
    }
    let (surrogate, grid) = swung?;
    Ok((surrogate, range, grid))
}

/// Where the heaviest bats of a size are beyond the player's control, the lighter part of the range of
/// weights is searched, down to these shares of it.
const LIGHTER_SHARES: [f64; 2] = [0.6, 0.35];

/// The bats in the lighter share of the range of weights.
fn lighter_part(grid: &[MadeBat], share: f64) -> Vec<MadeBat> {
    let mass_kg = || grid.iter().map(|made| made.bat.mass_kg());
    let (low, high) = (mass_kg().fold(f64::INFINITY, f64::min), mass_kg().fold(0.0, f64::max));
    let limit_kg = low + share * (high - low);
    grid.iter().filter(|made| made.bat.mass_kg() <= limit_kg).cloned().collect()
}

fn surrogate_of(
    setting: &Setting,
    size: &Size,
    range: &Range,
    grid: &[MadeBat],
    progress: &(dyn Fn(f64) -> ControlFlow<()> + Sync),
) -> Result<(Surrogate, Vec<MadeBat>), FitFault> {
    let fault = || FitFault::NothingToMake { size: size.name.clone() };
    let middle = range.family.reference().bat(format!("a bat of size {}", size.name))?;
    let domain = domain(grid, &range.family, middle).ok_or_else(fault)?;
    let held_out: Vec<Bat> = [0.13, 0.42, 0.68, 0.91]
        .iter()
        .filter_map(|share| grid.get((share * grid.len() as f64) as usize))
        .map(|made| made.bat.clone())
        .collect();
    let surrogate = Surrogate::fit(setting, domain, &held_out, progress)?;
    Ok((surrogate, grid.to_vec()))
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

/// The bats of the map, judged.
pub(super) fn cells(setting: &Setting, surrogate: &Surrogate, grid: &[MadeBat]) -> Vec<Cell> {
    grid.iter()
        .map(|made| Cell {
            worth: Worth::new(setting, made.bat.clone(), surrogate.at(&made.bat)),
            swing_moment_range_kg_m2: made.swing_moment_range_kg_m2,
        })
        .collect()
}

/// Chooses on the map, then again among the bats near the choice.
pub(super) fn choose_finely(
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
    let tied = match coarse.passes() {
        true => lightest_tied(&fine, highest_goal_m_s(&worths), tie),
        false => None,
    };
    let best = tied.or_else(|| choose(&fine, tie))?;
    Some((near.swap_remove(best), fine.swap_remove(best)))
}
