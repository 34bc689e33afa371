//! What the bats are judged by: the player, the innings, the bowling, the demand.

use crate::bat::Bat;
use crate::comparison::collision::{RESTITUTION, exit_speed_off_bat_m_s};
use crate::innings::ball_by_ball::{Left, capacity_at_scores};
use crate::innings::played::{InningsFault, ball_loads, schedule};
use crate::measurement::plan::{Goal, InningsPlan};
use crate::player::joints::{FRESH, GROUP_COUNT};
use crate::swing::batter::Batter;
use crate::swing::player_stroke::{SwingFault, contact_from_top_m};
use crate::swing::time_in_hand::Delivery;

/// Which of the fatigue model's ends is believed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slow {
    /// The slow state at the low end of its band: none, unless the player was read in the nets.
    Low,
    /// The slow state's central value.
    Central,
    /// The slow state at the high end of its band.
    High,
}

impl Slow {
    /// Capacity left by group.
    pub fn of(self, left: &Left) -> [f64; GROUP_COUNT] {
        match self {
            Self::Low => left.with_slow_low,
            Self::Central => left.with_slow,
            Self::High => left.with_slow_high,
        }
    }
}

/// The player and what is asked of him or her.
#[derive(Clone, Debug)]
pub struct Setting {
    /// Player and strokes.
    pub batter: Batter,
    /// Innings.
    pub plan: InningsPlan,
    /// Bowling faced.
    pub delivery: Delivery,
    /// Mass of the ball, kg.
    pub ball_kg: f64,
    /// Share of the capacity left that a pull or hook in time may need.
    pub share_limit: f64,
    /// What is made the most of.
    pub goal: Goal,
    /// Speed of the ball at the bat by which the goal is judged, one per stroke, m/s: as fast as this
    /// player's own bat moves with the reference bat at the end of the innings. So bats rank alike
    /// against slow and quick bowling, whose speed enters the demand and not the goal.
    pub ball_at_bat_m_s: Vec<f64>,
    /// Asked time of each stroke, s: for the loads in play and the wrist shares.
    pub asked_time_s: Vec<f64>,
    /// Which fatigue is believed.
    pub slow: Slow,
}

/// One stroke at the end of the innings with one bat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StrokeAtEnd {
    /// Fastest controlled time, s.
    pub time_s: f64,
    /// Speed of the contact point along the normal of the face at that time, m/s.
    pub normal_speed_m_s: f64,
    /// Speed of the contact point, m/s.
    pub bat_speed_m_s: f64,
    /// Fastest controlled time with no joint above the share limit of what it has left, s.
    pub held_back_time_s: f64,
    /// Wrist share at the asked time.
    pub wrist_share: f64,
}

/// Number of figures of [`StrokeAtEnd`].
pub const FIGURES: usize = 5;

impl StrokeAtEnd {
    /// The figures as logarithms, in order.
    pub fn logarithms(&self) -> [f64; FIGURES] {
        [
            self.time_s,
            self.normal_speed_m_s,
            self.bat_speed_m_s,
            self.held_back_time_s,
            self.wrist_share,
        ]
        .map(libm::log)
    }

    /// Back from logarithms.
    pub fn from_logarithms(l: [f64; FIGURES]) -> Self {
        let [time_s, normal_speed_m_s, bat_speed_m_s, held_back_time_s, wrist_share] =
            l.map(libm::exp);
        Self { time_s, normal_speed_m_s, bat_speed_m_s, held_back_time_s, wrist_share }
    }
}

impl Setting {
    /// Swings every stroke at the end of the innings with a bat. The times in `near` are near answers.
    pub fn at_end(
        &self,
        bat: &Bat,
        near: Option<&[StrokeAtEnd]>,
    ) -> Result<Vec<StrokeAtEnd>, InningsFault> {
        let taken_up = self.batter.take_up(bat)?;
        let loads = ball_loads(&self.batter, &taken_up, &self.plan, &self.asked_time_s);
        let schedule = schedule(&self.plan, &self.batter);
        let left = capacity_at_scores(&schedule, &loads, &[self.plan.runs])?;
        let capacity = left.first().map_or(FRESH, |l| self.slow.of(l));
        let held_back = capacity.map(|c| c * self.share_limit);
        let mut out = Vec::with_capacity(taken_up.held.len());
        for (i, held) in taken_up.held.iter().enumerate() {
            let near = near.and_then(|near| near.get(i));
            let fastest = held.fastest(&capacity, near.map(|it| it.time_s))?;
            let slower = match near {
                Some(it) => it.held_back_time_s / it.time_s,
                None => libm::pow(self.share_limit, TIME_EXPONENT),
            };
            let held_back = held.fastest(&held_back, Some(slower * fastest.stroke_time_s))?;
            let seen = self.batter.observe(held, &capacity, self.asked_time_s[i]);
            out.push(StrokeAtEnd {
                time_s: fastest.stroke_time_s,
                normal_speed_m_s: fastest.contact.normal_speed_m_s,
                bat_speed_m_s: fastest.contact.bat_speed_m_s,
                held_back_time_s: held_back.stroke_time_s,
                wrist_share: seen.wrist_share(),
            });
        }
        Ok(out)
    }

    /// The same, its goal judged by a ball as fast as these strokes.
    pub fn judged_by(&self, reference: &[StrokeAtEnd]) -> Self {
        Self {
            ball_at_bat_m_s: reference.iter().map(|s| s.normal_speed_m_s).collect(),
            ..self.clone()
        }
    }

    /// Asked times: `factor` times the fresh fastest with a bat, the reference of the player's size, so
    /// that they are the same for all bats and scores.
    pub fn asked_times_s(batter: &Batter, bat: &Bat, factor: f64) -> Result<Vec<f64>, SwingFault> {
        let taken_up = batter.take_up(bat)?;
        let fresh = taken_up.held.iter().map(|held| held.fastest(&FRESH, None));
        fresh.map(|found| Ok(factor * found?.stroke_time_s)).collect()
    }

    /// The goal over the stroke mix, m/s.
    pub fn goal_m_s(&self, bat: &Bat, strokes: &[StrokeAtEnd]) -> f64 {
        let mut sum = 0.0;
        let mut shares = 0.0;
        for (i, it) in strokes.iter().enumerate() {
            let share = self.plan.mix_share(&self.batter.strokes[i].stroke.name);
            sum += share
                * match self.goal {
                    Goal::BatSpeed => it.bat_speed_m_s,
                    Goal::BallSpeed => self.exit_speed_m_s(i, bat, it.normal_speed_m_s),
                };
            shares += share;
        }
        if shares > 0.0 { sum / shares } else { 0.0 }
    }

    /// Ball speed off the bat for one stroke, m/s.
    pub fn exit_speed_m_s(&self, stroke: usize, bat: &Bat, normal_speed_m_s: f64) -> f64 {
        exit_speed_off_bat_m_s(
            bat,
            contact_from_top_m(&self.batter.strokes[stroke].stroke, bat),
            normal_speed_m_s,
            self.ball_at_bat_m_s.get(stroke).copied().unwrap_or(0.0),
            self.ball_kg,
            RESTITUTION.value,
        )
    }

    /// Time from reading the ball to meeting it, s.
    pub fn available_time_s(&self) -> f64 {
        self.delivery.flight_s() - self.delivery.reaction_time_s
    }

    /// Strokes that must still come off at the end: those to the short ball, in the mix or not.
    pub fn demanded(&self) -> Vec<usize> {
        ["pull", "hook"].iter().filter_map(|name| self.batter.stroke_index(name)).collect()
    }

    /// Slack of the demand, as a share of the time there is: the least over pull and hook of the
    /// time left over when no joint goes above its limit. Negative where the demand fails.
    pub fn slack(&self, strokes: &[StrokeAtEnd]) -> (f64, Option<usize>) {
        let available = self.available_time_s();
        self.demanded()
            .into_iter()
            .map(|i| (1.0 - strokes[i].held_back_time_s / available, Some(i)))
            .min_by(|a, b| a.0.total_cmp(&b.0))
            .unwrap_or((1.0, None))
    }
}

/// How the fastest time goes with capacity, for a first guess only.
const TIME_EXPONENT: f64 = -0.55;
