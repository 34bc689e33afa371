//! Checks of the mechanics: our rigid bodies, the law of the stroke and the second engine against outside
//! programs and closed forms.

mod closed_chain;
mod drawn_chains;
mod free_motion;
mod given_torques;
mod law;
mod open_chain;
mod own_strokes;
pub mod pilot;
mod second_engine;
mod splice_hinge;

use super::{Accept, Checks, Row, worse};

pub(super) const CHECKS: Checks = &[
    ("open chain", open_chain::check),
    ("open chain order", open_chain::order),
    ("closed chain", closed_chain::check),
    ("closed chain order", closed_chain::order),
    ("drawn chains", drawn_chains::check),
    ("drawn chains finely", drawn_chains::finely),
    ("law at a time", law::at_a_time::check),
    ("law fastest", law::fastest::check),
    ("law hurried", law::fastest::hurried),
    ("law holding", law::at_a_time::holding),
    ("prototype", pilot::check),
    ("engine strokes", second_engine::strokes::check),
    ("engine paths", second_engine::strokes::check_paths),
    ("engine loads", second_engine::loads::check),
    ("engine keeps", second_engine::keeps::check),
    ("free motion", free_motion::check),
    ("splice hinge", splice_hinge::check),
];

/// Pinocchio with an adaptive integrator, as the files of given torques have it.
const PINOCCHIO: &str = "Pinocchio 4.1.0 with SciPy 1.17.1's DOP853 at 1e-11; MuJoCo 4.0.0 differs by far less than the acceptance";

/// A figure that must lie within a share of theirs.
fn figure(
    what: impl Into<String>,
    source: &str,
    unit: &'static str,
    theirs: f64,
    ours: f64,
    share: f64,
) -> Row {
    Row::compared(what, source, unit, theirs, ours, Accept::Share(share))
}

/// A largest miss as a share, which would be nought without one; shown in per cent.
fn miss(what: impl Into<String>, source: &str, share: f64, most: f64) -> Row {
    let accept = Accept::Within(100.0 * most);
    Row::compared(what, source, "%", 0.0, 100.0 * share, accept)
}

/// How a player of the reference files is called.
fn player_words(name: &str) -> &'static str {
    match name {
        "adult" => "adult",
        _ => "child of twelve",
    }
}
