//! What makes a shape no solid.

use super::blade::Station;
use super::shape::BatShape;
use super::shape_fault::ShapeFault;

/// Everything that makes the shape no solid.
pub fn sound(shape: &BatShape) -> Vec<ShapeFault> {
    let (blade, handle) = (&shape.blade, &shape.handle);
    let mut faults = Vec::new();
    // One of a kind is enough to mend it: the worst.
    let worst = |measure: &dyn Fn(&Station) -> f64| {
        blade.stations.iter().min_by(|a, b| measure(a).total_cmp(&measure(b)))
    };
    let over_edge = |it: &Station| it.depth_m - it.camber_m - it.edge_m;
    if let Some(it) = worst(&over_edge).filter(|it| over_edge(it) < 0.0) {
        faults.push(ShapeFault::EdgeOverSpine {
            from_toe_m: blade.from_toe_m(it),
            edge_m: it.edge_m,
            depth_m: it.depth_m - it.camber_m,
        });
    } else if let Some(it) = worst(&Station::thinnest_m).filter(|it| it.thinnest_m() <= 0.0) {
        faults.push(ShapeFault::BackThroughFace {
            from_toe_m: blade.from_toe_m(it),
            thickness_m: it.thinnest_m(),
            nearest_hollow: most_hollow(it),
        });
    }
    let out_of_order = |it: &&[Station]| it[1].from_shoulder < it[0].from_shoulder;
    if let Some(n) = blade.stations.windows(2).position(|it| out_of_order(&it)) {
        faults.push(ShapeFault::StationOrder {
            number: n + 2,
            from_toe_m: blade.from_toe_m(&blade.stations[n + 1]),
            length_m: blade.length_m,
        });
    }
    let longest_m = 0.5 * blade.length_m;
    if handle.splice_m > longest_m {
        faults.push(ShapeFault::Splice {
            splice_m: handle.splice_m,
            blade_m: blade.length_m,
            nearest_m: longest_m,
        });
    }
    if let Some(root) = blade.stations.first() {
        for (handle_m, room_m) in [
            (2.0 * handle.half_y_m(handle.length_m), root.width_m),
            (2.0 * handle.half_z_m(handle.length_m), root.depth_m),
        ] {
            if handle_m > room_m * (1.0 + HANDLE_SLACK) {
                faults.push(ShapeFault::HandleOutOfBlade { handle_m, room_m });
            }
        }
    }
    faults
}

/// How much thicker than the blade a handle may be at the joint, where both are rounded off, as a share:
/// assumption.
const HANDLE_SLACK: f64 = 0.10;

/// Most hollow, to a hundredth, that leaves wood all over a section.
fn most_hollow(station: &Station) -> f64 {
    let hundredths = (0..=200).rev().map(|n| -1.0 + f64::from(n) / 100.0);
    hundredths
        .filter(|hollow| *hollow < station.hollow)
        .find(|hollow| Station { hollow: *hollow, ..*station }.thinnest_m() > 0.0)
        .unwrap_or(-1.0)
}
