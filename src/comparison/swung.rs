//! One bat swung by the player, fresh and at fifty, and how its figures move when an input does.
//!
//! The figures themselves are searched to the end. Their slopes are not: at the fastest controlled time
//! T the logarithm L of the contact error is nought. A change of the input makes it L', Newton's step
//! `T − L' / (∂L/∂T)` comes near the new time, a straight line through the two swings nearer, and one
//! through the first and the last gives the rest: three swings in place of a search.

use super::collision::{SPEED_AT_BAT_SHARE, exit_speed_off_bat_m_s};
use super::figure::StrokeFigure;
use crate::bat::Bat;
use crate::innings::ball_by_ball::capacity_at_scores;
use crate::innings::played::{FIFTY, InningsFault, ball_loads, fresh, schedule};
use crate::measurement::plan::{Bowling, InningsPlan};
use crate::player::joints::{FRESH, GROUP_COUNT};
use crate::swing::batter::Batter;
use crate::swing::contact::Contact;
use crate::swing::observed::{Observed, observe};
use crate::swing::player_stroke::{Held, contact_station_m};

/// The player, and what is asked of him or her.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// Player and strokes.
    pub batter: &'a Batter,
    /// Innings.
    pub plan: &'a InningsPlan,
    /// Bowling faced.
    pub delivery: Bowling,
    /// Stroke time at which wrist shares are taken, by stroke, the same for all bats and scores, s.
    pub asked_time_s: &'a [f64],
    /// Mass of the ball, kg.
    pub ball_kg: f64,
}

/// One stroke, as swung.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Swung {
    pub(super) time_s: f64,
    pub(super) bat_speed_m_s: f64,
    normal_speed_m_s: f64,
    wrist_share: f64,
    grip_share: f64,
}

/// A swing at its fastest controlled time, with the slope of the error's logarithm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Spot {
    pub(super) swung: Swung,
    log_error_per_s: f64,
}

/// Step of the stroke time for the slope along it, as a share: far above the last digits' unrest.
const TIME_STEP: f64 = 0.01;
/// Longest Newton's step, as a share of the stroke time.
const LONGEST_STEP: f64 = 0.25;
/// Swings at most beyond the third towards the limit of control.
const FURTHER: usize = 3;
/// ln of the error within which a straight line from the first swing is taken (assumption; a fact holds what comes of
/// it to a twentieth).
const NEAR_ENOUGH: f64 = 0.02;
/// First guess of the fastest time as a share of the asked time.
const GUESS_SHARE: f64 = 0.87;

impl Asked<'_> {
    /// Searches one stroke's fastest controlled swing and the slopes along its time.
    pub(super) fn spot(
        &self,
        taken_up: &[Held],
        stroke: usize,
        capacity: &[f64; GROUP_COUNT],
        guess_s: Option<f64>,
    ) -> Result<Spot, InningsFault> {
        let held = &taken_up[stroke];
        let asked_s = self.asked_time_s[stroke];
        let fastest = held.fastest(capacity, guess_s.or(Some(GUESS_SHARE * asked_s)))?;
        let step_s = TIME_STEP * fastest.stroke_time_s;
        let slower = held.swinger(capacity).swing(fastest.stroke_time_s + step_s, None);
        let here = fastest;
        let seen = observe(held, capacity, asked_s);
        Ok(Spot {
            swung: Swung {
                time_s: fastest.stroke_time_s,
                bat_speed_m_s: here.bat_speed_m_s,
                normal_speed_m_s: here.normal_speed_m_s,
                wrist_share: seen.wrist_share(),
                grip_share: seen.grip_share(&self.batter.player),
            },
            log_error_per_s: libm::log(slower.error / here.error) / step_s,
        })
    }

    /// The same strokes with another bat or player: fresh, and with what is left at fifty.
    pub(super) fn near(
        &self,
        batter: &Batter,
        bat: &Bat,
        spots: &[[Spot; 2]],
    ) -> Result<Vec<[Swung; 2]>, InningsFault> {
        let taken_up = batter.take_up(bat)?;
        let fresh = fresh(&taken_up, self.asked_time_s);
        let loads = ball_loads(&taken_up, self.plan, &fresh);
        let left = capacity_at_scores(&schedule(self.plan, batter), &loads, &[FIFTY])?;
        let capacity = [FRESH, left[0].with_slow];
        let near = |stroke: usize, when: usize| {
            let (held, spot) = (&taken_up[stroke], &spots[stroke][when]);
            let swinger = held.swinger(&capacity[when]);
            let log_error = |it: &Contact| libm::log(it.error.max(f64::MIN_POSITIVE));
            let at = |time_s: f64| swinger.swing(time_s, None);
            let first = at(spot.swung.time_s);
            // A swing so easy that it is in control at any time has no limit that could move.
            let step_s = match spot.log_error_per_s < 0.0 {
                true => -log_error(&first) / spot.log_error_per_s,
                false => 0.0,
            };
            let longest_s = LONGEST_STEP * spot.swung.time_s;
            let second = at(spot.swung.time_s + step_s.clamp(-longest_s, longest_s));
            // Share of the way from one swing to another at which a straight line is nought.
            let nought = |a: &Contact, b: &Contact| {
                let share = log_error(a) / (log_error(a) - log_error(b));
                if share.is_finite() { share.clamp(-1.0, 2.0) } else { 1.0 }
            };
            let between = |a: f64, b: f64, share: f64| a + share * (b - a);
            let share = nought(&first, &second);
            let mut last = at(between(first.stroke_time_s, second.stroke_time_s, share));
            for _ in 0..FURTHER {
                // Far from the first, the error is no straight line.
                if log_error(&last).abs() < NEAR_ENOUGH {
                    break;
                }
                let share = nought(&first, &last);
                last = at(between(first.stroke_time_s, last.stroke_time_s, share));
            }
            // From the first, not the one before: so near the last a line would follow the last digits.
            let share = nought(&first, &last);
            let along = |of: fn(&Contact) -> f64| between(of(&first), of(&last), share);
            let shares = |it: &Observed| (it.wrist_share(), it.grip_share(&batter.player));
            let (wrist_share, grip_share) = match when {
                0 => shares(&fresh[stroke]),
                _ => shares(&observe(held, &capacity[when], self.asked_time_s[stroke])),
            };
            Swung {
                time_s: along(|it| it.stroke_time_s),
                bat_speed_m_s: along(|it| it.bat_speed_m_s),
                normal_speed_m_s: along(|it| it.normal_speed_m_s),
                wrist_share,
                grip_share,
            }
        };
        Ok((0..spots.len()).map(|i| [near(i, 0), near(i, 1)]).collect())
    }

    /// A figure of a stroke as swung.
    pub(super) fn figure(
        &self,
        figure: StrokeFigure,
        stroke: usize,
        swung: &Swung,
        bat: &Bat,
        restitution: f64,
    ) -> f64 {
        match figure {
            StrokeFigure::BatSpeed => swung.bat_speed_m_s,
            StrokeFigure::StrokeTime => swung.time_s,
            StrokeFigure::WristShare => swung.wrist_share,
            StrokeFigure::GripShare => swung.grip_share,
            StrokeFigure::TimeInHand => self.delivery.time_in_hand_s(swung.time_s),
            StrokeFigure::FastestBall => self.delivery.fastest_ball_m_s(swung.time_s),
            StrokeFigure::ExitSpeed => exit_speed_off_bat_m_s(
                bat,
                [contact_station_m(&self.batter.strokes[stroke].stroke, bat.length_m()), 0.0],
                swung.normal_speed_m_s,
                SPEED_AT_BAT_SHARE * self.delivery.speed_m_s,
                self.ball_kg,
                restitution,
            ),
        }
    }
}
