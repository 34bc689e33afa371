//! A figure with what moves it, so that doubt shared by two bats cancels in their difference.

use super::difference::Difference;

/// Doubts that all bats of a comparison share.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Common {
    /// The player's strength as a whole, as well as the grip is known.
    Strength,
    /// Trunk against grip: 30 %, no source.
    Trunk,
    /// Both shoulders against grip.
    Shoulders,
    /// Both elbows against grip.
    Elbows,
    /// Both wrists and forearms against grip.
    Wrists,
    /// Masses of trunk and arms.
    BodyMasses,
    /// Restitution of ball on bat.
    Restitution,
    /// Mean speed of the ball from hand to bat.
    Flight,
    /// Grip there is, as well as it was read. A weaker grip goes with weaker arms, which need less of it:
    /// counted apart, so that the doubt comes out rather too large.
    Grip,
    /// Friction of glove on grip, in the grip needed; not in what the bottom hand can hold in a swing.
    Friction,
}

/// Number of [`Common`] doubts.
pub const COMMON_COUNT: usize = 10;

/// Variance about the best value that one doubt brings, from the changes either way: each is as likely.
pub fn variance([weaker, stronger]: [f64; 2]) -> f64 {
    0.5 * (weaker * weaker + stronger * stronger)
}

/// A figure of one bat with what moves it, to first order.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Carried {
    /// Best value.
    pub value: f64,
    /// Change for a kilogram of dead weight, a metre of balance point and a kg m² of swing moment,
    /// the other two held.
    pub by_bat: [f64; 3],
    /// Changes for one standard deviation of each [`Common`] doubt: weaker, heavier, livelier or slower, and
    /// the other way.
    pub by_common: [[f64; 2]; COMMON_COUNT],
    /// Change when the slow fatigue is at the bottom of its band, and when it is at the top.
    pub by_fatigue: [f64; 2],
}

impl Carried {
    /// Variance from weighing the bat, given the covariance of its mass, balance and swing moment.
    fn bench_variance(&self, covariance: &[[f64; 3]; 3]) -> f64 {
        let mut sum = 0.0;
        for (row, a) in covariance.iter().zip(self.by_bat) {
            for (c, b) in row.iter().zip(self.by_bat) {
                sum += a * c * b;
            }
        }
        sum.max(0.0)
    }

    /// Variance from what all bats share. The slow fatigue lies anywhere between the ends of its band,
    /// each as likely: with a and b the changes to the ends, `(a² + ab + b²)/3` about the best value.
    fn common_variance(&self) -> f64 {
        let [a, b] = self.by_fatigue;
        let common: f64 = self.by_common.iter().map(|it| variance(*it)).sum();
        common + (a * a + a * b + b * b) / 3.0
    }

    /// One standard deviation of the figure.
    pub fn sd(&self, covariance: &[[f64; 3]; 3]) -> f64 {
        libm::sqrt(self.bench_variance(covariance) + self.common_variance())
    }

    /// Another bat's figure less this one: weighed apart, so that the benches' errors add (also where
    /// both swing moments are estimated from the size, which errs on the safe side); swung by one
    /// player in one innings, so that what they share is subtracted before it is squared.
    pub fn to(
        &self,
        covariance: &[[f64; 3]; 3],
        second: &Self,
        second_covariance: &[[f64; 3]; 3],
    ) -> Difference {
        let shared = Self {
            by_common: core::array::from_fn(|i| {
                core::array::from_fn(|way| second.by_common[i][way] - self.by_common[i][way])
            }),
            by_fatigue: core::array::from_fn(|i| second.by_fatigue[i] - self.by_fatigue[i]),
            ..Self::default()
        };
        let variance = self.bench_variance(covariance)
            + second.bench_variance(second_covariance)
            + shared.common_variance();
        Difference::new(second.value - self.value, libm::sqrt(variance))
    }
}
