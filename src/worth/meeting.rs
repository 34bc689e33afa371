//! Where the ball meets the blade, and what comes of it there.
//!
//! The batter aims at the bat's own best place, and the ball meets the blade about it: along and across
//! normally distributed, beyond the edges and the toe nought. At each place the free rigid bat of
//! [`collision`](crate::comparison::collision), which turns under the ball where it is met off the middle line.

use crate::bat::Bat;
use crate::comparison::collision::{FreeBat, Meeting};
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::normal;

/// What of a bat the ball meets.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Struck {
    /// Dead weight, kg.
    pub mass_kg: f64,
    /// Balance point from the top of the handle, m.
    pub balance_m: f64,
    /// Swing moment about the pickup axis, kg m².
    pub swing_moment_kg_m2: f64,
    /// Moment of inertia about the long axis, kg m².
    pub twist_moment_kg_m2: f64,
    /// Overall length, m.
    pub length_m: f64,
    /// Half the width of the blade, m.
    pub half_width_m: f64,
}

/// How the hits of one player scatter and what ball and bat make of them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scatter {
    /// One standard deviation along the blade, m.
    pub along_m: f64,
    /// One standard deviation across it, m.
    pub across_m: f64,
    /// Restitution of ball on bat.
    pub restitution: f64,
    /// How long ball and bat touch, s.
    pub contact_s: f64,
    /// Mass of the ball, kg.
    pub ball_kg: f64,
}

/// Mean over the places where the ball meets the blade, for one bat: a ball of `v_ball` on a bat whose contact
/// station moves with `v` along the normal and turns with `omega` goes off with
/// `per_ball·v_ball + per_bat·v + per_turn·omega`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Met {
    /// For a unit of ball speed.
    pub per_ball: f64,
    /// For a unit of bat speed at the contact station.
    pub per_bat: f64,
    /// For a unit of turn about the transverse axis, m.
    pub per_turn_m: f64,
}

impl Met {
    /// Mean ball speed off the bat, m/s.
    pub fn exit_speed_m_s(&self, ball_m_s: f64, bat_m_s: f64, turn_rad_s: f64) -> f64 {
        self.per_ball * ball_m_s + self.per_bat * bat_m_s + self.per_turn_m * turn_rad_s
    }
}

/// Nodes and weights of Gauss and Legendre on −1 to 1. Source: Abramowitz & Stegun, table 25.4.
const ALONG: [[f64; 2]; 8] = [
    [-0.960_289_856_497_536, 0.101_228_536_290_376],
    [-0.796_666_477_413_627, 0.222_381_034_453_374],
    [-0.525_532_409_916_329, 0.313_706_645_877_887],
    [-0.183_434_642_495_650, 0.362_683_783_378_362],
    [0.183_434_642_495_650, 0.362_683_783_378_362],
    [0.525_532_409_916_329, 0.313_706_645_877_887],
    [0.796_666_477_413_627, 0.222_381_034_453_374],
    [0.960_289_856_497_536, 0.101_228_536_290_376],
];
/// The same with four.
const ACROSS: [[f64; 2]; 4] = [
    [-0.861_136_311_594_053, 0.347_854_845_137_454],
    [-0.339_981_043_584_856, 0.652_145_154_862_546],
    [0.339_981_043_584_856, 0.652_145_154_862_546],
    [0.861_136_311_594_053, 0.347_854_845_137_454],
];
/// Standard deviations to either side that are counted: one hit in 370 lies further off.
const REACH_SD: f64 = 3.0;

/// Places between two standard normal values, with the share of a normal distribution that each stands for; together
/// they are exactly what lies between.
fn normal_nodes<const N: usize>(rule: [[f64; 2]; N], from: f64, to: f64) -> [[f64; 2]; N] {
    let half = 0.5 * (to - from);
    let nodes = rule.map(|[node, weight]| {
        let z = from + half * (node + 1.0);
        [z, weight * libm::exp(-0.5 * z * z)]
    });
    let sum: f64 = nodes.iter().map(|[_, weight]| weight).sum();
    let all = normal::below(to) - normal::below(from);
    nodes.map(|[z, weight]| [z, weight * all / sum])
}

impl Struck {
    /// Of a bat whose blade is so wide.
    pub fn of(bat: &Bat, width_m: f64) -> Self {
        Self {
            mass_kg: bat.mass_kg(),
            balance_m: bat.balance_m(),
            swing_moment_kg_m2: bat.swing_moment_kg_m2(),
            twist_moment_kg_m2: bat.twist_moment_kg_m2(),
            length_m: bat.length_m(),
            half_width_m: 0.5 * width_m,
        }
    }

    /// The same bat with other readings of weight, balance point and swing moment.
    pub fn read_as(&self, [mass_kg, balance_m, swing_moment_kg_m2]: [f64; 3]) -> Self {
        Self { mass_kg, balance_m, swing_moment_kg_m2, ..*self }
    }

    /// As the law of the hit needs it.
    fn free(&self) -> FreeBat {
        let lever_m = self.balance_m - PICKUP_AXIS_FROM_TOP_M;
        FreeBat {
            mass_kg: self.mass_kg,
            balance_m: self.balance_m,
            com_moment_kg_m2: self.swing_moment_kg_m2 - self.mass_kg * lever_m * lever_m,
            twist_moment_kg_m2: self.twist_moment_kg_m2,
        }
    }

    /// Mean over the places met about an aim, m from the top of the handle; speeds are given at the
    /// contact station `contact_m`, where ball and bat close at `closing_m_s`. That speed says only how far the
    /// face turns under the ball: a tenth of it moves what is lost off the middle by a hundredth, so that one value
    /// does for a stroke at every score.
    pub fn met(&self, aim_m: f64, contact_m: f64, closing_m_s: f64, it: &Scatter) -> Met {
        let (from, to) = (-REACH_SD, ((self.length_m - aim_m) / it.along_m).min(REACH_SD));
        let widest = (self.half_width_m / it.across_m).min(REACH_SD);
        let (along, across) = (normal_nodes(ALONG, from, to), normal_nodes(ACROSS, 0.0, widest));
        let free = self.free();
        let meeting = Meeting {
            ball_kg: it.ball_kg,
            restitution: it.restitution,
            closing_m_s,
            contact_s: it.contact_s,
        };
        let mut met = Met { per_ball: 0.0, per_bat: 0.0, per_turn_m: 0.0 };
        for [z, along] in along {
            let x = aim_m + it.along_m * z;
            for [z, across] in across {
                // Both sides of the middle line.
                let share = 2.0 * along * across;
                let e = free.apparent_restitution([x, it.across_m * z], &meeting);
                met.per_ball += share * e;
                met.per_bat += share * (1.0 + e);
                met.per_turn_m += share * (1.0 + e) * (x - contact_m);
            }
        }
        met
    }

    /// The bat's best place, m from the top of the handle: where a batter whose hits scatter like this and whose bat
    /// moves like this gets most ball speed, to 0.1 mm.
    pub fn best_place_m(
        &self,
        contact_m: f64,
        it: &Scatter,
        [ball_m_s, bat_m_s, turn_rad_s]: [f64; 3],
    ) -> f64 {
        let speed = |aim_m: f64| {
            self.met(aim_m, contact_m, ball_m_s + bat_m_s, it)
                .exit_speed_m_s(ball_m_s, bat_m_s, turn_rad_s)
        };
        let (mut low, mut high) = (self.length_m - FURTHEST_M, self.length_m - NEAREST_M);
        while high - low > 1e-4 {
            let (a, b) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
            if speed(a) > speed(b) { high = b } else { low = a }
        }
        0.5 * (low + high)
    }
}

/// Furthest and nearest to the toe that a batter aims, m: the blade but for its ends.
const FURTHEST_M: f64 = 0.35;
const NEAREST_M: f64 = 0.06;
/// Golden section.
const GOLDEN: f64 = 0.618_033_988_749_894_9;
