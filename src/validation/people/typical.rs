//! Invented players of usual build, and bats for them.

use crate::bat::Bat;
use crate::bat::sizes::named;
use crate::files::{assets, stroke};
use crate::fit::setting::Setting;
use crate::measurement::person::{PersonReading, Sex};
use crate::player::growth::median_stature_m;
use crate::player::{Player, player};
use crate::stroke::Stroke;
use crate::swing::batter::Batter;
use crate::swing::player_stroke::SwingFault;
use crate::validation::CheckFault;

/// A player with strokes and a bat.
pub struct Typical {
    /// Who, as printed.
    pub words: &'static str,
    /// Player and strokes.
    pub batter: Batter,
    /// The reference bat of the usual size.
    pub bat: Bat,
}

/// A player of median stature for age; from 19 on the median of 19.
pub fn median(sex: Sex, age_y: f64) -> Result<Player, CheckFault> {
    Ok(player(&PersonReading::of(sex, age_y, median_stature_m(sex, age_y)))?)
}

impl Typical {
    fn new(
        words: &'static str,
        sex: Sex,
        [age_y, stature_m, mass_kg]: [f64; 3],
        size: &str,
        strokes: &[Stroke],
    ) -> Result<Self, CheckFault> {
        let reading =
            PersonReading { mass_kg: Some(mass_kg), ..PersonReading::of(sex, age_y, stature_m) };
        let sizes = assets::sizes()?;
        let size = named(&sizes, size).ok_or("a size of that name")?;
        let bat = size.reference.bat(size.name.as_str())?;
        let player = player(&reading)?;
        Ok(Self { words, batter: Batter::new(&player, strokes, &bat)?, bat })
    }

    /// Asked stroke times with the own bat, s: 1.15 times the fastest, as by default.
    pub fn asked_times_s(&self) -> Result<Vec<f64>, SwingFault> {
        Setting::asked_times_s(&self.batter, &self.bat, 1.15)
    }
}

pub fn adult() -> Result<Typical, CheckFault> {
    Typical::new("man of 25", Sex::Male, [25.0, 1.80, 78.0], "short handle", &stroke::usual()?)
}

pub fn woman() -> Result<Typical, CheckFault> {
    Typical::new("woman of 25", Sex::Female, [25.0, 1.66, 63.0], "6", &stroke::usual()?)
}

pub fn boy_of_twelve() -> Result<Typical, CheckFault> {
    Typical::new("boy of 12", Sex::Male, [12.0, 1.50, 40.0], "5", &stroke::usual()?)
}

pub fn girl_of_twelve() -> Result<Typical, CheckFault> {
    Typical::new("girl of 12", Sex::Female, [12.0, 1.51, 41.0], "5", &stroke::usual()?)
}

pub fn boy_of_fifteen() -> Result<Typical, CheckFault> {
    Typical::new("boy of 15", Sex::Male, [15.0, 1.69, 56.5], "Harrow", &stroke::usual()?)
}

/// The man of 25 with his feet still: the same joint paths on a pelvis that turns but does not stride.
pub fn adult_with_feet_still() -> Result<Typical, CheckFault> {
    let mut strokes = stroke::usual()?;
    for key in strokes.iter_mut().flat_map(|stroke| &mut stroke.keys) {
        key.pelvis = crate::frames::DVec3::ZERO;
    }
    Typical::new("man of 25, feet still", Sex::Male, [25.0, 1.80, 78.0], "short handle", &strokes)
}
