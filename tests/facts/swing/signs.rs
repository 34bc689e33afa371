//! Which way each angle moves the body: what the names in `player::joints` promise.

use backlift::frames::DVec3;
use backlift::measurement::person::Handed;
use backlift::player::joints::{BOTTOM_ARM, JOINT_COUNT, JOINTS, TOP_ARM};
use backlift::swing::chain::{Chain, Grip};

use super::players::{adult, adult_bat};

/// Displacement of a point (of the trunk, or of the hand on the thumb's side) when a joint turns by 0.2 rad from rest.
fn moved(handed: Handed, joint: usize) -> DVec3 {
    let chain = Chain::new(&adult(handed), &adult_bat(), Grip::for_stature(1.8, 1.0, 1.0)).unwrap();
    let (link, point) = match joint {
        0..TOP_ARM => (chain.link.trunk, DVec3::new(0.3, 0.0, 0.5)),
        TOP_ARM..BOTTOM_ARM => (chain.link.top[2], DVec3::new(0.05, 0.0, -0.1)),
        _ => (chain.link.bottom[2], DVec3::new(0.05, 0.0, -0.1)),
    };
    let at = |angle: f64| {
        let mut q = [0.0; JOINT_COUNT];
        q[joint] = angle;
        let mut k = chain.tree.kinematics();
        chain.tree.forward_kinematics(&q, &[0.0; JOINT_COUNT], DVec3::ZERO, &mut k);
        k.point(link, point)
    };
    at(0.2) - at(0.0)
}

#[test]
fn each_joint_moves_the_way_its_positive_direction_is_called() {
    for (handed, chest) in [(Handed::Right, -DVec3::Y), (Handed::Left, DVec3::Y)] {
        for (j, joint) in JOINTS.iter().enumerate() {
            // The top hand's shoulder is the one nearer the bowler: out is +x for it, −x for the other.
            let out = if j < BOTTOM_ARM { DVec3::X } else { -DVec3::X };
            let way = match joint.positive {
                "turn to the bowler" | "hips to the bowler" => DVec3::X,
                "bend forward" | "flexion" if !joint.name.contains("wrist") => chest,
                "lean away" => -DVec3::X,
                "abduction" => out,
                "radial deviation" => chest,
                "flexion" | "internal rotation" | "pronation" => -out,
                other => panic!("{other}: say which way"),
            };
            let off = moved(handed, j);
            assert!(
                off.dot(way) > 0.9 * off.with_z(0.0).length(),
                "{handed:?} {}: {off}",
                joint.name
            );
        }
    }
}
