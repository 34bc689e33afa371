//! What is drawn over the bat on the maker's bench: points to drag, where it balances and where it should,
//! and what comes off where.

use backlift::card::Figure;
use backlift::frames::DVec3;
use backlift::workshop::plane::Region;
use backlift::workshop::reads::at_m;
use egui::{Align2, Color32, FontId, Painter, Pos2, Rect, Stroke, Vec2};

use super::overlay::on_ground;
use super::wood::{Bench, place_colour};
use crate::studio::panels::grab;
use crate::studio::panels::target::{self, quarter_turn};
use crate::studio::state::Studio;
use crate::studio::style::{ink, theme, wash};
use crate::studio::wood::action::{Face, Work};

/// Height of a target's mark, px at scale 1.
const MARK_PX: f32 = 9.0;
/// A region's words, and the patch in its colour beside them, px at scale 1.
const LABEL_PX: f32 = 13.0;
const PATCH_PX: f32 = 12.0;
/// In lower rooms, px at scale 1, words would cover the bat.
const LOW_PX: f32 = 300.0;

pub fn draw(painter: &Painter, it: &Studio, bench: &Bench<'_>, room: Rect) {
    let (painter, regions) = (painter.with_clip_rect(room), it.wood.to_come_off());
    let over = Over { painter, it, bench, regions, room };
    over.targets();
    match it.wood.work {
        Work::Shape => over.grabs(),
        Work::Plane => over.regions(),
    }
    over.words();
}

struct Over<'a> {
    painter: Painter,
    it: &'a Studio,
    bench: &'a Bench<'a>,
    regions: Vec<Region>,
    room: Rect,
}

impl Over<'_> {
    fn at(&self, point_B: DVec3) -> Option<Pos2> {
        self.bench.eye.on_screen(self.bench.point_W(point_B), self.room)
    }

    fn text(&self, at: Pos2, anchor: Align2, words: &str, px: f32, colour: Color32) -> Rect {
        on_ground(&self.painter, &self.it.look, at, anchor, (words, px, colour))
    }

    fn grabs(&self) {
        let (painter, look) = (&self.painter, &self.it.look);
        let points = self.it.wood.grabs(self.bench.shape);
        grab::marks(painter, look, "room", &points, &|point_B| self.at(point_B));
    }

    /// Balance point and sweet spot: a mark on the edge where it is, the card's limits as a bar beside it.
    fn targets(&self) {
        let Some(places_m) = self.places_m() else { return };
        let theme = theme(&self.it.look);
        let half_m = 0.5 * self.bench.shape.blade.width_m();
        let figures = [Figure::Balance, Figure::SweetSpot].into_iter().zip(places_m);
        for (n, (figure, at_now_m)) in figures.enumerate() {
            let beyond = |x_m: f64| {
                let out_m = half_m + 0.012 + 0.016 * n as f64;
                self.at(DVec3::new(x_m, out_m, 0.0))
            };
            let Some(now) = beyond(at_now_m) else { continue };
            let asked = self.it.wood_card().map(|it| it.asked(figure));
            let whole = self.bench.shape.length_m();
            let (mut is_met, mut turn) = (false, 0.0);
            if let Some(asked) = asked {
                let [a, b] = asked.tolerance.map(|it| at_m(figure, it, whole));
                let [low, high] = [a.min(b), a.max(b)];
                is_met = (low..=high).contains(&at_now_m);
                // Along the bat as it is seen from there.
                let ahead = beyond(at_now_m + 0.01).map_or(Vec2::X, |it| it - now);
                let way = quarter_turn(at_now_m, [low, high]).signum() * ahead;
                turn = if is_met { 0.0 } else { way.x.atan2(-way.y) };
                if let (Some(a), Some(b)) = (beyond(a), beyond(b)) {
                    self.painter.line_segment([a, b], Stroke::new(6.0, wash(theme.bats[2], 0.55)));
                }
            }
            let scale = self.it.look.text_scale;
            target::pointer(&self.painter, &self.it.look, now, turn, MARK_PX * scale, is_met);
            // Two lines apart, so that neither covers the other where they are near.
            let at = now + Vec2::new(0.0, (10.0 + 14.0 * n as f32) * scale);
            self.text(at, Align2::CENTER_TOP, figure.words(), 12.0, ink(theme.quiet));
        }
    }

    /// Balance point and centre of percussion, m from the top of the handle: of the solid, or, of a bat that is
    /// planed, of what was read and is still to go on.
    fn places_m(&self) -> Option<[f64; 2]> {
        if let (Work::Plane, Some(planned)) = (self.it.wood.work, &self.it.wood.planned) {
            let whole = planned.whole_after(self.it.wood.done);
            return Some([whole.balance_m(), whole.percussion_m()]);
        }
        let bat = self.bench.shape.bat("").ok()?;
        Some([bat.balance_m(), bat.percussion_m()])
    }

    /// Number, place and grams of each region over the bat, with a line to where it is deepest.
    fn regions(&self) {
        let theme = theme(&self.it.look);
        let scale = self.it.look.text_scale;
        let anchors = self.regions.iter().filter_map(|it| Some((it, self.anchor(it)?)));
        let mut all: Vec<(&Region, Pos2)> = anchors.collect();
        all.sort_by(|a, b| a.1.x.total_cmp(&b.1.x));
        let font = FontId::proportional(LABEL_PX * scale);
        let mut ends: Vec<f32> = Vec::new();
        let mut labels = Vec::new();
        for (region, anchor) in all {
            let words = told(region, self.room.height() < LOW_PX * scale);
            let galley = self.painter.layout_no_wrap(words.clone(), font.clone(), ink(theme.ink));
            let width = galley.size().x + PATCH_PX * scale + 16.0;
            let [first, last] = [self.room.left() + 8.0, self.room.right() - width];
            let left = (anchor.x - 0.5 * width).clamp(first, last.max(first));
            // The row nearest to the top in which there is room.
            let row = ends.iter().position(|end| *end < left).unwrap_or(ends.len());
            if row == ends.len() {
                ends.push(0.0);
            }
            ends[row] = left + width;
            labels.push((region, anchor, words, left, width, row));
        }
        let y = |row: usize| self.room.top() + (16.0 + 22.0 * row as f32) * scale;
        for (_, anchor, _, left, width, row) in &labels {
            let from = Pos2::new(anchor.x.clamp(*left, left + width), y(*row));
            self.painter.line_segment([from, *anchor], Stroke::new(1.0, ink(theme.ink)));
            self.painter.circle_filled(*anchor, 3.0, ink(theme.ink));
        }
        for (region, _, words, left, _, row) in &labels {
            let patch = Vec2::splat(PATCH_PX * scale);
            let at = Pos2::new(left + patch.x + 8.0, y(*row));
            let rect = self.text(at, Align2::LEFT_CENTER, words, LABEL_PX, ink(theme.ink));
            let middle = Pos2::new(left + 0.5 * patch.x, rect.center().y);
            let patch = Rect::from_center_size(middle, patch);
            let colour = ink(place_colour(theme, region.place));
            let line = Stroke::new(1.0, ink(theme.ink));
            self.painter.rect(patch, 2.0, colour, line, egui::StrokeKind::Inside);
        }
    }

    /// Where a region is deepest.
    fn anchor(&self, region: &Region) -> Option<Pos2> {
        let blade = &self.bench.shape.blade;
        let shoulder_m = self.bench.shape.handle.length_m;
        if region.deepest.deep_m <= 0.0 {
            return self.at(DVec3::new(0.8 * shoulder_m, 0.0, 0.0));
        }
        let (from_shoulder, u) = (region.deepest.from_shoulder, region.deepest.from_edge);
        let station = blade.at(from_shoulder)?;
        let (_, back_m) = station.face_and_back_m(blade.face_at_m(from_shoulder), u);
        let half_m = 0.5 * station.width_m;
        // The upper half of the screen, where the words stand.
        let y_m = -half_m * (1.0 - u);
        self.at(DVec3::new(shoulder_m + blade.length_m * from_shoulder, y_m, back_m))
    }

    fn words(&self) {
        let theme = theme(&self.it.look);
        let words = match self.it.wood.work {
            Work::Shape => "Drag a ring to change the bat, anything else to turn it",
            Work::Plane => self.plan_words(),
        };
        let at = self.room.left_bottom() + Vec2::new(10.0, -8.0);
        self.text(at, Align2::LEFT_BOTTOM, words, 12.0, ink(theme.quiet));
    }

    fn plan_words(&self) -> &'static str {
        let wood = &self.it.wood;
        let Some(planned) = &wood.planned else {
            return "No plan yet: it needs a card, and a bat that was weighed";
        };
        match &planned.plan {
            Err(_) => "Too little wood is left for this card",
            Ok(plan) if plan.passes.is_empty() && plan.meets.len() == 3 => {
                "Nothing needs to come off"
            }
            Ok(plan) if plan.passes.is_empty() => "No plane brings this bat to its card",
            Ok(_) if self.regions.is_empty() => "All passes are shown as done",
            Ok(_) if wood.seen == Face::Front => {
                "The face: nothing is planed here. Turn it over to see where"
            }
            Ok(_) => "Coloured: what is still to come off",
        }
    }
}

/// "1 to 3: hollow of the back, below the swell, 61 g"; in a low room without the place, which stands in the
/// list beside.
fn told(region: &Region, is_short: bool) -> String {
    let [first, last] = region.passes.map(|it| it + 1);
    let passes = if first == last { first.to_string() } else { format!("{first} to {last}") };
    let grams = crate::figure::plain(1e3 * region.off_kg, 0, "g");
    match is_short {
        true => format!("{passes}: {grams}"),
        false => format!("{passes}: {}, {grams}", region.place.words()),
    }
}
