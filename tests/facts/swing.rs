//! Facts about the stage `swing`.

mod engine;

mod balances;
mod bat_speed;
mod continuous_law;
mod mirror;
pub mod pilot;
mod players;
mod published;
mod tired;
mod plan;
