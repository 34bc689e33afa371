//! Where each bat of a log stands.

use super::Stop;
use crate::bat::pendulum::usual_swings_s;
use crate::bat::pickup_weight::pickup_weight_kg;
use crate::bat::sizes::{Size, named};
use crate::uncertain::Uncertain;
use crate::workshop::stages::forecast::{Forecast, forecast};
use crate::workshop::stages::waiting::{self, Wait};
use crate::workshop::stages::{BatLog, BenchLog, Entry, Moment, Stage};

/// All bats of a log at one time.
#[derive(Clone, Debug)]
pub struct Bench<'l> {
    /// The bats are made up.
    pub invented: bool,
    /// The time taken as now.
    pub now: Moment,
    /// Where they stand, in the order of the log.
    pub bats: Vec<Standing<'l>>,
}

/// Where one bat stands.
#[derive(Clone, Debug)]
pub struct Standing<'l> {
    /// Its log.
    pub log: &'l BatLog,
    /// Its last weighing.
    pub last: &'l Entry,
    /// What comes next; none when all is done.
    pub next: Option<Stage>,
    /// Wood to plane off before that, kg: what is still to come would leave the bat too heavy.
    pub plane_first_kg: Option<Uncertain>,
    /// What of its log is odd.
    pub doubts: Vec<String>,
    /// What that has to wait for, if that is not over.
    pub wait: Option<Wait>,
    /// Not played before this, once the handle is in.
    pub playable: Option<Moment>,
    /// What it will come to.
    pub forecast: Forecast,
    /// Pickup weight it will come to, kg.
    pub pickup_weight_kg: Uncertain,
    /// Ten swings it will come to, s.
    pub ten_swings_s: Option<f64>,
}

/// Takes stock of a log at a time; at that of the last weighing if none is given.
///
/// # Errors
/// If a bat of the log has no size or no weighing.
pub fn bench<'l>(
    log: &'l BenchLog,
    sizes: &[Size],
    now: Option<Moment>,
) -> Result<Bench<'l>, Stop> {
    let latest = log.bats.iter().flat_map(|it| &it.entries).map(|it| it.at).max();
    let now = now.or(latest).unwrap_or(Moment::from_minutes(0));
    let bats = log.bats.iter().map(|it| standing(it, sizes, now)).collect::<Result<_, _>>()?;
    Ok(Bench { invented: log.invented, now, bats })
}

fn standing<'l>(log: &'l BatLog, sizes: &[Size], now: Moment) -> Result<Standing<'l>, Stop> {
    // The log was judged when it was read: size and weighings are there.
    let lost =
        || Stop::OurMistake(format!("bat {:?} of the log has no size or no weighing", log.label));
    let size = named(sizes, &log.size).ok_or_else(lost)?;
    let last = log.last().ok_or_else(lost)?;
    let forecast = forecast(log, size).ok_or_else(lost)?;
    let reference = size.reference.bat("").map_err(Stop::our_mistake)?;
    let swing = forecast.swing_moment_kg_m2;
    let pickup = |swing_moment_kg_m2| pickup_weight_kg(&reference, swing_moment_kg_m2);
    let next = log.pending().first().copied();
    // Once it is shaped, only the plane brings it down by more than sanding does.
    let shaped = next.is_some() && !log.pending().contains(&Stage::Shaped);
    let too_heavy = |wanted_kg: f64| {
        let Uncertain { value, sd, .. } = forecast.mass_kg;
        (value - wanted_kg > 2.0 * sd).then(|| Uncertain::computed(value - wanted_kg, sd))
    };
    let plane_first_kg = log.target.mass_kg.filter(|_| shaped).and_then(too_heavy);
    Ok(Standing {
        plane_first_kg,
        doubts: log.doubts(),
        log,
        last,
        next,
        wait: waiting::next(log).filter(|it| it.until > now),
        playable: waiting::playable(log),
        pickup_weight_kg: Uncertain {
            value: pickup(swing.value),
            sd: pickup(swing.sd),
            origin: swing.origin,
        },
        ten_swings_s: usual_swings_s(
            forecast.mass_kg.value,
            forecast.balance_m.value,
            swing.value,
            10,
        ),
        forecast,
    })
}
