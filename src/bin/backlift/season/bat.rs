//! The bat: from its card, or from the bench.

use backlift::bat::sizes::{Size, named};
use backlift::files::assets::sizes;
use backlift::measurement::bench::{BatReading, PendulumReading};
use backlift::questions::season::{Given, THE_BAT};
use backlift::units::FromEnd;

use crate::bench::{from_end, length, mass, of_the_card, option, seconds};
use crate::outcome::{Stop, warned};
use crate::own::Own;

/// What the bat weighs in the workshop, or shall weigh where it will live.
#[derive(clap::Args)]
pub struct Bench {
    /// Scale weight, like "1021 g" or "2 lb 4 oz"
    #[arg(long, value_name = "MASS", value_parser = mass, requires = "size")]
    mass: Option<f64>,

    /// Trade size, like "6" or "short handle"
    #[arg(long, value_name = "SIZE", requires = "mass")]
    size: Option<String>,

    /// Balance point, like "497 mm" from the top of the handle, or "309 mm from toe"; that of the size if left out
    #[arg(long, value_name = "LENGTH", value_parser = from_end, requires = "mass")]
    balance: Option<FromEnd>,

    /// Overall length, like "31.75 in"; that of the size if left out
    #[arg(long, value_name = "LENGTH", value_parser = length, requires = "mass")]
    length: Option<f64>,

    /// Time of ten pendulum swings about 6 in (152 mm) from the top, like "13.46 s"
    #[arg(long, value_name = "TIME", value_parser = seconds, requires = "mass")]
    time: Option<f64>,
}

/// Takes the bat as its card asks for it, else from the bench.
pub fn given(own: Option<&Own>, bench: &Bench) -> Result<Given, Stop> {
    Ok(warned(match own {
        Some(own) => Given::carded(own.card()?.clone(), of_the_card)?,
        None => Given::read(&bench.reading()?, option)?,
    }))
}

impl Bench {
    fn reading(&self) -> Result<BatReading, Stop> {
        let sizes = sizes()?;
        let of_size = self.size.as_deref().and_then(|it| named(&sizes, it)).map(Size::length_m);
        // Of a size that nobody knows the weighing says so.
        let length_m = self.length.or(of_size).unwrap_or(0.0);
        Ok(BatReading {
            size: self.size.clone(),
            length_m: self.length,
            balance_m: self.balance.map(|it| it.from_top_m(length_m)),
            pendulum: self.time.map(PendulumReading::ten),
            // clap asks for the weight where there is no card
            ..BatReading::weighed(THE_BAT, self.mass.unwrap_or(0.0))
        })
    }
}
