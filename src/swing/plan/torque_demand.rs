//! Whether the joints can give what a path asks: torque and its lead over the lag of activation,
//! against the capacity at the joints' speeds.

use super::least_squares::{Row, SumOfSquares};
use super::task::{Task, Wish};
use super::unknowns::{COUNT, LN_TIME, force, force_n, joint, path, time_s};
use crate::dynamics::closed_loop::gap_rows;
use crate::dynamics::mass_matrix::MassMatrix;
use crate::dynamics::tree::Kinematics;
use crate::frames::{DVec3, STANDARD_GRAVITY_M_S2};
use crate::player::force_velocity::HillCurve;
use crate::player::joints::JOINT_COUNT;
use crate::swing::activation::ACTIVATION_TIME_S;
use nalgebra::DVector;

const N: usize = JOINT_COUNT;

/// Weight of torque asked beyond capacity, as a share of capacity (from the pilot study, as the next two).
const EXCESS: f64 = 50.0;
/// Weight of torque as a share of capacity.
const EFFORT: f64 = 0.1;
/// Weight of the bottom hand's force, 1/N.
const FORCE_1_N: f64 = 1.0 / 3000.0;
/// Weight of the logarithm of stroke time over the time asked: the time gives a little where the
/// torques do not suffice.
const TIME: f64 = 50.0;
/// Step of the finite differences: rad, rad/s.
const STEP: f64 = 1e-5;

/// State of the chain at one instant of a plan, in seconds.
#[derive(Clone, Copy)]
struct Moving {
    q: [f64; N],
    v: [f64; N],
    a: [f64; N],
    a_base_W: DVec3,
}

/// Torques at one instant, their derivatives, and the joints' speeds against their own muscles.
struct Torque {
    tau_n_m: [f64; N],
    rate_rad_s: [f64; N],
    /// One row per joint, empty where no derivatives are wanted.
    rows: Vec<[f64; COUNT]>,
}

/// Torque that joints can give in one direction, N m, and its derivative with the joint's speed.
struct Capacity {
    value: f64,
    slope: f64,
}

impl Capacity {
    fn at(isometric_n_m: f64, w: f64, max_rate_rad_s: f64) -> Self {
        let factor = HillCurve::JOINT.at(w);
        Self {
            value: isometric_n_m * factor.value,
            slope: isometric_n_m * factor.slope / max_rate_rad_s,
        }
    }
}

/// Torques of the tree's hinges when the bottom hand presses on the bat with `lambda`, N.
fn torques(task: &Task<'_>, m: &Moving, lambda: DVec3, k: &mut Kinematics<N>) -> [f64; N] {
    task.chain.tree.forward_kinematics(&m.q, &m.v, m.a_base_W, k);
    let mut tau = task.chain.tree.inverse_dynamics(k, &m.a);
    let (rows, _) = gap_rows(&task.chain.tree, k, &task.chain.bottom_hand);
    for (t, r) in tau.iter_mut().zip(&rows) {
        *t -= r.dot(lambda);
    }
    tau
}

fn a_base(wish: &Wish, per_time2: f64) -> DVec3 {
    DVec3::new(0.0, 0.0, STANDARD_GRAVITY_M_S2) + wish.pelvis2_W * per_time2
}

fn at(task: &Task<'_>, wish: &Wish, x: &DVector<f64>, derivatives: bool) -> Torque {
    let (path, time) = (path(x), time_s(x));
    let (t1, t2) = (1.0 / time, 1.0 / (time * time));
    let w = &wish.weights;
    let here = Moving {
        q: path.weighted(&w.value),
        v: path.weighted(&w.first).map(|v| v * t1),
        a: path.weighted(&w.second).map(|a| a * t2),
        a_base_W: a_base(wish, t2),
    };
    let lambda = force_n(x, &w.value);
    let mut k = task.chain.tree.kinematics();
    let tau_n_m = torques(task, &here, lambda, &mut k);
    let mut rows = Vec::new();
    if derivatives {
        rows = vec![[0.0; COUNT]; N];
        let (reach, _) = gap_rows(&task.chain.tree, &k, &task.chain.bottom_hand);
        let mut mass = MassMatrix::new(&task.chain.tree);
        mass.fill(&task.chain.tree, &k);
        let mut slope = |there: Moving| {
            let there = torques(task, &there, lambda, &mut k);
            core::array::from_fn::<f64, N, _>(|i| (there[i] - tau_n_m[i]) / STEP)
        };
        for j in 0..N {
            let (mut turned, mut faster) = (here, here);
            turned.q[j] += STEP;
            faster.v[j] += STEP;
            let (by_q, by_v) = (slope(turned), slope(faster));
            for (i, row) in rows.iter_mut().enumerate() {
                let by_a = mass.M[i.max(j)][i.min(j)];
                for c in 0..w.value.len() {
                    row[joint(c, j)] =
                        by_q[i] * w.value[c] + by_v[i] * w.first[c] * t1 + by_a * w.second[c] * t2;
                }
            }
        }
        // A longer time slows everything: v as 1/T, a and the pelvis's acceleration as 1/T².
        let slower = Moving {
            v: here.v.map(|v| v * (1.0 - STEP)),
            a: here.a.map(|a| a * (1.0 - 2.0 * STEP)),
            a_base_W: a_base(wish, t2 * (1.0 - 2.0 * STEP)),
            ..here
        };
        let by_time = slope(slower);
        for (i, row) in rows.iter_mut().enumerate() {
            row[LN_TIME] = by_time[i];
            for (c, value) in w.value.iter().enumerate() {
                for (axis, r) in reach[i].to_array().into_iter().enumerate() {
                    row[force(c, axis)] = -r * value;
                }
            }
        }
    }
    Torque { tau_n_m, rate_rad_s: here.v, rows }
}

/// Lead of the demand: activation time over the time between two instants.
fn lead(task: &Task<'_>, x: &DVector<f64>) -> f64 {
    ACTIVATION_TIME_S / (task.spacing() * time_s(x))
}

/// Torque that must be called up, `tau + tau_a dtau/dt`, N m; at the last instant the torque itself.
fn demand_n_m(all: &[Torque], instant: usize, joint: usize, lead: f64) -> f64 {
    let now = all[instant].tau_n_m[joint];
    all.get(instant + 1).map_or(now, |next| now + lead * (next.tau_n_m[joint] - now))
}

/// Adds torque beyond capacity, effort, the bottom hand's force and the stroke time to a sum of squares.
pub fn add(task: &Task<'_>, asked_time_s: f64, x: &DVector<f64>, sum: &mut SumOfSquares) {
    let wants = sum.wants_rows();
    let all: Vec<Torque> = task.wishes.iter().map(|w| at(task, w, x, wants)).collect();
    let mut row = Row::default();
    for (n, wish) in task.wishes.iter().enumerate() {
        for i in 0..N {
            add_excess(task, &all, (n, i), x, sum, &mut row);
            let capacity = 0.5 * (task.strength.positive_n_m[i] + task.strength.negative_n_m[i]);
            let per = EFFORT / capacity;
            row.clear();
            if wants {
                for (u, d) in all[n].rows[i].iter().enumerate() {
                    row.push(u, per * d);
                }
            }
            sum.add(per * all[n].tau_n_m[i], &row);
        }
        let lambda = force_n(x, &wish.weights.value);
        for (axis, component) in lambda.to_array().into_iter().enumerate() {
            row.clear();
            for (c, value) in wish.weights.value.iter().enumerate() {
                row.push(force(c, axis), FORCE_1_N * value);
            }
            sum.add(FORCE_1_N * component, &row);
        }
    }
    row.clear();
    row.push(LN_TIME, TIME);
    sum.add(TIME * (x[LN_TIME] - libm::log(asked_time_s)), &row);
}

/// Adds what one joint is asked beyond its capacity at one instant, in either direction.
fn add_excess(
    task: &Task<'_>,
    all: &[Torque],
    (n, i): (usize, usize),
    x: &DVector<f64>,
    sum: &mut SumOfSquares,
    row: &mut Row,
) {
    let (lead, t1) = (lead(task, x), 1.0 / time_s(x));
    let demand = demand_n_m(all, n, i, lead);
    let (rate, max_rate) = (all[n].rate_rad_s[i], task.strength.max_rate_rad_s[i]);
    for (sign, isometric) in
        [(1.0, task.strength.positive_n_m[i]), (-1.0, task.strength.negative_n_m[i])]
    {
        let capacity = Capacity::at(isometric, sign * rate / max_rate, max_rate);
        let excess = sign * demand - capacity.value;
        if excess <= 0.0 {
            continue;
        }
        let per = EXCESS / isometric;
        row.clear();
        if sum.wants_rows() {
            let now = &all[n];
            let first = &task.wishes[n].weights.first;
            let mut derivative = now.rows[i].map(|d| sign * d);
            if let Some(next) = all.get(n + 1) {
                for (d, (a, b)) in derivative.iter_mut().zip(now.rows[i].iter().zip(&next.rows[i]))
                {
                    *d += sign * lead * (b - a);
                }
                derivative[LN_TIME] -= sign * lead * (next.tau_n_m[i] - now.tau_n_m[i]);
            }
            for (c, w) in first.iter().enumerate() {
                derivative[joint(c, i)] -= sign * capacity.slope * w * t1;
            }
            derivative[LN_TIME] += sign * capacity.slope * rate;
            for (u, d) in derivative.iter().enumerate() {
                row.push(u, per * d);
            }
        }
        sum.add(per * excess, row);
    }
}

/// Largest share of its present capacity that any joint is asked for up to contact, and which joint.
pub fn largest_share(task: &Task<'_>, x: &DVector<f64>) -> (f64, usize) {
    let all: Vec<Torque> = task.wishes.iter().map(|w| at(task, w, x, false)).collect();
    let lead = lead(task, x);
    let mut largest = (0.0, 0);
    for (n, _) in task.wishes.iter().enumerate().filter(|(_, w)| w.s <= 1.0) {
        for i in 0..N {
            let demand = demand_n_m(&all, n, i, lead);
            let (sign, isometric) = if demand > 0.0 {
                (1.0, task.strength.positive_n_m[i])
            } else {
                (-1.0, task.strength.negative_n_m[i])
            };
            let max_rate = task.strength.max_rate_rad_s[i];
            let rate = all[n].rate_rad_s[i];
            let capacity = Capacity::at(isometric, sign * rate / max_rate, max_rate);
            let share = demand.abs() / capacity.value.max(0.01 * isometric);
            if share > largest.0 {
                largest = (share, i);
            }
        }
    }
    largest
}
