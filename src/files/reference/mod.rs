//! Figures of outside programs: `assets/reference/*.json`, in the program for `validate` and the tests.
//!
//! The scripts that made them stand beside the files, with the versions of the programs. SI units, z up.

mod bat_and_ball;
pub(crate) mod bent_beam;
pub mod chain;
pub(crate) mod exported_solid;
pub(crate) mod free_motion;
pub(crate) mod hit;
pub(crate) mod law;
pub(crate) mod lofted_blade;
pub(crate) mod motions;
pub mod off_middle;
pub mod three_compartment;

use serde::de::DeserializeOwned;

use bent_beam::BentBeam;
use exported_solid::ExportedSolids;
use free_motion::FreeMotion;
use hit::Hits;
use law::{Continuous, Holding, Prototype, Rig};
use lofted_blade::LoftedBlade;
use motions::{Drawn, Swings};
use off_middle::OffMiddle;
use std::collections::BTreeMap;
use three_compartment::Fatigue;

/// A file of outside figures cannot be read: a fault of the program, not of its user.
#[derive(Debug, thiserror::Error)]
#[error("the reference figures in {file} cannot be read: {cause}")]
pub struct ReferenceFault {
    file: &'static str,
    cause: serde_json::Error,
}

fn read<T: DeserializeOwned>(file: &'static str, text: &str) -> Result<T, ReferenceFault> {
    serde_json::from_str(text).map_err(|cause| ReferenceFault { file, cause })
}

/// One arm and a bat under given torques.
pub fn open_chain() -> Result<Swings, ReferenceFault> {
    read("open_chain.json", include_str!("../../../assets/reference/open_chain.json"))
}

/// Two arms and a bat under given torques, with the load of each hand.
pub fn closed_chain() -> Result<Swings, ReferenceFault> {
    read("closed_chain.json", include_str!("../../../assets/reference/closed_chain.json"))
}

/// Two hundred drawn players, bats and torques.
pub fn drawn_chains() -> Result<Drawn, ReferenceFault> {
    read("random_chains.json", include_str!("../../../assets/reference/random_chains.json"))
}

/// A bat that spins freely, and one on the bench pivot.
pub fn free_motion() -> Result<FreeMotion, ReferenceFault> {
    read("free_flight.json", include_str!("../../../assets/reference/free_flight.json"))
}

/// The law of the stroke with a step: the prototype.
pub fn prototype() -> Result<Prototype, ReferenceFault> {
    read("pilot_figures.json", include_str!("../../../assets/reference/pilot_figures.json"))
}

/// The same law without a step, on another program's dynamics.
pub fn continuous_law() -> Result<Continuous, ReferenceFault> {
    read("continuous_law.json", include_str!("../../../assets/reference/continuous_law.json"))
}

/// The law without a step and with a bottom hand that holds.
pub fn holding_law() -> Result<Holding, ReferenceFault> {
    read("holding_law.json", include_str!("../../../assets/reference/holding_law.json"))
}

/// The prototype's stored joint paths, by stroke.
pub fn stored_paths() -> Result<BTreeMap<String, Rig>, ReferenceFault> {
    read("swing_pilot_paths.json", include_str!("../../../assets/reference/swing_pilot_paths.json"))
}

pub(crate) fn lofted_blade() -> Result<LoftedBlade, ReferenceFault> {
    read("lofted_blade.json", include_str!("../../../assets/reference/lofted_blade.json"))
}

pub(crate) fn exported_solids() -> Result<ExportedSolids, ReferenceFault> {
    read("exported_solid.json", include_str!("../../../assets/reference/exported_solid.json"))
}

/// Shares of resting, active and fatigued muscle under given loads.
pub fn three_compartment() -> Result<Fatigue, ReferenceFault> {
    let text = include_str!("../../../assets/reference/three_compartment.json");
    read("three_compartment.json", text)
}

pub(crate) fn bent_beam() -> Result<BentBeam, ReferenceFault> {
    read("bent_beam.json", include_str!("../../../assets/reference/bent_beam.json"))
}

pub(crate) fn hits() -> Result<Hits, ReferenceFault> {
    read("hit_scipy.json", include_str!("../../../assets/reference/hit_scipy.json"))
}

/// Ball on bat off the middle, in space.
pub fn off_middle() -> Result<OffMiddle, ReferenceFault> {
    read("off_middle.json", include_str!("../../../assets/reference/off_middle.json"))
}
