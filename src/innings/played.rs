//! The same bat through an innings: what each stroke is worth at each score.

use super::ball_by_ball::{BallLoads, Left, capacity_at_scores};
use super::schedule::{Schedule, ScheduleFault};
use crate::bat::Bat;
use crate::measurement::plan::{Bowling, InningsPlan};
use crate::player::joints::{FRESH, GROUP_COUNT, JOINTS};
use crate::swing::batter::Batter;
use crate::swing::contact::Contact;
use crate::swing::observed::{Observed, PhaseLoad, observe};
use crate::swing::player_stroke::{Held, SwingFault};

/// The score that people ask about.
pub const FIFTY: f64 = 50.0;
/// How much longer the fastest swing takes late in the innings, for a first guess only.
pub const LATE_SHARE: f64 = 1.02;

/// Why an innings could not be played.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum InningsFault {
    /// No swing.
    #[error(transparent)]
    Swing(#[from] SwingFault),
    /// A schedule that cannot be.
    #[error("{field}: {0}", field = .0.field())]
    Schedule(#[from] ScheduleFault),
}

/// One stroke at one score.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StrokeNow {
    /// The fastest controlled swing with what is left.
    pub fastest: Contact,
    /// Mean share of its present capacity that the busier wrist gives at the asked stroke time, the same for all
    /// bats and scores.
    pub wrist_share: f64,
    /// Grip needed over the grip there is, larger of the two hands, at the asked stroke time.
    pub grip_share: f64,
    /// Left over against the bowling faced, s.
    pub time_in_hand_s: f64,
    /// Fastest ball that can still be met, out of the hand, m/s.
    pub fastest_ball_m_s: f64,
}

impl StrokeNow {
    /// Speed of the bat where it meets the ball, m/s.
    pub fn bat_speed_m_s(&self) -> f64 {
        self.fastest.bat_speed_m_s
    }
}

/// All strokes at one score.
#[derive(Clone, Debug, PartialEq)]
pub struct AtScore {
    /// Capacity left and how it came about.
    pub left: Left,
    /// With the slow state, one per stroke of the batter.
    pub with_slow: Vec<StrokeNow>,
    /// The three compartments alone.
    pub without_slow: Vec<StrokeNow>,
}

/// The schedule of an innings plan; the mix in the order of the batter's strokes.
pub fn schedule(plan: &InningsPlan, batter: &Batter) -> Schedule {
    let mix = batter.strokes.iter().map(|s| plan.mix_share(&s.stroke.name)).collect();
    Schedule {
        balls_per_run: plan.balls_per_run,
        strike: plan.faced_share,
        ball_interval_s: plan.between_balls_s,
        over_break_s: plan.between_overs_s,
        lasting: batter.player.lasting,
        ..Schedule::ordinary(mix)
    }
}

/// The strokes swung fresh at the asked times.
pub fn fresh(taken_up: &[Held], asked_time_s: &[f64]) -> Vec<Observed> {
    taken_up.iter().zip(asked_time_s).map(|(held, time)| observe(held, &FRESH, *time)).collect()
}

/// Loads that a ball puts on the muscles, from the [`fresh`] strokes.
pub fn ball_loads(taken_up: &[Held], plan: &InningsPlan, fresh: &[Observed]) -> BallLoads {
    let mut share = [0.0_f64; GROUP_COUNT];
    // Held up as at the top of the first stroke's backlift.
    if let Some(held) = taken_up.first() {
        for (joint, held) in JOINTS.iter().zip(held.swinger(&FRESH).hold_share()) {
            let group = &mut share[joint.group as usize];
            *group = group.max(held);
        }
    }
    let strokes = fresh.iter().map(|it| it.phases.clone()).collect();
    BallLoads { stance: PhaseLoad { duration_s: plan.stance_s, share }, strokes }
}

/// Capacity left at one score of the innings played with a bat taken up.
pub fn left_at(
    batter: &Batter,
    taken_up: &[Held],
    plan: &InningsPlan,
    asked_time_s: &[f64],
    score: f64,
) -> Result<Left, InningsFault> {
    let loads = ball_loads(taken_up, plan, &fresh(taken_up, asked_time_s));
    let left = capacity_at_scores(&schedule(plan, batter), &loads, &[score])?;
    Ok(left.into_iter().next().unwrap_or(Left::UNTIRED))
}

/// One stroke with the capacity left.
pub fn stroke_now(
    batter: &Batter,
    held: &Held,
    capacity: &[f64; GROUP_COUNT],
    asked_time_s: f64,
    guess_s: Option<f64>,
    delivery: Bowling,
) -> Result<StrokeNow, SwingFault> {
    let fastest = held.fastest(capacity, guess_s)?;
    let seen = observe(held, capacity, asked_time_s);
    Ok(StrokeNow {
        fastest,
        wrist_share: seen.wrist_share(),
        grip_share: seen.grip_share(&batter.player),
        time_in_hand_s: delivery.time_in_hand_s(fastest.stroke_time_s),
        fastest_ball_m_s: delivery.fastest_ball_m_s(fastest.stroke_time_s),
    })
}

/// Plays the innings and looks at the strokes at each of `scores`.
pub fn play(
    batter: &Batter,
    bat: &Bat,
    plan: &InningsPlan,
    delivery: Bowling,
    asked_time_s: &[f64],
    scores: &[f64],
) -> Result<Vec<AtScore>, InningsFault> {
    use rayon::prelude::*;
    let taken_up = batter.take_up(bat)?;
    let loads = ball_loads(&taken_up, plan, &fresh(&taken_up, asked_time_s));
    let left = capacity_at_scores(&schedule(plan, batter), &loads, scores)?;
    // Each stroke follows its own scores, so that the last answer is where the next search starts.
    let by_stroke: Vec<Vec<[StrokeNow; 2]>> = (0..batter.strokes.len())
        .into_par_iter()
        .map(|i| {
            let held = &taken_up[i];
            let mut guess = None;
            let mut now = |capacity: &[f64; GROUP_COUNT]| {
                let it = stroke_now(batter, held, capacity, asked_time_s[i], guess, delivery)?;
                guess = Some(it.fastest.stroke_time_s);
                Ok::<_, SwingFault>(it)
            };
            left.iter().map(|l| Ok([now(&l.without_slow)?, now(&l.with_slow)?])).collect()
        })
        .collect::<Result<_, SwingFault>>()?;
    Ok(left
        .into_iter()
        .enumerate()
        .map(|(s, left)| AtScore {
            left,
            without_slow: by_stroke.iter().map(|it| it[s][0]).collect(),
            with_slow: by_stroke.iter().map(|it| it[s][1]).collect(),
        })
        .collect())
}
