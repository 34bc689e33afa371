//! A whole fitting with its headline and its card.

use super::advice;
use super::loaded::Loaded;
use super::ounces::Ounces;
use super::{Progress, Stop};
use crate::card::Card;
use crate::card::composed::compose;
use crate::fit::fitting::{Fitting, fit};
use crate::fit::headline::{Headline, headline};

/// A fitting with its headline and card.
#[derive(Debug)]
pub struct Fitted {
    /// What it was asked of.
    pub loaded: Loaded,
    /// The search.
    pub fitting: Fitting,
    /// The innings with the bat to order.
    pub headline: Headline,
    /// What the maker gets.
    pub card: Card,
}

impl Fitted {
    /// What an ounce costs along the bat to order, late in the innings.
    pub fn ounces(&self) -> Ounces {
        Ounces {
            bat: self.fitting.recommendation.made.bat.clone().called(BAT_TO_ORDER),
            handle_diameter_m: self.card.handle_diameter_m(),
            strokes: self.headline.ounces.clone(),
            leading: self.loaded.lead(),
            runs: self.fitting.setting().plan.runs,
        }
    }
}

/// What the bat on the card is called.
pub const BAT_TO_ORDER: &str = "the bat to order";

/// Name and version that stand on the card.
const SOFTWARE: &str = concat!("backlift ", env!("CARGO_PKG_VERSION"));

/// The search, its headline and its card.
///
/// # Errors
/// If the work is cancelled, or no bat can be advised.
pub fn fitted(loaded: Loaded, progress: &dyn Progress) -> Result<Fitted, Stop> {
    let fitting = search(&loaded, progress)?;
    let headline = headline(&fitting, &|doing, share| progress.report(doing, 0.8 + 0.2 * share))
        .map_err(|fault| advice::stop(&loaded, fault))?;
    let card = compose(&fitting, &headline, loaded.scenario.invented, SOFTWARE)
        .map_err(Stop::our_mistake)?
        .ordered(loaded.order.clone());
    Ok(Fitted { loaded, fitting, headline, card })
}

/// The search alone.
///
/// # Errors
/// If the work is cancelled, or no bat can be advised.
pub fn search(loaded: &Loaded, progress: &dyn Progress) -> Result<Fitting, Stop> {
    fit(&loaded.order(), &|doing, share| progress.report(doing, 0.8 * share))
        .map_err(|fault| advice::stop(loaded, fault))
}
