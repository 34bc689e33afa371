//! The limit of control by a short search: where four swings do in place of ten.

use crate::measurement::nets::PART_COUNT;
use crate::player::calibrated::factors;
use crate::swing::contact::Contact;
use crate::swing::player_stroke::Held;
use crate::swing::run::Swinger;

/// The fastest controlled swing, as natural logarithms of seconds and of m/s.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LnSwing {
    /// Stroke time.
    pub ln_time: f64,
    /// Bat speed at the contact point.
    pub ln_speed: f64,
    /// Part of it along the normal of the face.
    pub ln_normal_speed: f64,
    /// Speed of the toe.
    pub ln_toe_speed: f64,
}

/// Number of figures of [`LnSwing`].
pub const FIGURES: usize = 4;

impl LnSwing {
    /// The figures in order.
    pub fn figures(&self) -> [f64; FIGURES] {
        [self.ln_time, self.ln_speed, self.ln_normal_speed, self.ln_toe_speed]
    }

    /// Back from the figures.
    pub fn from_figures(
        [ln_time, ln_speed, ln_normal_speed, ln_toe_speed]: [f64; FIGURES],
    ) -> Self {
        Self { ln_time, ln_speed, ln_normal_speed, ln_toe_speed }
    }

    /// The figures less those of another swing.
    pub fn less(&self, other: &Self) -> [f64; FIGURES] {
        let (here, there) = (self.figures(), other.figures());
        core::array::from_fn(|f| here[f] - there[f])
    }

    fn of(stroke_time_s: f64, contact: &Contact) -> Self {
        let ln = |it: f64| libm::log(it.max(SLOWEST_M_S));
        Self {
            ln_time: libm::log(stroke_time_s),
            ln_speed: ln(contact.bat_speed_m_s),
            ln_normal_speed: ln(contact.normal_speed_m_s),
            ln_toe_speed: ln(contact.toe_speed_m_s),
        }
    }

    /// Share of the way from this swing to another, the speeds no steeper in the time than a swing's are.
    fn towards(&self, other: &Self, share: f64) -> Self {
        let (here, there) = (self.figures(), other.figures());
        let run = there[0] - here[0];
        let mut out = here;
        out[0] += share * run;
        for (out, (a, b)) in out.iter_mut().zip(here.iter().zip(&there)).skip(1) {
            *out += share * run * ((b - a) / run).clamp(STEEPEST, 0.0);
        }
        Self::from_figures(out)
    }
}

/// Keeps a logarithm finite where the bat never came to the ball, m/s.
const SLOWEST_M_S: f64 = 1e-3;
/// Steepest that a speed's logarithm falls with that of the stroke time.
const STEEPEST: f64 = -2.0;
/// Steepness of the logarithm of the error over that of the stroke time, where none is known.
const USUAL_STEEPNESS: f64 = -9.0;
/// Gentlest steepness that is believed.
const GENTLEST: f64 = -2.5;
/// Longest step of the logarithm of the stroke time.
const LONGEST_STEP: f64 = 0.15;
/// Logarithm of the error near enough to nought for a straight line to give the rest.
const NEAR: f64 = 0.03;
/// Swings tried before the whole search is called in.
const TRIES: usize = 7;

/// The fastest controlled swing by a short search: a straight line through two swings, repeated, whose
/// last step is not swung. Off by less than 0.1 %, at four swings in place of ten.
pub fn swing_at(
    held: &Held,
    ln_strength: &[f64; PART_COUNT],
    near_ln_time: Option<f64>,
) -> Option<LnSwing> {
    let capacity = factors(ln_strength);
    let whole = || {
        let it = held.fastest(&capacity, near_ln_time.map(libm::exp)).ok()?;
        Some(LnSwing::of(it.stroke_time_s, &it.contact))
    };
    match near_ln_time {
        Some(near) => short_search(&held.swinger(&capacity), near).or_else(whole),
        None => whole(),
    }
}

fn short_search(swinger: &Swinger<'_>, near_ln_time: f64) -> Option<LnSwing> {
    let swing = |x: f64| {
        let stroke_time_s = libm::exp(x);
        let contact: Contact = swinger.swing(stroke_time_s, None);
        (libm::log(contact.error.max(1e-6)), LnSwing::of(stroke_time_s, &contact))
    };
    let mut here = swing(near_ln_time);
    let mut steepness = USUAL_STEEPNESS;
    for _ in 0..TRIES {
        let step = (-here.0 / steepness).clamp(-LONGEST_STEP, LONGEST_STEP);
        let next = swing(here.1.ln_time + if step.abs() < 1e-4 { 1e-3 } else { step });
        let measured = (next.0 - here.0) / (next.1.ln_time - here.1.ln_time);
        if measured < GENTLEST && next.0.abs() < NEAR {
            let share = -here.0 / (next.0 - here.0);
            return Some(here.1.towards(&next.1, share));
        }
        steepness = if measured < GENTLEST { measured } else { USUAL_STEEPNESS };
        here = next;
    }
    None
}
