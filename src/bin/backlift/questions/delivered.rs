//! What was measured on the delivered bat.

use backlift::bat::figures::{WeighFault, WeighedBat, weigh};
use backlift::bat::notes::Warning;
use backlift::card::Card;
use backlift::card::returned_bat::ReturnedBat;
use backlift::files::assets::{limits, sizes};
use backlift::files::fault::{Fault, Faults};
use backlift::measurement::bench::{BatReading, PendulumReading, USUAL_AMPLITUDE_RAD};
use backlift::uncertain::{Origin, Uncertain, independent_sd};
use backlift::units::{Quantity, parse};

use crate::outcome::{Stop, warn};
use crate::placed::{asked, mend};

/// One standard deviation of a handle diameter taken with a calliper over the rubber, m. Assumption.
const HANDLE_SD_M: f64 = 0.0005;

/// Bench measurements, each with its unit.
#[derive(clap::Args)]
pub struct Bench {
    /// Scale weight, like "1021 g" or "2 lb 4 oz"
    #[arg(long, value_name = "MASS", value_parser = mass)]
    mass: Option<f64>,

    /// Overall length, like "31.75 in"
    #[arg(long, value_name = "LENGTH", value_parser = length, requires = "mass")]
    length: Option<f64>,

    /// Balance point from the top of the handle, like "497 mm"
    #[arg(long, value_name = "LENGTH", value_parser = length, requires = "mass")]
    balance: Option<f64>,

    /// Time of all pendulum swings together, like "13.46 s"
    #[arg(long, value_name = "TIME", value_parser = seconds, requires = "mass")]
    time: Option<f64>,

    /// Full swings timed, out and back; as on the card if left out
    #[arg(long, value_name = "N", requires = "time")]
    swings: Option<u32>,

    /// Pivot from the top of the handle, like "6 in"; as on the card if left out
    #[arg(long, value_name = "LENGTH", value_parser = length, requires = "time")]
    pivot: Option<f64>,

    /// Handle diameter over the grip at the bottom hand, like "33 mm"
    #[arg(long, value_name = "LENGTH", value_parser = length, requires = "mass")]
    handle: Option<f64>,
}

fn quantity(quantity: Quantity, written: &str) -> Result<f64, String> {
    match parse(quantity, written) {
        Ok(value) if value > 0.0 => Ok(value),
        Ok(_) => Err("it must be above zero".to_owned()),
        Err(fault) => Err(format!("{fault}; {}", fault.mend(quantity))),
    }
}

/// A weight above zero.
pub fn mass(written: &str) -> Result<f64, String> {
    quantity(Quantity::Mass, written)
}

/// A length above zero.
pub fn length(written: &str) -> Result<f64, String> {
    quantity(Quantity::Length, written)
}

/// A time above zero.
pub fn seconds(written: &str) -> Result<f64, String> {
    quantity(Quantity::Time, written)
}

impl Bench {
    /// The bat as it was measured; none if it was not even weighed.
    pub fn reading(&self, card: &Card) -> Option<BatReading> {
        let pendulum = self.time.map(|time_s| PendulumReading {
            swings: self.swings.unwrap_or(card.pendulum_swings),
            time_s,
            pivot_from_top_m: self.pivot.unwrap_or(card.pendulum_pivot_m),
            amplitude_rad: USUAL_AMPLITUDE_RAD,
        });
        Some(BatReading {
            size: Some(card.size.clone()),
            length_m: self.length,
            balance_m: self.balance,
            handle_diameter_m: self.handle,
            pendulum,
            ..BatReading::weighed("the delivered bat", self.mass?)
        })
    }

    /// Whether the card gave that field of the reading.
    pub fn is_of_card(&self, field: &str) -> bool {
        match field {
            "size" => true,
            "pendulum.pivot" => self.pivot.is_none(),
            "pendulum.swings" => self.swings.is_none(),
            _ => false,
        }
    }
}

/// Neither options nor a scenario.
pub fn nothing_measured() -> Stop {
    Fault::new("nothing was measured on the delivered bat")
        .help("give --mass, --balance and --time, or a scenario with the bat in it")
        .into()
}

/// Weighs up a bat given by options and a card; a fault names the option, or the card where `of_card` gave the field.
pub fn weigh_up(reading: &BatReading, of_card: impl Fn(&str) -> bool) -> Result<WeighedBat, Stop> {
    weigh_up_but(reading, of_card, |_| false)
}

/// The same of a part-made bat, which is unlike any finished bat of its size, as it should be.
pub fn weigh_up_part_made(
    reading: &BatReading,
    of_card: impl Fn(&str) -> bool,
) -> Result<WeighedBat, Stop> {
    weigh_up_but(reading, of_card, |it| matches!(it, Warning::UnlikeItsSize { .. }))
}

fn weigh_up_but(
    reading: &BatReading,
    of_card: impl Fn(&str) -> bool,
    unsaid: impl Fn(&Warning) -> bool,
) -> Result<WeighedBat, Stop> {
    let given = |field: Option<&str>| {
        field.map_or_else(String::new, |it| format!("{}: ", given_by(it, of_card(it))))
    };
    let weighed = weigh(reading, &sizes()?, &limits()?).map_err(|faults| {
        let fault =
            |it: &WeighFault| Fault::new(format!("{}{it}", given(it.field()))).help(mend(it));
        Stop::WrongInput(Faults(faults.iter().map(fault).collect()))
    })?;
    let warnings: Vec<Fault> = weighed
        .warnings
        .iter()
        .filter(|it| !unsaid(it))
        .map(|it| {
            let (field, help) = asked(it);
            Fault::new(format!("{}{it}", given(field))).help(help).warning()
        })
        .collect();
    warn(&warnings);
    Ok(weighed)
}

/// Who gave a field: the card, or an option.
fn given_by(field: &str, is_of_card: bool) -> String {
    match (is_of_card, field) {
        (true, field) => format!("the card's {}", field.replace('.', " ")),
        (false, "handle_diameter") => "--handle".to_owned(),
        (false, field) => format!("--{}", field.trim_start_matches("pendulum.")),
    }
}

/// What the bench says of each figure of the card. Estimates are passed on as such: they decide nothing.
pub fn returned(bat: &WeighedBat) -> ReturnedBat {
    let length_m = bat.length_m;
    let percussion_m = bat.percussion_m;
    let origin = if length_m.is_estimated() { Origin::Estimated } else { percussion_m.origin };
    ReturnedBat {
        mass_kg: Some(bat.mass_kg),
        balance_m: Some(bat.balance_m),
        swing_moment_kg_m2: Some(bat.swing_moment_kg_m2),
        sweet_spot_from_toe_m: Some(Uncertain {
            value: length_m.value - percussion_m.value,
            sd: independent_sd(&[length_m.sd, percussion_m.sd]),
            origin,
        }),
        handle_diameter_m: bat
            .reading
            .handle_diameter_m
            .map(|it| Uncertain::measured(it, HANDLE_SD_M)),
    }
}
