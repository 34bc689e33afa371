//! A bat of two bodies, handle and blade, joined by a springy hinge at the splice: closed forms for the two
//! limits, a free hinge and a rigid bat, and for the swinging between them.
//!
//! Nothing in the product bends; these rows say that its rigid bodies would bend rightly, and what is left
//! out by a bat that does not. The figures of handle and blade are invented.

use super::given_torques::{Given, State};
use super::{figure, miss, worse};
use crate::dynamics::tree::{Link, Tree};
use crate::frames::{DMat3, DVec3};
use crate::validation::{CheckFault, Checked, Curve, Row, readings};

const SOURCE: &str = "two bodies and a spring in closed form, any text on vibrations";

/// One of the two bodies, all in line with the bat.
struct Part {
    mass_kg: f64,
    /// About its own centre, across the bat, kg m².
    moment_kg_m2: f64,
    /// Its centre to the splice, m.
    to_splice_m: f64,
}

const HANDLE: Part = Part { mass_kg: 0.25, moment_kg_m2: 0.0022, to_splice_m: 0.14 };
const BLADE: Part = Part { mass_kg: 0.95, moment_kg_m2: 0.0260, to_splice_m: 0.24 };
/// Top of the handle to its centre, and splice to toe, m.
const TOP_TO_CENTRE_M: f64 = 0.15;
const SPLICE_TO_TOE_M: f64 = 0.56;

fn link(parent: Option<usize>, offset_x_m: f64, part: Option<(&Part, f64)>) -> Link {
    let (mass_kg, moment, com_x) =
        part.map_or((0.0, 0.0, 0.0), |(it, com_x)| (it.mass_kg, it.moment_kg_m2, com_x));
    Link {
        parent,
        offset: DVec3::X * offset_x_m,
        R_rest: DMat3::IDENTITY,
        axis: Some(DVec3::Y),
        mass_kg,
        com: DVec3::X * com_x,
        I_Com: DMat3::from_diagonal(DVec3::new(0.0, moment, moment)),
    }
}

fn given<const N: usize>(links: Vec<Link>) -> Result<Given<N>, CheckFault> {
    let bat = links.len() - 1;
    let toe = DVec3::X * SPLICE_TO_TOE_M;
    Ok(Given { tree: Tree::new(links)?, ball: None, gravity_m_s2: 0.0, bat, toe })
}

/// Handle and blade in free flight in a plane: two massless links carry the handle wherever it goes.
fn free() -> Result<Given<4>, CheckFault> {
    given(vec![
        link(None, 0.0, None),
        link(Some(0), 1.0, None),
        link(Some(1), 1.0, Some((&HANDLE, 0.0))),
        link(Some(2), HANDLE.to_splice_m, Some((&BLADE, BLADE.to_splice_m))),
    ])
}

/// The same turning about the top of the handle.
fn hung() -> Result<Given<2>, CheckFault> {
    given(vec![
        link(None, 0.0, Some((&HANDLE, TOP_TO_CENTRE_M))),
        link(Some(0), TOP_TO_CENTRE_M + HANDLE.to_splice_m, Some((&BLADE, BLADE.to_splice_m))),
    ])
}

/// Frequency of the bending of the free pair, rad/s: `ω² = k I / (I_H I_B − c²)`, where
/// `I_H = I₁ + μa²`, `I_B = I₂ + μb²`, `c = μab`, `μ = m₁m₂/(m₁+m₂)` and `I = I_H + I_B + 2c`.
fn bending_rad_s(stiffness_n_m: f64) -> f64 {
    let (a, b) = (HANDLE.to_splice_m, BLADE.to_splice_m);
    let reduced = HANDLE.mass_kg * BLADE.mass_kg / (HANDLE.mass_kg + BLADE.mass_kg);
    let handle = HANDLE.moment_kg_m2 + reduced * a * a;
    let blade = BLADE.moment_kg_m2 + reduced * b * b;
    let both = reduced * a * b;
    (stiffness_n_m * (handle + blade + 2.0 * both) / (handle * blade - both * both)).sqrt()
}

pub(super) fn check() -> Result<Checked, CheckFault> {
    let mut out = Checked::default();
    for stiffness_n_m in [500.0, 2_000.0, 8_000.0] {
        let expected_hz = bending_rad_s(stiffness_n_m) / core::f64::consts::TAU;
        let ours_hz = bending_hz(stiffness_n_m, expected_hz)?;
        let what = format!("springy splice, free, bending: {stiffness_n_m} N m/rad");
        out.rows.push(figure(what, SOURCE, "Hz", expected_hz, ours_hz, MOST_BENDING));
    }
    out.rows.extend(free_hinge()?);
    rigid_limit(&mut out)?;
    Ok(out)
}

/// The closed form is for small angles, and the passage of nought is read by a secant.
const MOST_BENDING: f64 = 1e-4;
/// Bent by so much at the start, rad.
const BENT_RAD: f64 = 1e-3;

/// Ours: half periods counted from one passage of nought to the tenth after it.
fn bending_hz(stiffness_n_m: f64, about_hz: f64) -> Result<f64, CheckFault> {
    let given = free()?;
    // The two carrying links stand square to each other, far from where they would lose a direction.
    let from = State { q: [0.3, 1.57, 0.5, BENT_RAD], v: [0.0; 4] };
    let (halves, steps_a_half) = (12, 100);
    let steps = halves * steps_a_half;
    let duration_s = halves as f64 / (2.0 * about_hz);
    let dt = duration_s / steps as f64;
    let (mut before, mut passages) = (None::<f64>, Vec::new());
    given.swing(
        from,
        duration_s,
        steps,
        |_, s| [0.0, 0.0, 0.0, -stiffness_n_m * s.q[3]],
        |i, s| {
            let now = s.q[3];
            if let Some(before) = before.filter(|it| (*it > 0.0) != (now > 0.0)) {
                passages.push((i as f64 - now / (now - before)) * dt);
            }
            before = Some(now);
        },
    );
    match (passages.first(), passages.get(10)) {
        (Some(first), Some(last)) => Ok(5.0 / (last - first)),
        _ => Ok(f64::NAN),
    }
}

/// A couple at the handle, nothing at the splice: how handle and blade start from rest.
fn free_hinge() -> Result<[Row; 2], CheckFault> {
    let given = hung()?;
    let (couple_n_m, h, b) = (10.0, TOP_TO_CENTRE_M + HANDLE.to_splice_m, BLADE.to_splice_m);
    let handle = HANDLE.moment_kg_m2
        + HANDLE.mass_kg * TOP_TO_CENTRE_M * TOP_TO_CENTRE_M
        + BLADE.mass_kg * h * h;
    let blade = BLADE.moment_kg_m2 + BLADE.mass_kg * b * b;
    let both = BLADE.mass_kg * h * b;
    let rest = handle * blade - both * both;
    let theirs = [couple_n_m * blade / rest, -couple_n_m * both / rest];
    let k = given.kinematics(&State { q: [0.0; 2], v: [0.0; 2] });
    let a = given.closed(&k, 0.0).accelerations(&[couple_n_m, 0.0]);
    // The blade's angle is counted from the handle.
    let ours = [a[0], a[0] + a[1]];
    let row = |n: usize, part: &str| {
        let what = format!("free hinge at the splice, couple at the top: start of the {part}");
        figure(what, SOURCE, "rad/s²", theirs[n], ours[n], 1e-10)
    };
    Ok([row(0, "handle"), row(1, "blade")])
}

/// A couple at the top of the handle that rises and falls over a stroke's length: the toe's speed at its end
/// against a rigid bat's, `∫τ dt · L / I`.
fn rigid_limit(out: &mut Checked) -> Result<(), CheckFault> {
    let given = hung()?;
    let (duration_s, peak_n_m) = (0.25, 30.0);
    let (h, b) = (TOP_TO_CENTRE_M + HANDLE.to_splice_m, BLADE.to_splice_m);
    let moment = HANDLE.moment_kg_m2
        + HANDLE.mass_kg * TOP_TO_CENTRE_M * TOP_TO_CENTRE_M
        + BLADE.moment_kg_m2
        + BLADE.mass_kg * (h + b) * (h + b);
    // sin² has half its peak as its mean.
    let rigid_m_s = 0.5 * peak_n_m * duration_s / moment * (h + SPLICE_TO_TOE_M);
    let couple = |t: f64| {
        let s = libm::sin(core::f64::consts::PI * t / duration_s);
        peak_n_m * s * s
    };
    // Steps that follow the stiffest bending, 600 Hz, closely.
    let steps = 4_000;
    let mut misses = Vec::new();
    for stiffness_n_m in [500.0, 2_000.0, 8_000.0, 32_000.0] {
        let mut bent = 0.0;
        let end = given.swing(
            State { q: [0.0; 2], v: [0.0; 2] },
            duration_s,
            steps,
            |t, s| [couple(t), -stiffness_n_m * s.q[1]],
            |_, s| bent = worse(bent, s.q[1].abs()),
        );
        let miss = (given.toe(&end).1.length() / rigid_m_s - 1.0).abs();
        misses.push((stiffness_n_m, miss, bent));
    }
    for (stiffness_n_m, off, bent) in misses.iter().filter(|it| it.0 >= 2_000.0) {
        let what =
            format!("springy splice against a rigid bat, toe speed: {stiffness_n_m} N m/rad");
        let bent = bent.to_degrees();
        out.rows.push(
            miss(what, SOURCE, *off, 5e-3).noted(format!("bends by up to {bent:.2}° in the swing")),
        );
    }
    if let [(_, _, soft), .., (_, _, stiff)] = misses.as_slice() {
        let what = "springy splice, 64 times as stiff: bends a share as far";
        out.rows.push(figure(what, SOURCE, "", 1.0 / 64.0, stiff / soft, 0.1));
    }
    out.curves.push(Curve {
        title: "A springy splice against a rigid bat: the furthest bend over a stroke".into(),
        x_label: "stiffness of the splice, N m/rad, as a power of ten".into(),
        y_label: "bend, degrees, as a power of ten".into(),
        ours: misses.iter().map(|it| (libm::log10(it.0), libm::log10(it.2.to_degrees()))).collect(),
        theirs: readings(misses.iter().map(|it| {
            let static_rad = peak_n_m * bent_moment(moment) / it.0;
            (libm::log10(it.0), libm::log10(static_rad.to_degrees()))
        })),
        source: "bend of a splice that follows at once, in closed form".into(),
    });
    Ok(())
}

/// Moment at the splice per unit of couple at the top, the bat turning as one:
/// what turns the blade about the splice, over what turns the bat about the top.
fn bent_moment(moment_about_top_kg_m2: f64) -> f64 {
    let (h, b) = (TOP_TO_CENTRE_M + HANDLE.to_splice_m, BLADE.to_splice_m);
    (BLADE.moment_kg_m2 + BLADE.mass_kg * b * (h + b)) / moment_about_top_kg_m2
}
