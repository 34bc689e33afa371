//! Facts about the stage `comparison`.
