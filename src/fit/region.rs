//! Which bats are as good as the one asked: one region of weight, balance point and swing moment together.

use super::map::OneSize;
use crate::bat::Bat;
use crate::bat::expected::bat_with_swing_moment;
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::worth::constants::NEAR_BEST;
use crate::worth::today::Today;
use nalgebra::{DMatrix, DVector};

/// Coefficients of the loss: three slopes, squares and products 11, 22, 33, 12, 13, 23, then the cubes of weight and
/// balance 111, 112, 122, 222.
pub const COEFFICIENTS: usize = 13;

/// Share of its worth that another bat loses against the one asked, as a polynomial in three variables: the logarithm
/// of the weight, the balance point, and the logarithm of the swing moment over that of a bat of this weight and
/// balance with the standard bat's spread of mass. Below nought it gains.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Region {
    /// Weight asked, kg.
    pub mass_kg: f64,
    /// Balance point asked, m from the top of the handle.
    pub balance_m: f64,
    /// Swing moment asked, kg m².
    pub swing_moment_kg_m2: f64,
    /// Square of the standard bat's radius of gyration about its balance point, m².
    pub gyration2_m2: f64,
    /// The loss, each variable over its unit of [`UNITS`].
    pub loss: [f64; COEFFICIENTS],
}

/// Units of the three variables: 5 % of weight, 10 mm, 3 % of swing moment.
pub const UNITS: [f64; 3] = [0.05, 0.010, 0.03];
/// How far the polynomial is believed, in those units: beyond it is another bat, whatever the figures say.
pub const BELIEVED: [f64; 3] = [2.4, 2.0, 3.0];
/// Share of the worth asked that a bat of the region may lose.
pub const MAY_LOSE: f64 = NEAR_BEST.value;

fn products([a, b, c]: [f64; 3]) -> [f64; COEFFICIENTS] {
    let squares = [a * a, b * b, c * c, a * b, a * c, b * c];
    let cubes = [a * a * a, a * a * b, a * b * b, b * b * b];
    let mut out = [0.0; COEFFICIENTS];
    let all = [a, b, c].into_iter().chain(squares).chain(cubes);
    for (place, product) in out.iter_mut().zip(all) {
        *place = product;
    }
    out
}

impl Region {
    /// Swing moment of a bat of this weight and balance whose mass is spread as the standard bat's is.
    fn plain_kg_m2(&self, mass_kg: f64, balance_m: f64) -> f64 {
        let lever_m = balance_m - PICKUP_AXIS_FROM_TOP_M;
        mass_kg * (self.gyration2_m2 + lever_m * lever_m)
    }

    fn variables(&self, mass_kg: f64, balance_m: f64, swing_moment_kg_m2: f64) -> [f64; 3] {
        let spread = |m, b, i| libm::log(i / self.plain_kg_m2(m, b));
        let asked = spread(self.mass_kg, self.balance_m, self.swing_moment_kg_m2);
        [
            libm::log(mass_kg / self.mass_kg) / UNITS[0],
            (balance_m - self.balance_m) / UNITS[1],
            (spread(mass_kg, balance_m, swing_moment_kg_m2) - asked) / UNITS[2],
        ]
    }

    /// Share of the worth that a bat loses; none where it is another bat altogether.
    pub fn worth_lost_share(
        &self,
        mass_kg: f64,
        balance_m: f64,
        swing_moment_kg_m2: f64,
    ) -> Option<f64> {
        let x = self.variables(mass_kg, balance_m, swing_moment_kg_m2);
        let believed = x.iter().zip(BELIEVED).all(|(x, most)| x.abs() <= most);
        believed.then(|| products(x).iter().zip(&self.loss).map(|(x, c)| x * c).sum())
    }

    /// Whether a bat is as good as the one asked.
    pub fn takes(&self, mass_kg: f64, balance_m: f64, swing_moment_kg_m2: f64) -> bool {
        self.worth_lost_share(mass_kg, balance_m, swing_moment_kg_m2)
            .is_some_and(|it| it <= MAY_LOSE)
    }
}

/// Steps of each variable either side at which the worth is asked, in its unit.
const ASKED_AT: [[f64; 5]; 3] =
    [[-2.0, -1.0, 0.0, 1.0, 2.0], [-1.6, -0.8, 0.0, 0.8, 1.6], [-1.8, -0.9, 0.0, 0.9, 1.8]];

/// The region about a bat of a size; none where too few bats near it can be judged.
pub(super) fn region(today: &Today, one: &OneSize, asked: &Bat) -> Option<Region> {
    let standard = &one.swings.domain.middle;
    let mut it = Region {
        mass_kg: asked.mass_kg(),
        balance_m: asked.balance_m(),
        swing_moment_kg_m2: asked.swing_moment_kg_m2(),
        gyration2_m2: standard.I_Com_B().y_axis.y / standard.mass_kg(),
        loss: [0.0; COEFFICIENTS],
    };
    let own_spread = it.swing_moment_kg_m2 / it.plain_kg_m2(it.mass_kg, it.balance_m);
    let own = one.worth(today, asked).mean_m_s();
    let mut points = Vec::new();
    for a in ASKED_AT[0] {
        for b in ASKED_AT[1] {
            for c in ASKED_AT[2] {
                let mass_kg = it.mass_kg * libm::exp(a * UNITS[0]);
                let balance_m = it.balance_m + b * UNITS[1];
                let spread = own_spread * libm::exp(c * UNITS[2]);
                let swing = it.plain_kg_m2(mass_kg, balance_m) * spread;
                let family = &one.swings.domain.family;
                let bat = bat_with_swing_moment(family, asked.label(), mass_kg, balance_m, swing);
                if let Ok(bat) = bat {
                    let loss = 1.0 - one.worth(today, &bat).mean_m_s() / own;
                    points.push(([a, b, c], loss));
                }
            }
        }
    }
    let rows = DMatrix::from_fn(points.len(), COEFFICIENTS, |i, j| products(points[i].0)[j]);
    let factor = (rows.transpose() * &rows).cholesky()?;
    let losses = DVector::from_iterator(points.len(), points.iter().map(|(_, loss)| *loss));
    it.loss.copy_from_slice(factor.solve(&(rows.transpose() * losses)).as_slice());
    Some(it)
}
