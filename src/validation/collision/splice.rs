//! The stiffness of the hinge at the shoulder: an even handle in closed form, a tapered one by quadrature.

use crate::bat::handle::Handle;
use crate::files::reference;
use crate::impact::splice::Cane;
use crate::validation::{Accept, CheckFault, Checked, Row};

const BEAM: &str = "cantilever of Euler & Bernoulli under a load in proportion to the distance from its root, in \
                    closed form: 40/11 EI/L";
const CLOSED: Accept = Accept::Share(1e-6);
const QUADRATURE: Accept = Accept::Share(1e-4);

/// The even handle: length and half-axes, m; modulus of its cane, Pa.
const LENGTH_M: f64 = 0.3;
const HALF_M: [f64; 2] = [0.016, 0.015];
const CANE_PA: f64 = 2.5e9;

pub(super) fn check() -> Result<Checked, CheckFault> {
    let [a, b] = HALF_M;
    let even = Handle::bare(LENGTH_M, [2.0 * a; 2], [b / a; 2], 0.0);
    // Strips that do not yield leave the solid ellipse, strips that hold nothing three loose canes: two
    // segments beyond a third of the height and the middle between them.
    let solid_m4 = std::f64::consts::FRAC_PI_4 * a * b * b * b;
    let cut = libm::acos(1.0 / 3.0);
    let (sine, double) = (libm::sin(cut), libm::sin(2.0 * cut));
    let area_m2 = a * b * (cut - 0.5 * double);
    let first_m3 = a * b * b * 2.0 / 3.0 * sine * sine * sine;
    let loose_m4 = solid_m4 - 2.0 * first_m3 * first_m3 / area_m2;
    let row = |what: &str, rubber_shear_pa: f64, second_m4: f64| {
        let cane = Cane { modulus_pa: CANE_PA, rubber_shear_pa, strip_m: 1e-3 };
        let theirs = 40.0 / 11.0 * CANE_PA * second_m4 / LENGTH_M;
        let what = format!("splice stiffness: even handle, {what}");
        let ours = cane.hinge_n_m(&even);
        Row::compared(what, BEAM, "N m/rad", theirs, ours, CLOSED)
    };
    let mut rows = vec![row("one solid", 1e16, solid_m4), row("three loose canes", 1e-6, loose_m4)];
    let reference = reference::hits()?;
    let source = format!(
        "sections, moment and deflection by quadrature, {}; strips by EN 1995-1-1 annex B (from memory, high)",
        reference.made_by
    );
    for (cane, theirs) in &reference.hinge_n_m {
        let what = format!(
            "splice stiffness: short handle, strips that yield, cane of {} GPa",
            1e-9 * cane.modulus_pa
        );
        let ours = cane.hinge_n_m(&reference.handle);
        rows.push(Row::compared(what, source.as_str(), "N m/rad", *theirs, ours, QUADRATURE));
    }
    rows.push(Row::no_data(
        "stiffness of a real bat's splice",
        "N m/rad",
        reference.hinge_n_m.get(1).map(|(cane, _)| cane.hinge_n_m(&reference.handle)),
        "no measured bending stiffness of a cricket bat's handle was seen; the cane's modulus is from memory, \
         1 to 4 GPa",
    ));
    Ok(rows.into())
}
