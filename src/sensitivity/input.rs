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

impl Input {
    /// All, in order.
    pub const ALL: [Self; 21] = [
        Self::Stature,
        Self::ArmLength,
        Self::HandLength,
        Self::BodyMass,
        Self::SegmentMasses,
        Self::Grip,
        Self::Trunk,
        Self::Shoulders,
        Self::Elbows,
        Self::Wrists,
        Self::WristHold,
        Self::TorqueRise,
        Self::ScaleWeight,
        Self::Balance,
        Self::SwingMoment,
        Self::HandleDiameter,
        Self::Friction,
        Self::LastingFatigue,
        Self::BowlingSpeed,
        Self::ReactionTime,
        Self::BallFlight,
    ];

    /// Name, as other programs read it.
    pub fn key(self) -> &'static str {
        match self {
            Self::Stature => "stature",
            Self::ArmLength => "arm_length",
            Self::HandLength => "hand_length",
            Self::BodyMass => "body_mass",
            Self::SegmentMasses => "segment_masses",
            Self::Grip => "grip",
            Self::Trunk => "trunk_strength",
            Self::Shoulders => "shoulder_strength",
            Self::Elbows => "elbow_strength",
            Self::Wrists => "wrist_strength",
            Self::WristHold => "wrist_hold",
            Self::TorqueRise => "torque_rise",
            Self::ScaleWeight => "scale_weight",
            Self::Balance => "balance",
            Self::SwingMoment => "swing_moment",
            Self::HandleDiameter => "handle_diameter",
            Self::Friction => "friction",
            Self::LastingFatigue => "lasting_fatigue",
            Self::BowlingSpeed => "bowling_speed",
            Self::ReactionTime => "reaction_time",
            Self::BallFlight => "ball_flight",
        }
    }

    /// In plain words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Stature => "stature",
            Self::ArmLength => "arm length",
            Self::HandLength => "hand length",
            Self::BodyMass => "body mass",
            Self::SegmentMasses => "trunk and arm masses",
            Self::Grip => "grip strength",
            Self::Trunk => "trunk strength",
            Self::Shoulders => "shoulder strength",
            Self::Elbows => "elbow strength",
            Self::Wrists => "wrist strength",
            Self::WristHold => "wrist hold test",
            Self::TorqueRise => "build-up of force",
            Self::ScaleWeight => "scale weight",
            Self::Balance => "balance point",
            Self::SwingMoment => "pendulum time",
            Self::HandleDiameter => "handle diameter",
            Self::Friction => "friction of the grip",
            Self::LastingFatigue => "lasting fatigue",
            Self::BowlingSpeed => "bowling speed",
            Self::ReactionTime => "reaction time",
            Self::BallFlight => "slowing of the ball",
        }
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
