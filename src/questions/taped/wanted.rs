//! The bat that shall be felt: from a card, from the same scenario, from three figures, or else the one
//! that the fit recommends.

use super::super::fitted::search;
use super::super::loaded::Loaded;
use super::super::placed::argument_fault;
use super::super::{Progress, Stop};
use crate::bat::figures::WeighedBat;
use crate::bat::{Bat, BatFault};
use crate::card::Card;
use crate::fit::trial::Pickup;
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::units::{Quantity, parse};

/// The bat that shall be felt.
#[derive(Clone, Debug)]
pub struct Wanted {
    /// What it is called in a sentence.
    pub words: String,
    /// Its figures.
    pub pickup: Pickup,
    /// The bat itself, to be swung.
    pub bat: Bat,
    /// One standard deviation of its swing moment, kg m², if it was weighed.
    pub swing_sd_kg_m2: Option<f64>,
    /// The card that it is from, if it is from one.
    pub card: Option<Card>,
}

impl Wanted {
    fn called(words: &str, pickup: Pickup, bat: Bat) -> Self {
        Self { words: words.to_owned(), pickup, bat, swing_sd_kg_m2: None, card: None }
    }
}

/// The bat that `fit` recommends to this player.
///
/// # Errors
/// If the search fails or is cancelled.
pub fn recommended(loaded: &Loaded, progress: &dyn Progress) -> Result<Wanted, Stop> {
    let bat = search(loaded, progress)?.recommendation.made.bat;
    Ok(Wanted::called("the bat to order", Pickup::of(&bat), bat))
}

/// The bat on a card, at the card's length, its mass spread as in the family of the bat that will be taped.
///
/// # Errors
/// If no bat has these figures together.
pub fn from_card(owned: &WeighedBat, card: Card, file: &str) -> Result<Wanted, Stop> {
    let pickup = Pickup {
        mass_kg: card.mass_kg(),
        balance_m: card.balance_m(),
        swing_moment_kg_m2: card.swing_moment_kg_m2(),
    };
    let made = || -> Result<Bat, BatFault> {
        let it = owned.with(card.mass_kg(), card.balance_m(), card.swing_moment_kg_m2())?;
        Bat::new(it.label(), card.length_m, it.mass_kg(), it.com_B(), it.I_Com_B())
    };
    let bat = made().map_err(|it| {
        let message = format!("no bat has the figures of this card together: {it}");
        argument_fault("--like", file, &message, "check the card")
    })?;
    Ok(Wanted { card: Some(card), ..Wanted::called("the bat on the card", pickup, bat) })
}

/// Another of the scenario than the one that will be taped, by its label or its number from 0.
///
/// # Errors
/// If there is none, or it is the bat that will be taped.
pub fn from_scenario(loaded: &Loaded, owned: &WeighedBat, named: &str) -> Result<Wanted, Stop> {
    let it = loaded.bats.get(loaded.bat(Some(named))?);
    match it.filter(|it| it.reading.label != owned.reading.label) {
        Some(it) => Ok(Wanted {
            swing_sd_kg_m2: Some(it.swing_moment_kg_m2.sd),
            ..Wanted::called(&it.reading.label, Pickup::of(&it.bat), it.bat.clone())
        }),
        None => Err(argument_fault(
            "--like-bat",
            named,
            "this is the bat to be taped",
            "name another with --like-bat, or tape another with --bat",
        )),
    }
}

/// A bat of these figures as people write them: dead weight and balance point from the top of the handle with their
/// units, swing moment about the pickup axis in kg m²; its mass spread as in the family of the bat that will be taped.
///
/// # Errors
/// If one cannot be read, or no bat has them together.
pub fn from_figures(
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
    Ok(Wanted::called("the bat asked for", pickup, bat))
}
