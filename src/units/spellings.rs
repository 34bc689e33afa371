//! The units there are: their spellings and their sizes.

/// What a figure measures, and so which units it may carry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// Dead weight, body mass, kg.
    Mass,
    /// Lengths and stations, m.
    Length,
    /// Grip, N; `kg` and `lb` mean the weight of that mass, as dynamometers show it.
    Force,
    /// Ball and bat speed, m/s.
    Speed,
    /// Times, s.
    Time,
    /// Angles, rad.
    Angle,
    /// Density of wood, cane and rubber, kg/m³.
    Density,
}

/// One accepted unit: its spellings and its size in SI.
pub(super) struct Unit {
    pub(super) spellings: &'static [&'static str],
    pub(super) in_si: f64,
}

const fn unit(spellings: &'static [&'static str], in_si: f64) -> Unit {
    Unit { spellings, in_si }
}

/// Avoirdupois pound, kg, exact. Source: international yard and pound agreement, 1959.
pub const POUND_KG: f64 = 0.453_592_37;
/// Inch, m, exact. Source: as the pound.
pub const INCH_M: f64 = 0.0254;
/// Weight of one kilogram in standard gravity, N, exact.
pub const KILOGRAM_FORCE_N: f64 = crate::frames::STANDARD_GRAVITY_M_S2;
/// Mile per hour, m/s, exact.
pub const MILE_PER_HOUR_M_S: f64 = 0.447_04;

const MASS: &[Unit] = &[
    unit(&["kg", "kgs", "kilogram", "kilograms", "kilo", "kilos"], 1.0),
    unit(&["lb", "lbs", "pound", "pounds"], POUND_KG),
    unit(&["oz", "ounce", "ounces"], POUND_KG / 16.0),
    unit(&["g", "gram", "grams", "gramme", "grammes"], 1e-3),
];
const LENGTH: &[Unit] = &[
    unit(&["m", "metre", "metres", "meter", "meters"], 1.0),
    unit(&["yd", "yard", "yards"], 36.0 * INCH_M),
    unit(&["ft", "foot", "feet", "'", "′"], 12.0 * INCH_M),
    unit(&["in", "inch", "inches", "\"", "″"], INCH_M),
    unit(&["cm", "centimetre", "centimetres"], 1e-2),
    unit(&["mm", "millimetre", "millimetres"], 1e-3),
];
const FORCE: &[Unit] = &[
    unit(&["kg", "kgf", "kilo", "kilos", "kp"], KILOGRAM_FORCE_N),
    unit(&["lb", "lbs", "lbf"], POUND_KG * KILOGRAM_FORCE_N),
    unit(&["n", "newton", "newtons"], 1.0),
];
const SPEED: &[Unit] = &[
    unit(&["m/s", "metres per second"], 1.0),
    unit(&["mph", "miles per hour", "mi/h"], MILE_PER_HOUR_M_S),
    unit(&["km/h", "kmh", "kph", "kmph", "kilometres per hour"], 1.0 / 3.6),
];
const TIME: &[Unit] = &[
    unit(&["h", "hour", "hours"], 3600.0),
    unit(&["min", "minute", "minutes"], 60.0),
    unit(&["s", "sec", "secs", "second", "seconds"], 1.0),
    unit(&["ms", "millisecond", "milliseconds"], 1e-3),
];
const DENSITY: &[Unit] = &[
    unit(&["kg/m³", "kg/m3", "kg/m^3"], 1.0),
    unit(&["lb/ft³", "lb/ft3", "lb/ft^3"], POUND_KG / (1728.0 * INCH_M * INCH_M * INCH_M)),
    unit(&["g/cm³", "g/cm3", "g/cm^3"], 1e3),
];
const ANGLE: &[Unit] = &[
    unit(&["rad", "radian", "radians"], 1.0),
    unit(&["deg", "degree", "degrees", "°"], std::f64::consts::PI / 180.0),
];

impl Quantity {
    pub(super) const ALL: [Self; 7] = [
        Self::Mass,
        Self::Length,
        Self::Force,
        Self::Speed,
        Self::Time,
        Self::Angle,
        Self::Density,
    ];

    pub(super) fn units(self) -> &'static [Unit] {
        match self {
            Self::Mass => MASS,
            Self::Length => LENGTH,
            Self::Force => FORCE,
            Self::Speed => SPEED,
            Self::Time => TIME,
            Self::Angle => ANGLE,
            Self::Density => DENSITY,
        }
    }

    /// With its article, in plain words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Mass => "a weight",
            Self::Length => "a length",
            Self::Force => "a grip force",
            Self::Speed => "a speed",
            Self::Time => "a time",
            Self::Angle => "an angle",
            Self::Density => "a density",
        }
    }

    /// Spellings to offer when one is not understood.
    pub fn accepted(self) -> &'static str {
        match self {
            Self::Mass => r#""2 lb 9 oz", "2 lb 9.5 oz", "41 oz", "1.16 kg" or "1160 g""#,
            Self::Length => r#""33.5 in", "33 1/2 in", "5 ft 3 in", "540 mm", "54 cm" or "1.75 m""#,
            Self::Force => r#""24 kg", "24 kgf", "53 lb" or "235 N""#,
            Self::Speed => r#""90 km/h", "56 mph" or "25 m/s""#,
            Self::Time => r#""15.3 s", "200 ms" or "1 min 10 s""#,
            Self::Angle => r#""5 deg" or "0.09 rad""#,
            Self::Density => r#""440 kg/m³" or "27 lb/ft³""#,
        }
    }

    pub(super) fn unit(self, spelling: &str) -> Option<&'static Unit> {
        self.units().iter().find(|it| it.spellings.contains(&spelling))
    }
}
