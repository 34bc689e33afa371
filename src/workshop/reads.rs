//! What a shape reads on the bench in each figure of a card.

use crate::bat::shaped::ShapedBat;
use crate::card::Figure;

/// The figure, in the card's own unit.
pub fn reads(bat: &ShapedBat, figure: Figure) -> f64 {
    let handle = &bat.shape.handle;
    match figure {
        Figure::SwingMoment => bat.bat.swing_moment_kg_m2(),
        Figure::DeadWeight => bat.bat.mass_kg(),
        Figure::Balance => bat.bat.balance_m(),
        Figure::SweetSpot => bat.bat.length_m() - bat.bat.percussion_m(),
        Figure::HandleDiameter => handle.diameter_over_grip_m(handle.bottom_hand_m()),
    }
}

/// Where on the bat a figure of a card lies that is a place, m from the top of the handle: a sweet spot is told
/// from the toe.
pub fn at_m(figure: Figure, asked_m: f64, length_m: f64) -> f64 {
    match figure {
        Figure::SweetSpot => length_m - asked_m,
        _ => asked_m,
    }
}
