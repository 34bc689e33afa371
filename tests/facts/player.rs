//! Facts about the stage `player`.

mod build;
mod curves;
mod published;
mod strength;
