//! The blade carved to its card: what is held, and the shapes that were found.

use backlift::units::{Quantity, spoken};
use backlift::workshop::to_card::{Answer, ToCard};
use egui::{RichText, Ui};

use super::deeds::{button, button_if, tick};
use super::target::in_units;
use super::words::{caution, head, quiet, wrapped};
use crate::figure::plain;
use crate::sentences::wish;
use crate::studio::action::Action;
use crate::studio::state::Studio;
use crate::studio::wood::action::{Holdable, WoodAction};
use crate::studio::work::Question;

pub fn carve(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
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
            quiet(
                ui,
                &format!("edge {edge}, spine {spine}, swell {swell} from the toe{as_wished}"),
            );
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
