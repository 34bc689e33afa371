//! How torque falls with the speed of shortening and rises when the joint is driven back.

/// Hill's hyperbola for a joint: share of the isometric torque left at a joint speed, as a function of
/// `w` = speed over the speed at which no torque is left (positive while the muscles shorten).
///
/// * shortening: `(1 − w)/(1 + w/κ)`, κ = a/F0;
/// * lengthening, x = −w: `1 + (p − 1)·x/(x + c)`, `c = (p − 1)/(1 + 1/κ)`, so that value and slope
///   are continuous at w = 0;
/// * near and above w = 1 the hyperbola is carried to zero by a parabola that meets it at
///   [`FOOT`](HillCurve::FOOT) with the same value and slope and rests on zero from about w = 1.09:
///   torque never turns negative and the slope never jumps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HillCurve {
    /// κ = a/F0: smaller bends more.
    pub curvature: f64,
    /// p: greatest torque while lengthening, as a share of the isometric.
    pub eccentric_plateau: f64,
}

/// Share of the isometric torque and its slope with respect to `w`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TorqueFactor {
    /// Share of the isometric torque, never negative.
    pub value: f64,
    /// Derivative of the share with respect to `w`, never positive.
    pub slope: f64,
}

impl HillCurve {
    /// The curve the swing uses: κ = 0.5, plateau 1.4.
    ///
    /// Muscle fibres have κ = 0.25 (common in Hill-type models, read second-hand); a whole joint, whose
    /// muscles differ in fibre length and lever, bends less. 0.5 is an assumption: with the speeds in
    /// [`capacity`](super::capacity) it leaves at half the elite athlete's zero-torque speeds the share
    /// that his own table gives (see there). Plateau 1.1–1.4 in torque models (read second-hand).
    pub const JOINT: Self = Self { curvature: 0.5, eccentric_plateau: 1.4 };
    /// The curve of a muscle fibre: κ = 0.25, plateau 1.4.
    pub const FIBRE: Self = Self { curvature: 0.25, eccentric_plateau: 1.4 };
    /// Share of the zero-torque speed above which the parabola replaces the hyperbola.
    pub const FOOT: f64 = 0.9;

    /// Share of the isometric torque at `w`, and its slope.
    pub fn at(self, w: f64) -> TorqueFactor {
        let k = 1.0 / self.curvature;
        if w <= 0.0 {
            let gain = self.eccentric_plateau - 1.0;
            let c = gain / (1.0 + k);
            let x = -w;
            let slope = -gain * c / ((x + c) * (x + c));
            return TorqueFactor { value: 1.0 + gain * x / (x + c), slope };
        }
        let hyperbola = |w: f64| {
            let below = 1.0 + k * w;
            TorqueFactor { value: (1.0 - w) / below, slope: -(1.0 + k) / (below * below) }
        };
        if w <= Self::FOOT {
            return hyperbola(w);
        }
        let start = hyperbola(Self::FOOT);
        let reach = -2.0 * start.value / start.slope;
        let left = 1.0 - (w - Self::FOOT) / reach;
        if left <= 0.0 {
            return TorqueFactor { value: 0.0, slope: 0.0 };
        }
        TorqueFactor { value: start.value * left * left, slope: -2.0 * start.value * left / reach }
    }
}
