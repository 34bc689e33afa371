//! The box of bats of one size, in coded variables.
//!
//! Logarithm of the mass, balance point, and logarithm of the swing moment over that of a bat with the standard bat's
//! spread of mass, each within ±1 inside the box.

use crate::bat::expected::bat_with_swing_moment;
use crate::bat::family::Family;
use crate::bat::{Bat, BatFault};
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;

/// Variables of a bat.
pub const VARIABLES: usize = 3;

/// The box.
#[derive(Clone, Debug, PartialEq)]
pub struct Domain {
    /// Family whose bats these are.
    pub family: Family,
    /// Its standard bat.
    pub middle: Bat,
    /// Lowest and highest mass, kg.
    pub mass_kg: [f64; 2],
    /// Nearest and furthest balance point from the top, m.
    pub balance_m: [f64; 2],
    /// Half the range of the logarithm of the swing moment about the plain one.
    pub swing_spread: f64,
}

impl Domain {
    /// Swing moment of a bat whose mass is spread about its balance point as the middle bat's is.
    fn plain_swing_moment(&self, mass_kg: f64, balance_m: f64) -> f64 {
        let gyration2 = self.middle.I_Com_B().y_axis.y / self.middle.mass_kg();
        let d = balance_m - PICKUP_AXIS_FROM_TOP_M;
        mass_kg * (gyration2 + d * d)
    }

    /// Coded variables of a bat.
    pub fn coded(&self, bat: &Bat) -> [f64; VARIABLES] {
        let [m0, m1] = self.mass_kg.map(libm::log);
        let [b0, b1] = self.balance_m;
        let (mass_kg, balance_m) = (bat.mass_kg(), bat.balance_m());
        let plain = self.plain_swing_moment(mass_kg, balance_m);
        [
            (2.0 * libm::log(mass_kg) - m0 - m1) / (m1 - m0),
            (2.0 * balance_m - b0 - b1) / (b1 - b0),
            libm::log(bat.swing_moment_kg_m2() / plain) / self.swing_spread,
        ]
    }

    /// The bat of this weight and balance point whose mass is spread as the standard bat's is.
    pub fn plain_bat(&self, mass_kg: f64, balance_m: f64) -> Result<Bat, BatFault> {
        let swing = self.plain_swing_moment(mass_kg, balance_m);
        bat_with_swing_moment(&self.family, self.middle.label(), mass_kg, balance_m, swing)
    }

    /// Whether a bat lies inside the box, its rim included.
    pub fn holds(&self, bat: &Bat) -> bool {
        self.coded(bat).iter().all(|it| it.abs() <= 1.0 + 1e-9)
    }

    /// A bat at coded variables.
    pub fn bat(&self, x: [f64; VARIABLES]) -> Result<Bat, BatFault> {
        let [m0, m1] = self.mass_kg.map(libm::log);
        let [b0, b1] = self.balance_m;
        let mass_kg = libm::exp(0.5 * (m0 + m1 + x[0] * (m1 - m0)));
        let balance_m = 0.5 * (b0 + b1 + x[1] * (b1 - b0));
        let swing =
            self.plain_swing_moment(mass_kg, balance_m) * libm::exp(x[2] * self.swing_spread);
        bat_with_swing_moment(&self.family, self.middle.label(), mass_kg, balance_m, swing)
    }
}
