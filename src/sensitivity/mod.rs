//! Which measurements matter: how much of the doubt of each headline figure each input carries.
//!
//! Every input is drawn from the spread that its measurement or estimate has, all together, and the
//! player swings the bats so drawn; nothing is interpolated. The spread of a figure is then divided
//! among the inputs: the first-order index is what an input carries by itself, the total index what
//! would go if it were known exactly and all others were not.

pub mod advice;
pub mod choosing;
pub mod design;
pub mod figure;
pub mod indices;
pub mod input;
mod moved;
mod simulated;
pub mod spread;
mod stand_in;
pub mod study;
pub mod terms;
