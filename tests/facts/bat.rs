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
use backlift::bat::mesh::Shell;
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

/// Whether every edge belongs to two triangles that run along it opposite ways: watertight.
fn is_closed(shell: &Shell) -> bool {
    let mut edges: Vec<(u32, u32)> =
        shell.triangles.iter().flat_map(|[a, b, c]| [(*a, *b), (*b, *c), (*c, *a)]).collect();
    let mut back: Vec<(u32, u32)> = edges.iter().map(|(a, b)| (*b, *a)).collect();
    edges.sort_unstable();
    back.sort_unstable();
    let single = edges.windows(2).all(|it| it[0] != it[1]);
    single && !edges.is_empty() && edges == back
}
