//! What an ounce costs, where.

mod law;
mod swung;
