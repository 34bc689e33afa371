//! What is in doubt about the player, as pairs of players slightly other than the one given.

use super::carried::Common;
use crate::player::Player;
use crate::player::joints::{GROUP_COUNT, Group};
use crate::player::segments::ADULT_FROM_Y;
use crate::swing::batter::Batter;

/// Two players moved by one doubt, one either way.
#[derive(Clone, Debug)]
pub struct PlayerDoubt {
    /// Which doubt.
    pub common: Common,
    /// Weaker and stronger, or heavier and lighter, by one standard deviation. What such players would lose
    /// and win, not a slope at the best guess, which is misleading where the limit passes from one joint to
    /// another: there a weaker joint costs much and a stronger one wins little.
    pub batters: [Batter; 2],
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
        let with_strengths = |common: Common, factors: [[f64; GROUP_COUNT]; 2]| Self {
            common,
            batters: factors.map(|it| batter.with_strength(player.strength.times(&it))),
        };
        let doubted = |common: Common, groups: &[Group], sd: f64| {
            let mut factors = [[1.0; GROUP_COUNT]; 2];
            for group in groups {
                factors[0][*group as usize] -= sd.min(MOST);
                factors[1][*group as usize] += sd;
            }
            with_strengths(common, factors)
        };
        let arms = |common: Common, top: Group, bottom: Group| {
            doubted(common, &[top, bottom], own_sd(top).max(own_sd(bottom)))
        };
        let child = player.age_y < ADULT_FROM_Y;
        let share = BODY_MASS_SD[usize::from(child)];
        let batters = [heavier(batter, share), heavier(batter, -share)];
        let body = Self { common: Common::BodyMasses, batters };
        if let Some(columns) = player.weaker_by_nets() {
            let each = [Common::Trunk, Common::Shoulders, Common::Wrists].into_iter().zip(columns);
            let by_nets = each.map(|(common, weaker)| {
                with_strengths(common, [weaker, weaker.map(|it| 1.0 / it)])
            });
            return by_nets.chain([body]).collect();
        }
        vec![
            doubted(Common::Strength, &Group::ALL, grip_sd),
            doubted(Common::Trunk, &[Group::Trunk], own_sd(Group::Trunk)),
            arms(Common::Shoulders, Group::TopShoulder, Group::BottomShoulder),
            arms(Common::Elbows, Group::TopElbow, Group::BottomElbow),
            arms(Common::Wrists, Group::TopWrist, Group::BottomWrist),
            body,
        ]
    }
}

/// The same player with trunk and arms heavier by a share, of the same build.
fn heavier(batter: &Batter, share: f64) -> Batter {
    let with = |player: &Player| {
        let segments = player.segments.heavier(1.0 + share);
        Player { segments, ..player.clone() }
    };
    let mut out = batter.clone();
    out.player = with(&batter.player);
    for stroke in &mut out.strokes {
        stroke.player = with(&stroke.player);
    }
    out
}
