//! The bat: from its card, or from the bench.

use std::path::Path;

use backlift::bat::figures::WeighedBat;
use backlift::card::Card;
use backlift::measurement::bench::{BatReading, PendulumReading};
use backlift::workshop::season::OnTheScale;

use crate::outcome::Stop;
use crate::questions::card_file;
use crate::questions::delivered::{length, mass, seconds, weigh_up};

/// What the bat weighs in the workshop, or shall weigh where it will live.
#[derive(clap::Args)]
pub struct Bench {
    /// Scale weight, like "1021 g" or "2 lb 4 oz"
    #[arg(long, value_name = "MASS", value_parser = mass, requires = "size")]
    mass: Option<f64>,

    /// Trade size, like "6" or "short handle"
    #[arg(long, value_name = "SIZE", requires = "mass")]
    size: Option<String>,

    /// Balance point from the top of the handle, like "497 mm"; that of the size if left out
    #[arg(long, value_name = "LENGTH", value_parser = length, requires = "mass")]
    balance: Option<f64>,

    /// Overall length, like "31.75 in"; that of the size if left out
    #[arg(long, value_name = "LENGTH", value_parser = length, requires = "mass")]
    length: Option<f64>,

    /// Time of ten pendulum swings about 6 in (152 mm) from the top, like "13.46 s"
    #[arg(long, value_name = "TIME", value_parser = seconds, requires = "mass")]
    time: Option<f64>,
}

/// A bat ready to be carried.
pub struct Given {
    /// Its card, if it has one.
    pub card: Option<Card>,
    /// The bat.
    pub weighed: WeighedBat,
    /// What its scale, pencil and pendulum say.
    pub on_the_scale: OnTheScale,
}

/// What it is called.
const THE_BAT: &str = "the bat";

/// Takes the bat from its card, else from the bench.
pub fn given(card: Option<&Path>, bench: &Bench) -> Result<Given, Stop> {
    let card = card.map(card_file::read).transpose()?;
    let reading = match &card {
        Some(card) => BatReading {
            size: Some(card.size.clone()),
            length_m: Some(card.length_m),
            balance_m: Some(card.balance_m),
            ..BatReading::weighed(THE_BAT, card.mass_kg)
        },
        None => BatReading {
            size: bench.size.clone(),
            length_m: bench.length,
            balance_m: bench.balance,
            pendulum: bench.time.map(PendulumReading::ten),
            // clap asks for the weight where there is no card
            ..BatReading::weighed(THE_BAT, bench.mass.unwrap_or(0.0))
        },
    };
    let weighed = weigh_up(&reading, |_| card.is_some())?;
    let timed = reading.pendulum.map(|_| weighed.swing_moment_kg_m2.value);
    let on_the_scale = OnTheScale {
        mass_kg: weighed.mass_kg.value,
        balance_m: weighed.balance_m.value,
        swing_moment_kg_m2: card.as_ref().map(|it| it.swing_moment_kg_m2).or(timed),
    };
    Ok(Given { card, weighed, on_the_scale })
}

impl Given {
    /// Figures that are the size's own, because nobody measured them on this bat: their names in JSON.
    pub fn estimated(&self) -> Vec<&'static str> {
        let balance = self.weighed.balance_m.is_estimated().then_some("balance_m");
        let swing = self.on_the_scale.swing_moment_kg_m2.is_none().then_some("swing_moment_kg_m2");
        balance.into_iter().chain(swing).collect()
    }
}
