//! Why figures cannot be a card.

/// Why a set of figures cannot be a card.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum CardFault {
    /// Not a positive finite number.
    #[error("the card's {what} is {value}, not a positive number")]
    NotPositive {
        /// Which figure.
        what: &'static str,
        /// The offending value.
        value: f64,
    },
    /// The target lies outside its own limits.
    #[error("the card's {what} {target} lies outside its own tolerance {low} to {high}")]
    TargetOutsideTolerance {
        /// Which figure.
        what: &'static str,
        /// What is wanted.
        target: f64,
        /// Lower limit.
        low: f64,
        /// Upper limit.
        high: f64,
    },
    /// A figure that no card has.
    #[error("the card's {what} {value} is outside {low} to {high}, and no card has it")]
    Impossible {
        /// Which figure.
        what: &'static str,
        /// The offending value, SI.
        value: f64,
        /// Lowest, SI.
        low: f64,
        /// Highest, SI.
        high: f64,
    },
    /// A text of the order that is longer than a card has room for.
    #[error("the card's {what} has {letters} letters, {most} at most")]
    TooLong {
        /// Which text.
        what: &'static str,
        /// How many letters it has.
        letters: usize,
        /// How many there may be.
        most: usize,
    },
    /// A station that is not on the bat.
    #[error("the card's {what} {station_m} m lies off the bat, which is {length_m} m long")]
    OffTheBat {
        /// Which station.
        what: &'static str,
        /// Where it was put.
        station_m: f64,
        /// Overall length.
        length_m: f64,
    },
}
