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

/// Name with its unit, as other programs read it, and in plain words.
const TOLD: [(Figure, &str, &str); 7] = [
    (Figure::FreshSpeed, "pull.fresh.bat_speed_m_s", "bat speed, fresh"),
    (Figure::LateSpeed, "pull.at_end.bat_speed_m_s", "bat speed, late"),
    (Figure::TimeInHand, "pull.at_end.time_in_hand_s", "time in hand, late"),
    (Figure::FastestBall, "pull.at_end.fastest_ball_m_s", "fastest ball, late"),
    (Figure::WristShare, "pull.at_end.wrist_share", "average wrist effort, late"),
    (Figure::GripShare, "pull.at_end.grip_share", "grip needed, late"),
    (Figure::LighterBat, "pull.at_end.lighter_less_heavier_m_s", "lighter or heavier bat"),
];

impl Figure {
    /// How many there are.
    pub const COUNT: usize = TOLD.len();

    /// All, in order.
    pub fn all() -> [Self; Self::COUNT] {
        TOLD.map(|it| it.0)
    }

    /// Name with its unit, as other programs read it.
    pub fn key(self) -> &'static str {
        TOLD[self as usize].1
    }

    /// In plain words.
    pub fn words(self) -> &'static str {
        TOLD[self as usize].2
    }
}
