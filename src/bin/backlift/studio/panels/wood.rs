//! Beside the wood: the blade against its card, carved to it, and its description in figures.

use backlift::bat::laws::Verdict;
use backlift::card::Card;
use backlift::measurement::person::Handed;
use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::cautions::{SHAPE, WORKSHOP};
use backlift::workshop::to_card::{Answer, ToCard};
use egui::{Grid, Ui};

use super::field::{Field, Told, edited};
use super::target::{self, Target, in_units};
use super::words::{caution, head, quiet, sentence, why};
use crate::figure::{measured, plain};
use crate::studio::action::Action;
use crate::studio::state::Studio;
use crate::studio::wood::action::{Face, Holdable, WoodAction, Work};
use crate::studio::work::Question;

/// What a maker could say of the blade.
pub fn told(it: &Studio, targets: &[Target]) -> String {
    let Some(worked) = &it.wood.worked else {
        return "The bat's description has faults: mend them below".to_owned();
    };
    let units = it.look.units;
    let (mass, pickup) = (worked.bat.mass_kg, worked.bat.pickup_weight_kg);
    if !it.wood.faults.is_empty() {
        return "The description has a fault now; bat and figures are those before it".to_owned();
    }
    let weighs = format!(
        "This bat would weigh {} and pick up like {}",
        measured(Quantity::Mass, mass, units),
        measured(Quantity::Mass, pickup, units)
    );
    let met = targets.iter().filter(|it| it.is_met()).count();
    match (targets.len(), met) {
        (0, _) => weighs,
        (all, met) if all == met => format!("{weighs}: all the card asks"),
        (all, met) => format!("{weighs}: {met} of the card's {all} figures"),
    }
}

/// Draws it.
pub fn wood(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    work(ui, it, out);
    match it.wood.work {
        Work::Shape => shape(ui, it, out),
        Work::Plane => super::planing::planing(ui, it, out),
    }
    head(ui, "In the workshop");
    for it in WORKSHOP.into_iter().chain([SHAPE]) {
        quiet(ui, it);
    }
}

/// Shaping or planing.
fn work(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        let works = [(Work::Shape, "Shape a blade"), (Work::Plane, "Plane a bat")];
        for (work, words) in works {
            if ui.selectable_label(it.wood.work == work, words).clicked() {
                out.push(Action::Wood(WoodAction::Work(work)));
            }
        }
    });
}

/// From where it is seen.
pub fn sides(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let all = [(Face::Back, "back"), (Face::Front, "face"), (Face::Edge, "profile")];
    ui.horizontal_wrapped(|ui| {
        for (face, words) in all {
            if ui.selectable_label(it.wood.seen == face, words).clicked() {
                out.push(Action::Wood(WoodAction::See(face)));
            }
        }
        ui.separator();
        let mark = if it.wood.file.is_changed() { " (not saved)" } else { "" };
        ui.menu_button(format!("{}{mark}", it.wood.name()), |ui| {
            for (words, action) in [
                ("Open a described bat…", WoodAction::AskOpen),
                ("Save it", WoodAction::Save),
                ("Save it as…", WoodAction::AskSave),
                ("A new blade", WoodAction::New),
                ("Templates and solid…", WoodAction::AskFolder),
            ] {
                if ui.button(words).clicked() {
                    out.push(Action::Wood(action));
                    ui.close();
                }
            }
        });
    });
}

fn shape(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let targets = target::targets(it);
    sentence(ui, &told(it, &targets));
    for fault in it.wood.faults.iter().filter(|it| !has_field(it)) {
        caution(ui, &fault.message);
    }
    head(ui, "The card");
    card(ui, it, out);
    target::show(ui, it, &targets);
    if !targets.is_empty() {
        carve(ui, it, out);
    }
    if let Some(card) = it.wood_card() {
        super::card::cautions(ui, card);
    }
    fields(ui, it, out);
    follows(ui, it);
}

fn has_field(fault: &backlift::files::fault::Fault) -> bool {
    let path = crate::studio::derived::path_of(fault);
    path.is_some_and(|path| FIELDS.iter().any(|(_, all)| all.iter().any(|it| it[0] == path)))
}

/// Which card, and how to get one.
pub fn card(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    match (it.wood_card(), &it.wood.card) {
        (None, _) => {
            quiet(ui, "There is no card yet: open one, or find the bat for this player first");
        }
        (Some(card), opened) => {
            let whence = match opened {
                Some(_) => "A card that was opened",
                None => "The fitting's card",
            };
            let who = player(card, it.look.units);
            quiet(ui, &format!("{whence}: size {}, for {who}", card.size));
            let own = it.wood.worked.as_ref().map(|it| it.loaded.size.name.as_str());
            if own.is_some_and(|own| own != card.size) {
                caution(ui, "The blade is of another size: start a new one, or change its size");
            }
        }
    }
    ui.horizontal_wrapped(|ui| {
        if ui.button("Open a card…").clicked() {
            out.push(Action::Wood(WoodAction::AskCard));
        }
        if it.wood.card.is_some() && it.results.fitted.is_some() {
            let back = ui.button("The fitting's own");
            if back.clicked() {
                out.push(Action::Wood(WoodAction::FittedCard));
            }
        }
    });
    // Weighing a bat again does not change what was asked for: its card stays.
    if it.wood_card().is_none() || it.work.job(Question::Fit).is_some() {
        super::map_figures::search(ui, it, out);
    } else if it.wood.card.is_none() && it.is_fit_stale() {
        quiet(
            ui,
            "The scenario has changed since: if the player did, find the bat again on the map",
        );
    }
}

/// For whom a card is.
fn player(card: &Card, units: Units) -> String {
    let it = &card.player;
    let hand = match it.handed {
        Handed::Right => "right-handed",
        Handed::Left => "left-handed",
    };
    let stature = spoken(Quantity::Length, it.stature_m, 0.01, units);
    let made_up = if card.invented { ", invented" } else { "" };
    format!("a player of {:.0} years, {stature}, {hand}{made_up}", it.age_y.floor())
}

fn carve(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    head(ui, "Carve it to the card");
    let all = [
        (Holdable::Edge, "hold the edge"),
        (Holdable::Depth, "hold the spine height"),
        (Holdable::Swell, "hold the swell"),
        (Holdable::Hollow, "hold the hollow"),
    ];
    ui.horizontal_wrapped(|ui| {
        for (what, words) in all {
            let mut on = it.wood.held.contains(&what);
            if ui.checkbox(&mut on, words).changed() {
                out.push(Action::Wood(WoodAction::Hold(what, on)));
            }
        }
    });
    if it.work.job(Question::Carve).is_some() {
        ui.horizontal(|ui| {
            ui.spinner();
            if ui.button("Stop carving").clicked() {
                out.push(Action::Wood(WoodAction::CancelCarve));
            }
        });
        return;
    }
    let ready = it.wood.worked.is_some() && it.wood.faults.is_empty();
    if ui.add_enabled(ready, egui::Button::new("Find shapes that meet it")).clicked() {
        out.push(Action::Wood(WoodAction::Carve));
    }
    let Some(carved) = &it.wood.carved else { return };
    if carved.key != it.carving_key() {
        quiet(ui, "The shapes below were found for an earlier blade or card");
    }
    shapes(ui, it, &carved.it, out);
}

fn shapes(ui: &mut Ui, it: &Studio, found: &ToCard, out: &mut Vec<Action>) {
    let units = it.look.units;
    let mut offer = |ui: &mut Ui, n: usize, answer: &Answer| {
        let blade = &answer.bat.shape.blade;
        let depth_m = blade.deepest().map_or(0.0, |it| it.depth_m);
        let mm = |it_m: f64| plain(1e3 * it_m, 1, "mm");
        ui.horizontal_wrapped(|ui| {
            let name = answer.name;
            if ui.button(name).on_hover_text("Take this shape; it can be taken back").clicked() {
                out.push(Action::Wood(WoodAction::Take(n)));
            }
            let from_toe = answer.bat.shape.swell_from_toe_m();
            quiet(
                ui,
                &format!(
                    "edge {}, spine {}, swell {} from the toe",
                    mm(blade.thickest_edge_m()),
                    mm(depth_m),
                    spoken(Quantity::Length, from_toe, 0.001, units)
                ),
            );
        });
    };
    if !found.answers.is_empty() {
        found.answers.iter().enumerate().for_each(|(n, it)| offer(ui, n, it));
        return;
    }
    for broken in &found.broken {
        let nearest = broken.nearest.map_or_else(String::new, |it| {
            format!(": nearest {}", in_units(broken.figure, it, units))
        });
        caution(
            ui,
            &format!(
                "No shape meets its {}{nearest}. In the way: {}",
                broken.figure.words(),
                broken.why
            ),
        );
    }
    if let Some(nearest) = &found.nearest {
        offer(ui, 0, nearest);
    }
}

/// A part's name, and its fields.
type Fields = [(&'static str, &'static [[&'static str; 4]]); 3];

/// Path, name, what may stand in it, and how to measure it.
const FIELDS: Fields = [
    (
        "Blade",
        &[
            ["size", "Size", "short handle", "1 to 6, Harrow, short handle or long handle"],
            ["blade.length", "Blade length", "559 mm", "From shoulder to toe"],
            ["blade.width", "Blade width", "107 mm", "Greatest width"],
            ["blade.edge", "Blade edge", "36 mm", "Greatest thickness of the edges"],
            ["blade.depth", "Spine height", "60 mm", "From the face to the spine at the swell"],
            ["blade.swell", "Swell", "8 in", "Height of the deepest place over the toe"],
            [
                "blade.hollow",
                "Hollow of the back",
                "40 %",
                "0 straight, 100 % level at the edge, below 0 full",
            ],
            [
                "blade.camber",
                "Camber of the face",
                "2 mm",
                "Height of the middle of the face over its edges",
            ],
            ["blade.shoulder_width", "Shoulder width", "45 mm", "Where the handle goes in"],
            ["blade.shoulder_length", "Shoulder length", "60 mm", "From there to full width"],
            ["blade.toe_depth", "Toe depth", "28 mm", "Depth at the toe"],
        ],
    ),
    (
        "Handle and what is on it",
        &[
            ["handle.length", "Handle length", "290 mm", "From its top to the shoulder"],
            ["handle.diameter", "Handle diameter", "34 mm", "Over the grip, at the bottom hand"],
            ["handle.section", "Handle section", "oval", "Round, oval or semi-oval"],
            ["handle.grips", "Grips", "1", "How many, one over the other"],
            ["extras.labels", "Labels", "8 g", "Labels and glue"],
            ["extras.toe_guard", "Toe guard", "1.5 mm", "Its thickness, or none"],
            ["extras.oil", "Oil", "12 g", "In the wood"],
        ],
    ),
    (
        "Wood",
        &[
            [
                "willow.density",
                "Willow",
                "440 kg/m³",
                "Density, where it is known; else the cleft below",
            ],
            ["willow.cleft.mass", "Cleft weight", "2.75 kg", "As sawn"],
            ["willow.cleft.length", "Cleft length", "710 mm", "Along the grain"],
            ["willow.cleft.width", "Cleft width", "118 mm", "Across"],
            ["willow.cleft.depth", "Cleft depth", "72 mm", "From face to back"],
            ["willow.cleft.moisture", "Cleft moisture", "13 %", "Water when it was weighed"],
        ],
    ),
];

fn fields(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    for (name, fields) in FIELDS {
        head(ui, name);
        Grid::new(("wood", name)).num_columns(2).show(ui, |ui| {
            for [path, label, like, how] in fields {
                let field = Field { path, label, like, how };
                let told =
                    Told { kept: it.wood.file.at(path), faults: it.wood.about(path).collect() };
                // Measured sections have their places from the toe: their length stays.
                let fixed = *path == "blade.length" && it.wood.has_sections();
                if fixed {
                    continue;
                }
                if let Some(text) = edited(ui, &field, &told) {
                    out.push(Action::Wood(WoodAction::Set((*path).to_owned(), text)));
                }
            }
        });
    }
    quiet(ui, "What is left empty is as in the reference bat of the size");
    let stations = it.wood.file.fields().blade.stations.len();
    if stations > 0 {
        quiet(ui, &format!("{stations} measured sections; figures above are carved out of them"));
    }
}

/// What follows from the shape beside the card's figures.
fn follows(ui: &mut Ui, it: &Studio) {
    let Some(worked) = &it.wood.worked else { return };
    let (bat, units) = (&worked.bat, it.look.units);
    head(ui, "What follows");
    let law = match (bat.law.verdict, bat.handle_share_allowed) {
        (Verdict::Yes, true) => "Within the Laws",
        (_, false) => "The handle is longer than its share of the bat that the Laws allow",
        _ => "The Laws forbid it",
    };
    quiet(ui, law);
    for breach in &bat.law.breaches {
        let of = |it_m: f64| spoken(Quantity::Length, it_m, 0.0, units);
        let words = breach.dimension.words();
        caution(ui, &format!("{words} {}, limit {}", of(breach.measured_m), of(breach.limit_m)));
    }
    if let (Some(node), Some(hz)) = (bat.bending_node_m, bat.bending_hz) {
        let from_toe_m = bat.bat.length_m() - node.value;
        let from_toe = spoken(Quantity::Length, from_toe_m, node.sd, units);
        why(
            ui,
            &format!("Quiet place {from_toe} from the toe"),
            &format!(
                "A ball there does not set the blade ringing. It rings at {} Hz, by a slender beam free at both ends: some 4 % too high",
                crate::figure::bare(hz, 0)
            ),
        );
    }
    quiet(ui, "± is the doubt of the willow's density alone; the shape is taken as described");
}
