//! The window's panels: plain functions on egui that show the state and say what was done.

mod bats;
mod bench;
mod card;
mod carve;
mod chart;
mod description;
mod diagram;
mod field;
pub mod grab;
mod innings;
mod kept;
mod keys;
mod map;
mod map_figures;
mod notices;
mod ounce;
mod pendulum;
mod pickup;
mod planing;
mod playback;
mod player;
mod scene;
mod sections;
mod start;
mod swing;
mod table;
pub mod target;
mod today;
mod top;
mod wood;
mod words;

use egui::{CentralPanel, Frame, Margin, Panel, Rect, ScrollArea, Ui};

pub use words::bat_line;

use super::action::{Action, View};
use super::state::Studio;
use super::style::{self, GRID, ink, theme};
use super::wood::action::Work;

/// Narrower than this, px at scale 1, both sides stand on the right.
const NARROW: f32 = 1150.0;

/// Lower than this, px at scale 1, what stands under the scene stands beside it.
const LOW: f32 = 460.0;

/// Share of the height that what must stand everywhere may take.
const STANDING_SHARE: f32 = 0.12;

/// Shows everything, and does what was done. Returns where the scene may be drawn; an empty rectangle
/// where it is not shown.
pub fn show(ui: &mut Ui, it: &mut Studio) -> Rect {
    style::apply(ui.ctx(), &it.look);
    if !style::is_in_force(ui.ctx()) {
        ui.ctx().request_repaint();
        return Rect::NOTHING;
    }
    let mut out = Vec::new();
    let scene = laid_out(ui, it, &mut out);
    if !out.is_empty() {
        ui.ctx().request_repaint();
    }
    out.into_iter().for_each(|action| it.apply(action));
    scene
}

fn laid_out(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) -> Rect {
    let scale = it.look.text_scale;
    let theme = theme(&it.look);
    let margin = Margin::same((GRID * scale.min(1.25)) as i8);
    let paper = Frame::new().fill(ink(theme.ground)).inner_margin(margin);
    top::keys(ui, it, out);
    Panel::top("top").frame(paper).show(ui, |ui| {
        top::top(ui, it, out);
        notices::notices(ui, it, out);
    });
    notices::changes_in_the_way(ui, it, out);
    let standing = it.standing();
    if !standing.is_empty() {
        // Large letters do not leave the view without room.
        let most = STANDING_SHARE * ui.available_height();
        Panel::bottom("standing").frame(paper).show(ui, |ui| {
            ScrollArea::vertical().max_height(most).show(ui, |ui| {
                words::quiet(ui, &standing.join(" "));
            });
        });
    }
    let width = ui.available_width();
    let narrow = width < NARROW * scale;
    let side = (34.0 * GRID * scale).min(0.28 * width);
    let figures = (52.0 * GRID * scale).min(0.45 * width);
    let has_bats = !matches!(it.view, View::Wood);
    if !narrow && has_bats {
        Panel::left("hands and bats").frame(paper).exact_size(side).show(ui, |ui| {
            ScrollArea::vertical().show(ui, |ui| bats::hands_and_bats(ui, it, out));
        });
    }
    if matches!(it.view, View::Bench) {
        let whole = ui.available_width();
        Panel::right("pendulum").frame(paper).exact_size(0.5 * whole).show(ui, |ui| {
            ScrollArea::vertical().show(ui, |ui| {
                pendulum::pendulum(ui, it, out);
                if narrow {
                    bats::hands_and_bats(ui, it, out);
                }
            });
        });
        CentralPanel::default().frame(paper).show(ui, |ui| {
            ScrollArea::vertical().show(ui, |ui| {
                bench::bench(ui, it, out);
                diagram::bat(ui, &it.look);
                player::player(ui, it, out);
            });
        });
        return Rect::NOTHING;
    }
    let mut room = Rect::NOTHING;
    let has_below = !matches!(it.view, View::Map | View::Card | View::Wood);
    let low = has_below && ui.available_height() < LOW * scale;
    let figures = Panel::right("figures").frame(paper).exact_size(figures).show(ui, |ui| {
        if matches!(it.view, View::Map) {
            room = corner(ui);
            scene::scene(ui, it, room, out);
        }
        ScrollArea::vertical().show(ui, |ui| {
            beside(ui, it, out);
            if low {
                playback::playback(ui, it, out);
                if matches!(it.view, View::Innings) {
                    let size = egui::vec2(ui.available_width(), 0.5 * LOW * scale);
                    ui.allocate_ui(size, |ui| innings::innings(ui, it, out));
                }
            }
            if narrow && has_bats {
                bats::hands_and_bats(ui, it, out);
            }
        });
    });
    match it.view {
        View::Map => {
            CentralPanel::default().frame(paper).show(ui, |ui| map::map(ui, it, out));
        }
        View::Card => {
            CentralPanel::default().frame(paper).show(ui, |ui| card::preview(ui, it));
        }
        View::Wood => {
            room = on_the_bench(ui, it, out, paper);
        }
        _ => {
            if !low {
                below(ui, it, out, paper);
            }
            room = ui.available_rect_before_wrap();
            // Large letters may have asked for more than the figures' share.
            room.max.x = room.max.x.min(figures.response.rect.left());
            scene::scene(ui, it, room, out);
        }
    }
    room
}

/// The bat on the maker's bench with its sections under it; returns the room for the bat.
fn on_the_bench(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>, paper: Frame) -> Rect {
    Panel::top("sides").frame(paper).show(ui, |ui| wood::sides(ui, it, out));
    // As high as sections are that fill the width.
    let scale = it.look.text_scale;
    let height = (0.19 * ui.available_width() + 56.0 * scale).min(0.45 * ui.available_height());
    Panel::bottom("sections").frame(paper).exact_size(height).show(ui, |ui| {
        sections::sections(ui, it, out);
    });
    let room = ui.available_rect_before_wrap();
    scene::scene(ui, it, room, out);
    if let Some(bench) = it.on_bench(room).filter(|_| it.wood.work == Work::Shape) {
        let on_screen = |point_B| bench.eye.on_screen(bench.point_W(point_B), room);
        grab::offer(ui, "room", &it.wood.grabs(bench.shape), &on_screen, out);
    }
    room
}

/// Room for the scene above the figures.
fn corner(ui: &mut Ui) -> Rect {
    let height = 0.36 * ui.available_height();
    let size = egui::vec2(ui.available_width(), height);
    let (rect, _) = ui.allocate_exact_size(size, egui::Sense::hover());
    rect
}

fn beside(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    match it.view {
        View::Start => start::start(ui, it, out),
        View::Bench | View::Swing => swing::swing(ui, it, out),
        View::Innings => {
            innings::words(ui, it);
            today::bats(ui, it);
            words::head(ui, &swing::heading(it));
            swing::rows(ui, it);
            swing::failed(ui, it);
        }
        View::Map => map_figures::map_figures(ui, it, out),
        View::Pickup => pickup::pickup(ui, it, out),
        View::Card => card::card(ui, it, out),
        View::Wood => wood::wood(ui, it, out),
    }
}

/// Under the scene: time, and the innings where it is asked for.
fn below(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>, paper: Frame) {
    Panel::bottom("playback").frame(paper).show(ui, |ui| playback::playback(ui, it, out));
    if matches!(it.view, View::Innings) {
        let height = 0.42 * ui.available_height();
        Panel::bottom("innings").frame(paper).exact_size(height).show(ui, |ui| {
            innings::innings(ui, it, out);
        });
    }
}
