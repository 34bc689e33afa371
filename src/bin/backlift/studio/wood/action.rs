//! Everything that can be done to the wood, by name.

use std::path::PathBuf;

use serde::{Deserialize, Serialize};

/// One thing done at the maker's bench.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum WoodAction {
    /// A blade of the size at hand, as in the standard bat of this size.
    New,
    /// A described bat.
    Open(PathBuf),
    AskOpen,
    /// Writes it over its file; asks for one if it has none.
    Save,
    AskSave,
    SaveAs(PathBuf),
    /// Takes unsaved work of an earlier window up again.
    Rescue,
    DropRescued,

    /// Puts a value over a field: `Set("blade.edge", "36 mm")`; an empty one takes it away.
    Set(String, String),
    /// Drags a field to a value, SI.
    Grab(String, f64),
    /// Lets go: the whole drag is one step back.
    LetGo,

    Work(Work),
    See(Face),

    /// Whether a figure stays as it is when the blade is carved to the card.
    Hold(Holdable, bool),
    AskCard,
    /// Holds the blade against this card.
    Card(PathBuf),
    /// Holds it against the card of the fitting on the screen.
    FittedCard,
    Carve,
    CancelCarve,
    /// Takes one of the shapes that were found.
    Take(usize),

    /// Begins the next reading in the bat's own file, and the file itself with the first.
    NextReading,
    /// What is on the part-made bat already.
    On(Part, bool),
    /// How many passes are shown as done.
    Done(usize),

    /// Asks for a folder for templates and solid.
    AskFolder,
    /// Writes templates, solid and figures into a folder.
    Write(PathBuf),
}

/// What is being done with the wood.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Work {
    #[default]
    Shape,
    /// A part-made bat is planed to its card.
    Plane,
}

/// From where the bat is seen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Face {
    /// The back, where most of the work is.
    #[default]
    Back,
    Front,
    /// An edge: the profile.
    Edge,
}

/// What a maker may hold fixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Holdable {
    /// Thickest edge.
    Edge,
    /// Spine height.
    Depth,
    Swell,
    Hollow,
}

/// What goes on a bat after the plane.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Part {
    Twine,
    Grip,
    ToeGuard,
    Labels,
    /// The first oil.
    Oil,
}
