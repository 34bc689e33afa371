//! A bat as a beam: bending stiffness and mass along it, for a blow on the face.

use super::beam::{BeamSection, Mode, Tip, free_modes};
use super::blade::Blade;
use super::lofted_solid::Section;
use super::shape::BatShape;

/// Stiffness along the grain, Pa.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moduli {
    /// Willow.
    pub willow_pa: f64,
    /// Cane with its rubber strips.
    pub cane_pa: f64,
}

/// Elements of a handle and of a blade.
const ELEMENTS: [usize; 2] = [12, 30];

impl BatShape {
    /// The bat as a beam, at a place from the top of the handle.
    pub fn beam_section(&self, from_top_m: f64, moduli: Moduli) -> BeamSection {
        let handle = &self.handle;
        if from_top_m < handle.length_m {
            let [half_y_m, half_z_m] = handle.half_axes_m(from_top_m);
            let cane = Section::ellipse(1.0, half_y_m, half_z_m);
            let cover_m = |thickness_m: f64| {
                Section::ellipse(1.0, half_y_m + thickness_m, half_z_m + thickness_m).mass
            };
            let twine_m2 = cover_m(handle.twine_m) - cane.mass;
            let gripped = from_top_m < handle.grip_length_m;
            let grip_m2 =
                if gripped { cover_m(handle.cover_m()) - cover_m(handle.twine_m) } else { 0.0 };
            return BeamSection {
                EI_n_m2: moduli.cane_pa * cane.zz,
                mass_kg_m: handle.density_kg_m3 * cane.mass
                    + handle.twine_kg_m3 * twine_m2
                    + handle.grip_kg_m3 * grip_m2,
            };
        }
        let blade = &self.blade;
        let from_shoulder_m = from_top_m - handle.length_m;
        let Some(station) = blade.at(from_shoulder_m / blade.length_m) else {
            return BeamSection { EI_n_m2: 0.0, mass_kg_m: 0.0 };
        };
        let whole = station.section(1.0, blade.face_at_m(station.from_shoulder));
        let splice = match from_shoulder_m < handle.splice_m {
            true => {
                // No wider than the blade: at the shoulder both are rounded off.
                let [half_y_m, half_z_m] = handle.splice_half_m(from_shoulder_m / handle.splice_m);
                let (most_y_m, most_z_m) = (0.5 * station.width_m, 0.5 * station.depth_m);
                Section::ellipse(1.0, half_y_m.min(most_y_m), half_z_m.min(most_z_m))
            }
            false => Section::default(),
        };
        let willow = whole.without(splice);
        // About the axis that carries no force: each wood counts by its stiffness.
        let sum =
            |of: fn(&Section) -> f64| moduli.willow_pa * of(&willow) + moduli.cane_pa * of(&splice);
        let (EA, ES) = (sum(|it| it.mass), sum(|it| it.z));
        BeamSection {
            // Where the wedge comes out of a thin blade it carries alone.
            EI_n_m2: (sum(|it| it.zz) - ES * ES / EA).max(moduli.cane_pa * splice.zz),
            mass_kg_m: blade.density_kg_m3 * willow.mass.max(0.0)
                + handle.density_kg_m3 * splice.mass
                + blade.face_cover_kg_m2 * station.width_m,
        }
    }

    /// Lowest free bending modes, places from the top of the handle.
    pub fn bending_modes(&self, moduli: Moduli, count: usize) -> Vec<Mode> {
        let [handle, blade] = ELEMENTS;
        let (shoulder_m, length_m) = (self.handle.length_m, self.length_m());
        let even = |from_m: f64, to_m: f64, elements: usize| {
            (0..elements).map(move |n| from_m + (to_m - from_m) * n as f64 / elements as f64)
        };
        let at_m: Vec<f64> = even(0.0, shoulder_m, handle)
            .chain(even(shoulder_m, length_m, blade))
            .chain([length_m])
            .collect();
        free_modes(&at_m, &|x| self.beam_section(x, moduli), self.toe_guard(), count)
    }

    /// The toe guard as it sits on the end of the beam: it weighs, and does not stiffen.
    fn toe_guard(&self) -> Tip {
        let Blade { toe_guard_m, toe_guard_kg_m3, face_m, .. } = self.blade;
        let toe = self.blade.stations.last();
        let kg_m = toe.map_or(0.0, |it| it.section(toe_guard_kg_m3, face_m).mass);
        Tip { mass_kg: kg_m * toe_guard_m, length_m: toe_guard_m }
    }
}
