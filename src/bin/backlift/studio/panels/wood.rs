//! Beside the wood: the blade against its card, carved to it, and its description in figures.

use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::cautions::SHAPE;
use backlift::workshop::to_card::{Answer, ToCard};
use egui::{RichText, Ui};

use super::deeds::{button, button_if, choice, item, paper_menu, tick};
use super::description;
use super::target::{self, Target, in_units};
use super::words::{caution, head, quiet, sentence, wrapped};
use crate::figure::{measured, percent, plain};
use crate::sentences::wish;
use crate::studio::action::{Action, Which};
use crate::studio::fields::name;
use crate::studio::state::Studio;
use crate::studio::wood::action::{Face, Holdable, WoodAction, Work};
use crate::studio::wood::{Stop, is_share};
use crate::studio::work::Question;

/// Below this, m, a size of the blade is told in millimetres where the trade's units are.
const SMALL_M: f64 = 0.06;

/// What a maker could say of the blade.
pub fn told(it: &Studio, targets: &[Target]) -> String {
    let Some(worked) = &it.wood.worked else {
        return "The bat's description has faults: mend them below".to_owned();
    };
    if !it.wood.faults.is_empty() {
        return "The description has a fault now; bat and figures are those before it".to_owned();
    }
    let [mass, pickup] = [worked.bat.mass_kg, worked.bat.pickup_weight_kg]
        .map(|kg| measured(Quantity::Mass, kg, it.look.units));
    let weighs = format!("This bat would weigh {mass} and pick up like {pickup}");
    let met = targets.iter().filter(|it| it.is_met()).count();
    match (targets.len(), met) {
        (0, _) => weighs,
        (all, met) if all == met => format!("{weighs}: all the card asks"),
        (all, met) => format!("{weighs}: {met} of the card's {all} figures"),
    }
}

pub fn wood(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        let works = [(Work::Shape, "Shape a blade"), (Work::Plane, "Plane a bat")];
        choice(ui, out, &works, it.wood.work, |work| Action::Wood(WoodAction::Work(work)));
    });
    match it.wood.work {
        Work::Shape => shape(ui, it, out),
        Work::Plane => super::planing::planing(ui, it, out),
    }
    head(ui, "In the workshop");
    for it in SHAPE {
        quiet(ui, it);
    }
}

pub fn sides(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let all = [(Face::Back, "back"), (Face::Front, "face"), (Face::Edge, "profile")];
    ui.horizontal_wrapped(|ui| {
        choice(ui, out, &all, it.wood.seen, |face| Action::Wood(WoodAction::See(face)));
        ui.separator();
        paper_menu(ui, it.paper(Which::Bat), |ui| {
            item(ui, out, "Open a described bat…", Action::Wood(WoodAction::AskOpen));
            item(ui, out, "Save it", Action::Wood(WoodAction::Save));
            item(ui, out, "Save it as…", Action::Wood(WoodAction::AskSave));
            item(ui, out, "A new blade", Action::Wood(WoodAction::New));
            item(ui, out, "Templates and solid…", Action::Wood(WoodAction::AskFolder));
        });
    });
}

/// Where and why a drag went no further.
pub fn stopped(stop: &Stop, units: Units) -> String {
    let at = match units {
        _ if is_share(&stop.path) => percent(stop.value, 1),
        // Small sizes are told in millimetres by every maker.
        Units::Trade if stop.value < SMALL_M => plain(1e3 * stop.value, 1, "mm"),
        _ => spoken(Quantity::Length, stop.value, 1e-4, units),
    };
    let called = name(&stop.path).unwrap_or(&stop.path);
    format!("{called} stops at {at}: {}", stop.why)
}

fn shape(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let targets = target::targets(it);
    sentence(ui, &told(it, &targets));
    for fault in it.wood.faults.iter().filter(|it| !description::has_field(it)) {
        caution(ui, &fault.message);
    }
    if let Some(stop) = &it.wood.stop {
        quiet(ui, &stopped(stop, it.look.units));
    }
    head(ui, "The card");
    target::card(ui, it, out);
    target::show(ui, it, &targets);
    if !targets.is_empty() {
        carve(ui, it, out);
    }
    if let Some(card) = it.wood_card() {
        super::card::cautions(ui, card);
    }
    description::fields(ui, it, out);
    description::follows(ui, it);
}

/// The blade carved to its card: what is held, and the shapes that were found.
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
            let is_held = it.wood.held.contains(&what);
            tick(ui, out, is_held, words, |on| Action::Wood(WoodAction::Hold(what, on)));
        }
    });
    if it.work.job(Question::Carve).is_some() {
        ui.horizontal(|ui| {
            ui.spinner();
            button(ui, out, "Stop carving", Action::Wood(WoodAction::CancelCarve));
        });
        return;
    }
    let ready = it.wood.worked.is_some() && it.wood.faults.is_empty();
    button_if(ui, out, ready, "Find shapes that meet it", Action::Wood(WoodAction::Carve));
    let Some(carved) = it.carved() else { return };
    if carved.key != it.carving_key() {
        quiet(ui, "The shapes below were found for an earlier blade or card");
    }
    shapes(ui, it, carved.it, out);
}

fn shapes(ui: &mut Ui, it: &Studio, found: &ToCard, out: &mut Vec<Action>) {
    let units = it.look.units;
    let mut offer = |ui: &mut Ui, n: usize, answer: &Answer| {
        let shape = &answer.bat.shape;
        let mm = |it_m: f64| plain(1e3 * it_m, 1, "mm");
        let edge = mm(shape.blade.thickest_edge_m());
        let spine = mm(shape.blade.deepest().map_or(0.0, |it| it.depth_m));
        let swell = spoken(Quantity::Length, shape.swell_from_toe_m(), 0.001, units);
        let as_wished = found.wished.is_some_and(|it| it.middle == answer.middle);
        let as_wished = if as_wished { ", the middle as wished" } else { "" };
        ui.horizontal_wrapped(|ui| {
            button(ui, out, answer.name, Action::Wood(WoodAction::Take(n)))
                .on_hover_text("Take this shape; it can be taken back");
            let words = format!("edge {edge}, spine {spine}, swell {swell} from the toe");
            quiet(ui, &format!("{words}{as_wished}"));
        });
    };
    if let Some(wished) = &found.wished {
        let words = RichText::new(wish::sentence(wished, &found.answers)).small().weak();
        wrapped(ui, words).on_hover_text(wish::rule());
    }
    if !found.answers.is_empty() {
        found.answers.iter().enumerate().for_each(|(n, it)| offer(ui, n, it));
        return;
    }
    for broken in &found.broken {
        let nearest = broken.nearest.map_or_else(String::new, |it| {
            format!(": nearest {}", in_units(broken.figure, it, units))
        });
        let (figure, why) = (broken.figure.words(), &broken.why);
        caution(ui, &format!("No shape meets its {figure}{nearest}. In the way: {why}"));
    }
    if let Some(nearest) = &found.nearest {
        offer(ui, 0, nearest);
    }
}
