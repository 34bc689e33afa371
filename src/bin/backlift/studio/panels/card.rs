//! The card: what the maker gets, its files, and a delivered bat held against it.

use backlift::card::Card;
use backlift::card::returned_bat::Item;
use backlift::units::Units;
use egui::{ColorImage, TextureOptions, Ui};

use super::deeds::button;
use super::kept::kept;
use super::table::{Table, name};
use super::words::{head, quiet, sentence, small, why};
use crate::sentences::returned;
use crate::studio::action::{Action, View};
use crate::studio::state::Studio;

/// The card as it is printed.
pub fn preview(ui: &mut Ui, it: &Studio, _: &mut Vec<Action>) {
    let Some(picture) = it.card_picture() else {
        return match it.fitted() {
            Some(_) => quiet(ui, "The card is being drawn"),
            None => super::today::so_far(ui, it),
        };
    };
    let texture = kept(ui, "card picture", picture.key, || {
        let image = ColorImage::from_rgba_unmultiplied(
            picture.it.size.map(|it| it as usize),
            &picture.it.rgba,
        );
        Some(ui.ctx().load_texture("card", image, TextureOptions::LINEAR))
    });
    let Some(texture) = texture else { return };
    let [width, height] = picture.it.size.map(|it| it as f32);
    // As wide as the room is with letters of the usual size, and as much larger as they are.
    let shown = ui.available_width() * it.look.text_scale;
    egui::ScrollArea::both().show(ui, |ui| {
        let size = egui::vec2(shown, shown * height / width);
        let image = egui::Image::new((texture.id(), size)).alt_text("the card, one A4 page");
        ui.add(image);
    });
}

/// What stands beside it.
pub fn card(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    match it.fitted() {
        Some(_) => super::map_figures::advice(ui, it),
        None => sentence(ui, "The card tells a maker five figures, and how far each may be off"),
    }
    super::map_figures::search(ui, it, out);
    if let Some(fitted) = it.fitted() {
        super::today::short(ui, it);
        super::today::rests(ui, it);
        quiet(ui, &fitted.it.card.how_sure);
        write(ui, it, out);
        cautions(ui, &fitted.it.card);
    }
    check(ui, it, out);
}

pub fn write(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    ui.add_enabled_ui(!it.is_fit_stale(), |ui| {
        button(ui, out, "Write the card…", Action::AskCard)
            .on_hover_text("PDF, RON and PNG, with the map and the innings");
    });
}

/// A card's cautions, framed.
pub fn cautions(ui: &mut Ui, card: &Card) {
    head(ui, "To be known");
    let rule = egui::Stroke::new(1.0, ui.visuals().text_color());
    egui::Frame::new().stroke(rule).inner_margin(8.0).show(ui, |ui| {
        ui.set_width(ui.available_width());
        card.cautions.iter().for_each(|it| small(ui, it));
    });
}

fn check(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    head(ui, "Is the delivered bat this one?");
    let label = it.label(it.bench_bat);
    ui.horizontal_wrapped(|ui| {
        ui.weak("bat at the bench");
        ui.label(&label);
        button(ui, out, "Measure it", Action::View(View::Bench));
    });
    ui.horizontal_wrapped(|ui| {
        button(ui, out, "Check it against this card", Action::CheckHere);
        button(ui, out, "Against another card…", Action::AskCheck);
    });
    let Some(check) = &it.check else { return };
    sentence(ui, &check.sentence());
    let table = Table::new(ui, &[1.0, 1.2, 1.8, 0.6]);
    table.heads(ui, &["", "measured", "asked, and its limits", "within"]);
    check.items.iter().for_each(|item| row(ui, &table, item, it.look.units));
}

fn row(ui: &mut Ui, table: &Table, item: &Item, units: Units) {
    let told = returned::in_words(item, units);
    table.row(ui, |ui, n| match n {
        0 => name(ui, item.figure.words()),
        1 => why(ui, &told.measured, "At the bench, ± one standard deviation"),
        2 => {
            ui.label(&told.asked);
            quiet(ui, &told.limits);
        }
        _ => {
            ui.label(&told.within);
        }
    });
}
