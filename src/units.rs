//! Trade units to SI and back, at the edges only: what people write, and what they read.

mod from_end;
mod print;
mod read;
mod spellings;

pub use from_end::FromEnd;
pub use print::{THIN, Units, decimals, number, spoken, spoken_ball, spoken_stature};
pub use read::{UnitFault, parse, share};
pub use spellings::{INCH_M, KILOGRAM_FORCE_N, MILE_PER_HOUR_M_S, POUND_KG, Quantity};
