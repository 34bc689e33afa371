//! Facts about the stage `bat`.
