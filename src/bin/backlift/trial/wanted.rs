//! The bat that shall be felt: from a card, from the same scenario, from three figures, or else the one
//! that the fit recommends.

use std::path::PathBuf;

use backlift::bat::figures::WeighedBat;
use backlift::bat::{Bat, BatFault};
use backlift::fit::trial::Pickup;
use backlift::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use backlift::units::{Quantity, parse};

use crate::beside::Beside;
use crate::loaded::Loaded;
use crate::outcome::Stop;
use crate::placed::argument_fault;
use crate::progress::Progress;
use crate::questions::card_file;
use crate::questions::fitted::search;

/// Ways to say which bat.
#[derive(clap::Args)]
pub struct WantedArgs {
    /// Like the bat of this maker's card (RON)
    #[arg(long, value_name = "CARD.ron", conflicts_with_all = ["like_bat", "mass"])]
    like: Option<PathBuf>,

    /// Like another bat of the scenario, by its label or its number from 0
    #[arg(long, value_name = "LABEL|N", conflicts_with = "mass")]
    like_bat: Option<String>,

    /// Like a bat of this dead weight, with the two figures below
    #[arg(long, value_name = "WEIGHT", requires_all = ["balance", "swing_moment"])]
    mass: Option<String>,

    /// Its balance point from the top of the handle, like "20.9 in"
    #[arg(long, value_name = "LENGTH", requires = "mass")]
    balance: Option<String>,

    /// Its swing moment in kg m², like 0.245
    #[arg(long, value_name = "KG_M2", requires = "mass")]
    swing_moment: Option<String>,
}

/// The bat that shall be felt.
pub struct Wanted {
    /// What it is called in a sentence.
    pub words: String,
    /// Its figures.
    pub pickup: Pickup,
    /// The bat itself, to be swung.
    pub bat: Bat,
    /// One standard deviation of its swing moment, kg m², if it was weighed.
    pub swing_sd_kg_m2: Option<f64>,
    /// What stands beside the card that it is from; nothing otherwise.
    pub beside: Beside,
}

impl WantedArgs {
    /// Finds it; `owned` is the bat that will be taped.
    pub fn wanted(
        &self,
        loaded: &Loaded,
        owned: &WeighedBat,
        progress: &Progress,
    ) -> Result<Wanted, Stop> {
        match (&self.like, &self.like_bat, &self.mass) {
            (Some(path), ..) => from_card(owned, path),
            (_, Some(named), _) => from_scenario(loaded, owned, named),
            (_, _, Some(mass)) => {
                let text = |it: &Option<String>| it.clone().unwrap_or_default();
                from_figures(owned, mass, &text(&self.balance), &text(&self.swing_moment))
            }
            _ => recommended(loaded, progress),
        }
    }
}

/// The bat that `fit` recommends to this player.
fn recommended(loaded: &Loaded, progress: &Progress) -> Result<Wanted, Stop> {
    let bat = search(loaded, progress)?.recommendation.made.bat;
    let pickup = Pickup::of(&bat);
    Ok(Wanted {
        words: "the bat to order".into(),
        pickup,
        bat,
        swing_sd_kg_m2: None,
        beside: Beside::default(),
    })
}

/// The bat on a card, at the card's length, its mass spread as in the family of the bat that will be taped.
fn from_card(owned: &WeighedBat, path: &std::path::Path) -> Result<Wanted, Stop> {
    let card = card_file::read(path)?;
    let pickup = Pickup {
        mass_kg: card.mass_kg,
        balance_m: card.balance_m,
        swing_moment_kg_m2: card.swing_moment_kg_m2,
    };
    let made = || -> Result<Bat, BatFault> {
        let it = owned.with(card.mass_kg, card.balance_m, card.swing_moment_kg_m2)?;
        Bat::new(it.label(), card.length_m, it.mass_kg(), it.com_B(), it.I_Com_B())
    };
    let bat = made().map_err(|it| {
        let message = format!("no bat has the figures of this card together: {it}");
        argument_fault("--like", &path.display().to_string(), &message, "check the card")
    })?;
    Ok(Wanted {
        words: "the bat on the card".into(),
        pickup,
        bat,
        swing_sd_kg_m2: None,
        beside: Beside::card(&card),
    })
}

fn from_scenario(loaded: &Loaded, owned: &WeighedBat, named: &str) -> Result<Wanted, Stop> {
    let it = loaded.bats.get(loaded.bat(Some(named))?);
    match it.filter(|it| it.reading.label != owned.reading.label) {
        Some(it) => Ok(Wanted {
            words: it.reading.label.clone(),
            pickup: Pickup::of(&it.bat),
            bat: it.bat.clone(),
            swing_sd_kg_m2: Some(it.swing_moment_kg_m2.sd),
            beside: Beside::default(),
        }),
        None => Err(argument_fault(
            "--like-bat",
            named,
            "this is the bat to be taped",
            "name another with --like-bat, or tape another with --bat",
        )),
    }
}

fn from_figures(
    owned: &WeighedBat,
    mass: &str,
    balance: &str,
    swing_moment: &str,
) -> Result<Wanted, Stop> {
    let quantity = |flag: &str, quantity: Quantity, text: &str| {
        parse(quantity, text)
            .map_err(|it| argument_fault(flag, text, &it.to_string(), &it.mend(quantity)))
    };
    let pickup = Pickup {
        mass_kg: quantity("--mass", Quantity::Mass, mass)?,
        balance_m: quantity("--balance", Quantity::Length, balance)?,
        swing_moment_kg_m2: swing_moment.trim().parse().map_err(|_| {
            let help = "write a number in kg m², like 0.245";
            argument_fault("--swing-moment", swing_moment, "this is not a number", help)
        })?,
    };
    let length_m = owned.length_m.value;
    if !(pickup.balance_m > PICKUP_AXIS_FROM_TOP_M && pickup.balance_m < length_m) {
        let message = format!(
            "the balance point must lie between the pickup axis, {PICKUP_AXIS_FROM_TOP_M} m from the top of the handle, and the toe at {length_m:.3} m"
        );
        let help = "measure it from the top of the handle; check the unit";
        return Err(argument_fault("--balance", balance, &message, help));
    }
    // Whatever cannot be a bat of this length cannot be felt.
    let made = owned.with(pickup.mass_kg, pickup.balance_m, pickup.swing_moment_kg_m2);
    let bat = made.map_err(|it| {
        let help = "check the three figures: weight, balance from the top, swing moment about the axis 6 in from the top";
        let message = format!("no bat has these three figures together: {it}");
        argument_fault("--swing-moment", swing_moment, &message, help)
    })?;
    Ok(Wanted {
        words: "the bat asked for".into(),
        pickup,
        bat,
        swing_sd_kg_m2: None,
        beside: Beside::default(),
    })
}
