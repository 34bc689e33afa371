//! A blade measured at some heights and completed by the lines of its size.
//!
//! What was measured stands. Between two heights the size's own profile is scaled by the ratio of what was
//! measured to it, which runs smoothly from height to height; beyond the outermost the ratio is held, but at
//! the very shoulder, where every blade has to hold its handle, it runs out to the size's own. Hollowing and
//! camber, where they were left out, are the size's. All of that is in doubt, the more the farther from
//! a measured height: see [`Completed`](super::completed::Completed).

use super::blade::{Blade, Station};
use super::shape_fault::ShapeFault;

/// Fewer heights than these give no profile: one near either end and one between.
pub const FEWEST: usize = 3;
/// So many heights from the very shoulder to the very toe are the whole blade: it runs straight between them.
pub const WHOLE: usize = 10;
/// How near the outermost of these are to the ends, m.
const AT_THE_END_M: f64 = 1e-4;
/// Share of the blade below the shoulder over which the ratio runs out to the size's own: as a blade is carved.
const SHOULDER: f64 = 0.07;
/// Heights nearer than this are one, as a share of the blade.
pub(super) const SAME: f64 = 1e-6;

/// What was measured at one height of the blade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasuredStation {
    /// Height over the toe, m.
    pub from_toe_m: f64,
    /// Thickness of the edges, m.
    pub edge_m: f64,
    /// Depth from the middle of the face to the spine, m.
    pub depth_m: f64,
    /// Width, m, where it was measured.
    pub width_m: Option<f64>,
    /// Hollowing of the back, where it was judged.
    pub hollow: Option<f64>,
    /// Height of the middle of the face over its edges, m, where it was measured.
    pub camber_m: Option<f64>,
}

impl MeasuredStation {
    /// A whole section, measured so far from the toe.
    pub fn of(from_toe_m: f64, it: &Station) -> Self {
        Self {
            from_toe_m,
            edge_m: it.edge_m,
            depth_m: it.depth_m,
            width_m: Some(it.width_m),
            hollow: Some(it.hollow),
            camber_m: Some(it.camber_m),
        }
    }

    fn is_at(&self, from_shoulder: f64, length_m: f64) -> bool {
        (self.share_along(length_m) - from_shoulder).abs() <= SAME
    }

    /// A section with what was measured in the place of its own.
    fn over(&self, it: Station) -> Station {
        Station {
            from_shoulder: it.from_shoulder,
            width_m: self.width_m.unwrap_or(it.width_m),
            edge_m: self.edge_m,
            depth_m: self.depth_m,
            hollow: self.hollow.unwrap_or(it.hollow),
            camber_m: self.camber_m.unwrap_or(it.camber_m),
        }
    }

    /// Its place, as a share of the way from shoulder to toe.
    pub(super) fn share_along(&self, length_m: f64) -> f64 {
        (1.0 - self.from_toe_m / length_m).clamp(0.0, 1.0)
    }
}

/// The blade's sections, those measured and those of its size between and beyond them; `off` may
/// put each of them off.
///
/// # Errors
/// Too few heights, or heights that do not run from shoulder to toe.
pub fn completed(
    given: &[MeasuredStation],
    reference: &Blade,
    length_m: f64,
    off: &dyn Fn(Station) -> Station,
) -> Result<Vec<Station>, ShapeFault> {
    if given.len() < FEWEST {
        return Err(ShapeFault::TooFewStations { count: given.len() });
    }
    let mut before = None;
    for (n, it) in given.iter().enumerate() {
        let from_shoulder = 1.0 - it.from_toe_m / length_m;
        let after = before.is_none_or(|it| from_shoulder > it);
        if !after || !(-1e-9..=1.0 + 1e-9).contains(&from_shoulder) {
            let (number, from_toe_m) = (n + 1, it.from_toe_m);
            return Err(ShapeFault::StationOrder { number, from_toe_m, length_m });
        }
        before = Some(from_shoulder);
    }
    let lines = Lines::of(given, reference, length_m);
    let mut places: Vec<f64> = given.iter().map(|it| it.share_along(length_m)).collect();
    if !is_whole(given, length_m) {
        let own = reference.stations.iter().map(|it| it.from_shoulder);
        let apart = |it: &f64| places.iter().all(|at| (at - it).abs() > SAME);
        let own: Vec<f64> = own.filter(apart).collect();
        places.extend(own);
        places.sort_by(f64::total_cmp);
    }
    let at = |place: f64| {
        let it = lines.at(reference.at(place)?, place);
        let it = given.iter().find(|at| at.is_at(place, length_m)).map_or(it, |at| at.over(it));
        Some(off(it))
    };
    Ok(places.into_iter().filter_map(at).collect())
}

pub(super) fn is_whole(given: &[MeasuredStation], length_m: f64) -> bool {
    let (Some(first), Some(last)) = (given.first(), given.last()) else { return false };
    let ends =
        (length_m - first.from_toe_m).abs() < AT_THE_END_M && last.from_toe_m.abs() < AT_THE_END_M;
    given.len() >= WHOLE && ends
}

/// Ratios of what was measured to the size's own, of the hollowing the difference, by place.
struct Lines {
    edge: Vec<[f64; 2]>,
    depth: Vec<[f64; 2]>,
    width: Vec<[f64; 2]>,
    camber: Vec<[f64; 2]>,
    hollow: Vec<[f64; 2]>,
}

impl Lines {
    fn of(given: &[MeasuredStation], reference: &Blade, length_m: f64) -> Self {
        let knots = |of: &dyn Fn(&MeasuredStation, &Station) -> Option<f64>| -> Vec<[f64; 2]> {
            let knot = |it: &MeasuredStation| {
                let at = it.share_along(length_m);
                let value = of(it, &reference.at(at)?)?;
                value.is_finite().then_some([at, value])
            };
            given.iter().filter_map(knot).collect()
        };
        Self {
            edge: knots(&|it, own| Some(it.edge_m / own.edge_m)),
            depth: knots(&|it, own| Some(it.depth_m / own.depth_m)),
            width: knots(&|it, own| Some(it.width_m? / own.width_m)),
            // Where the size's face is flat a ratio says nothing.
            camber: knots(&|it, own| {
                Some(it.camber_m? / own.camber_m).filter(|_| own.camber_m > 0.0)
            }),
            hollow: knots(&|it, own| Some(it.hollow? - own.hollow)),
        }
    }

    fn at(&self, own: Station, place: f64) -> Station {
        let camber_m = own.camber_m * smooth(&self.camber, place).unwrap_or(1.0);
        let depth_m = own.depth_m * shouldered(&self.depth, place);
        let edge_m = own.edge_m * shouldered(&self.edge, place);
        Station {
            from_shoulder: place,
            width_m: own.width_m * shouldered(&self.width, place),
            // Where nobody measured, no edge stands over the spine.
            edge_m: edge_m.min(depth_m - camber_m),
            depth_m,
            hollow: own.hollow + smooth(&self.hollow, place).unwrap_or(0.0),
            camber_m,
        }
    }
}

/// A ratio at a place, run out to 1 at the very shoulder above the first that is known.
fn shouldered(knots: &[[f64; 2]], place: f64) -> f64 {
    let ratio = smooth(knots, place).unwrap_or(1.0);
    match knots.first() {
        Some([first, _]) if place < *first => {
            1.0 + (ratio - 1.0) * (place / first.min(SHOULDER)).min(1.0)
        }
        _ => ratio,
    }
}

/// A cubic through the knots that rises and falls only where they do, held beyond them; none without knots.
/// Source: Fritsch & Carlson 1980, with the harmonic mean of Fritsch & Butland 1984 (from memory, high).
fn smooth(knots: &[[f64; 2]], at: f64) -> Option<f64> {
    let (first, last) = (knots.first()?, knots.last()?);
    let next = knots.iter().position(|it| it[0] >= at).unwrap_or(knots.len());
    if next == 0 || next == knots.len() {
        return Some(if next == 0 { first[1] } else { last[1] });
    }
    let secant = |n: usize| (knots[n][1] - knots[n - 1][1]) / (knots[n][0] - knots[n - 1][0]);
    let slope = |n: usize| match n {
        0 => secant(1),
        n if n + 1 == knots.len() => secant(n),
        n => {
            let (a, b) = (secant(n), secant(n + 1));
            if a * b > 0.0 { 2.0 * a * b / (a + b) } else { 0.0 }
        }
    };
    let ([x0, y0], [x1, y1]) = (knots[next - 1], knots[next]);
    let h = x1 - x0;
    let t = (at - x0) / h;
    let (t2, t3) = (t * t, t * t * t);
    let rise = y0 + (y1 - y0) * (3.0 * t2 - 2.0 * t3);
    Some(rise + h * (slope(next - 1) * (t - 2.0 * t2 + t3) + slope(next) * (t3 - t2)))
}
