//! Player and bat as a tree of links with the bottom hand closing the loop.
//!
//! Pelvis (turn), trunk on it (turn, bend, lean), two arms (shoulder 3, elbow 1, forearm roll 1, wrist 2 each). The bat
//! sits in the top hand; the bottom hand holds it by a ball joint, and by a couple where it holds
//! ([`bottom_grip`](super::bottom_grip)). Every link's frame at rest has x
//! out of the chest, y to the player's left, z up; the pelvis is turned so that a right-hander's chest
//! faces −y of W. The base moves with the middle of the hips, as the stroke prescribes, and does not turn;
//! the tree is written relative to it: its acceleration enters as a gravity that varies in time, its velocity is added
//! where the bat meets the ball. Legs carry whatever is asked of them.

use crate::bat::Bat;
use crate::dynamics::closed_loop::BallJoint;
use crate::dynamics::tree::{Kinematics, Link, Tree, TreeFault};
use crate::frames::{DMat3, DVec3, Mirror, rotation};
use crate::measurement::person::Handed;
use crate::player::joints::JOINT_COUNT;
use crate::player::{Player, Segment, Segments};

/// How a hand holds the handle: common to all players, from the search that found which grips let a
/// stroke exist at all.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grip {
    /// Handle across the palm, rad.
    pub oblique_rad: f64,
    /// Hand turned about the handle, rad.
    pub roll_rad: f64,
    /// Centre of the top hand from the top of the handle, m.
    pub top_hand_m: f64,
    /// Centre of the bottom hand from the top of the handle, m.
    pub bottom_hand_m: f64,
    /// Greatest couple of the bottom hand about the handle's long axis and each of the two across it,
    /// N m; nought where that hand lets the handle turn freely.
    pub bottom_couple_n_m: [f64; 3],
    /// Traction of the hand that also bears the bat's pull along the handle, N (twice friction × grip: both its
    /// sides rub); the couple about the long axis shares it.
    pub traction_n: f64,
}

impl Grip {
    /// Hands on the handle for a stature: 60 mm and 165 mm from the top for a man of 1.80 m, closer
    /// for smaller hands (assumption, no source).
    pub fn for_stature(stature_m: f64, oblique_rad: f64, roll_rad: f64) -> Self {
        let k = stature_m / 1.80;
        let top_hand_m = 0.060 * k.max(0.9);
        Self {
            oblique_rad,
            roll_rad,
            top_hand_m,
            bottom_hand_m: top_hand_m + 0.105 * k.max(0.85),
            bottom_couple_n_m: [0.0; 3],
            traction_n: 0.0,
        }
    }

    /// The same with a bottom hand that does not let the handle turn until these couples are reached.
    pub fn holding(self, bottom_couple_n_m: [f64; 3], traction_n: f64) -> Self {
        Self { bottom_couple_n_m, traction_n, ..self }
    }
}

/// Links of the chain that others ask for by name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LinkIndex {
    /// Pelvis.
    pub pelvis: usize,
    /// Trunk above the pelvis.
    pub trunk: usize,
    /// Upper arm, forearm, hand of the top arm.
    pub top: [usize; 3],
    /// Upper arm, forearm, hand of the bottom arm.
    pub bottom: [usize; 3],
    /// Bat.
    pub bat: usize,
}

/// A player holding a bat.
#[derive(Clone, Debug)]
pub struct Chain {
    /// The tree of links.
    pub tree: Tree<JOINT_COUNT>,
    /// The bottom hand on the handle; link a is the bat.
    pub bottom_hand: BallJoint,
    /// Named links.
    pub link: LinkIndex,
    /// Grip used.
    pub grip: Grip,
    /// Right- or left-hander.
    pub mirror: Mirror,
    /// Shoulder to grip with the arm straight, m.
    pub arm_m: f64,
    /// Middle of the shoulders at rest above the hips, m.
    pub shoulder_above_hip_m: f64,
    /// Hips above the ground, standing, m.
    pub hip_height_m: f64,
    /// Bat's length, m.
    pub bat_length_m: f64,
}

impl Chain {
    /// Builds the chain of a player and a bat.
    pub fn new(player: &Player, bat: &Bat, grip: Grip) -> Result<Self, TreeFault> {
        let mirror = match player.handed {
            Handed::Right => Mirror::RIGHT_HANDED,
            Handed::Left => Mirror::LEFT_HANDED,
        };
        let s = &player.segments;
        let mut links = Vec::with_capacity(JOINT_COUNT + 1);
        let [pelvis, trunk] = push_trunk(&mut links, s, mirror);
        let top = push_arm(&mut links, trunk, s, mirror, 1.0);
        let bat_link = push_bat(&mut links, top[2], s, bat, grip, mirror);
        let bottom = push_arm(&mut links, trunk, s, mirror, -1.0);
        let bottom_hand = BallJoint {
            link_a: bat_link,
            point_a: DVec3::new(grip.bottom_hand_m, 0.0, 0.0),
            link_b: bottom[2],
            point_b: DVec3::new(0.0, 0.0, -s.wrist_to_grip_m),
        };
        Ok(Self {
            tree: Tree::new(links)?,
            bottom_hand,
            link: LinkIndex { pelvis, trunk, top, bottom, bat: bat_link },
            grip,
            mirror,
            arm_m: s.arm_m(),
            shoulder_above_hip_m: s.shoulder_height_m - s.hip_height_m,
            hip_height_m: s.hip_height_m,
            bat_length_m: bat.length_m(),
        })
    }

    /// Point on the bat's axis a distance from the top of the handle.
    pub fn on_bat(&self, k: &Kinematics<JOINT_COUNT>, from_top_m: f64) -> DVec3 {
        k.point(self.link.bat, DVec3::new(from_top_m, 0.0, 0.0))
    }
}

fn fixed(axis: DVec3, parent: Option<usize>, offset: DVec3, R_rest: DMat3) -> Link {
    Link {
        parent,
        offset,
        R_rest,
        axis: Some(axis),
        mass_kg: 0.0,
        com: DVec3::ZERO,
        I_Com: DMat3::ZERO,
    }
}

/// Mass, centre and inertia of a segment that hangs from its proximal joint along −z (`down`) or
/// stands on it along +z.
pub(crate) fn with_mass(link: Link, s: &Segment, direction: f64) -> Link {
    // Sagittal axis x (front–back), transverse axis y (left–right), longitudinal axis z.
    let moments_kg_m2 = DVec3::from_array(s.gyration_m.map(|r| s.mass_kg * r * r));
    Link {
        mass_kg: s.mass_kg,
        com: DVec3::new(0.0, 0.0, direction * s.com_m),
        I_Com: DMat3::from_diagonal(moments_kg_m2),
        ..link
    }
}

/// The pelvis, with what of the legs turns with it, and the trunk on it.
fn push_trunk(links: &mut Vec<Link>, s: &Segments, mirror: Mirror) -> [usize; 2] {
    // A right-hander's chest faces −y of W.
    let chest = rotation(mirror.axis(DVec3::Z), -core::f64::consts::FRAC_PI_2);
    let hips = fixed(mirror.axis(DVec3::Z), None, DVec3::ZERO, chest);
    let mut pelvis = with_mass(hips, &s.pelvis, 1.0);
    // The upper ends of the thighs, left and right: the pelvis turns about the vertical only.
    let legs = s.legs_turning_kg_m2;
    pelvis.I_Com += DMat3::from_diagonal(DVec3::new(legs, 0.0, legs));
    links.push(pelvis);
    let hinge = |axis: DVec3, parent: usize| {
        fixed(mirror.axis(axis), Some(parent), DVec3::ZERO, DMat3::IDENTITY)
    };
    links.push(hinge(DVec3::Z, 0));
    links.push(hinge(DVec3::Y, 1));
    links.push(with_mass(hinge(DVec3::X, 2), &s.above_pelvis(), 1.0));
    [0, 3]
}

/// One arm; `side` is +1 for the right-hander's left arm (the top hand's), −1 for the other.
fn push_arm(
    links: &mut Vec<Link>,
    trunk: usize,
    s: &Segments,
    mirror: Mirror,
    side: f64,
) -> [usize; 3] {
    let axes = [
        DVec3::new(0.0, -1.0, 0.0),
        DVec3::new(side, 0.0, 0.0),
        DVec3::new(0.0, 0.0, -side),
        DVec3::new(0.0, -1.0, 0.0),
        DVec3::new(0.0, 0.0, -side),
        DVec3::new(-side, 0.0, 0.0),
        DVec3::new(0.0, -1.0, 0.0),
    ]
    .map(|a| mirror.axis(a));
    let first = links.len();
    let shoulder = mirror.vector(DVec3::new(
        0.0,
        side * s.shoulder_half_breadth_m,
        s.shoulder_height_m - s.hip_height_m,
    ));
    let down = |length: f64| DVec3::new(0.0, 0.0, -length);
    let hinge = |i: usize, parent: usize, offset: DVec3| {
        fixed(axes[i], Some(parent), offset, DMat3::IDENTITY)
    };
    links.push(hinge(0, trunk, shoulder));
    links.push(hinge(1, first, DVec3::ZERO));
    links.push(with_mass(hinge(2, first + 1, DVec3::ZERO), &s.upper_arm, -1.0));
    links.push(hinge(3, first + 2, down(s.upper_arm.length_m)));
    links.push(with_mass(hinge(4, first + 3, DVec3::ZERO), &s.forearm, -1.0));
    links.push(hinge(5, first + 4, down(s.forearm.length_m)));
    links.push(with_mass(hinge(6, first + 5, DVec3::ZERO), &s.hand, -1.0));
    [first + 2, first + 4, first + 6]
}

fn push_bat(
    links: &mut Vec<Link>,
    hand: usize,
    s: &Segments,
    bat: &Bat,
    grip: Grip,
    mirror: Mirror,
) -> usize {
    let (so, co) = libm::sincos(grip.oblique_rad);
    let (sr, cr) = libm::sincos(grip.roll_rad);
    let toe = DVec3::new(co, 0.0, -so);
    let face = DVec3::Y * cr + DVec3::Y.cross(toe) * sr;
    // The bat itself is not mirrored: toe and face are, and y_B completes the right-handed set.
    let (toe, face) = (mirror.vector(toe), mirror.vector(face));
    let R_HB = DMat3::from_cols(toe, face.cross(toe), face);
    let grip_point = DVec3::new(0.0, 0.0, -s.wrist_to_grip_m);
    links.push(Link {
        parent: Some(hand),
        offset: grip_point - toe * grip.top_hand_m,
        R_rest: R_HB,
        axis: None,
        mass_kg: bat.mass_kg(),
        com: bat.com_B(),
        I_Com: bat.I_Com_B(),
    });
    links.len() - 1
}
