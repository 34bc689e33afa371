//! The cost from simulated bats: the same stroke swung with a small mass at three stations, put on and
//! taken off.

use rayon::prelude::*;

use super::cost::{Cost, OUNCE_KG, StrokeOunce};
use crate::bat::{Bat, BatFault};
use crate::player::joints::GROUP_COUNT;
use crate::swing::batter::Batter;
use crate::swing::player_stroke::{PlayerStroke, SwingFault};

/// Stations at which it is tried, as shares of the bat's length: both ends and the middle.
const TRIED_AT: [f64; 3] = [0.0, 0.5, 1.0];

/// Why a cost could not be found.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum OunceFault {
    /// The bat cannot lose an ounce at one of the stations.
    #[error(
        "with an ounce put on or taken off {from_top_m:.3} m from the top of the handle: {fault}"
    )]
    Bat {
        /// Where, m from the top of the handle.
        from_top_m: f64,
        /// Why what is left is no bat.
        fault: BatFault,
    },
    /// No controlled swing.
    #[error(transparent)]
    Swing(#[from] SwingFault),
}

/// What an ounce costs along a bat, one answer for each stroke of the batter, in their order: the fastest
/// controlled swing of each with these capacities (1 a group when fresh), which the ounce does not change.
///
/// Seven searches a stroke.
pub fn ounce_cost(
    batter: &Batter,
    bat: &Bat,
    capacity: &[f64; GROUP_COUNT],
) -> Result<Vec<StrokeOunce>, OunceFault> {
    let length_m = bat.length_m();
    let of_stroke = |stroke: &PlayerStroke| -> Result<StrokeOunce, OunceFault> {
        let plain = stroke.hold(bat)?.fastest(capacity, None)?;
        let at = |share: f64| cost_at(stroke, bat, capacity, plain.stroke_time_s, share * length_m);
        let [top, middle, toe] = TRIED_AT;
        let (top, (middle, toe)) =
            rayon::join(|| at(top), || rayon::join(|| at(middle), || at(toe)));
        let (name, bat_speed_m_s) = (&stroke.stroke.name, plain.bat_speed_m_s);
        Ok(StrokeOunce::through(name, bat_speed_m_s, length_m, [top?, middle?, toe?]))
    };
    batter.strokes.par_iter().map(of_stroke).collect()
}

/// The cost at one station, swung there: half the difference between an ounce put on and one taken off, between which
/// what is of second order cancels.
/// `near_s` is the fastest time without it.
pub fn cost_at(
    stroke: &PlayerStroke,
    bat: &Bat,
    capacity: &[f64; GROUP_COUNT],
    near_s: f64,
    from_top_m: f64,
) -> Result<Cost, OunceFault> {
    let speed_m_s = |added_kg: f64| -> Result<f64, OunceFault> {
        let changed = bat
            .with_added_mass(added_kg, from_top_m)
            .map_err(|fault| OunceFault::Bat { from_top_m, fault })?;
        let found = stroke.hold(&changed)?.fastest(capacity, Some(near_s))?;
        Ok(found.bat_speed_m_s)
    };
    let (on, off) = (speed_m_s(OUNCE_KG)?, speed_m_s(-OUNCE_KG)?);
    Ok(Cost { from_top_m, speed_change_m_s_per_kg: (on - off) / (2.0 * OUNCE_KG) })
}

/// Bat speed at the contact point of each stroke's fastest controlled swing, m/s.
pub fn bat_speeds_m_s(
    batter: &Batter,
    bat: &Bat,
    capacity: &[f64; GROUP_COUNT],
) -> Result<Vec<f64>, SwingFault> {
    let speed =
        |stroke: &PlayerStroke| Ok(stroke.hold(bat)?.fastest(capacity, None)?.bat_speed_m_s);
    batter.strokes.par_iter().map(speed).collect()
}
