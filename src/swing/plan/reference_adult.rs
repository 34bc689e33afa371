//! The player and the bat for which the strokes' joint paths are planned; others bend the path to
//! their own bodies.

use crate::bat::{Bat, BatFault};
use crate::frames::{DMat3, DVec3};
use crate::measurement::person::{PersonFault, PersonReading, Sex};
use crate::player::{Player, player};

/// A right-handed man of 25, 1.80 m, everything else from the tables.
pub fn reference_player() -> Result<Player, PersonFault> {
    player(&PersonReading::of(Sex::Male, 25.0, 1.80))
}

/// A bat of 1.20 kg and 0.85 m that balances 0.53 m from the top of the handle (assumption, no source).
pub fn reference_bat() -> Result<Bat, BatFault> {
    Bat::new(
        "reference",
        0.85,
        1.20,
        DVec3::new(0.53, 0.0, 0.0),
        DMat3::from_diagonal(DVec3::new(0.0012, 0.0798, 0.0804)),
    )
}
