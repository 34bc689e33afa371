//! Facts about the stage `dynamics`.
