//! A ball of finite size off the middle of a free, rigid bat, by another integrator.

use serde::Deserialize;
use std::collections::BTreeMap;

use super::ball::BallTable;
use crate::frames::{DMat3, DVec3};
use crate::impact::ball::Ball;
use crate::impact::hit::Hit;
use crate::impact::parts::{Part, Parts};
use crate::impact::splice::Hinge;

/// Hits off the middle with the outside's figures.
#[derive(Clone, Debug, PartialEq)]
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
pub(super) struct Table {
    made_by: String,
    bat: BatTable,
    ball: BallTable,
    bat_m_s: f64,
    ball_m_s: f64,
    pickup_axis_m: f64,
    cases: Vec<CaseTable>,
    left_out: Vec<CaseTable>,
}

#[derive(Deserialize)]
struct BatTable {
    handle: PartTable,
    blade: PartTable,
    moments_kg_m2: MomentsTable,
    shoulder_m: f64,
    toe_m: f64,
    half_width_m: f64,
    face_m: f64,
}

#[derive(Deserialize)]
struct PartTable {
    mass_kg: f64,
    com_m: [f64; 2],
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct MomentsTable {
    handle: [f64; 3],
    blade: [f64; 3],
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

impl PartTable {
    fn part(&self, moments: [f64; 3]) -> Part {
        let [x, z] = self.com_m;
        Part {
            mass_kg: self.mass_kg,
            com_B: DVec3::new(x, 0.0, z),
            I_Com_B: DMat3::from_diagonal(DVec3::from_array(moments)),
        }
    }
}

impl From<Table> for OffMiddle {
    fn from(it: Table) -> Self {
        let parts = Parts {
            handle: it.bat.handle.part(it.bat.moments_kg_m2.handle),
            blade: it.bat.blade.part(it.bat.moments_kg_m2.blade),
            shoulder_m: it.bat.shoulder_m,
            toe_m: it.bat.toe_m,
            half_width_m: it.bat.half_width_m,
            face_m: it.bat.face_m,
            bow_m: 0.0,
        };
        let ball = Ball::from(it.ball);
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
