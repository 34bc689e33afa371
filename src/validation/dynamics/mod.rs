//! Checks of the mechanics: our rigid bodies, the law of the stroke and the second engine against outside
//! programs and closed forms.

pub mod closed_chain;
pub mod drawn_chains;
pub mod free_motion;
pub mod given_torques;
pub mod law;
pub mod open_chain;
pub mod own_strokes;
pub mod pilot;
pub mod prototype;
pub mod second_engine;
pub mod splice_hinge;

use super::{Accept, Check, Group, Row, worse};

/// Every check of the mechanics.
pub fn checks() -> Vec<Check> {
    let group = Group::Dynamics;
    vec![
        Check { name: "open chain", group, run: open_chain::check },
        Check { name: "open chain order", group, run: open_chain::order },
        Check { name: "closed chain", group, run: closed_chain::check },
        Check { name: "closed chain order", group, run: closed_chain::order },
        Check { name: "drawn chains", group, run: drawn_chains::check },
        Check { name: "drawn chains finely", group, run: drawn_chains::finely },
        Check { name: "law at a time", group, run: law::at_a_time::check },
        Check { name: "law fastest", group, run: law::fastest::check },
        Check { name: "law hurried", group, run: law::hurried::check },
        Check { name: "law holding", group, run: law::holding::check },
        Check { name: "prototype", group, run: prototype::check },
        Check { name: "engine strokes", group, run: second_engine::strokes::check },
        Check { name: "engine paths", group, run: second_engine::strokes::check_paths },
        Check { name: "engine loads", group, run: second_engine::loads::check },
        Check { name: "engine keeps", group, run: second_engine::keeps::check },
        Check { name: "free motion", group, run: free_motion::check },
        Check { name: "splice hinge", group, run: splice_hinge::check },
    ]
}

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
    Row::compared(Group::Dynamics, what, source, unit, (theirs, None), ours, Accept::Share(share))
}

/// A largest miss as a share, which would be nought without one; shown in per cent.
fn miss(what: impl Into<String>, source: &str, share: f64, most: f64) -> Row {
    let accept = Accept::Within(100.0 * most);
    Row::compared(Group::Dynamics, what, source, "%", (0.0, None), 100.0 * share, accept)
}

/// How a player of the reference files is called.
fn player_words(name: &str) -> &'static str {
    match name {
        "adult" => "adult",
        _ => "child of twelve",
    }
}
