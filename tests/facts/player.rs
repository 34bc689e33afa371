//! Facts about the stage `player`.
