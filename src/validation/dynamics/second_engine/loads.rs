//! The load of the hands on both dynamics over a whole stroke.

use super::super::own_strokes::pairs;
use super::super::{figure, miss, worse};
use super::SOURCE;
use crate::files::stroke::built_in;
use crate::frames::DVec3;
use crate::player::joints::FRESH;
use crate::swing::engine::pair::engine_swing;
use crate::swing::player_stroke::{Held, PlayerStroke};
use crate::swing::state::Instantaneous;
use crate::validation::{CheckFault, Checked, Curve, Reading};

/// What is compared, in the order of the sums below.
const LOADS: [&str; 3] =
    ["force of both hands", "moment of both hands", "force of the bottom hand"];

/// What both hands together do to the bat, by Newton–Euler from our own accelerations: force, moment about
/// the centre of mass; then the lever arms of top and bottom hand from there.
fn newton_euler(held: &Held, at: &Instantaneous) -> Option<(DVec3, DVec3, [DVec3; 2])> {
    let chain = &held.chain;
    let mut k = chain.tree.kinematics();
    chain.tree.forward_kinematics(&at.state.q, &at.state.v, at.a_base_W, &mut k);
    let link = chain.link.bat;
    let bat = chain.tree.links().get(link)?;
    let com = k.point(link, bat.com);
    let mut a = k.acceleration_bias(link, com);
    let mut alpha = k.alpha_bias[link];
    for j in chain.tree.joints_towards_base(link) {
        a += (k.axis_moment[j] + k.axis[j].cross(com)) * at.acceleration[j];
        alpha += k.axis[j] * at.acceleration[j];
    }
    let I = k.R[link] * bat.I_Com * k.R[link].transpose();
    let omega = k.omega[link];
    let arms = [chain.grip.top_hand_m, chain.grip.bottom_hand_m].map(|x| chain.on_bat(&k, x) - com);
    Some((bat.mass_kg * a, I * alpha + omega.cross(I * omega), arms))
}

/// Over the adult's three strokes with a light bat.
pub fn check() -> Result<Checked, CheckFault> {
    let mut out = Checked::default();
    let [adult, _] = pairs()?;
    for stroke in built_in()? {
        let held =
            PlayerStroke::new(&adult.player, &stroke, &adult.bats[0])?.hold(&adult.bats[0])?;
        one(&held, &stroke.name, &mut out)?;
    }
    Ok(out)
}

fn one(held: &Held, stroke: &str, out: &mut Checked) -> Result<(), CheckFault> {
    let swinger = held.swinger(&FRESH);
    let stroke_time_s = held.fastest(&FRESH, None)?.stroke_time_s;
    let mut own = Vec::new();
    swinger.swing(stroke_time_s, Some(&mut |at| own.push(at)));
    let engine = engine_swing(&swinger, stroke_time_s)?;
    let step_s = own.get(1).map_or(f64::NAN, |at| at.t_s);
    let every = (step_s / engine.step_s).round().max(1.0) as usize;
    let (mut worst, mut square, mut peak) = ([0.0; 3], [0.0; 3], [0.0_f64; 3]);
    let mut theirs = Vec::new();
    for (at, h) in own.iter().zip(engine.loads.iter().step_by(every)) {
        let Some((force, couple, [top, bottom])) = newton_euler(held, at) else { continue };
        let turning = h.top.couple_W
            + h.bottom.couple_W
            + top.cross(h.top.force_W)
            + bottom.cross(h.bottom.force_W);
        let off = [
            (h.top.force_W + h.bottom.force_W - force).length(),
            (turning - couple).length(),
            (h.bottom.force_W - at.force_bottom_W).length(),
        ];
        // The hands' moments nearly cancel: one hand's is the measure.
        let size = [force, bottom.cross(at.force_bottom_W), at.force_bottom_W];
        for i in 0..3 {
            worst[i] = worse(worst[i], off[i]);
            square[i] += off[i] * off[i];
            peak[i] = peak[i].max(size[i].length());
        }
        theirs.push(Reading { x: at.t_s, y: h.bottom.force_W.length(), sd: None });
    }
    let count = theirs.len() as f64;
    for (i, load) in LOADS.iter().enumerate() {
        let named = |how: &str| format!("{stroke}, adult, {load}, over its peak: {how}");
        let rms = (square[i] / count).sqrt();
        out.rows.push(miss(named("root mean square"), SOURCE, rms / peak[i], 1e-2).noted(CORNERS));
        out.rows.push(miss(named("largest"), SOURCE, worst[i] / peak[i], 4e-2).noted(CORNERS));
    }
    let bottom_n = engine.loads.iter().map(|it| it.bottom.force_W.length()).fold(0.0, f64::max);
    let what = format!("{stroke}, adult: greatest force of the bottom hand");
    out.rows.push(figure(what, SOURCE, "N", bottom_n, peak[2], 1e-2));
    out.curves.push(Curve {
        title: format!(
            "Force of the bottom hand in the adult's fastest {stroke}, on both dynamics"
        ),
        x_label: "time, s".into(),
        y_label: "force, N".into(),
        ours: own.iter().map(|at| (at.t_s, at.force_bottom_W.length())).collect(),
        theirs: theirs.into_iter().step_by(8).collect(),
        source: SOURCE.into(),
    });
    Ok(())
}

/// Why some of them are far apart.
const CORNERS: &str = "single samples where a joint or the bottom hand's couple comes to its limit are the worst. In the \
                       adult's drive the hands twist the handle against each other to the limit of the grip for much of \
                       the stroke: such corners an extrapolation from two steps takes badly. On a path planned anew within \
                       the strength of hips and spine the rows agree, but a boy's drive is not smooth on it";
