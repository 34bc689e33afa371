//! Ours against theirs over a range, for a plot.

/// One outside reading, with its spread if published.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Abscissa.
    pub x: f64,
    /// What the outside says.
    pub y: f64,
    /// One standard deviation, in the unit of `y`.
    pub sd: Option<f64>,
}

/// Readings whose spread is not published.
pub(super) fn readings(points: impl IntoIterator<Item = (f64, f64)>) -> Vec<Reading> {
    points.into_iter().map(|(x, y)| Reading { x, y, sd: None }).collect()
}

/// A line of ours and the readings it is compared with.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// What is plotted, in plain words.
    pub title: String,
    /// Abscissa with its unit, as written on the axis.
    pub x_label: String,
    /// Ordinate with its unit, as written on the axis.
    pub y_label: String,
    /// Ours, in order of the abscissa.
    pub ours: Vec<(f64, f64)>,
    /// Theirs.
    pub theirs: Vec<Reading>,
    /// Author, year, or program and version.
    pub source: String,
}
