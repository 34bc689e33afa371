//! The bat in two rigid parts, handle and blade, parted at the shoulder.

use crate::bat::bow::Bow;
use crate::bat::lofted_solid::MassMoments;
use crate::bat::parallel_axis::tensor_about_point;
use crate::bat::shape::BatShape;
use crate::frames::{DMat3, DVec3};
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;

/// One rigid part of the bat, in B.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// Mass, kg.
    pub mass_kg: f64,
    /// Centre of mass from the top of the handle, m.
    pub com_B: DVec3,
    /// Tensor of inertia about the centre of mass, kg m².
    pub I_Com_B: DMat3,
}

impl From<&MassMoments> for Part {
    fn from(moments: &MassMoments) -> Self {
        Self { mass_kg: moments.mass_kg, com_B: moments.com_B(), I_Com_B: moments.I_Com_B() }
    }
}

/// Handle and blade with the place of the hinge and the face that is hit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parts {
    /// Handle down to the shoulder.
    pub handle: Part,
    /// Blade, with the splice in it.
    pub blade: Part,
    /// The shoulder, where the two are joined, m from the top of the handle.
    pub shoulder_m: f64,
    /// The toe, m from the top of the handle.
    pub toe_m: f64,
    /// Half the greatest width of the face, m.
    pub half_width_m: f64,
    /// Height of the face over the axis of the handle at shoulder and toe, m.
    pub face_m: f64,
    /// How far the middle of the face lies behind these, m: sagitta of its arc.
    pub bow_m: f64,
}

/// One thing that is wrong about a bat's weight, and how much of each figure hangs on it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct BatError {
    /// Dead weight, kg.
    pub mass_kg: f64,
    /// Balance point, m.
    pub balance_m: f64,
    /// Swing moment, kg m².
    pub swing_moment_kg_m2: f64,
}

impl Parts {
    /// The parts of a shape. The face is taken as flat across; along, it is the arc of its bow.
    pub fn of(shape: &BatShape) -> Self {
        let (mut handle, mut blade) = (MassMoments::default(), MassMoments::default());
        shape.handle.add_down_to_shoulder(&mut handle);
        shape.handle.add_splice(&mut blade, shape.blade.density_kg_m3);
        shape.blade.add_to(&mut blade, shape.handle.length_m);
        Self {
            handle: Part::from(&handle),
            blade: Part::from(&blade),
            shoulder_m: shape.handle.length_m,
            toe_m: shape.length_m(),
            half_width_m: 0.5 * shape.blade.width_m(),
            face_m: shape.blade.face_m,
            bow_m: shape.blade.bow_m.max(0.0),
        }
    }

    /// The arc of the face along the blade.
    pub fn bow(&self) -> Bow {
        Bow { chord_m: self.toe_m - self.shoulder_m, sagitta_m: self.bow_m }
    }

    /// Share of the way from shoulder to toe.
    pub fn from_shoulder(&self, from_top_m: f64) -> f64 {
        (from_top_m - self.shoulder_m) / (self.toe_m - self.shoulder_m)
    }

    /// How far a body resists bending at the shoulder, kg m²: the bat free in space bends with
    /// `ω² = k/I`, `I = (I_H I_B − c²)/(I_H + I_B + 2c)` with `I_H = I₁ + μa²`, `I_B = I₂ + μb²`, `c = μab`,
    /// `μ = m₁m₂/(m₁+m₂)`, a and b from the shoulder to the two centres. Source: two bodies and a spring in
    /// closed form, any text on vibrations.
    pub fn bending_kg_m2(&self) -> f64 {
        let (h, b) = (&self.handle, &self.blade);
        let reduced = h.mass_kg * b.mass_kg / (h.mass_kg + b.mass_kg);
        let (to_h, to_b) = (self.shoulder_m - h.com_B.x, b.com_B.x - self.shoulder_m);
        let handle = h.I_Com_B.y_axis.y + reduced * to_h * to_h;
        let blade = b.I_Com_B.y_axis.y + reduced * to_b * to_b;
        let both = reduced * to_h * to_b;
        (handle * blade - both * both) / (handle + blade + 2.0 * both)
    }

    /// Dead weight, kg.
    fn mass_kg(&self) -> f64 {
        self.handle.mass_kg + self.blade.mass_kg
    }

    /// Swing moment, kg m²: transverse axis (along y of B) through the pickup axis.
    pub fn swing_moment_kg_m2(&self) -> f64 {
        let axis = DVec3::X * PICKUP_AXIS_FROM_TOP_M;
        let of = |it: &Part| tensor_about_point(it.I_Com_B, it.mass_kg, it.com_B - axis).y_axis.y;
        of(&self.handle) + of(&self.blade)
    }

    /// The parts of a bat that is so many times the error heavier, nearer the toe in balance, harder to swing:
    /// both parts gain weight alike, the blade's centre moves, and the blade's own moment takes the rest.
    pub fn off_by(&self, times: f64, error: &BatError) -> Self {
        let mut it = *self;
        let heavier = 1.0 + times * error.mass_kg / self.mass_kg();
        for part in [&mut it.handle, &mut it.blade] {
            part.mass_kg *= heavier;
            part.I_Com_B *= heavier;
        }
        it.blade.com_B.x += times * error.balance_m * it.mass_kg() / it.blade.mass_kg;
        let wanted = self.swing_moment_kg_m2() + times * error.swing_moment_kg_m2;
        let rest = wanted - it.swing_moment_kg_m2();
        it.blade.I_Com_B += DMat3::from_diagonal(DVec3::new(0.0, rest, rest));
        it
    }
}
