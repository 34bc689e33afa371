//! A part-made bat as it lies on the bench now: its shape when the plane came out, and every pass since.
//!
//! A reading alone does not say where the wood is. The shape is carved to the last reading before the first pass, and
//! each pass then takes off its place what the scale lost: what was cut stays cut.

use crate::bat::shape::BatShape;
use crate::bat::sizes::Size;
use crate::card::Card;
use crate::measurement::bench::SCALE_SD_KG;

use super::combined::Between;
use super::plane::cuts::planed_off;
use super::plane::{DrawnOn, Lies, Planed, on_the_bench};
use super::stages::{Entry, finish};

/// A bat as it lies there.
#[derive(Clone, Debug, PartialEq)]
pub struct Now {
    /// Its shape, with everything on it that the card wants.
    pub shape: BatShape,
    /// What that was made from.
    pub drawn_on: DrawnOn,
    /// What the plane did to it.
    pub planed: Planed,
    /// The entry to which its shape was carved; all from there on are readings of this bat.
    pub first: usize,
    /// What was done before each entry after that.
    pub between: Vec<Between>,
}

/// The bat with these readings, by a plane that is off by such a share (one standard deviation); none where it has no
/// handle yet.
pub fn now(
    entries: &[Entry],
    card: &Card,
    size: &Size,
    described: Option<&BatShape>,
    planing_sd: f64,
) -> Option<Now> {
    let planed = entries.iter().position(|it| it.planed.is_some()).unwrap_or(entries.len());
    let first = planed.saturating_sub(1);
    let usual_m = size.reference.mass_moments().com_B().x;
    let lies = |n: usize, it: &Entry| Lies {
        reading: [it.mass_kg, it.balance_m.unwrap_or(usual_m)],
        handle_m: it.handle_m,
        finish: finish(entries.get(..=n).unwrap_or_default()),
    };
    let start = entries.get(first).filter(|it| it.stage.has_handle())?;
    // A handle that was measured stays as it was until it is measured again or shaved.
    let handle_m = entries.get(..=first)?.iter().rev().find_map(|it| it.handle_m);
    let start = Lies { handle_m, ..lies(first, start) };
    let (mut shape, drawn_on) = on_the_bench(&start, card, size, described);
    let mut planed = Planed::not_yet(&shape);
    let mut between = Vec::new();
    for (n, pair) in entries.windows(2).enumerate().skip(first) {
        let [before, after] = pair else { continue };
        let same_on = lies(n, before).finish == lies(n + 1, after).finish;
        let mut done = match after.again && same_on && after.planed.is_none() {
            true => Between::Nothing,
            false => Between::Other,
        };
        if let Some(place) = after.planed {
            let off_kg = off_kg(before.mass_kg - after.mass_kg, after.asked_kg, planing_sd);
            let (less, taken) = planed_off(&shape, place, off_kg);
            if same_on {
                let (per_kg, asked_kg) = (taken.per_kg, after.asked_kg);
                done = Between::Planed { per_kg, asked_kg };
            }
            planed.passes.push(taken);
            shape = less;
        }
        between.push(done);
        if after.handle_m.is_some() {
            shape = lies(n + 1, after).with_handle(shape);
        }
    }
    Some(Now { shape, drawn_on, planed, first, between })
}

/// What came off in a pass, kg: what the scale lost, and what the plan asked where that is known, each by its doubt.
fn off_kg(lost_kg: f64, asked_kg: Option<f64>, planing_sd: f64) -> f64 {
    let Some(asked_kg) = asked_kg else { return lost_kg };
    let weight = |sd: f64| 1.0 / (sd * sd).max(f64::MIN_POSITIVE);
    let lost = weight(core::f64::consts::SQRT_2 * SCALE_SD_KG);
    let asked = weight(planing_sd * asked_kg);
    (lost * lost_kg + asked * asked_kg) / (lost + asked)
}
