//! Facts about the stage `fit`.

mod advice;
mod again;
mod demo;
mod directions;
mod drawn;
mod middles_and_order;
mod paths;
mod region;
mod rules;
mod smooth;
mod trial;
