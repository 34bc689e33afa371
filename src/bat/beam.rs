//! Bending of a slender body of varying section: its free modes.
//!
//! Euler–Bernoulli: no shear, no rotary inertia. For a blade, with E/G of wood about 13 and a radius of
//! gyration about 1.4 % of the length, that makes the first frequency some 4 % too high and hardly moves
//! the nodes. Cubic Hermite elements, stiffness and mass integrated exactly for what runs straight.

use super::lofted_solid::GAUSS_4;
use nalgebra::{DMatrix, DVector, Dyn, SymmetricEigen};

/// Bending stiffness and mass at one place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeamSection {
    /// Bending stiffness E I, N m².
    pub EI_n_m2: f64,
    /// Mass for each metre, kg/m.
    pub mass_kg_m: f64,
}

/// A rigid piece stuck on the end of a beam, as heavy all along it: a toe guard.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Tip {
    /// Mass, kg.
    pub mass_kg: f64,
    /// Length beyond the end of the beam, m.
    pub length_m: f64,
}

/// One free mode.
#[derive(Clone, Debug, PartialEq)]
pub struct Mode {
    /// Frequency, Hz.
    pub frequency_hz: f64,
    /// Where it stands still, m from the start of the beam, in order.
    pub nodes_m: Vec<f64>,
}

/// Places on an element at which a mode's deflection is looked at.
const LOOKS: usize = 8;

/// Lowest free–free bending modes of a beam with its ends at the first and last of `at_m`, in `at_m.len() −
/// 1` elements; `section` gives the beam at a place inside an element, and `tip` is stuck on its end. Empty where
/// the sections make no beam: a mass or stiffness that is not positive.
pub fn free_modes(
    at_m: &[f64],
    section: &dyn Fn(f64) -> BeamSection,
    tip: Tip,
    count: usize,
) -> Vec<Mode> {
    let n = 2 * at_m.len();
    let (mut K, mut M) = (DMatrix::<f64>::zeros(n, n), DMatrix::<f64>::zeros(n, n));
    for (e, ends) in at_m.windows(2).enumerate() {
        let length_m = ends[1] - ends[0];
        for (t, weight) in GAUSS_4 {
            let s = section(ends[0] + t * length_m);
            let (h, h2) = (hermite(t, length_m), hermite_second(t, length_m));
            let (stiff, mass) = (weight * length_m * s.EI_n_m2, weight * length_m * s.mass_kg_m);
            for i in 0..4 {
                for j in 0..4 {
                    K[(2 * e + i, 2 * e + j)] += stiff * h2[i] * h2[j];
                    M[(2 * e + i, 2 * e + j)] += mass * h[i] * h[j];
                }
            }
        }
    }
    if n > 0 {
        // The tip moves as the end of the beam does, and turns with it.
        let (Tip { mass_kg, length_m }, end, slope) = (tip, n - 2, n - 1);
        M[(end, end)] += mass_kg;
        M[(end, slope)] += 0.5 * mass_kg * length_m;
        M[(slope, end)] += 0.5 * mass_kg * length_m;
        M[(slope, slope)] += mass_kg * length_m * length_m / 3.0;
    }
    let Some(L) = M.cholesky().map(|it| it.l()) else { return Vec::new() };
    // L⁻¹ K L⁻ᵀ, symmetric.
    let Some(half) = L.solve_lower_triangular(&K) else { return Vec::new() };
    let Some(A) = L.solve_lower_triangular(&half.transpose()) else { return Vec::new() };
    let eigen: SymmetricEigen<f64, Dyn> = SymmetricEigen::new(0.5 * (&A + A.transpose()));
    let mut order: Vec<usize> = (0..n).collect();
    order.sort_by(|a, b| eigen.eigenvalues[*a].total_cmp(&eigen.eigenvalues[*b]));
    // The two lowest are the rigid motions: shift and turn.
    order
        .into_iter()
        .skip(2)
        .take(count)
        .filter_map(|k| {
            let shape = L.tr_solve_lower_triangular(&eigen.eigenvectors.column(k).into_owned())?;
            Some(mode(at_m, eigen.eigenvalues[k], &shape))
        })
        .collect()
}

fn mode(at_m: &[f64], eigenvalue: f64, shape: &DVector<f64>) -> Mode {
    let mut nodes_m = Vec::new();
    let mut before: Option<(f64, f64)> = None;
    for (e, ends) in at_m.windows(2).enumerate() {
        let length_m = ends[1] - ends[0];
        for look in 0..=LOOKS {
            let t = look as f64 / LOOKS as f64;
            let h = hermite(t, length_m);
            let w: f64 = (0..4).map(|i| h[i] * shape[2 * e + i]).sum();
            let x = ends[0] + t * length_m;
            if let Some((x0, w0)) = before
                && x > x0
                && (w0 < 0.0) != (w < 0.0)
            {
                nodes_m.push(x0 + (x - x0) * w0 / (w0 - w));
            }
            before = Some((x, w));
        }
    }
    let omega = libm::sqrt(eigenvalue.max(0.0));
    Mode { frequency_hz: omega / std::f64::consts::TAU, nodes_m }
}

/// Cubic Hermite functions on an element: deflection and slope at either end.
fn hermite(t: f64, length_m: f64) -> [f64; 4] {
    let (t2, t3) = (t * t, t * t * t);
    [
        1.0 - 3.0 * t2 + 2.0 * t3,
        length_m * (t - 2.0 * t2 + t3),
        3.0 * t2 - 2.0 * t3,
        length_m * (t3 - t2),
    ]
}

/// Their second derivatives along the beam.
fn hermite_second(t: f64, length_m: f64) -> [f64; 4] {
    let l2 = length_m * length_m;
    [
        (12.0 * t - 6.0) / l2,
        (6.0 * t - 4.0) / length_m,
        (6.0 - 12.0 * t) / l2,
        (6.0 * t - 2.0) / length_m,
    ]
}
