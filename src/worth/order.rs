//! What an advice starts from.

use super::possible::Possible;
use crate::bat::Bat;
use crate::bat::figures::WeighedBat;
use crate::bat::laws::Limits;
use crate::bat::sizes::Size;
use crate::measurement::plan::{Bowling, FitLimits, InningsPlan, Seen};
use crate::player::Player;
use crate::stroke::Stroke;
use crate::swing::batter::Batter;

/// What an advice starts from.
#[derive(Clone, Copy, Debug)]
pub struct Order<'a> {
    /// Player.
    pub player: &'a Player,
    /// Strokes that can be played.
    pub strokes: &'a [Stroke],
    /// The same strokes on joint paths planned another way; may be empty.
    pub strokes_otherwise: &'a [Stroke],
    /// Bats weighed at the bench.
    pub bats: &'a [WeighedBat],
    /// Innings to last.
    pub plan: &'a InningsPlan,
    /// Bowling to face.
    pub bowling: &'a Bowling,
    /// Index of the bat now used.
    pub uses: usize,
    /// What was seen of the player.
    pub seen: &'a [Seen],
    /// Limits of the search and its rule.
    pub limits: &'a FitLimits,
    /// Sizes of the trade.
    pub sizes: &'a [Size],
    /// Size limits of the Laws.
    pub laws: &'a Limits,
}

/// An order, and what follows from it and is the same for every bat.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// What the advice starts from.
    pub order: &'a Order<'a>,
    /// Player and strokes.
    pub batter: &'a Batter,
    /// The standard bat of the player's size.
    pub standard: &'a Bat,
    /// Stroke time at which loads are taken, by stroke, s.
    pub asked_time_s: &'a [f64],
    /// A change to every possible player, for a study of what decides.
    pub moved: Option<fn(&mut Possible)>,
}
