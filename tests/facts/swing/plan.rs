//! From keys to a joint path.

use backlift::dynamics::closed_loop::gap;
use backlift::files::stroke::built_in;
use backlift::frames::DVec3;
use backlift::measurement::person::Handed;
use backlift::player::Player;
use backlift::player::joints::JOINT_COUNT;
use backlift::stroke::Stroke;
use backlift::stroke::joint_path::{CONTROL_COUNT, JointPath};
use backlift::swing::chain::{Chain, Grip};
use backlift::swing::plan::pose_error::{attitude_error, grip_error, range_excess_rad};
use backlift::swing::plan::reference_adult::{reference_bat, reference_player};
use backlift::swing::plan::task::Task;
use backlift::swing::plan::{Effort, PlanFault, Planned, plan};
use std::ops::ControlFlow;

/// Coarser than the usual effort, and enough to reach the keys.
const BRIEF: Effort =
    Effort { pose_iterations: 60, slowest_s: 0.60, ratio: 0.85, torque_iterations: 8 };

fn brief(stroke: &Stroke, player: &Player) -> Result<Planned, PlanFault> {
    plan(&BRIEF, stroke, player, &reference_bat().unwrap(), &|_| ControlFlow::Continue(()))
}

fn built_in_stroke(name: &str) -> Stroke {
    built_in().unwrap().into_iter().find(|s| s.name == name).unwrap()
}

/// Contact within 10 mm and 2° of its key, hands within 2 mm of the handle, joints within 3° of
/// their ranges: measured here, not by the planner's own report.
fn meets_its_keys(stroke: &Stroke, path: &JointPath) {
    let (player, bat) = (reference_player().unwrap(), reference_bat().unwrap());
    let grip = Grip::for_stature(player.stature_m, stroke.oblique_rad, stroke.roll_rad);
    let chain = Chain::new(&player, &bat, grip).unwrap();
    let task = Task::new(&chain, &player.strength, stroke);
    let mut k = chain.tree.kinematics();
    let mut contacts = 0;
    for wish in &task.wishes {
        let q = path.weighted(&wish.weights.value);
        chain.tree.forward_kinematics(&q, &[0.0; JOINT_COUNT], DVec3::ZERO, &mut k);
        assert!(gap(&k, &chain.bottom_hand).length() < 0.002, "{} at {}", stroke.name, wish.s);
        for (j, q) in q.iter().enumerate() {
            let excess = range_excess_rad(j, *q).to_degrees();
            assert!(excess.abs() < 3.0, "{} joint {j} at {}: {excess}", stroke.name, wish.s);
        }
        if (wish.s - 1.0).abs() < 1e-9 {
            contacts += 1;
            let grip_m = grip_error(&task, wish, &k).length();
            let attitude_deg = attitude_error(&task, wish, &k).length().to_degrees();
            assert!(grip_m < 0.010, "{}: {grip_m} m", stroke.name);
            assert!(attitude_deg < 2.0, "{}: {attitude_deg}°", stroke.name);
        }
    }
    assert_eq!(contacts, 1);
}

#[test]
fn the_paths_that_come_with_the_program_meet_their_keys() {
    for stroke in built_in().unwrap() {
        meets_its_keys(&stroke, &stroke.joint_path);
    }
}

#[test]
fn a_path_planned_from_keys_alone_meets_them_with_both_hands_on_the_handle() {
    let player = reference_player().unwrap();
    // The drive asks for more effort: below.
    for name in ["pull", "hook"] {
        let mut stroke = built_in_stroke(name);
        stroke.plan_time_s = 0.44;
        stroke.joint_path.control_rad = [[0.0; JOINT_COUNT]; CONTROL_COUNT];
        let planned = brief(&stroke, &player).unwrap();
        meets_its_keys(&stroke, &planned.path);
    }
}

#[test]
#[ignore = "slow: a whole plan"]
fn a_drive_planned_from_keys_alone_with_the_usual_effort_meets_them() {
    let mut stroke = built_in_stroke("drive");
    stroke.joint_path.control_rad = [[0.0; JOINT_COUNT]; CONTROL_COUNT];
    let (player, bat) = (reference_player().unwrap(), reference_bat().unwrap());
    let planned =
        plan(&Effort::default(), &stroke, &player, &bat, &|_| ControlFlow::Continue(())).unwrap();
    meets_its_keys(&stroke, &planned.path);
}

#[test]
fn a_left_hander_plans_the_mirror_image() {
    let right = reference_player().unwrap();
    let left = Player { handed: Handed::Left, ..right.clone() };
    let stroke = built_in_stroke("pull");
    let [a, b] = [right, left].map(|p| brief(&stroke, &p).unwrap().path);
    for (a, b) in a.control_rad.iter().flatten().zip(b.control_rad.iter().flatten()) {
        assert!((a - b).abs() < 1e-5, "{a} {b}"); // rounding, grown by the search
    }
}

#[test]
fn hands_wanted_out_of_reach_are_refused() {
    let mut stroke = built_in_stroke("pull");
    stroke.keys[3].grip = DVec3::new(1.6, -0.45, -0.40);
    let fault = brief(&stroke, &reference_player().unwrap()).unwrap_err();
    let refused =
        matches!(fault, PlanFault::MissesContact { .. } | PlanFault::HandOffHandle { .. });
    assert!(refused, "{fault}");
}

#[test]
fn a_plan_stops_when_it_is_told_to() {
    let (player, bat) = (reference_player().unwrap(), reference_bat().unwrap());
    let stroke = built_in_stroke("drive");
    let stop = plan(&BRIEF, &stroke, &player, &bat, &|at| {
        if at.done > 0 { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
    });
    assert_eq!(stop, Err(PlanFault::Stopped));
}
