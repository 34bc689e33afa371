//! The window laid out: what stands where in each view, at every size.

use egui::{CentralPanel, Frame, Margin, Panel as Side, Rect, ScrollArea, Ui, UiBuilder};

use super::action::Action;
use super::panels::{Layout, Panel, bats, grab, notices, playback, row, shortcuts, top, words};
use super::state::Studio;
use super::style::{self, GRID, ink, theme};
use super::wood::action::Work;

/// Narrower than this, px at scale 1, both sides stand on the right.
const NARROW: f32 = 1150.0;

/// Lower than this, px at scale 1, what stands under the scene stands beside it.
const LOW: f32 = 460.0;
/// The same where two panels stand under it.
const LOW_FOR_TWO: f32 = 560.0;

/// Share of the height that what must stand everywhere may take.
const STANDING_SHARE: f32 = 0.12;

/// Share of a column that a field or a slider takes at most.
const FIELD_SHARE: f32 = 0.34;

/// Shows everything, and does what was done. Returns where the scene may be drawn; an empty rectangle
/// where it is not shown.
pub fn show(ui: &mut Ui, it: &mut Studio) -> Rect {
    style::apply(ui.ctx(), &it.look);
    if !style::is_in_force(ui.ctx()) {
        ui.ctx().request_repaint();
        return Rect::NOTHING;
    }
    let mut out = Vec::new();
    let (field, view) = (ui.memory(|memory| memory.focused()), it.view);
    let keyed = shortcuts::shortcuts(ui, it);
    let is_keyed = !keyed.is_empty();
    let scene = laid_out(ui, it, &mut out);
    // What is typed in a field that a key left is counted before what the key means.
    out.extend(keyed);
    if !out.is_empty() {
        ui.ctx().request_repaint();
    }
    out.into_iter().for_each(|action| it.apply(action));
    // Who saves goes on typing.
    let stays = is_keyed && it.view == view && it.waiting.is_none() && it.asks.is_empty();
    if let Some(field) = field.filter(|_| stays) {
        ui.memory_mut(|memory| memory.request_focus(field));
    }
    scene
}

fn laid_out(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) -> Rect {
    let scale = it.look.text_scale;
    let margin = Margin::same((GRID * scale.min(1.25)) as i8);
    let paper = Frame::new().fill(ink(theme(&it.look).ground)).inner_margin(margin);
    Side::top("top").frame(paper).show(ui, |ui| {
        top::top(ui, it, out);
        notices::notices(ui, it, out);
    });
    notices::changes_in_the_way(ui, it, out);
    notices::path(ui, it, out);
    let standing = it.standing();
    if !standing.is_empty() {
        // Large letters do not leave the view without room.
        let most = STANDING_SHARE * ui.available_height();
        Side::bottom("standing").frame(paper).show(ui, |ui| {
            ScrollArea::vertical().max_height(most).show(ui, |ui| {
                words::quiet(ui, &standing.join(" "));
            });
        });
    }
    let row = row(it.view);
    let width = ui.available_width();
    let narrow = width < NARROW * scale;
    let side = (34.0 * GRID * scale).min(0.28 * width);
    let has_bats = !matches!(row.layout, Layout::Workbench { .. });
    if !narrow && has_bats {
        Side::left("hands and bats").frame(paper).exact_size(side).show(ui, |ui| {
            column(ui, |ui| bats::hands_and_bats(ui, it, out));
        });
    }
    let least = match row.layout {
        Layout::Net(Some(_)) => LOW_FOR_TWO,
        _ => LOW,
    };
    let low = ui.available_height() < least * scale;
    let (id, size) = match row.layout {
        Layout::Columns(_) => ("pendulum", 0.5 * ui.available_width()),
        _ => ("figures", (52.0 * GRID * scale).min(0.45 * width)),
    };
    let mut room = Rect::NOTHING;
    Side::right(id).frame(paper).exact_size(size).show(ui, |ui| {
        if let Layout::Whole { has_net: true, .. } = row.layout {
            // Above the figures.
            let size = egui::vec2(ui.available_width(), 0.36 * ui.available_height());
            room = ui.allocate_exact_size(size, egui::Sense::hover()).0;
            playback::scene(ui, it, room, out);
        }
        column(ui, |ui| {
            (row.beside)(ui, it, out);
            let size = egui::vec2(ui.available_width(), 0.5 * LOW * scale);
            match &row.layout {
                Layout::Net(under) if low => {
                    playback::playback(ui, it, out);
                    under.iter().for_each(|under| {
                        ui.allocate_ui(size, |ui| under(ui, it, out));
                    });
                }
                Layout::Workbench { under, .. } if low => {
                    ui.allocate_ui(size, |ui| under(ui, it, out));
                }
                _ => {}
            }
            if narrow && has_bats {
                bats::hands_and_bats(ui, it, out);
            }
        });
    });
    match row.layout {
        Layout::Columns(left) => {
            CentralPanel::default().frame(paper).show(ui, |ui| {
                column(ui, |ui| left(ui, it, out));
            });
        }
        Layout::Whole { panel, .. } => {
            CentralPanel::default().frame(paper).show(ui, |ui| panel(ui, it, out));
        }
        Layout::Workbench { over, under } => {
            let under = Some(under).filter(|_| !low);
            room = on_the_bench(ui, it, out, paper, over, under);
        }
        Layout::Net(under) => {
            if !low {
                below(ui, it, out, paper, under);
            }
            room = ui.available_rect_before_wrap();
            playback::scene(ui, it, room, out);
        }
    }
    room
}

/// A column that scrolls, and stays as wide as it is whatever stands in it: a panel that is asked for more moves under its
/// neighbour.
fn column(ui: &mut Ui, add: impl FnOnce(&mut Ui)) {
    let room = ui.available_rect_before_wrap();
    let mut inside = ui.new_child(UiBuilder::new().max_rect(room));
    // Fields and sliders leave room for the words beside them.
    let most = FIELD_SHARE * room.width();
    let spacing = inside.spacing_mut();
    spacing.text_edit_width = spacing.text_edit_width.min(most);
    spacing.slider_width = spacing.slider_width.min(most);
    ScrollArea::vertical().show(&mut inside, add);
    ui.advance_cursor_after_rect(room);
}

/// The bat on the maker's bench, with its sections under it where they are there; returns the room for the bat.
fn on_the_bench(
    ui: &mut Ui,
    it: &Studio,
    out: &mut Vec<Action>,
    paper: Frame,
    over: Panel,
    under: Option<Panel>,
) -> Rect {
    Side::top("sides").frame(paper).show(ui, |ui| over(ui, it, out));
    if let Some(under) = under {
        // As high as sections are that fill the width.
        let scale = it.look.text_scale;
        let height = (0.19 * ui.available_width() + 56.0 * scale).min(0.45 * ui.available_height());
        Side::bottom("sections").frame(paper).exact_size(height).show(ui, |ui| under(ui, it, out));
    }
    let room = ui.available_rect_before_wrap();
    playback::scene(ui, it, room, out);
    if let Some(bench) = it.on_bench(room).filter(|_| it.wood.work == Work::Shape) {
        let on_screen = |point_B| bench.eye.on_screen(bench.point_W(point_B), room);
        grab::offer(ui, "room", &it.wood.grabs(bench.shape), &on_screen, out);
    }
    room
}

/// Under the scene: time, and what the view has there.
fn below(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>, paper: Frame, under: Option<Panel>) {
    Side::bottom("playback").frame(paper).show(ui, |ui| playback::playback(ui, it, out));
    if let Some(under) = under {
        let height = 0.42 * ui.available_height();
        Side::bottom("innings").frame(paper).exact_size(height).show(ui, |ui| under(ui, it, out));
    }
}
