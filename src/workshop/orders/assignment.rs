//! Which of the ones gets which of the others so that as many as can be are served, and these at the least cost in all.

use pathfinding::kuhn_munkres::kuhn_munkres;
use pathfinding::matrix::Matrix;

/// Steps of cost in a unit of it: the search counts in whole ones.
const STEPS_A_UNIT: f64 = 1e3;
/// A greater cost counts as this one: sums of so many of them are far from the end of the whole numbers.
const GREATEST: f64 = 1e6;

/// The column of each row, none of one that is left without; `costs` has a row for each that is to be served and in it
/// the cost of each column, none where the two may not come together. A cost is not below nought and counts to a
/// thousandth.
///
/// By Kuhn and Munkres, on the crate `pathfinding`: the same costs give the same answer every time.
pub fn assigned(costs: &[Vec<Option<f64>>]) -> Vec<Option<usize>> {
    let columns = costs.iter().map(Vec::len).max().unwrap_or(0);
    if costs.is_empty() || columns == 0 {
        return vec![None; costs.len()];
    }
    let whole = |it: f64| (STEPS_A_UNIT * it.clamp(0.0, GREATEST)).round() as i64;
    let at = |row: usize, column: usize| {
        costs.get(row).and_then(|it| it.get(column).copied()).flatten().map(whole)
    };
    let dearest = costs.iter().flatten().flatten().map(|it| whole(*it)).max().unwrap_or(0);
    // To serve one more is worth more than anything that it can cost the others.
    let served = (dearest + 1) * (costs.len() as i64 + 1);
    // A column a row besides, worth nothing: to be left without.
    let weights = Matrix::from_fn(costs.len(), columns + costs.len(), |(row, column)| {
        at(row, column).map_or(0, |cost| served - cost)
    });
    let (_, chosen) = kuhn_munkres(&weights);
    chosen.into_iter().enumerate().map(|(row, it)| at(row, it).map(|_| it)).collect()
}
