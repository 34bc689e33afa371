//! A player's own strength from readings in the nets, faults put where they were written.

use super::advice::today;
use super::loaded::Loaded;
use super::placed::{innings_stop, player_fault};
use super::{Progress, Stop};
use crate::calibration::response::ResponseFault;
use crate::calibration::{
    Calibrated, CalibrationFault, Order, Simulated, calibrate, pull_at, refuse_readings,
};
use crate::files::fault::Faults;
use crate::files::readings::Readings;
use crate::innings::played::InningsFault;
use crate::measurement::nets::{Calibration, Kept, Lasting, NetReading, PART_COUNT, made_for};
use crate::player::Player;
use crate::swing::batter::Batter;

/// What was found, with what is needed to tell of it.
#[derive(Clone, Debug)]
pub struct Found {
    /// The strength found, and how sure it is.
    pub calibrated: Calibrated,
    /// To be put into the scenario.
    pub kept: Kept,
    /// The readings with the lines they stand on.
    pub readings: Vec<(usize, NetReading)>,
    /// Labels of the bats.
    pub labels: Vec<String>,
    /// The bat that figures are told for.
    pub bat: usize,
    /// Runs at which the innings ends.
    pub runs: f64,
    /// Fastest pull fresh and at the end of the innings, m/s: by the tables, with the readings.
    pub pull_m_s: [[f64; 2]; 2],
    /// By bat, the chance that a short ball late in the innings is met in time: by the tables, with the readings; none
    /// beyond control.
    pub in_time: Vec<[Option<f64>; 2]>,
    /// Largest error of the curves between simulations, as a share.
    pub curve_error: f64,
}

/// Fits; figures are told for one bat, the first read if none is named.
///
/// # Errors
/// If readings cannot be, are too few or are not this player's, or the work is cancelled.
pub fn calibrated(
    loaded: &Loaded,
    table: &Readings,
    bat: Option<usize>,
    progress: &dyn Progress,
) -> Result<Found, Stop> {
    let readings = &table.readings;
    refuse_readings(readings, &loaded.stroke_names())
        .map_err(|fault| stop(loaded, table, fault))?;
    let bat = bat.or_else(|| readings.first().map(|it| it.bat)).unwrap_or(0);
    // The tables' own player, whatever was kept before: the readings are all there is to know.
    let reading = &loaded.scenario.player;
    let player: Player =
        crate::player::player(reading).map_err(|it| player_fault(&loaded.places, reading, &it))?;
    let batter = Batter::new(&player, &loaded.strokes, &loaded.bats[bat].bat)?;
    let asked_time_s = loaded.asked_times_s(&batter)?;
    let order = Order {
        batter: &batter,
        bats: &loaded.bats,
        bat,
        plan: &loaded.scenario.innings,
        asked_time_s: &asked_time_s,
    };
    let stop = |fault| stop(loaded, table, fault);
    let simulated = Simulated::new(&order, readings, &|doing, share| progress.report(doing, share))
        .map_err(stop)?;
    progress.step("weighing the players who may be", 0.88)?;
    let calibrated = calibrate(&order, &simulated, readings).map_err(stop)?;
    let tables = Calibration {
        ln_factor: [0.0; PART_COUNT],
        ln_spread: simulated.spread,
        lasting: Lasting::UNKNOWN,
    };
    let pull_m_s = [
        pull_at(&order, &simulated, &tables).map_err(stop)?,
        pull_at(&order, &simulated, &calibrated.calibration).map_err(stop)?,
    ];
    let in_time = in_time(loaded, &player, &calibrated.calibration, progress)?;
    let [fresh, tired] = calibrated.counts;
    Ok(Found {
        in_time,
        kept: Kept {
            calibration: calibrated.calibration,
            readings: format!("{fresh} fresh, {tired} tired"),
            made_for: made_for(&loaded.scenario.player),
        },
        readings: readings.iter().enumerate().map(|(i, it)| (table.line(i), it.clone())).collect(),
        labels: loaded.scenario.bats.iter().map(|it| it.label.clone()).collect(),
        bat,
        runs: loaded.scenario.innings.runs,
        pull_m_s,
        curve_error: simulated.error,
        calibrated,
    })
}

/// What `fit` says of the bats, of the tables' player and of the one who was read.
fn in_time(
    loaded: &Loaded,
    by_tables: &Player,
    nets: &Calibration,
    progress: &dyn Progress,
) -> Result<Vec<[Option<f64>; 2]>, Stop> {
    let chances = |player: &Player, from: f64| -> Result<Vec<Option<f64>>, Stop> {
        let loaded = Loaded { player: player.clone(), ..loaded.clone() };
        let now = today(&loaded, None, progress, [from, 0.05])?;
        let given = now.today.given.iter();
        Ok(given.map(|it| it.worth.as_ref().map(|it| it.chance_in_time)).collect())
    };
    let (before, after) = (chances(by_tables, 0.9)?, chances(&by_tables.calibrated(nets), 0.95)?);
    Ok(before.into_iter().zip(after).map(|(a, b)| [a, b]).collect())
}

fn stop(loaded: &Loaded, table: &Readings, fault: CalibrationFault) -> Stop {
    let words = fault.to_string();
    match fault {
        CalibrationFault::Readings(faults) => {
            let each = |(reading, fault): &(usize, crate::measurement::nets::NetFault)| {
                table.fault(*reading, fault.field(), &fault.to_string(), "read it again")
            };
            Stop::WrongInput(Faults(faults.iter().map(each).collect()))
        }
        CalibrationFault::TooFew { .. } => table
            .whole(&words, "film a few more pulls, ten if you can, before the player tires")
            .into(),
        CalibrationFault::NotThisPlayer { reading, field, .. } => {
            let help = match field {
                "time" => {
                    "count again; is frame_rate the rate at which the film was taken, not played?"
                }
                _ => "check the unit, and that it is the speed of the bat and not of the ball",
            };
            table.fault(reading, field, &words, help).into()
        }
        CalibrationFault::NobodyIsLikeThis { .. } => table
            .whole(
                &words,
                "check frame_rate, the unit of the speeds, and the player's grip and stature",
            )
            .into(),
        CalibrationFault::Response(ResponseFault::Cancelled) => Stop::Cancelled,
        CalibrationFault::Response(ResponseFault::BeyondControl) => {
            Stop::no_answer(words, "read a lighter bat")
        }
        CalibrationFault::Swing(fault) => fault.into(),
        CalibrationFault::Schedule(fault) => {
            innings_stop(&loaded.places, InningsFault::Schedule(fault))
        }
        CalibrationFault::NoSuchBat => Stop::OurMistake(words),
    }
}
