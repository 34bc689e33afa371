//! Where every part stands at an instant: the core's own kinematics for pelvis, trunk, arms and bat; legs and the
//! turn of the head are drawn to fit, they are not simulated.

use backlift::dynamics::tree::Kinematics;
use backlift::frames::{DMat3, DVec3, rotation};
use backlift::player::joints::JOINT_COUNT;
use backlift::swing::chain::Chain;
use backlift::swing::film::Picture;

use super::body::{Frame, Part, Side};
use super::legs::{Feet, leg};
use super::place::Place;

/// Player and bat at an instant.
#[derive(Clone, Debug)]
pub struct Pose {
    /// Parts of the body.
    pub body: Vec<(Part, Place)>,
    /// The bat's frame B.
    pub bat: Place,
    /// The head's frame.
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

    /// Only the bat.
    pub fn bat(&mut self, picture: &Picture) -> Place {
        self.move_to(picture);
        self.link(self.chain.link.bat, picture)
    }

    /// Everything; `feet` says where they stand.
    pub fn all(&mut self, picture: &Picture, feet: &Feet) -> Pose {
        self.move_to(picture);
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
            let foot = feet.at(side, picture);
            body.extend(leg(side, chain.mirror, &self.frame, &pelvis, &foot));
        }
        Pose { body, bat, head }
    }

    fn move_to(&mut self, picture: &Picture) {
        self.chain.tree.forward_kinematics(
            &picture.q,
            &[0.0; JOINT_COUNT],
            DVec3::ZERO,
            &mut self.k,
        );
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
}
