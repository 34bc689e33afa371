//! The window's panels: plain functions on egui that show the state and say what was done; and its views, each a row
//! of one table.

pub mod bats;
mod bench;
mod card;
mod chart;
mod deeds;
mod description;
mod diagram;
mod field;
pub mod grab;
mod innings;
mod kept;
mod map;
mod map_figures;
pub mod notices;
mod ounce;
mod pendulum;
mod pickup;
mod planing;
pub mod playback;
mod sections;
pub mod shortcuts;
mod start;
mod swing;
mod table;
pub mod target;
mod through;
mod today;
pub mod top;
mod way;
pub mod wood;
pub mod words;

use egui::Ui;

use super::action::{Action, View};
use super::state::Studio;
use super::work::Need;

/// Draws a part of the window, and says what was done in it.
pub type Panel = fn(&mut Ui, &Studio, &mut Vec<Action>);

/// One of the questions that the window answers.
pub struct Row {
    /// Its word in a script.
    pub view: View,
    pub name: &'static str,
    pub what: &'static str,
    /// What it asks for before what every view asks for.
    pub needs: &'static [Need],
    pub layout: Layout,
    pub beside: Panel,
}

/// How a view fills the window.
pub enum Layout {
    /// The net, time under it, and under that another panel perhaps.
    Net(Option<Panel>),
    /// A panel, and figures beside it, the net in the corner over them perhaps.
    Whole { panel: Panel, has_net: bool },
    /// Two columns and no net; the figures are the right one.
    Columns(Panel),
    /// The wood on the maker's bench, without hands and bats.
    Workbench { over: Panel, under: Panel },
}

impl Layout {
    /// Whether the net is seen, where there is room for it.
    pub fn shows_net(&self) -> bool {
        match self {
            Self::Net(_) => true,
            Self::Whole { has_net, .. } => *has_net,
            Self::Columns(_) | Self::Workbench { .. } => false,
        }
    }
}

/// The views in the order in which the eye goes; F1 is the first.
pub const VIEWS: [Row; 8] = [
    Row {
        view: View::Start,
        name: "Start",
        what: "Three ways to begin",
        needs: &[Need::Pair],
        layout: Layout::Net(None),
        beside: start::start,
    },
    Row {
        view: View::Bench,
        name: "Bench",
        what: "What the bats and the player are: weigh, balance, time, measure",
        needs: &[Need::Today],
        layout: Layout::Columns(way::left),
        beside: way::beside,
    },
    Row {
        view: View::Swing,
        name: "Swing",
        what: "What the swing does with each bat",
        needs: &[Need::Pair],
        layout: Layout::Net(None),
        beside: swing::swing,
    },
    Row {
        view: View::Innings,
        name: "Late on",
        what: "What is left of it late in the innings",
        needs: &[],
        layout: Layout::Net(Some(innings::innings)),
        beside: innings::beside,
    },
    Row {
        view: View::Map,
        name: "Map",
        what: "Every bat that can be made, and what it is worth in these hands",
        needs: &[Need::Fit, Need::Today],
        layout: Layout::Whole { panel: map::map, has_net: true },
        beside: map_figures::map_figures,
    },
    Row {
        view: View::Pickup,
        name: "Pickup",
        what: "Weight on the scale against weight in the hand",
        needs: &[Need::Ounces, Need::Pair],
        layout: Layout::Net(None),
        beside: pickup::pickup,
    },
    Row {
        view: View::Card,
        name: "Card",
        what: "What the maker gets, and whether a delivered bat is it",
        needs: &[Need::Fit, Need::CardPicture, Need::Today],
        layout: Layout::Whole { panel: card::preview, has_net: false },
        beside: card::card,
    },
    Row {
        view: View::Wood,
        name: "Wood",
        what: "From the card to the wood: a blade shaped, or a bat planed, until it meets the card",
        needs: &[Need::Plan],
        layout: Layout::Workbench { over: wood::sides, under: sections::sections },
        beside: wood::wood,
    },
];

/// The row of a view.
pub fn row(view: View) -> &'static Row {
    let found = VIEWS.iter().find(|it| it.view == view);
    found.unwrap_or(&VIEWS[0])
}
