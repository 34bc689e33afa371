//! Everything a user can do, by name. A script is a list of these.

use std::path::PathBuf;

use serde::{Deserialize, Serialize};

use super::playback::Camera;
use super::wood::action::WoodAction;

/// One thing done.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Action {
    /// The built-in demo, as a coach starts.
    Demo,
    /// A player to be measured.
    New,
    /// Four bats on a maker's bench.
    Maker,
    /// A scenario file.
    Open(PathBuf),
    /// A file let fall on the window: a card is checked against, anything else opened.
    Dropped(PathBuf),
    AskOpen,
    /// Writes the scenario over its file; asks for one if it has none.
    Save,
    AskSave,
    SaveAs(PathBuf),
    Keep(Keep),
    /// Restores unsaved work of an earlier window.
    Rescue,
    DropRescued,
    /// The path that is asked for.
    Given(PathBuf),
    /// No path is given.
    Withdraw,
    Close,
    /// Takes a notice away.
    Dismiss(usize),

    /// Puts a value over a field: `Set("bats.0.mass", "2 lb 9 oz")`; an empty one takes it away.
    Set(String, String),
    /// How often short balls were seen to be met in time: "most"; with the bat now used where nothing was said yet.
    Saw(String),
    ForgetSeen,
    AddBat,
    DuplicateBat(usize),
    RemoveBat(usize),
    /// A step of the coach's way on the bench; the whole bench without one.
    Way(Option<Step>),
    /// On to the next step of it, if what this one needs is there.
    Onward,
    /// Takes the last change of the paper in front back.
    Undo,
    Redo,

    FirstBat(usize),
    SecondBat(usize),
    ShowSecond(bool),
    /// A stroke by name.
    Stroke(String),
    Score(u32),
    Camera(Camera),
    /// The eye dragged round and up, rad.
    Orbit(f32, f32),
    /// So many times nearer.
    Nearer(f32),
    /// Both bats in one place.
    Overlay(bool),
    Play,
    Pause,
    /// To a time from the top of the backlift, s.
    Scrub(f64),
    /// So many pictures on, or back.
    Step(i32),
    /// Seconds of the stroke in a second on the screen.
    Rate(f64),
    /// Slows down towards the ball.
    Slows(bool),
    Loop(bool),
    /// Both bats in the same time, or with the same effort.
    SameTime(bool),

    View(View),
    ColourBy(ColourBy),
    /// A bat tried on the map: dead weight, kg, and balance point from the top, m.
    Try(f64, f64),
    /// Takes it off the map.
    Untry,
    /// Makes it one of the bats.
    AddTried,
    Pair(Pair),
    /// An ounce put on the first bat, as a share of its length from the top of the handle.
    Ounce(f64),
    /// Searches for the bat to order.
    Fit,
    CancelFit,

    BenchBat(usize),
    /// The pendulum passes, at this time of any clock, s.
    Tap(f64),
    ClearTaps,
    /// Puts what was tapped into the bat's pendulum test.
    UseTaps,

    Wood(WoodAction),

    /// Asks for a folder for card, map and innings.
    AskCard,
    /// Writes card (PDF, RON, PNG), map and innings into a folder.
    WriteCard(PathBuf),
    /// Asks which card to check a bat against.
    AskCheck,
    /// Checks the bat at the bench against this card.
    Check(PathBuf),
    /// Checks it against the card of the fitting on the screen.
    CheckHere,

    AskClip,
    /// Writes the stroke as an animated GIF.
    WriteClip(PathBuf),
    AskPage,
    /// Writes a page of the comparison as PNG.
    WritePage(PathBuf),
    CancelFilm,

    /// Kilograms and metres in place of pounds and inches.
    Si(bool),
    Dark(bool),
    TextScale(f32),
    ReducedMotion(bool),
    ReducedDetail(bool),

    /// In a script: waits until nothing is being computed.
    Wait,
    /// In a script: a picture of the window.
    Shot(String),
    /// In a script: so many pictures one after the other, and how long they took.
    Measure(u32),
}

/// Which of the papers on the desk.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    Scenario,
    /// The described bat.
    Bat,
}

impl Action {
    /// To which paper it is done.
    pub fn which(&self) -> Which {
        if matches!(self, Self::Wood(_)) { Which::Bat } else { Which::Scenario }
    }

    /// What is done to the scenario, done to another paper.
    pub fn on(self, which: Which) -> Self {
        if which == Which::Scenario {
            return self;
        }
        Self::Wood(match self {
            Self::New => WoodAction::New,
            Self::AskOpen => WoodAction::AskOpen,
            Self::Open(path) => WoodAction::Open(path),
            Self::Save => WoodAction::Save,
            Self::AskSave => WoodAction::AskSave,
            Self::SaveAs(path) => WoodAction::SaveAs(path),
            Self::Rescue => WoodAction::Rescue,
            Self::DropRescued => WoodAction::DropRescued,
            other => return other,
        })
    }
}

/// What to do with unsaved changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Keep {
    Save,
    Drop,
    Stay,
}

/// Steps of the coach's way: who, which bats, what was seen, the answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Step {
    /// Age, sex, height.
    Who,
    /// Name, size, dead weight of each.
    Bats,
    /// How often the short ball was met in time.
    Seen,
    /// Which bat today, and the card.
    Answer,
}

/// The questions the window answers; the table of views says what each shows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum View {
    #[default]
    Start,
    Bench,
    Swing,
    Innings,
    Map,
    Pickup,
    Wood,
    Card,
}

impl View {
    /// The paper in front while it is on the screen: the one that is opened, saved and taken back.
    pub fn paper(self) -> Which {
        if self == Self::Wood { Which::Bat } else { Which::Scenario }
    }
}

/// What the map is coloured by.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum ColourBy {
    /// Bat speed of the pull at the end of the innings.
    Pull,
    /// Expected ball speed over the innings, late balls and mishits counted.
    #[default]
    Worth,
    /// The same over that of the first bat.
    Gained,
    /// Chance that a short ball is met in time at the end of the innings.
    InTime,
}

/// The maker's demonstration.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Pair {
    /// Equal on the scale, unlike in the hand.
    #[default]
    SameScale,
    /// Unlike on the scale, alike in the hand.
    SameHand,
}
