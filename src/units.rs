//! Trade units to SI and back, at the edges only: what people write, and what they read.

mod print;

pub use print::{Units, decimals, spoken};

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
}

/// One accepted unit: its spellings and its size in SI.
struct Unit {
    spellings: &'static [&'static str],
    in_si: f64,
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
const ANGLE: &[Unit] = &[
    unit(&["rad", "radian", "radians"], 1.0),
    unit(&["deg", "degree", "degrees", "°"], std::f64::consts::PI / 180.0),
];

impl Quantity {
    const ALL: [Self; 6] =
        [Self::Mass, Self::Length, Self::Force, Self::Speed, Self::Time, Self::Angle];

    fn units(self) -> &'static [Unit] {
        match self {
            Self::Mass => MASS,
            Self::Length => LENGTH,
            Self::Force => FORCE,
            Self::Speed => SPEED,
            Self::Time => TIME,
            Self::Angle => ANGLE,
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
        }
    }

    fn unit(self, spelling: &str) -> Option<&'static Unit> {
        self.units().iter().find(|it| it.spellings.contains(&spelling))
    }
}

/// Why a text is not a quantity. Each says what is accepted instead.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum UnitFault {
    /// Nothing was written.
    #[error("nothing is written here")]
    Empty,
    /// A number without its unit.
    #[error("{number} has no unit")]
    NoUnit {
        /// The number as it was written.
        number: String,
    },
    /// A text that does not start with a number.
    #[error("{found:?} is not a number")]
    NotANumber {
        /// The text at the place where a number was expected.
        found: String,
    },
    /// A number with a decimal comma.
    #[error("{found:?} has a comma")]
    DecimalComma {
        /// The number as it was written.
        found: String,
    },
    /// A unit of another quantity.
    #[error("{unit:?} measures {measures}, not {wanted}")]
    OtherQuantity {
        /// The unit as it was written.
        unit: String,
        /// What it measures.
        measures: &'static str,
        /// What was wanted.
        wanted: &'static str,
    },
    /// A unit that nobody knows.
    #[error("{unit:?} is not a unit of {}", wanted.trim_start_matches("an ").trim_start_matches("a "))]
    UnknownUnit {
        /// The unit as it was written.
        unit: String,
        /// What was wanted.
        wanted: &'static str,
        /// The accepted unit nearest to it in spelling.
        nearest: Option<&'static str>,
    },
    /// Parts that do not run from the larger unit to the smaller.
    #[error("{second:?} after {first:?}: parts run from the larger unit to the smaller")]
    Order {
        /// Unit of the part before.
        first: String,
        /// Unit of the part after.
        second: String,
    },
}

impl UnitFault {
    /// What to write instead, as a sentence without its full stop.
    pub fn mend(&self, quantity: Quantity) -> String {
        let accepted = quantity.accepted();
        match self {
            Self::DecimalComma { .. } => {
                format!("write decimals with a point, like {accepted}")
            }
            Self::UnknownUnit { nearest: Some(near), .. } => {
                format!("did you mean {near:?}? Accepted: {accepted}")
            }
            _ => format!("write it with its unit, like {accepted}"),
        }
    }
}

/// Reads a quantity as people write it, into SI: `"2 lb 9.5 oz"` → 1.1765 (kg).
///
/// Parts run from the larger unit to the smaller; a number may be whole, decimal or with a vulgar
/// fraction ("33 1/2 in", "33½ in"). The sign is kept; whether it makes sense is for the caller.
pub fn parse(quantity: Quantity, text: &str) -> Result<f64, UnitFault> {
    let mut rest = text.trim();
    if rest.is_empty() {
        return Err(UnitFault::Empty);
    }
    let negative = rest.starts_with(['-', '−']);
    rest = rest.trim_start_matches(['-', '−', '+']).trim_start();
    let mut sum = 0.0;
    let mut before: Option<(&str, f64)> = None;
    while !rest.is_empty() {
        let (number, after_number) = take_number(rest)?;
        let (spelling, after_unit) = take_unit(after_number);
        if spelling.is_empty() {
            return Err(UnitFault::NoUnit { number: text.trim().to_owned() });
        }
        let unit = known_unit(quantity, spelling)?;
        if let Some((first, size)) = before
            && size <= unit.in_si
        {
            return Err(UnitFault::Order { first: first.to_owned(), second: spelling.to_owned() });
        }
        sum += number * unit.in_si;
        before = Some((spelling, unit.in_si));
        rest = after_unit.trim_start();
    }
    if !sum.is_finite() {
        return Err(UnitFault::NotANumber { found: text.trim().to_owned() });
    }
    Ok(if negative { -sum } else { sum })
}

fn known_unit(quantity: Quantity, spelling: &str) -> Result<&'static Unit, UnitFault> {
    let lower = spelling.to_lowercase();
    let spelt = lower.trim_end_matches('.');
    if let Some(unit) = quantity.unit(spelt) {
        return Ok(unit);
    }
    if let Some(other) = Quantity::ALL.into_iter().find(|it| it.unit(spelt).is_some()) {
        return Err(UnitFault::OtherQuantity {
            unit: spelling.to_owned(),
            measures: other.words(),
            wanted: quantity.words(),
        });
    }
    let nearest = quantity
        .units()
        .iter()
        .flat_map(|it| it.spellings)
        .map(|it| (strsim::damerau_levenshtein(spelt, it), *it))
        .filter(|(distance, it)| *distance <= 2 && *distance < it.chars().count())
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, it)| it);
    Err(UnitFault::UnknownUnit { unit: spelling.to_owned(), wanted: quantity.words(), nearest })
}

/// A number at the start: digits with at most one point, and perhaps a vulgar fraction after it.
fn take_number(text: &str) -> Result<(f64, &str), UnitFault> {
    let (whole, mut rest) = split_while(text, |c| c.is_ascii_digit() || c == '.');
    let not_a_number =
        || UnitFault::NotANumber { found: split_while(text, |c| !c.is_whitespace()).0.to_owned() };
    if rest.starts_with(',') {
        let found = split_while(text, |c| c.is_ascii_digit() || ".,".contains(c)).0.to_owned();
        return Err(UnitFault::DecimalComma { found });
    }
    let mut value = match whole.parse::<f64>() {
        Ok(value) => value,
        Err(_) if whole.is_empty() => 0.0,
        Err(_) => return Err(not_a_number()),
    };
    if let Some(over) = rest.strip_prefix('/') {
        let (denominator, after) = split_while(over, |c| c.is_ascii_digit());
        value /= denominator.parse::<f64>().map_err(|_| not_a_number())?;
        return finite(value, after, not_a_number);
    }
    let (fraction, after) = take_fraction(rest.trim_start());
    if let Some(fraction) = fraction {
        value += fraction;
        rest = after;
    } else if whole.is_empty() {
        return Err(not_a_number());
    }
    finite(value, rest, not_a_number)
}

fn finite(
    value: f64,
    rest: &str,
    not_a_number: impl Fn() -> UnitFault,
) -> Result<(f64, &str), UnitFault> {
    if value.is_finite() { Ok((value, rest)) } else { Err(not_a_number()) }
}

/// `1/2` or `½` at the start, below one.
fn take_fraction(text: &str) -> (Option<f64>, &str) {
    const SIGNS: &[(char, f64)] = &[('½', 0.5), ('¼', 0.25), ('¾', 0.75), ('⅛', 0.125)];
    if let Some((sign, value)) = SIGNS.iter().find(|(sign, _)| text.starts_with(*sign)) {
        return (Some(*value), &text[sign.len_utf8()..]);
    }
    let (numerator, rest) = split_while(text, |c| c.is_ascii_digit());
    let Some(over) = rest.strip_prefix('/') else { return (None, text) };
    let (denominator, after) = split_while(over, |c| c.is_ascii_digit());
    match (numerator.parse::<f64>(), denominator.parse::<f64>()) {
        (Ok(n), Ok(d)) if n < d => (Some(n / d), after),
        _ => (None, text),
    }
}

/// A unit at the start: everything up to the next number, without the space around it.
fn take_unit(text: &str) -> (&str, &str) {
    let (unit, rest) = split_while(text.trim_start(), |c| {
        !(c.is_ascii_digit() || matches!(c, '½' | '¼' | '¾' | '⅛' | '.' | ','))
    });
    // "2 lbs. 9 oz": the point after an abbreviation belongs to it; so does a comma between parts.
    let rest = match rest.strip_prefix(['.', ',']) {
        Some(after) if !unit.is_empty() && !after.starts_with(|c: char| c.is_ascii_digit()) => {
            after
        }
        _ => rest,
    };
    (unit.trim_end(), rest)
}

fn split_while(text: &str, belongs: impl Fn(char) -> bool) -> (&str, &str) {
    text.split_at(text.find(|c| !belongs(c)).unwrap_or(text.len()))
}
