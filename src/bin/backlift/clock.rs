//! The clock of this computer, where it stands.

use backlift::workshop::stages::Moment;

/// Now, by the clock on the wall.
pub fn now() -> Moment {
    let now = jiff::ZonedDateTime::now();
    let [month, day, hour, minute] =
        [now.month(), now.day(), now.hour(), now.minute()].map(i64::from);
    // A year that no log can hold is a clock that was never set.
    Moment::new(i64::from(now.year()), month, day, hour, minute).unwrap_or(Moment::from_minutes(0))
}
