//! What no torque may change: a bat in free flight, a bat on the bench pivot, a chain left alone.

use super::given_torques::{Given, PRODUCT_STEPS, State};
use super::{figure, miss, player_words, worse};
use crate::bat::pendulum::{amplitude_factor, pivot_moment_kg_m2};
use crate::files::reference;
use crate::files::reference::free_motion::{Pendulum, Spin, from_rows};
use crate::frames::{DMat3, DVec3, rotation_vector};
use crate::player::joints::JOINT_COUNT;
use crate::validation::{CheckFault, Checked, Row};

const SPIN: &str = "torque-free spin by Euler's equations, SciPy 1.17.1's DOP853 at 1e-11";
const PENDULUM: &str = "compound pendulum integrated by SciPy 1.17.1's DOP853 at 1e-11";
const LEFT_ALONE: &str = "conservation of energy";
/// How far anything that is kept may drift: a thousandth.
const MOST: f64 = 1e-3;

pub(super) fn check() -> Result<Checked, CheckFault> {
    let it = reference::free_motion()?;
    let mut rows = spin(&it.spin)?;
    rows.extend(pendulum(&it.pendulum)?);
    rows.extend(left_alone()?);
    Ok(rows.into())
}

/// Three hinges through the centre of mass and no gravity: a free body, with the intermediate axis among
/// the cases. 2.08 ms a step.
fn spin(spin: &Spin) -> Result<Vec<Row>, CheckFault> {
    let inertia = DMat3::from_diagonal(DVec3::from_array(spin.inertia_com_kg_m2));
    let (mut momentum, mut energy, mut turn) = (0.0, 0.0, 0.0);
    for case in &spin.cases {
        let mut given = Given::<3>::new(&spin.chain)?;
        given.gravity_m_s2 = 0.0;
        let wanted = DVec3::from_array(case.angular_momentum_kg_m2_s);
        given.swing(
            State::new(&case.chain_q0_rad, &case.chain_v0_rad_s)?,
            case.times_s.last().copied().unwrap_or(f64::NAN),
            120,
            |_, _| [0.0; 3],
            |i, s| {
                let k = given.kinematics(s);
                let R = k.R[given.bat];
                let L = R * (inertia * (R.transpose() * k.omega[given.bat]));
                momentum = worse(momentum, L.distance(wanted) / wanted.length());
                let kinetic = given.energy_j(s).0;
                energy = worse(energy, (kinetic / case.kinetic_energy_j - 1.0).abs());
                if let (0, Some(rows)) = (i % 24, case.rotation_rows.get(i / 24)) {
                    let apart = R.transpose() * from_rows(rows);
                    turn = worse(turn, rotation_vector(&apart).length());
                }
            },
        );
    }
    let row = |what: &str, share| miss(format!("bat in free flight: {what}"), SPIN, share, MOST);
    Ok(vec![
        row("angular momentum, drift", momentum),
        row("energy, drift", energy),
        row("attitude, miss of 1 rad", turn),
    ])
}

/// Our module swings the bat from the bench pivot; the bench's formula is given the period it shows.
fn pendulum(it: &Pendulum) -> Result<Vec<Row>, CheckFault> {
    let mut rows = Vec::new();
    for case in &it.cases {
        let given = Given::<1>::new(&it.chain)?;
        let amplitude = case.amplitude_deg.to_radians();
        let (mut before, mut quarter_s) = (None::<(f64, f64)>, f64::NAN);
        let dt = 2e-3;
        given.swing(
            State { q: [amplitude], v: [0.0] },
            dt * 300.0,
            300,
            |_, _| [0.0],
            |i, s| {
                // The first passage of the lowest point, by the secant over one step.
                if let Some((q, t)) = before
                    && quarter_s.is_nan()
                    && s.q[0] <= 0.0
                {
                    quarter_s = t + dt * q / (q - s.q[0]);
                }
                before = Some((s.q[0], i as f64 * dt));
            },
        );
        let period_s = 4.0 * quarter_s;
        let small_s = period_s / amplitude_factor(amplitude);
        let found = pivot_moment_kg_m2(it.mass_kg, given.gravity_m_s2, it.pivot_to_com_m, small_s);
        let named = |what: &str| format!("bat on the bench pivot, {}°: {what}", case.amplitude_deg);
        rows.push(figure(named("period"), PENDULUM, "s", case.period_s, period_s, 1e-6));
        let (what, theirs) = (named("inertia by the bench formula"), it.pivot_inertia_kg_m2);
        rows.push(figure(what, PENDULUM, "kg m²", theirs, found, 2e-6));
    }
    Ok(rows)
}

/// From the middle of the reference swing, the torques gone: gravity and the loop alone over a stroke.
fn left_alone() -> Result<Vec<Row>, CheckFault> {
    let mut rows = Vec::new();
    for swing in reference::closed_chain()?.chains {
        let given = Given::<JOINT_COUNT>::new(&swing.chain)?;
        let Some(case) = swing.cases.get(1) else { continue };
        let middle = case.times_s.len() / 2;
        let (Some(q), Some(v)) = (case.q_rad.get(middle), case.v_rad_s.get(middle)) else {
            continue;
        };
        let from = State::new(q, v)?;
        let (kinetic, potential) = given.energy_j(&from);
        let mut off = 0.0;
        given.swing(
            from,
            swing.duration_s,
            PRODUCT_STEPS,
            |_, _| [0.0; JOINT_COUNT],
            |_, s| {
                let (k, p) = given.energy_j(s);
                off = worse(off, (k + p - kinetic - potential).abs() / kinetic);
            },
        );
        let what =
            format!("two moving arms left alone, energy, drift: {}", player_words(&swing.name));
        rows.push(miss(what, LEFT_ALONE, off, MOST));
    }
    Ok(rows)
}
