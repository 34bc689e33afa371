//! How sure a hit's figures are: the same hit with each assumption moved by its spread, one after another.

use rayon::prelude::*;

use super::ImpactFault;
use super::ball;
use super::hand;
use super::hit::Hit;
use super::parts::BatError;
use super::splice::Hinge;
use super::strike::{Struck, Until, strike};
use crate::comparison::collision::RESTITUTION;
use crate::uncertain::{Uncertain, independent_sd};

/// What is in doubt besides the assumptions of this stage.
#[derive(Clone, Debug, PartialEq)]
pub struct Spread {
    /// Stiffness of the hinge with the softest and the stiffest cane, N m/rad.
    pub hinge_n_m: [f64; 2],
    /// One standard deviation of the bat's speed, m/s.
    pub bat_m_s: f64,
    /// The bat's own errors, each one standard deviation and independent of the others. That a heavier bat is
    /// swung more slowly is in the speed's: the two are added as if independent, which is on the safe side.
    pub bat: Vec<BatError>,
}

/// What one hand feels, with its doubt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FeltSurely {
    /// Greatest force, N.
    pub peak_n: Uncertain,
    /// Impulse, N s.
    pub impulse_n_s: Uncertain,
    /// Greatest couple about the handle while the grip holds, N m.
    pub couple_n_m: Uncertain,
}

/// A hit with the doubt of its figures.
#[derive(Clone, Debug, PartialEq)]
pub struct Doubted {
    /// The hit.
    pub struck: Struck,
    /// Ball speed off the bat, m/s.
    pub exit_m_s: Uncertain,
    /// Furthest bend at the shoulder, either way, rad.
    pub bend_rad: Uncertain,
    /// The bend with the softest cane and with the stiffest, rad.
    pub bend_range_rad: [f64; 2],
    /// Hands, as given.
    pub hands: Vec<FeltSurely>,
}

/// What is moved.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Cause {
    Restitution,
    BallStiffness,
    Cane,
    HandStiffness,
    HandMass,
    BatSpeed,
    Bat(BatError),
}

const ASSUMED: [Cause; 6] = [
    Cause::Restitution,
    Cause::BallStiffness,
    Cause::Cane,
    Cause::HandStiffness,
    Cause::HandMass,
    Cause::BatSpeed,
];

/// The bat is moved by this share of its errors, and what comes of it scaled up: a swing moment that was not
/// measured is in doubt by more than the blade's own moment, which would go below nought.
const BAT_SHARE: f64 = 0.2;

impl Cause {
    /// Standard deviations by which it is moved.
    fn moved_by(self) -> f64 {
        if matches!(self, Self::Bat(_)) { BAT_SHARE } else { 1.0 }
    }
}

/// The hit with one cause off as far as it is moved, downwards (−1) or upwards (1).
fn moved(hit: &Hit, spread: &Spread, cause: Cause, way: f64) -> Hit {
    let mut it = hit.clone();
    let by = |known: Uncertain| 1.0 + way * known.relative_sd();
    match cause {
        Cause::Restitution => it.ball.restitution *= by(RESTITUTION),
        Cause::BallStiffness => it.ball.stiffness_n_m15 *= by(ball::STIFFNESS),
        Cause::Cane => {
            let [soft, stiff] = spread.hinge_n_m;
            it.hinge = Hinge::of(if way < 0.0 { soft } else { stiff }, &it.parts);
        }
        Cause::HandStiffness => {
            it.hands.iter_mut().for_each(|hand| hand.stiffness_n_m *= by(hand::STIFFNESS));
        }
        Cause::HandMass => {
            it.hands.iter_mut().for_each(|hand| hand.mass_kg *= by(hand::MASS_SHARE));
        }
        Cause::BatSpeed => it.bat_m_s += way * spread.bat_m_s,
        Cause::Bat(error) => {
            it.parts = it.parts.off_by(way * cause.moved_by(), &error);
            it.hinge = Hinge::of(it.hinge.stiffness_n_m, &it.parts);
        }
    }
    it
}

/// Follows a hit and, on several threads, the same with every cause moved either way.
pub fn doubted(hit: &Hit, spread: &Spread) -> Result<Doubted, ImpactFault> {
    let struck = strike(hit, Until::Felt)?;
    let causes: Vec<Cause> =
        ASSUMED.into_iter().chain(spread.bat.iter().copied().map(Cause::Bat)).collect();
    let either_way: Vec<[Struck; 2]> = causes
        .par_iter()
        .copied()
        .map(|cause| {
            let [down, up] =
                [-1.0, 1.0].map(|way| strike(&moved(hit, spread, cause, way), Until::Felt));
            Ok([down?, up?])
        })
        .collect::<Result<_, ImpactFault>>()?;
    let sure = |figure: &dyn Fn(&Struck) -> f64| {
        let off: Vec<f64> = either_way
            .iter()
            .zip(&causes)
            .map(|([down, up], cause)| 0.5 * (figure(up) - figure(down)) / cause.moved_by())
            .collect();
        Uncertain::computed(figure(&struck), independent_sd(&off))
    };
    let felt = |n: usize, figure: &dyn Fn(&super::strike::Felt) -> f64| {
        sure(&|it| it.hands.get(n).map_or(0.0, figure))
    };
    let hands = (0..hit.hands.len())
        .map(|n| FeltSurely {
            peak_n: felt(n, &|it| it.peak_n),
            impulse_n_s: felt(n, &|it| it.impulse_n_s),
            couple_n_m: felt(n, &|it| it.couple_n_m),
        })
        .collect();
    let cane = causes.iter().position(|it| *it == Cause::Cane);
    let bend_range_rad = cane
        .and_then(|it| either_way.get(it))
        .map_or([f64::NAN; 2], |both| both.each_ref().map(|it| it.bend_rad.abs()));
    Ok(Doubted {
        exit_m_s: sure(&|it| it.exit_m_s),
        bend_rad: sure(&|it| it.bend_rad.abs()),
        bend_range_rad,
        hands,
        struck,
    })
}

/// The stiffness of the hinge, N m/rad, at which a hit bends the bat by so much; none between a hundredth and
/// a hundred times the hit's own. By halving in proportion, to a thousandth.
pub fn stiffness_for_bend(hit: &Hit, bend_rad: f64) -> Result<Option<f64>, ImpactFault> {
    let own = libm::log(hit.hinge.stiffness_n_m);
    let reach = libm::log(100.0);
    halved([own - reach, own + reach], |it| {
        let hinge = Hinge::of(libm::exp(it), &hit.parts);
        let struck = strike(&Hit { hinge, ..hit.clone() }, Until::Felt)?;
        Ok(struck.bend_rad.abs() > bend_rad)
    })
}

/// The closing speed, m/s, shared between ball and bat as in this hit, at which it bends the bat by so much;
/// none up to ten times the hit's own.
pub fn closing_for_bend(hit: &Hit, bend_rad: f64) -> Result<Option<f64>, ImpactFault> {
    let closing_m_s = hit.ball_m_s + hit.bat_m_s;
    let share = halved([libm::log(0.1), libm::log(10.0)], |it| {
        let share = libm::exp(it);
        let faster =
            Hit { ball_m_s: share * hit.ball_m_s, bat_m_s: share * hit.bat_m_s, ..hit.clone() };
        Ok(strike(&faster, Until::Felt)?.bend_rad.abs() < bend_rad)
    })?;
    Ok(share.map(|it| it * closing_m_s))
}

/// Where `below` turns from true to false between two logarithms, undone of it; none if it does not.
fn halved(
    [mut low, mut high]: [f64; 2],
    below: impl Fn(f64) -> Result<bool, ImpactFault>,
) -> Result<Option<f64>, ImpactFault> {
    if !below(low)? || below(high)? {
        return Ok(None);
    }
    while high - low > 1e-3 {
        let middle = 0.5 * (low + high);
        if below(middle)? { low = middle } else { high = middle }
    }
    Ok(Some(libm::exp(0.5 * (low + high))))
}
