//! The map of the face: ball speed off the bat wherever it is met, in one and the same swing.

use std::ops::ControlFlow;
use std::sync::atomic::{AtomicUsize, Ordering};

use rayon::prelude::*;

use super::ImpactFault;
use super::strike::{Hit, Until, strike};
use crate::bat::blade::Blade;

/// Half the width of the face at a share of the way from shoulder to toe, m; nought off the blade.
pub fn half_width_m(blade: &Blade, from_shoulder: f64) -> f64 {
    let pairs = blade.stations.iter().zip(blade.stations.iter().skip(1));
    let between = pairs
        .filter(|(a, b)| (a.from_shoulder..=b.from_shoulder).contains(&from_shoulder))
        .map(|(a, b)| {
            let t = (from_shoulder - a.from_shoulder) / (b.from_shoulder - a.from_shoulder);
            0.5 * a.towards(b, t).width_m
        });
    between.fold(0.0, f64::max)
}

/// Exit speeds over the face.
#[derive(Clone, Debug, PartialEq)]
pub struct FaceMap {
    /// Columns: from the top of the handle, m, rising.
    pub from_top_m: Vec<f64>,
    /// Rows: across, m, rising, even about the middle.
    pub across_m: Vec<f64>,
    /// Row by row, m/s; none beside the blade.
    pub exit_m_s: Vec<Option<f64>>,
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

/// Columns along the face, and rows from its middle to its edge.
const ALONG: usize = 28;
const ACROSS: usize = 5;

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
    let columns: Vec<f64> =
        (0..ALONG).map(|n| parts.shoulder_m + length_m * n as f64 / (ALONG - 1) as f64).collect();
    let rows: Vec<f64> =
        (0..ACROSS).map(|n| parts.half_width_m * n as f64 / (ACROSS - 1) as f64).collect();
    let done = AtomicUsize::new(0);
    let by_column: Vec<Vec<Option<f64>>> = columns
        .par_iter()
        .map(|from_top_m| {
            let so_far = done.fetch_add(1, Ordering::Relaxed);
            if told(so_far as f64 / ALONG as f64).is_break() {
                return Err(MapFault::Stopped);
            }
            let half_m = half_width_m(blade, (from_top_m - parts.shoulder_m) / length_m);
            rows.iter()
                .map(|across_m| {
                    // A hair inside, that the outermost row of the widest station counts.
                    if *across_m > half_m + 1e-9 {
                        return Ok(None);
                    }
                    let there = Hit {
                        contact_from_top_m: *from_top_m,
                        across_m: *across_m,
                        bat_m_s: turning_rad_s * (from_top_m - hit.turns_about_m),
                        ..hit.clone()
                    };
                    Ok(Some(strike(&there, Until::Away)?.exit_m_s))
                })
                .collect()
        })
        .collect::<Result<_, _>>()?;
    let row = |n: usize| by_column.iter().map(move |it| it.get(n).copied().flatten());
    let exit_m_s = (1..ACROSS).rev().chain(0..ACROSS).flat_map(row).collect();
    let across_m = rows.iter().skip(1).rev().map(|it| -it).chain(rows.iter().copied()).collect();
    Ok(FaceMap { from_top_m: columns, across_m, exit_m_s })
}
