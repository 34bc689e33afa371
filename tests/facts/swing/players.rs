//! Two invented players and their bats.

use backlift::bat::Bat;
use backlift::files::stroke::built_in;
use backlift::frames::{DMat3, DVec3};
use backlift::measurement::person::{Handed, PersonReading, Sex};
use backlift::player::joints::GROUP_COUNT;
use backlift::player::{Player, player};
use backlift::swing::contact::Contact;
use backlift::swing::player_stroke::{Held, PlayerStroke};

pub use backlift::player::joints::FRESH;

fn person(age_y: f64, stature_m: f64, mass_kg: f64, handed: Handed) -> Player {
    player(&PersonReading {
        handed,
        mass_kg: Some(mass_kg),
        ..PersonReading::of(Sex::Male, age_y, stature_m)
    })
    .unwrap()
}

pub fn adult(handed: Handed) -> Player {
    person(25.0, 1.80, 78.0, handed)
}

pub fn boy_of_twelve(handed: Handed) -> Player {
    person(12.0, 1.50, 40.0, handed)
}

/// A bat of these figures with this moment about its own balance point.
pub fn bat_with(mass_kg: f64, length_m: f64, balance_m: f64, com_moment_kg_m2: f64) -> Bat {
    let [x, y, z] = [0.001 * mass_kg, com_moment_kg_m2, com_moment_kg_m2 + 0.0008 * mass_kg];
    let com_B = DVec3::new(balance_m, 0.0, -0.004);
    Bat::new("invented", length_m, mass_kg, com_B, DMat3::from_diagonal(DVec3::new(x, y, z)))
        .unwrap()
}

/// Wood spread along the bat as the pilot study assumed.
pub fn com_moment_kg_m2(mass_kg: f64, length_m: f64) -> f64 {
    0.0665 * mass_kg * (length_m / 0.85) * (length_m / 0.85)
}

pub fn bat(mass_kg: f64, length_m: f64, balance_m: f64) -> Bat {
    bat_with(mass_kg, length_m, balance_m, com_moment_kg_m2(mass_kg, length_m))
}

/// A full-size bat and a boy's.
pub fn adult_bat() -> Bat {
    bat(1.20, 0.85, 0.53)
}
pub fn boys_bat() -> Bat {
    bat(1.00, 0.80, 0.499)
}

/// The built-in strokes on this player's own paths.
pub fn strokes(player: &Player) -> Vec<PlayerStroke> {
    built_in()
        .unwrap()
        .iter()
        .map(|stroke| PlayerStroke::new(player, stroke, &adult_bat()).unwrap())
        .collect()
}

/// Finds the fastest swings of one stroke, each search started where the last one ended.
pub struct Search<'a> {
    pub stroke: &'a PlayerStroke,
    guess_s: Option<f64>,
}

impl<'a> Search<'a> {
    pub fn new(stroke: &'a PlayerStroke) -> Self {
        Self { stroke, guess_s: None }
    }

    pub fn fastest(&mut self, bat: &Bat, capacity: &[f64; GROUP_COUNT]) -> Contact {
        let held: Held = self.stroke.hold(bat).unwrap();
        let found = held.fastest(capacity, self.guess_s).unwrap();
        self.guess_s = Some(found.stroke_time_s);
        found
    }

    pub fn speed_m_s(&mut self, bat: &Bat) -> f64 {
        self.fastest(bat, &FRESH).bat_speed_m_s
    }
}
