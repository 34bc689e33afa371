//! What the lines of its size complete of a blade that was measured at some heights, and how far it may be off.

use super::blade::Station;
use super::described::Described;
use super::measured::{MeasuredStation, SAME, is_whole};
use super::shape::BatShape;

/// A figure that is completed along the blade.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    /// Edges and spine together.
    Thickness,
    /// Width.
    Width,
    /// Hollowing of the back.
    Hollow,
    /// Camber of the face.
    Camber,
}

impl Line {
    const ALL: [Self; 4] = [Self::Thickness, Self::Width, Self::Hollow, Self::Camber];

    /// In plain words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Thickness => "edges and spine",
            Self::Width => "width",
            Self::Hollow => "hollow of the back",
            Self::Camber => "camber of the face",
        }
    }

    /// One standard deviation of a blade against its size's lines: for each metre from the nearest height at which
    /// it is known, and at the most. Of thickness and width a share, of the hollowing as such, of the camber m.
    /// Assumptions: no maker's blades were measured for it. A tapered blade leaves its size's lines by 4 % of
    /// thickness in 10 cm.
    fn doubt(self) -> (f64, f64) {
        match self {
            Self::Thickness => (0.4, 0.12),
            Self::Width => (0.1, 0.015),
            Self::Hollow => (1.0, 0.15),
            Self::Camber => (0.01, 0.001),
        }
    }

    fn is_given(self, it: &MeasuredStation) -> bool {
        match self {
            Self::Thickness => true,
            Self::Width => it.width_m.is_some(),
            Self::Hollow => it.hollow.is_some(),
            Self::Camber => it.camber_m.is_some(),
        }
    }
}

/// A stretch of the blade where a figure was completed, and how far it may be off there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Completed {
    /// Which figure.
    pub line: Line,
    /// From there to there, shares of the way from shoulder to toe.
    pub stretch: [f64; 2],
    /// Whether it is known at either end of the stretch.
    known: [bool; 2],
    length_m: f64,
}

impl Completed {
    /// One standard deviation at a place, share from the shoulder; 0 outside the stretch. Of thickness and width a
    /// share, of the hollowing as such, of the camber m.
    pub fn sd(&self, from_shoulder: f64) -> f64 {
        let [from, to] = self.stretch;
        if !(from..=to).contains(&from_shoulder) {
            return 0.0;
        }
        let (per_m, most) = self.line.doubt();
        let away = [from_shoulder - from, to - from_shoulder];
        let away_m = (0..2).filter(|k| self.known[*k]).map(|k| away[k] * self.length_m);
        (per_m * away_m.fold(f64::INFINITY, f64::min)).min(most)
    }

    /// The greatest of it.
    pub fn most_sd(&self) -> f64 {
        let [from, to] = self.stretch;
        [from, 0.5 * (from + to), to].into_iter().map(|it| self.sd(it)).fold(0.0, f64::max)
    }

    /// The section one standard deviation off.
    fn off(&self, mut it: Station) -> Station {
        let sd = self.sd(it.from_shoulder);
        match self.line {
            Line::Thickness => {
                it.edge_m *= 1.0 + sd;
                it.depth_m *= 1.0 + sd;
            }
            Line::Width => it.width_m *= 1.0 + sd,
            Line::Hollow => it.hollow += sd,
            Line::Camber => it.camber_m += sd,
        }
        it
    }
}

impl Described {
    /// What was not measured of a blade that was measured at some heights, and is completed by the size's lines;
    /// nothing of a blade that was described otherwise.
    pub fn completed(&self, reference: &BatShape) -> Vec<Completed> {
        let given = &self.blade.stations;
        if given.is_empty() {
            return Vec::new();
        }
        let length_m = self.blade.length_m.unwrap_or(reference.blade.length_m);
        // A figure that is given of the whole blade is known at its swell.
        let swell = reference.blade.deepest().map_or(0.5, |it| it.from_shoulder);
        let mut out = Vec::new();
        for line in Line::ALL {
            let mut known: Vec<f64> = given
                .iter()
                .filter(|it| line.is_given(it))
                .map(|it| it.share_along(length_m))
                .chain(self.says(line).then_some(swell))
                .collect();
            known.sort_by(f64::total_cmp);
            if known.len() >= given.len() && is_whole(given, length_m) {
                continue;
            }
            let ends: Vec<f64> =
                [0.0].into_iter().chain(known.iter().copied()).chain([1.0]).collect();
            for (n, it) in ends.windows(2).enumerate().filter(|(_, it)| it[1] - it[0] > SAME) {
                let known = [n > 0, n < known.len()];
                out.push(Completed { line, stretch: [it[0], it[1]], known, length_m });
            }
        }
        out
    }

    /// Whether the figure is given of the whole blade.
    fn says(&self, line: Line) -> bool {
        match line {
            Line::Thickness => false,
            Line::Width => self.blade.width_m.is_some(),
            Line::Hollow => self.blade.hollow.is_some(),
            Line::Camber => self.blade.camber_m.is_some(),
        }
    }

    /// The bats that it may be as well: of each, one completed stretch is a standard deviation off.
    pub(super) fn shapes_in_doubt(&self, reference: &BatShape) -> Vec<BatShape> {
        let off = |it: &Completed| self.built(reference, &|station| it.off(station)).0;
        self.completed(reference).iter().map(off).collect()
    }
}
