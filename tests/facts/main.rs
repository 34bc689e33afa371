//! Facts each stage must agree with, a module a stage. A test's name is the fact; the prefix tells the
//! kind: `reference_` an outside program, `published_` an outside figure, `unchanged_` only a guard.
#![allow(non_snake_case, reason = "frame suffixes are capitals")]
#![allow(missing_docs)]
#![allow(
    clippy::disallowed_methods,
    reason = "edge: tests read files and compare with the standard library"
)]

mod bat;
mod calibration;
mod card;
mod comparison;
mod dynamics;
mod files;
mod fit;
mod impact;
mod innings;
mod measurement;
mod ounce;
mod outside;
mod player;
mod questions;
mod reference;
mod sensitivity;
mod swing;
mod validation;
mod workshop;
mod worth;
