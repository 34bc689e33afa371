//! Outer limits of what a maker can say of a bat: beyond them is a slip of the hand or of the unit.
//!
//! Every limit is an assumption, set wide.

use super::described::{Cleft, Described};
use super::shape_fault::ShapeFault;
use crate::measurement::out_of_range::OutOfRange;

/// Everything in a description that no bat has.
pub fn impossible(described: &Described) -> Vec<ShapeFault> {
    let Described { blade, handle, extras, cleft, .. } = described;
    let cleft = |of: fn(&Cleft) -> f64| cleft.as_ref().map(of);
    let all = [
        ("blade.length", blade.length_m, [0.2, 0.8], "m"),
        ("blade.width", blade.width_m, [0.03, 0.2], "m"),
        ("blade.edge", blade.edge_m, [0.001, 0.1], "m"),
        ("blade.depth", blade.depth_m, [0.005, 0.15], "m"),
        ("blade.camber", blade.camber_m, [0.0, 0.05], "m"),
        ("blade.bow", blade.bow_m, [0.0, 0.03], "m"),
        ("blade.shoulder_width", blade.shoulder_width_m, [0.01, 0.2], "m"),
        ("blade.shoulder_length", blade.shoulder_length_m, [0.0, 0.8], "m"),
        ("blade.toe_depth", blade.toe_depth_m, [0.001, 0.15], "m"),
        ("handle.length", handle.length_m, [0.1, 0.5], "m"),
        ("handle.diameter", handle.diameter_m, [0.001, 0.08], "m"),
        ("handle.shoulder_diameter", handle.shoulder_diameter_m, [0.005, 0.2], "m"),
        ("handle.cane", handle.cane_kg_m3, [100.0, 2000.0], "kg/m³"),
        ("handle.rubber", handle.rubber_kg_m3, [100.0, 3000.0], "kg/m³"),
        ("handle.grip_rubber", handle.grip_kg_m3, [100.0, 3000.0], "kg/m³"),
        ("handle.twine", handle.twine_m, [0.0, 0.01], "m"),
        ("handle.grip", handle.grip_m, [0.0, 0.02], "m"),
        ("handle.grip_length", handle.grip_length_m, [0.0, 0.5], "m"),
        ("handle.strip", handle.pieces.map(|it| it.1), [0.0, 0.02], "m"),
        ("extras.labels", extras.labels_kg, [0.0, 0.2], "kg"),
        ("extras.face_sheet", extras.face_sheet_kg, [0.0, 0.3], "kg"),
        ("extras.toe_guard", extras.toe_guard_m, [0.0, 0.02], "m"),
        ("extras.oil", extras.oil_kg, [0.0, 0.2], "kg"),
        ("willow.cleft.mass", cleft(|it| it.mass_kg), [0.1, 20.0], "kg"),
        ("willow.cleft.length", cleft(|it| it.length_m), [0.1, 2.0], "m"),
        ("willow.cleft.width", cleft(|it| it.width_m), [0.02, 0.5], "m"),
        ("willow.cleft.depth", cleft(|it| it.depth_m), [0.01, 0.5], "m"),
    ];
    let said = all
        .into_iter()
        .filter_map(|(field, value, limits, unit)| OutOfRange::check(field, value?, unit, limits));
    let stations = blade.stations.iter().flat_map(|it| {
        [
            (it.width_m, [0.005, 0.2]),
            (Some(it.edge_m), [0.0005, 0.15]),
            (Some(it.depth_m), [0.0005, 0.15]),
            (it.camber_m, [0.0, 0.05]),
        ]
    });
    let at_stations = stations
        .filter_map(|(value, limits)| OutOfRange::check("blade.stations", value?, "m", limits));
    said.chain(at_stations).map(ShapeFault::Impossible).collect()
}
