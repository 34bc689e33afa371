//! How to measure, drawn: where the tape goes, where the pencil, where the rods.

use egui::{
    Align, Align2, FontId, Mesh, Painter, Pos2, Rect, Sense, Shape, Stroke, TextStyle, Ui, Vec2,
    WidgetType,
};

use super::words::{named, quiet};
use crate::studio::look::Look;
use crate::studio::style::{GRID, ink, mixed, theme};

/// Half the outline of a bat seen from the front: share of its length from the top, and half its width as
/// a share of its length.
const OUTLINE: [(f32, f32); 8] = [
    (0.0, 0.018),
    (0.30, 0.018),
    (0.34, 0.03),
    (0.38, 0.058),
    (0.42, 0.062),
    (0.93, 0.062),
    (0.985, 0.048),
    (1.0, 0.03),
];

struct Pen {
    painter: Painter,
    whole: Rect,
    line: Stroke,
    mark: Stroke,
    font: FontId,
    wood: egui::Color32,
}

impl Pen {
    /// On a sheet of its own; the name is for those who do not see it.
    fn new(ui: &mut Ui, look: &Look, height: f32, name: &'static str) -> Self {
        let width = ui.available_width().min(70.0 * GRID * look.text_scale);
        let size = egui::vec2(width, height * look.text_scale);
        let (whole, response) = ui.allocate_exact_size(size, Sense::hover());
        named(&response, WidgetType::Image, name);
        let theme = theme(look);
        Self {
            painter: ui.painter_at(whole),
            whole,
            line: Stroke::new(1.5, ink(theme.ink)),
            mark: Stroke::new(1.5, ink(theme.bats[0])),
            font: TextStyle::Small.resolve(ui.style()),
            wood: mixed(theme.ground, theme.hairline, 0.6),
        }
    }

    /// A bat from its top along a direction, whose length it has.
    fn bat(&self, top: Pos2, along: Vec2) {
        let across = along.rot90();
        let side = |sign: f32| {
            OUTLINE.iter().map(move |(at, half)| top + along * *at + across * (sign * *half))
        };
        let mut wood = Mesh::default();
        for (n, (left, right)) in side(1.0).zip(side(-1.0)).enumerate() {
            wood.colored_vertex(left, self.wood);
            wood.colored_vertex(right, self.wood);
            let at = 2 * n as u32;
            if n > 0 {
                wood.add_triangle(at - 2, at - 1, at);
                wood.add_triangle(at - 1, at, at + 1);
            }
        }
        self.painter.add(Shape::mesh(wood));
        let mut outline: Vec<Pos2> = side(-1.0).collect();
        outline.reverse();
        let outline = side(1.0).chain(outline).collect();
        self.painter.add(Shape::closed_line(outline, self.line));
    }

    /// A length with marks at both ends.
    fn measure(&self, from: Pos2, to: Pos2) {
        let tick = (to - from).normalized().rot90() * 5.0;
        for end in [from, to] {
            self.painter.line_segment([end - tick, end + tick], self.mark);
        }
        self.painter.line_segment([from, to], self.mark);
    }

    /// Words that stay on the sheet: in several lines where they must.
    fn words(&self, at: Pos2, anchor: Align2, words: &str) {
        let sheet = self.painter.clip_rect();
        let [left, right] = [at.x - sheet.left(), sheet.right() - at.x];
        let room = match anchor.x() {
            Align::Min => right,
            Align::Center => 2.0 * left.min(right),
            Align::Max => left,
        };
        let colour = self.line.color;
        let galley = self.painter.layout(words.to_owned(), self.font.clone(), colour, room);
        let place = anchor.anchor_size(at, galley.size());
        self.painter.galley(place.min, galley, colour);
    }
}

/// Length, balance point and scale.
pub fn bat(ui: &mut Ui, look: &Look) {
    let pen = Pen::new(ui, look, 17.0 * GRID, "how to measure length and balance point");
    let inside = pen.whole.shrink(GRID);
    let top = Pos2::new(inside.left() + GRID, inside.center().y);
    let along = egui::vec2(inside.width() - 2.0 * GRID, 0.0);
    pen.bat(top, along);
    let lift = 0.075 * along.x + GRID;
    let balance = top + along * 0.61;
    let below = egui::vec2(0.0, lift);
    let [from, to] = [top - below, top + along - below];
    pen.measure(from, to);
    let middle = from + 0.5 * (to - from);
    pen.words(middle + egui::vec2(0.0, -3.0), Align2::CENTER_BOTTOM, "length");
    pen.painter.line_segment([top + below, balance + below], pen.mark);
    let tip = balance + egui::vec2(0.0, 0.064 * along.x);
    let foot = [tip, tip + egui::vec2(-7.0, 12.0), tip + egui::vec2(7.0, 12.0)];
    pen.painter.add(Shape::convex_polygon(foot.to_vec(), pen.mark.color, Stroke::NONE));
    let under = top + below + egui::vec2(0.3 * along.x, 3.0);
    pen.words(under, Align2::CENTER_TOP, "balance point, over a pencil");
    pen.words(top - egui::vec2(0.0, 0.02 * along.x + 2.0), Align2::LEFT_BOTTOM, "top");
    pen.words(top + along * 0.97, Align2::RIGHT_CENTER, "toe");
}

/// The pendulum: two rods, six inches down, a hand's breadth of swing.
pub fn pendulum(ui: &mut Ui, look: &Look) {
    let pen = Pen::new(ui, look, 26.0 * GRID, "how to hang the bat for the pendulum");
    let whole = pen.whole;
    let length = whole.height() - 3.0 * GRID;
    let pivot = Pos2::new(whole.center().x, whole.top() + 2.0 * GRID + 0.19 * length);
    for lean in [-0.2_f32, 0.2] {
        let down = egui::vec2(lean.sin(), lean.cos()) * length;
        let ghost = [pivot, pivot + down * 0.81];
        pen.painter.extend(Shape::dashed_line(&ghost, Stroke::new(1.0, pen.line.color), 4.0, 4.0));
    }
    pen.bat(pivot - egui::vec2(0.0, 0.19 * length), egui::vec2(0.0, length));
    for side in [-1.0, 1.0] {
        let out = pivot + egui::vec2(side * 6.0 * GRID, 0.0);
        pen.painter.line_segment([pivot, out], Stroke::new(3.0, pen.mark.color));
        let foot = [(-6.0, 0.0), (6.0, 0.0), (0.0, 12.0)].map(|(x, y)| out + egui::vec2(x, y));
        pen.painter.add(Shape::convex_polygon(foot.to_vec(), pen.line.color, Stroke::NONE));
    }
    let beside = pivot + egui::vec2(7.5 * GRID, 0.0);
    pen.words(beside, Align2::LEFT_CENTER, "rods on two edges");
    let left = pivot.x - 3.0 * GRID;
    let top = Pos2::new(left, pivot.y - 0.19 * length);
    pen.painter.line_segment([top, Pos2::new(left, pivot.y)], pen.mark);
    pen.words(Pos2::new(left - 4.0, pivot.y - 0.1 * length), Align2::RIGHT_CENTER, "pivot, 6 in");
    let low = pivot + egui::vec2(0.2 * length, 0.72 * length);
    pen.words(low, Align2::LEFT_CENTER, "out and back is one swing");
}

/// The player: what the tape and the dynamometer are held to.
pub fn player(ui: &mut Ui, look: &Look) {
    let pen = Pen::new(ui, look, 26.0 * GRID, "how to measure the player");
    let whole = pen.whole;
    let height = whole.height() - 2.0 * GRID;
    // The measure stands beside the figure, and its word beside that.
    let aside = -0.25;
    let left = (0.22 * whole.width()).max(4.5 * pen.font.size - aside * height);
    let foot = Pos2::new(whole.left() + left, whole.bottom() - GRID);
    let up = |share: f32, across: f32| foot + egui::vec2(across * height, -share * height);
    let limb = Stroke::new(0.05 * height, pen.wood);
    for (from, to) in [
        (up(0.0, -0.07), up(0.5, -0.05)),
        (up(0.0, 0.07), up(0.5, 0.05)),
        (up(0.5, 0.0), up(0.8, 0.0)),
        (up(0.8, 0.0), up(0.62, 0.16)),
        (up(0.62, 0.16), up(0.48, 0.2)),
    ] {
        pen.painter.line_segment([from, to], limb);
    }
    pen.painter.circle(up(0.93, 0.0), 0.07 * height, pen.wood, pen.line);
    pen.measure(up(0.0, aside), up(1.0, aside));
    pen.words(up(0.5, aside) - egui::vec2(6.0, 0.0), Align2::RIGHT_CENTER, "height");
    let arm = [up(0.82, 0.04), up(0.63, 0.21), up(0.5, 0.25)];
    pen.painter.add(Shape::line(arm.to_vec(), pen.mark));
    for (share, across, word) in [(0.72, 0.22, "arm"), (0.44, 0.25, "hand"), (0.34, 0.25, "grip")] {
        pen.words(up(share, across), Align2::LEFT_CENTER, word);
    }
    for words in [
        "Arm: point of the shoulder to the middle of the grip",
        "Hand: wrist crease to the tip of the middle finger",
        "Grip: squeeze the dynamometer, elbow by the side",
    ] {
        quiet(ui, words);
    }
}
