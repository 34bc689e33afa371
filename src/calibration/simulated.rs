//! Everything a calibration asks of the swing, simulated beforehand.

use super::fault::CalibrationFault;
use super::limit::{LN_TIME, swing_at};
use super::points::even_point;
use super::response::{Response, ResponseFault, node_strengths, times, triangle};
use super::tiredness::Tiredness;
use crate::bat::figures::WeighedBat;
use crate::innings::played::{ball_loads, fresh, schedule};
use crate::measurement::nets::{NetReading, PART_COUNT};
use crate::measurement::plan::InningsPlan;
use crate::normal;
use crate::player::calibrated::table_covariance;
use crate::swing::batter::Batter;
use crate::swing::player_stroke::{Held, SwingFault};
use core::ops::ControlFlow;
use core::sync::atomic::{AtomicUsize, Ordering};

/// What a calibration starts from.
#[derive(Clone, Copy, Debug)]
pub struct Order<'a> {
    /// The player with the strength of the tables, and every stroke there is.
    pub batter: &'a Batter,
    /// The scenario's bats.
    pub bats: &'a [WeighedBat],
    /// The one that headline figures are told for.
    pub bat: usize,
    /// Innings.
    pub plan: &'a InningsPlan,
    /// Stroke time at which loads are taken, by stroke, s.
    pub asked_time_s: &'a [f64],
}

/// Progress: what is being done, and the share of the whole that is done.
pub type Progress<'a> = &'a (dyn Fn(&'static str, f64) -> ControlFlow<()> + Sync);

/// The swings behind a calibration.
#[derive(Clone, Debug)]
pub struct Simulated {
    /// Lower triangle L of the covariance L Lᵀ of the strengths that the tables allow.
    pub spread: [[f64; PART_COUNT]; PART_COUNT],
    /// By bat and stroke, where needed.
    responses: Vec<Vec<Option<Response>>>,
    /// By number of runs, ascending.
    tiredness: Vec<(f64, Tiredness)>,
    /// Number of strokes.
    pub strokes: usize,
    /// Largest error of the curves on strengths they had not seen, as a share of the time.
    pub error: f64,
}

/// Strengths not simulated before, on which the curves are tried.
const HELD_OUT: core::ops::Range<usize> = 400..403;

impl Simulated {
    /// Simulates what these readings and the figures told of need.
    pub fn new(
        order: &Order<'_>,
        readings: &[NetReading],
        progress: Progress<'_>,
    ) -> Result<Self, CalibrationFault> {
        let batter = order.batter;
        let spread = triangle(&table_covariance(&batter.player));
        let held: Vec<Vec<Held>> = order
            .bats
            .iter()
            .map(|it| batter.take_up(&it.bat))
            .collect::<Result<_, SwingFault>>()?;
        let strokes = batter.strokes.len();
        let is_read = |bat: Option<usize>, stroke: usize| {
            let name = &batter.strokes[stroke].stroke.name;
            readings.iter().any(|it| &it.stroke == name && bat.is_none_or(|bat| it.bat == bat))
        };
        let told = |stroke: usize| batter.strokes[stroke].stroke.answers_short_ball;
        let wanted: Vec<usize> = (0..strokes).filter(|&s| told(s) || is_read(None, s)).collect();

        let nodes = node_strengths(&spread);
        let (done, all) = (AtomicUsize::new(0), wanted.len() * nodes.len());
        let step = || {
            let share = done.fetch_add(1, Ordering::Relaxed) as f64 / all as f64;
            progress("swinging with every strength the tables allow", 0.8 * share)
        };
        let Some(own) = held.get(order.bat) else { return Err(CalibrationFault::NoSuchBat) };
        let mut responses = vec![vec![None; strokes]; order.bats.len()];
        let mut error = 0.0_f64;
        for &stroke in &wanted {
            let response = Response::over(&own[stroke], &spread, &nodes, None, &step)?;
            for i in HELD_OUT {
                let strength =
                    times(&spread, core::array::from_fn(|j| normal::quantile(even_point(i)[j])));
                let ours = response.at(&strength)[LN_TIME];
                let near = response.near(ours);
                let truth = swing_at(&own[stroke], &strength, Some(near));
                error = error.max(truth.map_or(0.0, |it| (it.swing[LN_TIME] - ours).abs()));
            }
            responses[order.bat][stroke] = Some(response);
        }
        for bat in (0..order.bats.len()).filter(|it| *it != order.bat) {
            if progress("swinging the other bats", 0.85).is_break() {
                return Err(ResponseFault::Cancelled.into());
            }
            for &stroke in wanted.iter().filter(|&&s| told(s) || is_read(Some(bat), s)) {
                let Some(own) = &responses[order.bat][stroke] else { continue };
                // A bat beyond control is no fault unless somebody swung it.
                match own.with_bat(&held[bat][stroke], 0.0) {
                    Ok(response) => responses[bat][stroke] = Some(response),
                    Err(fault) if is_read(Some(bat), stroke) => return Err(fault.into()),
                    Err(_) => {}
                }
            }
        }

        let mut runs: Vec<f64> = readings.iter().map(|it| it.runs).collect();
        runs.extend([0.0, order.plan.runs]);
        runs.sort_by(f64::total_cmp);
        runs.dedup();
        let loads = ball_loads(own, order.plan, &fresh(own, order.asked_time_s));
        let tired = Tiredness::at(&schedule(order.plan, batter), &loads, &runs)?;
        let tiredness = runs.into_iter().zip(tired).collect();
        Ok(Self { spread, responses, tiredness, strokes, error })
    }

    /// One stroke with one bat, if it was simulated.
    pub fn response(&self, bat: usize, stroke: usize) -> Option<&Response> {
        self.responses.get(bat)?.get(stroke)?.as_ref()
    }

    /// What so many runs leave.
    pub fn tiredness(&self, runs: f64) -> Tiredness {
        let known = self.tiredness.iter().find(|(it, _)| *it == runs);
        known.map_or(Tiredness::NONE, |(_, it)| *it)
    }
}
