//! Facts about the stage `swing`.

mod engine;
mod hips;

mod assumed;
mod balances;
mod bat_speed;
mod bottom_grip;
mod fewer_steps;
mod film;
mod mirror;
mod noise;
mod outside;
pub mod pilot;
mod plan;
pub mod players;
mod published;
mod range;
mod series;
mod signs;
mod tired;
