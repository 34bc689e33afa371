//! What is measured: an adult and an ordinary adult bat, and the built-in demo. The people are invented.
#![allow(dead_code, reason = "each bench uses its part")]

use backlift::bat::Bat;
use backlift::bat::figures::{WeighedBat, weigh};
use backlift::bat::laws::Limits;
use backlift::bat::sizes::Size;
use backlift::files::{assets, scenario, stroke, stroke_paths};
use backlift::measurement::plan::Scenario;
use backlift::player::{Player, player};
use backlift::stroke::Stroke;
use backlift::swing::plan::reference_adult::reference_player;
use backlift::swing::player_stroke::{Held, PlayerStroke};

/// The reference bat of the adult size.
pub fn adult_bat() -> Bat {
    assets::sizes().unwrap().last().unwrap().reference.bat("reference").unwrap()
}

/// The adult with the adult bat and the built-in pull.
pub fn pull() -> Held {
    let strokes = stroke::built_in().unwrap();
    let pull = strokes.iter().find(|it| it.name == "pull").unwrap();
    let bat = adult_bat();
    PlayerStroke::new(&reference_player().unwrap(), pull, &bat).unwrap().hold(&bat).unwrap()
}

/// The built-in demo with everything that comes before the search.
pub struct Demo {
    pub scenario: Scenario,
    pub sizes: Vec<Size>,
    pub laws: Limits,
    pub player: Player,
    pub bats: Vec<WeighedBat>,
    pub strokes: Vec<Stroke>,
    pub strokes_otherwise: Vec<Stroke>,
}

/// Loads it.
pub fn demo() -> Demo {
    let scenario = scenario::load(None, &[]).unwrap().scenario;
    let (sizes, laws) = (assets::sizes().unwrap(), assets::limits().unwrap());
    Demo {
        player: player(&scenario.player).unwrap(),
        bats: scenario.bats.iter().map(|it| weigh(it, &sizes, &laws).unwrap()).collect(),
        strokes: stroke::usual().unwrap(),
        strokes_otherwise: stroke_paths::serving_paths(&stroke::usual().unwrap()).unwrap(),
        scenario,
        sizes,
        laws,
    }
}
