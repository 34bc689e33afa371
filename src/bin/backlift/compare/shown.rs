//! What is shown of a comparison, by name in place of index.

use backlift::bat::figures::WeighedBat;
use backlift::comparison::bats::{BatDifference, Comparison};
use backlift::comparison::difference::toe_words;
use backlift::comparison::figure::{Figure, StrokeFigure, When};
use backlift::uncertain::Uncertain;

/// A comparison with the names of its bats and strokes.
pub struct Shown {
    pub comparison: Comparison,
    pub bats: Vec<WeighedBat>,
    pub strokes: Vec<String>,
    /// The player is a junior: nothing is said of a fastest ball.
    pub junior: bool,
    /// From release until the stroke can start, s: what a time in hand hangs on.
    pub reaction_time_s: f64,
}

impl Shown {
    /// The stroke that leads: the pull if it is played.
    pub fn lead(&self) -> usize {
        self.strokes.iter().position(|it| it == "pull").unwrap_or(0)
    }

    /// A figure of the leading stroke at fifty.
    pub fn late(&self, figure: StrokeFigure) -> Figure {
        Figure::Stroke(self.lead(), When::AtFifty, figure)
    }

    /// Label of a bat.
    pub fn label(&self, bat: usize) -> &str {
        self.comparison.bats.get(bat).map_or("", |it| it.label.as_str())
    }

    /// A bat's figure with its doubt.
    pub fn value(&self, bat: usize, figure: Figure) -> Uncertain {
        let place = self.comparison.figures.iter().position(|it| *it == figure);
        let found = place.and_then(|f| Some(self.comparison.bats.get(bat)?.value_sd(f)));
        let (value, sd) = found.unwrap_or((f64::NAN, 0.0));
        let measured = self.bats.get(bat).map(|it| match figure {
            Figure::Balance => it.balance_m.origin,
            Figure::SwingMoment => it.swing_moment_kg_m2.origin,
            Figure::HoldMoment => it.hold_moment_n_m.origin,
            Figure::PickupWeight => it.pickup_weight_kg.origin,
            _ => it.mass_kg.origin,
        });
        Uncertain { origin: measured.unwrap_or(Uncertain::computed(0.0, 0.0).origin), value, sd }
    }

    /// Second bat less first.
    pub fn difference(&self, pair: [usize; 2], figure: Figure) -> Option<&BatDifference> {
        self.comparison.differences.iter().find(|it| it.bats == pair && it.figure == figure)
    }

    /// All pairs, in order.
    pub fn pairs(&self) -> Vec<[usize; 2]> {
        let count = self.comparison.bats.len();
        (0..count).flat_map(|i| (i + 1..count).map(move |j| [i, j])).collect()
    }

    /// What the second bat is like in the hand against the first, as tape on the first one's toe.
    pub fn in_hand(&self, pair: [usize; 2]) -> String {
        let change =
            self.difference(pair, Figure::SwingMoment).map_or(0.0, |it| it.difference.value);
        let length_m = self.bats.get(pair[0]).map_or(0.85, |it| it.length_m.value);
        toe_words(change, length_m)
    }
}
