//! The whole swing of one bat as poses over time.

/// One swing.
#[derive(Debug)]
pub struct Film;
