//! A blade and a handle against a mesh program, which knows nothing of stations.

use crate::bat::lofted_solid::MassMoments;
use crate::files::reference;
use crate::files::reference::lofted_blade::Meshed;
use crate::validation::{Accept, CheckFault, Checked, Row};

/// Facets cut corners: a thousandth.
const ACCEPT: f64 = 1e-3;

pub(super) fn check() -> Result<Checked, CheckFault> {
    let reference = reference::lofted_blade()?;
    let mut blade = MassMoments::default();
    reference.blade.add_to(&mut blade, reference.shoulder_m);
    let mut handle = MassMoments::default();
    reference.handle.add_to(&mut handle, reference.handle.density_kg_m3);
    let mut rows = rows("lofted blade", &reference.made_by, &blade, &reference.meshed_blade);
    rows.extend(self::rows("handle", &reference.made_by, &handle, &reference.meshed_handle));
    Ok(rows.into())
}

fn rows(solid: &str, source: &str, ours: &MassMoments, theirs: &Meshed) -> Vec<Row> {
    let I = ours.I_Com_B();
    let row = |what: &str, unit, expected, ours, accept| {
        Row::compared(format!("{solid}: {what}"), source, unit, expected, ours, accept)
    };
    let share = Accept::Share(ACCEPT);
    let [[x, _, product], [_, y, _], [_, _, z]] = theirs.I_Com_B;
    let within = Accept::Within(ACCEPT * x);
    vec![
        row("mass", "kg", theirs.mass_kg, ours.mass_kg, share),
        row("balance point", "m", theirs.com_B[0], ours.com_B().x, share),
        row("centre under the face", "m", theirs.com_B[2], ours.com_B().z, Accept::Within(2e-5)),
        row("moment about the long axis", "kg m²", x, I.x_axis.x, share),
        row("moment across, in the face", "kg m²", y, I.y_axis.y, share),
        row("moment across, out of the face", "kg m²", z, I.z_axis.z, share),
        row("product of inertia", "kg m²", product, I.x_axis.z, within),
    ]
}
