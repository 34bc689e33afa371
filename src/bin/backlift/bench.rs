//! What was measured at the bench on one bat, given as options.

use backlift::card::Card;
use backlift::measurement::bench::{BatReading, PendulumReading, USUAL_AMPLITUDE_RAD};
use backlift::units::{FromEnd, Quantity};
use backlift::workshop::stages::{Entry, Moment, Stage};

use crate::given::quantity;

/// Bench measurements, each with its unit.
#[derive(clap::Args)]
pub struct Bench {
    /// Scale weight, like "1021 g" or "2 lb 4 oz"
    #[arg(long, value_name = "MASS", value_parser = above_zero(Quantity::Mass))]
    mass: Option<f64>,

    /// Overall length, like "31.75 in"
    #[arg(long, value_name = "LENGTH", value_parser = above_zero(Quantity::Length), requires = "mass")]
    length: Option<f64>,

    /// Balance point, like "497 mm" from the top of the handle, or "309 mm from toe"
    #[arg(long, value_name = "LENGTH", value_parser = from_end, requires = "mass")]
    balance: Option<FromEnd>,

    /// Time of all pendulum swings together, like "13.46 s"
    #[arg(long, value_name = "TIME", value_parser = above_zero(Quantity::Time), requires = "mass")]
    time: Option<f64>,

    /// Full swings timed, out and back; as on the card if left out
    #[arg(long, value_name = "N", requires = "time")]
    swings: Option<u32>,

    /// Pivot from the top of the handle, like "6 in"; as on the card if left out
    #[arg(long, value_name = "LENGTH", value_parser = above_zero(Quantity::Length), requires = "time")]
    pivot: Option<f64>,

    /// Handle diameter over the grip at the bottom hand, like "33 mm"
    #[arg(long, value_name = "LENGTH", value_parser = above_zero(Quantity::Length), requires = "mass")]
    handle: Option<f64>,
}

/// Reads a quantity above zero.
pub fn above_zero(of: Quantity) -> impl Fn(&str) -> Result<f64, String> + Clone + Send + Sync {
    move |written: &str| {
        let value = quantity(of, written)?;
        if value > 0.0 { Ok(value) } else { Err("it must be above zero".to_owned()) }
    }
}

/// A place along a bat, from either end.
pub fn from_end(written: &str) -> Result<FromEnd, String> {
    let help = "write it like \"502 mm\" from the top, or \"328 mm from toe\"";
    let it = FromEnd::read(written).map_err(|it| format!("{it}; {help}"))?;
    if it.written_m() > 0.0 { Ok(it) } else { Err(format!("it must be above zero; {help}")) }
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
            balance_m: self.balance.map(|it| it.from_top_m(self.length.unwrap_or(card.length_m))),
            handle_diameter_m: self.handle,
            pendulum,
            ..BatReading::weighed("the delivered bat", self.mass?)
        })
    }

    /// The same as an entry of the bat's own file, in a stage that it had reached before; none if it was not even
    /// weighed.
    pub fn entry(&self, card: &Card, stage: Stage, at: Moment) -> Option<Entry> {
        let reading = self.reading(card)?;
        Some(Entry {
            again: true,
            balance_m: reading.balance_m,
            pendulum: reading.pendulum,
            handle_m: reading.handle_diameter_m,
            ..Entry::weighed(stage, at, reading.mass_kg)
        })
    }

    /// What a field of the reading is called here: an option, or the card's own, where the card gave it.
    pub fn called(&self, field: &str) -> String {
        let of_card = match field {
            "size" => true,
            "pendulum.pivot" => self.pivot.is_none(),
            "pendulum.swings" => self.swings.is_none(),
            _ => false,
        };
        if of_card { of_the_card(field) } else { option(field) }
    }
}

/// A field that a card gave.
pub fn of_the_card(field: &str) -> String {
    format!("the card's {}", field.replace('.', " "))
}

/// A field that an option gave.
pub fn option(field: &str) -> String {
    match field {
        "handle_diameter" => "--handle".to_owned(),
        field => format!("--{}", field.trim_start_matches("pendulum.")),
    }
}
