//! Bat and ball of the reference hits.

use serde::Deserialize;

use crate::frames::{DMat3, DVec3};
use crate::impact::ball::Ball;
use crate::impact::parts::{Part, Parts};

#[derive(Deserialize)]
#[serde(remote = "Ball", deny_unknown_fields)]
pub(super) struct BallTable {
    mass_kg: f64,
    radius_m: f64,
    stiffness_n_m15: f64,
    restitution: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct BatTable {
    handle: PartTable,
    blade: PartTable,
    moments_kg_m2: Option<MomentsTable>,
    shoulder_m: f64,
    toe_m: f64,
    half_width_m: f64,
    face_m: f64,
}

/// A part in its plane, x and z of B.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct PartTable {
    mass_kg: f64,
    com_m: [f64; 2],
    moment_kg_m2: f64,
}

/// About the three axes, of a bat that is hit off its middle.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct MomentsTable {
    handle: [f64; 3],
    blade: [f64; 3],
}

impl BatTable {
    pub(super) fn parts(&self) -> Parts {
        let moments = self.moments_kg_m2.as_ref();
        Parts {
            handle: self.handle.part(moments.map(|it| it.handle)),
            blade: self.blade.part(moments.map(|it| it.blade)),
            shoulder_m: self.shoulder_m,
            toe_m: self.toe_m,
            half_width_m: self.half_width_m,
            face_m: self.face_m,
            bow_m: 0.0,
        }
    }
}

impl PartTable {
    /// In a hit in the plane nothing turns about the long axis; any moment will do that leaves a rigid body.
    fn part(&self, moments_kg_m2: Option<[f64; 3]>) -> Part {
        let [x, z] = self.com_m;
        let across = self.moment_kg_m2;
        let moments = moments_kg_m2.unwrap_or([0.1 * across, across, across]);
        Part {
            mass_kg: self.mass_kg,
            com_B: DVec3::new(x, 0.0, z),
            I_Com_B: DMat3::from_diagonal(DVec3::from_array(moments)),
        }
    }
}
