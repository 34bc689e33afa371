//! Facts about the stage `swing`.

mod engine;
mod pilot;
mod plan;
