//! Sections of the blade side by side, face up, the one at the swell with points to drag.

use backlift::bat::blade::{Blade, Station};
use backlift::bat::mesh::{ACROSS, outline};
use backlift::bat::shape::BatShape;
use backlift::frames::DVec3;
use backlift::units::{Quantity, spoken};
use egui::{
    Align2, FontId, Painter, Pos2, Rect, Sense, Shape, Stroke, TextStyle, Ui, Vec2, WidgetType,
};

use super::grab;
use super::words::named;
use crate::figure::plain;
use crate::studio::action::Action;
use crate::studio::look::Look;
use crate::studio::state::Studio;
use crate::studio::style::{ink, mixed, theme};
use crate::studio::wood::action::Work;

/// Places of the sections beside the swell, as shares of the way from shoulder to toe.
const BESIDE: [f64; 3] = [0.12, 0.42, 0.97];
/// Room for one section, over the blade's width, and for letters under it, px at scale 1.
const ROOM: f64 = 1.22;
const UNDER_PX: f32 = 38.0;
/// Fields whose points lie on the section at the swell.
const DRAGGED: [&str; 5] =
    ["blade.depth", "blade.edge", "blade.width", "blade.hollow", "blade.camber"];

struct Drawn<'a> {
    painter: Painter,
    look: &'a Look,
    px_per_m: f64,
    middle: Pos2,
    blade: &'a Blade,
    font: FontId,
}

impl Drawn<'_> {
    fn at(&self, y_m: f64, z_m: f64) -> Pos2 {
        let right = self.px_per_m * y_m;
        let down = self.px_per_m * (self.blade.face_m - z_m);
        self.middle + Vec2::new(right as f32, down as f32)
    }

    fn outline(&self, station: &Station) -> Vec<Pos2> {
        let around = outline(self.blade, 0.0, station, ACROSS).concat();
        // Each section from its own face, whatever the bow.
        let up = self.blade.face_m - self.blade.face_at_m(station.from_shoulder);
        let mut points: Vec<Pos2> = around.into_iter().map(|it| self.at(it.y, it.z + up)).collect();
        points.extend(points.first().copied());
        points
    }

    /// The section filled, how it was or will be dashed over it.
    fn section(&self, station: &Station, other: Option<&Station>) {
        let theme = theme(self.look);
        let outline = self.outline(station);
        // A fan from the spine's axis fills a section that is hollow.
        let inside = self.at(0.0, self.blade.face_m - 0.4 * station.depth_m);
        let wood = mixed(theme.ground, theme.hairline, 0.7);
        let mut mesh = egui::Mesh::default();
        mesh.colored_vertex(inside, wood);
        outline.iter().for_each(|it| mesh.colored_vertex(*it, wood));
        (1..outline.len() as u32).for_each(|n| mesh.add_triangle(0, n, n + 1));
        self.painter.add(Shape::mesh(mesh));
        self.painter.add(Shape::line(outline, Stroke::new(1.5, ink(theme.ink))));
        if let Some(other) = other.filter(|it| *it != station) {
            let line = Stroke::new(1.5, ink(theme.bats[1]));
            self.painter.extend(Shape::dashed_line(&self.outline(other), line, 5.0, 4.0));
        }
    }

    fn words(&self, station: &Station) {
        let theme = theme(self.look);
        let from_toe_m = self.blade.from_toe_m(station);
        let from_toe = spoken(Quantity::Length, from_toe_m, 0.001, self.look.units);
        let line = self.font.size * 1.2;
        let low = self.middle + Vec2::new(0.0, (0.068 * self.px_per_m) as f32);
        let mm = |it_m: f64| plain(1e3 * it_m, 1, "mm");
        let (edge, depth) = (mm(station.edge_m), mm(station.depth_m));
        let lines = [
            [format!("{from_toe} from the toe"), from_toe],
            [format!("edge {edge}, depth {depth}"), format!("{edge}, {depth}")],
        ];
        for (n, [long, short]) in lines.into_iter().enumerate() {
            let at = low + Vec2::new(0.0, line * n as f32);
            let set = |words: String| {
                self.painter.layout_no_wrap(words, self.font.clone(), ink(theme.quiet))
            };
            let long = set(long);
            let fits = long.size().x < self.painter.clip_rect().width() - 8.0;
            let galley = if fits { long } else { set(short) };
            if galley.size().x > self.painter.clip_rect().width() {
                continue;
            }
            let rect = Align2::CENTER_TOP.anchor_size(at, galley.size());
            self.painter.galley(rect.min, galley, ink(theme.quiet));
        }
    }
}

/// The shape that is held beside the one on the screen, and what its dashes are.
fn beside(it: &Studio) -> (Option<&BatShape>, &'static str) {
    match it.wood.work {
        Work::Shape => {
            let before = it.wood.before.as_ref().map(|it| &it.bat.shape);
            (before, "dashed: as it was saved or began")
        }
        Work::Plane => {
            let plan = it.wood.planned.as_ref().and_then(|it| it.plan.as_ref().ok());
            let last = plan.and_then(|it| it.passes.last());
            (last.map(|it| &it.shape), "dashed: when all is planed")
        }
    }
}

pub fn sections(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let Some(shape) = it.wood.shown() else { return };
    let blade = &shape.blade;
    let Some(swell) = blade.deepest().copied() else { return };
    let mut places: Vec<f64> = BESIDE.into_iter().chain([swell.from_shoulder]).collect();
    places.sort_by(f64::total_cmp);
    let (whole, response) = ui.allocate_exact_size(ui.available_size(), Sense::hover());
    let under = UNDER_PX * it.look.text_scale;
    let each = whole.width() / places.len() as f32;
    let px_per_m = (f64::from(each) / (ROOM * blade.width_m()))
        .min(f64::from(whole.height() - under) / 0.075)
        .max(1.0);
    let font = TextStyle::Small.resolve(ui.style());
    let (other, dashes) = beside(it);
    let mut at_swell = None;
    for (n, place) in places.iter().enumerate() {
        let Some(station) = blade.at(*place) else { continue };
        let left = whole.left() + n as f32 * each;
        let room = Rect::from_x_y_ranges(left..=left + each, whole.y_range());
        let pen = Drawn {
            painter: ui.painter_at(room),
            look: &it.look,
            px_per_m,
            middle: Pos2::new(left + 0.5 * each, whole.top() + 8.0),
            blade,
            font: font.clone(),
        };
        let other = other.and_then(|it| it.blade.at(*place));
        pen.section(&station, other.as_ref());
        pen.words(&station);
        if *place == swell.from_shoulder {
            at_swell = Some(pen);
        }
    }
    let quiet = ink(theme(&it.look).quiet);
    ui.painter().text(whole.left_bottom(), Align2::LEFT_BOTTOM, dashes, font.clone(), quiet);
    named(&response, WidgetType::Image, "sections of the blade, shoulder to toe, face up");
    let Some(pen) = at_swell.filter(|_| it.wood.work == Work::Shape) else { return };
    let on_screen = |point_B: DVec3| Some(pen.at(point_B.y, point_B.z));
    let mut points = it.wood.grabs(shape);
    points.retain(|it| DRAGGED.contains(&it.path));
    grab::offer(ui, "section", &points, &on_screen, out);
    grab::marks(ui.painter(), &it.look, "section", &points, &on_screen);
}
