//! Facts about the stage `workshop`.

mod pressing;
mod season;
mod uptake;
