//! What is compared: the figures of a bat at the bench, and of the bat in this player's hands.

use super::noticeable::{MOMENT_OF_INERTIA, WEIGHT};
use crate::innings::played::StrokeNow;

/// When in the innings a stroke is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum When {
    /// Nothing tired.
    Fresh,
    /// At [`FIFTY`](crate::innings::played::FIFTY) runs, the slow fatigue at its central value.
    AtFifty,
}

/// A figure of one stroke.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StrokeFigure {
    /// Speed of the contact point in the fastest controlled swing, m/s.
    BatSpeed,
    /// Time of that swing, s.
    StrokeTime,
    /// Mean share of its present capacity that the busier wrist gives at the asked stroke time.
    WristShare,
    /// Grip needed over the fresh grip there is, the worse hand, at the asked stroke time.
    GripShare,
    /// Left over against the bowling faced, s.
    TimeInHand,
    /// Fastest ball, out of the hand, that the stroke can still meet, m/s.
    FastestBall,
    /// Speed of the ball off the bat, m/s.
    ExitSpeed,
}

impl StrokeFigure {
    /// All, in order.
    pub const ALL: [Self; 7] = [
        Self::BatSpeed,
        Self::StrokeTime,
        Self::WristShare,
        Self::GripShare,
        Self::TimeInHand,
        Self::FastestBall,
        Self::ExitSpeed,
    ];

    /// Name with its unit, as other programs read it.
    pub fn key(self) -> &'static str {
        match self {
            Self::BatSpeed => "bat_speed_m_s",
            Self::StrokeTime => "stroke_time_s",
            Self::WristShare => "wrist_share",
            Self::GripShare => "grip_share",
            Self::TimeInHand => "time_in_hand_s",
            Self::FastestBall => "fastest_ball_m_s",
            Self::ExitSpeed => "exit_speed_m_s",
        }
    }

    /// Its value in a stroke as swung; none for the exit speed, which takes a ball too.
    pub fn of(self, now: &StrokeNow) -> Option<f64> {
        match self {
            Self::BatSpeed => Some(now.bat_speed_m_s()),
            Self::StrokeTime => Some(now.fastest.stroke_time_s),
            Self::WristShare => Some(now.wrist_share),
            Self::GripShare => Some(now.grip_share),
            Self::TimeInHand => Some(now.time_in_hand_s),
            Self::FastestBall => Some(now.fastest_ball_m_s),
            Self::ExitSpeed => None,
        }
    }
}

/// One figure of a bat; strokes by their index in the batter's list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    /// Dead weight, kg.
    DeadWeight,
    /// Balance point from the top of the handle, m.
    Balance,
    /// Swing moment, kg m².
    SwingMoment,
    /// Hold moment, N m.
    HoldMoment,
    /// Pickup weight, kg.
    PickupWeight,
    /// A stroke, fresh or at fifty.
    Stroke(usize, When, StrokeFigure),
    /// Share of a stroke's fresh bat speed that is gone at fifty.
    Drop(usize),
}

impl Figure {
    /// Every figure of a player with so many strokes, in the order in which they are given.
    pub fn all(strokes: usize) -> Vec<Self> {
        let bench = [
            Self::DeadWeight,
            Self::Balance,
            Self::SwingMoment,
            Self::HoldMoment,
            Self::PickupWeight,
        ];
        let of_stroke = |stroke| {
            [When::Fresh, When::AtFifty]
                .into_iter()
                .flat_map(move |when| {
                    StrokeFigure::ALL.map(|figure| Self::Stroke(stroke, when, figure))
                })
                .chain([Self::Drop(stroke)])
        };
        bench.into_iter().chain((0..strokes).flat_map(of_stroke)).collect()
    }

    /// Name with its unit, as other programs read it: `mass_kg`, `pull.at_fifty.bat_speed_m_s`.
    pub fn key(self, stroke_names: &[String]) -> String {
        let name = |stroke: usize| stroke_names.get(stroke).map_or("stroke", String::as_str);
        match self {
            Self::DeadWeight => "mass_kg".into(),
            Self::Balance => "balance_m".into(),
            Self::SwingMoment => "swing_moment_kg_m2".into(),
            Self::HoldMoment => "hold_moment_n_m".into(),
            Self::PickupWeight => "pickup_weight_kg".into(),
            Self::Stroke(stroke, when, figure) => {
                let when = if when == When::Fresh { "fresh" } else { "at_fifty" };
                format!("{}.{when}.{}", name(stroke), figure.key())
            }
            Self::Drop(stroke) => format!("{}.bat_speed_drop_share", name(stroke)),
        }
    }

    /// Published thresholds of what a hand notices; none for what nobody has measured. The hold moment
    /// is judged as a weight, the pickup weight as the moment of inertia it stands for (assumption).
    pub fn thresholds(self) -> &'static [f64] {
        match self {
            Self::DeadWeight | Self::HoldMoment => &WEIGHT,
            Self::SwingMoment | Self::PickupWeight => &MOMENT_OF_INERTIA,
            Self::Balance | Self::Stroke(..) | Self::Drop(_) => &[],
        }
    }
}
