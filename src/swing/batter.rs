//! A player with all the strokes they play.

use super::assumed::Assumed;
use super::player_stroke::{Held, PlayerStroke, SwingFault};
use super::run::{FEWER_STEPS, STEPS};
use crate::bat::Bat;
use crate::player::{Player, Strength};
use crate::stroke::Stroke;
use rayon::prelude::*;

/// A player and the joint paths of their strokes.
#[derive(Clone, Debug, PartialEq)]
pub struct Batter {
    /// Player.
    pub player: Player,
    /// Strokes, each on the player's own path.
    pub strokes: Vec<PlayerStroke>,
    /// Diameter of a handle that was not measured, m: loads and grip of a measured one are computed for its own.
    pub handle_diameter_m: f64,
    /// What the strokes rest on besides.
    pub assumed: Assumed,
}

impl Batter {
    /// Finds the player's paths. Any bat will do: paths do not depend on it. A handle that was not measured is taken
    /// to be one comfortable to the player's hand.
    pub fn new(player: &Player, strokes: &[Stroke], any_bat: &Bat) -> Result<Self, SwingFault> {
        let own = |stroke| PlayerStroke::new(player, stroke, any_bat);
        Ok(Self {
            player: player.clone(),
            strokes: strokes.par_iter().map(own).collect::<Result<_, _>>()?,
            handle_diameter_m: player.comfortable_handle_m(),
            assumed: Assumed::default(),
        })
    }

    /// A player of the same lengths on the same paths, with another handle and other assumptions.
    pub fn in_place(&self, player: &Player, handle_diameter_m: f64, assumed: Assumed) -> Self {
        let stroke = |it: &PlayerStroke| {
            let mut it = it.clone();
            it.player = player.clone();
            it.with_handle(handle_diameter_m, assumed)
        };
        Self {
            player: player.clone(),
            strokes: self.strokes.iter().map(stroke).collect(),
            handle_diameter_m,
            assumed,
        }
    }

    /// The same in fewer steps a swing: where swings are many, and found to a thousandth only.
    pub fn in_fewer_steps(&self) -> Self {
        let mut it = self.clone();
        for stroke in &mut it.strokes {
            stroke.steps = stroke.steps * FEWER_STEPS / STEPS;
        }
        it
    }

    /// The same body with another strength.
    pub fn with_strength(&self, strength: Strength) -> Self {
        Self {
            player: Player { strength, ..self.player.clone() },
            strokes: self.strokes.iter().map(|s| s.with_strength(strength)).collect(),
            ..self.clone()
        }
    }

    /// Index of a stroke by name.
    pub fn stroke_index(&self, name: &str) -> Option<usize> {
        self.strokes.iter().position(|s| s.stroke.name == name)
    }

    /// Takes up a bat for every stroke.
    pub fn take_up(&self, bat: &Bat) -> Result<Vec<Held>, SwingFault> {
        self.strokes.iter().map(|s| s.hold(bat)).collect()
    }
}
