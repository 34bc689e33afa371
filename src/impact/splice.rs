//! How stiff the handle is: one sprung hinge at the shoulder in place of a cane that bends along its length.

use crate::bat::handle::Handle;
use crate::bat::lofted_solid::GAUSS_4;
use crate::bat::willow::{CANE_MODULUS_PA, CANE_MODULUS_RANGE_PA};
use crate::impact::parts::Parts;

/// Modulus of cane along the grain, Pa: least, middle, greatest.
pub const CANE_PA: [f64; 3] =
    [CANE_MODULUS_RANGE_PA[0], CANE_MODULUS_PA.value, CANE_MODULUS_RANGE_PA[1]];
/// Shear modulus of the rubber in the strips, Pa: about that of soft natural rubber (from memory, medium).
pub const RUBBER_SHEAR_PA: f64 = 0.7e6;
/// Thickness of a strip, m: common practice, no source.
pub const STRIP_M: f64 = 1.5e-3;
/// Damping of the bending, share of critical: assumption, no source.
pub const DAMPING_SHARE: f64 = 0.05;

/// What the handle is made of: three canes one behind the other, with two strips of rubber between them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cane {
    /// Modulus along the grain, Pa.
    pub modulus_pa: f64,
    /// Shear modulus of the strips, Pa.
    pub rubber_shear_pa: f64,
    /// Thickness of a strip, m.
    pub strip_m: f64,
}

impl Cane {
    /// Of this modulus, else as assumed.
    pub fn of(modulus_pa: f64) -> Self {
        Self { modulus_pa, rubber_shear_pa: RUBBER_SHEAR_PA, strip_m: STRIP_M }
    }

    /// Bending stiffness of an elliptical section across y, N m², with half-axes across and through, on a
    /// cantilever of `length_m`.
    ///
    /// The canes take all the pull; the strips only shear, and so keep the outer canes from sliding on the
    /// middle one in part: `EI = E (ΣI + γ Σ A a²)`, `γ = 1/(1 + π² E A/(K l²))` with `K = G b/t`, l twice the
    /// cantilever. Source: layers with yielding joints, EN 1995-1-1 annex B (from memory, high). With γ = 1
    /// it is the solid section, with γ = 0 three loose canes. The section counts as if the strips had no
    /// thickness, and as if they ran the whole length.
    pub fn bending_n_m2(&self, [half_y_m, half_z_m]: [f64; 2], length_m: f64) -> f64 {
        let cut_m = half_z_m / 3.0;
        let outer = Layer::beyond(cut_m, half_y_m, half_z_m);
        let whole_m4 = std::f64::consts::FRAC_PI_4 * half_y_m * half_z_m * half_z_m * half_z_m;
        let middle_m4 = whole_m4 - 2.0 * outer.second_m4;
        let arm_m = outer.first_m3 / outer.area_m2;
        let steiner_m4 = outer.area_m2 * arm_m * arm_m;
        let own_m4 = outer.second_m4 - steiner_m4;
        // Width of the strip where it lies between two canes.
        let width_m = 2.0 * half_y_m * (1.0 - cut_m * cut_m / (half_z_m * half_z_m)).sqrt();
        let joint_pa = self.rubber_shear_pa * width_m / self.strip_m;
        let slip = std::f64::consts::PI * std::f64::consts::PI * self.modulus_pa * outer.area_m2
            / (joint_pa * 4.0 * length_m * length_m);
        let together = 1.0 / (1.0 + slip);
        self.modulus_pa * (middle_m4 + 2.0 * (own_m4 + together * steiner_m4))
    }

    /// Stiffness of the hinge at the shoulder, N m/rad, that turns as far as the end of the handle bends.
    ///
    /// Load case: the blade stops and the handle swings on about the shoulder, so that its own mass loads it,
    /// evenly made, in proportion to the distance from the shoulder. With the moment
    /// `M(x) ∝ 2L³ − 3L²x + x³` the end moves by `δ = ∫ M (L − x)/EI dx`, and the hinge has `k = M(0) L/δ`: for
    /// an even handle 40/11 EI/L. Source: beam theory of Euler & Bernoulli, any text.
    pub fn hinge_n_m(&self, handle: &Handle) -> f64 {
        let length_m = handle.length_m;
        let moment = |x: f64| length_m * length_m * (2.0 * length_m - 3.0 * x) + x * x * x;
        let pieces = 16;
        let piece_m = length_m / f64::from(pieces);
        let mut moved = 0.0;
        for piece in 0..pieces {
            for (t, weight) in GAUSS_4 {
                let x = (f64::from(piece) + t) * piece_m;
                let stiff = self.bending_n_m2(handle.half_axes_m(length_m - x), length_m);
                moved += weight * piece_m * moment(x) * (length_m - x) / stiff;
            }
        }
        moment(0.0) * length_m / moved
    }
}

/// Area and moments of the part of an ellipse beyond a line, about the ellipse's middle.
struct Layer {
    area_m2: f64,
    first_m3: f64,
    second_m4: f64,
}

impl Layer {
    /// The segment with z above `cut_m`, in closed form.
    fn beyond(cut_m: f64, half_y_m: f64, half_z_m: f64) -> Self {
        let (c, b) = (cut_m, half_z_m);
        let (root, angle) = ((b * b - c * c).sqrt(), libm::acos(c / b));
        let wide = half_y_m / b;
        Self {
            area_m2: wide * (b * b * angle - c * root),
            first_m3: wide * 2.0 / 3.0 * root * root * root,
            second_m4: 0.25 * wide * (b * b * b * b * angle - c * (2.0 * c * c - b * b) * root),
        }
    }
}

/// The hinge at the shoulder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hinge {
    /// Stiffness, N m/rad.
    pub stiffness_n_m: f64,
    /// Damping, N m s/rad.
    pub damping_n_m_s: f64,
}

impl Hinge {
    /// A hinge of this stiffness that loses the assumed share of critical damping when the bat bends freely.
    pub fn of(stiffness_n_m: f64, parts: &Parts) -> Self {
        let damping_n_m_s = 2.0 * DAMPING_SHARE * (stiffness_n_m * parts.bending_kg_m2()).sqrt();
        Self { stiffness_n_m, damping_n_m_s }
    }
}
