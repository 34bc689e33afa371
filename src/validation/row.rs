//! One line of the table.

use super::{Accept, Curve};

/// What a check is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// Rigid bodies, the law, the engine.
    Dynamics,
    /// Mass, balance, moments of the bat; the bench.
    BatInertia,
    /// Size, strength, published swings.
    People,
    /// Holding, repeated work, the innings.
    Fatigue,
    /// Ball on bat.
    Collision,
    /// Advice: monotony, coverage, interpolation.
    Fitting,
}

impl Group {
    /// As printed.
    pub fn words(self) -> &'static str {
        match self {
            Self::Dynamics => "dynamics",
            Self::BatInertia => "bat inertia",
            Self::People => "people",
            Self::Fatigue => "fatigue",
            Self::Collision => "collision",
            Self::Fitting => "fitting",
        }
    }
}

/// What came of a check.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Ours lies inside the acceptance.
    Agrees,
    /// Ours lies inside because it was taken from that very figure, which the row's note says: no test of it.
    ByConstruction,
    /// Ours lies outside; the row's note says by how much and why.
    Disagrees,
    /// Nothing published, or nothing seen, to compare with.
    NoData,
}

impl Verdict {
    /// As printed.
    pub fn words(self) -> &'static str {
        match self {
            Self::Agrees => "agrees",
            Self::ByConstruction => "built so",
            Self::Disagrees => "disagrees",
            Self::NoData => "no data",
        }
    }
}

/// A published or reference value, with its published standard deviation if there is one.
pub struct Expected {
    value: f64,
    sd: Option<f64>,
}

impl From<f64> for Expected {
    fn from(value: f64) -> Self {
        Self { value, sd: None }
    }
}

impl From<(f64, Option<f64>)> for Expected {
    fn from((value, sd): (f64, Option<f64>)) -> Self {
        Self { value, sd }
    }
}

/// One comparison with the outside.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// What is compared, in plain words.
    pub what: String,
    /// Author, year, journal, or program and version, with how far it may be relied on.
    pub source: String,
    /// Unit of `expected`, `sd` and `ours`; empty for a pure number.
    pub unit: &'static str,
    /// Published or reference value.
    pub expected: Option<f64>,
    /// Its published standard deviation.
    pub sd: Option<f64>,
    /// Ours.
    pub ours: Option<f64>,
    /// When they agree; none where there is nothing to compare with.
    pub accept: Option<Accept>,
    /// What came of it.
    pub verdict: Verdict,
    /// Why they differ or what the figure leaves out; empty if nothing need be said.
    pub note: String,
}

impl Row {
    /// Compares ours with an outside figure.
    pub fn compared(
        what: impl Into<String>,
        source: impl Into<String>,
        unit: &'static str,
        expected: impl Into<Expected>,
        ours: f64,
        accept: Accept,
    ) -> Self {
        let Expected { value, sd } = expected.into();
        let verdict = match accept.agrees(value, sd, ours) {
            true => Verdict::Agrees,
            false => Verdict::Disagrees,
        };
        Self {
            what: what.into(),
            source: source.into(),
            unit,
            expected: Some(value),
            sd,
            ours: Some(ours),
            accept: Some(accept),
            verdict,
            note: String::new(),
        }
    }

    /// Ours, where nothing published was seen.
    pub fn no_data(
        what: impl Into<String>,
        unit: &'static str,
        ours: Option<f64>,
        why: impl Into<String>,
    ) -> Self {
        Self {
            what: what.into(),
            source: "none seen".into(),
            unit,
            expected: None,
            sd: None,
            ours,
            accept: None,
            verdict: Verdict::NoData,
            note: why.into(),
        }
    }

    /// With a word on why they differ or what is left out.
    pub fn noted(self, note: impl Into<String>) -> Self {
        Self { note: note.into(), ..self }
    }

    /// Ours was taken from that very figure, and `why`: where the row agrees it says nothing about the model.
    pub fn by_construction(self, why: impl Into<String>) -> Self {
        let verdict = match self.verdict {
            Verdict::Agrees => Verdict::ByConstruction,
            other => other,
        };
        Self { verdict, ..self }.noted(why)
    }

    /// How much of what is accepted was used (see [`Accept::used`]); none without figures or with one limit.
    pub fn used(&self) -> Option<f64> {
        self.accept?.used(self.expected?, self.sd, self.ours?)
    }

    /// Ours less the outside's, in the row's unit.
    pub fn difference(&self) -> Option<f64> {
        Some(self.ours? - self.expected?)
    }
}

/// What one check found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Checked {
    /// Lines of the table.
    pub rows: Vec<Row>,
    /// Plots of ours against theirs.
    pub curves: Vec<Curve>,
}

impl From<Vec<Row>> for Checked {
    /// Nothing to plot.
    fn from(rows: Vec<Row>) -> Self {
        Self { rows, curves: Vec::new() }
    }
}
