//! Facts about the stage `sensitivity`.

mod chart;
mod choosing;
mod estimators;
mod player;
