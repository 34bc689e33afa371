//! Synthetic players: strengths drawn from the tables' spread, readings from the stated errors. Seeded.

use backlift::bat::figures::{WeighedBat, weigh};
use backlift::calibration::errors::{enters, instrument_sd, shared};
use backlift::calibration::limit::{LN_SPEED, LN_TIME};
use backlift::calibration::posterior::{LASTING, Possible};
use backlift::calibration::response::times;
use backlift::calibration::{Order, Simulated};
use backlift::files::assets::{limits, sizes};
use backlift::files::scenario::load;
use backlift::files::stroke::usual;
use backlift::fit::setting::Setting;
use backlift::measurement::nets::{Asked, NetReading, Read};
use backlift::measurement::plan::Scenario;
use backlift::normal::quantile;
use backlift::player::player;
use backlift::swing::batter::Batter;
use std::ops::ControlFlow;
use std::sync::OnceLock;

/// The demo's junior before any reading.
pub struct Nets {
    pub scenario: Scenario,
    pub batter: Batter,
    pub bats: Vec<WeighedBat>,
    pub asked_time_s: Vec<f64>,
    pub simulated: Simulated,
}

impl Nets {
    pub fn order(&self) -> Order<'_> {
        Order {
            batter: &self.batter,
            bats: &self.bats,
            bat: 0,
            plan: &self.scenario.innings,
            asked_time_s: &self.asked_time_s,
        }
    }
}

/// The demo's junior with his first two bats.
pub fn nets() -> &'static Nets {
    static NETS: OnceLock<Nets> = OnceLock::new();
    NETS.get_or_init(|| {
        let scenario = load(None, &[]).unwrap().scenario;
        let (sizes, laws) = (sizes().unwrap(), limits().unwrap());
        let bats: Vec<WeighedBat> =
            scenario.bats.iter().take(2).map(|it| weigh(it, &sizes, &laws).unwrap()).collect();
        let player = player(&scenario.player).unwrap();
        let batter = Batter::new(&player, &usual().unwrap(), &bats[0].bat).unwrap();
        let asked_time_s = Setting::asked_times_s(&batter, &bats[0].bat, 1.15).unwrap();
        let mut it = Nets {
            simulated: Simulated::new(
                &Order {
                    batter: &batter,
                    bats: &bats,
                    bat: 0,
                    plan: &scenario.innings,
                    asked_time_s: &asked_time_s,
                },
                &plan(8, 8),
                &|_, _| ControlFlow::Continue(()),
            )
            .unwrap(),
            scenario,
            batter,
            bats,
            asked_time_s,
        };
        it.scenario.bats.truncate(2);
        it
    })
}

pub const FRAME_RATE_HZ: f64 = 240.0;

fn timed(bat: usize, stroke: &str, runs: f64) -> NetReading {
    NetReading {
        bat,
        stroke: stroke.to_owned(),
        read: Read::Time { time_s: 0.4, frame_rate_hz: FRAME_RATE_HZ },
        runs,
        asked: Asked::Fastest,
    }
}

/// What a coach films in one net: `fresh` pulls with the first bat, half as many drives and hooks, a
/// few pulls with the second bat and four read by a device; then `tired` pulls after fifty runs.
pub fn plan(fresh: usize, tired: usize) -> Vec<NetReading> {
    let mut out = vec![timed(0, "pull", 0.0); fresh];
    out.extend(vec![timed(0, "drive", 0.0); fresh / 2]);
    out.extend(vec![timed(0, "hook", 0.0); fresh / 2]);
    out.extend(vec![timed(1, "pull", 0.0); fresh / 2]);
    let by_device = NetReading { read: Read::Speed { speed_m_s: 12.0 }, ..timed(0, "pull", 0.0) };
    out.extend(vec![by_device; fresh.min(4)]);
    out.extend(vec![timed(0, "pull", 50.0); tired]);
    out
}

/// Pulls alone, fresh and after fifty runs.
pub fn pulls(fresh: usize, tired: usize) -> Vec<NetReading> {
    let mut out = vec![timed(0, "pull", 0.0); fresh];
    out.extend(vec![timed(0, "pull", 50.0); tired]);
    out
}

/// Evenly distributed numbers from a seed (SplitMix64).
pub struct Dice(pub u64);

impl Dice {
    pub fn even(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 11) as f64 / (1u64 << 53) as f64 + 1e-17
    }
    pub fn normal(&mut self) -> f64 {
        quantile(self.even().min(1.0 - 1e-12))
    }
}

/// A player as the tables allow.
pub fn drawn(dice: &mut Dice) -> Possible {
    let z = [dice.normal(), dice.normal(), dice.normal()];
    let lasting = loop {
        let it = LASTING.mean + LASTING.sd * dice.normal();
        if it >= 0.0 {
            break it;
        }
    };
    Possible { ln_strength: times(&nets().simulated.spread, z), lasting }
}

/// Readings of a player: `swing` gives the logarithms of time and speed at the limit of control.
pub fn read(
    dice: &mut Dice,
    truth: &Possible,
    scatter: f64,
    plan: &[NetReading],
    swing: &dyn Fn(&Possible, &NetReading) -> (f64, f64),
) -> Vec<NetReading> {
    let nets = nets();
    let strokes = nets.batter.strokes.len();
    let errors: Vec<f64> =
        shared(strokes).iter().map(|it| it.mean + it.sd * dice.normal()).collect();
    plan.iter()
        .map(|it| {
            let stroke = nets.batter.stroke_index(&it.stroke).unwrap();
            let enters = enters(it, stroke, strokes);
            let by_errors: f64 = enters.iter().zip(&errors).map(|(h, e)| h * e).sum();
            let off = by_errors + scatter * dice.normal();
            let (ln_time, ln_speed) = swing(truth, it);
            let read = match it.read {
                Read::Time { frame_rate_hz, .. } => {
                    // Each end of the stroke falls on a picture within one of the truth.
                    let ends = 2.0 * (dice.even() - dice.even());
                    let frames = ((ln_time + off).exp() * frame_rate_hz + ends).round();
                    Read::Time { time_s: frames / frame_rate_hz, frame_rate_hz }
                }
                Read::Speed { .. } => Read::Speed { speed_m_s: (ln_speed + off).exp() },
            };
            NetReading { read, ..it.clone() }
        })
        .collect()
}

/// By the curves between simulations.
pub fn by_curve(truth: &Possible, reading: &NetReading) -> (f64, f64) {
    let nets = nets();
    let stroke = nets.batter.stroke_index(&reading.stroke).unwrap();
    let response = nets.simulated.response(reading.bat, stroke).unwrap();
    let tired = nets.simulated.tiredness(reading.runs).tired(&truth.ln_strength, truth.lasting);
    let it = response.at(&tired);
    (it[LN_TIME], it[LN_SPEED])
}

#[test]
fn a_film_twice_as_fast_leaves_half_the_error() {
    let slow = timed(0, "pull", 0.0);
    let read = Read::Time { time_s: 0.4, frame_rate_hz: 2.0 * FRAME_RATE_HZ };
    let fast = NetReading { read, ..slow.clone() };
    assert!((instrument_sd(&slow) / instrument_sd(&fast) - 2.0).abs() < 1e-12);
    // √(2/3) of a picture: the difference of two ends, each even within one picture either way.
    assert!((instrument_sd(&slow) * 0.4 * FRAME_RATE_HZ - (2.0_f64 / 3.0).sqrt()).abs() < 1e-12);
}
