//! What is written and drawn over the scene: paths, letters, the lag, the load at each wrist.

use backlift::drawing::palette::bat_look;
use backlift::frames::DVec3;
use backlift::measurement::bench::bat_letter;
use backlift::units::{Quantity, spoken};
use egui::{Align2, Color32, FontId, Painter, Pos2, Rect, Shape, Stroke, Vec2};

use super::ground::ball_path;
use super::{Figure, Scene};
use crate::studio::action::View;
use crate::studio::look::Look;
use crate::studio::panels::words::bat_line;
use crate::studio::state::Studio;
use crate::studio::style::{ink, theme, thinned, wash};

/// Pictures of a path.
const PATH: usize = 72;
/// Radius of the ring at a wrist, and by how much the second bat's is larger, px at scale 1.
const RING_PX: f32 = 11.0;
const RING_STEP_PX: f32 = 6.0;

/// Draws over a scene in its room.
pub fn draw(painter: &Painter, it: &Studio, scene: &Scene, room: Rect) {
    let over = Over { painter: painter.with_clip_rect(room), it, scene, room };
    over.paths();
    over.ball();
    for figure in &scene.figures {
        over.wrists(figure);
        over.letter(figure);
    }
    over.lag();
    over.words();
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
    let galley = painter.layout_no_wrap(words.to_owned(), font, colour);
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
}

impl Over<'_> {
    fn at(&self, point_W: DVec3) -> Option<Pos2> {
        self.scene.eye.on_screen(point_W, self.room)
    }

    fn colour(&self, figure: &Figure) -> Color32 {
        let theme = theme(&self.it.look);
        ink(figure.bat.map_or(theme.ink, |it| bat_look(theme, it).0))
    }

    fn is_small(&self) -> bool {
        self.room.width() < 480.0 * self.it.look.text_scale
    }

    fn text(&self, at: Pos2, anchor: Align2, words: &str, px: f32, colour: Color32) -> Rect {
        on_ground(&self.painter, &self.it.look, at, anchor, (words, px, colour))
    }

    /// The way of each bat's toe: what it has gone in its own line, what is to come faint.
    fn paths(&self) {
        for figure in &self.scene.figures {
            let colour = self.colour(figure);
            let now_s = self.it.playback.time_s;
            let (mut gone, mut coming) = (Vec::new(), Vec::new());
            for (t_s, bat) in self.it.bat_path(figure.slot, PATH) {
                let toe = bat.point(DVec3::new(figure.length_m, 0.0, 0.0)) + figure.aside_W;
                let Some(at) = self.at(toe) else { continue };
                if t_s <= now_s { gone.push(at) } else { coming.push(at) }
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
            let arm = Vec2::splat(6.0);
            let cross = Stroke::new(1.5, ink(theme.ink));
            self.painter.line_segment([at - arm, at + arm], cross);
            self.painter
                .line_segment([at + Vec2::new(-6.0, 6.0), at + Vec2::new(6.0, -6.0)], cross);
            if self.scene.in_one_place {
                break;
            }
        }
    }

    /// Load at each wrist: a ring that fills, thicker as it does. Its number stands with the instant's.
    fn wrists(&self, figure: &Figure) {
        let colour = self.colour(figure);
        let scale = self.it.look.text_scale;
        let second = self.scene.in_one_place && figure.slot == 1;
        let radius = scale * if second { RING_PX + RING_STEP_PX } else { RING_PX };
        for (wrist, share) in figure.pose.wrists_W.iter().zip(figure.wrist_share) {
            let Some(at) = self.at(*wrist + figure.aside_W) else { continue };
            let share = share.min(1.0) as f32;
            let hairline = ink(theme(&self.it.look).hairline);
            self.painter.circle_stroke(at, radius, Stroke::new(1.0, hairline));
            let arc: Vec<Pos2> = (0..=40)
                .map(|n| {
                    let turn = std::f32::consts::TAU * share * n as f32 / 40.0;
                    at + radius * Vec2::new(turn.sin(), -turn.cos())
                })
                .collect();
            let thick = 1.0 + 4.0 * share;
            self.painter.add(Shape::line(arc, Stroke::new(thick, colour)));
        }
    }

    fn letter(&self, figure: &Figure) {
        let beyond = figure.on_bat_W(figure.length_m + 0.09);
        if let Some(at) = self.at(beyond) {
            let colour = self.colour(figure);
            self.text(at, Align2::CENTER_CENTER, &called(figure), 15.0, colour);
        }
    }

    /// How far one bat is behind the other at this instant, from contact point to contact point; once one
    /// has met the ball, how much later the other does.
    fn lag(&self) {
        let [first, second] = self.scene.figures.as_slice() else { return };
        let place = |it: &Figure| it.pose.bat.point(DVec3::new(it.contact_m, 0.0, 0.0));
        let lag_m = (place(first) - place(second)).length();
        let (sooner, later) = match first.contact_s > second.contact_s {
            true => (second, first),
            false => (first, second),
        };
        let letter = called(later);
        if self.it.playback.time_s >= sooner.contact_s {
            let late_ms = 1e3 * (later.contact_s - sooner.contact_s);
            let Some(at) = self.at(later.contact_W + later.aside_W) else { return };
            let words = format!("{letter} meets the ball {late_ms:.0} ms later");
            let ink = ink(theme(&self.it.look).ink);
            self.text(at + Vec2::new(0.0, -40.0), Align2::CENTER_BOTTOM, &words, 13.0, ink);
            return;
        }
        if lag_m < 0.001 {
            return;
        }
        let words = format!("{letter} is {:.0} mm behind", 1e3 * lag_m);
        let [a, b] = [first, second].map(|it| self.at(it.on_bat_W(it.contact_m)));
        let (Some(a), Some(b)) = (a, b) else { return };
        let colour = ink(theme(&self.it.look).ink);
        if self.scene.in_one_place {
            self.painter.line_segment([a, b], Stroke::new(2.0, colour));
            let middle = a + 0.5 * (b - a);
            self.text(middle + Vec2::new(0.0, -34.0), Align2::CENTER_BOTTOM, &words, 13.0, colour);
        } else {
            let at = if later.slot == 0 { a } else { b };
            self.text(at + Vec2::new(0.0, -16.0), Align2::CENTER_BOTTOM, &words, 13.0, colour);
        }
    }

    /// The instant in figures, and what the scene does not know.
    fn words(&self) {
        let theme = theme(&self.it.look);
        let mut at = self.room.left_bottom() + Vec2::new(10.0, -8.0);
        let limits = match self.is_small() {
            true => "Ends at contact. Legs and head are drawn to fit",
            false => {
                "Ends at contact: the follow-through is not simulated. Legs and head are drawn to fit"
            }
        };
        let quiet = ink(theme.quiet);
        let rect = self.text(at, Align2::LEFT_BOTTOM, limits, 12.0, quiet);
        at.y = rect.top() - 4.0;
        let units = self.it.look.units;
        // In a low room only the instant; the figures stand beside it.
        let low = self.room.height() < 300.0 * self.it.look.text_scale;
        for figure in self.scene.figures.iter().rev().filter(|_| !low) {
            let speed = spoken(Quantity::Speed, figure.bat_speed_m_s, 0.3, units);
            let [top, bottom] = figure.wrist_share.map(|it| 100.0 * it.min(1.0));
            let wrists = match self.is_small() {
                true => format!("wrists {top:.0}, {bottom:.0} %"),
                false => {
                    format!("wrist of the top hand {top:.0} %, of the bottom hand {bottom:.0} %")
                }
            };
            let words = format!("{}  {speed}, {wrists}", called(figure));
            let rect = self.text(at, Align2::LEFT_BOTTOM, &words, 13.0, self.colour(figure));
            at.y = rect.top() - 2.0;
        }
        let time = format!(
            "{:.3} s from the top of the backlift",
            self.it.playback.time_s.min(self.it.length_s())
        );
        self.text(at, Align2::LEFT_BOTTOM, &time, 13.0, ink(theme.ink));
    }
}

/// The bat's letter.
fn called(figure: &Figure) -> String {
    figure.bat.map_or_else(|| "tried".to_owned(), bat_letter)
}
