//! Ball on bat in a plane, and the stiffness of a handle, by other ways than ours.

use serde::Deserialize;

use super::bat_and_ball::{BallTable, BatTable};
use crate::bat::handle::Handle;
use crate::impact::ball::Ball;
use crate::impact::hand::Hand;
use crate::impact::hit::Hit;
use crate::impact::splice::{Cane, Hinge};

/// Hits and a handle with the outside's figures.
#[derive(Clone, Debug, Deserialize, PartialEq)]
#[serde(from = "Table")]
pub struct Hits {
    /// Program and version.
    pub made_by: String,
    pub cases: Vec<Case>,
    pub handle: Handle,
    /// Its cane, and the stiffness of its hinge, N m/rad.
    pub hinge_n_m: Vec<(Cane, f64)>,
}

/// Whether the splice is the bat's own or as good as rigid.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Eq)]
#[serde(rename_all = "lowercase")]
pub enum Splice {
    /// As beam theory has it.
    Own,
    /// As good as rigid.
    Stiff,
}

/// How the bat moves before the hit.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Eq)]
pub enum Before {
    /// Not at all.
    #[serde(rename = "at rest")]
    AtRest,
    /// About the pickup axis.
    #[serde(rename = "turning")]
    Turning,
}

/// One hit and what they find.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    pub held: bool,
    pub splice: Splice,
    pub before: Before,
    /// The hit, for us.
    pub hit: Hit,
    pub found: Found,
}

/// What they find.
#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct Found {
    /// Ball speed off the bat, m/s.
    pub exit_m_s: f64,
    /// Length of the contact, s.
    pub contact_s: f64,
    /// Furthest bend, rad.
    pub bend_rad: f64,
    /// Greatest force on each hand, N.
    pub hands_peak_n: Vec<f64>,
    /// Force summed over a hundredth of a second, N s.
    pub hands_impulse_n_s: Vec<f64>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    made_by: String,
    bat: BatTable,
    #[serde(with = "BallTable")]
    ball: Ball,
    hand: HandTable,
    splice: SpliceTable,
    pickup_axis_m: f64,
    cases: Vec<CaseTable>,
    handle: HandleTable,
}

#[derive(Deserialize)]
struct HandTable {
    mass_kg: f64,
    stiffness_n_m: f64,
    from_top_m: Vec<f64>,
}

#[derive(Deserialize)]
struct SpliceTable {
    own_n_m: f64,
    stiff_n_m: f64,
}

#[derive(Deserialize)]
struct CaseTable {
    held: bool,
    splice: Splice,
    motion: Before,
    from_toe_m: f64,
    bat_m_s: f64,
    ball_m_s: f64,
    #[serde(flatten)]
    found: Found,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct HandleTable {
    length_m: f64,
    across_m: [f64; 2],
    through_share: f64,
    rubber_shear_pa: f64,
    strip_m: f64,
    cane_pa: Vec<f64>,
    hinge_n_m: Vec<f64>,
}

impl From<Table> for Hits {
    fn from(it: Table) -> Self {
        let (parts, ball) = (it.bat.parts(), it.ball);
        // Grip and radius of the handle do nothing in the plane.
        let hand = |from_top_m: &f64| Hand {
            from_top_m: *from_top_m,
            mass_kg: it.hand.mass_kg,
            stiffness_n_m: it.hand.stiffness_n_m,
            grip_n: 400.0,
            radius_m: 0.017,
        };
        let case = |case: CaseTable| {
            let stiffness_n_m = match case.splice {
                Splice::Own => it.splice.own_n_m,
                Splice::Stiff => it.splice.stiff_n_m,
            };
            let hands = it.hand.from_top_m.iter().filter(|_| case.held);
            Case {
                held: case.held,
                splice: case.splice,
                before: case.motion,
                hit: Hit {
                    parts,
                    hinge: Hinge::of(stiffness_n_m, &parts),
                    ball,
                    hands: hands.map(hand).collect(),
                    contact_from_top_m: parts.toe_m - case.from_toe_m,
                    across_m: 0.0,
                    bat_m_s: case.bat_m_s,
                    turns_about_m: it.pickup_axis_m,
                    ball_m_s: case.ball_m_s,
                },
                found: case.found,
            }
        };
        let h = &it.handle;
        let cane = |modulus_pa: &f64| Cane {
            modulus_pa: *modulus_pa,
            rubber_shear_pa: h.rubber_shear_pa,
            strip_m: h.strip_m,
        };
        Self {
            handle: Handle::bare(h.length_m, h.across_m, [h.through_share; 2], 0.0),
            hinge_n_m: h.cane_pa.iter().map(cane).zip(h.hinge_n_m.iter().copied()).collect(),
            cases: it.cases.into_iter().map(case).collect(),
            made_by: it.made_by,
        }
    }
}
