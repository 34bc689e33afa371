//! How much of the year a bat that swings between two airs stays within limits.

use std::f64::consts::PI;

/// Share of the year in which every figure lies within its limits, when the air swings like a sine from one
/// end to the other and back once a year and the bat follows at once. Each item: the figure at either end,
/// and its limits.
///
/// Assumption: real air is not a sine, and a blade lags its air by weeks; both round the ends off, so that
/// the true share is nearer that of the middle.
pub fn share_within(figures: &[([f64; 2], [f64; 2])]) -> f64 {
    let mut within: [f64; 2] = [0.0, 1.0];
    for &([start, end], [low, high]) in figures {
        let way = end - start;
        let [first, last] = if way == 0.0 {
            if (low..=high).contains(&start) { [0.0, 1.0] } else { [1.0, 0.0] }
        } else {
            let (a, b) = ((low - start) / way, (high - start) / way);
            [a.min(b), a.max(b)]
        };
        within = [within[0].max(first), within[1].min(last)];
    }
    let [from, to] = within;
    if from > to {
        return 0.0;
    }
    // The share of the way is (1 − cos φ)/2 at the time φ/π of the half year.
    let time = |way: f64| libm::acos(1.0 - 2.0 * way.clamp(0.0, 1.0)) / PI;
    time(to) - time(from)
}
