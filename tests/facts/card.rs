//! Facts about the stage `card`.
