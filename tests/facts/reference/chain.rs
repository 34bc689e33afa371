//! Where the bodies of a reference file's chain are: kinematics written once more, without ours.

use backlift::files::reference::chain::{Chain, Triple};
use backlift::frames::{DMat3, DVec3, rotation};

/// Origin and rotation of every link in W.
fn place(chain: &Chain, q_rad: &[f64]) -> Vec<(DVec3, DMat3)> {
    let mut angles = q_rad.iter();
    let mut placed: Vec<(DVec3, DMat3)> = Vec::new();
    for link in &chain.links {
        let (p, R) = match usize::try_from(link.parent) {
            Ok(parent) => placed[parent],
            Err(_) => (DVec3::ZERO, DMat3::IDENTITY),
        };
        let turn = link.axis.map_or(DMat3::IDENTITY, |axis| {
            rotation(DVec3::from_array(axis), *angles.next().unwrap())
        });
        placed.push((p + R * DVec3::from_array(link.offset), R * turn));
    }
    assert!(angles.next().is_none(), "more angles than hinges");
    placed
}

/// A point of one link in W.
fn point_W(chain: &Chain, q_rad: &[f64], link: usize, point: Triple) -> DVec3 {
    let (p, R) = place(chain, q_rad)[link];
    p + R * DVec3::from_array(point)
}

pub fn toe_W(chain: &Chain, q_rad: &[f64]) -> DVec3 {
    point_W(chain, q_rad, chain.bat.link, chain.bat.toe)
}

/// Distance between the bottom hand and its place on the bat, m; zero without a bottom hand.
pub fn gap_m(chain: &Chain, q_rad: &[f64]) -> f64 {
    chain.closure.as_ref().map_or(0.0, |it| {
        let a = point_W(chain, q_rad, it.link_a, it.point_a);
        a.distance(point_W(chain, q_rad, it.link_b, it.point_b))
    })
}
