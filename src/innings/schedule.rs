//! Who faces, which stroke, how long the rest: an innings as a sequence of balls, without chance.

use crate::measurement::nets::Lasting;
use crate::measurement::out_of_range::OutOfRange;

/// How an innings goes. Defaults in [`Schedule::ordinary`].
#[derive(Clone, Debug, PartialEq)]
pub struct Schedule {
    /// Share of the balls faced that get each stroke; what is left to 1 is played with no full stroke.
    pub mix: Vec<f64>,
    /// Balls faced for a run scored.
    pub balls_per_run: f64,
    /// Share of the balls bowled that this player faces; the others are spent backing up.
    pub strike: f64,
    /// From one ball to the next, s.
    pub ball_interval_s: f64,
    /// Added after each over, s.
    pub over_break_s: f64,
    /// How much of what legs lose the player's trunk and arms lose.
    pub lasting: Lasting,
}

/// Lengths run for each run scored, own or the partner's (the rest are boundaries): 40 singles, 8 twos and 3 threes of
/// 105 runs (a typical one-day century, read second-hand).
const RUN_RUN_PER_RUN: f64 = 0.62;
/// Balls of an over.
const BALLS_PER_OVER: u32 = 6;

/// Why a schedule cannot be played.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ScheduleFault {
    /// Outside what an innings can have, or not a finite number.
    #[error("{}", .0.words(.0.value))]
    OutOfRange(OutOfRange),
    /// The shares of the strokes pass the whole.
    #[error("the shares of the strokes add to {sum}, more than 1")]
    MixAbove1 {
        /// Their sum.
        sum: f64,
    },
}

impl ScheduleFault {
    /// Field at fault, as a scenario spells it.
    pub fn field(&self) -> &'static str {
        match self {
            Self::OutOfRange(it) => it.field,
            Self::MixAbove1 { .. } => "innings.mix",
        }
    }
}

impl Schedule {
    /// 1.2 balls a run, every second ball faced, 38 s a ball and 24 s more after each over of six: five
    /// overs in 21 minutes, as in a simulated one-day century (Pote & Christie 2016, read). Strike and balls a run:
    /// assumption.
    pub fn ordinary(mix: Vec<f64>) -> Self {
        Self {
            mix,
            balls_per_run: 1.2,
            strike: 0.5,
            ball_interval_s: 38.0,
            over_break_s: 24.0,
            lasting: Lasting::UNKNOWN,
        }
    }

    /// The first thing that cannot be played, if any.
    pub fn check(&self) -> Result<(), ScheduleFault> {
        let ranges = [
            ("innings.balls_per_run", self.balls_per_run, "balls", [0.17, 20.0]),
            ("innings.faced_share", self.strike, "of the balls", [0.1, 1.0]),
            ("innings.between_balls", self.ball_interval_s, "s", [10.0, 120.0]),
            ("innings.between_overs", self.over_break_s, "s", [0.0, 600.0]),
        ];
        let shares =
            self.mix.iter().map(|&share| ("innings.mix", share, "of the balls", [0.0, 1.0]));
        for (field, value, unit, limits) in ranges.into_iter().chain(shares) {
            if let Some(fault) = OutOfRange::check(field, value, unit, limits) {
                return Err(ScheduleFault::OutOfRange(fault));
            }
        }
        let sum: f64 = self.mix.iter().sum();
        if sum > 1.0 + 1e-9 {
            return Err(ScheduleFault::MixAbove1 { sum });
        }
        Ok(())
    }

    /// The balls bowled while this player is in, without end.
    pub fn balls(&self) -> Balls<'_> {
        Balls {
            schedule: self,
            bowled: 0,
            faced: 0,
            due: vec![0.0; self.mix.len() + 1],
            strike_due: 1.0 - self.strike, // the first ball is faced
        }
    }
}

/// One ball bowled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ball {
    /// Faced by this player, or spent backing up.
    pub faced: bool,
    /// Index of the stroke in the mix; none when backing up or when no full stroke is played.
    pub stroke: Option<usize>,
    /// Until the next ball, s.
    pub interval_s: f64,
    /// Lengths run after it, own or the partner's (a mean, so fractional).
    pub runs_run: f64,
}

/// The balls in order; see [`Schedule::balls`].
///
/// Strike and stroke are dealt out by what is most overdue: each share is added at every ball and the
/// largest sum takes the ball and pays 1. So any run of balls has each stroke within about one of its
/// share, and the same schedule is always the same innings.
#[derive(Clone, Debug)]
pub struct Balls<'a> {
    schedule: &'a Schedule,
    bowled: u32,
    faced: u32,
    due: Vec<f64>,
    strike_due: f64,
}

impl Balls<'_> {
    /// Balls faced so far.
    pub fn faced(&self) -> u32 {
        self.faced
    }
    /// Runs scored so far.
    pub fn score(&self) -> f64 {
        f64::from(self.faced) / self.schedule.balls_per_run
    }

    fn deal(&mut self) -> Option<usize> {
        let none = self.schedule.mix.len();
        let rest = 1.0 - self.schedule.mix.iter().sum::<f64>();
        let mut most = (none, f64::NEG_INFINITY);
        for (i, due) in self.due.iter_mut().enumerate() {
            *due += self.schedule.mix.get(i).copied().unwrap_or(rest);
            // A hair's advantage to the earlier one: sums of shares are equal only up to rounding.
            if *due > most.1 + 1e-9 {
                most = (i, *due);
            }
        }
        if let Some(due) = self.due.get_mut(most.0) {
            *due -= 1.0;
        }
        (most.0 != none).then_some(most.0)
    }
}

impl Iterator for Balls<'_> {
    type Item = Ball;

    fn next(&mut self) -> Option<Ball> {
        let s = self.schedule;
        self.bowled += 1;
        self.strike_due += s.strike;
        let faced = self.strike_due >= 1.0 - 1e-9;
        let mut stroke = None;
        if faced {
            self.strike_due -= 1.0;
            self.faced += 1;
            stroke = self.deal();
        }
        let over = self.bowled.is_multiple_of(BALLS_PER_OVER);
        let interval_s = s.ball_interval_s + if over { s.over_break_s } else { 0.0 };
        Some(Ball { faced, stroke, interval_s, runs_run: RUN_RUN_PER_RUN / s.balls_per_run })
    }
}
