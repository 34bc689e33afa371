//! A bat off the bench: weighed up by itself, or as the one that was delivered.

use super::Stop;
use super::placed::{asked, mend};
use crate::bat::figures::{WeighedBat, weigh};
use crate::bat::notes::Warning;
use crate::bat::weigh_fault::WeighFault;
use crate::card::Figure;
use crate::card::returned_bat::ReturnedBat;
use crate::files::assets::{limits, sizes};
use crate::files::fault::{Fault, Faults};
use crate::measurement::bench::BatReading;
use crate::uncertain::Uncertain;

/// One standard deviation of a handle diameter taken with a calliper over the rubber, m. Assumption.
const HANDLE_SD_M: f64 = 0.0005;

/// Weighs up a bat read by itself, outside any scenario; what is merely odd comes beside it. `called` says what a field
/// of the reading is called where it was given.
///
/// # Errors
/// Every fault of the reading together.
pub fn weigh_up(
    reading: &BatReading,
    called: impl Fn(&str) -> String,
) -> Result<(WeighedBat, Vec<Fault>), Stop> {
    let place = |field: Option<&str>| field.map_or_else(String::new, |it| called(it) + ": ");
    let weighed = weigh(reading, &sizes()?, &limits()?).map_err(|faults| {
        let fault =
            |it: &WeighFault| Fault::new(format!("{}{it}", place(it.field()))).help(mend(it));
        Stop::WrongInput(Faults(faults.iter().map(fault).collect()))
    })?;
    let warning = |it: &Warning| {
        let (field, help) = asked(it);
        Fault::new(format!("{}{it}", place(field))).help(help).warning()
    };
    let warnings = weighed.warnings.iter().map(warning).collect();
    Ok((weighed, warnings))
}

/// The same of a part-made bat, which is unlike any finished bat of its size, as it should be.
///
/// # Errors
/// Every fault of the reading together.
pub fn weigh_up_part_made(
    reading: &BatReading,
    called: impl Fn(&str) -> String,
) -> Result<(WeighedBat, Vec<Fault>), Stop> {
    let (weighed, warnings) = weigh_up(reading, called)?;
    let told = |it: &Warning| !matches!(it, Warning::UnlikeItsSize { .. });
    let both = weighed.warnings.iter().zip(warnings);
    let warnings = both.filter(|(it, _)| told(it)).map(|(_, warning)| warning).collect();
    Ok((weighed, warnings))
}

/// What the bench says of each figure of the card. Estimates are passed on as such: they decide nothing.
pub fn returned(bat: &WeighedBat) -> ReturnedBat {
    let handle_m = bat.reading.handle_diameter_m;
    let figures = Figure::ALL.map(|it| match it {
        Figure::SwingMoment => Some(bat.swing_moment_kg_m2),
        Figure::DeadWeight => Some(bat.mass_kg),
        Figure::Balance => Some(bat.balance_m),
        Figure::SweetSpot => Some(bat.from_toe_m(bat.percussion_m)),
        Figure::HandleDiameter => handle_m.map(|it| Uncertain::measured(it, HANDLE_SD_M)),
    });
    ReturnedBat { figures }
}
