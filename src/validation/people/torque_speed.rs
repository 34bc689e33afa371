//! How torque falls with joint speed, and how fast it rises.

use crate::player::capacity::REFERENCE_MAN;
use crate::player::force_velocity::HillCurve;
use crate::player::joints::TOP_ARM;
use crate::swing::activation::ACTIVATION_TIME_S;
use crate::validation::{Accept, CheckFault, Checked, Row};

const ELITE: &str = "one elite gymnast (Jackson 2010, Kentel et al. 2011; read second-hand)";
const HILL: &str = "Hill's curve with κ = 0.25: √(κ² + κ) − κ (computed)";
const FALK: &str = "Falk et al. 2009, Appl Physiol Nutr Metab 34:609, 15 boys and 16 men (read)";

/// His share of torque left at half the greatest speed: six directions of the shoulder, two of the forearm.
const LEFT_AT_HALF: [f64; 8] = [0.250, 0.250, 0.214, 0.224, 0.285, 0.229, 0.251, 0.208];
/// Index of wrist flexion, whose greatest speed was set from his.
const WRIST_FLEXION: usize = TOP_ARM + 5;

pub(super) fn fall() -> Result<Checked, CheckFault> {
    let half = HillCurve::JOINT.at(0.5).value;
    let furthest = LEFT_AT_HALF.iter().map(|it| (half - it).abs()).fold(0.0, f64::max);
    let wrist = HillCurve::JOINT.at(18.2 / REFERENCE_MAN[WRIST_FLEXION].max_rate_rad_s).value;
    let power = |w: f64| w * HillCurve::FIBRE.at(w).value;
    let best = (1..900)
        .map(|it| 1e-3 * f64::from(it))
        .fold(0.0, |a, b| if power(b) > power(a) { b } else { a });
    let row = |what: &str, source, unit, theirs: f64, ours, most| {
        Row::compared(what, source, unit, theirs, ours, Accept::Within(most))
    };
    let left =
        "torque left at half the greatest speed, shoulder and forearm: largest error of eight";
    let speed = "speed of greatest power of a fibre, over its greatest speed";
    let greatest = "that power, over greatest force times greatest speed";
    Ok(vec![
        row(left, ELITE, "share", 0.0, furthest, 0.045)
            .noted(format!("his 0.208 to 0.285, ours {half:.3}")),
        row("torque left in wrist flexion at 18.2 rad/s", ELITE, "share", 0.115, wrist, 0.02),
        row(speed, HILL, "", 0.3090, best, 1e-3),
        row(greatest, HILL, "", 0.0955, power(0.3090), 5.1e-5),
    ]
    .into())
}

const RISE: &str = "ours is the model's time constant, 30 ms, for everyone; theirs is an isometric effort from rest, and \
     muscles in a backlift are not at rest. It matters much: on the stored paths, which were planned for 30 ms, \
     the men's rise (105 ms) makes a man's fastest drive 11.1 m/s instead of 14.3 and his pull 14.0 instead of \
     17.3, every stroke still controlled. Nobody measured which of the two a swing has. That a boy's torque \
     rises slower than a man's is not in the model";

/// The steepest rise of torque from rest, as a share of the greatest, each second.
pub(super) fn rise() -> Result<Checked, CheckFault> {
    let ours = 1.0 / ACTIVATION_TIME_S;
    let of = |who: &str, mean, sd| {
        let what = format!("{who}: steepest rise of elbow torque from rest");
        let accept = Accept::Deviations(1.0);
        Row::compared(what, FALK, "1/s", (mean, Some(sd)), ours, accept).noted(RISE)
    };
    Ok(vec![of("men", 9.5, 1.6), of("boys of 9.7", 7.2, 1.7)].into())
}
