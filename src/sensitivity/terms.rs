//! Which terms of the model decide between two bats: each taken away or moved, and what it does to the ratio of what
//! the two are worth.

use super::input::Input;
use crate::player::Strength;
use crate::player::joints::HIP_TURN;
use crate::swing::assumed::Assumed;
use crate::swing::batter::Batter;
use crate::worth::order::Asked;
use crate::worth::possible::Possible;
use crate::worth::swings::Step;
use crate::worth::today::{Today, today};
use crate::worth::ways::SwingsFault;

/// One term of the model, moved.
#[derive(Clone, Debug, PartialEq)]
pub struct Term {
    /// What was done, in plain words.
    pub what: &'static str,
    /// Input of the [`study`](super::study) that moves the same, where one does.
    pub input: Option<Input>,
    /// Worth of the second bat over the first then; none where one of them cannot be controlled any more.
    pub ratio: Option<f64>,
}

/// All terms, and the ratio with none moved.
#[derive(Clone, Debug, PartialEq)]
pub struct Terms {
    /// Worth of the second bat over the first.
    pub ratio: f64,
    /// One standard deviation of it over the possible players.
    pub ratio_sd: f64,
    /// Terms, in the order of the model.
    pub moved: Vec<Term>,
}

enum Move {
    /// What every swing rests on.
    Assumed(fn(&mut Assumed)),
    /// How strong the player is.
    Strength(fn(&mut Strength)),
    /// What is drawn.
    Drawn(fn(&mut Possible)),
}

const MOVES: [(&str, Option<Input>, Move); 19] = [
    ("no gravity", None, Move::Assumed(|it| it.gravity_m_s2 = 0.0)),
    ("no noise of the muscles", None, Move::Drawn(|it| it.torque_noise = 0.0)),
    ("twice the noise of the muscles", None, Move::Drawn(|it| it.torque_noise *= 2.0)),
    ("no scatter of timing", None, Move::Drawn(|it| it.timing_s = 0.0)),
    ("stored path alone", None, Move::Drawn(|it| it.path = 0.0)),
    ("own best path alone", None, Move::Drawn(|it| it.path = 1.0)),
    ("hips 30 % weaker", Some(Input::Trunk), Move::Strength(|it| hips(it, 0.7))),
    ("hips 30 % stronger", Some(Input::Trunk), Move::Strength(|it| hips(it, 1.3))),
    ("torque rises quickly", Some(Input::TorqueRise), Move::Drawn(|it| it.rise = 0.0)),
    ("torque rises slowly", Some(Input::TorqueRise), Move::Drawn(|it| it.rise = 1.0)),
    (
        "half the friction of the grip",
        Some(Input::Friction),
        Move::Assumed(|it| it.friction *= 0.5),
    ),
    ("law: as it is", None, Move::Drawn(|it| it.law = 0.0)),
    ("law: held to the path three times as hard", None, Move::Drawn(|it| it.law = 1.0)),
    (
        "law: joints' path three times as dear",
        None,
        Move::Assumed(|it| it.control.weight_posture *= 3.0),
    ),
    (
        "law: bat's attitude three times as dear",
        None,
        Move::Assumed(|it| it.control.weight_rotation *= 3.0),
    ),
    ("law: errors taken back at 15 /s", None, Move::Assumed(|it| it.control.bandwidth_1_s = 15.0)),
    ("law: errors taken back at 35 /s", None, Move::Assumed(|it| it.control.bandwidth_1_s = 35.0)),
    ("a late ball is worth nothing", None, Move::Drawn(|it| it.late_ball = 0.0)),
    ("a livelier face, e = 0.58", None, Move::Drawn(|it| it.restitution = 0.58)),
];

/// The turn of the hips on the ground, this much as strong.
fn hips(strength: &mut Strength, times: f64) {
    strength.positive_n_m[HIP_TURN] *= times;
    strength.negative_n_m[HIP_TURN] *= times;
}

/// Moves each term and judges two of the asked bats, by their index, again.
pub fn terms(asked: &Asked<'_>, pair: [usize; 2], step: Step<'_>) -> Result<Terms, SwingsFault> {
    let plain = today(asked, None, step)?;
    let Some([ratio, ratio_sd]) = ratio(&plain, pair) else {
        return Err(SwingsFault::BeyondControl);
    };
    let moved = MOVES
        .iter()
        .map(|(what, input, moved)| {
            let again = match moved {
                Move::Drawn(moved) => {
                    let asked = Asked { moved: Some(*moved), ..*asked };
                    today(&asked, Some(&plain.swings), step)
                }
                Move::Assumed(moved) => anew(asked, assuming(asked.batter, *moved), step),
                Move::Strength(moved) => {
                    let mut strength = asked.batter.player.strength;
                    moved(&mut strength);
                    anew(asked, asked.batter.with_strength(strength), step)
                }
            };
            let input = *input;
            match again {
                Ok(it) => Ok(Term { what, input, ratio: self::ratio(&it, pair).map(|[it, _]| it) }),
                Err(SwingsFault::BeyondControl) => Ok(Term { what, input, ratio: None }),
                Err(fault) => Err(fault),
            }
        })
        .collect::<Result<_, _>>()?;
    Ok(Terms { ratio, ratio_sd, moved })
}

/// The same asked of another batter, nothing swung before.
fn anew(asked: &Asked<'_>, batter: Batter, step: Step<'_>) -> Result<Today, SwingsFault> {
    today(&Asked { batter: &batter, ..*asked }, None, step)
}

fn assuming(batter: &Batter, moved: fn(&mut Assumed)) -> Batter {
    let mut assumed = batter.assumed;
    moved(&mut assumed);
    batter.in_place(&batter.player, batter.handle_diameter_m, assumed)
}

/// Worth of the second over the first: of the means, and the spread of the players' own ratios.
fn ratio(today: &Today, [first, second]: [usize; 2]) -> Option<[f64; 2]> {
    let of = |bat: usize| today.given.get(bat)?.worth.as_ref();
    let (first, second) = (of(first)?, of(second)?);
    let by: Vec<f64> = second.by_draw.iter().zip(&first.by_draw).map(|(b, a)| b / a).collect();
    Some([second.mean_m_s() / first.mean_m_s(), crate::worth::expected::sd(&by)])
}
