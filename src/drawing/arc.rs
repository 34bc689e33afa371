//! A swing's arc: the bat at equal steps of time, from the side and from above.

use super::area::Area;
use super::palette::{Theme, bat_look};
use super::picture::{Picture, Stroke};
use super::type_setting::{Anchor, Lettering, Size};
use super::words::number;
use crate::frames::DVec3;
use crate::impact::ball::RADIUS_M;

/// The bat at one instant, in W (m).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArcMoment {
    /// Time from the top of the backlift, s.
    pub t_s: f64,
    /// Top of the handle.
    pub handle_top_W: DVec3,
    /// Toe.
    pub toe_W: DVec3,
    /// The point of the blade that is to meet the ball.
    pub contact_point_W: DVec3,
}

/// What the picture shows.
#[derive(Clone, Debug, PartialEq)]
pub struct ArcPicture {
    /// What it says, in one sentence.
    pub sentence: String,
    /// The bat's place in the list: gives colour and dashes.
    pub bat: usize,
    /// Evenly spaced in time.
    pub moments: Vec<ArcMoment>,
    /// Which moment meets the ball.
    pub contact: Option<usize>,
}

/// The arc as an SVG of so many px.
pub fn svg(arc: &ArcPicture, theme: &Theme, width: f64, height: f64) -> String {
    let mut picture = Picture::new(width, height, theme);
    let top = picture.sentence(picture.whole(), &arc.sentence);
    let half = 0.5 * width;
    let side = View { name: "from the side, bowler on the right", up: |it| it.z, ground: true };
    let above = View { name: "from above, bowler on the right", up: |it| it.y, ground: false };
    for (view, x) in [(side, 0.0), (above, half)] {
        let area = Area::new(x + 16.0, top, half - 32.0, height - top - 16.0);
        view.draw(&mut picture, area, arc);
    }
    picture.finish()
}

/// One way of looking: x of the world to the right, another direction up.
struct View {
    name: &'static str,
    up: fn(DVec3) -> f64,
    ground: bool,
}

impl View {
    fn draw(&self, picture: &mut Picture, area: Area, arc: &ArcPicture) {
        let theme = picture.theme;
        let quiet = Lettering::new(Size::Quiet, theme.quiet);
        picture.text(area.x, area.y + 14.0, quiet, self.name);
        let inside = Area::new(area.x, area.y + 30.0, area.width, area.height - 62.0);
        let flat = |it: DVec3| [it.x, (self.up)(it)];
        let points: Vec<[f64; 2]> =
            arc.moments.iter().flat_map(|it| [flat(it.handle_top_W), flat(it.toe_W)]).collect();
        let range = |k: usize| {
            let start = if self.ground && k == 1 { 0.0 } else { f64::INFINITY };
            let end = if start == 0.0 { 0.5 } else { f64::NEG_INFINITY };
            points.iter().fold((start, end), |(a, b), it| (a.min(it[k]), b.max(it[k])))
        };
        let ((left, right), (low, high)) = (range(0), range(1));
        if !(left < right && low < high) {
            return;
        }
        // One scale for both directions, the figure centred.
        let px_per_m = (inside.width / (right - left)).min(inside.height / (high - low)) * 0.94;
        let middle = [0.5 * (left + right), 0.5 * (low + high)];
        let at = |[x, y]: [f64; 2]| {
            [
                inside.x + 0.5 * inside.width + px_per_m * (x - middle[0]),
                inside.y + 0.5 * inside.height - px_per_m * (y - middle[1]),
            ]
        };
        if self.ground {
            let y = at([0.0, 0.0])[1];
            picture.line([inside.x, y], [inside.right(), y], Stroke::solid(theme.quiet, 1.0));
        }
        let (colour, dash) = bat_look(&theme, arc.bat);
        for moment in &arc.moments {
            let [top, toe] = [moment.handle_top_W, moment.toe_W].map(|it| at(flat(it)));
            picture.line(top, toe, Stroke::solid(theme.hairline, 3.0));
        }
        let path = |point: fn(&ArcMoment) -> DVec3| -> Vec<[f64; 2]> {
            arc.moments.iter().map(|it| at(flat(point(it)))).collect()
        };
        picture.polyline(&path(|it| it.handle_top_W), Stroke { colour, width: 1.5, dash });
        picture.polyline(&path(|it| it.toe_W), Stroke { colour, width: 2.5, dash });
        for toe in path(|it| it.toe_W) {
            picture.disc(toe, 2.0, colour, Stroke::solid(colour, 1.0));
        }
        if let Some(moment) = arc.contact.and_then(|it| arc.moments.get(it)) {
            let [top, toe, ball] =
                [moment.handle_top_W, moment.toe_W, moment.contact_point_W].map(|it| at(flat(it)));
            picture.line(top, toe, Stroke::solid(theme.ink, 5.0));
            let rim = Stroke::solid(theme.ink, 1.5);
            picture.disc(ball, (px_per_m * RADIUS_M).max(4.0), theme.panel, rim);
            let text = format!("meets the ball after {}\u{2009}s", number(moment.t_s, 3));
            let mut spots: Vec<[f64; 2]> = (arc.moments.iter())
                .flat_map(|it| {
                    let [top, toe] = [it.handle_top_W, it.toe_W];
                    (0..=8).map(move |k| at(flat(top.lerp(toe, f64::from(k) / 8.0))))
                })
                .collect();
            for pair in arc.moments.windows(2) {
                let [from, to] = [0, 1].map(|k| pair[k].toe_W);
                spots.extend((1..12).map(|k| at(flat(from.lerp(to, f64::from(k) / 12.0)))));
            }
            let lettering = Lettering::new(Size::Quiet, theme.ink);
            let (lettering, [x, y]) = clear_place(ball, lettering, &text, inside, &spots);
            picture.text_on_patch(x, y, lettering, &text, theme.ground);
        }
        let rule_y = area.bottom() - 8.0;
        let metre = [[area.x, rule_y], [area.x + 0.5 * px_per_m, rule_y]];
        picture.line(metre[0], metre[1], Stroke::solid(theme.ink, 2.0));
        picture.text(metre[1][0] + 8.0, rule_y + 4.5, quiet, "0.5\u{2009}m");
    }
}

/// Where words about a point hide least of what is drawn at `spots`: beside it, below or above.
fn clear_place(
    point: [f64; 2],
    lettering: Lettering,
    text: &str,
    inside: Area,
    spots: &[[f64; 2]],
) -> (Lettering, [f64; 2]) {
    let places = [
        (Anchor::Start, [14.0, 4.5]),
        (Anchor::End, [-14.0, 4.5]),
        (Anchor::End, [0.0, 34.0]),
        (Anchor::End, [0.0, -26.0]),
    ];
    let hidden = |(lettering, [x, y]): &(Lettering, [f64; 2])| {
        let box_px = lettering.extent(*x, *y, text);
        let outside = box_px.x < inside.x || box_px.right() > inside.right();
        let under = |[x, y]: &&[f64; 2]| {
            (box_px.x..box_px.right()).contains(x) && (box_px.y..box_px.bottom()).contains(y)
        };
        (outside, spots.iter().filter(under).count())
    };
    let all = places
        .map(|(anchor, [dx, dy])| (lettering.anchored(anchor), [point[0] + dx, point[1] + dy]));
    let [first, ..] = all;
    all.into_iter().min_by_key(hidden).unwrap_or(first)
}
