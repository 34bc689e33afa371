//! One stroke's cost along the bat.

use super::axis::CostAxis;
use super::moments::TopMoments;

/// Avoirdupois ounce, kg.
pub const OUNCE_KG: f64 = 0.453_592_37 / 16.0;

/// Stations of a curve, from the top of the handle to the toe.
pub const STATIONS: u32 = 11;

/// A cost below this share of the toe's is no more than the law is accepted to be off by.
pub const NEXT_TO_NOTHING: f64 = 0.02;

/// What a small mass at one station does to a stroke.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cost {
    /// Station, m from the top of the handle.
    pub from_top_m: f64,
    /// Change of bat speed for a kilogram put there, m/s: negative where it slows the stroke. Of a small mass:
    /// an ounce changes it by its share of this.
    pub speed_change_m_s_per_kg: f64,
}

/// What a small mass does to one stroke, by its station.
///
/// Every law of first order in mass, first and second moment is a quadratic in the station:
/// `dv/dm (x) = g_m + g_1 x + g_2 x²`. Of the bat, of the player and of the capacity it was found for.
#[derive(Clone, Debug, PartialEq)]
pub struct StrokeOunce {
    /// Name of the stroke.
    pub stroke: String,
    /// Bat speed at the contact point without the mass, m/s.
    pub bat_speed_m_s: f64,
    /// Length of the bat, m.
    pub length_m: f64,
    /// Changes of bat speed for a kilogram, a kg m and a kg m² about the top of the handle.
    pub law: [f64; 3],
}

impl StrokeOunce {
    /// The law through three costs at three stations.
    pub fn through(stroke: &str, bat_speed_m_s: f64, length_m: f64, costs: [Cost; 3]) -> Self {
        let [a, b, c] = costs;
        let slope = |p: Cost, q: Cost| {
            (q.speed_change_m_s_per_kg - p.speed_change_m_s_per_kg) / (q.from_top_m - p.from_top_m)
        };
        // Newton's divided differences.
        let (ab, bc) = (slope(a, b), slope(b, c));
        let abc = (bc - ab) / (c.from_top_m - a.from_top_m);
        let (x, y) = (a.from_top_m, b.from_top_m);
        Self {
            stroke: stroke.to_owned(),
            bat_speed_m_s,
            length_m,
            law: [a.speed_change_m_s_per_kg - ab * x + abc * x * y, ab - abc * (x + y), abc],
        }
    }

    /// Change of bat speed for a kilogram at a station, m/s: that of a small mass, to first order.
    pub fn at(&self, from_top_m: f64) -> f64 {
        let [mass, first, second] = self.law;
        mass + from_top_m * (first + from_top_m * second)
    }

    /// Change of bat speed for an ounce at a station, m/s.
    pub fn ounce_at_m_s(&self, from_top_m: f64) -> f64 {
        OUNCE_KG * self.at(from_top_m)
    }

    /// Change of bat speed when a bat's moments change, m/s, to first order.
    pub fn change_m_s(&self, by: TopMoments) -> f64 {
        let [mass, first, second] = self.law;
        mass * by.mass_kg + first * by.first_kg_m + second * by.second_kg_m2
    }

    /// The cost at [`STATIONS`] stations from the top of the handle to the toe.
    pub fn curve(&self) -> Vec<Cost> {
        (0..STATIONS)
            .map(|n| {
                let from_top_m = self.length_m * f64::from(n) / f64::from(STATIONS - 1);
                Cost { from_top_m, speed_change_m_s_per_kg: self.at(from_top_m) }
            })
            .collect()
    }

    /// The axis that the curve fits best.
    pub fn axis(&self) -> CostAxis {
        let costs: Vec<(f64, f64)> =
            self.curve().iter().map(|it| (it.from_top_m, it.speed_change_m_s_per_kg)).collect();
        CostAxis::of(&costs)
    }

    /// How many times what a mass costs at the top of the handle it costs at the toe; none where it costs next
    /// to nothing at the top, or there is a gain.
    pub fn toe_over_top(&self) -> Option<f64> {
        let (top, toe) = (self.at(0.0), self.at(self.length_m));
        (toe < 0.0 && top < NEXT_TO_NOTHING * toe).then_some(toe / top)
    }
}
