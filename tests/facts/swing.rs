//! Facts about the stage `swing`.

mod pilot;
