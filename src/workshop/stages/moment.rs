//! A day and a minute by the workshop's clock.

use jiff::SignedDuration;
use jiff::civil::{DateTime, date};
use std::fmt;

/// A minute since the start of 1970 by the workshop's own clock; no time zone, no summer time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moment(DateTime);

impl Moment {
    /// The moment with this date and time; none if there is no such day or minute. Years 1970 to 2999.
    pub fn new(year: i64, month: i64, day: i64, hour: i64, minute: i64) -> Option<Self> {
        let year = i16::try_from(year).ok().filter(|it| (1970..3000).contains(it))?;
        let small = |it: i64| i8::try_from(it).ok();
        let (month, day, hour, minute) = (small(month)?, small(day)?, small(hour)?, small(minute)?);
        DateTime::new(year, month, day, hour, minute, 0, 0).ok().map(Self)
    }

    /// From minutes since the start of 1970.
    pub fn from_minutes(minutes: i64) -> Self {
        Self(date(1970, 1, 1).at(0, 0, 0, 0)).after_minutes(minutes.max(0))
    }

    /// Later by some minutes.
    pub fn after_minutes(self, minutes: i64) -> Self {
        Self(self.0.saturating_add(SignedDuration::from_mins(minutes)))
    }

    /// Minutes from another moment to this; below 0 if that is later.
    pub fn minutes_since(self, other: Self) -> i64 {
        self.0.duration_since(other.0).as_mins()
    }
}

/// "2026-11-26 14:00".
impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.0.strftime("%Y-%m-%d %H:%M"))
    }
}
