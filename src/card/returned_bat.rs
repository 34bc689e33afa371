//! A delivered bat against its card.
//!
//! **The rule.** The card carries the region of bats that are as good as the one asked: weight, balance point and swing
//! moment together, by what the player loses.
//! 1. Swing moment measured: accept what loses no more than half a per cent of the worth asked; every bat within all
//!    printed limits does. A figure outside its own limits is noted, for the maker to know.
//! 2. Swing moment not measured: weight and balance decide together. Either outside: send back; accept only if both
//!    were measured.
//!
//! Cards of editions before the region was known are held against their limits of the swing moment, then of weight and
//! balance. A swing moment that was estimated from size and shape counts as not measured.
//! Source of the rule: assumption of this project.

use super::{Asked, Card, Figure};
use crate::fit::region::MAY_LOSE;
use crate::uncertain::{Origin, Uncertain};

/// Chance above which a figure counts as within, and below one minus which as outside.
const SURE: f64 = 0.95;

/// What was measured on the delivered bat; anything may be missing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReturnedBat {
    /// What the bench says of each figure, in the order of [`Figure::ALL`].
    pub figures: [Option<Uncertain>; Figure::ALL.len()],
}

/// Whether a figure lies within its tolerance, its measuring error considered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Within {
    /// With a chance of 95 % or more.
    Yes,
    /// With a chance of 5 % or less.
    No,
    /// Too near a limit to say.
    Unsure,
    /// Nothing to go by.
    NotMeasured,
}

/// One line of the check.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Item {
    /// Which figure.
    pub figure: Figure,
    /// What the card asks.
    pub asked: Asked,
    /// What the bench says.
    pub measured: Option<Uncertain>,
    /// The verdict.
    pub within: Within,
}

/// What settled the check.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DecidedBy {
    /// Weight, balance point and swing moment together.
    Worth,
    /// The swing moment, measured.
    SwingMoment,
    /// The swing moment, measured, but too near a limit for its error: on which side it reads.
    SwingMomentReading,
    /// Dead weight and balance point, since the swing moment was not measured.
    WeightAndBalance,
    /// Too little was measured to accept the bat.
    TooLittleMeasured,
}

/// A delivered bat against its card.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// Accept the bat, or send it back.
    pub accepted: bool,
    /// Line by line, in the order of [`Figure::ALL`].
    pub items: [Item; Figure::ALL.len()],
    /// What settled it.
    pub decided_by: DecidedBy,
    /// Share of the worth asked that the bat loses; below nought it gains. None where the card does not tell, the bat
    /// was not measured enough, or it is another bat altogether.
    pub worth_lost_share: Option<f64>,
}

/// Checks what was measured on a delivered bat against its card.
pub fn check(card: &Card, bat: &ReturnedBat) -> Check {
    let items = Figure::ALL.map(|figure| {
        let (asked, measured) = (card.asked(figure), bat.measured(figure));
        let within = measured.map_or(Within::NotMeasured, |it| within(it, asked));
        Item { figure, asked, measured, within }
    });
    let item = |figure: Figure| items[figure as usize];
    let lost = worth_lost(card, bat);
    let swing = item(Figure::SwingMoment);
    let (accepted, decided_by) = match swing.within {
        Within::NotMeasured => {
            by_weight_and_balance(item(Figure::DeadWeight).within, item(Figure::Balance).within)
        }
        _ if card.region.is_some() => (lost.is_some_and(|it| it <= MAY_LOSE), DecidedBy::Worth),
        Within::Yes => (true, DecidedBy::SwingMoment),
        Within::No => (false, DecidedBy::SwingMoment),
        Within::Unsure => (swing.reads_inside(), DecidedBy::SwingMomentReading),
    };
    Check { accepted, items, decided_by, worth_lost_share: lost }
}

/// Share of the worth that a measured bat loses.
fn worth_lost(card: &Card, bat: &ReturnedBat) -> Option<f64> {
    let measured = |figure| bat.measured(figure).map(|it| it.value);
    card.region?.worth_lost_share(
        measured(Figure::DeadWeight)?,
        bat.figures[Figure::Balance as usize]?.value,
        measured(Figure::SwingMoment)?,
    )
}

/// Without a swing moment.
fn by_weight_and_balance(weight: Within, balance: Within) -> (bool, DecidedBy) {
    if weight == Within::No || balance == Within::No {
        (false, DecidedBy::WeightAndBalance)
    } else if weight == Within::NotMeasured || balance == Within::NotMeasured {
        (false, DecidedBy::TooLittleMeasured)
    } else {
        (true, DecidedBy::WeightAndBalance)
    }
}

impl Item {
    /// Whether it reads inside its limits, its error aside.
    pub fn reads_inside(&self) -> bool {
        self.measured.is_some_and(|it| self.asked.takes(it.value))
    }
}

impl ReturnedBat {
    fn measured(&self, figure: Figure) -> Option<Uncertain> {
        self.figures[figure as usize]
            .filter(|it| it.value.is_finite() && it.sd.is_finite())
            .filter(|it| !matches!(it.origin, Origin::Estimated | Origin::Assumed))
    }
}

impl Check {
    /// The verdict as one sentence.
    pub fn sentence(&self) -> String {
        let outside: Vec<&str> = self
            .items
            .iter()
            .filter(|it| it.within == Within::No)
            .map(|it| it.figure.words())
            .collect();
        let noted = match outside.as_slice() {
            [] => String::new(),
            [one] => format!("; tell the maker that its {one} is outside"),
            [most @ .., last] => {
                format!("; tell the maker that its {} and {last} are outside", most.join(", "))
            }
        };
        match (self.accepted, self.decided_by) {
            (_, DecidedBy::Worth) => self.by_worth(&noted),
            (true, DecidedBy::SwingMoment) => {
                format!("Accept: the swing moment is as ordered{noted}")
            }
            (true, DecidedBy::SwingMomentReading) => format!(
                "Accept: the swing moment is within its limits, as far as this reading can tell{noted}"
            ),
            (true, _) => format!(
                "Accept: neither weight nor balance is outside; the swing moment is not proved, so time the pendulum to be sure{noted}"
            ),
            (false, DecidedBy::SwingMomentReading) => {
                "Not accepted yet: the swing moment reads outside, though within its error of a limit; time more swings"
                    .to_owned()
            }
            (false, DecidedBy::SwingMoment) => {
                "Send back: the swing moment is outside, and it decides how the bat picks up"
                    .to_owned()
            }
            (false, DecidedBy::WeightAndBalance) => format!(
                "Send back: the {} is outside, and no swing moment speaks for the bat",
                outside.join(" and the ")
            ),
            (false, DecidedBy::TooLittleMeasured) => {
                "Not accepted: time the pendulum, or at least weigh and balance the bat".to_owned()
            }
        }
    }

    fn by_worth(&self, noted: &str) -> String {
        let may = format!("{:.1} % may be lost", 100.0 * MAY_LOSE);
        match (self.accepted, self.worth_lost_share) {
            (true, Some(lost)) if lost > 0.0 => format!(
                "Accept: as good as the bat ordered; it loses {:.1} % of its worth, where {may}{noted}",
                100.0 * lost
            ),
            (true, _) => format!("Accept: as good as the bat ordered, or better{noted}"),
            (false, Some(lost)) => format!(
                "Send back: it loses {:.1} % of the worth ordered, where {may}{noted}",
                100.0 * lost
            ),
            (false, None) => format!("Send back: this is another bat than the one ordered{noted}"),
        }
    }
}

/// The verdict on one figure: its chance to lie within, normal error, at 95 and 5 %.
fn within(measured: Uncertain, asked: Asked) -> Within {
    let [low, high] = asked.tolerance;
    let chance = if measured.sd > 0.0 {
        let below = |limit: f64| {
            0.5 * (1.0
                + libm::erf((limit - measured.value) / (measured.sd * std::f64::consts::SQRT_2)))
        };
        below(high) - below(low)
    } else {
        f64::from(u8::from(asked.takes(measured.value)))
    };
    if chance >= SURE {
        Within::Yes
    } else if chance <= 1.0 - SURE {
        Within::No
    } else {
        Within::Unsure
    }
}
