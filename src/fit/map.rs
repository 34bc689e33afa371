//! The bats of one size: swung, and what each is worth.

use super::candidates::Range;
use super::domain::Domain;
use super::fault::FitFault;
use super::middle_of::middle_of;
use super::size_swings::{SizeFault, SizeSwings};
use crate::bat::Bat;
use crate::bat::family::Family;
use crate::bat::makeable::MadeBat;
use crate::bat::sizes::Size;
use crate::calibration::limit::FIGURES;
use crate::measurement::plan::Middle;
use crate::worth::expected::{Judged, Worth};
use crate::worth::meeting::Struck;
use crate::worth::order::Order;
use crate::worth::possible::Possible;
use crate::worth::scores::Scores;
use crate::worth::swings::Step;
use crate::worth::today::Today;

/// One cell of the map.
#[derive(Clone, Debug, PartialEq)]
pub struct Cell {
    /// The bat.
    pub made: MadeBat,
    /// Its middle.
    pub middle: Middle,
    /// What it is worth.
    pub worth: Worth,
}

/// The cells by weight and balance point.
#[derive(Clone, Debug)]
pub struct Grid<'a> {
    /// Dead weights, rising, kg.
    pub mass_kg: Vec<f64>,
    /// Balance points, rising, m from the top of the handle.
    pub balance_m: Vec<f64>,
    /// One row a balance point, along the dead weights; none where no bat can be made.
    pub cells: Vec<Option<&'a Cell>>,
}

impl<'a> Grid<'a> {
    /// Of a map's cells.
    pub fn of(cells: &'a [Cell]) -> Self {
        let near = |a: f64, b: f64| (a - b).abs() < 1e-6;
        let axis = |of: &dyn Fn(&Cell) -> f64| {
            let mut all: Vec<f64> = cells.iter().map(of).collect();
            all.sort_by(f64::total_cmp);
            all.dedup_by(|a, b| near(*a, *b));
            all
        };
        let mass_kg = axis(&|it| it.made.bat.mass_kg());
        let balance_m = axis(&|it| it.made.bat.balance_m());
        let at = |balance: f64, mass: f64| {
            let is_it = |it: &&Cell| {
                near(it.made.bat.mass_kg(), mass) && near(it.made.bat.balance_m(), balance)
            };
            cells.iter().find(is_it)
        };
        let row =
            |balance: &f64| mass_kg.iter().map(|mass| at(*balance, *mass)).collect::<Vec<_>>();
        let cells = balance_m.iter().flat_map(row).collect();
        Self { mass_kg, balance_m, cells }
    }
}

/// A size swung.
#[derive(Clone, Debug)]
pub struct OneSize {
    /// What can be made of it.
    pub range: Range,
    /// Its bats in the hands of every possible player.
    pub swings: SizeSwings,
    /// The map.
    pub cells: Vec<Cell>,
}

/// Margin of the box round the bats of the map, so that tolerances stay inside it.
const BOX_MARGIN: [f64; 2] = [0.02, 0.003];
/// Half the range of swing moments that is covered.
const SWING_SPREAD: f64 = 0.06;
/// Where the heaviest bats of a size are beyond the player's control, the lighter part of the range of
/// weights is searched, down to these shares of it.
const LIGHTER_SHARES: [f64; 3] = [1.0, 0.6, 0.35];

impl OneSize {
    /// Swings the bats of a size.
    pub(super) fn new(
        order: &Order<'_>,
        today: &Today,
        size: &Size,
        step: Step<'_>,
    ) -> Result<Self, FitFault> {
        let range = Range::new(size, order.limits, today.swings.ways.batter.handle_diameter_m);
        let whole = range.grid(order.laws);
        let mut swung = Err(FitFault::NothingToMake { size: size.name.clone() });
        for share in LIGHTER_SHARES {
            let grid = lighter_part(&whole, share);
            let Some(domain) = domain(&grid, &range.family, size)? else { break };
            match SizeSwings::new(&today.swings, domain, step) {
                Ok(swings) => {
                    swung = Ok((swings, grid));
                    break;
                }
                Err(fault) if fault.is_beyond_control() => swung = Err(fault.into()),
                Err(fault) => return Err(fault.into()),
            }
        }
        let (swings, grid) = swung?;
        let mut it = Self { range, swings, cells: Vec::new() };
        it.cells = grid.into_iter().map(|made| it.cell(today, made)).collect();
        Ok(it)
    }

    /// One bat of the size, judged.
    pub fn cell(&self, today: &Today, made: MadeBat) -> Cell {
        let from_toe_m = made.shape.swell_from_toe_m();
        let standard_m = self.range.size.reference.swell_from_toe_m();
        let middle = middle_of(from_toe_m, standard_m);
        let worth = self.worth(today, &made.bat);
        Cell { made, middle, worth }
    }

    /// What a bat of the size is worth.
    pub fn worth(&self, today: &Today, bat: &Bat) -> Worth {
        let coded = self.swings.domain.coded(bat);
        let figures = |stroke: usize, score: usize, it: &Possible| {
            self.swings.figures(&today.swings, coded, stroke, score, it)
        };
        let width_m = self.range.family.reference().blade.width_m();
        today.knowledge.worth(&Judged {
            struck: Struck::of(bat, width_m),
            bench: None,
            figures: &figures,
        })
    }

    /// Logarithms of time, bat speed, normal and toe speed of the likeliest player's stroke late in the innings.
    pub fn likely(&self, today: &Today, bat: &Bat, stroke: usize) -> [f64; FIGURES] {
        let coded = self.swings.domain.coded(bat);
        let plain =
            Possible { path: 0.0, rise: 0.0, law: 0.0, ..today.knowledge.likeliest.clone() };
        self.swings.figures(&today.swings, coded, stroke, Scores::END, &plain)
    }
}

/// The bats in the lighter share of the range of weights.
fn lighter_part(grid: &[MadeBat], share: f64) -> Vec<MadeBat> {
    let mass_kg = || grid.iter().map(|made| made.bat.mass_kg());
    let (low, high) = (mass_kg().fold(f64::INFINITY, f64::min), mass_kg().fold(0.0, f64::max));
    let limit_kg = low + share * (high - low);
    grid.iter().filter(|made| made.bat.mass_kg() <= limit_kg).cloned().collect()
}

fn domain(grid: &[MadeBat], family: &Family, size: &Size) -> Result<Option<Domain>, SizeFault> {
    let span = |f: &dyn Fn(&MadeBat) -> f64, margin: f64| {
        let low = grid.iter().map(f).fold(f64::INFINITY, f64::min);
        let high = grid.iter().map(f).fold(f64::NEG_INFINITY, f64::max);
        (high >= low).then_some([low - margin, high + margin])
    };
    let (Some(mass_kg), Some(balance_m)) =
        (span(&|m| m.bat.mass_kg(), BOX_MARGIN[0]), span(&|m| m.bat.balance_m(), BOX_MARGIN[1]))
    else {
        return Ok(None);
    };
    let middle = family.reference().bat(format!("a bat of size {}", size.name))?;
    let family = family.clone();
    Ok(Some(Domain { family, middle, mass_kg, balance_m, swing_spread: SWING_SPREAD }))
}
