//! The plan on a finer grid: the engine takes a sample of it at every step.

use crate::dynamics::tree::Kinematics;
use crate::frames::DVec3;
use crate::player::joints::JOINT_COUNT;
use crate::swing::chain::Chain;
use crate::swing::reference::{Reference, Sample};

/// The same plan with `times` as many samples. Values with both derivatives at two samples fix a
/// polynomial of fifth degree between them; the joint paths are of fourth degree, so that this gives
/// them back exactly but where two of their spans meet.
pub fn finer(plan: &Reference, chain: &Chain, times: usize) -> Reference {
    let mut k = chain.tree.kinematics();
    let h = 1.0 / plan.per_unit as f64;
    let mut samples = Vec::with_capacity((plan.samples.len() - 1) * times + 1);
    for (i, pair) in plan.samples.windows(2).enumerate() {
        samples.push(pair[0]);
        for m in 1..times {
            let u = m as f64 / times as f64;
            samples.push(between(plan, chain, i, u, h, &mut k));
        }
    }
    samples.extend(plan.samples.last());
    Reference {
        samples,
        per_unit: plan.per_unit * times,
        contact_m: plan.contact_m,
        held_R: plan.held_R,
    }
}

fn between(
    plan: &Reference,
    chain: &Chain,
    i: usize,
    u: f64,
    h: f64,
    k: &mut Kinematics<JOINT_COUNT>,
) -> Sample {
    let (a, b) = (&plan.samples[i], &plan.samples[i + 1]);
    let mut joints = [[0.0; JOINT_COUNT]; 3];
    for j in 0..JOINT_COUNT {
        let at = quintic([a.q[j], a.q1[j], a.q2[j]], [b.q[j], b.q1[j], b.q2[j]], h, u);
        for (row, value) in joints.iter_mut().zip(at) {
            row[j] = value;
        }
    }
    let axis = |x: fn(DVec3) -> f64| {
        quintic(
            [a.pelvis, a.pelvis1, a.pelvis2].map(x),
            [b.pelvis, b.pelvis1, b.pelvis2].map(x),
            h,
            u,
        )
    };
    let [x, y, z] = [axis(|v| v.x), axis(|v| v.y), axis(|v| v.z)];
    let pelvis = core::array::from_fn(|d| DVec3::new(x[d], y[d], z[d]));
    Sample::new(chain, plan.contact_m, joints, pelvis, k)
}

/// Value and two derivatives at the share `u` of an interval of length `h`, from the same at its ends.
fn quintic(from: [f64; 3], to: [f64; 3], h: f64, u: f64) -> [f64; 3] {
    let (a0, a1, a2) = (from[0], h * from[1], 0.5 * h * h * from[2]);
    let value = to[0] - (a0 + a1 + a2);
    let slope = h * to[1] - (a1 + 2.0 * a2);
    let bend = h * h * to[2] - 2.0 * a2;
    let a3 = 10.0 * value - 4.0 * slope + 0.5 * bend;
    let a4 = -15.0 * value + 7.0 * slope - bend;
    let a5 = 6.0 * value - 3.0 * slope + 0.5 * bend;
    [
        a0 + u * (a1 + u * (a2 + u * (a3 + u * (a4 + u * a5)))),
        (a1 + u * (2.0 * a2 + u * (3.0 * a3 + u * (4.0 * a4 + u * 5.0 * a5)))) / h,
        (2.0 * a2 + u * (6.0 * a3 + u * (12.0 * a4 + u * 20.0 * a5))) / (h * h),
    ]
}
