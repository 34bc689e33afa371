//! Where every part stands at an instant: the core's own kinematics for pelvis, trunk, arms and bat; legs and the
//! turn of the head are drawn to fit, they are not simulated. The simulation moves the pelvis along the stroke's path
//! and asks nothing of the legs but what turns it; where a stance is wider than the legs are long they are drawn longer.

use backlift::dynamics::tree::Kinematics;
use backlift::frames::{DMat3, DVec3, rotation};
use backlift::player::joints::{HIP_TURN, JOINT_COUNT};
use backlift::swing::chain::Chain;
use backlift::swing::film::Picture;

use super::body::{Frame, Part, Side};

/// Half the stance along the pitch over stature (assumption, for the drawing only).
const HALF_STANCE: f64 = 0.115;
/// How far a foot goes for each metre of the pelvis.
const STRIDE: f64 = 1.7;
/// Toes of the front foot turned towards the bowler, rad.
const OPEN_RAD: f64 = 0.45;

/// A part's frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Origin, m, W.
    pub position_W: DVec3,
    /// Axes, as columns in W.
    pub R: DMat3,
    /// Drawn so many times as long.
    pub stretch: f64,
}

impl Place {
    /// In its own length.
    pub fn new(position_W: DVec3, R: DMat3) -> Self {
        Self { position_W, R, stretch: 1.0 }
    }

    /// A point of the part, in W.
    pub fn point(&self, local: DVec3) -> DVec3 {
        self.position_W + self.R * local
    }
}

pub struct Pose {
    pub body: Vec<(Part, Place)>,
    pub bat: Place,
    pub head: Place,
}

/// Poses of one player with one bat.
pub struct Posed<'a> {
    chain: &'a Chain,
    frame: Frame,
    k: Kinematics<JOINT_COUNT>,
}

impl<'a> Posed<'a> {
    /// For a chain and the lengths its player is drawn with.
    pub fn new(chain: &'a Chain, frame: Frame) -> Self {
        Self { chain, frame, k: chain.tree.kinematics() }
    }

    pub fn bat(&mut self, picture: &Picture) -> Place {
        self.move_to(picture);
        self.link(self.chain.link.bat, picture)
    }

    /// Everything, in a stroke whose pelvis is at `pelvis_W` when bat meets ball, m, W: that way the stride goes.
    pub fn all(&mut self, picture: &Picture, pelvis_W: DVec3) -> Pose {
        self.move_to(picture);
        let stride_W = DVec3::new(pelvis_W.x, pelvis_W.y, 0.0);
        let (chain, link) = (self.chain, self.chain.link);
        let trunk = self.link(link.trunk, picture);
        let bat = self.link(link.bat, picture);
        let pelvis = self.link(link.pelvis, picture);
        let head = self.head(&trunk);
        let arms = [(Side::Front, link.top), (Side::Back, link.bottom)];
        let mut body = vec![(Part::Pelvis, pelvis), (Part::Trunk, trunk), (Part::Head, head)];
        let grips_m = [chain.grip.top_hand_m, chain.grip.bottom_hand_m];
        for ((side, [upper, fore, hand]), grip_m) in arms.into_iter().zip(grips_m) {
            let fingers = Place::new(bat.point(DVec3::new(grip_m, 0.0, 0.0)), bat.R);
            body.extend([
                (Part::UpperArm(side), self.link(upper, picture)),
                (Part::Forearm(side), self.link(fore, picture)),
                (Part::Hand(side), self.link(hand, picture)),
                (Part::Fingers(side), fingers),
            ]);
        }
        for side in [Side::Front, Side::Back] {
            let foot = self.foot(side, picture, stride_W);
            body.extend(self.leg(side, &pelvis, &foot));
        }
        Pose { body, bat, head }
    }

    fn move_to(&mut self, picture: &Picture) {
        let still = [0.0; JOINT_COUNT];
        self.chain.tree.forward_kinematics(&picture.q, &still, DVec3::ZERO, &mut self.k);
    }

    fn hips_W(&self, picture: &Picture) -> DVec3 {
        picture.pelvis_W + DVec3::new(0.0, 0.0, self.chain.hip_height_m)
    }

    fn link(&self, n: usize, picture: &Picture) -> Place {
        let at = |it: Option<&DVec3>| it.copied().unwrap_or_default();
        let R = self.k.R.get(n).copied().unwrap_or(DMat3::IDENTITY);
        Place::new(at(self.k.p.get(n)) + self.hips_W(picture), R)
    }

    /// On the neck, level, the face to the bowler as far as a neck turns.
    fn head(&self, trunk: &Place) -> Place {
        const FURTHEST_RAD: f64 = 1.3;
        let chest = trunk.R.x_axis;
        let up = (trunk.R.z_axis + DVec3::Z * 1.5).normalize();
        let level = |v: DVec3| (v - up * up.dot(v)).normalize_or(chest);
        let (from, to) = (level(chest), level(DVec3::X));
        let angle = libm::atan2(up.dot(from.cross(to)), from.dot(to));
        let face = rotation(up, angle.clamp(-FURTHEST_RAD, FURTHEST_RAD)) * from;
        let R = DMat3::from_cols(face, up.cross(face), up);
        let shoulders = trunk.point(DVec3::new(0.0, 0.0, self.frame.back_m));
        Place::new(shoulders + up * self.frame.neck_m, R)
    }

    /// A foot's ankle: the foot on the side the pelvis goes to steps with it, the other stays.
    fn foot(&self, side: Side, picture: &Picture, stride_W: DVec3) -> Place {
        let h = self.frame.stature_m;
        let (sign, steps) = match side {
            Side::Front => (1.0, stride_W.x > 0.0),
            Side::Back => (-1.0, stride_W.x <= 0.0),
        };
        let stand = DVec3::new(sign * HALF_STANCE * h, 0.0, self.frame.ankle_m);
        let reach = stride_W.length();
        let gone =
            if reach > 1e-6 { picture.pelvis_W.dot(stride_W) / (reach * reach) } else { 1.0 };
        // The foot is down well before the pelvis arrives.
        let done = smooth((1.4 * gone).clamp(0.0, 1.0));
        let step = if steps { stride_W * (STRIDE * done) } else { DVec3::ZERO };
        let lift = if steps { 0.35 * reach * 4.0 * done * (1.0 - done) } else { 0.0 };
        let turn_rad = picture.q[HIP_TURN];
        let open = match side {
            Side::Front => OPEN_RAD + 0.4 * turn_rad,
            Side::Back => 0.6 * turn_rad,
        };
        let up = self.chain.mirror.axis(DVec3::Z);
        let side_on = rotation(up, open - std::f64::consts::FRAC_PI_2);
        Place::new(stand + step + DVec3::Z * lift, side_on)
    }

    /// Thigh, shank and foot between the hips and an ankle, the knee bent forward.
    fn leg(&self, side: Side, pelvis: &Place, foot: &Place) -> [(Part, Place); 3] {
        // A right-hander's left leg is in front.
        let left = self.chain.mirror.vector(DVec3::Y).y;
        let across = match side {
            Side::Front => left,
            Side::Back => -left,
        };
        let hip = pelvis.point(DVec3::new(0.0, across * self.frame.hip_half_m, 0.0));
        let ankle = foot.position_W;
        let reach = (ankle - hip).length();
        let (thigh_m, shank_m) = (self.frame.thigh_m, self.frame.shank_m);
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
}

fn smooth(x: f64) -> f64 {
    x * x * (3.0 - 2.0 * x)
}
