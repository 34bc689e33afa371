//! The map of the face: ball speed off the bat wherever it is met, in one and the same swing.

use std::ops::ControlFlow;
use std::sync::atomic::{AtomicUsize, Ordering};

use rayon::prelude::*;

use super::ImpactFault;
use super::hit::Hit;
use super::strike::{Until, strike};
use crate::bat::blade::Blade;

/// Half the width of the face at a share of the way from shoulder to toe, m; nought off the blade.
pub fn half_width_m(blade: &Blade, from_shoulder: f64) -> f64 {
    if !(0.0..=1.0).contains(&from_shoulder) {
        return 0.0;
    }
    blade.at(from_shoulder).map_or(0.0, |it| 0.5 * it.width_m)
}

/// Exit speeds over the face, on a grid that is as wide as the face is.
#[derive(Clone, Debug, PartialEq)]
pub struct FaceMap {
    /// Columns: from the top of the handle, m, rising.
    pub from_top_m: Vec<f64>,
    /// Half the width of the face there, m.
    pub half_width_m: Vec<f64>,
    /// Rows: off the middle as a share of that, from −1 to 1, rising.
    pub across_share: Vec<f64>,
    /// Row by row, m/s.
    pub exit_m_s: Vec<f64>,
}

/// Why there is no map.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum MapFault {
    /// One of its hits failed.
    #[error(transparent)]
    Hit(#[from] ImpactFault),
    /// Asked to stop.
    #[error("stopped")]
    Stopped,
}

/// Even columns along the face, to which those at the blade's stations come, and rows from its middle to its
/// edge.
const ALONG: usize = 24;
const ACROSS: usize = 10;

/// Columns, from the shoulder to the toe as shares: none nearer to another than a thousandth.
fn columns(blade: &Blade) -> Vec<f64> {
    let even = (0..ALONG).map(|n| n as f64 / (ALONG - 1) as f64);
    let mut all: Vec<f64> = even.chain(blade.stations.iter().map(|it| it.from_shoulder)).collect();
    all.sort_by(f64::total_cmp);
    all.dedup_by(|b, a| *b - *a < 1e-3);
    all
}

/// The map: the bat turns as in `hit` wherever it is met, and the ball comes as in `hit`. The face is even
/// about its middle, so one half is computed. `told` hears the share done.
pub fn face_map(
    hit: &Hit,
    blade: &Blade,
    told: &(dyn Fn(f64) -> ControlFlow<()> + Sync),
) -> Result<FaceMap, MapFault> {
    let parts = &hit.parts;
    let length_m = parts.toe_m - parts.shoulder_m;
    let turning_rad_s = hit.turning_rad_s();
    let columns: Vec<[f64; 2]> = columns(blade)
        .into_iter()
        .map(|it| [parts.shoulder_m + length_m * it, half_width_m(blade, it)])
        .collect();
    // Closer about the middle, where the lines of equal speed turn.
    let half: Vec<f64> = (0..ACROSS)
        .map(|n| n as f64 / (ACROSS - 1) as f64)
        .map(|even| even * even.sqrt())
        .collect();
    let done = AtomicUsize::new(0);
    let by_column: Vec<Vec<f64>> = columns
        .par_iter()
        .map(|[from_top_m, half_width_m]| {
            let so_far = done.fetch_add(1, Ordering::Relaxed);
            if told(so_far as f64 / columns.len() as f64).is_break() {
                return Err(MapFault::Stopped);
            }
            let at = |share: &f64| {
                let there = Hit {
                    contact_from_top_m: *from_top_m,
                    across_m: share * half_width_m,
                    bat_m_s: turning_rad_s * (from_top_m - hit.turns_about_m),
                    ..hit.clone()
                };
                Ok(strike(&there, Until::Away)?.exit_m_s)
            };
            half.iter().map(at).collect()
        })
        .collect::<Result<_, _>>()?;
    let row = |n: usize| by_column.iter().filter_map(move |it| it.get(n).copied());
    Ok(FaceMap {
        exit_m_s: (1..ACROSS).rev().chain(0..ACROSS).flat_map(row).collect(),
        across_share: half.iter().skip(1).rev().map(|it| -it).chain(half.iter().copied()).collect(),
        half_width_m: columns.iter().map(|[_, half_m]| *half_m).collect(),
        from_top_m: columns.iter().map(|[from_top_m, _]| *from_top_m).collect(),
    })
}
