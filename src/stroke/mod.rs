//! A stroke as data over normalised time: what the hands, the bat and the pelvis do, and the joint
//! path that was planned from it.
//!
//! Normalised time `s` runs from 0 at the top of the backlift to 1 at the planned contact and on to
//! 1.10; lengths are in arm lengths (shoulder to grip) or leg lengths, so that a stroke scales from a
//! child to an adult.

pub mod joint_path;
pub mod key_spline;
pub mod range;
pub mod world_turn;

use crate::frames::DVec3;
use joint_path::JointPath;
use key_spline::KeySpline;

/// The stroke that results are led by where it is played: it answers the short ball, and of all strokes it tires most.
pub const PULL: &str = "pull";

/// Place of the stroke that results are led by, which is the one that matters most late in an innings: the pull, or
/// else the first that answers the short ball, or the first. The trade's view (common practice, no source).
pub fn leading(strokes: &[Stroke]) -> usize {
    let first = |of: &dyn Fn(&Stroke) -> bool| strokes.iter().position(of);
    first(&|it| it.name == PULL).or_else(|| first(&|it| it.answers_short_ball)).unwrap_or(0)
}

/// One pose the stroke passes through, at path parameter `p = s²` (the downswing starts from rest).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Key {
    /// Path parameter: 0 at the top of the backlift, 1 at contact.
    pub p: f64,
    /// Middle of the two hands from the middle of the shoulders at rest, arm lengths, axes of W, moving with the
    /// pelvis.
    pub grip: DVec3,
    /// Direction of the bat, handle to toe, in W.
    pub toe: DVec3,
    /// Direction out of the hitting face, in W.
    pub face: DVec3,
    /// Trunk: turn of the shoulders in the world, bend, lean, rad.
    pub trunk_rad: [f64; 3],
    /// Pelvis displaced from the stance, leg lengths (hip height), in W.
    pub pelvis: DVec3,
    /// Pelvis turned to the bowler, rad.
    pub pelvis_turn_rad: f64,
}

/// How far contact may miss the plan and still count as controlled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tolerance {
    /// Contact point off the planned place, m.
    pub position_m: f64,
    /// Face turned from the planned direction, rad.
    pub face_rad: f64,
    /// Bat line turned from the planned direction, rad.
    pub line_rad: f64,
}

/// A stroke.
#[derive(Clone, Debug, PartialEq)]
pub struct Stroke {
    /// Name: drive, pull, hook, or one that somebody added.
    pub name: String,
    /// Where its keys come from.
    pub source: String,
    /// Handle across the palm, rad.
    pub oblique_rad: f64,
    /// Hands turned about the handle, rad.
    pub roll_rad: f64,
    /// Whether the bottom hand holds the handle as it grasped it; on a path that turns the handle in that
    /// hand it does not.
    pub bottom_hand_holds: bool,
    /// Whether it answers the short ball: late in an innings it must still be in time.
    pub answers_short_ball: bool,
    /// Contact point from the toe, m, for an adult bat of 0.85 m; shorter bats in proportion.
    pub contact_from_toe_m: f64,
    /// Stroke time the joint path was planned for, s: where a search for the fastest starts.
    pub plan_time_s: f64,
    /// Tolerances at contact.
    pub tolerance: Tolerance,
    /// Keys in order of `p`.
    pub keys: Vec<Key>,
    /// Joint path planned from the keys for the reference adult.
    pub joint_path: JointPath,
}

impl Stroke {
    /// The keys as smooth curves.
    pub fn curves(&self) -> KeySpline {
        KeySpline::new(&self.keys)
    }
}
