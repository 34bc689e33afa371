//! The tap-timer of the pendulum: a tap each time the bat comes back.

/// Taps so far, s of any clock.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Taps {
    times_s: Vec<f64>,
}

/// Two taps nearer than this are one finger that bounced, s.
const BOUNCE_S: f64 = 0.2;

impl Taps {
    /// One more; a bounce, or a clock that went back, is not counted.
    pub fn tap(&mut self, at_s: f64) {
        let after = |last: &f64| at_s - last > BOUNCE_S;
        if at_s.is_finite() && self.times_s.last().is_none_or(after) {
            self.times_s.push(at_s);
        }
    }

    /// Forgets all.
    pub fn clear(&mut self) {
        self.times_s.clear();
    }

    /// Whether the first tap is still to come.
    pub fn is_empty(&self) -> bool {
        self.times_s.is_empty()
    }

    /// Full swings timed.
    pub fn swings(&self) -> usize {
        self.times_s.len().saturating_sub(1)
    }

    /// From the first tap to the last, s.
    pub fn time_s(&self) -> f64 {
        match (self.times_s.first(), self.times_s.last()) {
            (Some(first), Some(last)) => last - first,
            _ => 0.0,
        }
    }

    /// Time of each swing, s.
    pub fn each_s(&self) -> Vec<f64> {
        self.times_s.windows(2).filter_map(|it| Some(it.get(1)? - it.first()?)).collect()
    }
}
