//! The bow of a blade: its face lies on an arc of a circle over its chord.

/// A circular arc, by chord and sagitta.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bow {
    /// Chord, m: from shoulder to toe.
    pub chord_m: f64,
    /// Sagitta, m: how far the middle of the arc lies behind its chord. 0 is straight.
    pub sagitta_m: f64,
}

impl Bow {
    /// Radius of the circle of chord c and sagitta s, m: R = c²/(8 s) + s/2; endless where it is straight.
    pub fn radius_m(&self) -> f64 {
        let half_m = 0.5 * self.chord_m;
        0.5 * (half_m * half_m / self.sagitta_m + self.sagitta_m)
    }

    /// How far from the middle of the chord, m, towards the toe.
    fn along_m(&self, from_shoulder: f64) -> f64 {
        (2.0 * from_shoulder - 1.0) * (0.5 * self.chord_m)
    }

    /// How far the arc lies behind its chord, m, at a share of the way from shoulder to toe.
    pub fn behind_chord_m(&self, from_shoulder: f64) -> f64 {
        if self.sagitta_m <= 0.0 {
            return 0.0;
        }
        let (radius_m, along_m) = (self.radius_m(), self.along_m(from_shoulder));
        let below_m = libm::sqrt((radius_m * radius_m - along_m * along_m).max(0.0));
        below_m - (radius_m - self.sagitta_m)
    }

    /// Sine and cosine of the slope of the tangent there against the chord: the face comes forward towards the toe
    /// where the sine is above 0. Sine: distance from the middle of the chord over the radius.
    pub fn slope(&self, from_shoulder: f64) -> [f64; 2] {
        if self.sagitta_m <= 0.0 {
            return [0.0, 1.0];
        }
        let sine = (self.along_m(from_shoulder) / self.radius_m()).clamp(-1.0, 1.0);
        [sine, libm::sqrt(1.0 - sine * sine)]
    }
}
