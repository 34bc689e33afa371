//! A figure of the card that a bench can check: what is said of it wherever it stands.

use crate::units::Quantity;

/// One figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    /// Swing moment, kg m², about the pickup axis 0.1524 m from the top of the handle.
    SwingMoment,
    /// Dead weight, kg.
    DeadWeight,
    /// Balance point, m from the top of the handle.
    Balance,
    /// Sweet spot, m from the toe.
    SweetSpot,
    /// Handle diameter over the grip at the bottom hand, m.
    HandleDiameter,
}

/// All that is said of one.
#[derive(Clone, Copy, Debug)]
pub struct About {
    words: &'static str,
    /// At the head of a row, with the end that it is taken from, or its unit if that is not the trade's.
    pub row_words: &'static str,
    /// From where it is taken, if it is a place.
    pub taken_from: Option<&'static str>,
    /// Name with its unit, as other programs read it; the same of its limits.
    pub keys: [&'static str; 2],
    /// What is spoken of in units of the trade; none for the swing moment, which has none.
    pub quantity: Option<Quantity>,
    /// SI unit of its values.
    pub unit: &'static str,
    /// Decimals, in its unit, of what a bench can read: 1 g, 1 mm (handle 0.1 mm), 0.0001 kg m².
    pub decimals: usize,
    /// Lowest and highest that a card may ask, its limits too, in its unit: assumptions, wide on purpose.
    pub(super) possible: [f64; 2],
}

impl Figure {
    /// All of them, in the order in which they decide.
    pub const ALL: [Self; 5] =
        [Self::SwingMoment, Self::DeadWeight, Self::Balance, Self::SweetSpot, Self::HandleDiameter];

    /// All of them, in the order in which they are printed.
    pub const PRINTED: [Self; 5] =
        [Self::DeadWeight, Self::Balance, Self::SwingMoment, Self::SweetSpot, Self::HandleDiameter];

    /// All that is said of it.
    pub fn about(self) -> About {
        match self {
            Self::SwingMoment => About {
                words: "swing moment",
                row_words: "swing moment, kg m²",
                taken_from: None,
                keys: ["swing_moment_kg_m2", "swing_moment_tolerance_kg_m2"],
                quantity: None,
                unit: "kg m²",
                decimals: 4,
                possible: [0.001, 2.0],
            },
            Self::DeadWeight => About {
                words: "dead weight",
                row_words: "dead weight",
                taken_from: None,
                keys: ["mass_kg", "mass_tolerance_kg"],
                quantity: Some(Quantity::Mass),
                unit: "kg",
                decimals: 3,
                possible: [0.1, 5.0],
            },
            Self::Balance => About {
                words: "balance point",
                row_words: "balance, from the top",
                taken_from: Some("from the top of the handle"),
                keys: ["balance_m", "balance_tolerance_m"],
                quantity: Some(Quantity::Length),
                unit: "m",
                decimals: 3,
                possible: [0.01, 1.2],
            },
            Self::SweetSpot => About {
                words: "sweet spot",
                row_words: "sweet spot, from the toe",
                taken_from: Some("from the toe"),
                keys: ["sweet_spot_from_toe_m", "sweet_spot_tolerance_m"],
                quantity: Some(Quantity::Length),
                unit: "m",
                decimals: 3,
                possible: [0.001, 1.2],
            },
            Self::HandleDiameter => About {
                words: "handle diameter",
                row_words: "handle over the grip",
                taken_from: None,
                keys: ["handle_diameter_m", "handle_tolerance_m"],
                quantity: Some(Quantity::Length),
                unit: "m",
                decimals: 4,
                possible: [0.005, 0.1],
            },
        }
    }

    /// In the trade's words.
    pub fn words(self) -> &'static str {
        self.about().words
    }

    /// The least that a bench can tell apart, in its unit.
    pub fn step(self) -> f64 {
        1.0 / steps_a_unit(self.about().decimals)
    }
}

/// Steps of the last of so many decimals in one.
pub(super) fn steps_a_unit(decimals: usize) -> f64 {
    (0..decimals).map(|_| 10.0).product()
}
