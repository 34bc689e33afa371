//! The study: every draw swung, and the spread of each figure divided among the inputs.

use super::design::{Design, MOST_ROWS, Row};
use super::figure::Figure;
use super::indices::{Divided, divide};
use super::input::Input;
use super::moved::{Drawn, Draws};
use super::simulated::{Kept, Swung};
pub use super::spread::Asked;
use super::spread::{Moved, inputs};
use crate::innings::played::InningsFault;
use crate::measurement::nets::Lasting;
use core::ops::ControlFlow;
use core::sync::atomic::{AtomicUsize, Ordering};
use rayon::prelude::*;

/// One figure and what moves it.
#[derive(Clone, Debug, PartialEq)]
pub struct Studied {
    /// Figure.
    pub figure: Figure,
    /// With every input at its best value.
    pub best: f64,
    /// Mean and spread over the draws, and each input's share, in the order of [`Study::inputs`].
    pub divided: Divided,
}

/// The result.
#[derive(Clone, Debug, PartialEq)]
pub struct Study {
    /// What was moved, and how far.
    pub inputs: Vec<Moved>,
    /// The figures; that of two bats only where there are two.
    pub figures: Vec<Studied>,
    /// Rows asked for.
    pub rows: usize,
    /// Rows left out, because a player or bat drawn in them could not be, or could not bring the bat to
    /// the ball under control.
    pub left_out: usize,
    /// Draws simulated.
    pub draws: usize,
}

/// Why there is no study.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum StudyFault {
    /// Not even the best values swing.
    #[error(transparent)]
    Innings(#[from] InningsFault),
    /// The best values make no player or no bat.
    #[error("{0}")]
    Drawn(String),
    /// So many draws fail that what is left says nothing of the rest.
    #[error(
        "in {left_out} of {rows} rows a player like this one could not bring the bat to the ball under control"
    )]
    TooManyFail {
        /// Rows left out.
        left_out: usize,
        /// Rows in all.
        rows: usize,
    },
    /// So many rows cannot be drawn.
    #[error("{rows} rows: from 2 to {MOST_ROWS} can be drawn")]
    Rows {
        /// Rows asked for.
        rows: usize,
    },
    /// Asked to stop.
    #[error("stopped")]
    Stopped,
}

/// Progress: the share of the whole that is done.
pub type Progress<'a> = &'a (dyn Fn(f64) -> ControlFlow<()> + Sync);

/// Largest share of the rows that may be left out.
const MOST_LEFT_OUT: f64 = 0.25;

/// Draws, swings and divides.
pub fn study(asked: &Asked<'_>, progress: Progress<'_>) -> Result<Study, StudyFault> {
    let moved = inputs(&asked.known);
    let bats = 1 + usize::from(asked.known.other.is_some());
    let coordinates: Vec<usize> = moved.iter().map(|it| it.input.coordinates(bats)).collect();
    let rows = asked.rows;
    let design = Design::new(&coordinates)
        .filter(|_| (2..=MOST_ROWS).contains(&rows))
        .ok_or(StudyFault::Rows { rows })?;
    let draws = Draws::new(asked, &moved, &design);

    let middle = draws.at(&vec![0.5; design.coordinates()]).map_err(StudyFault::Drawn)?;
    let middle = Drawn { lasting: Lasting::UNKNOWN.central, ..middle };
    let best = asked.swung(&middle, Kept::Near(None))?;

    let (done, all) = (AtomicUsize::new(0), rows * (2 + moved.len()));
    let step = || {
        let share = done.fetch_add(1, Ordering::Relaxed) as f64 / all as f64;
        match progress(share) {
            ControlFlow::Continue(()) => Ok(()),
            ControlFlow::Break(()) => Err(StudyFault::Stopped),
        }
    };
    // A draw that no player or no bat can be, or that cannot control the bat, is none.
    let swung = |point: &[f64], kept: Kept<'_>| -> Result<Option<Swung>, StudyFault> {
        step()?;
        Ok(draws.at(point).ok().and_then(|it| asked.swung(&it, kept).ok()))
    };
    let row = |n: usize| -> Result<Option<[Row; Figure::COUNT]>, StudyFault> {
        let near = Kept::Near(Some(&best));
        let Some(a) = swung(&design.a(n), near)? else { return Ok(None) };
        let Some(b) = swung(&design.b(n), near)? else { return Ok(None) };
        let mut out = core::array::from_fn(|f| Row {
            number: n,
            a: a.figures[f],
            b: b.figures[f],
            mixed: Vec::with_capacity(moved.len()),
        });
        for (i, it) in moved.iter().enumerate() {
            let Some(mixed) = swung(&design.mixed(n, i), kept(it.input, &a))? else {
                return Ok(None);
            };
            for (row, value) in out.iter_mut().zip(mixed.figures) {
                row.mixed.push(value);
            }
        }
        Ok(Some(out))
    };
    let whole = (0..rows).into_par_iter().filter_map(|n| row(n).transpose());
    let whole: Vec<[Row; Figure::COUNT]> = whole.collect::<Result<_, _>>()?;
    let left_out = rows - whole.len();
    if whole.len() < 2 || left_out as f64 > MOST_LEFT_OUT * rows as f64 {
        return Err(StudyFault::TooManyFail { left_out, rows });
    }
    let shown = |figure: Figure| figure != Figure::LighterBat || asked.known.other.is_some();
    let figures = Figure::all().into_par_iter().enumerate().filter(|(_, it)| shown(*it));
    let figures = figures.filter_map(|(f, figure)| {
        let of: Vec<Row> = whole.iter().map(|it| it[f].clone()).collect();
        Some(Studied { figure, best: best.figures[f], divided: divide(&design, &of)? })
    });
    let figures = figures.collect();
    Ok(Study { inputs: moved, figures, rows, left_out, draws: all })
}

/// What of the row of the first set still holds when one input is taken from the second.
fn kept(input: Input, a: &Swung) -> Kept<'_> {
    if input == Input::LastingFatigue {
        Kept::Ready(a)
    } else if !input.moves_the_swing() {
        Kept::Swings(a)
    } else if !input.moves_the_path() {
        Kept::Paths(a)
    } else {
        Kept::Near(Some(a))
    }
}
