//! The air a bat lies in.

use crate::bat::moisture::equilibrium_moisture;

/// Lowest and highest temperature, °C: the range of the Wood Handbook's table.
pub const CELSIUS: [f64; 2] = [-1.0, 55.0];
/// Lowest and highest relative humidity: the range of the same table. Above it water condenses in the wood,
/// which the equation does not know.
pub const HUMIDITY: [f64; 2] = [0.05, 0.95];

/// Air in which a bat has lain until it neither gains nor loses weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    celsius: f64,
    relative_humidity: f64,
}

/// Why the equation says nothing about an air.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum AirFault {
    /// Colder or warmer than the table.
    #[error(
        "{celsius} °C is outside {} to {} °C, where the water in wood is known", CELSIUS[0], CELSIUS[1]
    )]
    Temperature {
        /// What was given.
        celsius: f64,
    },
    /// Drier or damper than the table.
    #[error(
        "{:.0} % is outside 5 to 95 % humidity, where the water in wood is known", 100.0 * .relative_humidity
    )]
    Humidity {
        /// What was given, as a share.
        relative_humidity: f64,
    },
}

impl Air {
    /// Air of this temperature and relative humidity (0 to 1).
    pub fn new(celsius: f64, relative_humidity: f64) -> Result<Self, AirFault> {
        if !(CELSIUS[0]..=CELSIUS[1]).contains(&celsius) {
            return Err(AirFault::Temperature { celsius });
        }
        if !(HUMIDITY[0]..=HUMIDITY[1]).contains(&relative_humidity) {
            return Err(AirFault::Humidity { relative_humidity });
        }
        Ok(Self { celsius, relative_humidity })
    }

    /// Temperature, °C.
    pub fn celsius(self) -> f64 {
        self.celsius
    }

    /// Relative humidity, 0 to 1.
    pub fn relative_humidity(self) -> f64 {
        self.relative_humidity
    }

    /// Water in wood that has lain long in it, kg for each kg of dry wood.
    pub fn moisture(self) -> f64 {
        equilibrium_moisture(self.celsius, self.relative_humidity)
    }

    /// The same temperature, damper by this share of humidity, as far as the range goes.
    pub fn damper(self, by: f64) -> Self {
        let relative_humidity = (self.relative_humidity + by).clamp(HUMIDITY[0], HUMIDITY[1]);
        Self { relative_humidity, ..self }
    }
}
