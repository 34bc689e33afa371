//! Which figures can be a card.

use super::order::{self, Order};
use super::{Asked, Card, CardFault, Figure};

/// Lowest and highest of what else stands on a card, SI. Assumptions, wide on purpose.
const POSSIBLE: [(&str, [f64; 2]); 8] = [
    ("age", [1.0, 120.0]),
    ("stature", [0.5, 2.6]),
    ("length", [0.3, 1.2]),
    ("pickup weight", [0.1, 5.0]),
    ("pendulum pivot", [0.0, 0.5]),
    ("number of pendulum swings", [1.0, 1000.0]),
    ("stature to fit again at", [0.5, 2.6]),
    ("number of grips", [0.0, 4.0]),
];

/// The same of the time of all swings of the pendulum, s.
const PENDULUM_TIME_S: [f64; 2] = [0.1, 10_000.0];

fn possible(what: &'static str, value: f64) -> Result<(), CardFault> {
    match POSSIBLE.iter().find(|(it, _)| *it == what) {
        Some((_, limits)) => within(what, value, *limits),
        None => Ok(()),
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
        let positive = [
            ("age", self.player.age_y),
            ("stature", self.player.stature_m),
            ("length", self.length_m),
            ("pickup weight", self.pickup_weight_kg),
            ("pendulum pivot", self.pendulum_pivot_m),
            ("number of pendulum swings", f64::from(self.pendulum_swings)),
            ("stature to fit again at", self.refit_stature_m.unwrap_or(1.0)),
        ];
        for (what, value) in positive {
            if !(value.is_finite() && value > 0.0) {
                return Err(CardFault::NotPositive { what, value });
            }
            possible(what, value)?;
        }
        possible("number of grips", f64::from(self.condition.grips))?;
        if let Some(Order { number, wish }) = &self.order {
            number.as_ref().map(|it| order::number(it)).transpose()?;
            wish.note.as_ref().map(|it| order::note(it)).transpose()?;
            possible("number of grips", f64::from(wish.grips.unwrap_or(0)))?;
        }
        for it in Figure::ALL {
            self.asked(it).check(it.words(), it.possible())?;
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
            if !(value.is_finite() && value > 0.0) {
                return Err(CardFault::NotPositive { what, value });
            }
        }
        if self.takes(target) {
            [target, low, high].into_iter().try_for_each(|it| within(what, it, limits))
        } else {
            Err(CardFault::TargetOutsideTolerance { what, target, low, high })
        }
    }
}
