//! The pairs of bats that show what pickup is, each swung by a player late in the innings.

use super::loaded::Loaded;
use super::ounces::Ounces;
use super::{Progress, Stop};
use crate::bat::figures::WeighedBat;
use crate::bat::makeable::MadeBat;
use crate::bat::shape::BatShape;
use crate::bat::sizes::find;
use crate::innings::played::StrokeNow;
use crate::ounce::cost::OUNCE_KG;
use crate::ounce::moments::TopMoments;
use crate::workshop::pickup_pair::{self, Pairs, to_make};

/// A bat of a pair and the late pull with it.
#[derive(Clone, Debug)]
pub struct Swung {
    /// The bat.
    pub made: MadeBat,
    /// Scale weight of the size's reference bat with the same swing moment, kg.
    pub pickup_weight_kg: f64,
    /// The pull with it at fifty.
    pub pull: StrokeNow,
    /// The same weight, balance point and swing moment as a shape that a maker can make, or what stands in the way.
    pub to_make: Result<BatShape, String>,
}

impl Swung {
    /// The shape to draw.
    pub fn shape(&self) -> &BatShape {
        self.to_make.as_ref().unwrap_or(&self.made.shape)
    }
}

/// Both pairs, swung.
#[derive(Clone, Debug)]
pub struct Shown {
    /// Title of the scenario.
    pub title: String,
    /// Size in which all four could be made.
    pub size: String,
    /// From release until the stroke can start, s: what a time in hand hangs on.
    pub reaction_time_s: f64,
    /// Alike on the scale, unlike in the hand.
    pub same_scale: [Swung; 2],
    /// Alike in the hand, unlike on the scale.
    pub same_hand: [Swung; 2],
    /// On the bat named.
    pub ounces: Ounces,
}

impl Shown {
    /// By how much the second bat of one scale weight is slower in the late pull, m/s: as both were swung, and by what
    /// an ounce costs along the bat named.
    pub fn slower_m_s(&self) -> [f64; 2] {
        let [near, far] = &self.same_scale;
        let by = TopMoments::of_bat(&far.made.bat) - TopMoments::of_bat(&near.made.bat);
        let by_ounce = self.ounces.lead().map_or(0.0, |it| -it.change_m_s(by));
        [near.pull.bat_speed_m_s() - far.pull.bat_speed_m_s(), by_ounce]
    }

    /// What an ounce more pickup at the same dead weight takes from the late pull between the bats of one pair, and an
    /// ounce more dead weight at the same pickup between those of the other, m/s.
    pub fn ounce_between_m_s(&self) -> [f64; 2] {
        let slower = |[one, other]: &[Swung; 2], more_kg: f64| {
            (one.pull.bat_speed_m_s() - other.pull.bat_speed_m_s()) / more_kg * OUNCE_KG
        };
        let [near, far] = &self.same_scale;
        let [light, heavy] = &self.same_hand;
        [
            slower(&self.same_scale, far.pickup_weight_kg - near.pickup_weight_kg),
            slower(&self.same_hand, heavy.made.bat.mass_kg() - light.made.bat.mass_kg()),
        ]
    }
}

/// Both pairs around the dead weight of one bat, and an ounce on it.
///
/// # Errors
/// If no such bats can be made, the player cannot swing one, or the work is cancelled.
pub fn pairs(loaded: &Loaded, bat: usize, progress: &dyn Progress) -> Result<Shown, Stop> {
    let weighed = &loaded.bats[bat];
    let mass_kg = weighed.mass_kg.value;
    let Pairs { same_scale, same_hand } =
        pickup_pair::pairs(weighed.family(), &loaded.laws, mass_kg).ok_or_else(|| {
            let words = format!("no bat of size {} weighs {mass_kg:.3} kg", weighed.size);
            Stop::no_answer(words, "name another bat with --bat")
        })?;
    let batter = loaded.batter(weighed, 1.0)?;
    let asked_time_s = loaded.asked_times_s(&batter)?;
    let pull = loaded.pull()?;
    let per_swing = weighed.pickup_weight_kg.value / weighed.swing_moment_kg_m2.value;
    let size = find(&loaded.sizes, &weighed.size).map_err(Stop::our_mistake)?;
    let mut done = 0.0;
    let mut swing = |made: MadeBat| -> Result<Swung, Stop> {
        progress.step("swinging the four bats at fifty", done / 5.0)?;
        done += 1.0;
        let pull = loaded.at_fifty(&batter, &made.bat, &asked_time_s)?.with_slow[pull];
        let pickup_weight_kg = per_swing * made.bat.swing_moment_kg_m2();
        let to_make = to_make(&made, weighed.family(), size, &loaded.laws);
        Ok(Swung { made, pickup_weight_kg, pull, to_make })
    };
    let mut both = |[a, b]: [MadeBat; 2]| Ok::<_, Stop>([swing(a)?, swing(b)?]);
    let (same_scale, same_hand) = (both(same_scale)?, both(same_hand)?);
    progress.step("putting an ounce here and there", 4.0 / 5.0)?;
    let ounces = Ounces::at_fifty(loaded, weighed, &batter, &asked_time_s)?;
    Ok(Shown {
        title: loaded.scenario.title.clone(),
        size: weighed.size.clone(),
        reaction_time_s: loaded.scenario.bowling.reaction_time_s,
        same_scale,
        same_hand,
        ounces,
    })
}

/// How much more a likeness counts than an unlikeness.
const LIKENESS: f64 = 4.0;

/// Places of the two bats that are most alike on the scale and most unlike in the hand, or the other way round.
pub fn most_telling(bats: &[WeighedBat], on_scale: bool) -> Option<[usize; 2]> {
    let apart = |a: f64, b: f64| libm::log(a / b).abs();
    let score = |[a, b]: [usize; 2]| {
        let (a, b) = (bats.get(a)?, bats.get(b)?);
        let scale = apart(a.mass_kg.value, b.mass_kg.value);
        let hand = apart(a.swing_moment_kg_m2.value, b.swing_moment_kg_m2.value);
        Some(if on_scale { hand - LIKENESS * scale } else { scale - LIKENESS * hand })
    };
    let pairs = (0..bats.len()).flat_map(|a| (a + 1..bats.len()).map(move |b| [a, b]));
    pairs
        .filter_map(|it| Some((score(it)?, it)))
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, it)| it)
}
