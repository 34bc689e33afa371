//! The hit as JSON.

use backlift::impact::doubt::FeltSurely;
use backlift::impact::hand::Hand;
use serde::Serialize;

use backlift::questions::hit::bat::Whose;
use backlift::questions::hit::{Found, PRACTICE_BEND_RAD};

#[derive(Serialize)]
pub struct Figures {
    bat: String,
    described: bool,
    from_toe_m: f64,
    across_m: f64,
    bat_speed_m_s: f64,
    bat_speed_sd_m_s: f64,
    bat_speed_was_given: bool,
    ball_speed_m_s: f64,
    exit_speed_m_s: f64,
    exit_speed_sd_m_s: f64,
    rigid_exit_speed_m_s: f64,
    contact_s: f64,
    contact_peak_n: f64,
    splice_bend_deg: f64,
    splice_bend_sd_deg: f64,
    splice_bend_range_deg: [f64; 2],
    splice_stiffness_n_m: f64,
    splice_stiffness_range_n_m: [f64; 2],
    practice: Practice,
    hands: Hands,
    twist: Twist,
    swing_moment_off_share: Option<f64>,
    account: Account,
}

#[derive(Serialize)]
struct Practice {
    bend_deg: f64,
    splice_stiffness_n_m: Option<f64>,
    closing_speed_m_s: Option<f64>,
}

#[derive(Serialize)]
struct Hands {
    top: Option<HandFigures>,
    bottom: Option<HandFigures>,
}

#[derive(Serialize)]
struct HandFigures {
    from_top_m: f64,
    peak_n: f64,
    peak_sd_n: f64,
    impulse_n_s: f64,
    impulse_sd_n_s: f64,
    couple_n_m: f64,
    couple_sd_n_m: f64,
    couple_limit_n_m: f64,
    grip_needed_n: f64,
    grip_n: f64,
    holds: bool,
}

#[derive(Serialize)]
struct Twist {
    rate_deg_s: f64,
    turned_deg: f64,
}

#[derive(Serialize)]
struct Account {
    momentum_open_share: f64,
    moment_of_momentum_open_share: f64,
    energy_open_share: f64,
    lost_in_ball_j: f64,
    lost_in_splice_j: f64,
    lost_in_hands_j: f64,
}

fn hand(hand: &Hand, felt: &FeltSurely) -> HandFigures {
    let couple_n_m = felt.couple_n_m.value;
    HandFigures {
        from_top_m: hand.from_top_m,
        peak_n: felt.peak_n.value,
        peak_sd_n: felt.peak_n.sd,
        impulse_n_s: felt.impulse_n_s.value,
        impulse_sd_n_s: felt.impulse_n_s.sd,
        couple_n_m,
        couple_sd_n_m: felt.couple_n_m.sd,
        couple_limit_n_m: hand.couple_limit_n_m(),
        grip_needed_n: hand.grip_needed_n(couple_n_m),
        grip_n: hand.grip_n,
        holds: couple_n_m <= hand.couple_limit_n_m(),
    }
}

/// Every figure.
pub fn of(it: &Found) -> Figures {
    let (struck, account) = (&it.doubted.struck, &it.doubted.struck.account);
    let both = |n: usize| Some(hand(it.hit.hands.get(n)?, it.doubted.hands.get(n)?));
    let swing_moment_off_share = match it.bat.whose {
        Whose::OfItsSize { swing_moment_off } => Some(swing_moment_off),
        Whose::Described { .. } => None,
    };
    Figures {
        described: swing_moment_off_share.is_none(),
        bat: it.bat.label.clone(),
        from_toe_m: it.from_toe_m,
        across_m: it.hit.across_m,
        bat_speed_m_s: it.bat_m_s.value,
        bat_speed_sd_m_s: it.bat_m_s.sd,
        bat_speed_was_given: it.bat_speed_was_given,
        ball_speed_m_s: it.hit.ball_m_s,
        exit_speed_m_s: it.doubted.exit_m_s.value,
        exit_speed_sd_m_s: it.doubted.exit_m_s.sd,
        rigid_exit_speed_m_s: it.rigid_exit_m_s,
        contact_s: struck.contact_s,
        contact_peak_n: struck.contact_peak_n,
        splice_bend_deg: it.doubted.bend_rad.value.to_degrees(),
        splice_bend_sd_deg: it.doubted.bend_rad.sd.to_degrees(),
        splice_bend_range_deg: it.doubted.bend_range_rad.map(f64::to_degrees),
        splice_stiffness_n_m: it.hit.hinge.stiffness_n_m,
        splice_stiffness_range_n_m: it.spread.hinge_n_m,
        practice: Practice {
            bend_deg: PRACTICE_BEND_RAD.to_degrees(),
            splice_stiffness_n_m: it.practice_hinge_n_m,
            closing_speed_m_s: it.practice_closing_m_s,
        },
        hands: Hands { top: both(0), bottom: both(1) },
        twist: Twist {
            rate_deg_s: struck.twist_rad_s.to_degrees(),
            turned_deg: struck.twist_rad.to_degrees(),
        },
        swing_moment_off_share,
        account: Account {
            momentum_open_share: account.momentum_share,
            moment_of_momentum_open_share: account.moment_share,
            energy_open_share: account.energy_share,
            lost_in_ball_j: account.ball_j,
            lost_in_splice_j: account.hinge_j,
            lost_in_hands_j: account.hands_j,
        },
    }
}
