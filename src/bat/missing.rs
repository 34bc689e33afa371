//! Size, length and balance point of a bat of which not everything was measured.

use super::notes::{EstimatedFigure, Warning};
use super::sizes::{Size, find, nearest};
use super::weigh_fault::WeighFault;
use crate::measurement::bench::{BALANCE_SD_M, BatReading, LENGTH_SD_M};
use crate::uncertain::Uncertain;

/// One standard deviation of the overall length within a named size, m. Assumption: makers differ by
/// about 2 cm.
pub const LENGTH_OF_SIZE_SD_M: f64 = 0.010;
/// The same when the size itself was guessed from the weight, m. Assumption: about one size and a half.
pub const LENGTH_FROM_WEIGHT_SD_M: f64 = 0.040;
/// One standard deviation of the balance point within a size, m. Assumption.
pub const BALANCE_OF_SIZE_SD_M: f64 = 0.012;
/// The same when the size itself was guessed from the weight, m. Assumption.
pub const BALANCE_FROM_WEIGHT_SD_M: f64 = 0.030;
/// Difference between a measured length and that of the named size that is questioned, m. Assumption:
/// a whole size.
pub const LENGTH_QUESTIONED_M: f64 = 0.025;

/// Size, length and balance point, each measured or estimated.
pub(super) struct Settled<'a> {
    pub(super) size: &'a Size,
    pub(super) length_m: Uncertain,
    pub(super) balance_m: Uncertain,
    pub(super) estimated: Vec<EstimatedFigure>,
    pub(super) warnings: Vec<Warning>,
}

/// Fills in what was not measured: the size by name, else by length, else by weight; the length from the
/// size; the balance point from the size's reference bat, drawn out to the length.
pub(super) fn settle<'a>(
    reading: &BatReading,
    sizes: &'a [Size],
) -> Result<Settled<'a>, WeighFault> {
    let mut estimated = Vec::new();
    let mut warnings = Vec::new();
    let size = match (&reading.size, reading.length_m) {
        (Some(name), _) => find(sizes, name)?,
        (None, Some(length_m)) => {
            nearest(sizes, |it| it.length_m() - length_m).ok_or(WeighFault::NoSizes)?
        }
        (None, None) => nearest(sizes, |it| it.reference.mass_moments().mass_kg - reading.mass_kg)
            .ok_or(WeighFault::NoSizes)?,
    };
    let guessed = reading.size.is_none() && reading.length_m.is_none();
    if guessed {
        warnings.push(Warning::SizeGuessedFromWeight { size: size.name.clone() });
    }
    let usual_m = size.length_m();
    let length_m = match reading.length_m {
        Some(length_m) => {
            if reading.size.is_some() && (length_m - usual_m).abs() > LENGTH_QUESTIONED_M {
                let size = size.name.clone();
                warnings.push(Warning::LengthUnlikeSize { size, length_m, usual_m });
            }
            Uncertain::measured(length_m, LENGTH_SD_M)
        }
        None => {
            let sd = if guessed { LENGTH_FROM_WEIGHT_SD_M } else { LENGTH_OF_SIZE_SD_M };
            let length_m = Uncertain::estimated(usual_m, sd);
            estimated.push(EstimatedFigure {
                what: "length",
                from: format!("usual for size {} (common practice, no source)", size.name),
                relative_sd: length_m.relative_sd(),
            });
            length_m
        }
    };
    let balance_m = match reading.balance_m {
        Some(balance_m) => Uncertain::measured(balance_m, BALANCE_SD_M),
        None => {
            let sd = if guessed { BALANCE_FROM_WEIGHT_SD_M } else { BALANCE_OF_SIZE_SD_M };
            let of_reference_m = size.reference.mass_moments().com_B().x;
            let balance_m = Uncertain::estimated(of_reference_m * length_m.value / usual_m, sd);
            estimated.push(EstimatedFigure {
                what: "balance point",
                from: format!("standard bat of size {} (assumption)", size.name),
                relative_sd: balance_m.relative_sd(),
            });
            balance_m
        }
    };
    Ok(Settled { size, length_m, balance_m, estimated, warnings })
}
