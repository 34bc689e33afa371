//! What the outside checks found of this edition of the model: the card quotes it.
//!
//! The checks themselves take a minute, too long for every card, and belong to a later stage. So their count
//! stands here, and a test asks that it is what they find.

/// How the rows of one group came out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Held {
    /// The group's name.
    pub group: &'static str,
    /// Rows in which ours lies inside the acceptance.
    pub agrees: usize,
    /// Rows in which it does because ours was taken from that figure: they test nothing.
    pub by_construction: usize,
    /// Rows in which it does not.
    pub disagrees: usize,
    /// Rows for which nothing published was found.
    pub no_data: usize,
}

/// All groups.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outside {
    /// In the order of the report; the mechanics first.
    pub groups: [Held; 6],
    /// Largest miss of a speed or a time of the mechanics, as a share, rounded up to a thousandth.
    pub mechanics_within: f64,
}

const fn held(
    group: &'static str,
    [agrees, by_construction, disagrees, no_data]: [usize; 4],
) -> Held {
    Held { group, agrees, by_construction, disagrees, no_data }
}

/// As `backlift validate` found it.
pub const OUTSIDE: Outside = Outside {
    groups: [
        held("dynamics", [206, 0, 5, 0]),
        held("bat inertia", [75, 0, 4, 1]),
        held("people", [68, 11, 15, 36]),
        held("fatigue", [19, 3, 2, 4]),
        held("collision", [81, 0, 4, 2]),
        held("fitting", [3, 0, 3, 3]),
    ],
    mechanics_within: 0.007,
};

impl Outside {
    /// In one sentence, for people: the mechanics, and every group in which something disagrees.
    pub fn sentence(&self) -> String {
        let [mechanics, rest @ ..] = &self.groups;
        let of = |it: &Held| format!("{} {} of {}", it.group, it.agrees, it.agrees + it.disagrees);
        let rest: Vec<String> = rest.iter().filter(|it| it.disagrees > 0).map(of).collect();
        let sum = |of: fn(&Held) -> usize| self.groups.iter().map(of).sum::<usize>();
        format!(
            "Of the outside figures checked, these agree: {} (speeds within {:.1} %), {}; {} more by construction; no data for {}.",
            of(mechanics),
            100.0 * self.mechanics_within,
            rest.join(", "),
            sum(|it| it.by_construction),
            sum(|it| it.no_data)
        )
    }
}
