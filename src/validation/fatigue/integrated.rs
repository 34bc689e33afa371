//! The closed form against an adaptive integrator, under six histories of loads.

use crate::files::reference;
use crate::files::reference::three_compartment::Run;
use crate::innings::compartments::{Compartments, Rates};
use crate::validation::{Accept, CheckFault, Checked, Row};

pub(super) fn check() -> Result<Checked, CheckFault> {
    let fatigue = reference::three_compartment()?;
    let mut largest = [0.0_f64; 2];
    for run in &fatigue.runs {
        let rates = fatigue.groups.get(&run.group).ok_or("a history of an unknown group")?.0;
        for (largest, off) in largest.iter_mut().zip(errors(run, rates)) {
            *largest = largest.max(off);
        }
    }
    let source = format!("SciPy DOP853, {}, six histories of three groups", fatigue.made_by);
    let row = |what: &str, ours, most| {
        Row::compared(what, source.as_str(), "share", 0.0, ours, Accept::Within(most))
    };
    let any = "muscle under loads in turn: largest error of any share";
    let lagging = "tired muscle under loads in turn, against a controller that lags by 0.1 s";
    Ok(vec![
        row(any, largest[0], 1e-8),
        row(lagging, largest[1], 5e-3)
            .noted("ours follows at once; the published controller within a tenth of a second"),
    ]
    .into())
}

/// Largest error of any share against the controller without lag, and of the tired share against the
/// published one.
fn errors(run: &Run, rates: Rates) -> [f64; 2] {
    let (mut muscle, mut then_s, mut largest) = (Compartments::FRESH, 0.0, [0.0_f64; 2]);
    for [time_s, load, resting, active, fatigued, _, _, lagging] in run.rows.iter().copied() {
        muscle = muscle.after(rates, load, time_s - then_s);
        then_s = time_s;
        for off in [muscle.resting - resting, muscle.active - active, muscle.fatigued - fatigued] {
            largest[0] = largest[0].max(off.abs());
        }
        largest[1] = largest[1].max((muscle.fatigued - lagging).abs());
    }
    largest
}
