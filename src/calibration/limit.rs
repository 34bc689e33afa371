//! The limit of control by a short search: where four swings do in place of ten.

use crate::measurement::nets::PART_COUNT;
use crate::player::calibrated::factors;
use crate::swing::contact::Contact;
use crate::swing::player_stroke::Held;
use crate::swing::swinger::Swinger;

/// The fastest controlled swing, as natural logarithms of seconds and of m/s.
///
/// In order: stroke time, bat speed at the contact point, the part of it along the normal of the face, speed of the toe.
pub type LnSwing = [f64; FIGURES];

/// Number of figures of [`LnSwing`].
pub const FIGURES: usize = 4;
/// Place of the stroke time among them.
pub const LN_TIME: usize = 0;
/// Place of the bat speed.
pub const LN_SPEED: usize = 1;

/// The figures less those of another swing.
pub fn less(it: &LnSwing, other: &LnSwing) -> LnSwing {
    core::array::from_fn(|f| it[f] - other[f])
}

fn ln_swing(stroke_time_s: f64, contact: &Contact) -> LnSwing {
    let ln = |it: f64| libm::log(it.max(SLOWEST_M_S));
    [
        libm::log(stroke_time_s),
        ln(contact.bat_speed_m_s),
        ln(contact.normal_speed_m_s),
        ln(contact.toe_speed_m_s),
    ]
}

/// How the error's logarithm and the figures go with the logarithm of the stroke time, near the limit of control.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slopes {
    /// Of the logarithm of the contact error.
    pub error: f64,
    /// Of the figures of a swing; the first is one.
    pub figures: LnSwing,
}

impl Slopes {
    /// Between two swings with the logarithms of their errors; speeds no steeper than a swing's are.
    fn between((error, here): (f64, &LnSwing), (other, there): (f64, &LnSwing)) -> Self {
        let by = less(there, here);
        let run = by[LN_TIME];
        let mut figures = by.map(|it| (it / run).clamp(STEEPEST, 0.0));
        figures[LN_TIME] = 1.0;
        Self { error: (other - error) / run, figures }
    }

    /// The swing at a stroke time this much longer, on the logarithm.
    fn along(&self, mut swing: LnSwing, longer: f64) -> LnSwing {
        for (figure, slope) in swing.iter_mut().zip(&self.figures) {
            *figure += slope * longer;
        }
        swing
    }

    /// Mean of several; none of none.
    pub fn mean(all: impl Iterator<Item = Self>) -> Option<Self> {
        let all: Vec<Self> = all.collect();
        let by = 1.0 / all.len() as f64;
        let mean = |of: &dyn Fn(&Self) -> f64| all.iter().map(of).sum::<f64>() * by;
        (!all.is_empty()).then(|| Self {
            error: mean(&|it| it.error),
            figures: core::array::from_fn(|f| mean(&|it| it.figures[f])),
        })
    }
}

/// Where a short search starts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Near {
    /// Guess of the stroke time's logarithm.
    pub ln_time: f64,
    /// Slopes at swings like this one, where some are known.
    pub slopes: Option<Slopes>,
}

/// The limit of control, and how steep it is there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// The fastest controlled swing.
    pub swing: LnSwing,
    /// Slopes there, where the search saw them.
    pub slopes: Option<Slopes>,
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
/// The same where the line's steepness is that of swings like it: a fifth of it wrong is 0.02 % of the time.
const CLOSE: f64 = 0.01;
/// Swings tried before the whole search is called in.
const TRIES: usize = 7;

/// The fastest controlled swing by a short search: a straight line through two swings, repeated, whose
/// last step is not swung. Off by less than 0.1 %, at two or three swings in place of ten.
pub fn swing_at(held: &Held, ln_strength: &[f64; PART_COUNT], near: Option<Near>) -> Option<Limit> {
    let capacity = factors(ln_strength);
    let whole = || {
        let it = held.fastest(&capacity, near.map(|it| libm::exp(it.ln_time))).ok()?;
        Some(Limit { swing: ln_swing(it.stroke_time_s, &it), slopes: None })
    };
    match near {
        Some(near) => short_search(&held.swinger(&capacity), near).or_else(whole),
        None => whole(),
    }
}

fn short_search(swinger: &Swinger<'_>, near: Near) -> Option<Limit> {
    let swing = |x: f64| {
        let stroke_time_s = libm::exp(x);
        let contact: Contact = swinger.swing(stroke_time_s, None);
        (libm::log(contact.error.max(1e-6)), ln_swing(stroke_time_s, &contact))
    };
    let mut here = swing(near.ln_time);
    if let Some(slopes) = near.slopes
        && here.0.abs() < CLOSE
    {
        let swing = slopes.along(here.1, -here.0 / slopes.error);
        return Some(Limit { swing, slopes: Some(slopes) });
    }
    let mut steepness = near.slopes.map_or(USUAL_STEEPNESS, |it| it.error);
    for _ in 0..TRIES {
        let step = (-here.0 / steepness).clamp(-LONGEST_STEP, LONGEST_STEP);
        let next = swing(here.1[LN_TIME] + if step.abs() < 1e-4 { 1e-3 } else { step });
        let slopes = Slopes::between((here.0, &here.1), (next.0, &next.1));
        let believed = slopes.error < GENTLEST;
        if believed && next.0.abs() < NEAR {
            // From the nearer of the two, along the line through both.
            let swing = slopes.along(next.1, -next.0 / slopes.error);
            return Some(Limit { swing, slopes: Some(slopes) });
        }
        steepness = if believed { slopes.error } else { USUAL_STEEPNESS };
        here = next;
    }
    None
}
