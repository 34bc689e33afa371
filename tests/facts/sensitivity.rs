//! Facts about the stage `sensitivity`.

mod chart;
mod estimators;
mod player;
