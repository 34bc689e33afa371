//! Limits for the bench whose every combination lies in the region: a box inside it.

use super::region::{MAY_LOSE, Region};
use crate::bat::pendulum::usual_swings_s;

/// Lowest and highest acceptable figures, all at once.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tolerances {
    /// Dead weight, kg.
    pub mass_kg: [f64; 2],
    /// Balance point from the top, m.
    pub balance_m: [f64; 2],
    /// Swing moment, kg m².
    pub swing_moment_kg_m2: [f64; 2],
}

/// Furthest each side goes: kg, m, share of the swing moment. Beyond it is another bat (assumption).
const WIDEST: [f64; 3] = [0.050, 0.012, 0.060];
/// Steps in which a side grows to there.
const STEPS: u32 = 48;
/// Places along each side at which a box is tried.
const TRIED: u32 = 4;
/// Share of what may be lost that a box may reach: the rest is for what lies between the places tried.
const KEPT: f64 = 0.97;

/// Shares of the swing moment's own freedom that are tried: what it does not take, weight and balance can.
const SHARES: [f64; 6] = [0.95, 0.8, 0.65, 0.5, 0.35, 0.2];
/// Swings of the bench, and the narrowest span of their time that it can tell, s.
const BENCH_SWINGS: u32 = 30;
const BENCH_SPAN_S: f64 = 0.20;

/// The roomiest box about the bat asked of which every combination stays in the region, and in which the pendulum's
/// time tells at any balance point that the swing moment is in it.
pub fn tolerances(region: &Region) -> Tolerances {
    let alone = grown(region, [[0; 2]; 3], &[2], &|_| true);
    let tried = SHARES.iter().map(|share| {
        let swing = alone[2].map(|n| libm::floor(share * f64::from(n)) as u32);
        let timed = |limits: &Tolerances| {
            let time = limits.times_at(region.mass_kg, BENCH_SWINGS);
            time.is_some_and(|it| it.high_s - it.low_s >= BENCH_SPAN_S)
        };
        let steps = grown(region, [[0; 2], [0; 2], swing], &[1, 0], &timed);
        limits(region, &steps)
    });
    let room = |it: &Tolerances| {
        let width = |[low, high]: [f64; 2]| high - low;
        let time = it.times_at(region.mass_kg, BENCH_SWINGS).map_or(0.0, |it| it.high_s - it.low_s);
        (width(it.mass_kg) + LEAST[0]) * (width(it.balance_m) + LEAST[1]) * (time + LEAST[2])
    };
    let roomiest = tried.max_by(|a, b| room(a).total_cmp(&room(b)));
    roomiest.unwrap_or_else(|| limits(region, &[[0; 2]; 3]))
}

/// Widths that count for nothing much, so that a box flat in one figure can still be told from another: kg, m, s.
const LEAST: [f64; 3] = [0.002, 0.0005, 0.02];

/// Sides grown in turn along these axes, as far as every combination holds and `also` does.
fn grown(
    region: &Region,
    from: [[u32; 2]; 3],
    axes: &[usize],
    also: &dyn Fn(&Tolerances) -> bool,
) -> [[u32; 2]; 3] {
    let mut steps = from;
    let mut grew = true;
    while grew {
        grew = false;
        for &axis in axes {
            for side in 0..2 {
                let mut more = steps;
                more[axis][side] += 1;
                let limits = limits(region, &more);
                if more[axis][side] <= STEPS && holds(region, &limits) && also(&limits) {
                    steps = more;
                    grew = true;
                }
            }
        }
    }
    steps
}

fn limits(region: &Region, steps: &[[u32; 2]; 3]) -> Tolerances {
    let target = [region.mass_kg, region.balance_m, region.swing_moment_kg_m2];
    let widest = [WIDEST[0], WIDEST[1], WIDEST[2] * target[2]];
    let [mass_kg, balance_m, swing_moment_kg_m2] = core::array::from_fn(|axis| {
        let by = |n: u32| widest[axis] * f64::from(n) / f64::from(STEPS);
        [target[axis] - by(steps[axis][0]), target[axis] + by(steps[axis][1])]
    });
    Tolerances { mass_kg, balance_m, swing_moment_kg_m2 }
}

/// Whether every combination of these limits lies in the region.
fn holds(region: &Region, limits: &Tolerances) -> bool {
    let places = |[low, high]: [f64; 2]| {
        (0..=TRIED).map(move |n| low + (high - low) * f64::from(n) / f64::from(TRIED))
    };
    places(limits.mass_kg).all(|mass_kg| {
        places(limits.balance_m).all(|balance_m| {
            places(limits.swing_moment_kg_m2).all(|swing| {
                region
                    .worth_lost_share(mass_kg, balance_m, swing)
                    .is_some_and(|it| it <= KEPT * MAY_LOSE)
            })
        })
    })
}

/// Seconds of the swings of the bench for one weight on the scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TimeForMass {
    /// Weight, kg.
    pub mass_kg: f64,
    /// Shortest time of all swings together, s.
    pub low_s: f64,
    /// Longest, s.
    pub high_s: f64,
}

/// Rows of the table of times.
const ROWS: u32 = 5;

impl Tolerances {
    /// Times of so many swings by weight: any of them, at any balance point within its limits, is a swing moment
    /// within its limits. A weight at which no time is sure is left out.
    pub fn times(&self, swings: u32) -> Vec<TimeForMass> {
        let [low_kg, high_kg] = self.mass_kg;
        (0..ROWS)
            .map(|n| low_kg + (high_kg - low_kg) * f64::from(n) / f64::from(ROWS - 1))
            .filter_map(|mass_kg| self.times_at(mass_kg, swings))
            .collect()
    }

    /// The same at one weight.
    pub fn times_at(&self, mass_kg: f64, swings: u32) -> Option<TimeForMass> {
        let [low, high] = self.swing_moment_kg_m2;
        let time_s = |balance_m: f64, swing: f64| usual_swings_s(mass_kg, balance_m, swing, swings);
        // A balance point nearer the hands swings slower at the same swing moment.
        let low_s = self.balance_m.iter().filter_map(|b| time_s(*b, low)).fold(0.0, f64::max);
        let high_s =
            self.balance_m.iter().filter_map(|b| time_s(*b, high)).fold(f64::INFINITY, f64::min);
        (low_s > 0.0 && high_s.is_finite() && high_s > low_s).then_some(TimeForMass {
            mass_kg,
            low_s,
            high_s,
        })
    }
}
