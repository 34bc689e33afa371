//! What is moved: every measurement and estimate behind the headline figures.

/// One input.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Input {
    /// Stature.
    Stature,
    /// Shoulder to grip.
    ArmLength,
    /// Wrist crease to fingertip.
    HandLength,
    /// Body mass.
    BodyMass,
    /// Masses of trunk and arms for a given body mass.
    SegmentMasses,
    /// Grip of both hands: all strengths go with it.
    Grip,
    /// Strength of the trunk for a given grip.
    Trunk,
    /// Strength of both shoulders for a given grip.
    Shoulders,
    /// Strength of both elbows for a given grip.
    Elbows,
    /// Strength of both wrists and forearms for a given grip.
    Wrists,
    /// What the wrist hold test says of the top wrist.
    WristHold,
    /// How fast torque rises and falls.
    TorqueRise,
    /// Scale weight of the bats.
    ScaleWeight,
    /// Balance points of the bats.
    Balance,
    /// Swing moments of the bats, weight and balance known.
    SwingMoment,
    /// Diameter of the handle over the grip.
    HandleDiameter,
    /// Friction of glove on grip.
    Friction,
    /// Lasting fatigue, over its whole band.
    LastingFatigue,
    /// Speed of the bowling.
    BowlingSpeed,
    /// Reaction time.
    ReactionTime,
    /// How much the ball slows on its way.
    BallFlight,
}

/// Name, as other programs read it, and in plain words.
const TOLD: [(Input, &str, &str); 21] = [
    (Input::Stature, "stature", "stature"),
    (Input::ArmLength, "arm_length", "arm length"),
    (Input::HandLength, "hand_length", "hand length"),
    (Input::BodyMass, "body_mass", "body mass"),
    (Input::SegmentMasses, "segment_masses", "trunk and arm masses"),
    (Input::Grip, "grip", "grip strength"),
    (Input::Trunk, "trunk_strength", "trunk strength"),
    (Input::Shoulders, "shoulder_strength", "shoulder strength"),
    (Input::Elbows, "elbow_strength", "elbow strength"),
    (Input::Wrists, "wrist_strength", "wrist strength"),
    (Input::WristHold, "wrist_hold", "wrist hold test"),
    (Input::TorqueRise, "torque_rise", "build-up of force"),
    (Input::ScaleWeight, "scale_weight", "scale weight"),
    (Input::Balance, "balance", "balance point"),
    (Input::SwingMoment, "swing_moment", "pendulum time"),
    (Input::HandleDiameter, "handle_diameter", "handle diameter"),
    (Input::Friction, "friction", "friction of the grip"),
    (Input::LastingFatigue, "lasting_fatigue", "lasting fatigue"),
    (Input::BowlingSpeed, "bowling_speed", "bowling speed"),
    (Input::ReactionTime, "reaction_time", "reaction time"),
    (Input::BallFlight, "ball_flight", "slowing of the ball"),
];

impl Input {
    /// All, in order.
    pub fn all() -> impl Iterator<Item = Self> {
        TOLD.into_iter().map(|it| it.0)
    }

    /// Name, as other programs read it.
    pub fn key(self) -> &'static str {
        TOLD[self as usize].1
    }

    /// In plain words.
    pub fn words(self) -> &'static str {
        TOLD[self as usize].2
    }

    /// Numbers to draw for it: one, and for what bats have each on their own, one a bat.
    pub(super) fn coordinates(self, bats: usize) -> usize {
        match self {
            Self::ScaleWeight | Self::Balance | Self::SwingMoment => bats,
            _ => 1,
        }
    }

    /// Whether a swing goes otherwise when it moves. What does not only changes how a swing is judged.
    pub(super) fn moves_the_swing(self) -> bool {
        !matches!(self, Self::BowlingSpeed | Self::ReactionTime | Self::BallFlight)
    }

    /// Whether lengths of the body move with it, and with them the path of the stroke.
    pub(super) fn moves_the_path(self) -> bool {
        matches!(self, Self::Stature | Self::ArmLength | Self::HandLength)
    }
}
