//! All bats of one size: from dead weight and balance point to a blade that can be carved.
//!
//! A wanted weight is met by thickness and, in part, by choosing a denser cleft; a wanted balance by
//! tapering the thickness along the blade and moving the swell. Both are solved for exactly, so that
//! weight and balance are what was asked and everything else is smooth in them. Weight and balance do
//! not fix the swing moment: more or less wood at the ends of the blade, and a heavier or lighter
//! handle, give the range of it that can be made.

use super::laws::Limits;
use super::lofted_solid::MassMoments;
use super::makeable::{MadeBat, NotMakeable, Wanted, out_of_reach};
use super::shape::BatShape;
use super::sizes::{Craft, Size};

/// What the carver turns.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Carving {
    thickness: f64,
    taper: f64,
    swell_move: f64,
    ends: f64,
    density_kg_m3: f64,
    handle_density_kg_m3: f64,
}

/// All bats of one size.
#[derive(Clone, Debug, PartialEq)]
pub struct Family {
    reference: BatShape,
    reference_mass_kg: f64,
    /// Place of the reference's swell as a share from the shoulder.
    swell: f64,
    craft: Craft,
}

impl Family {
    /// The family of a size as sold.
    pub fn of(size: &Size) -> Self {
        Self::around(size.reference.clone(), size.craft)
    }

    /// The family around another reference, such as a size's own drawn out to a measured length.
    pub fn around(reference: BatShape, craft: Craft) -> Self {
        let swell = reference.blade.deepest().map_or(0.5, |it| it.from_shoulder);
        let reference_mass_kg = reference.mass_moments().mass_kg;
        Self { reference, reference_mass_kg, swell, craft }
    }

    /// The bat everything is carved from.
    pub fn reference(&self) -> &BatShape {
        &self.reference
    }

    /// Whether makers of the size cut a swell where this bat has it.
    pub fn has_makers_swell(&self, shape: &BatShape) -> bool {
        let [low_m, high_m] = self.craft.swell_from_toe.map(|it| it * shape.blade.length_m);
        (low_m..=high_m).contains(&shape.swell_from_toe_m())
    }

    /// A bat with exactly this weight and balance, within the craft and the Laws.
    pub fn make(
        &self,
        label: &str,
        wanted: &Wanted,
        limits: &Limits,
    ) -> Result<MadeBat, NotMakeable> {
        let carving = self.carve(wanted, 0.0).ok_or_else(|| out_of_reach(wanted))?;
        self.judge(&carving, limits)?;
        let shape = self.shape(&carving);
        let bat = shape.bat(label).map_err(|_| out_of_reach(wanted))?;
        let range = [self.furthest(wanted, limits, -1.0), self.furthest(wanted, limits, 1.0)];
        let own = bat.swing_moment_kg_m2();
        let swing_moment_range_kg_m2 =
            [range[0].unwrap_or(own).min(own), range[1].unwrap_or(own).max(own)];
        Ok(MadeBat { bat, shape, swing_moment_range_kg_m2 })
    }

    /// Mass moments of the family's bat with this weight and balance, whether or not it could be made
    /// or used: what to assume of a bat that was only weighed. `ends` from −1 (wood in the middle) to 1
    /// (wood at the ends). `None` where no blade of any thickness gets there.
    pub fn assumed(&self, mass_kg: f64, balance_m: f64, ends: f64) -> Option<MassMoments> {
        self.assumed_shape(mass_kg, balance_m, ends).map(|it| it.mass_moments())
    }

    /// The shape behind [`Self::assumed`].
    pub fn assumed_shape(&self, mass_kg: f64, balance_m: f64, ends: f64) -> Option<BatShape> {
        let wanted = Wanted { mass_kg, balance_m, swell_from_toe_m: None };
        self.carve(&wanted, ends).map(|it| self.shape(&it))
    }

    /// Why a bat of this weight and balance is unlike its size, if it is.
    pub fn objection(&self, wanted: &Wanted, limits: &Limits) -> Option<NotMakeable> {
        match self.carve(wanted, 0.0) {
            None => Some(out_of_reach(wanted)),
            Some(carving) => self.judge(&carving, limits).err(),
        }
    }

    /// Swing moment furthest from the plain one towards `direction` that can still be made: all of the
    /// spread where it can, else as much of it as can (by halving, to 1/64).
    fn furthest(&self, wanted: &Wanted, limits: &Limits, direction: f64) -> Option<f64> {
        let made = |share: f64| {
            self.carve(wanted, direction * share).filter(|it| self.judge(it, limits).is_ok())
        };
        let mut best = made(1.0);
        if best.is_none() {
            let (mut can, mut cannot) = (0.0, 1.0);
            for _ in 0..6 {
                let share = 0.5 * (can + cannot);
                match made(share) {
                    Some(carving) => (can, best) = (share, Some(carving)),
                    None => cannot = share,
                }
            }
        }
        let bat = self.shape(&best?).bat("").ok()?;
        Some(bat.swing_moment_kg_m2())
    }

    /// Turns the reference into the carved shape. Stations slide along the blade without passing each
    /// other and their thickness is multiplied, both smoothly.
    fn shape(&self, carving: &Carving) -> BatShape {
        let mut shape = self.reference.clone();
        shape.blade.density_kg_m3 = carving.density_kg_m3;
        shape.handle.density_kg_m3 = carving.handle_density_kg_m3;
        for station in &mut shape.blade.stations {
            let at = station.from_shoulder + carving.swell_move * slide(station.from_shoulder);
            let factor = along_factor(at, carving.thickness, carving.taper, carving.ends);
            station.from_shoulder = at;
            station.edge_m *= factor;
            station.depth_m *= factor;
        }
        shape
    }

    /// Solves for thickness and taper by Newton's method.
    fn carve(&self, wanted: &Wanted, ends: f64) -> Option<Carving> {
        let ratio = wanted.mass_kg / self.reference_mass_kg;
        if !(ratio.is_finite() && ratio > 0.0) {
            return None;
        }
        let density_kg_m3 =
            self.reference.blade.density_kg_m3 * libm::pow(ratio, self.craft.density_share);
        let asked_move = wanted
            .swell_from_toe_m
            .map(|it| (1.0 - it / self.reference.blade.length_m - self.swell) / slide(self.swell));
        let carving = |thickness: f64, taper: f64| Carving {
            thickness,
            taper,
            swell_move: asked_move.unwrap_or(self.craft.swell_per_taper * taper),
            ends: ends * self.craft.ends_spread,
            density_kg_m3,
            handle_density_kg_m3: self.reference.handle.density_kg_m3
                * (1.0 + ends * self.craft.handle_spread),
        };
        let miss = |thickness: f64, taper: f64| {
            let moments = self.shape(&carving(thickness, taper)).mass_moments();
            (moments.mass_kg - wanted.mass_kg, moments.com_B().x - wanted.balance_m)
        };
        const STEP: f64 = 1e-5;
        let (mut thickness, mut taper) = (libm::pow(ratio, 1.0 - self.craft.density_share), 0.0);
        for _ in 0..20 {
            let (mass, balance) = miss(thickness, taper);
            if mass.abs() < 1e-12 && balance.abs() < 1e-12 {
                return Some(carving(thickness, taper));
            }
            let (mass_t, balance_t) = miss(thickness + STEP, taper);
            let (mass_p, balance_p) = miss(thickness, taper + STEP);
            let (a, b) = ((mass_t - mass) / STEP, (mass_p - mass) / STEP);
            let (c, d) = ((balance_t - balance) / STEP, (balance_p - balance) / STEP);
            let det = a * d - b * c;
            thickness -= (d * mass - b * balance) / det;
            taper -= (a * balance - c * mass) / det;
            // Beyond these the blade has no thickness left somewhere.
            if !(thickness > 0.05 && taper.abs() < 0.95) {
                return None;
            }
        }
        None
    }

    fn judge(&self, carving: &Carving, limits: &Limits) -> Result<(), NotMakeable> {
        let craft = &self.craft;
        let [low_kg_m3, high_kg_m3] = craft.density_kg_m3;
        let needed_kg_m3 = carving.density_kg_m3;
        if !(low_kg_m3..=high_kg_m3).contains(&needed_kg_m3) {
            return Err(NotMakeable::Density { needed_kg_m3, low_kg_m3, high_kg_m3 });
        }
        if carving.taper.abs() > craft.greatest_taper {
            let greatest = craft.greatest_taper;
            return Err(NotMakeable::Balance { taper: carving.taper, greatest });
        }
        if carving.swell_move.abs() > craft.greatest_swell_move {
            let greatest = craft.greatest_swell_move;
            return Err(NotMakeable::Swell { moved: carving.swell_move, greatest });
        }
        let blade = self.shape(carving).blade;
        let depth_m = blade.deepest().map_or(0.0, |it| it.depth_m);
        if depth_m > limits.depth_m {
            return Err(NotMakeable::TooDeep { depth_m, limit_m: limits.depth_m });
        }
        let edge_m = blade.thickest_edge_m();
        if edge_m > limits.edge_m {
            return Err(NotMakeable::EdgesTooThick { edge_m, limit_m: limits.edge_m });
        }
        let edge_m = blade.thinnest_edge_m();
        if edge_m < craft.thinnest_edge_m {
            return Err(NotMakeable::EdgesTooThin { edge_m, limit_m: craft.thinnest_edge_m });
        }
        Ok(())
    }
}

/// Thickness at a place over that of the reference: `thickness` all over, thicker towards the toe by the share
/// `taper` (thinner at the shoulder by as much), thicker at both ends by `ends` (thinner in the middle by half).
pub fn along_factor(from_shoulder: f64, thickness: f64, taper: f64, ends: f64) -> f64 {
    let along = 2.0 * from_shoulder - 1.0;
    thickness * (1.0 + taper * along) * (1.0 + ends * (1.5 * along * along - 0.5))
}

/// How far a station slides with the swell: fully in the middle, not at shoulder and toe, with no
/// corner anywhere.
pub fn slide(from_shoulder: f64) -> f64 {
    let rise = from_shoulder * (1.0 - from_shoulder);
    16.0 * rise * rise
}
