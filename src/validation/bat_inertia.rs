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

use super::{Check, Checked, Group, Row};

const GROUP: Group = Group::BatInertia;

/// Every check of the bat's inertia.
pub fn checks() -> Vec<Check> {
    let check = |name, run| Check { name, group: GROUP, run };
    vec![
        check("exact solids", solids::check),
        check("lofted blade", lofted_blade::check),
        check("exported solid", exported_solid::check),
        check("bending", bending::check),
        check("pendulum", pendulum::check),
        check("pendulum bench", coverage::check),
        check("measured bats", measured_bats),
    ]
}

fn measured_bats() -> Result<Checked, super::CheckFault> {
    let sizes = crate::files::assets::sizes()?;
    let reference = crate::bat::sizes::named(&sizes, "short handle").map(|it| it.reference.clone());
    let ours = reference.map(|it| it.bat("reference")).transpose()?;
    let row = Row::no_data(
        GROUP,
        "swing moment of a real cricket bat (ours: reference short handle)",
        "kg m²",
        ours.map(|it| it.swing_moment_kg_m2()),
        "no measured moment of inertia of a cricket bat was seen, adult or junior; so the ±15 % by which \
         a bat without pendulum may differ from our shapes is an assumption",
    );
    Ok(Checked { rows: vec![row], curves: vec![] })
}
