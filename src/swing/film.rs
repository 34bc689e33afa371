//! A stroke as pictures over time: what the core saw of it, kept so that any instant and any score
//! between those that were swung can be shown at once.

use super::observed::{Moment, Observed, WRIST};
use crate::frames::DVec3;
use crate::player::joints::{BOTTOM_ARM, JOINT_COUNT, TOP_ARM};

/// One instant of a stroke.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Picture {
    /// Joint angles, rad.
    pub q: [f64; JOINT_COUNT],
    /// Pelvis displaced from the stance, m, W.
    pub pelvis_W: DVec3,
    /// Share of its present capacity that each wrist gives, top hand and bottom hand: the largest of its
    /// three axes.
    pub wrist_share: [f64; 2],
    /// Speed of the contact point, m/s.
    pub bat_speed_m_s: f64,
    /// Way of the contact point since the top of the backlift, m.
    pub gone_m: f64,
}

/// Way of the contact point along its own path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Way {
    /// Since the top of the backlift, m.
    pub gone_m: f64,
    /// From there to where bat meets ball, m.
    pub whole_m: f64,
}

impl Way {
    /// How far this stroke is behind another that began with it, m along its own way: each at the share of its way
    /// that it has gone. Negative where it is ahead.
    pub fn behind_m(&self, other: Self) -> f64 {
        let share = |it: Self| if it.whole_m > 0.0 { it.gone_m / it.whole_m } else { 0.0 };
        self.whole_m * (share(other) - share(*self))
    }
}

/// A stroke from the top of the backlift to contact; there the simulation ends.
#[derive(Clone, Debug, PartialEq)]
pub struct Film {
    /// At even steps of time.
    pictures: Vec<Picture>,
    step_s: f64,
    /// When bat meets ball, s.
    pub contact_s: f64,
    /// Contact point of the bat when it does, m, W.
    pub contact_W: DVec3,
}

impl Film {
    /// Of a stroke that was observed.
    pub fn of(seen: &Observed) -> Self {
        let contact = &seen.contact;
        let contact_s = if contact.reached { contact.time_s } else { contact.stroke_time_s };
        let mut gone_m = 0.0;
        let mut before: Option<&Moment> = None;
        let picture = |it| {
            gone_m += before.map_or(0.0, |from| step_m(from, it));
            before = Some(it);
            Picture {
                q: it.q,
                pelvis_W: it.pelvis_W,
                wrist_share: [TOP_ARM, BOTTOM_ARM].map(|arm| wrist_share(it, arm)),
                bat_speed_m_s: it.bat_speed_m_s,
                gone_m,
            }
        };
        let step_s = seen.series.get(1).map_or(contact_s, |it| it.t_s).max(1e-6);
        let at_contact = seen.series.iter().rev().find(|it| it.t_s <= contact_s);
        Self {
            pictures: seen.series.iter().map(picture).collect(),
            step_s,
            contact_s,
            contact_W: at_contact.map_or(DVec3::ZERO, |it| it.contact_W),
        }
    }

    /// The instant, by cubics through the pictures on either side; at rest before and after.
    pub fn at(&self, t_s: f64) -> Option<Picture> {
        let last = self.pictures.len().checked_sub(1)?;
        let place = (t_s.clamp(0.0, self.contact_s) / self.step_s).min(last as f64);
        let n = (place.floor() as usize).min(last.saturating_sub(1));
        let u = place - n as f64;
        let pick = |k: usize| self.pictures.get(k.min(last));
        let around = [pick(n.saturating_sub(1))?, pick(n)?, pick(n + 1)?, pick(n + 2)?];
        Some(mixed(&around, &catmull_rom(u)))
    }
}

/// The instant of a stroke a share of the way between two films of it, at a share of the time to contact.
pub fn between(low: &Film, high: &Film, part: f64, phase: f64) -> Option<Picture> {
    let [a, b] = [low, high].map(|it| it.at(phase * it.contact_s));
    Some(mixed(&[&a?, &b?], &[1.0 - part, part]))
}

/// Way of the contact point from one moment to the next: its mean speed, the trapezoidal rule.
fn step_m(from: &Moment, to: &Moment) -> f64 {
    0.5 * (from.bat_speed_m_s + to.bat_speed_m_s) * (to.t_s - from.t_s)
}

fn wrist_share(it: &Moment, arm: usize) -> f64 {
    it.share.iter().skip(arm + WRIST).take(3).fold(0.0, |most, share| f64::max(most, share.abs()))
}

/// Weights of four even points for a place between the middle two. Source: Catmull & Rom 1974, the spline
/// through its points with tangents from their neighbours (from memory, high).
fn catmull_rom(u: f64) -> [f64; 4] {
    let (u2, u3) = (u * u, u * u * u);
    [
        0.5 * (-u3 + 2.0 * u2 - u),
        0.5 * (3.0 * u3 - 5.0 * u2 + 2.0),
        0.5 * (-3.0 * u3 + 4.0 * u2 + u),
        0.5 * (u3 - u2),
    ]
}

fn mixed<const N: usize>(all: &[&Picture; N], weights: &[f64; N]) -> Picture {
    let sum = |of: &dyn Fn(&Picture) -> f64| {
        all.iter().zip(weights).map(|(it, weight)| weight * of(it)).sum::<f64>()
    };
    Picture {
        q: std::array::from_fn(|j| sum(&|it| it.q[j])),
        pelvis_W: DVec3::new(
            sum(&|it| it.pelvis_W.x),
            sum(&|it| it.pelvis_W.y),
            sum(&|it| it.pelvis_W.z),
        ),
        wrist_share: std::array::from_fn(|k| sum(&|it| it.wrist_share[k]).max(0.0)),
        bat_speed_m_s: sum(&|it| it.bat_speed_m_s),
        gone_m: sum(&|it| it.gone_m),
    }
}
