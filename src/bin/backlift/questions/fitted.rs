//! A whole fitting with its headline and its card.

use backlift::card::Card;
use backlift::card::composed::compose;
use backlift::fit::fitting::{Fitting, fit};
use backlift::fit::headline::{Headline, headline};

use super::advice;
use crate::loaded::Loaded;
use crate::ounce::Ounces;
use crate::outcome::Stop;
use crate::progress::Progress;

/// A fitting with its headline and card.
pub struct Fitted {
    pub loaded: Loaded,
    pub fitting: Fitting,
    pub headline: Headline,
    pub card: Card,
}

impl Fitted {
    /// What an ounce costs along the bat to order, late in the innings.
    pub fn ounces(&self) -> Ounces {
        let setting = self.fitting.setting();
        Ounces {
            bat: self.fitting.recommendation.made.bat.clone().called(BAT_TO_ORDER),
            handle_diameter_m: self.card.handle_diameter_m,
            strokes: self.headline.ounces.clone(),
            pull: setting.batter.stroke_index("pull").unwrap_or(0),
            runs: setting.plan.runs,
        }
    }
}

/// What the bat on the card is called.
const BAT_TO_ORDER: &str = "the bat to order";

/// Name and version that stand on the card.
const SOFTWARE: &str = concat!("backlift ", env!("CARGO_PKG_VERSION"));

/// The search, its headline and its card.
pub fn fitted(loaded: Loaded, progress: &Progress) -> Result<Fitted, Stop> {
    let fitting = search(&loaded, progress)?;
    let headline = headline(&fitting, &|doing, share| progress.report(doing, 0.8 + 0.2 * share))
        .map_err(|fault| advice::stop(&loaded, fault))?;
    let card = compose(&fitting, &headline, loaded.scenario.invented, SOFTWARE)
        .map_err(|it| Stop::OurMistake(it.to_string()))?;
    Ok(Fitted { loaded, fitting, headline, card })
}

/// The search alone.
pub fn search(loaded: &Loaded, progress: &Progress) -> Result<Fitting, Stop> {
    fit(&loaded.order(), &|doing, share| progress.report(doing, 0.8 * share))
        .map_err(|fault| advice::stop(loaded, fault))
}
