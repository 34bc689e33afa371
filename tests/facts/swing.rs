//! Facts about the stage `swing`.

pub mod pilot;
