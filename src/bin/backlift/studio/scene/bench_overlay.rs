//! What is drawn over the bat on the maker's bench: points to drag, where it balances and where it should,
//! and what comes off where.

use backlift::card::Figure;
use backlift::frames::DVec3;
use backlift::workshop::reads::at_m;
use egui::{Align2, Color32, Painter, Pos2, Rect, Shape, Stroke, Vec2};

use super::overlay::on_ground;
use super::wood::{Bench, place_colour};
use crate::studio::panels::{grab, target};
use crate::studio::state::Studio;
use crate::studio::style::{ink, theme, wash};
use crate::studio::wood::Region;
use crate::studio::wood::action::{Face, Work};
use crate::studio::wood::grab::grabs;

/// Height of a target's mark, px at scale 1.
const MARK_PX: f32 = 9.0;

/// Draws over the bat in its room.
pub fn draw(painter: &Painter, it: &Studio, bench: &Bench<'_>, room: Rect) {
    let over = Over { painter: painter.with_clip_rect(room), it, bench, room };
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
        let on_screen = |point_B: DVec3| self.at(point_B);
        for it in grabs(self.bench.shape) {
            if let Some(offered) = grab::offered(&it, &on_screen) {
                grab::mark(&self.painter, &self.it.look, "room", &it, &offered);
            }
        }
    }

    /// Balance point and sweet spot: a mark on the edge where it is, the card's limits as a bar beside it.
    fn targets(&self) {
        let Some(bat) = self.bench.shape.bat("").ok() else { return };
        let theme = theme(&self.it.look);
        let half_m = 0.5 * self.bench.shape.blade.width_m();
        let figures = [(Figure::Balance, bat.balance_m()), (Figure::SweetSpot, bat.percussion_m())];
        for (n, (figure, at_now_m)) in figures.into_iter().enumerate() {
            let beyond = |x_m: f64| {
                let out_m = half_m + 0.012 + 0.016 * n as f64;
                self.at(DVec3::new(x_m, out_m, 0.0))
            };
            let Some(now) = beyond(at_now_m) else { continue };
            let asked = self.it.wood_card().map(|it| it.asked(figure));
            let whole = self.bench.shape.length_m();
            let mut is_met = false;
            if let Some(asked) = asked {
                let [a, b] = asked.tolerance.map(|it| at_m(figure, it, whole));
                is_met = (a.min(b)..=a.max(b)).contains(&at_now_m);
                if let (Some(a), Some(b)) = (beyond(a), beyond(b)) {
                    self.painter.line_segment([a, b], Stroke::new(6.0, wash(theme.bats[2], 0.55)));
                }
            }
            let turn = if is_met || asked.is_none() { 0.0 } else { 0.5 * std::f32::consts::PI };
            let scale = self.it.look.text_scale;
            target::pointer(&self.painter, &self.it.look, now, turn, MARK_PX * scale, is_met);
            let at = now + Vec2::new(0.0, 10.0 * scale);
            self.text(at, Align2::CENTER_TOP, figure.words(), 12.0, ink(theme.quiet));
        }
    }

    /// Number, place and grams of each region, with a line to where it is deepest.
    fn regions(&self) {
        let theme = theme(&self.it.look);
        let scale = self.it.look.text_scale;
        let mut left = self.room.left() + 12.0;
        let mut row = 0.0;
        for region in &self.bench.regions {
            let colour = ink(place_colour(theme, region.place));
            let anchor = self.anchor(region);
            let words = told(region);
            let width = 7.2 * scale * words.chars().count() as f32 + 34.0;
            if left + width > self.room.right() {
                (left, row) = (self.room.left() + 12.0, row + 1.0);
            }
            let at = Pos2::new(left + 16.0, self.room.top() + 30.0 * scale + 24.0 * scale * row);
            if let Some(anchor) = anchor {
                let line = Stroke::new(1.0, ink(theme.ink));
                self.painter.line_segment([at + Vec2::new(0.0, 9.0 * scale), anchor], line);
                self.painter.circle_filled(anchor, 3.0, ink(theme.ink));
            }
            let rect = self.text(at, Align2::LEFT_CENTER, &words, 13.0, ink(theme.ink));
            let patch = Rect::from_center_size(
                rect.left_center() - Vec2::new(12.0, 0.0),
                Vec2::splat(11.0 * scale),
            );
            self.painter.add(Shape::rect_filled(patch, 2.0, colour));
            left = rect.right() + 30.0;
        }
    }

    /// Where a region is deepest.
    fn anchor(&self, region: &Region) -> Option<Pos2> {
        let blade = &self.bench.shape.blade;
        let shoulder_m = self.bench.shape.handle.length_m;
        if region.deepest_m <= 0.0 {
            return self.at(DVec3::new(0.8 * shoulder_m, 0.0, 0.0));
        }
        let [from_shoulder, u] = region.deepest_at;
        let station = blade.at(from_shoulder)?;
        let (_, back_m) = station.face_and_back_m(blade.face_m, u);
        let half_m = 0.5 * station.width_m;
        // The upper half of the screen, where the words stand.
        let y_m = -half_m * (1.0 - u);
        self.at(DVec3::new(shoulder_m + blade.length_m * from_shoulder, y_m, back_m))
    }

    fn words(&self) {
        let theme = theme(&self.it.look);
        let words = match (self.it.wood.work, self.it.wood.seen) {
            (Work::Plane, Face::Front) => {
                "The face: nothing is planed here. Turn it over to see where"
            }
            (Work::Plane, _) => "Coloured: what is still to come off",
            (Work::Shape, _) => "Drag a ring to change the bat, anything else to turn it",
        };
        let at = self.room.left_bottom() + Vec2::new(10.0, -8.0);
        self.text(at, Align2::LEFT_BOTTOM, words, 12.0, ink(theme.quiet));
    }
}

/// "1 to 3: hollow of the back, below the swell, 61 g".
fn told(region: &Region) -> String {
    let [first, last] = region.passes.map(|it| it + 1);
    let passes = if first == last { first.to_string() } else { format!("{first} to {last}") };
    let grams = crate::figure::plain(1e3 * region.off_kg, 0, "g");
    format!("{passes}: {}, {grams}", region.place.words())
}
