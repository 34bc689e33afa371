//! Today's bats: what each is worth, which to use, and how sure that is.

use super::constants::{BEYOND_DOUBT_SD, GROWN_FROM_Y, IN_TIME, LEAVE_BELOW};
use super::evidence::{self, Weighed, chance_of};
use super::expected::{Judged, Knowledge, Worth, is_near};
use super::meeting::Struck;
use super::order::Asked;
use super::possible::{Possible, Prior};
use super::scores::Scores;
use super::suits::{Suits, suits};
use super::swings::{Step, Swings};
use super::swung_bat::SwungBat;
use super::ways::SwingsFault;
use crate::bat::figures::WeighedBat;
use crate::bat::laws::Verdict;
use crate::calibration::response::triangle;
use crate::measurement::plan::{Bowling, Seen};
use crate::normal;
use crate::stroke::Stroke;

/// One weighed bat.
#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    /// Label.
    pub label: String,
    /// Whether its size suits.
    pub suits: Suits,
    /// Whether the Laws allow it.
    pub legal: Verdict,
    /// What it is worth; none where most players of this strength cannot control it.
    pub worth: Option<Worth>,
    /// Chance that it is within half a per cent of the best of those that may be used.
    pub chance_near_best: f64,
}

/// Which bat to use.
#[derive(Clone, Debug, PartialEq)]
pub struct UseToday {
    /// Index of the bat.
    pub bat: usize,
    /// No other bat that may be used is near the best too often.
    pub decided: bool,
    /// Indices of those that are.
    pub as_good_as: Vec<usize>,
}

/// Today's bats in the hands of everybody this player may be.
#[derive(Clone, Debug)]
pub struct Today {
    /// The possible players.
    pub knowledge: Knowledge,
    /// Their swings.
    pub swings: Swings,
    /// Bats in the order given.
    pub given: Vec<Given>,
    /// The one to use; none where none may be used or can be controlled.
    pub use_today: Option<UseToday>,
    /// How often in time was assumed, lowest and highest share; none where it was seen.
    pub in_time_assumed: Option<[f64; 2]>,
    /// What was seen cannot all be true of one player.
    pub seen_contradicts: bool,
}

/// Judges the bats; what an earlier question swung `before` may serve again.
pub fn today(
    asked: &Asked<'_>,
    before: Option<&Swings>,
    step: Step<'_>,
) -> Result<Today, SwingsFault> {
    let order = asked.order;
    let player = &asked.batter.player;
    let seen = !order.seen.is_empty();
    let ball_kg = order.limits.ball_mass_kg;
    let prior = Prior::new(player, order.bowling, ball_kg, order.bats.len(), seen);
    let scores = Scores::new(order.plan.runs, order.seen.iter().map(|it| it.runs));
    let swings = Swings::new(asked, &prior, &scores, before, step)?;
    let delivery = *order.bowling;
    let fixed = Fixed { asked, swings: &swings, delivery };
    let weighed = match seen {
        true => evidence::seen(&prior, |it| fixed.chances(it)),
        false => Weighed { draws: evidence::unseen(&prior), together: 1.0 },
    };
    let (mut draws, mut likeliest) = (weighed.draws.clone(), prior.likeliest());
    if let Some(moved) = asked.moved {
        draws.iter_mut().for_each(moved);
        moved(&mut likeliest);
    }
    let knowledge = Knowledge {
        there_is_s: draws.iter().map(|it| fixed.there_is_s(it)).collect(),
        likeliest,
        strokes: mixed(asked),
        delivery,
        steadiness: swings.steadiness.clone(),
        goal: order.limits.goal,
        draws,
    };
    let given = given(asked, &swings, &knowledge);
    Ok(Today {
        use_today: choose(asked, &given),
        given,
        in_time_assumed: (!seen).then_some(IN_TIME.range),
        seen_contradicts: weighed.contradicts(),
        knowledge,
        swings,
    })
}

/// Strokes with their shares of the mix, summing to 1.
fn mixed(asked: &Asked<'_>) -> Vec<(Stroke, f64)> {
    let share = |it: &Stroke| asked.order.plan.mix_share(&it.name);
    let strokes = || asked.batter.strokes.iter().map(|it| &it.stroke);
    let sum: f64 = strokes().map(share).sum();
    strokes().map(|it| (it.clone(), if sum > 0.0 { share(it) / sum } else { 0.0 })).collect()
}

/// What fixes the time there is.
struct Fixed<'a> {
    asked: &'a Asked<'a>,
    swings: &'a Swings,
    delivery: Bowling,
}

impl Fixed<'_> {
    /// By stroke, the time there is on average for one possible player, s.
    fn there_is_s(&self, it: &Possible) -> Vec<f64> {
        let margin_s = it.margin_sd * it.spread_s(self.delivery.flight_s());
        let bench = self.swings.base_bat.and_then(|i| it.bench.get(i));
        let time = |k| libm::exp(self.swings.base.figures(k, Scores::FRESH, it, bench)[0]);
        (0..self.asked.batter.strokes.len()).map(|k| time(k) + margin_s).collect()
    }

    /// Chance of each thing that was seen.
    fn chances(&self, it: &Possible) -> Vec<f64> {
        let there_is_s = self.there_is_s(it);
        self.asked.order.seen.iter().map(|seen| self.chance(it, seen, &there_is_s)).collect()
    }

    fn chance(&self, it: &Possible, seen: &Seen, there_is_s: &[f64]) -> f64 {
        let stroke = self.asked.batter.stroke_index(&seen.stroke);
        let swung: Option<&SwungBat> = self.swings.bats.get(seen.bat).and_then(Option::as_ref);
        let (Some(k), Some(swung)) = (stroke, swung) else { return 1.0 };
        let bowled = Bowling {
            speed_m_s: seen.bowling_m_s.unwrap_or(self.delivery.speed_m_s),
            ..self.delivery
        };
        let score = self.swings.scores.place(seen.runs);
        let time_s = libm::exp(swung.figures(k, score, it, it.bench.get(seen.bat))[0]);
        let there_s = there_is_s[k] + bowled.flight_s() - self.delivery.flight_s();
        let in_time = normal::below((there_s - time_s) / it.spread_s(bowled.flight_s()));
        chance_of(seen.how_often, seen.balls, in_time)
    }
}

/// Each weighed bat judged.
fn given(asked: &Asked<'_>, swings: &Swings, knowledge: &Knowledge) -> Vec<Given> {
    let mut given: Vec<Given> = asked
        .order
        .bats
        .iter()
        .enumerate()
        .map(|(i, weighed)| Given {
            label: weighed.reading.label.clone(),
            suits: asked
                .order
                .sizes
                .iter()
                .find(|it| it.name == weighed.size)
                .map_or(Suits::Yes, |size| suits(size, asked.batter.player.stature_m)),
            legal: weighed.law.verdict,
            worth: swings.bats[i].as_ref().map(|swung| worth_of(knowledge, weighed, i, swung)),
            chance_near_best: 0.0,
        })
        .collect();
    let may: Vec<&Worth> =
        usable(&given).into_iter().filter_map(|i| given[i].worth.as_ref()).collect();
    let best: Vec<f64> = (0..knowledge.draws.len())
        .map(|d| may.iter().map(|it| it.by_draw[d]).fold(0.0, f64::max))
        .collect();
    for it in &mut given {
        let Some(worth) = &it.worth else { continue };
        let near = worth.by_draw.iter().zip(&best).filter(|(w, best)| is_near(**w, **best)).count();
        it.chance_near_best = near as f64 / best.len() as f64;
    }
    given
}

/// Worth of one weighed bat, its errors of the bench in every draw.
fn worth_of(knowledge: &Knowledge, weighed: &WeighedBat, index: usize, swung: &SwungBat) -> Worth {
    let width_m =
        weighed.reading.width_m.unwrap_or_else(|| weighed.family().reference().blade.width_m());
    let figures = |stroke: usize, score: usize, it: &Possible| {
        swung.figures(stroke, score, it, it.bench.get(index))
    };
    knowledge.worth(&Judged {
        struck: Struck::of(&weighed.bat, width_m),
        bench: Some((index, triangle(&weighed.covariance()))),
        figures: &figures,
    })
}

/// Indices of the bats that may be used: allowed, controllable, and of a size that suits; where none suits, the
/// shorter ones before the longer.
pub fn usable(given: &[Given]) -> Vec<usize> {
    let of = |suits: Suits| -> Vec<usize> {
        (0..given.len())
            .filter(|i| given[*i].legal != Verdict::No && given[*i].worth.is_some())
            .filter(|i| given[*i].suits == suits)
            .collect()
    };
    [Suits::Yes, Suits::TooShort, Suits::TooLong]
        .into_iter()
        .map(of)
        .find(|it| !it.is_empty())
        .unwrap_or_default()
}

/// The bat to use today.
fn choose(asked: &Asked<'_>, given: &[Given]) -> Option<UseToday> {
    let may = usable(given);
    let junior = asked.batter.player.age_y < GROWN_FROM_Y;
    let too_long = may.iter().all(|i| given[*i].suits == Suits::TooLong);
    if junior && too_long {
        return shortest(asked, &may);
    }
    let worth = |i: usize| given[i].worth.as_ref().map_or(0.0, Worth::mean_m_s);
    let mut best = may.iter().copied().max_by(|a, b| worth(*a).total_cmp(&worth(*b)))?;
    // Less often in time only for a gain that is beyond doubt.
    for i in &may {
        let (Some(own), Some(other)) = (&given[best].worth, &given[*i].worth) else { continue };
        let [gain, sd] = other.to(own);
        if other.chance_in_time > own.chance_in_time && gain < BEYOND_DOUBT_SD.value * sd {
            best = *i;
        }
    }
    let as_good = |i: usize| match (&given[i].worth, &given[best].worth) {
        (Some(own), Some(best)) => own.often_near(best),
        _ => false,
    };
    let mut alike: Vec<usize> = may.iter().copied().filter(|i| *i == best || as_good(*i)).collect();
    if junior {
        // Never towards the heavier of two doubtful bats.
        let pickup = |i: &usize| asked.order.bats[*i].bat.swing_moment_kg_m2();
        best = alike.iter().copied().min_by(|a, b| pickup(a).total_cmp(&pickup(b)))?;
    }
    alike.retain(|i| *i != best);
    Some(UseToday { bat: best, decided: alike.is_empty(), as_good_as: alike })
}

/// A junior's bats are all too long: the shortest, then the one that picks up lightest, until a shorter is found.
fn shortest(asked: &Asked<'_>, may: &[usize]) -> Option<UseToday> {
    let key = |i: &usize| {
        let bat = &asked.order.bats[*i].bat;
        [libm::round(bat.length_m() / SAME_LENGTH_M), bat.swing_moment_kg_m2()]
    };
    let bat = may.iter().copied().min_by(|a, b| {
        let (a, b) = (key(a), key(b));
        a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1]))
    })?;
    Some(UseToday { bat, decided: true, as_good_as: Vec::new() })
}

/// Bats are told apart by length from here on, m.
const SAME_LENGTH_M: f64 = 0.01;

impl Today {
    /// Strokes to the short ball that are better left late in the innings with every one of these bats.
    pub fn better_left(&self) -> Vec<usize> {
        (0..self.knowledge.strokes.len())
            .filter(|k| self.knowledge.strokes[*k].0.answers_short_ball)
            .filter(|k| {
                let with = |it: &Given| it.worth.as_ref().map(|it| it.strokes[*k].in_time_late);
                let best = self.given.iter().filter_map(with).reduce(f64::max);
                best.is_some_and(|it| it < LEAVE_BELOW.value)
            })
            .collect()
    }
}
