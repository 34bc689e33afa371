//! Facts about the stage `innings`.
