//! Points of the bat that are dragged, wherever a bat is drawn: in the room, and in its sections.

use backlift::files::shape_text::{mm, percent};
use backlift::frames::DVec3;
use backlift::workshop::grab::Grab;
use egui::{CursorIcon, Id, Painter, Pos2, Rect, Sense, Stroke, Ui, Vec2, WidgetType};

use super::words::named;
use crate::studio::action::Action;
use crate::studio::look::Look;
use crate::studio::style::{ink, theme};
use crate::studio::wood::action::WoodAction;

/// Side of what is taken hold of, and radius of what is drawn of it, px.
const TARGET_PX: f32 = 22.0;
const RADIUS_PX: f32 = 5.0;
/// A point whose way is seen shortened to less than this is not offered.
const SEEN: f64 = 0.5;
/// Length by which ways are measured on the screen, m.
const STEP_M: f64 = 1e-3;

/// Where a point of the bat, m, B, stands on the screen.
pub type OnScreen<'a> = &'a dyn Fn(DVec3) -> Option<Pos2>;

pub struct Offered {
    pub at: Pos2,
    /// How far it goes on the screen for each unit of its figure, px.
    pub per_unit: [f64; 2],
}

#[derive(Clone, Copy)]
struct Drag {
    from: f64,
    pointer: Pos2,
    per_unit: [f64; 2],
}

/// Where it is drawn, if its way can be seen from there.
pub fn offered(grab: &Grab, on_screen: OnScreen<'_>) -> Option<Offered> {
    let at = on_screen(grab.at_B)?;
    let along = |way_B: DVec3| {
        let to = on_screen(grab.at_B + way_B * STEP_M)?;
        Some([f64::from(to.x - at.x) / STEP_M, f64::from(to.y - at.y) / STEP_M])
    };
    let long = |it: [f64; 2]| libm::hypot(it[0], it[1]);
    let way_m = grab.way_B.length();
    let per_metre = along(grab.way_B / way_m)?;
    let axes = [DVec3::X, DVec3::Y, DVec3::Z].into_iter().filter_map(along);
    let most = axes.map(long).fold(0.0, f64::max);
    (long(per_metre) >= SEEN * most)
        .then(|| Offered { at, per_unit: per_metre.map(|it| it * way_m) })
}

/// Lets all that can be seen be dragged; `place` tells one drawing from another.
pub fn offer(
    ui: &mut Ui,
    place: &str,
    grabs: &[Grab],
    on_screen: OnScreen<'_>,
    out: &mut Vec<Action>,
) {
    for grab in grabs {
        let Some(Offered { at, per_unit }) = offered(grab, on_screen) else { continue };
        let id = id(place, grab);
        let rect = Rect::from_center_size(at, Vec2::splat(TARGET_PX));
        let response = ui.interact(rect, id, Sense::drag());
        if response.drag_started()
            && let Some(pointer) = ui.input(|input| input.pointer.press_origin())
        {
            let drag = Drag { from: grab.value, pointer, per_unit };
            ui.data_mut(|data| data.insert_temp(id, drag));
        }
        if response.dragged()
            && let (Some(drag), Some(now)) =
                (ui.data(|data| data.get_temp::<Drag>(id)), response.interact_pointer_pos())
        {
            let by = now - drag.pointer;
            let by = [f64::from(by.x), f64::from(by.y)];
            let value = grab.dragged(drag.from, by, drag.per_unit);
            if let Some(value) = value.filter(|it| *it != grab.value) {
                out.push(Action::Wood(WoodAction::Grab(grab.path.to_owned(), value)));
            }
        }
        if response.drag_stopped() {
            out.push(Action::Wood(WoodAction::LetGo));
        }
        let words = told(grab);
        named(&response, WidgetType::Other, &words);
        response.on_hover_cursor(CursorIcon::Grab).on_hover_text(words);
    }
}

/// Its name and figure.
pub fn told(grab: &Grab) -> String {
    let value = if grab.is_share {
        percent((grab.value * 1e3).round() / 1e3)
    } else {
        mm((grab.value * 1e4).round() / 1e4)
    };
    format!("drag: {} {}", grab.name, value.0)
}

fn id(place: &str, grab: &Grab) -> Id {
    Id::new(("grab", place, grab.path))
}

/// Draws those that are offered: a ring with a stroke each way it goes; full while the pointer is on it.
pub fn marks(painter: &Painter, look: &Look, place: &str, grabs: &[Grab], on_screen: OnScreen<'_>) {
    let theme = theme(look);
    let (line, colour) = (Stroke::new(2.0, ink(theme.ink)), ink(theme.bats[0]));
    for grab in grabs {
        let Some(Offered { at, per_unit }) = offered(grab, on_screen) else { continue };
        let response = painter.ctx().read_response(id(place, grab));
        let is_near = response.is_some_and(|it| it.hovered() || it.dragged());
        let way = Vec2::new(per_unit[0] as f32, per_unit[1] as f32).normalized();
        for sign in [-1.0, 1.0] {
            let from = at + sign * (RADIUS_PX + 1.0) * way;
            painter.line_segment([from, from + sign * 7.0 * way], line);
        }
        let fill = if is_near { colour } else { ink(theme.panel) };
        painter.circle(at, RADIUS_PX, fill, Stroke::new(2.0, colour));
    }
}
