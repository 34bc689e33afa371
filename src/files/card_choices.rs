//! What a card writes by name, in either form: the hand of the player and the shape of the handle.

use crate::card::HandleShape;
use crate::measurement::person::Handed;
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
#[serde(remote = "Handed")]
pub(super) enum HandedV1 {
    Right,
    Left,
}

#[derive(Serialize, Deserialize)]
#[serde(remote = "HandleShape")]
pub(super) enum HandleShapeV1 {
    Round,
    Oval,
    SemiOval,
}
