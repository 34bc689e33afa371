//! Cuts that turn one blade into another: the swell moved, shoulders cut, the toe trimmed.

use super::blade::{Blade, Station};
use super::lofted_solid::MassMoments;
use super::shape_fault::ShapeFault;

/// Nearest to the shoulder and to the toe that the swell can be moved, as a share from the shoulder:
/// assumption.
const SWELL: [f64; 2] = [0.30, 0.90];
/// Share of the full width from which the blade counts as fully wide.
const FULL_WIDTH: f64 = 0.985;
/// The toe's cut runs out at the swell.
const TOE_FROM: f64 = 0.75;

impl Blade {
    /// Place of a station, m from the toe.
    pub fn from_toe_m(&self, station: &Station) -> f64 {
        (1.0 - station.from_shoulder) * self.length_m
    }

    /// Volume of the blade, the splice's place counted in, toe guard and cover not, m³.
    pub fn volume_m3(&self) -> f64 {
        let bare =
            Self { density_kg_m3: 1.0, face_cover_kg_m2: 0.0, toe_guard_m: 0.0, ..self.clone() };
        let mut moments = MassMoments::default();
        bare.add_to(&mut moments, 0.0);
        moments.mass_kg
    }

    /// Area of the face, flat, m².
    pub fn face_m2(&self) -> f64 {
        self.stations
            .windows(2)
            .map(|it| {
                let along_m = (it[1].from_shoulder - it[0].from_shoulder) * self.length_m;
                0.5 * (it[0].width_m + it[1].width_m) * along_m
            })
            .sum()
    }

    /// Place of the deepest station among the stations.
    pub fn deepest_index(&self) -> Option<usize> {
        let all = self.stations.iter().enumerate();
        all.max_by(|a, b| a.1.depth_m.total_cmp(&b.1.depth_m)).map(|it| it.0)
    }

    /// Slides the stations along the blade so that the deepest lies there; shoulder and toe stay.
    pub fn move_swell(&mut self, from_toe_m: f64) -> Result<(), ShapeFault> {
        self.deepest_index().map_or(Ok(()), |n| self.move_station(n, from_toe_m))
    }

    /// The same for any station, where a swell may lie.
    pub fn move_station(&mut self, n: usize, from_toe_m: f64) -> Result<(), ShapeFault> {
        let Some(now) = self.stations.get(n).map(|it| it.from_shoulder) else { return Ok(()) };
        let wanted = 1.0 - from_toe_m / self.length_m;
        let [first, last] = SWELL;
        // Shoulder and toe cannot be slid: a blade that is deepest there has no swell to move.
        if !(first..=last).contains(&wanted) || now <= 0.0 || now >= 1.0 {
            let at = |share: f64| (1.0 - share) * self.length_m;
            return Err(ShapeFault::Swell { from_toe_m, low_m: at(last), high_m: at(first) });
        }
        self.slide_stations(now, wanted);
        Ok(())
    }

    /// Slides what lies at the share `now` to `wanted`, and all between it and the ends evenly along.
    fn slide_stations(&mut self, now: f64, wanted: f64) {
        for it in &mut self.stations {
            let at = it.from_shoulder;
            it.from_shoulder = match at <= now {
                true => at * wanted / now,
                false => 1.0 - (1.0 - at) * (1.0 - wanted) / (1.0 - now),
            };
        }
    }

    /// Makes the blade wider or narrower all along, until its greatest width is this.
    pub(super) fn widen(&mut self, width_m: f64) {
        let ratio = width_m / self.width_m();
        self.stations.iter_mut().for_each(|it| it.width_m *= ratio);
    }

    /// Makes the blade thicker all over by a factor: edges, depth and camber.
    pub fn thicken(&mut self, factor: f64) {
        for it in &mut self.stations {
            it.edge_m *= factor;
            it.depth_m *= factor;
            it.camber_m *= factor;
        }
    }

    /// Cuts the shoulders: the width at the handle, and the way from there to full width.
    pub fn cut_shoulders(&mut self, width_m: Option<f64>, length_m: Option<f64>) {
        let full_m = self.width_m();
        let Some(end) = self.stations.iter().position(|it| it.width_m >= FULL_WIDTH * full_m)
        else {
            return;
        };
        if let (Some(width_m), Some(first)) = (width_m, self.stations.first().map(|it| it.width_m))
            && first < full_m
        {
            for it in self.stations.iter_mut().take(end) {
                it.width_m = full_m - (full_m - it.width_m) * (full_m - width_m) / (full_m - first);
            }
        }
        let at_end = self.stations.get(end).map_or(0.0, |it| it.from_shoulder);
        if let Some(wanted) = length_m.map(|it| it / self.length_m).filter(|_| at_end > 0.0) {
            self.slide_stations(at_end, wanted);
        }
    }

    /// Trims depth and edges towards the toe so that the toe is that deep.
    pub fn trim_toe(&mut self, depth_m: f64) {
        let Some(now_m) = self.stations.last().map(|it| it.depth_m) else { return };
        for it in &mut self.stations {
            let share = ((it.from_shoulder - TOE_FROM) / (1.0 - TOE_FROM)).clamp(0.0, 1.0);
            let factor = 1.0 + (depth_m / now_m - 1.0) * share;
            it.depth_m *= factor;
            it.edge_m *= factor;
        }
    }
}
