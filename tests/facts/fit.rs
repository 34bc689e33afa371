//! Facts about the stage `fit`.
