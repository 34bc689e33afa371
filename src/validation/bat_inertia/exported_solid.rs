//! The solid that is exported, read by a mesh program, against the outline that is integrated here.
//!
//! A file for printing carries no weight, so every figure is that of one stuff of density 1, body by body.

use crate::bat::blade::Blade;
use crate::bat::handle::Handle;
use crate::bat::lofted_solid::MassMoments;
use crate::bat::mesh::{Shell, shells};
use crate::bat::shape::BatShape;
use crate::files::reference::exported_solid::{Body, ExportedSolids};
use crate::files::{assets, reference, shape};
use crate::validation::{Accept, CheckFault, Checked, Row};

/// Ninety-six chords round a handle cut 0.07 % off its section, twice that off its moments; a blade's chords
/// less.
const VOLUME: [Accept; 2] = [Accept::Share(5e-4), Accept::Share(1e-3)];
const MOMENT: Accept = Accept::Share(2e-3);
const CENTRE: Accept = Accept::Within(1e-4);
/// The same triangles, once in four-byte floats.
const SAME_TRIANGLES: Accept = Accept::Share(1e-5);

pub(super) fn check() -> Result<Checked, CheckFault> {
    let ExportedSolids { made_by, cases } = reference::exported_solids()?;
    let sizes = assets::sizes()?;
    let (mut rows, mut closed, mut bodies) = (Vec::new(), 0, 0);
    for case in &cases {
        let loaded = shape::load(None, &case.sets, &sizes).map_err(|it| it.to_string())?;
        let shape = loaded.described.shape(&loaded.size.reference);
        let shape = shape.map_err(|it| format!("{it:?}"))?;
        closed += case.bodies.iter().filter(|it| it.watertight).count();
        let ours = shells(&shape).into_iter().zip(outlines(&shape)).zip(VOLUME);
        bodies += ours.len();
        for (n, (((shell, outline), volume), theirs)) in ours.zip(&case.bodies).enumerate() {
            // What is put on handle and toe leaves the blade as it is.
            if n == 0 && !case.sets.is_empty() {
                continue;
            }
            let what = format!("exported {}, {}", shell.name, case.name);
            rows.extend(compared(&what, &made_by, (&shell, &outline), theirs, volume));
        }
    }
    let what = "exported bodies that are closed and have no flat triangle";
    let (closed, bodies) = (closed as f64, bodies as f64);
    rows.push(Row::compared(what, made_by, "", closed, bodies, Accept::Within(0.0)));
    Ok(rows.into())
}

/// Blade and handle down to the shoulder, twine and grips on, in a stuff of density 1.
fn outlines(shape: &BatShape) -> [MassMoments; 2] {
    let blade = Blade {
        density_kg_m3: 1.0,
        face_cover_kg_m2: 0.0,
        toe_guard_m: 0.0,
        ..shape.blade.clone()
    };
    let handle = Handle { density_kg_m3: 1.0, twine_kg_m3: 1.0, grip_kg_m3: 1.0, ..shape.handle };
    let mut out = [MassMoments::default(); 2];
    blade.add_to(&mut out[0], shape.handle.length_m);
    handle.add_down_to_shoulder(&mut out[1]);
    out
}

fn compared(
    what: &str,
    source: &str,
    (shell, outline): (&Shell, &MassMoments),
    theirs: &Body,
    volume: Accept,
) -> [Row; 5] {
    let row = |figure: &str, unit, expected, ours, accept| {
        let what = format!("{what}: {figure}");
        Row::compared(what, source, unit, expected, ours, accept)
    };
    let I = outline.I_Com_B();
    let [[x, ..], [_, y, _], _] = theirs.I_Com_B_m5;
    let same = "volume of the triangles";
    [
        row("volume", "m³", theirs.volume_m3, outline.mass_kg, volume),
        row(same, "m³", theirs.volume_m3, shell.volume_m3(), SAME_TRIANGLES),
        row("centre from the top", "m", theirs.com_B_m[0], outline.com_B().x, CENTRE),
        row("moment about the long axis", "m⁵", x, I.x_axis.x, MOMENT),
        row("moment across, in the face", "m⁵", y, I.y_axis.y, MOMENT),
    ]
}
