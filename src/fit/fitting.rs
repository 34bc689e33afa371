//! The whole advice for one player: today's bats, and the bat to order.

use super::candidates::suitable;
pub use super::fault::FitFault;
use super::map::{Cell, OneSize};
use super::middles::{MiddleRow, asked_for, middles};
use super::pays::{Gain, gain};
use super::region::{Region, region};
use super::setting::Setting;
use super::settle::{WouldSettle, would_settle};
use super::tolerance::{Tolerances, tolerances};
use crate::bat::Bat;
use crate::bat::figures::WeighedBat;
use crate::bat::makeable::MadeBat;
use crate::bat::pickup_weight::pickup_weight_kg;
pub use crate::comparison::bats::Progress;
use crate::innings::played::{InningsFault, StrokeNow};
use crate::measurement::plan::Seen;
use crate::sensitivity::terms::{Terms, terms};
use crate::swing::batter::Batter;
use crate::swing::player_stroke::SwingFault;
use crate::worth::expected::Worth;
use crate::worth::order::Asked;
pub use crate::worth::order::Order;
use crate::worth::today::{Today, today, usable};
use core::ops::ControlFlow;
use core::sync::atomic::{AtomicUsize, Ordering};
use rayon::prelude::*;

/// The bat to order.
#[derive(Clone, Debug, PartialEq)]
pub struct Recommendation {
    /// Size.
    pub size: String,
    /// Shape it was computed for.
    pub made: MadeBat,
    /// What it is worth.
    pub worth: Worth,
    /// The likeliest player's strokes late in the innings, simulated.
    pub strokes: Vec<StrokeNow>,
    /// Weight of the size's standard bat with the same swing moment, kg.
    pub pickup_weight_kg: f64,
    /// Which bats are as good.
    pub region: Region,
    /// Limits that hold together.
    pub tolerances: Tolerances,
}

/// Today's advice with the player's figures.
#[derive(Clone, Debug)]
pub struct TodayAdvice {
    /// The likeliest player and what was asked.
    pub setting: Setting,
    /// The weighed bats in the hands of everybody this player may be.
    pub today: Today,
    /// What would settle which to use; the likeliest first. Empty with fewer than two.
    pub would_settle: Vec<WouldSettle>,
}

/// The whole advice.
#[derive(Clone, Debug)]
pub struct Fitting {
    /// The bats there are.
    pub now: TodayAdvice,
    /// The bat to order.
    pub recommendation: Recommendation,
    /// Whether ordering it pays.
    pub order: Gain,
    /// The likeliest player's strokes late in the innings with each weighed bat, simulated; none beyond control.
    pub strokes: Vec<Option<Vec<StrokeNow>>>,
    /// The best of each middle.
    pub middles: Vec<MiddleRow>,
    /// The size it is chosen from, swung.
    pub one: OneSize,
}

impl Fitting {
    /// The likeliest player and what was asked.
    pub fn setting(&self) -> &Setting {
        &self.now.setting
    }

    /// The map of the recommended size.
    pub fn map(&self) -> &[Cell] {
        &self.one.cells
    }

    /// Largest error of the polynomial over a size, as a share of a time or speed.
    pub fn surrogate_error(&self) -> f64 {
        self.one.swings.held_out_error
    }
}

/// Which of today's bats to use: no search of what can be made.
///
/// What an advice from `before` swung of the same player and bats is not swung again.
pub fn fit_today(
    order: &Order<'_>,
    before: Option<&TodayAdvice>,
    progress: Progress<'_>,
) -> Result<TodayAdvice, FitFault> {
    let standard = standard(order)?;
    let setting = setting(order, &standard)?;
    let before = before.map(|it| &it.today.swings);
    let asked = asked(order, &setting, &standard);
    let swings = TODAY_SWINGS * order.bats.len().max(1);
    let done = counted(progress, "swinging today's bats", 0.0, 0.8, swings);
    let today = today(&asked, before, &done)?;
    let would_settle = settle_today(&today);
    Ok(TodayAdvice { setting, today, would_settle })
}

/// Which terms of the model decide between two of the bats there are, by their index.
pub fn what_decides(
    order: &Order<'_>,
    pair: [usize; 2],
    progress: Progress<'_>,
) -> Result<Terms, FitFault> {
    let standard = standard(order)?;
    let setting = setting(order, &standard)?;
    // Other bats would be swung for nothing.
    let bats: Vec<WeighedBat> = pair.iter().filter_map(|it| order.bats.get(*it).cloned()).collect();
    let seen: Vec<Seen> = (order.seen.iter())
        .filter_map(|it| {
            let bat = pair.iter().position(|bat| *bat == it.bat)?;
            Some(Seen { bat, ..it.clone() })
        })
        .collect();
    let uses = pair.iter().position(|it| *it == order.uses).unwrap_or(0);
    let order = Order { bats: &bats, uses, seen: &seen, ..*order };
    let asked = asked(&order, &setting, &standard);
    let done =
        counted(progress, "moving one term of the model after another", 0.0, 1.0, TERMS_SWINGS);
    Ok(terms(&asked, [0, 1], &done)?)
}

/// Searches told of while the terms are moved, about.
const TERMS_SWINGS: usize = 420;
/// Swings searched for one weighed bat, about: for the progress told only.
const TODAY_SWINGS: usize = 40;
/// The same for a size.
const SIZE_SWINGS: usize = 260;

/// Today's bats, then all bats of the sizes that suit.
pub fn fit(order: &Order<'_>, progress: Progress<'_>) -> Result<Fitting, FitFault> {
    let mut now = fit_today(order, None, &|what, share| progress(what, 0.35 * share))?;
    let sizes = suitable(order.sizes, order.limits, order.player.stature_m);
    let part = 0.65 / sizes.len().max(1) as f64;
    let mut best: Option<(OneSize, Vec<MiddleRow>)> = None;
    let mut fault = None;
    for (i, size) in sizes.iter().enumerate() {
        let from = 0.35 + part * i as f64;
        let what = "swinging the bats that can be made";
        let done = counted(progress, what, from, part, SIZE_SWINGS);
        let one = match OneSize::new(order, &now.today, size, &done) {
            Ok(one) => one,
            Err(it @ FitFault::Cancelled) => return Err(it),
            Err(it) => {
                fault = Some(it);
                continue;
            }
        };
        let rows = middles(order, &now.today, &one);
        let worth = |rows: &[MiddleRow]| {
            asked_for(rows, order.limits.middle, order.player.age_y)
                .map_or(0.0, |it| it.best.worth.mean_m_s())
        };
        if best.as_ref().is_none_or(|(_, other)| worth(&rows) > worth(other)) {
            best = Some((one, rows));
        }
    }
    let names: Vec<&str> = sizes.iter().map(|it| it.name.as_str()).collect();
    let nothing = || FitFault::NothingToMake { size: names.join(", ") };
    let (one, middles) = best.ok_or_else(|| fault.unwrap_or_else(nothing))?;
    let row = asked_for(&middles, order.limits.middle, order.player.age_y).ok_or_else(nothing)?;
    let recommendation = recommend(&now, &one, row)?;
    let strokes = strokes_at_end(&now.setting, order, &now.today)?;
    let order = gain(use_today_worth(&now.today), &recommendation.worth);
    if now.would_settle.is_empty()
        && let Some(own) = use_today_worth(&now.today)
    {
        now.would_settle = would_settle(&now.today.knowledge, own, &[&recommendation.worth]);
    }
    Ok(Fitting { now, recommendation, order, strokes, middles, one })
}

/// The standard bat of the size that suits first.
fn standard(order: &Order<'_>) -> Result<Bat, FitFault> {
    let sizes = suitable(order.sizes, order.limits, order.player.stature_m);
    let nothing = || FitFault::NoSize { names: order.limits.sizes.clone() };
    Ok(sizes.first().ok_or_else(nothing)?.reference.bat("the standard bat of this size")?)
}

/// The likeliest player with the asked times of the standard bat.
pub fn setting(order: &Order<'_>, standard: &Bat) -> Result<Setting, SwingFault> {
    let batter = Batter::new(order.player, order.strokes, standard)?;
    let asked_time_s = Setting::asked_times_s(&batter, standard, order.limits.asked_time_factor)?;
    Ok(Setting { batter, plan: order.plan.clone(), delivery: *order.bowling, asked_time_s })
}

fn asked<'a>(order: &'a Order<'a>, setting: &'a Setting, standard: &'a Bat) -> Asked<'a> {
    let asked_time_s = &setting.asked_time_s;
    Asked { order, batter: &setting.batter, standard, asked_time_s, moved: None }
}

/// Tells progress of each swing searched, from a share on for a part of the whole.
fn counted<'a>(
    progress: Progress<'a>,
    what: &'static str,
    from: f64,
    part: f64,
    all: usize,
) -> impl Fn() -> ControlFlow<()> + Sync + 'a {
    let done = AtomicUsize::new(0);
    move || {
        let n = done.fetch_add(1, Ordering::Relaxed) + 1;
        progress(what, from + part * (n as f64 / all as f64).min(1.0))
    }
}

fn strokes_at_end(
    setting: &Setting,
    order: &Order<'_>,
    today: &Today,
) -> Result<Vec<Option<Vec<StrokeNow>>>, FitFault> {
    order
        .bats
        .par_iter()
        .zip(&today.given)
        .map(|(weighed, given)| {
            if given.worth.is_none() {
                return Ok(None);
            }
            match setting.at_end(&weighed.bat, Some(&setting.asked_time_s)) {
                Ok(strokes) => Ok(Some(strokes)),
                Err(InningsFault::Swing(SwingFault::NoControlledSwing { .. })) => Ok(None),
                Err(fault) => Err(fault.into()),
            }
        })
        .collect()
}

fn use_today_worth(today: &Today) -> Option<&Worth> {
    today.given[today.use_today.as_ref()?.bat].worth.as_ref()
}

fn settle_today(today: &Today) -> Vec<WouldSettle> {
    let (Some(chosen), Some(own)) = (&today.use_today, use_today_worth(today)) else {
        return Vec::new();
    };
    let others: Vec<&Worth> = usable(&today.given)
        .into_iter()
        .filter(|i| *i != chosen.bat)
        .filter_map(|i| today.given[i].worth.as_ref())
        .collect();
    if others.is_empty() { Vec::new() } else { would_settle(&today.knowledge, own, &others) }
}

fn recommend(
    now: &TodayAdvice,
    one: &OneSize,
    row: &MiddleRow,
) -> Result<Recommendation, FitFault> {
    let made = &row.best.made;
    // Where the search of each stroke's time may start.
    let near_s = |stroke: usize| libm::exp(one.likely(&now.today, &made.bat, stroke)[0]);
    let near_s: Vec<f64> = (0..now.today.knowledge.strokes.len()).map(near_s).collect();
    let standard = one.range.size.reference.bat("the standard bat of this size")?;
    let region = region(&now.today, one, &made.bat)
        .ok_or_else(|| FitFault::NothingToMake { size: one.range.size.name.clone() })?;
    Ok(Recommendation {
        size: one.range.size.name.clone(),
        strokes: now.setting.at_end(&made.bat, Some(&near_s))?,
        pickup_weight_kg: pickup_weight_kg(&standard, made.bat.swing_moment_kg_m2()),
        tolerances: tolerances(&region),
        region,
        worth: row.best.worth.clone(),
        made: made.clone(),
    })
}
