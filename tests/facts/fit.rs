//! Facts about the stage `fit`.

mod advice;
mod demo;
mod directions;
mod drawn;
mod middles_and_order;
mod region;
mod rules;
mod smooth;
mod trial;
