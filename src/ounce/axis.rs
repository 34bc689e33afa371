//! The effective axis that a stroke's cost fits: as if the bat were swung about it.

/// An axis, and how well the cost fits it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CostAxis {
    /// Where it lies above (beyond) the top of the handle, m; negative on the bat.
    pub above_top_m: f64,
    /// Change of speed for a mass m at the distance r from the axis is `per_square m r²`, m/s for a kg m².
    pub per_square_m_s_per_kg_m2: f64,
    /// What the axis does not explain: root mean square of what it leaves, over that of the cost itself,
    /// evenly along the bat. 0 fits wholly.
    pub residual_share: f64,
}

/// How far beyond the top of the handle and down the bat an axis is looked for, m: a man's span and a
/// bat's length. A cost that is the same everywhere along the bat ends at the far limit, and says so by its
/// residual.
const ABOVE_M: [f64; 2] = [-0.9, 3.0];
/// Steps of the first look.
const STEPS: u32 = 390;

impl CostAxis {
    /// The best fit of `c (x + h)²` to costs at stations x, m from the top of the handle, by least squares:
    /// for each h the best c is `Σ q s² / Σ s⁴` with `s = x + h`.
    pub fn of(costs: &[(f64, f64)]) -> Self {
        let at = |above_top_m: f64| {
            let square = |x: f64| (x + above_top_m) * (x + above_top_m);
            let (top, below) = costs.iter().fold((0.0, 0.0), |(top, below), (x, cost)| {
                let s = square(*x);
                (top + cost * s, below + s * s)
            });
            let per = if below > 0.0 { top / below } else { 0.0 };
            let sum = |of: &dyn Fn(f64, f64) -> f64| -> f64 {
                costs.iter().map(|(x, cost)| of(*x, *cost)).map(|it| it * it).sum()
            };
            let (left, whole) = (sum(&|x, cost| cost - per * square(x)), sum(&|_, cost| cost));
            Self {
                above_top_m,
                per_square_m_s_per_kg_m2: per,
                residual_share: if whole > 0.0 { libm::sqrt(left / whole) } else { 0.0 },
            }
        };
        let [low, high] = ABOVE_M;
        let step = (high - low) / f64::from(STEPS);
        let least = |a: Self, b: Self| if b.residual_share < a.residual_share { b } else { a };
        let coarse = (0..=STEPS).map(|n| at(low + f64::from(n) * step));
        let near = coarse.reduce(least).unwrap_or_else(|| at(0.0));
        // Golden section between the neighbours of the best step.
        let (mut a, mut b) = (near.above_top_m - step, near.above_top_m + step);
        while b - a > 1e-7 {
            let inner = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
            let [left, right] = inner.map(|it| at(it).residual_share);
            if left < right { b = inner[1] } else { a = inner[0] }
        }
        least(near, at((0.5 * (a + b)).clamp(low, high)))
    }
}

/// (√5 − 1)/2.
const GOLDEN: f64 = 0.618_033_988_749_894_9;
