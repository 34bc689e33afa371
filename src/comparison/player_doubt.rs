//! What is in doubt about the player, as players slightly other than the one given.

use super::carried::Common;
use crate::player::Player;
use crate::player::joints::{GROUP_COUNT, Group};
use crate::player::segments::ADULT_FROM_Y;
use crate::swing::batter::Batter;

/// A player moved by one doubt.
#[derive(Clone, Debug)]
pub struct PlayerDoubt {
    /// Which doubt.
    pub common: Common,
    /// The player, weaker or heavier by one standard deviation: what such a player would lose, not a
    /// slope at the best guess, which is misleading where the limit passes from one joint to another.
    pub batter: Batter,
}

/// Most that is taken off a strength, as a share.
const MOST: f64 = 0.5;
/// One standard deviation of the masses of trunk and arms as a share: adults, children (assumption, as
/// the player's own list of estimates says).
const BODY_MASS_SD: [f64; 2] = [0.10, 0.20];

impl PlayerDoubt {
    /// All that is in doubt. A group's spread is that of the grip, which all share, and its own; the
    /// two arms of one person are off together, so that shoulders, elbows and wrists are one doubt each.
    /// Of a player read in the nets: what these left, in three doubts that are independent.
    pub fn all(batter: &Batter) -> Vec<Self> {
        let player = &batter.player;
        let grip_sd = player.grip_relative_sd();
        let own_sd = |group: Group| player.own_relative_sd(group);
        let weaker = |common: Common, groups: &[Group], sd: f64| {
            let mut factors = [1.0; GROUP_COUNT];
            for group in groups {
                factors[*group as usize] -= sd.min(MOST);
            }
            let strength = player.strength.times(&factors);
            Self { common, batter: batter.with_strength(strength) }
        };
        let arms = |common: Common, top: Group, bottom: Group| {
            weaker(common, &[top, bottom], own_sd(top).max(own_sd(bottom)))
        };
        let child = player.age_y < ADULT_FROM_Y;
        let body = Self {
            common: Common::BodyMasses,
            batter: heavier(batter, BODY_MASS_SD[usize::from(child)]),
        };
        if let Some(columns) = player.weaker_by_nets() {
            let each = [Common::Trunk, Common::Shoulders, Common::Wrists].into_iter().zip(columns);
            let by_nets = each.map(|(common, factors)| Self {
                common,
                batter: batter.with_strength(player.strength.times(&factors)),
            });
            return by_nets.chain([body]).collect();
        }
        vec![
            weaker(Common::Strength, &Group::ALL, grip_sd),
            weaker(Common::Trunk, &[Group::Trunk], own_sd(Group::Trunk)),
            arms(Common::Shoulders, Group::TopShoulder, Group::BottomShoulder),
            arms(Common::Elbows, Group::TopElbow, Group::BottomElbow),
            arms(Common::Wrists, Group::TopWrist, Group::BottomWrist),
            body,
        ]
    }
}

/// The same player with heavier trunk and arms of the same build.
fn heavier(batter: &Batter, share: f64) -> Batter {
    let with = |player: &Player| {
        let mut player = player.clone();
        let it = &mut player.segments;
        for segment in [&mut it.trunk, &mut it.upper_arm, &mut it.forearm, &mut it.hand] {
            segment.mass_kg *= 1.0 + share;
        }
        player
    };
    let mut out = batter.clone();
    out.player = with(&batter.player);
    for stroke in &mut out.strokes {
        stroke.player = with(&stroke.player);
    }
    out
}
