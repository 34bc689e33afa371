//! A part-made bat on the bench, as a plan is made for it.

use super::additions::{Addition, Finish};
use super::cuts::Planed;
use crate::bat::shape::BatShape;
use crate::workshop::combined::Reading;

/// A part-made bat on the bench.
#[derive(Clone, Debug)]
pub struct Bench<'a> {
    /// What scale, pencil and pendulum say of it.
    pub reading: Reading,
    /// Its shape as far as it is known; its own weight need not be the bench's.
    pub shape: &'a BatShape,
    /// What the plane did to it so far: what a place can give, it gives once.
    pub planed: &'a Planed,
    /// What is on it.
    pub finish: Finish,
    /// What goes on it besides what the card asks, such as tape.
    pub besides: Vec<Addition>,
    /// One standard deviation of what the plane takes off, as a share of what it should.
    pub planing_sd: f64,
    /// How far to the left of the middle the blade balances along its length, m, seen from the face with the toe
    /// down; 0 where nobody looked.
    pub left_m: f64,
}

impl Bench<'_> {
    /// Chance that a pass may overshoot with.
    pub fn overshoot_limit(&self) -> f64 {
        if self.reading.swing_moment_kg_m2.is_estimated() { OVERSHOOT_ESTIMATED } else { OVERSHOOT }
    }
}

/// Chance that a pass may overshoot with: a bat takes several passes, and wood cannot go back.
pub const OVERSHOOT: f64 = 0.002;
/// The same where the swing moment is estimated from the size: so wide a doubt would leave no plan at all.
pub const OVERSHOOT_ESTIMATED: f64 = 0.05;
