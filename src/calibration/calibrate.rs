//! The fit itself: readings in, strength and lasting fatigue out, with what it moved.

use super::fault::{CalibrationFault, FEWEST_FRESH};
use super::figures::{Surer, surer};
use super::posterior::{Held, Judged, Possible, Posterior, Spread, possible};
use super::simulated::{Order, Simulated};
use crate::measurement::nets::{
    Asked, Calibration, Lasting, NetFault, NetReading, PART_COUNT, Read,
};
use crate::player::calibrated::Part;

/// Furthest from what the tables say, as a factor, that a figure asked for at its fastest may be: meant for
/// slips, and for a film played back at another rate than it was taken (assumption, wide on purpose).
const FURTHEST: f64 = 2.2;
/// The same of a figure at the player's own pace.
const FURTHEST_AT_OWN_PACE: f64 = 3.5;
/// Furthest that all readings together may move the strength, standard deviations of the tables.
const FURTHEST_SD: f64 = 3.5;
/// Fewest points that may carry the answer.
const FEWEST_POINTS: f64 = 100.0;

/// One part's strength, as logarithms over the tables', before and after.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartMoved {
    /// Part.
    pub part: Part,
    /// By the tables.
    pub before: Spread,
    /// With the readings.
    pub after: Spread,
}

/// What the readings said.
#[derive(Clone, Debug)]
pub struct Calibrated {
    /// To be kept with the player.
    pub calibration: Calibration,
    /// Strengths.
    pub parts: [PartMoved; PART_COUNT],
    /// Lasting fatigue, share of the knee's loss: before, after.
    pub lasting: [Spread; 2],
    /// One a reading, in their order.
    pub judged: Vec<Judged>,
    /// Scatter from swing to swing, as a share.
    pub scatter: f64,
    /// Readings of the player fresh, and tired.
    pub counts: [usize; 2],
    /// What became surer.
    pub surer: Surer,
}

/// Fits.
pub fn calibrate(
    order: &Order<'_>,
    simulated: &Simulated,
    readings: &[NetReading],
) -> Result<Calibrated, CalibrationFault> {
    let strokes: Vec<&str> =
        order.batter.strokes.iter().map(|it| it.stroke.name.as_str()).collect();
    refuse_readings(readings, &strokes)?;
    let stroke = |it: &NetReading| order.batter.stroke_index(&it.stroke);
    let held: Vec<Held<'_>> = readings
        .iter()
        .map(|reading| {
            let stroke = stroke(reading).ok_or(CalibrationFault::NoSuchBat)?;
            let response =
                simulated.response(reading.bat, stroke).ok_or(CalibrationFault::NoSuchBat)?;
            Ok(Held { reading, stroke, response, tiredness: simulated.tiredness(reading.runs) })
        })
        .collect::<Result<_, CalibrationFault>>()?;
    refuse_another_player(&held)?;

    let before = Posterior::before(possible(&simulated.spread));
    let after = Posterior::after(&simulated.spread, &held, simulated.strokes);
    let (ln_factor, ln_spread) = after.strength();
    let shift = super::response::whitened(&simulated.spread, &ln_factor);
    let away = libm::sqrt(shift.iter().map(|it| it * it).sum::<f64>());
    if !(away <= FURTHEST_SD && after.worth_points() >= FEWEST_POINTS) {
        let mean = ln_factor.iter().sum::<f64>() / PART_COUNT as f64;
        return Err(CalibrationFault::NobodyIsLikeThis { factor: libm::exp(mean) });
    }
    let parts = Part::ALL.map(|part| {
        let of = |it: &Possible| it.ln_strength[part as usize];
        PartMoved { part, before: before.figure(of), after: after.figure(of) }
    });
    let lasting = [&before, &after].map(|it| it.figure(|it| it.lasting));
    let tired = readings.iter().filter(|it| !it.is_fresh()).count();
    let band = match tired {
        0 => Lasting::UNKNOWN,
        _ => Lasting { low: lasting[1].low, central: lasting[1].mean, high: lasting[1].high },
    };
    let calibration = Calibration { ln_factor, ln_spread, lasting: band };
    let surer = surer(order, simulated, [&before, &after])?;
    Ok(Calibrated {
        calibration,
        parts,
        lasting,
        judged: after.judged,
        scatter: after.scatter,
        counts: [readings.len() - tired, tired],
        surer,
    })
}

/// Readings that cannot be, or too few of them: known before anything is simulated. `strokes` are those that are swung.
///
/// # Errors
/// [`CalibrationFault::Readings`] or [`CalibrationFault::TooFew`].
pub fn refuse_readings(readings: &[NetReading], strokes: &[&str]) -> Result<(), CalibrationFault> {
    let faults = readings.iter().enumerate().filter_map(|(i, it)| Some((i, it.fault(strokes)?)));
    let faults: Vec<(usize, NetFault)> = faults.collect();
    if !faults.is_empty() {
        return Err(CalibrationFault::Readings(faults));
    }
    let fresh = readings.iter().filter(|it| it.is_fresh()).count();
    if fresh < FEWEST_FRESH { Err(CalibrationFault::TooFew { fresh }) } else { Ok(()) }
}

/// A figure that no player near this one has.
fn refuse_another_player(held: &[Held<'_>]) -> Result<(), CalibrationFault> {
    let middle = Possible { ln_strength: [0.0; PART_COUNT], lasting: Lasting::UNKNOWN.central };
    for (reading, it) in held.iter().enumerate() {
        let expected = libm::exp(it.ln_expected(&middle));
        let (field, value, unit) = match it.reading.read {
            Read::Time { time_s, .. } => ("time", time_s, "s"),
            Read::Speed { speed_m_s } => ("speed", speed_m_s, "m/s"),
        };
        let factor = value / expected;
        let furthest = match it.reading.asked {
            Asked::Fastest => FURTHEST,
            Asked::OwnPace => FURTHEST_AT_OWN_PACE,
        };
        if !(1.0 / furthest..=furthest).contains(&factor) {
            return Err(CalibrationFault::NotThisPlayer {
                reading,
                field,
                value,
                expected,
                factor,
                unit,
            });
        }
    }
    Ok(())
}
