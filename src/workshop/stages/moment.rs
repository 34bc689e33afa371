//! A day and a minute by the workshop's clock.

use std::fmt;

/// Minutes since the start of 1970 by the workshop's own clock; no time zone, no summer time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moment(i64);

const DAY_MIN: i64 = 24 * 60;

impl Moment {
    /// The moment with this date and time; none if there is no such day or minute. Years 1970 to 2999.
    pub fn new(year: i64, month: i64, day: i64, hour: i64, minute: i64) -> Option<Self> {
        let there = (1970..3000).contains(&year)
            && (1..=12).contains(&month)
            && (1..=days_of(year, month)).contains(&day)
            && (0..24).contains(&hour)
            && (0..60).contains(&minute);
        if !there {
            return None;
        }
        let years: i64 = (1970..year).map(|it| if leaps(it) { 366 } else { 365 }).sum();
        let months: i64 = (1..month).map(|it| days_of(year, it)).sum();
        Some(Self((years + months + day - 1) * DAY_MIN + hour * 60 + minute))
    }

    /// From minutes since the start of 1970.
    pub fn from_minutes(minutes: i64) -> Self {
        Self(minutes.max(0))
    }

    /// Later by some minutes.
    pub fn after_minutes(self, minutes: i64) -> Self {
        Self(self.0 + minutes)
    }

    /// Minutes from another moment to this; below 0 if that is later.
    pub fn minutes_since(self, other: Self) -> i64 {
        self.0 - other.0
    }
}

fn leaps(year: i64) -> bool {
    year % 4 == 0 && (year % 100 != 0 || year % 400 == 0)
}

fn days_of(year: i64, month: i64) -> i64 {
    match month {
        2 if leaps(year) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

/// "2026-11-26 14:00".
impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (mut days, minutes) = (self.0.div_euclid(DAY_MIN), self.0.rem_euclid(DAY_MIN));
        let mut year = 1970;
        while days >= if leaps(year) { 366 } else { 365 } {
            days -= if leaps(year) { 366 } else { 365 };
            year += 1;
        }
        let mut month = 1;
        while days >= days_of(year, month) {
            days -= days_of(year, month);
            month += 1;
        }
        let (hour, minute) = (minutes / 60, minutes % 60);
        write!(f, "{year:04}-{month:02}-{:02} {hour:02}:{minute:02}", days + 1)
    }
}
