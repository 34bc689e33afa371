//! The headline figures whose doubt is divided.

/// One figure of the pull.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    /// Bat speed, nothing tired, m/s.
    FreshSpeed,
    /// Bat speed at the end of the innings, m/s.
    LateSpeed,
    /// Time left over at the end against the bowling faced, s.
    TimeInHand,
    /// Fastest ball that can still be met at the end, m/s.
    FastestBall,
    /// Mean share of its capacity that the busier wrist gives at the end, at the asked stroke time.
    WristShare,
    /// Grip needed over grip there is, the worse hand, at the end and the asked stroke time.
    GripShare,
    /// Bat speed at the end with the bat of the lighter pickup less that with the heavier, m/s.
    LighterBat,
}

impl Figure {
    /// All, in order.
    pub const ALL: [Self; 7] = [
        Self::FreshSpeed,
        Self::LateSpeed,
        Self::TimeInHand,
        Self::FastestBall,
        Self::WristShare,
        Self::GripShare,
        Self::LighterBat,
    ];

    /// Name with its unit, as other programs read it.
    pub fn key(self) -> &'static str {
        match self {
            Self::FreshSpeed => "pull.fresh.bat_speed_m_s",
            Self::LateSpeed => "pull.at_end.bat_speed_m_s",
            Self::TimeInHand => "pull.at_end.time_in_hand_s",
            Self::FastestBall => "pull.at_end.fastest_ball_m_s",
            Self::WristShare => "pull.at_end.wrist_share",
            Self::GripShare => "pull.at_end.grip_share",
            Self::LighterBat => "pull.at_end.lighter_less_heavier_m_s",
        }
    }

    /// In plain words.
    pub fn words(self) -> &'static str {
        match self {
            Self::FreshSpeed => "bat speed, fresh",
            Self::LateSpeed => "bat speed, late",
            Self::TimeInHand => "time in hand, late",
            Self::FastestBall => "fastest ball, late",
            Self::WristShare => "average wrist effort, late",
            Self::GripShare => "grip needed, late",
            Self::LighterBat => "lighter or heavier bat",
        }
    }
}
