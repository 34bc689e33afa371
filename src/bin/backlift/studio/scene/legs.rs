//! Legs drawn from the hips to feet that stand. The simulation moves the pelvis along the stroke's path
//! and asks nothing of the legs but what turns it; where a stance is wider than the legs are long they are drawn longer.

use backlift::frames::{DMat3, DVec3, Mirror, rotation};
use backlift::player::joints::HIP_TURN;
use backlift::swing::film::Picture;

use super::body::{Frame, Part, Side};
use super::place::Place;

/// Half the stance along the pitch over stature (assumption, for the drawing only).
const HALF_STANCE: f64 = 0.115;
/// How far a foot goes for each metre of the pelvis.
const STRIDE: f64 = 1.7;
/// Toes of the front foot turned towards the bowler, rad.
const OPEN_RAD: f64 = 0.45;

/// Where the feet stand over a stroke.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Feet {
    mirror: Mirror,
    frame: Frame,
    /// Pelvis at contact, m, W: that way the stride goes.
    stride_W: DVec3,
}

impl Feet {
    /// Feet of a stroke whose pelvis is at `pelvis_W` when bat meets ball, m, W.
    pub fn new(mirror: Mirror, frame: Frame, pelvis_W: DVec3) -> Self {
        Self { mirror, frame, stride_W: DVec3::new(pelvis_W.x, pelvis_W.y, 0.0) }
    }

    /// A foot's ankle: the foot on the side the pelvis goes to steps with it, the other stays.
    pub fn at(&self, side: Side, picture: &Picture) -> Place {
        let h = self.frame.stature_m;
        let (sign, steps) = match side {
            Side::Front => (1.0, self.stride_W.x > 0.0),
            Side::Back => (-1.0, self.stride_W.x <= 0.0),
        };
        let stand = DVec3::new(sign * HALF_STANCE * h, 0.0, self.frame.ankle_m);
        let reach = self.stride_W.length();
        let gone =
            if reach > 1e-6 { picture.pelvis_W.dot(self.stride_W) / (reach * reach) } else { 1.0 };
        // The foot is down well before the pelvis arrives.
        let done = smooth((1.4 * gone).clamp(0.0, 1.0));
        let step = if steps { self.stride_W * (STRIDE * done) } else { DVec3::ZERO };
        let lift = if steps { 0.35 * reach * 4.0 * done * (1.0 - done) } else { 0.0 };
        let turn_rad = picture.q[HIP_TURN];
        let open = match side {
            Side::Front => OPEN_RAD + 0.4 * turn_rad,
            Side::Back => 0.6 * turn_rad,
        };
        let side_on = rotation(self.mirror.axis(DVec3::Z), open - std::f64::consts::FRAC_PI_2);
        Place { position_W: stand + step + DVec3::Z * lift, R: side_on, stretch: 1.0 }
    }
}

fn smooth(x: f64) -> f64 {
    x * x * (3.0 - 2.0 * x)
}

/// Thigh, shank and foot between the hips and an ankle, the knee bent forward.
pub fn leg(
    side: Side,
    mirror: Mirror,
    frame: &Frame,
    pelvis: &Place,
    foot: &Place,
) -> [(Part, Place); 3] {
    // A right-hander's left leg is in front.
    let left = mirror.vector(DVec3::Y).y;
    let across = match side {
        Side::Front => left,
        Side::Back => -left,
    };
    let hip = pelvis.point(DVec3::new(0.0, across * frame.hip_half_m, 0.0));
    let ankle = foot.position_W;
    let reach = (ankle - hip).length();
    let (thigh_m, shank_m) = (frame.thigh_m, frame.shank_m);
    let stretch = (reach / (0.995 * (thigh_m + shank_m))).max(1.0);
    let (a, b) = (thigh_m * stretch, shank_m * stretch);
    let down = (ankle - hip) / reach;
    let bend = foot.R.x_axis + pelvis.R.x_axis;
    let forward = (bend - down * down.dot(bend)).normalize_or(pelvis.R.x_axis);
    // The law of cosines gives the knee.
    let along = (a * a + reach * reach - b * b) / (2.0 * reach);
    let out = libm::sqrt((a * a - along * along).max(0.0));
    let knee = hip + down * along + forward * out;
    let bone = |from: DVec3, to: DVec3| {
        let z = (from - to).normalize_or(DVec3::Z);
        let x = (forward - z * z.dot(forward)).normalize_or(forward);
        Place { position_W: from, R: DMat3::from_cols(x, z.cross(x), z), stretch }
    };
    [
        (Part::Thigh(side), bone(hip, knee)),
        (Part::Shank(side), bone(knee, ankle)),
        (Part::Foot(side), *foot),
    ]
}
