//! The card that the wood is held against.

use backlift::card::Card;
use backlift::measurement::person::Handed;
use backlift::units::{Quantity, Units, spoken};
use egui::Ui;

use super::deeds::button;
use super::map_figures::search;
use super::words::{caution, quiet};
use crate::studio::action::Action;
use crate::studio::state::Studio;
use crate::studio::wood::action::WoodAction;
use crate::studio::work::Question;

/// Which card, and how to get one.
pub fn wood_card(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    match it.wood_card() {
        None => quiet(ui, "There is no card yet: open one, or find the bat for this player first"),
        Some(card) => {
            let whence = match (it.wood.own_card(), &it.wood.card) {
                (Some(_), _) => "The card in the bat's own file",
                (None, Some(_)) => "A card that was opened",
                (None, None) => "The fitting's card",
            };
            let who = player(card, it.look.units);
            quiet(ui, &format!("{whence}: size {}, for {who}", card.size));
            let own = it.wood.worked.as_ref().map(|it| it.loaded.size.name.as_str());
            if own.is_some_and(|own| own != card.size) {
                caution(ui, "The blade is of another size: start a new one, or change its size");
            }
        }
    }
    if it.wood.own_card().is_some() {
        return;
    }
    ui.horizontal_wrapped(|ui| {
        button(ui, out, "Open a card…", Action::Wood(WoodAction::AskCard));
        if it.wood.card.is_some() && it.fitted().is_some() {
            button(ui, out, "The fitting's own", Action::Wood(WoodAction::FittedCard));
        }
    });
    // Weighing a bat again does not change what was asked for: its card stays.
    if it.wood_card().is_none() || it.work.job(Question::Fit).is_some() {
        search(ui, it, out);
    } else if it.wood.card.is_none() && it.is_fit_stale() {
        quiet(
            ui,
            "The scenario has changed since: if the player did, find the bat again on the map",
        );
    }
}

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
