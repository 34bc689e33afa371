//! Facts about the stage `sensitivity`.

mod estimators;
mod player;
