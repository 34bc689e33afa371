//! The card: what a maker needs at the bench, and nothing else.
//!
//! Plain values in SI units. Stations along the bat are metres from the top of the handle unless the
//! name says `from_toe`. A tolerance is `[low, high]`: the limits themselves, not the distances to them.

pub mod cautions;
mod checked;
pub mod composed;
mod fault;
mod figure;
pub mod order;
pub mod outside;
pub mod returned_bat;

pub use crate::bat::handle::HandleShape;
pub use fault::CardFault;
pub use figure::Figure;
use figure::steps_a_unit;

use crate::fit::region::Region;
use crate::fit::tolerance::{TimeForMass, Tolerances};
use crate::measurement::person::Handed;
use order::Order;

/// The state of the bat in which the figures hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Condition {
    /// Rubber grips on the handle.
    pub grips: u32,
    /// With a toe guard.
    pub toe_guard: bool,
    /// With its first oil, or a face sheet in its place.
    pub oiled: bool,
}

/// The player, without a name.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlayerLine {
    /// Age, years.
    pub age_y: f64,
    /// Stature, m.
    pub stature_m: f64,
    /// Batting hand.
    pub handed: Handed,
}

/// One bat, ordered.
#[derive(Clone, Debug, PartialEq)]
pub struct Card {
    /// For whom.
    pub player: PlayerLine,
    /// The player is made up, as in the examples.
    pub invented: bool,
    /// Trade size: "5", "Harrow", "short handle".
    pub size: String,
    /// Overall length, m.
    pub length_m: f64,
    /// What is asked of each figure, in the order of [`Figure::ALL`].
    pub figures: [Asked; Figure::ALL.len()],
    /// Which bats are as good as the one asked, weight, balance point and swing moment together; none on cards of
    /// editions before it was known.
    pub region: Option<Region>,
    /// Pickup weight, kg: scale weight of the standard bat of this size with the same swing moment.
    pub pickup_weight_kg: f64,
    /// Pivot of the pendulum test, m from the top of the handle.
    pub pendulum_pivot_m: f64,
    /// Full swings (out and back) to time.
    pub pendulum_swings: u32,
    /// Time of all of them for the bat as ordered, s, and its limits for a bat of the ordered weight and balance.
    pub pendulum_time_s: Asked,
    /// Shape of the handle.
    pub handle_shape: HandleShape,
    /// Why this bat, in two sentences.
    pub reason: String,
    /// How far to trust it: what the outside checks found, and what this fitting hangs on.
    pub how_sure: String,
    /// What the player and the coach must know; starts with [`cautions::standing`].
    pub cautions: Vec<String>,
    /// The state in which the figures hold.
    pub condition: Condition,
    /// Stature at which to fit again, m; none for a grown player.
    pub refit_stature_m: Option<f64>,
    /// What the order is called and what is wished, where somebody said it.
    pub order: Option<Order>,
    /// Program and version.
    pub software: String,
    /// Edition of the model and its tables.
    pub model: String,
}

/// A target and its limits, in the figure's own unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Asked {
    /// What is wanted.
    pub target: f64,
    /// Lowest and highest value that will do.
    pub tolerance: [f64; 2],
}

impl Asked {
    /// A target with its limits.
    pub fn new(target: f64, tolerance: [f64; 2]) -> Self {
        Self { target, tolerance }
    }

    /// Rounded to so many decimals, the limits inward so that nothing outside these is ever accepted.
    fn rounded(self, decimals: usize) -> Self {
        let steps_a_unit = steps_a_unit(decimals);
        let [low, high] = self.tolerance;
        let target = to_step(self.target, steps_a_unit);
        let slack = 1e-6; // a limit that is whole already stays, for all its binary dust
        let low = ((low * steps_a_unit - slack).ceil() / steps_a_unit).min(target);
        let high = ((high * steps_a_unit + slack).floor() / steps_a_unit).max(target);
        Self { target, tolerance: [low, high] }
    }

    /// Whether a value will do.
    pub fn takes(&self, value: f64) -> bool {
        let [low, high] = self.tolerance;
        (low..=high).contains(&value)
    }
}

impl Card {
    /// What the card asks of one figure.
    pub fn asked(&self, figure: Figure) -> Asked {
        self.figures[figure as usize]
    }

    /// Dead weight asked, kg.
    pub fn mass_kg(&self) -> f64 {
        self.asked(Figure::DeadWeight).target
    }

    /// Balance point asked, m from the top of the handle.
    pub fn balance_m(&self) -> f64 {
        self.asked(Figure::Balance).target
    }

    /// Swing moment asked, kg m².
    pub fn swing_moment_kg_m2(&self) -> f64 {
        self.asked(Figure::SwingMoment).target
    }

    /// Handle diameter asked, m.
    pub fn handle_diameter_m(&self) -> f64 {
        self.asked(Figure::HandleDiameter).target
    }

    /// Times of the swings by the weight on the scale: with any balance point within its limits each is a swing
    /// moment within its own.
    pub fn pendulum_times(&self) -> Vec<TimeForMass> {
        let tolerances = Tolerances {
            mass_kg: self.asked(Figure::DeadWeight).tolerance,
            balance_m: self.asked(Figure::Balance).tolerance,
            swing_moment_kg_m2: self.asked(Figure::SwingMoment).tolerance,
        };
        tolerances.times(self.pendulum_swings)
    }

    /// The card with every figure rounded to what a bench can read, the limits inward; times to 0.01 s.
    /// Print, save and check this one: then every copy of a card says the same.
    pub fn rounded_for_the_bench(&self) -> Self {
        let mut card = self.clone();
        card.figures = Figure::ALL.map(|it| self.asked(it).rounded(it.about().decimals));
        card.pendulum_time_s = self.pendulum_time_s.rounded(2);
        card.length_m = to_step(card.length_m, 1e3);
        card.pickup_weight_kg = to_step(card.pickup_weight_kg, 1e3);
        card.pendulum_pivot_m = to_step(card.pendulum_pivot_m, 1e4);
        card.refit_stature_m = card.refit_stature_m.map(|stature_m| to_step(stature_m, 1e2));
        card
    }
}

fn to_step(value: f64, steps_a_unit: f64) -> f64 {
    (value * steps_a_unit).round() / steps_a_unit
}
