//! Two or more weighed bats in one player's hands: every figure with its doubt, every difference.

use super::carried::{COMMON_COUNT, Carried, Common};
use super::collision::RESTITUTION;
use super::difference::Difference;
use super::figure::{Figure, StrokeFigure};
use super::noticeable::{Felt, felt};
use super::player_doubt::PlayerDoubt;
use super::swung::{Asked, Spot, Swung};
use crate::bat::figures::WeighedBat;
use crate::bat::{Bat, BatFault};
use crate::innings::played::{FIFTY, InningsFault, LATE_SHARE, left_at};
use crate::player::grip::FRICTION;
use crate::player::joints::FRESH;
use crate::swing::batter::Batter;
use crate::swing::player_stroke::SwingFault;
use crate::swing::time_in_hand::MEAN_SPEED_SHARE;
use core::ops::ControlFlow;
use core::sync::atomic::{AtomicUsize, Ordering};
use rayon::prelude::*;

/// One bat with its figures.
#[derive(Clone, Debug, PartialEq)]
pub struct ComparedBat {
    /// Label.
    pub label: String,
    /// Every figure with what moves it, in the order of [`Comparison::figures`].
    pub carried: Vec<Carried>,
    /// Covariance of its mass, balance point and swing moment at the bench (kg, m, kg m²).
    pub covariance: [[f64; 3]; 3],
}

impl ComparedBat {
    /// Best value and one standard deviation of the figure at this index.
    pub fn value_sd(&self, figure: usize) -> (f64, f64) {
        let carried = &self.carried[figure];
        (carried.value, carried.sd(&self.covariance))
    }
}

/// The second bat's figure less the first's.
#[derive(Clone, Debug, PartialEq)]
pub struct BatDifference {
    /// Figure.
    pub figure: Figure,
    /// Indices of the first and the second bat.
    pub bats: [usize; 2],
    /// Value, doubt, and whether it is real.
    pub difference: Difference,
    /// Whether a hand can feel it; none where nobody has published a threshold.
    pub felt: Option<Felt>,
}

/// All bats and all differences.
#[derive(Clone, Debug, PartialEq)]
pub struct Comparison {
    /// What is compared.
    pub figures: Vec<Figure>,
    /// Bats, in the order given.
    pub bats: Vec<ComparedBat>,
    /// For every pair and every figure, pair by pair. The pickup weight only within one size: the
    /// reference bat is another in each.
    pub differences: Vec<BatDifference>,
}

/// Why bats could not be compared.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ComparisonFault {
    /// Nothing to compare.
    #[error("a comparison needs two bats or more; there is {count}")]
    TooFew {
        /// How many there are.
        count: usize,
    },
    /// A bat moved by its doubt is no bat.
    #[error(transparent)]
    Bat(#[from] BatFault),
    /// A swing or an innings failed.
    #[error(transparent)]
    Innings(#[from] InningsFault),
    /// Asked to stop.
    #[error("stopped")]
    Stopped,
}

impl From<SwingFault> for ComparisonFault {
    fn from(fault: SwingFault) -> Self {
        Self::Innings(fault.into())
    }
}

/// Progress: what is being done, and the share of the whole that is done.
pub type Progress<'a> = &'a (dyn Fn(&'static str, f64) -> ControlFlow<()> + Sync);

/// Compares the bats.
pub fn compare(
    asked: &Asked<'_>,
    bats: &[WeighedBat],
    progress: Progress<'_>,
) -> Result<Comparison, ComparisonFault> {
    if bats.len() < 2 {
        return Err(ComparisonFault::TooFew { count: bats.len() });
    }
    let figures = Figure::all(asked.batter.strokes.len());
    let doubts = PlayerDoubt::all(asked.batter);
    let (done, all) = (AtomicUsize::new(0), bats.len() * (1 + MOVES.len() + 2 * doubts.len()));
    let step = || {
        let share = done.fetch_add(1, Ordering::Relaxed) as f64 / all as f64;
        match progress("swinging the bats, and what is in doubt about them", share).is_break() {
            true => Err(ComparisonFault::Stopped),
            false => Ok(()),
        }
    };
    let compared: Vec<ComparedBat> = bats
        .par_iter()
        .map(|bat| one(asked, &doubts, bat, &figures, &step))
        .collect::<Result<_, ComparisonFault>>()?;
    let differences = differences(&figures, bats, &compared);
    Ok(Comparison { figures, bats: compared, differences })
}

/// Steps of mass (kg), balance point (m) and swing moment (kg m²) for the slopes: a few times what a
/// bench can tell, so that the swings' last digits (0.02 %) do not matter.
const MOVES: [[f64; 3]; 3] = [[0.03, 0.0, 0.0], [0.0, 0.01, 0.0], [0.0, 0.0, 0.008]];
/// One standard deviation of the ball's mean speed from hand to bat as a share of it: 0.80 to 0.95 with
/// length and pitch, each as likely.
pub const FLIGHT_RELATIVE_SD: f64 = 0.15 / 3.464 / MEAN_SPEED_SHARE;

fn one(
    asked: &Asked<'_>,
    doubts: &[PlayerDoubt],
    weighed: &WeighedBat,
    figures: &[Figure],
    step: &(dyn Fn() -> Result<(), ComparisonFault> + Sync),
) -> Result<ComparedBat, ComparisonFault> {
    step()?;
    let swing_moment = weighed.swing_moment_kg_m2.value;
    let middle = [weighed.mass_kg.value, weighed.balance_m.value, swing_moment];
    let bat = weighed.with(middle[0], middle[1], middle[2])?;
    // The pickup weight over the swing moment of the reference bat of its size, 1/m².
    let pickup_per_swing_m2 = weighed.pickup_weight_kg.value / swing_moment;
    let values = |asked: &Asked<'_>, swung: &[[Swung; 2]], bat: &Bat, restitution: f64| {
        let of = |figure: &Figure| match *figure {
            Figure::DeadWeight => bat.mass_kg(),
            Figure::Balance => bat.balance_m(),
            Figure::SwingMoment => bat.swing_moment_kg_m2(),
            Figure::HoldMoment => bat.hold_moment_n_m(),
            Figure::PickupWeight => pickup_per_swing_m2 * bat.swing_moment_kg_m2(),
            Figure::Stroke(i, when, figure) => {
                asked.figure(figure, i, &swung[i][when as usize], bat, restitution)
            }
            Figure::Drop(i) => 1.0 - swung[i][1].bat_speed_m_s / swung[i][0].bat_speed_m_s,
        };
        figures.iter().map(of).collect::<Vec<f64>>()
    };

    let taken_up = asked.batter.take_up(&bat)?;
    let left = left_at(asked.batter, &taken_up, asked.plan, asked.asked_time_s, FIFTY)?;
    let capacities = [FRESH, left.with_slow, left.with_slow_low, left.with_slow_high];
    let spots: Vec<[Spot; 4]> = (0..taken_up.len())
        .into_par_iter()
        .map(|i| {
            let fresh = asked.spot(&taken_up, i, &capacities[0], None)?;
            let late = |capacity| {
                asked.spot(&taken_up, i, capacity, Some(LATE_SHARE * fresh.swung.time_s))
            };
            let [_, central, low, high] = &capacities;
            Ok([fresh, late(central)?, late(low)?, late(high)?])
        })
        .collect::<Result<_, InningsFault>>()?;
    let fresh_with = |late: usize| -> Vec<[Swung; 2]> {
        spots.iter().map(|it| [it[0].swung, it[late].swung]).collect()
    };
    let pairs: Vec<[Spot; 2]> = spots.iter().map(|it| [it[0], it[1]]).collect();
    let swung = fresh_with(1);
    let best = values(asked, &swung, &bat, RESTITUTION.value);
    let slopes = |moved: &[f64], per: f64| -> Vec<f64> {
        moved.iter().zip(&best).map(|(it, best)| (it - best) * per).collect()
    };

    let by_bat: Vec<Vec<f64>> = MOVES
        .par_iter()
        .map(|by| {
            step()?;
            let [mass, balance, swing] = core::array::from_fn(|i| middle[i] + by[i]);
            let bat = weighed.with(mass, balance, swing)?;
            let swung = asked.near(asked.batter, &bat, &pairs)?;
            let by: f64 = by.iter().sum();
            Ok(slopes(&values(asked, &swung, &bat, RESTITUTION.value), 1.0 / by))
        })
        .collect::<Result<_, ComparisonFault>>()?;
    let by_player: Vec<[Vec<f64>; 2]> = doubts
        .par_iter()
        .map(|doubt| {
            let moved = |batter: &Batter| -> Result<Vec<f64>, ComparisonFault> {
                step()?;
                let swung = asked.near(batter, &bat, &pairs)?;
                Ok(slopes(&values(asked, &swung, &bat, RESTITUTION.value), 1.0))
            };
            let [weaker, stronger] = &doubt.batters;
            Ok([moved(weaker)?, moved(stronger)?])
        })
        .collect::<Result<_, ComparisonFault>>()?;
    let livelier = values(asked, &swung, &bat, RESTITUTION.value + RESTITUTION.sd);
    let by_restitution = slopes(&livelier, 1.0);
    let mut quicker = asked.delivery;
    quicker.pitch_length_m -=
        FLIGHT_RELATIVE_SD * quicker.flight_s() * MEAN_SPEED_SHARE * quicker.speed_m_s;
    let by_flight = slopes(
        &values(&Asked { delivery: quicker, ..*asked }, &swung, &bat, RESTITUTION.value),
        1.0,
    );
    let by_fatigue =
        [2, 3].map(|late| slopes(&values(asked, &fresh_with(late), &bat, RESTITUTION.value), 1.0));

    // Grip needed over grip there is goes with one over grip and friction.
    let by_hold = |f: usize, relative_sd: f64| match figures[f] {
        Figure::Stroke(_, _, StrokeFigure::GripShare) => {
            [-relative_sd, relative_sd].map(|off| best[f] * (1.0 / (1.0 + off) - 1.0))
        }
        _ => [0.0; 2],
    };

    let carried = |f: usize| {
        let mut by_common = [[0.0; 2]; COMMON_COUNT];
        for (doubt, moved) in doubts.iter().zip(&by_player) {
            by_common[doubt.common as usize] = [moved[0][f], moved[1][f]];
        }
        by_common[Common::Restitution as usize] = [by_restitution[f], -by_restitution[f]];
        by_common[Common::Flight as usize] = [by_flight[f], -by_flight[f]];
        let grip_sd = asked.batter.player.grip_relative_sd();
        by_common[Common::Grip as usize] = by_hold(f, grip_sd);
        by_common[Common::Friction as usize] = by_hold(f, FRICTION.relative_sd());
        Carried {
            value: best[f],
            by_bat: core::array::from_fn(|axis| by_bat[axis][f]),
            by_common,
            by_fatigue: core::array::from_fn(|end| by_fatigue[end][f]),
        }
    };
    Ok(ComparedBat {
        label: weighed.reading.label.clone(),
        carried: (0..figures.len()).map(carried).collect(),
        covariance: weighed.covariance(),
    })
}

fn differences(
    figures: &[Figure],
    weighed: &[WeighedBat],
    bats: &[ComparedBat],
) -> Vec<BatDifference> {
    let mut out = Vec::new();
    for (i, first) in bats.iter().enumerate() {
        for (j, second) in bats.iter().enumerate().skip(i + 1) {
            for (f, &figure) in figures.iter().enumerate() {
                if figure == Figure::PickupWeight && weighed[i].size != weighed[j].size {
                    continue;
                }
                let (a, b) = (&first.carried[f], &second.carried[f]);
                let difference = a.to(&first.covariance, b, &second.covariance);
                let thresholds = figure.thresholds();
                let felt = (!thresholds.is_empty())
                    .then(|| felt(difference.value, 0.5 * (a.value + b.value), thresholds));
                out.push(BatDifference { figure, bats: [i, j], difference, felt });
            }
        }
    }
    out
}
