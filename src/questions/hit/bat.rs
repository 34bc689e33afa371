//! The bat that is hit with: a blade of its size for one of the scenario's, or one that its maker describes.

use super::super::Stop;
use super::super::loaded::Loaded;
use super::super::placed::described_bat;
use super::super::swung::ToSwing;
use crate::bat::Bat;
use crate::bat::makeable::Wanted;
use crate::bat::shape::BatShape;
use crate::files::shape::LoadedShape;
use crate::impact::parts::BatError;
use crate::swing::chain::Grip;

/// What to hit with.
#[derive(Clone, Copy, Debug)]
pub enum Asked<'a> {
    /// A bat of the scenario, by its place.
    OfScenario(usize),
    /// One that its maker describes.
    Described(&'a LoadedShape),
}

/// A bat to hit with.
#[derive(Clone, Debug)]
pub struct Given {
    /// Its blade and handle.
    pub shape: BatShape,
    /// The shape's mass properties.
    pub bat: Bat,
    /// What is in doubt about its weight, each by one standard deviation.
    pub errors: Vec<BatError>,
    /// The handle in the hands, m over the grip, where it was measured; else the shape's own.
    pub handle_diameter_m: Option<f64>,
    /// What is swung, where the bat speed is the player's own, and what both are called.
    pub swung: ToSwing,
    /// Whose the shape is.
    pub whose: Whose,
}

/// Whose the shape is.
#[derive(Clone, Copy, Debug)]
pub enum Whose {
    /// That of a bat of the same size, weight and balance; its swing moment over the bat's own, less one.
    OfItsSize {
        /// As a share.
        swing_moment_off: f64,
    },
    /// The bat's own.
    Described {
        /// It is made up.
        invented: bool,
    },
}

/// Finds it.
///
/// # Errors
/// If no blade can be made for it, or what is described is no bat.
pub fn given(loaded: &Loaded, asked: &Asked<'_>) -> Result<Given, Stop> {
    match asked {
        Asked::OfScenario(place) => of_scenario(loaded, *place),
        Asked::Described(it) => described(loaded, it),
    }
}

/// A blade of the bat's size at its weight and balance.
fn of_scenario(loaded: &Loaded, place: usize) -> Result<Given, Stop> {
    let weighed = &loaded.bats[place];
    let wanted = Wanted {
        mass_kg: weighed.mass_kg.value,
        balance_m: weighed.balance_m.value,
        swell_from_toe_m: None,
    };
    let label = &weighed.reading.label;
    let made = weighed.family().make(label, &wanted, &loaded.laws).map_err(|fault| {
        let help = "check weight, balance point and size; a hit needs a blade of the bat's size";
        Stop::no_answer(format!("{label}: no blade to hit with: {fault}"), help)
    })?;
    let (mass, balance) = (weighed.mass_kg.sd, weighed.balance_m.sd);
    let by_mass = BatError {
        mass_kg: mass,
        swing_moment_kg_m2: weighed.swing.per_mass_m2 * mass,
        ..BatError::default()
    };
    let by_balance = BatError {
        balance_m: balance,
        swing_moment_kg_m2: weighed.swing.per_balance_kg_m * balance,
        ..BatError::default()
    };
    let own = BatError { swing_moment_kg_m2: weighed.swing.own_sd_kg_m2, ..BatError::default() };
    let swing_moment_off = made.bat.swing_moment_kg_m2() / weighed.swing_moment_kg_m2.value - 1.0;
    Ok(Given {
        shape: made.shape,
        bat: made.bat,
        errors: vec![by_mass, by_balance, own],
        handle_diameter_m: weighed.reading.handle_diameter_m,
        swung: ToSwing::weighed(weighed, place),
        whose: Whose::OfItsSize { swing_moment_off },
    })
}

/// The described bat itself. What is in doubt of it, its willow's density and what was completed of its shape, is
/// taken to move all three figures together.
fn described(loaded: &Loaded, it: &LoadedShape) -> Result<Given, Stop> {
    let found = described_bat(it, &loaded.laws)?;
    let mut denser = found.shape.clone();
    denser.blade.density_kg_m3 += found.density_kg_m3.sd;
    let error = BatError {
        mass_kg: found.mass_kg.sd,
        balance_m: found.balance_m.sd,
        swing_moment_kg_m2: found.swing_moment_kg_m2.sd,
    };
    let bottom_hand_m = Grip::for_stature(loaded.player.stature_m, 0.0, 0.0).bottom_hand_m;
    let handle_m = Some(found.shape.handle.diameter_over_grip_m(bottom_hand_m));
    let heavier = denser.bat(it.title.as_str()).ok();
    let swung = ToSwing {
        label: it.title.clone(),
        bat: found.bat.clone().with_handle_diameter_m(handle_m),
        heavier: heavier.map(|it| it.with_handle_diameter_m(handle_m)),
        place: 0,
    };
    Ok(Given {
        handle_diameter_m: None,
        swung,
        bat: found.bat,
        shape: found.shape,
        errors: vec![error],
        whose: Whose::Described { invented: it.invented },
    })
}
