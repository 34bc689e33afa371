//! Mass, balance, moments and bending of the bat: exact solids, a mesh program, closed forms, the pendulum
//! and its bench.

mod bench;
mod bending;
mod coverage;
mod exported_solid;
mod lofted_blade;
mod measured;
mod pendulum;
mod solids;

use super::{Checked, Checks, Row};

pub(super) const CHECKS: Checks = &[
    ("exact solids", solids::check),
    ("lofted blade", lofted_blade::check),
    ("exported solid", exported_solid::check),
    ("bending", bending::check),
    ("pendulum", pendulum::check),
    ("pendulum bench", coverage::check),
    ("measured bats", measured_bats),
];

fn measured_bats() -> Result<Checked, super::CheckFault> {
    let sizes = crate::files::assets::sizes()?;
    let size = crate::bat::sizes::named(&sizes, "short handle");
    let ours = size.map(|it| it.reference.bat("reference")).transpose()?;
    let row = Row::no_data(
        "swing moment of a real cricket bat (ours: reference short handle)",
        "kg m²",
        ours.map(|it| it.swing_moment_kg_m2()),
        "no measured moment of inertia of a cricket bat was seen, adult or junior; so the ±15 % by which \
         a bat without pendulum may differ from our shapes is an assumption",
    );
    Ok(vec![row].into())
}
