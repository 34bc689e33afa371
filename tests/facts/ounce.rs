//! What an ounce costs, where.

mod chart;
mod law;
mod swung;
