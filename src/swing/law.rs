//! The law: how the player follows the plan. The wanted accelerations of the bat, and of the joints as a
//! lesser wish, met as nearly as limited torques allow, all joints at once.
//!
//! What is wanted of each stands in [`wishes`](super::wishes). The objective, over the joint torques and the bottom
//! hand's couple τ, with the weights of [`Control`]:
//!
//! ```text
//! min  |bat point|² + 0.35² |bat turn|² + 0.06² |joints|² + |τ / capacity|²  −  0.1 Σ ln((hi − τ)(τ − lo))
//! ```
//!
//! `lo` and `hi` are what torques can reach within the preview: activation moves with 30 ms, capacity is isometric
//! strength × Hill factor × what fatigue leaves of the group. The box is over a fixed preview, not over a step, or the
//! law would not converge as the step shrinks. Joints clamped one by one will not do: a spent wrist breaks the balance
//! of the loop and the face rolls, by up to 56°.

use super::activation::Available;
use super::barrier;
use super::bottom_grip;
use super::chain::Chain;
use super::control::Control;
use super::wishes::{Instant, WISHES, Wanted, Wishes, add_hold, of_bat, of_joints};
use crate::dynamics::closed_loop::ClosedChain;
use crate::dynamics::mass_matrix::MassMatrix;
use crate::dynamics::symmetric::{BLOCK, add_scaled, mirror};
use crate::dynamics::tree::Kinematics;
use crate::frames::DVec3;
use crate::player::Strength;
use crate::player::joints::JOINT_COUNT;
use multiversion::multiversion;

const N: usize = JOINT_COUNT;

/// Which torques can be reached.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reach {
    /// From the present activation, within the preview.
    FromActivation,
    /// All that the joints can give: at the start of a stroke, prepared in the backlift.
    Full,
}

/// The law, with the last solution and room for the problem, reused from instant to instant.
#[derive(Clone, Debug)]
pub struct Law {
    /// Constants.
    pub control: Control,
    response: [[f64; HOLDING]; N],
    normal: NormalEquations<HOLDING>,
    /// Where in the box the last torques lay: where the next search starts.
    place: [f64; N],
    /// The same with the bottom hand's couple.
    place_holding: [f64; HOLDING],
}

/// What the player calls for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Called {
    /// Joint torques, N m.
    pub torque_n_m: [f64; N],
    /// Couple of the bottom hand on the bat about the bat's axes, as a share of what its grip holds.
    pub couple_share: [f64; 3],
}

/// Joint torques and the three components of the bottom hand's couple.
const HOLDING: usize = N + 3;

impl Law {
    /// A law with its constants.
    pub fn new(control: Control) -> Self {
        Self {
            control,
            response: [[0.0; HOLDING]; N],
            normal: NormalEquations::default(),
            place: [0.5; N],
            place_holding: [0.5; HOLDING],
        }
    }

    /// Torques and couple the player calls for.
    pub fn target(
        &mut self,
        it: &Instant<'_>,
        wanted: &Wanted<'_>,
        strength: &Strength,
        available: &Available,
        activation: &[f64; N],
        reach: Reach,
    ) -> Called {
        let gain = match reach {
            Reach::FromActivation => {
                1.0 - libm::exp(-self.control.preview_s / self.control.activation_time_s)
            }
            Reach::Full => 1.0,
        };
        let mut lo = [0.0; N];
        let mut hi = [0.0; N];
        for j in 0..N {
            let a = activation[j];
            hi[j] = available.signed(j, a + gain * (1.0 - a));
            lo[j] = available.signed(j, a + gain * (-1.0 - a));
        }
        let effort: [f64; N] =
            core::array::from_fn(|j| 0.5 * (strength.positive_n_m[j] + strength.negative_n_m[j]));
        let limit = it.couple_limit_n_m;
        let mut wishes = of_bat(&self.control, it, wanted);
        let a_joint = of_joints(&self.control, it, wanted);
        let weights = (self.control.weight_posture, self.control.weight_effort);
        if limit.iter().all(|it| *it == 0.0) {
            let mut normal = NormalEquations::default();
            set_up(&mut normal, &it.closed.P, &a_joint, &wishes, &effort, weights);
            let NormalEquations { H, g, .. } = &normal;
            let x = barrier::minimise(H, g, &lo, &hi, self.control.barrier, &mut self.place);
            return Called { torque_n_m: x, couple_share: [0.0; 3] };
        }
        // Friction asks no time: the whole of what the grip holds is there at once.
        let with = |torque: &[f64; N], couple: [f64; 3]| -> [f64; HOLDING] {
            core::array::from_fn(|u| if u < N { torque[u] } else { couple[u - N] })
        };
        let (lo, hi) = (with(&lo, limit.map(|it| -it)), with(&hi, limit));
        let turning = bottom_grip::turning(it.chain, it.k);
        bottom_grip::respond(it.chain, it.k, &turning, &it.closed.P, &mut self.response);
        add_hold(&self.control, it, &turning, &mut wishes);
        let size = with(&effort, limit);
        set_up(&mut self.normal, &self.response, &a_joint, &wishes, &size, weights);
        let NormalEquations { H, g, .. } = &self.normal;
        let x = barrier::minimise(H, g, &lo, &hi, self.control.barrier, &mut self.place_holding);
        Called {
            torque_n_m: core::array::from_fn(|j| x[j]),
            couple_share: core::array::from_fn(|i| x[N + i] / limit[i]),
        }
    }
}

/// Quadratic form, both triangles filled, and gradient of the sum of squares of the accelerations missed and of effort.
#[derive(Clone, Debug)]
struct NormalEquations<const U: usize> {
    H: [[f64; U]; U],
    g: [f64; U],
    /// The accelerations by what is called for: of the joints, each times the square of its weight, and of the wishes.
    scaled: [[f64; U]; N],
    rows: [[f64; U]; WISHES],
}

impl<const U: usize> Default for NormalEquations<U> {
    fn default() -> Self {
        Self { H: [[0.0; U]; U], g: [0.0; U], scaled: [[0.0; U]; N], rows: [[0.0; U]; WISHES] }
    }
}

/// Sets up the normal equations; `response` holds the joints' accelerations per unit of what is called for, `size` how
/// much of it counts as one; weights of posture and of effort.
#[multiversion(targets("x86_64+avx2", "x86_64+avx"))]
fn set_up<const U: usize>(
    NormalEquations { H, g, scaled, rows }: &mut NormalEquations<U>,
    response: &[[f64; U]; N],
    a_joint: &[f64; N],
    wishes: &Wishes,
    size: &[f64; U],
    (weight_posture, weight_effort): (f64, f64),
) {
    let posture2 = weight_posture * weight_posture;
    *g = [0.0; U];
    *rows = [[0.0; U]; WISHES];
    let of_joints = response.iter().zip(a_joint).zip(&wishes.by_joint);
    for (((response, a), factors), scaled) in of_joints.zip(scaled.iter_mut()) {
        add_scaled(g, posture2 * a, response);
        *scaled = response.map(|it| posture2 * it);
        for (row, factor) in rows.iter_mut().zip(factors) {
            add_scaled(row, *factor, response);
        }
    }
    for (row, left) in rows.iter().zip(&wishes.left) {
        add_scaled(g, *left, row);
    }
    for (i, out) in H.iter_mut().enumerate() {
        match i / BLOCK {
            0 => row_of_products::<BLOCK, U>(scaled, response, rows, i, out),
            1 => row_of_products::<{ 2 * BLOCK }, U>(scaled, response, rows, i, out),
            2 => row_of_products::<{ 3 * BLOCK }, U>(scaled, response, rows, i, out),
            3 => row_of_products::<{ 4 * BLOCK }, U>(scaled, response, rows, i, out),
            _ => row_of_products::<U, U>(scaled, response, rows, i, out),
        }
        let effort = weight_effort / size[i];
        out[i] += effort * effort;
    }
    mirror(H);
}

/// The first W elements of row i of `SᵀR + WᵀW`, with S the scaled response R and W the wishes' rows.
#[inline(always)]
fn row_of_products<const W: usize, const U: usize>(
    scaled: &[[f64; U]; N],
    response: &[[f64; U]; N],
    rows: &[[f64; U]; WISHES],
    i: usize,
    out: &mut [f64; U],
) {
    let mut sums = [0.0; W];
    for (scaled, row) in scaled.iter().zip(response) {
        add_scaled(&mut sums, scaled[i], &row[..W]);
    }
    for row in rows {
        add_scaled(&mut sums, row[i], &row[..W]);
    }
    out[..W].copy_from_slice(&sums);
}

/// Kinematics, mass matrix and loop of the chain at one state.
pub fn closed_chain(
    chain: &Chain,
    q: &[f64; N],
    v: &[f64; N],
    a_base: DVec3,
    k: &mut Kinematics<N>,
    m: &mut MassMatrix<N>,
) -> ClosedChain<N> {
    chain.tree.forward_kinematics(q, v, a_base, k);
    m.fill(&chain.tree, k);
    ClosedChain::new(&chain.tree, k, m, Some(&chain.bottom_hand), DRIFT_RATE_1_S)
}

/// Rate at which a gap between bottom hand and handle is pulled shut, 1/s.
const DRIFT_RATE_1_S: f64 = 50.0;
