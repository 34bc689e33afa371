//! A player whose strength was read in the nets.
//!
//! What a net tells is how fast this player swings, not why: a quick stroke by good timing and one by
//! strong muscles read alike. So the strength meant here is the one with which the model swings as the
//! player does.

use super::Player;
use super::joints::{GROUP_COUNT, Group};
use crate::measurement::nets::{Calibration, PART_COUNT};

/// Parts of the body whose strength readings in the nets can tell apart. The two arms of one person go
/// together, and elbows go with shoulders: no stroke is limited by them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Trunk.
    Trunk,
    /// Shoulders and elbows.
    Arms,
    /// Forearm rotation and wrists.
    Wrists,
}

impl Part {
    /// All parts, in order of their index.
    pub const ALL: [Self; PART_COUNT] = [Self::Trunk, Self::Arms, Self::Wrists];

    /// The part a group belongs to.
    pub fn of(group: Group) -> Self {
        match group {
            Group::Trunk => Self::Trunk,
            Group::TopWrist | Group::BottomWrist => Self::Wrists,
            _ => Self::Arms,
        }
    }

    /// In plain words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Trunk => "trunk",
            Self::Arms => "shoulders and elbows",
            Self::Wrists => "forearms and wrists",
        }
    }
}

/// Capacity factors by group from logarithms by part.
pub fn factors(ln_by_part: &[f64; PART_COUNT]) -> [f64; GROUP_COUNT] {
    Group::ALL.map(|group| libm::exp(ln_by_part[Part::of(group) as usize]))
}

/// Covariance of the logarithms of strength by part, as the tables leave it: the grip's spread, which
/// all parts share, and each part's own.
pub fn table_covariance(player: &Player) -> [[f64; PART_COUNT]; PART_COUNT] {
    let grip_sd = player.grip_relative_sd();
    let mut out = [[grip_sd * grip_sd; PART_COUNT]; PART_COUNT];
    for (i, group) in [Group::Trunk, Group::TopShoulder, Group::BottomWrist].into_iter().enumerate()
    {
        let own_sd = player.own_relative_sd(group);
        out[i][i] += own_sd * own_sd;
    }
    out
}

impl Player {
    /// Spread of the strength as a whole: that of the grip.
    pub fn grip_relative_sd(&self) -> f64 {
        0.5 * (self.grip_top_n.relative_sd() + self.grip_bottom_n.relative_sd())
    }

    /// Spread of one group's strength beside what the grip shares among all.
    pub fn own_relative_sd(&self, group: Group) -> f64 {
        let (sd, grip_sd) = (self.strength.relative_sd[group as usize], self.grip_relative_sd());
        libm::sqrt((sd * sd - grip_sd * grip_sd).max(0.0))
    }

    /// The player of the tables with what the nets said over it.
    pub fn calibrated(&self, nets: &Calibration) -> Self {
        let mut strength = self.strength.times(&factors(&nets.ln_factor));
        for group in Group::ALL {
            let row = nets.ln_spread[Part::of(group) as usize];
            strength.relative_sd[group as usize] =
                libm::sqrt(row.iter().map(|it| it * it).sum::<f64>());
        }
        let mut estimated = self.estimated.clone();
        for it in &mut estimated {
            let group = match it.what {
                what if what.starts_with("strength of shoulders") => Group::TopShoulder,
                what if what.starts_with("strength of the trunk") => Group::Trunk,
                _ => continue,
            };
            it.from = "readings in the nets, over what grip and stature say".to_owned();
            it.relative_sd = strength.relative_sd[group as usize];
        }
        Self {
            strength,
            lasting: nets.lasting,
            calibration: Some(*nets),
            estimated,
            ..self.clone()
        }
    }

    /// Strengths of players like this one, each weaker by one independent doubt that the nets left: the
    /// columns of the covariance's triangle. None if the player was not read in the nets.
    pub fn weaker_by_nets(&self) -> Option<[[f64; GROUP_COUNT]; PART_COUNT]> {
        let nets = self.calibration?;
        Some(core::array::from_fn(|column| {
            factors(&core::array::from_fn(|row| -nets.ln_spread[row][column]))
        }))
    }
}
