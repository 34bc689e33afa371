//! Torque shares of the strokes, ball after ball, to the capacity left at each score.

use super::compartments::{Compartments, Rates};
use super::schedule::{Schedule, ScheduleFault};
use super::slow_state::Exertion;
use crate::measurement::out_of_range::OutOfRange;
use crate::player::joints::{FRESH, GROUP_COUNT, Group};
use crate::swing::observed::PhaseLoad;

/// What a ball costs the muscles.
#[derive(Clone, Debug, PartialEq)]
pub struct BallLoads {
    /// Bat held up in the stance, before every ball faced.
    pub stance: PhaseLoad,
    /// One list of phases a stroke, in the order of the mix. A few phases each are enough: the rates
    /// are per minute, the strokes a second.
    pub strokes: Vec<Vec<PhaseLoad>>,
}

/// Capacity left at one score, as the next ball to be faced is awaited (after the rest, before the stance).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Left {
    /// Runs scored, as asked.
    pub runs: f64,
    /// Balls faced by then.
    pub balls_faced: u32,
    /// Time at the wicket, s.
    pub time_s: f64,
    /// Lengths of the pitch run.
    pub runs_run: f64,
    /// Capacity over fresh capacity by group: the three compartments alone.
    pub without_slow: [f64; GROUP_COUNT],
    /// With the slow state at the low end of its band: as without it, unless the player was read in
    /// the nets.
    pub with_slow_low: [f64; GROUP_COUNT],
    /// With the slow state, central.
    pub with_slow: [f64; GROUP_COUNT],
    /// With the slow state at the high end of its band (the least capacity).
    pub with_slow_high: [f64; GROUP_COUNT],
}

impl Left {
    /// Nothing tired, at no score.
    pub const UNTIRED: Self = Self {
        runs: 0.0,
        balls_faced: 0,
        time_s: 0.0,
        runs_run: 0.0,
        without_slow: FRESH,
        with_slow_low: FRESH,
        with_slow: FRESH,
        with_slow_high: FRESH,
    };
}

/// Greatest score that can be asked.
pub const GREATEST_SCORE: f64 = 500.0;

type Muscles = [Compartments; GROUP_COUNT];

/// One load on all groups. A group whose capacity the slow state has lowered carries the same torque as
/// a larger share of what it has: share / present slow capacity.
fn bear(muscles: &mut Muscles, rates: &[Rates; GROUP_COUNT], load: &PhaseLoad, slow: f64) {
    for ((muscle, rates), share) in muscles.iter_mut().zip(rates).zip(load.share) {
        *muscle = muscle.after(*rates, share / slow, load.duration_s);
    }
}

/// Capacity left by group at each asked score, in the order asked.
///
/// Every ball faced: stance, stroke, rest; every other ball: rest. A ball's rest is its interval less
/// stance and stroke. Runs in well under a millisecond for a hundred runs and a few phases a stroke.
pub fn capacity_at_scores(
    schedule: &Schedule,
    loads: &BallLoads,
    scores: &[f64],
) -> Result<Vec<Left>, ScheduleFault> {
    schedule.check()?;
    for &value in scores {
        let limits = [0.0, GREATEST_SCORE];
        if let Some(fault) = OutOfRange::check("innings.runs", value, "runs", limits) {
            return Err(ScheduleFault::OutOfRange(fault));
        }
    }
    let rates = Group::ALL.map(Rates::of);
    let mut order: Vec<usize> = (0..scores.len()).collect();
    order.sort_by(|&a, &b| scores[a].total_cmp(&scores[b]));
    let mut out: Vec<(usize, Left)> = Vec::with_capacity(scores.len());
    let mut asked = order.into_iter().peekable();

    // The ways an innings is carried, side by side: share of the knee's loss.
    let lasting = schedule.lasting;
    let ways = [0.0, lasting.low, lasting.central, lasting.high];
    let mut muscles = [[Compartments::FRESH; GROUP_COUNT]; 4];
    let mut so_far = Exertion::default();
    let mut balls = schedule.balls();
    while asked.peek().is_some() {
        let (score, balls_faced) = (balls.score(), balls.faced());
        let Some(ball) = balls.next() else { break };
        if ball.faced {
            while let Some(i) = asked.next_if(|&i| scores[i] <= score + 1e-9) {
                let left = |track: usize| {
                    let slow = so_far.capacity(ways[track]);
                    muscles[track].map(|it| slow * it.capacity())
                };
                let left = Left {
                    runs: scores[i],
                    balls_faced,
                    time_s: so_far.time_s,
                    runs_run: so_far.runs_run,
                    without_slow: left(0),
                    with_slow_low: left(1),
                    with_slow: left(2),
                    with_slow_high: left(3),
                };
                out.push((i, left));
            }
        }
        let stroke = ball.stroke.and_then(|i| loads.strokes.get(i)).map_or(&[][..], Vec::as_slice);
        for (share, muscles) in ways.into_iter().zip(&mut muscles) {
            let slow = so_far.capacity(share);
            let mut rest_s = ball.interval_s;
            if ball.faced {
                for load in std::iter::once(&loads.stance).chain(stroke) {
                    bear(muscles, &rates, load, slow);
                    rest_s -= load.duration_s;
                }
            }
            let rest = PhaseLoad { duration_s: rest_s.max(0.0), share: [0.0; GROUP_COUNT] };
            bear(muscles, &rates, &rest, slow);
        }
        so_far.balls_faced = f64::from(balls.faced());
        so_far.runs_run += ball.runs_run;
        so_far.time_s += ball.interval_s;
    }
    out.sort_by_key(|(i, _)| *i);
    Ok(out.into_iter().map(|(_, left)| left).collect())
}
