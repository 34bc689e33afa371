//! The bench as it is: a bat hung on thin rods that roll and give way, air, and a hand on the watch.
//!
//! Two coordinates, the place of the rods u and the angle θ of the bat from the vertical. A rod of radius
//! r rolls as the bat turns, so its centre stands at `u − rθ`; the support is a spring with a damper;
//! the bat loses amplitude to air and friction. Large angles, classical Runge–Kutta.

use crate::frames::STANDARD_GRAVITY_M_S2;

/// A bat hung up.
pub(super) struct Hung {
    pub mass_kg: f64,
    /// From the centre of the rod to the balance point, m.
    pub rod_to_com_m: f64,
    /// About the balance point, transverse, kg m².
    pub com_moment_kg_m2: f64,
    /// Radius that rolls: the rod's where it rolls freely, nought where it lies in a notch, m.
    pub rolling_radius_m: f64,
    /// Of both supports together, sideways, N/m.
    pub stiffness_n_m: f64,
    /// Logarithm of the amplitude lost with each swing.
    pub decrement: f64,
}

/// Damping of the support, as a share of the critical: assumption.
const SUPPORT_DAMPING: f64 = 0.1;
/// Longest step, s, and how far the support's own swing may go in one, rad: well inside what the
/// integrator carries (2.8 rad); at half of both no time changes by 1e-5.
const LONGEST_STEP_S: f64 = 6e-3;
const SUPPORT_STEP_RAD: f64 = 0.8;

/// Place and speed of the support, angle and its rate.
type State = [f64; 4];

impl Hung {
    /// Period of small swings without give, roll and loss, s: for scale only.
    fn plain_period_s(&self) -> f64 {
        let d = self.rod_to_com_m;
        let ratio = (self.com_moment_kg_m2 / self.mass_kg + d * d) / (STANDARD_GRAVITY_M_S2 * d);
        std::f64::consts::TAU * libm::sqrt(ratio)
    }

    /// Swings from a half-swing of `release_rad` and gives the time from the first turn after the
    /// release until `swings` swings later, s.
    pub(super) fn time_for_s(&self, swings: u32, release_rad: f64) -> Option<f64> {
        let period_s = self.plain_period_s();
        let longest_s = 1.2 * period_s * f64::from(swings + 2);
        let model = Model::new(self, period_s);
        let mut state: State = [0.0, 0.0, release_rad, 0.0];
        let (mut t, mut turns, mut first_s) = (0.0, 0u32, 0.0);
        while t < longest_s {
            let next = model.step(state);
            // A turn at the side where it was let go: the rate passes nought from above.
            if state[3] > 0.0 && next[3] <= 0.0 {
                let at = t + model.step_s * state[3] / (state[3] - next[3]);
                if turns == 0 {
                    first_s = at;
                } else if turns == swings {
                    return Some(at - first_s);
                }
                turns += 1;
            }
            (state, t) = (next, t + model.step_s);
        }
        None
    }
}

struct Model<'a> {
    hung: &'a Hung,
    support_damper: f64,
    damper: f64,
    step_s: f64,
}

impl<'a> Model<'a> {
    fn new(hung: &'a Hung, period_s: f64) -> Self {
        let (m, d, i) = (hung.mass_kg, hung.rod_to_com_m, hung.com_moment_kg_m2);
        let about_rod = i + m * d * d;
        // What the support feels of a bat that is free to turn.
        let felt_kg = m * i / about_rod;
        let support_rad_s = libm::sqrt(hung.stiffness_n_m / felt_kg);
        Self {
            hung,
            support_damper: 2.0 * SUPPORT_DAMPING * libm::sqrt(hung.stiffness_n_m * felt_kg),
            damper: 2.0 * about_rod * hung.decrement / period_s,
            step_s: LONGEST_STEP_S.min(SUPPORT_STEP_RAD / support_rad_s),
        }
    }

    fn rate(&self, [u, u1, angle, angle1]: State) -> State {
        let it = self.hung;
        let (m, d, i) = (it.mass_kg, it.rod_to_com_m, it.com_moment_kg_m2);
        let (r, k) = (it.rolling_radius_m, it.stiffness_n_m);
        let (sin, cos) = libm::sincos(angle);
        let cross = m * (d * cos - r);
        let turn = i + m * (d * d - 2.0 * d * r * cos + r * r);
        let f = m * d * sin * angle1 * angle1 - k * u - self.support_damper * u1;
        let g = -m * d * sin * (STANDARD_GRAVITY_M_S2 + r * angle1 * angle1) - self.damper * angle1;
        let det = m * turn - cross * cross;
        [u1, (turn * f - cross * g) / det, angle1, (m * g - cross * f) / det]
    }

    fn step(&self, y: State) -> State {
        let h = self.step_s;
        let along = |k: State, h: f64| -> State { std::array::from_fn(|n| y[n] + h * k[n]) };
        let k1 = self.rate(y);
        let k2 = self.rate(along(k1, 0.5 * h));
        let k3 = self.rate(along(k2, 0.5 * h));
        let k4 = self.rate(along(k3, h));
        std::array::from_fn(|n| y[n] + h / 6.0 * (k1[n] + 2.0 * (k2[n] + k3[n]) + k4[n]))
    }
}
