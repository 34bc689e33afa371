//! Rigid bodies in a tree with hinges and one closed loop, in reduced coordinates.
//!
//! Three textbook steps, each in a file of its own: recursive kinematics and Newton–Euler
//! ([`tree`]), the composite-rigid-body mass matrix ([`mass_matrix`]), the loop's multipliers
//! ([`closed_loop`]). Everything is in the axes of the tree's base, about its origin, so that
//! inertias and wrenches add without transforms. Source: R. Featherstone 2008, Rigid Body Dynamics
//! Algorithms, chapters 5, 6 and 8.

pub mod closed_loop;
pub mod mass_matrix;
pub mod symmetric;
pub mod tree;
