//! What an ounce costs, where.

mod chart;
mod exponents;
mod law;
mod swung;
