//! What would settle the choice: how likely knowing one thing would name another bat.
//!
//! By the expected difference of two bats' worth given that thing, a quadratic through all possible players; where
//! it favours another by more than half a per cent of the worth, knowing would have named that one. Regression in
//! place of nested draws: Strong, Oakley and Brennan 2014, Med Decis Making 34:311 (from memory, medium).

use crate::worth::constants::NEAR_BEST;
use crate::worth::expected::{Knowledge, Worth};
use crate::worth::possible::Possible;
use nalgebra::{DMatrix, DVector};

/// One thing that is not known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WouldSettle {
    /// What, as a coach would do it.
    pub what: &'static str,
    /// Chance that knowing it exactly would name another bat.
    pub chance: f64,
}

type Coordinates = fn(&Possible) -> Vec<f64>;

/// What can be found out, and what of a possible player it would tell.
const THINGS: [(&str, Coordinates); 7] = [
    ("swings read in the nets", |it| {
        let [a, b, c] = it.strength.ln_strength;
        vec![a, b, c, it.strength.lasting]
    }),
    ("seeing how often the short ball is met in time", |it| vec![it.margin_sd]),
    ("how the bowling and the start of the stroke scatter", |it| {
        vec![it.bowler, it.pitch, it.own_start_s]
    }),
    ("where on the blade this player meets the ball", |it| {
        vec![it.torque_noise, it.timing_s, it.judged_place_m]
    }),
    ("what a late ball is worth to this player", |it| vec![it.late_ball]),
    ("weighing, balancing and timing the bats again", |it| {
        it.bench.iter().flatten().copied().collect()
    }),
    ("the player's own path and how quickly the muscles build force", |it| {
        vec![it.path, it.rise, it.law]
    }),
];

/// Each thing with its chance, the likeliest first; `chosen` against each of the `others`.
pub fn would_settle(knowledge: &Knowledge, chosen: &Worth, others: &[&Worth]) -> Vec<WouldSettle> {
    let mut out: Vec<WouldSettle> = THINGS
        .iter()
        .map(|(what, coordinates)| WouldSettle {
            what,
            chance: chance(&knowledge.draws, *coordinates, chosen, others),
        })
        .collect();
    out.sort_by(|a, b| b.chance.total_cmp(&a.chance));
    out
}

fn chance(draws: &[Possible], coordinates: Coordinates, chosen: &Worth, others: &[&Worth]) -> f64 {
    let rows: Vec<Vec<f64>> = draws.iter().map(|it| terms(&coordinates(it))).collect();
    let count = rows.first().map_or(0, Vec::len);
    if count < 2 || draws.len() < 4 * count {
        return 0.0;
    }
    let a = DMatrix::from_fn(rows.len(), count, |i, j| rows[i][j]);
    // A thing that is known already leaves a column without width.
    let normal = a.transpose() * &a + DMatrix::identity(count, count) * 1e-9;
    let Some(factor) = normal.cholesky() else { return 0.0 };
    let expected: Vec<DVector<f64>> = others
        .iter()
        .map(|other| {
            let by = other.by_draw.iter().zip(&chosen.by_draw).map(|(o, c)| o - c);
            let by = DVector::from_iterator(draws.len(), by);
            &a * factor.solve(&(a.transpose() * by))
        })
        .collect();
    // A bat that is better by next to nothing is no other advice.
    let worth_naming = NEAR_BEST.value * chosen.mean_m_s();
    let named = |d: &usize| expected.iter().any(|it| it[*d] > worth_naming);
    let named = (0..draws.len()).filter(named).count();
    named as f64 / draws.len() as f64
}

/// Constant, each coordinate and its square.
fn terms(coordinates: &[f64]) -> Vec<f64> {
    let squares = coordinates.iter().map(|it| it * it);
    core::iter::once(1.0).chain(coordinates.iter().copied()).chain(squares).collect()
}
