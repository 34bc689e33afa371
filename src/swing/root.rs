//! The root of a falling function of one variable, in as few evaluations as can be.
//!
//! Inverse quadratic interpolation through the last three points, the secant through two, a usual
//! steepness from one; kept inside the bracket once there is one, by halving where it would leave it.

/// Steepness taken for the first step: between those of the strokes, 4 to 30.
const USUAL_STEEPNESS: f64 = 12.0;
/// Longest step without a bracket.
const LONGEST: f64 = 0.08;
/// Step below which the root counts as found. Tight, so that where the search started leaves no trace
/// in the result.
const CONVERGED: f64 = 1e-8;
/// Value that counts as nought.
const SMALL: f64 = 1e-8;
/// Evaluations after which every second step is a halving.
const SLOW: usize = 12;

/// What is known of the function so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Root {
    /// The last three points, the newest last.
    points: Vec<[f64; 2]>,
    /// Greatest place with the value above nought.
    below: Option<f64>,
    /// Least place with the value at or under nought.
    above: Option<f64>,
    seen: usize,
}

impl Root {
    /// Takes note of the value at a place.
    pub fn saw(&mut self, x: f64, value: f64) {
        if self.points.len() == 3 {
            self.points.remove(0);
        }
        self.points.push([x, value]);
        self.seen += 1;
        if value > 0.0 {
            self.below = Some(self.below.map_or(x, |it| it.max(x)));
        } else {
            self.above = Some(self.above.map_or(x, |it| it.min(x)));
        }
    }

    /// Whether the root lies between two places seen.
    pub fn is_bracketed(&self) -> bool {
        self.below.is_some() && self.above.is_some()
    }

    /// Where to look next; nothing when the last place was the root, as nearly as it is asked for.
    pub fn next(&self) -> Option<f64> {
        let &[x, value] = self.points.last()?;
        if value.abs() < SMALL {
            return None;
        }
        let step = self.step();
        let (Some(below), Some(above)) = (self.below, self.above) else {
            return Some(x + step.clamp(-LONGEST, LONGEST));
        };
        if (above - below).abs() < CONVERGED || step.abs() < CONVERGED {
            return None;
        }
        let next = x + step;
        let (low, high) = (below.min(above), below.max(above));
        let halve = self.seen > SLOW && self.seen.is_multiple_of(2);
        Some(if next > low && next < high && !halve { next } else { 0.5 * (low + high) })
    }

    /// The step that the shape of the function asks for.
    fn step(&self) -> f64 {
        let usual = |value: f64| value / USUAL_STEEPNESS;
        match self.points[..] {
            [[a, fa], [b, fb], [c, fc]] => {
                let falls = |p: f64, q: f64, fp: f64, fq: f64| (fq - fp) / (q - p) < 0.0;
                if falls(a, b, fa, fb) && falls(b, c, fb, fc) && falls(a, c, fa, fc) {
                    let inverse = fa * fb / ((fc - fa) * (fc - fb)) * c
                        + fa * fc / ((fb - fa) * (fb - fc)) * b
                        + fb * fc / ((fa - fb) * (fa - fc)) * a;
                    return inverse - c;
                }
                secant([b, fb], [c, fc]).unwrap_or(usual(fc))
            }
            [from, to] => secant(from, to).unwrap_or(usual(to[1])),
            [[_, value]] => usual(value),
            _ => 0.0,
        }
    }
}

/// Step from the second point to the root of the line through both, where that line falls.
fn secant([a, fa]: [f64; 2], [b, fb]: [f64; 2]) -> Option<f64> {
    let slope = (fb - fa) / (b - a);
    (slope < 0.0).then(|| -fb / slope)
}
