//! Facts about the stage `bat`.

mod added;
mod bow;
mod figures;
mod handle;
mod laws;
mod makeable;
mod measured;
mod pendulum;
mod published;
mod rubber;
mod shape;
mod solids;

use backlift::bat::laws::Limits;
use backlift::bat::sizes::{Size, named};
use backlift::files::assets;
use backlift::measurement::bench::{BatReading, PendulumReading};

fn limits() -> Limits {
    assets::limits().unwrap()
}

fn sizes() -> Vec<Size> {
    assets::sizes().unwrap()
}

fn size(name: &str) -> Size {
    named(&sizes(), name).unwrap().clone()
}

/// An invented adult bat: only what every reading has, and a length and balance point.
fn reading() -> BatReading {
    BatReading {
        label: "invented".into(),
        size: Some("short handle".into()),
        length_m: Some(0.851),
        mass_kg: 1.18,
        balance_m: Some(0.527),
        width_m: None,
        edge_m: None,
        depth_m: None,
        handle_diameter_m: None,
        pendulum: None,
    }
}

/// Ten swings from the pickup axis, 10° to either side.
fn ten_swings(time_s: f64) -> PendulumReading {
    PendulumReading {
        swings: 10,
        time_s,
        pivot_from_top_m: 0.1524,
        amplitude_rad: 10f64.to_radians(),
    }
}
