//! Which figures can be a card.

use super::order::{self, MOST_GRIPS, Order};
use super::{Asked, Card, CardFault, Figure};

/// Lowest and highest time of all swings of the pendulum, s. Assumption, wide on purpose.
const PENDULUM_TIME_S: [f64; 2] = [0.1, 10_000.0];

fn positive(what: &'static str, value: f64) -> Result<(), CardFault> {
    match value.is_finite() && value > 0.0 {
        true => Ok(()),
        false => Err(CardFault::NotPositive { what, value }),
    }
}

fn within(what: &'static str, value: f64, [low, high]: [f64; 2]) -> Result<(), CardFault> {
    match (low..=high).contains(&value) {
        true => Ok(()),
        false => Err(CardFault::Impossible { what, value, low, high }),
    }
}

impl Card {
    /// The card, if its figures can belong to a bat.
    pub fn checked(self) -> Result<Self, CardFault> {
        // Lowest and highest, SI: assumptions, wide on purpose.
        let numbers = [
            ("age", self.player.age_y, [1.0, 120.0]),
            ("stature", self.player.stature_m, [0.5, 2.6]),
            ("length", self.length_m, [0.3, 1.2]),
            ("pickup weight", self.pickup_weight_kg, [0.1, 5.0]),
            ("pendulum pivot", self.pendulum_pivot_m, [0.0, 0.5]),
            ("number of pendulum swings", f64::from(self.pendulum_swings), [1.0, 1000.0]),
            ("stature to fit again at", self.refit_stature_m.unwrap_or(1.0), [0.5, 2.6]),
        ];
        for (what, value, limits) in numbers {
            positive(what, value)?;
            within(what, value, limits)?;
        }
        let possible_grips =
            |it: u32| within("number of grips", f64::from(it), [0.0, f64::from(MOST_GRIPS)]);
        possible_grips(self.condition.grips)?;
        if let Some(Order { number, wish }) = &self.order {
            number.as_ref().map(|it| order::number(it)).transpose()?;
            wish.note.as_ref().map(|it| order::note(it)).transpose()?;
            possible_grips(wish.grips.unwrap_or(0))?;
        }
        for it in Figure::ALL {
            self.asked(it).check(it.words(), it.about().possible)?;
        }
        self.pendulum_time_s.check("pendulum time", PENDULUM_TIME_S)?;
        let stations = [
            ("balance point", self.balance_m()),
            ("sweet spot", self.asked(Figure::SweetSpot).target),
            ("pendulum pivot", self.pendulum_pivot_m),
        ];
        for (what, station_m) in stations {
            if station_m >= self.length_m {
                return Err(CardFault::OffTheBat { what, station_m, length_m: self.length_m });
            }
        }
        Ok(self)
    }
}

impl Asked {
    fn check(self, what: &'static str, limits: [f64; 2]) -> Result<(), CardFault> {
        let Self { target, tolerance: [low, high] } = self;
        for value in [target, low, high] {
            positive(what, value)?;
        }
        if self.takes(target) {
            [target, low, high].into_iter().try_for_each(|it| within(what, it, limits))
        } else {
            Err(CardFault::TargetOutsideTolerance { what, target, low, high })
        }
    }
}
