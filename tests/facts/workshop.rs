//! Facts about the stage `workshop`.

mod pressing;
mod season;
mod stage_files;
mod stages;
mod uptake;
