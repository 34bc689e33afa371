//! Ball speed off the bat: a free rigid bat and a point ball along the normal of the face.

use crate::bat::Bat;
use crate::uncertain::{Origin, Uncertain};

/// Ball of the open game, kg: middle of 155.9–163 g, Law 4 (read).
pub const BALL_KG: f64 = 0.1595;
/// Women's ball, kg: middle of 140–151 g, Law 4 until 2026-09-30 (read); the new band was not seen.
pub const WOMENS_BALL_KG: f64 = 0.1455;
/// Ball under 13, kg: middle of 133–144 g, Law 4 until 2026-09-30 (read); the new band was not seen.
pub const JUNIOR_BALL_KG: f64 = 0.1385;

/// Restitution of ball on bat at the contact point: a chosen round figure, no source for cricket. The
/// same for every bat, so that it moves the exit speeds together and their order hardly.
pub const RESTITUTION: Uncertain = Uncertain { value: 0.5, sd: 0.05, origin: Origin::Assumed };

/// Speed of the ball at the bat as a share of its speed out of the hand: assumption, no source.
pub const SPEED_AT_BAT_SHARE: f64 = 0.80;

/// Recoil ratio `r = m (1/M + b²/I)`: ball mass over the bat's effective mass where it is struck; b from
/// the balance point to the contact point, I about the transverse axis through the balance point.
///
/// Source: Nathan 2003, Am J Phys 71:134; Cross & Nathan 2006, Am J Phys 74:896 (from memory, high).
pub fn recoil_ratio(ball_kg: f64, bat_kg: f64, offset_m: f64, com_moment_kg_m2: f64) -> f64 {
    ball_kg * (1.0 / bat_kg + offset_m * offset_m / com_moment_kg_m2)
}

/// Apparent restitution `e_A = (e − r)/(1 + r)`: rebound over arrival speed on a bat at rest.
pub fn apparent_restitution(restitution: f64, recoil_ratio: f64) -> f64 {
    (restitution - recoil_ratio) / (1.0 + recoil_ratio)
}

/// Speed of the ball off the bat, m/s: `e_A v_ball + (1 + e_A) v_bat`, bat speed at the contact point.
pub fn exit_speed_m_s(apparent_restitution: f64, ball_m_s: f64, bat_m_s: f64) -> f64 {
    apparent_restitution * ball_m_s + (1.0 + apparent_restitution) * bat_m_s
}

/// Speed off this bat struck at a point, m/s. The hands are too soft to matter within a millisecond of
/// contact: the bat is free (common in the literature cited at [`recoil_ratio`]).
pub fn exit_speed_off_bat_m_s(
    bat: &Bat,
    contact_from_top_m: f64,
    bat_m_s: f64,
    ball_m_s: f64,
    ball_kg: f64,
    restitution: f64,
) -> f64 {
    let offset_m = contact_from_top_m - bat.balance_m();
    let r = recoil_ratio(ball_kg, bat.mass_kg(), offset_m, bat.I_Com_B().y_axis.y);
    exit_speed_m_s(apparent_restitution(restitution, r), ball_m_s, bat_m_s)
}
