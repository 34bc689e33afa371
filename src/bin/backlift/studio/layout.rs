//! The window laid out: what stands where in each view, at every size.

use egui::{CentralPanel, Frame, Margin, Panel as Side, Rect, ScrollArea, Ui};

use super::action::Action;
use super::panels::{Layout, Panel, bats, grab, notices, playback, row, scene, top, words};
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
    let margin = Margin::same((GRID * scale.min(1.25)) as i8);
    let paper = Frame::new().fill(ink(theme(&it.look).ground)).inner_margin(margin);
    top::keys(ui, it, out);
    Side::top("top").frame(paper).show(ui, |ui| {
        top::top(ui, it, out);
        notices::notices(ui, it, out);
    });
    notices::changes_in_the_way(ui, it, out);
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
            ScrollArea::vertical().show(ui, |ui| bats::hands_and_bats(ui, it, out));
        });
    }
    let low = ui.available_height() < LOW * scale;
    let (id, size) = match row.layout {
        Layout::Columns(_) => ("pendulum", 0.5 * ui.available_width()),
        _ => ("figures", (52.0 * GRID * scale).min(0.45 * width)),
    };
    let mut room = Rect::NOTHING;
    let figures = Side::right(id).frame(paper).exact_size(size).show(ui, |ui| {
        if let Layout::Whole { has_net: true, .. } = row.layout {
            room = corner(ui);
            scene::scene(ui, it, room, out);
        }
        ScrollArea::vertical().show(ui, |ui| {
            (row.beside)(ui, it, out);
            if let (Layout::Net(under), true) = (&row.layout, low) {
                playback::playback(ui, it, out);
                if let Some(under) = under {
                    let size = egui::vec2(ui.available_width(), 0.5 * LOW * scale);
                    ui.allocate_ui(size, |ui| under(ui, it, out));
                }
            }
            if narrow && has_bats {
                bats::hands_and_bats(ui, it, out);
            }
        });
    });
    match row.layout {
        Layout::Columns(left) => {
            CentralPanel::default().frame(paper).show(ui, |ui| {
                ScrollArea::vertical().show(ui, |ui| left(ui, it, out));
            });
        }
        Layout::Whole { panel, .. } => {
            CentralPanel::default().frame(paper).show(ui, |ui| panel(ui, it, out));
        }
        Layout::Workbench { over, under } => {
            room = on_the_bench(ui, it, out, paper, [over, under]);
        }
        Layout::Net(under) => {
            if !low {
                below(ui, it, out, paper, under);
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
fn on_the_bench(
    ui: &mut Ui,
    it: &Studio,
    out: &mut Vec<Action>,
    paper: Frame,
    [over, under]: [Panel; 2],
) -> Rect {
    Side::top("sides").frame(paper).show(ui, |ui| over(ui, it, out));
    // As high as sections are that fill the width.
    let scale = it.look.text_scale;
    let height = (0.19 * ui.available_width() + 56.0 * scale).min(0.45 * ui.available_height());
    Side::bottom("sections").frame(paper).exact_size(height).show(ui, |ui| under(ui, it, out));
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

/// Under the scene: time, and what the view has there.
fn below(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>, paper: Frame, under: Option<Panel>) {
    Side::bottom("playback").frame(paper).show(ui, |ui| playback::playback(ui, it, out));
    if let Some(under) = under {
        let height = 0.42 * ui.available_height();
        Side::bottom("innings").frame(paper).exact_size(height).show(ui, |ui| under(ui, it, out));
    }
}
