//! Curves and bands on a ruled ground, labelled at their ends.

use backlift::drawing::axis::Axis;
use egui::{Align2, Color32, Mesh, Painter, Pos2, Rect, Shape, Stroke, TextStyle, Ui};

use crate::figure::number;
use crate::studio::look::Look;
use crate::studio::style::{ink, theme};
use crate::studio::taken::Taken;

pub struct Chart<'a> {
    /// Inside of the axes.
    pub area: Rect,
    pub x: Axis,
    pub y: Axis,
    /// How a tick across is said; as a number if it has no words of its own.
    pub said: Option<fn(f64) -> String>,
    pub painter: Painter,
    /// Where nothing else is written any more.
    pub taken: Taken,
    look: &'a Look,
    quiet: egui::FontId,
}

/// Words of a line, and where they may stand.
pub struct LineWords {
    places: Vec<Pos2>,
    words: String,
    colour: Color32,
    /// Else bare.
    on_patch: bool,
}

impl LineWords {
    /// Along it, the middle first.
    pub fn along(line: &[Pos2], words: String, colour: Color32, on_patch: bool) -> Self {
        const SHARES: [f32; 9] = [0.5, 0.35, 0.65, 0.2, 0.8, 0.28, 0.72, 0.1, 0.9];
        let at = |share: &f32| line.get((share * line.len() as f32) as usize).copied();
        Self { places: SHARES.iter().filter_map(at).collect(), words, colour, on_patch }
    }
}

impl<'a> Chart<'a> {
    /// In `whole`, with room for the axes' words.
    pub fn new(ui: &Ui, look: &'a Look, whole: Rect, x: Axis, y: Axis, right: f32) -> Self {
        let quiet = TextStyle::Small.resolve(ui.style());
        let size = quiet.size;
        let area = Rect::from_min_max(
            whole.min + egui::vec2(4.0 * size, 2.0 * size),
            whole.max - egui::vec2(right.max(size), 2.8 * size),
        );
        Self {
            area,
            x,
            y,
            said: None,
            painter: ui.painter_at(whole),
            taken: Taken::default(),
            look,
            quiet,
        }
    }

    /// Where a value lies.
    pub fn at(&self, x: f64, y: f64) -> Pos2 {
        let share =
            |axis: &Axis, it: f64| ((it - axis.range[0]) / (axis.range[1] - axis.range[0])) as f32;
        Pos2::new(
            self.area.left() + share(&self.x, x) * self.area.width(),
            self.area.bottom() - share(&self.y, y) * self.area.height(),
        )
    }

    /// The values at a place.
    pub fn under(&self, place: Pos2) -> [f64; 2] {
        let across = f64::from((place.x - self.area.left()) / self.area.width());
        let up = f64::from((self.area.bottom() - place.y) / self.area.height());
        let value = |axis: &Axis, it: f64| axis.range[0] + it * (axis.range[1] - axis.range[0]);
        [value(&self.x, across), value(&self.y, up)]
    }

    /// Rules, ticks and what the axes are.
    pub fn ground(&self) {
        let theme = theme(self.look);
        let (line, words) = (Stroke::new(1.0, ink(theme.hairline)), ink(theme.quiet));
        let size = self.quiet.size;
        let text = |at: Pos2, anchor: Align2, it: String| {
            self.painter.text(at, anchor, it, self.quiet.clone(), words);
        };
        let (ticks, digits) = self.x.ticks(f64::from(self.area.width() / (6.0 * size)).max(2.0));
        for tick in ticks {
            let at = self.at(tick, self.y.range[0]);
            self.painter.vline(at.x, self.area.y_range(), line);
            let said = self.said.map_or_else(|| number(tick, digits), |said| said(tick));
            text(at + egui::vec2(0.0, 3.0), Align2::CENTER_TOP, said);
        }
        let (ticks, digits) = self.y.ticks(f64::from(self.area.height() / (3.0 * size)).max(2.0));
        for tick in ticks {
            let at = self.at(self.x.range[0], tick);
            self.painter.hline(self.area.x_range(), at.y, line);
            text(at - egui::vec2(4.0, 0.0), Align2::RIGHT_CENTER, number(tick, digits));
        }
        let under = Pos2::new(self.area.center().x, self.area.bottom() + 2.7 * size);
        text(under, Align2::CENTER_BOTTOM, self.x.label.clone());
        let over = self.area.left_top() - egui::vec2(3.5 * size, 0.6 * size);
        text(over, Align2::LEFT_BOTTOM, self.y.label.clone());
    }

    /// What lies between two curves of the same x.
    pub fn band(&self, points: &[(f64, f64, f64)], colour: Color32) {
        let mut mesh = Mesh::default();
        for pair in points.windows(2) {
            let [a, b] = pair else { continue };
            let start = mesh.vertices.len() as u32;
            for (x, y) in [(a.0, a.1), (b.0, b.1), (b.0, b.2), (a.0, a.2)] {
                mesh.colored_vertex(self.at(x, y), colour);
            }
            mesh.add_triangle(start, start + 1, start + 2);
            mesh.add_triangle(start, start + 2, start + 3);
        }
        self.painter.add(Shape::mesh(mesh));
    }

    pub fn curve(&self, points: &[(f64, f64)], bat: usize, colour: Color32) {
        let line: Vec<Pos2> = points.iter().map(|it| self.at(it.0, it.1)).collect();
        self.painter.extend(super::words::bat_line(&line, bat, colour, 2.5));
    }

    pub fn upright(&self, x: f64, colour: Color32, width: f32) {
        let at = self.at(x, self.y.range[0]).x;
        self.painter.vline(at, self.area.y_range(), Stroke::new(width, colour));
    }

    pub fn words(&self, at: Pos2, anchor: Align2, words: &str, colour: Color32) {
        self.painter.text(at, anchor, words, self.quiet.clone(), colour);
    }

    /// Words that can be read on any ground.
    pub fn patch(&self, at: Pos2, anchor: Align2, words: &str, colour: Color32) {
        let sheet = self.painter.clip_rect();
        let words = words.to_owned();
        let galley = self.painter.layout(words, self.quiet.clone(), colour, self.area.width());
        let rect = anchor.anchor_size(at, galley.size());
        // Beside the edge where it would be cut off.
        let rect = rect.translate(egui::vec2((sheet.right() - rect.right()).min(0.0), 0.0));
        let rect = rect.translate(egui::vec2((sheet.left() - rect.left()).max(0.0), 0.0));
        let page = ink(theme(self.look).panel);
        self.painter.rect_filled(rect.expand(2.0), 2.0, page);
        self.painter.galley(rect.min, galley, colour);
        self.taken.take(rect.expand(2.0));
    }

    /// At the first place where nothing is written yet, inside the axes.
    pub fn label(&self, LineWords { places, words, colour, on_patch }: LineWords) {
        let galley = self.painter.layout_no_wrap(words.clone(), self.quiet.clone(), colour);
        let rect = |at: Pos2| Rect::from_center_size(at, galley.size()).expand(2.0);
        let is_free =
            |at: &Pos2| self.area.contains_rect(rect(*at)) && self.taken.is_free(rect(*at));
        let Some(at) = places.into_iter().find(is_free) else { return };
        match on_patch {
            true => self.patch(at, Align2::CENTER_CENTER, &words, colour),
            false => {
                self.taken.take(rect(at));
                self.words(at, Align2::CENTER_CENTER, &words, colour);
            }
        }
    }
}
