//! Figures of outside programs (`tests/reference/`), embedded for the checks against them.

pub mod lofted_blade;
pub mod three_compartment;
