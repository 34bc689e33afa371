//! Small windows and large letters: nothing is cut off, nothing is covered.

use std::collections::BTreeSet;

use egui::{Event, Pos2, RawInput, Rect, Shape};

use super::{searched_demo, settle, settled_demo};
use crate::studio::action::{Action, View};
use crate::studio::layout::show;
use crate::studio::panels::{Row, VIEWS};
use crate::studio::state::Studio;
use crate::studio::wood::action::{WoodAction, Work};

/// What is drawn round words or beside them.
const BOX: &str = "a box";
/// Steps in which a column is scrolled to its end.
const SCROLLS: usize = 40;
/// So much of a letter's edge may be lost, points.
const EDGE: f32 = 1.5;

/// Words that are cut off at a side of their column, or lie under the net, wherever the columns are scrolled to.
fn cut(ctx: &egui::Context, it: &mut Studio, size: [f32; 2]) -> BTreeSet<String> {
    // Columns are at their start again.
    ctx.data_mut(|it| it.clear());
    let screen = Rect::from_min_size(Pos2::ZERO, size.into());
    let in_a_field = it.document.at("innings.mix");
    let mut cut = BTreeSet::new();
    for across in [0.1, 0.35, 0.85].map(|share| share * size[0]) {
        let mut before = Vec::new();
        for n in 0..SCROLLS {
            let wheel = Event::MouseWheel {
                unit: egui::MouseWheelUnit::Point,
                delta: egui::vec2(0.0, -0.25 * size[1]),
                phase: egui::TouchPhase::Move,
                modifiers: egui::Modifiers::NONE,
            };
            let events = vec![Event::PointerMoved(Pos2::new(across, 0.7 * size[1])), wheel];
            let input = RawInput { screen_rect: Some(screen), events, ..RawInput::default() };
            let mut room = Rect::NOTHING;
            let mut output = ctx.run_ui(input, |ui| room = show(ui, it));
            output.textures_delta.clear();
            let mut seen = Vec::new();
            for clipped in output.shapes {
                let column = clipped.clip_rect.intersect(screen);
                texts(&clipped.shape, &mut |words, place| {
                    seen.push((words.to_owned(), place));
                    // A field may hold more than it shows.
                    if words == in_a_field {
                        return;
                    }
                    let over = |edge: f32| edge > EDGE;
                    let leaves =
                        over(column.left() - place.left()) || over(place.right() - column.right());
                    let covered =
                        room.shrink(EDGE).intersects(place.intersect(column)) && words != BOX;
                    if place.intersects(column) && n > 3 && (leaves || covered) {
                        let how = if leaves { "leaves its column" } else { "lies under the net" };
                        cut.insert(format!("{words:?} at {:?} {how}", place.x_range()));
                    }
                });
            }
            // At its end; the first step is seen after some pictures.
            if n > 5 && seen == before {
                break;
            }
            before = seen;
        }
    }
    cut
}

fn texts(shape: &Shape, tell: &mut impl FnMut(&str, Rect)) {
    match shape {
        Shape::Vec(all) => all.iter().for_each(|it| texts(it, tell)),
        // A field, a button, a bar; hairlines and rings stand over their edge.
        Shape::Rect(it) if it.brush.is_none() && it.rect.height() > 12.0 && it.fill.a() > 0 => {
            tell(BOX, it.rect.shrink(3.0));
        }
        Shape::Text(it) if !it.galley.text().trim().is_empty() => {
            tell(it.galley.text(), it.galley.rect.translate(it.pos.to_vec2()));
        }
        _ => {}
    }
}

fn every_view(it: &mut Studio, size: [f32; 2], scale: f32) -> Vec<String> {
    it.apply(Action::TextScale(scale));
    let ctx = egui::Context::default();
    let mut all = Vec::new();
    for Row { view, .. } in &VIEWS {
        let works: &[Work] =
            if *view == View::Wood { &[Work::Shape, Work::Plane] } else { &[Work::Shape] };
        for work in works {
            it.apply(Action::Wood(WoodAction::Work(*work)));
            it.view = *view;
            it.tick(0.0);
            let told = cut(&ctx, it, size).into_iter();
            all.extend(told.map(|it| format!("{view:?} {size:?} {scale}: {it}")));
        }
    }
    all
}

#[test]
fn no_words_leave_their_column_in_a_small_window_with_large_letters() {
    let mut it = settled_demo();
    let mut all = Vec::new();
    for (size, scale) in [([1024.0, 600.0], 2.0), ([1024.0, 600.0], 1.0), ([1366.0, 768.0], 2.0)] {
        all.extend(every_view(&mut it, size, scale));
    }
    assert!(all.is_empty(), "{} cut:\n{}", all.len(), all.join("\n"));
}

#[test]
fn no_words_leave_their_column_beside_the_map_and_the_card() {
    let mut it = searched_demo();
    it.apply(Action::Try(0.98, 0.50));
    it.apply(Action::View(View::Card));
    settle(&mut it);
    it.apply(Action::CheckHere);
    it.apply(Action::View(View::Pickup));
    settle(&mut it);
    let all = every_view(&mut it, [1024.0, 600.0], 2.0);
    assert!(all.is_empty(), "{} cut:\n{}", all.len(), all.join("\n"));
}
