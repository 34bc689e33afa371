//! The hit as JSON.

use backlift::impact::doubt::FeltSurely;
use backlift::impact::hand::Hand;
use backlift::questions::hit::bat::Whose;
use backlift::questions::hit::{Found, PRACTICE_BEND_RAD};
use serde_json::{Value, json};

fn hand(hand: &Hand, felt: &FeltSurely) -> Value {
    let couple_n_m = felt.couple_n_m.value;
    json!({
        "from_top_m": hand.from_top_m,
        "peak_n": felt.peak_n.value,
        "peak_sd_n": felt.peak_n.sd,
        "impulse_n_s": felt.impulse_n_s.value,
        "impulse_sd_n_s": felt.impulse_n_s.sd,
        "couple_n_m": couple_n_m,
        "couple_sd_n_m": felt.couple_n_m.sd,
        "couple_limit_n_m": hand.couple_limit_n_m(),
        "grip_needed_n": hand.grip_needed_n(couple_n_m),
        "grip_n": hand.grip_n,
        "holds": couple_n_m <= hand.couple_limit_n_m(),
    })
}

/// Every figure.
pub fn of(it: &Found) -> Value {
    let (struck, account) = (&it.doubted.struck, &it.doubted.struck.account);
    let face = it.face_met();
    let both = |n: usize| Some(hand(it.hit.hands.get(n)?, it.doubted.hands.get(n)?));
    let swing_moment_off_share = match it.bat.whose {
        Whose::OfItsSize { swing_moment_off } => Some(swing_moment_off),
        Whose::Described { .. } => None,
    };
    json!({
        "bat": it.bat.swung.label,
        "described": swing_moment_off_share.is_none(),
        "from_toe_m": it.from_toe_m,
        "across_m": it.hit.across_m,
        "bat_speed_m_s": it.bat_m_s.value,
        "bat_speed_sd_m_s": it.bat_m_s.sd,
        "bat_speed_was_given": it.bat_speed_was_given,
        "ball_speed_m_s": it.hit.ball_m_s,
        "exit_speed_m_s": it.doubted.exit_m_s.value,
        "exit_speed_sd_m_s": it.doubted.exit_m_s.sd,
        "rigid_exit_speed_m_s": it.rigid_exit_m_s,
        "exit_along_deg": struck.along_rad.to_degrees(),
        "face_behind_chord_m": face.behind_chord_m,
        "face_looks_to_toe_deg": face.looks_to_toe_rad.to_degrees(),
        "contact_s": struck.contact_s,
        "contact_peak_n": struck.contact_peak_n,
        "splice_bend_deg": it.doubted.bend_rad.value.to_degrees(),
        "splice_bend_sd_deg": it.doubted.bend_rad.sd.to_degrees(),
        "splice_bend_range_deg": it.doubted.bend_range_rad.map(f64::to_degrees),
        "splice_stiffness_n_m": it.hit.hinge.stiffness_n_m,
        "splice_stiffness_range_n_m": it.spread.hinge_n_m,
        "practice": {
            "bend_deg": PRACTICE_BEND_RAD.to_degrees(),
            "splice_stiffness_n_m": it.practice_hinge_n_m,
            "closing_speed_m_s": it.practice_closing_m_s,
        },
        "hands": { "top": both(0), "bottom": both(1) },
        "twist": {
            "rate_deg_s": struck.twist_rad_s.to_degrees(),
            "turned_deg": struck.twist_rad.to_degrees(),
        },
        "swing_moment_off_share": swing_moment_off_share,
        "account": {
            "momentum_open_share": account.momentum_share,
            "moment_of_momentum_open_share": account.moment_share,
            "energy_open_share": account.energy_share,
            "lost_in_ball_j": account.ball_j,
            "lost_in_splice_j": account.hinge_j,
            "lost_in_hands_j": account.hands_j,
        },
    })
}
