//! A ball of finite size off the middle of a free, rigid bat, by another integrator.

use serde::Deserialize;
use std::collections::BTreeMap;

use super::bat_and_ball::{BallTable, BatTable};
use crate::impact::ball::Ball;
use crate::impact::hit::Hit;
use crate::impact::splice::Hinge;

/// Hits off the middle with the outside's figures.
#[derive(Clone, Debug, Deserialize, PartialEq)]
#[serde(from = "Table")]
pub struct OffMiddle {
    /// Program and version.
    pub made_by: String,
    /// On a smooth, flat face, as our hit has it.
    pub cases: Vec<Case>,
    /// With what our hit leaves out, in pairs: in the middle, and off it.
    pub left_out: BTreeMap<String, Vec<Case>>,
}

/// One hit and what they find.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    /// The hit, for us; its splice as good as rigid.
    pub hit: Hit,
    /// What they find.
    pub found: Found,
}

/// What they find.
#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct Found {
    /// Ball speed out of the face, m/s.
    pub exit_m_s: f64,
    /// Ball speed, whichever way it goes, m/s.
    pub exit_whole_m_s: f64,
    /// Across, off the face's normal, rad.
    pub aside_rad: f64,
    /// Length of the contact, s.
    pub contact_s: f64,
    /// Turning of the bat about its long axis, rad/s.
    pub twist_rad_s: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    made_by: String,
    bat: BatTable,
    #[serde(with = "BallTable")]
    ball: Ball,
    bat_m_s: f64,
    ball_m_s: f64,
    pickup_axis_m: f64,
    cases: Vec<CaseTable>,
    left_out: Vec<CaseTable>,
}

#[derive(Deserialize)]
struct CaseTable {
    what: Option<String>,
    from_toe_m: f64,
    across_m: f64,
    #[serde(flatten)]
    found: Found,
}

/// As good as rigid, N m/rad.
const STIFF_N_M: f64 = 1e7;

impl From<Table> for OffMiddle {
    fn from(it: Table) -> Self {
        let (parts, ball) = (it.bat.parts(), it.ball);
        let case = |case: CaseTable| {
            let hit = Hit {
                parts,
                hinge: Hinge::of(STIFF_N_M, &parts),
                ball,
                hands: vec![],
                contact_from_top_m: parts.toe_m - case.from_toe_m,
                across_m: case.across_m,
                bat_m_s: it.bat_m_s,
                turns_about_m: it.pickup_axis_m,
                ball_m_s: it.ball_m_s,
            };
            Case { hit, found: case.found }
        };
        let mut left_out: BTreeMap<String, Vec<Case>> = BTreeMap::new();
        for mut other in it.left_out {
            let what = other.what.take().unwrap_or_default();
            left_out.entry(what).or_default().push(case(other));
        }
        Self { cases: it.cases.into_iter().map(case).collect(), left_out, made_by: it.made_by }
    }
}
