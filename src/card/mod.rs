//! The card: what a maker needs at the bench, and nothing else.
//!
//! Plain values in SI units. Stations along the bat are metres from the top of the handle unless the
//! name says `from_toe`. A tolerance is `[low, high]`: the limits themselves, not the distances to them.

pub mod cautions;
pub mod composed;
mod fault;
pub mod outside;
pub mod returned_bat;

pub use crate::bat::handle::HandleShape;
pub use fault::CardFault;

use crate::fit::region::Region;
use crate::fit::tolerance::{TimeForMass, Tolerances};
use crate::measurement::person::Handed;

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
    /// Dead weight, kg.
    pub mass_kg: f64,
    /// Limits of the dead weight, kg.
    pub mass_tolerance_kg: [f64; 2],
    /// Balance point, m from the top of the handle.
    pub balance_m: f64,
    /// Limits of the balance point, m from the top of the handle.
    pub balance_tolerance_m: [f64; 2],
    /// Swing moment, kg m², about the pickup axis 0.1524 m from the top of the handle.
    pub swing_moment_kg_m2: f64,
    /// Limits of the swing moment, kg m².
    pub swing_moment_tolerance_kg_m2: [f64; 2],
    /// Which bats are as good as the one asked, weight, balance point and swing moment together; none on cards of
    /// editions before it was known.
    pub region: Option<Region>,
    /// Pickup weight, kg: scale weight of the standard bat of this size with the same swing moment.
    pub pickup_weight_kg: f64,
    /// Pivot of the pendulum test, m from the top of the handle.
    pub pendulum_pivot_m: f64,
    /// Full swings (out and back) to time.
    pub pendulum_swings: u32,
    /// Time of all of them for the bat as ordered, s.
    pub pendulum_time_s: f64,
    /// Limits of that time for a bat of the ordered weight and balance, s.
    pub pendulum_time_tolerance_s: [f64; 2],
    /// Sweet spot, m from the toe.
    pub sweet_spot_from_toe_m: f64,
    /// Limits of the sweet spot, m from the toe.
    pub sweet_spot_tolerance_m: [f64; 2],
    /// Handle diameter over the grip at the bottom hand, m.
    pub handle_diameter_m: f64,
    /// Limits of the handle diameter, m.
    pub handle_tolerance_m: [f64; 2],
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
    /// Program and version.
    pub software: String,
    /// Edition of the model and its tables.
    pub model: String,
}

/// A figure of the card that a bench can check.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    /// Swing moment, kg m².
    SwingMoment,
    /// Dead weight, kg.
    DeadWeight,
    /// Balance point, m from the top of the handle.
    Balance,
    /// Sweet spot, m from the toe.
    SweetSpot,
    /// Handle diameter, m.
    HandleDiameter,
}

impl Figure {
    /// All of them, in the order in which they decide.
    pub const ALL: [Self; 5] =
        [Self::SwingMoment, Self::DeadWeight, Self::Balance, Self::SweetSpot, Self::HandleDiameter];

    /// In the trade's words.
    pub fn words(self) -> &'static str {
        match self {
            Self::SwingMoment => "swing moment",
            Self::DeadWeight => "dead weight",
            Self::Balance => "balance point",
            Self::SweetSpot => "sweet spot",
            Self::HandleDiameter => "handle diameter",
        }
    }
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
    /// Whether a value will do.
    pub fn takes(&self, value: f64) -> bool {
        let [low, high] = self.tolerance;
        (low..=high).contains(&value)
    }
}

impl Card {
    /// What the card asks of one figure.
    pub fn asked(&self, figure: Figure) -> Asked {
        let (target, tolerance) = match figure {
            Figure::SwingMoment => (self.swing_moment_kg_m2, self.swing_moment_tolerance_kg_m2),
            Figure::DeadWeight => (self.mass_kg, self.mass_tolerance_kg),
            Figure::Balance => (self.balance_m, self.balance_tolerance_m),
            Figure::SweetSpot => (self.sweet_spot_from_toe_m, self.sweet_spot_tolerance_m),
            Figure::HandleDiameter => (self.handle_diameter_m, self.handle_tolerance_m),
        };
        Asked { target, tolerance }
    }

    /// Times of the swings by the weight on the scale: with any balance point within its limits each is a swing
    /// moment within its own.
    pub fn pendulum_times(&self) -> Vec<TimeForMass> {
        let tolerances = Tolerances {
            mass_kg: self.mass_tolerance_kg,
            balance_m: self.balance_tolerance_m,
            swing_moment_kg_m2: self.swing_moment_tolerance_kg_m2,
        };
        tolerances.times(self.pendulum_swings)
    }

    /// Balance point, m from the toe.
    pub fn balance_from_toe_m(&self) -> f64 {
        self.length_m - self.balance_m
    }

    /// Limits of the balance point, m from the toe.
    pub fn balance_from_toe_tolerance_m(&self) -> [f64; 2] {
        let [low, high] = self.balance_tolerance_m;
        [self.length_m - high, self.length_m - low]
    }

    /// The card with every figure rounded to what a bench can read, the limits inward so that nothing
    /// outside the computed ones is ever accepted: 1 g, 1 mm (handle 0.1 mm), 0.0001 kg m², 0.01 s.
    /// Print, save and check this one: then every copy of a card says the same.
    pub fn rounded_for_the_bench(&self) -> Self {
        let figure = |target: &mut f64, limits: &mut [f64; 2], steps_a_unit: f64| {
            *target = (*target * steps_a_unit).round() / steps_a_unit;
            let slack = 1e-6; // a limit that is whole already stays, for all its binary dust
            limits[0] = ((limits[0] * steps_a_unit - slack).ceil() / steps_a_unit).min(*target);
            limits[1] = ((limits[1] * steps_a_unit + slack).floor() / steps_a_unit).max(*target);
        };
        let to_step = |value: f64, steps_a_unit: f64| (value * steps_a_unit).round() / steps_a_unit;
        let mut card = self.clone();
        figure(&mut card.mass_kg, &mut card.mass_tolerance_kg, 1e3);
        figure(&mut card.balance_m, &mut card.balance_tolerance_m, 1e3);
        figure(&mut card.swing_moment_kg_m2, &mut card.swing_moment_tolerance_kg_m2, 1e4);
        figure(&mut card.pendulum_time_s, &mut card.pendulum_time_tolerance_s, 1e2);
        figure(&mut card.sweet_spot_from_toe_m, &mut card.sweet_spot_tolerance_m, 1e3);
        figure(&mut card.handle_diameter_m, &mut card.handle_tolerance_m, 1e4);
        card.length_m = to_step(card.length_m, 1e3);
        card.pickup_weight_kg = to_step(card.pickup_weight_kg, 1e3);
        card.pendulum_pivot_m = to_step(card.pendulum_pivot_m, 1e4);
        card.refit_stature_m = card.refit_stature_m.map(|stature_m| to_step(stature_m, 1e2));
        card
    }
}
