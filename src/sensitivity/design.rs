//! Where the inputs are drawn: two independent sets of points, and every mixture of the two; what a figure is there.

/// Points for the estimators in [`super::indices`]: rows of the sets A and B, and for each input the
/// row of A with that input taken from B.
///
/// The points are those of an Owen-scrambled Sobol sequence, which fills the space more evenly than
/// chance does, most so with a power of two of rows. No chance is in it: the same rows every time.
#[derive(Clone, Debug, PartialEq)]
pub struct Design {
    /// First coordinate of each input, and their number at the end.
    from: Vec<usize>,
}

/// A figure at one row of a [`Design`].
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Which row.
    pub number: usize,
    /// At the row of the first set.
    pub a: f64,
    /// At the row of the second set.
    pub b: f64,
    /// At the row of the first set with each input in turn taken from the second.
    pub mixed: Vec<f64>,
}

/// Most coordinates of all inputs together: the sequence has 256, half of them for each set.
pub const MOST_COORDINATES: usize = 128;
/// Most rows: as long as the sequence is.
pub const MOST_ROWS: usize = 1 << 16;

/// The scramble; any number will do.
const SEED: u32 = 0;
/// Half the distance between two neighbouring numbers of the sequence: keeps it off 0.
const HALF_STEP: f64 = 1.0 / 33_554_432.0;

impl Design {
    /// For inputs with so many coordinates each; none where there are more than [`MOST_COORDINATES`].
    pub fn new(coordinates: &[usize]) -> Option<Self> {
        let mut from = vec![0];
        let mut sum = 0;
        for count in coordinates {
            sum += count;
            from.push(sum);
        }
        (sum <= MOST_COORDINATES).then_some(Self { from })
    }

    /// Coordinates of all inputs.
    pub fn coordinates(&self) -> usize {
        self.from.last().copied().unwrap_or(0)
    }

    /// Number of inputs.
    pub fn inputs(&self) -> usize {
        self.from.len().saturating_sub(1)
    }

    /// Places of an input's coordinates in a point.
    pub fn places(&self, input: usize) -> core::ops::Range<usize> {
        match self.from.get(input..input + 2) {
            Some([from, to]) => *from..*to,
            _ => 0..0,
        }
    }

    /// Row of the first set, each coordinate between 0 and 1. Rows beyond [`MOST_ROWS`] repeat.
    pub fn a(&self, row: usize) -> Vec<f64> {
        self.drawn(row, 0)
    }

    /// Row of the second set.
    pub fn b(&self, row: usize) -> Vec<f64> {
        self.drawn(row, self.coordinates())
    }

    /// Row of the first set with one input taken from the second.
    pub fn mixed(&self, row: usize, input: usize) -> Vec<f64> {
        let mut point = self.a(row);
        let other = self.b(row);
        let places = self.places(input);
        if let (Some(to), Some(from)) = (point.get_mut(places.clone()), other.get(places)) {
            to.copy_from_slice(from);
        }
        point
    }

    fn drawn(&self, row: usize, first: usize) -> Vec<f64> {
        let row = (row % MOST_ROWS) as u32;
        (first..first + self.coordinates())
            .map(|dimension| {
                f64::from(sobol_burley::sample(row, dimension as u32, SEED)) + HALF_STEP
            })
            .collect()
    }
}
