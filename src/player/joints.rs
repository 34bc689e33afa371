//! The eighteen joint angles of trunk and arms, their signs and the groups that tire together.

/// Number of joint angles.
pub const JOINT_COUNT: usize = 18;
/// Number of groups of joints that tire together.
pub const GROUP_COUNT: usize = 7;
/// Capacity of every group, nothing tired.
pub const FRESH: [f64; GROUP_COUNT] = [1.0; GROUP_COUNT];
/// Index of the hips' turn of the pelvis on the ground.
pub const HIP_TURN: usize = 0;
/// Index of the spine's turn of the shoulders on the pelvis.
pub const SPINE_TURN: usize = 1;
/// Index of the first joint of the top arm; the trunk comes before it.
pub const TOP_ARM: usize = 4;
/// Index of the first joint of the bottom arm.
pub const BOTTOM_ARM: usize = 11;

/// Joints that tire together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// Hips and spine: turning, bending and leaning of the trunk.
    Trunk,
    /// Shoulder of the top hand's arm.
    TopShoulder,
    /// Elbow of the top hand's arm.
    TopElbow,
    /// Forearm rotation and wrist of the top hand.
    TopWrist,
    /// Shoulder of the bottom hand's arm.
    BottomShoulder,
    /// Elbow of the bottom hand's arm.
    BottomElbow,
    /// Forearm rotation and wrist of the bottom hand.
    BottomWrist,
}

impl Group {
    /// All groups, in order of their index.
    pub const ALL: [Self; GROUP_COUNT] = [
        Self::Trunk,
        Self::TopShoulder,
        Self::TopElbow,
        Self::TopWrist,
        Self::BottomShoulder,
        Self::BottomElbow,
        Self::BottomWrist,
    ];
    /// In plain words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Trunk => "trunk",
            Self::TopShoulder => "top-hand shoulder",
            Self::TopElbow => "top-hand elbow",
            Self::TopWrist => "top-hand wrist and forearm",
            Self::BottomShoulder => "bottom-hand shoulder",
            Self::BottomElbow => "bottom-hand elbow",
            Self::BottomWrist => "bottom-hand wrist and forearm",
        }
    }
}

/// One joint angle: its name, what its positive and negative directions are called, and its group.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Joint {
    /// Name of the angle, as in stroke files.
    pub name: &'static str,
    /// Positive direction.
    pub positive: &'static str,
    /// Negative direction.
    pub negative: &'static str,
    /// Group it tires with.
    pub group: Group,
}

const fn joint(
    name: &'static str,
    positive: &'static str,
    negative: &'static str,
    group: Group,
) -> Joint {
    Joint { name, positive, negative, group }
}

/// All joint angles in order: trunk, top arm, bottom arm. Range and neutral posture stand in
/// `player::posture`, strengths in [`super::Strength`].
pub const JOINTS: [Joint; JOINT_COUNT] = [
    joint("hip_turn", "hips to the bowler", "hips away", Group::Trunk),
    joint("trunk_yaw", "turn to the bowler", "turn away", Group::Trunk),
    joint("trunk_flexion", "bend forward", "straighten", Group::Trunk),
    joint("trunk_lean", "lean away", "lean to the bowler's side", Group::Trunk),
    joint("top_shoulder_flexion", "flexion", "extension", Group::TopShoulder),
    joint("top_shoulder_abduction", "abduction", "adduction", Group::TopShoulder),
    joint("top_shoulder_rotation", "internal rotation", "external rotation", Group::TopShoulder),
    joint("top_elbow_flexion", "flexion", "extension", Group::TopElbow),
    joint("top_forearm_pronation", "pronation", "supination", Group::TopWrist),
    joint("top_wrist_flexion", "flexion", "extension", Group::TopWrist),
    joint("top_wrist_radial", "radial deviation", "ulnar deviation", Group::TopWrist),
    joint("bottom_shoulder_flexion", "flexion", "extension", Group::BottomShoulder),
    joint("bottom_shoulder_abduction", "abduction", "adduction", Group::BottomShoulder),
    joint(
        "bottom_shoulder_rotation",
        "internal rotation",
        "external rotation",
        Group::BottomShoulder,
    ),
    joint("bottom_elbow_flexion", "flexion", "extension", Group::BottomElbow),
    joint("bottom_forearm_pronation", "pronation", "supination", Group::BottomWrist),
    joint("bottom_wrist_flexion", "flexion", "extension", Group::BottomWrist),
    joint("bottom_wrist_radial", "radial deviation", "ulnar deviation", Group::BottomWrist),
];
