//! What is written and drawn over the scene: paths, letters, the lag, the one large line.

use backlift::drawing::palette::bat_look;
use backlift::frames::DVec3;
use backlift::measurement::bench::bat_letter;
use egui::{Align2, Color32, FontId, Painter, Pos2, Rect, Shape, Stroke, Vec2};

use super::ground::ball_path;
use super::{Figure, Instant, Scene};
use crate::studio::action::View;
use crate::studio::look::Look;
use crate::studio::panels::words::bat_line;
use crate::studio::state::Studio;
use crate::studio::style::{ink, theme, thinned, wash};
use crate::studio::taken::Taken;

/// A lag that is shorter is none to be seen, m.
const SEEN_M: f64 = 0.002;
/// Sizes of letters, px at scale 1: of a label, and of the one large line.
const LABEL_PX: f32 = 15.0;
const LARGE_PX: f32 = 34.0;
const QUIET_PX: f32 = 13.0;

pub fn draw(painter: &Painter, it: &Studio, scene: &Scene, room: Rect) {
    let painter = painter.with_clip_rect(room);
    let paths = scene.figures.iter().map(|figure| it.through(figure.slot)).collect();
    let over = Over { painter, it, scene, room, paths, taken: Taken::default() };
    over.ways();
    over.ball();
    over.caption();
    over.large();
    over.lag();
    scene.figures.iter().for_each(|figure| over.letter(figure));
}

/// Before the first swing is known.
pub fn nothing_yet(painter: &Painter, it: &Studio, room: Rect) {
    let words = match it.derived.loaded {
        _ if it.view == View::Wood => "The bat's description has faults: mend them beside",
        Some(_) => "The first swing is being worked out…",
        None => "There is nothing to swing until the scenario has no faults: see the bench",
    };
    let font = FontId::proportional(15.0 * it.look.text_scale);
    let quiet = ink(theme(&it.look).quiet);
    painter.text(room.center(), Align2::CENTER_CENTER, words, font, quiet);
}

/// Words on a patch of ground, so that they are read over anything: what, how large (px at scale 1), in which
/// colour.
pub fn on_ground(
    painter: &Painter,
    look: &Look,
    at: Pos2,
    anchor: Align2,
    (words, px, colour): (&str, f32, Color32),
) -> Rect {
    let font = FontId::proportional(px * look.text_scale);
    // Narrower than the room, or they would be cut off at its edge.
    let room = painter.clip_rect().width() - 24.0;
    let galley = painter.layout(words.to_owned(), font, colour, room.max(px));
    let rect = anchor.anchor_size(at, galley.size());
    painter.rect_filled(rect.expand2(Vec2::new(4.0, 1.0)), 3.0, ink(theme(look).ground));
    painter.galley(rect.min, galley, colour);
    rect
}

struct Over<'a> {
    painter: Painter,
    it: &'a Studio,
    scene: &'a Scene,
    room: Rect,
    /// Each figure's stroke.
    paths: Vec<Vec<Instant>>,
    taken: Taken,
}

impl Over<'_> {
    fn at(&self, point_W: DVec3) -> Option<Pos2> {
        self.scene.eye.on_screen(point_W, self.room)
    }

    fn colour(&self, figure: &Figure) -> Color32 {
        let theme = theme(&self.it.look);
        ink(figure.bat.map_or(theme.ink, |it| bat_look(theme, it).0))
    }

    fn text(&self, at: Pos2, anchor: Align2, words: &str, px: f32, colour: Color32) -> Rect {
        let rect = on_ground(&self.painter, &self.it.look, at, anchor, (words, px, colour));
        self.taken.take(rect);
        rect
    }

    /// Words as near to a place as they stand inside the room and over no others.
    fn label(&self, at: Pos2, words: &str, px: f32, colour: Color32) {
        const TRIED: [(i8, i8); 9] =
            [(0, 0), (0, -1), (0, 1), (1, 0), (-1, 0), (1, -1), (-1, -1), (1, 1), (-1, 1)];
        let font = FontId::proportional(px * self.it.look.text_scale);
        let galley = self.painter.layout_no_wrap(words.to_owned(), font, colour);
        let size = galley.size() + Vec2::new(8.0, 2.0);
        let room = self.room.shrink2(0.5 * size + Vec2::splat(2.0));
        let inside = |at: Pos2| at.clamp(room.min, room.max.max(room.min));
        let is_free = |at: &Pos2| self.taken.is_free(Rect::from_center_size(*at, size));
        let step = |(x, y): (i8, i8)| Vec2::new(0.6 * f32::from(x) * size.x, f32::from(y) * size.y);
        let further = [1.0, 2.0, 3.0].into_iter();
        let places = further.flat_map(|far| TRIED.map(|it| at + far * step(it)));
        if let Some(at) = places.map(inside).find(is_free) {
            self.text(at, Align2::CENTER_CENTER, words, px, colour);
        }
    }

    /// The way of each bat's toe: what it has gone in its own line, what is to come faint.
    fn ways(&self) {
        for (figure, path) in self.scene.figures.iter().zip(&self.paths) {
            let colour = self.colour(figure);
            let now_s = self.it.playback.time_s;
            let (mut gone, mut coming) = (Vec::new(), Vec::new());
            for Instant { t_s, bat, .. } in path {
                let toe = bat.point(DVec3::new(figure.length_m, 0.0, 0.0)) + figure.aside_W;
                let Some(at) = self.at(toe) else { continue };
                if *t_s <= now_s { gone.push(at) } else { coming.push(at) }
            }
            gone.extend(self.at(figure.on_bat_W(figure.length_m)));
            if coming.len() > 1 {
                self.painter.add(Shape::line(coming, Stroke::new(1.5, thinned(colour, 0.3))));
            }
            if gone.len() > 1 {
                let dashes = figure.bat.unwrap_or(usize::MAX);
                self.painter.extend(bat_line(&gone, dashes, colour, 2.5));
            }
        }
    }

    /// Its way to the bat, and where they meet.
    fn ball(&self) {
        let Some(first) = self.scene.figures.first() else { return };
        let theme = theme(&self.it.look);
        let line = Stroke::new(1.0, wash(theme.ink, 0.35));
        let [contact, pitched, _] = ball_path(first.contact_W, self.it.answers_short_ball());
        // A way that runs behind the eye is cut off where it does.
        let way: Vec<Pos2> = (0..=24)
            .map_while(|n| {
                let point = contact + (pitched - contact) * (f64::from(n) / 24.0);
                self.at(point + first.aside_W)
            })
            .collect();
        self.painter.extend(Shape::dashed_line(&way, line, 3.0, 5.0));
        for figure in &self.scene.figures {
            let Some(at) = self.at(figure.contact_W + figure.aside_W) else { continue };
            for arm in [Vec2::new(6.0, 6.0), Vec2::new(6.0, -6.0)] {
                let cross = Stroke::new(1.5, ink(theme.ink));
                self.painter.line_segment([at - arm, at + arm], cross);
            }
            if self.scene.in_one_place {
                break;
            }
        }
    }

    fn letter(&self, figure: &Figure) {
        if let Some(at) = self.at(figure.on_bat_W(figure.length_m + 0.09)) {
            self.label(at, &called(figure), LABEL_PX, self.colour(figure));
        }
    }

    /// How far one bat is behind the other at this instant: along its own way, both having begun together.
    fn lag(&self) {
        let [first, second] = self.scene.figures.as_slice() else { return };
        let [a, b] = [first, second].map(|it| it.way);
        let (n, later, sooner) = match b.behind_m(a) > 0.0 {
            true => (1, second, first),
            false => (0, first, second),
        };
        let behind_m = later.way.behind_m(sooner.way);
        if behind_m < SEEN_M {
            return;
        }
        let on_bat = |bat: &super::Place| {
            self.at(bat.point(DVec3::new(later.contact_m, 0.0, 0.0)) + later.aside_W)
        };
        let missing = later.way.gone_m..later.way.gone_m + behind_m;
        let between = self.paths.get(n).into_iter().flatten();
        let between = between.filter(|it| missing.contains(&it.gone_m));
        let ahead = self.at(sooner.on_bat_W(sooner.contact_m)).filter(|_| self.scene.in_one_place);
        let way: Vec<Pos2> = on_bat(&later.pose.bat)
            .into_iter()
            .chain(between.filter_map(|it| on_bat(&it.bat)))
            .chain(ahead)
            .collect();
        let Some(middle) = way.get(way.len() / 2).copied() else { return };
        let ink = ink(theme(&self.it.look).ink);
        self.painter.add(Shape::line(way, Stroke::new(3.0, ink)));
        let words = format!("{} is {:.0} mm behind", called(later), 1e3 * behind_m);
        let above = Vec2::new(0.0, -34.0 * self.it.look.text_scale);
        self.label(middle + above, &words, LABEL_PX, ink);
    }

    /// The one figure of the view, where it is the net's.
    fn large(&self) {
        if !matches!(self.it.view, View::Start | View::Swing) {
            return;
        }
        let Some(told) = self.it.apart_in_large() else { return };
        let theme = theme(&self.it.look);
        let colour = ink(bat_look(theme, told.bat).0);
        let px = LARGE_PX.min(0.06 * self.room.width() / self.it.look.text_scale);
        let at = self.room.left_top() + Vec2::new(12.0, 8.0);
        let rect = self.text(at, Align2::LEFT_TOP, &told.words, px, colour);
        let at = Pos2::new(at.x, rect.bottom() + 4.0);
        self.text(at, Align2::LEFT_TOP, &told.under, QUIET_PX, ink(theme.quiet));
    }

    /// The instant, and what the scene does not know.
    fn caption(&self) {
        let time_s = self.it.playback.time_s.min(self.it.length_s());
        let limits = match self.room.width() < 480.0 * self.it.look.text_scale {
            true => "to contact",
            false => "the likeliest player, as far as contact; legs and head are drawn to fit",
        };
        let words = format!("{time_s:.3} s from the top of the backlift; {limits}");
        let at = self.room.left_bottom() + Vec2::new(10.0, -6.0);
        self.text(at, Align2::LEFT_BOTTOM, &words, QUIET_PX, ink(theme(&self.it.look).quiet));
    }
}

fn called(figure: &Figure) -> String {
    figure.bat.map_or_else(|| "tried".to_owned(), bat_letter)
}
