//! One page that a coach can send to a parent: the sentence, two pictures, the figures, what to mind.

use backlift::card::cautions::{refit_stature_m, standing};
use backlift::drawing::palette::{LIGHT, bat_look};
use backlift::drawing::picture::{Area, Picture, Stroke};
use backlift::drawing::png::{pixmap, png};
use backlift::drawing::type_setting::{Lettering, Size};
use backlift::innings::score::runs_words;
use backlift::measurement::bench::bat_letter;
use resvg::tiny_skia::{FilterQuality, Pixmap, PixmapPaint, Transform};

use super::figures::Row;
use super::state::Studio;
use super::still::{Still, mistake};
use crate::outcome::Stop;

/// Width of the page, px, and pixels to a px.
const WIDTH: f64 = 794.0;
const PIXELS: f64 = 2.0;
const MARGIN: f64 = 38.0;
const INK: Lettering = Lettering::new(Size::Text, LIGHT.ink);
const QUIET: Lettering = Lettering::new(Size::Quiet, LIGHT.quiet);

/// What stands on the page besides the pictures.
pub struct Page {
    sentence: String,
    player: String,
    heading: String,
    bats: Vec<(usize, String)>,
    rows: Vec<Row>,
    cautions: Vec<String>,
    is_invented: bool,
}

/// Instants to take, s from the top of the backlift: on the way, and at the ball.
pub fn instants_s(length_s: f64) -> Vec<f64> {
    vec![0.75 * length_s, length_s]
}

impl Page {
    /// Of what is on the screen.
    pub fn of(it: &Studio) -> Self {
        let loaded = it.derived.loaded.as_ref();
        let player = loaded.map(|it| &it.player);
        let runs = it.playback.runs;
        let when = if runs == 0 {
            "fresh".to_owned()
        } else {
            format!("after {}", runs_words(f64::from(runs)))
        };
        let shown = it.playback.bats.iter().take(it.slots());
        Self {
            sentence: it.pair_sentence(),
            player: player.map_or(String::new(), |it| {
                format!("For a player of {:.0} years and {:.2} m", it.age_y, it.stature_m)
            }),
            heading: format!("The {}, {when}", it.playback.stroke),
            bats: shown.map(|bat| (*bat, it.label(*bat))).collect(),
            rows: it.swing_rows(),
            cautions: player.map_or(Vec::new(), |it| {
                standing(it.age_y, refit_stature_m(it.age_y, it.stature_m))
            }),
            is_invented: loaded.is_some_and(|it| it.scenario.invented),
        }
    }

    /// The page as PNG.
    pub fn png(&self, stills: &[Still]) -> Result<Vec<u8>, Stop> {
        // Drawn twice: the first time to know how tall it is.
        let (_, _, height) = self.drawn(stills, WIDTH);
        let (picture, places, _) = self.drawn(stills, height + MARGIN);
        let bytes = png(&picture.finish(), PIXELS).map_err(|it| mistake(&it))?;
        let mut page = Pixmap::decode_png(&bytes).map_err(|it| mistake(&it))?;
        for (still, place) in stills.iter().zip(places) {
            put(&mut page, still, place)?;
        }
        page.encode_png().map_err(|it| mistake(&it))
    }

    /// The page of this height with the places of its pictures, and where it ends.
    fn drawn(&self, stills: &[Still], height: f64) -> (Picture, Vec<Area>, f64) {
        let mut picture = Picture::new(WIDTH, height, &LIGHT);
        let inside = Area::new(MARGIN, MARGIN, WIDTH - 2.0 * MARGIN, height);
        let mut y = self.heading(&mut picture, inside);
        let places = places(stills, Area::new(inside.x, y, inside.width, 0.0));
        y = places.iter().map(|it| it.bottom()).fold(y, f64::max) + 20.0;
        y = self.figures(&mut picture, inside, y + 12.0);
        y = self.cautions(&mut picture, inside, y + 18.0);
        (picture, places, y)
    }

    fn heading(&self, picture: &mut Picture, inside: Area) -> f64 {
        let big = Lettering::new(Size::Sentence, LIGHT.ink).bold();
        let mut y = inside.y + 18.0;
        for line in big.wrapped(&self.sentence, inside.width) {
            picture.text(inside.x, y, big, &line);
            y += Size::Sentence.line_px();
        }
        let invented = if self.is_invented { ". Invented example: not a real player" } else { "" };
        picture.text(inside.x, y + 4.0, QUIET, &format!("{}{invented}", self.player));
        y + 4.0 + Size::Quiet.line_px()
    }

    fn figures(&self, picture: &mut Picture, inside: Area, mut y: f64) -> f64 {
        let column = |n: usize| inside.x + inside.width * [0.0, 0.34, 0.56, 0.78][n];
        picture.text(inside.x, y, INK.bold(), &self.heading);
        for (n, (bat, label)) in self.bats.iter().enumerate() {
            let (colour, dashes) = bat_look(&LIGHT, *bat);
            let line = Stroke { colour, width: 2.5, dash: dashes };
            let x = column(n + 1);
            picture.line([x, y - 22.0], [x + 60.0, y - 22.0], line);
            let name = Lettering::new(Size::Text, colour).bold();
            picture.text(x, y, name, &format!("{} {}", bat_letter(*bat), label));
        }
        if self.bats.len() > 1 {
            picture.text(column(3), y, QUIET, "second less first");
        }
        y += 8.0;
        for row in &self.rows {
            picture.line([inside.x, y], [inside.right(), y], Stroke::solid(LIGHT.hairline, 1.0));
            y += Size::Text.line_px();
            picture.text(inside.x, y - 5.0, INK, row.name);
            for (n, value) in row.values.iter().enumerate().take(self.bats.len()) {
                let Some(told) = value else { continue };
                picture.text(column(n + 1), y - 5.0, INK, &told.value);
                let beside = column(n + 1) + INK.width(&told.value) + 8.0;
                picture.text(beside, y - 5.0, QUIET, &told.doubt);
            }
            if let Some((words, _)) = row.difference.as_ref().filter(|_| self.bats.len() > 1) {
                picture.text(column(3), y - 5.0, INK, words);
            }
            y += 4.0;
        }
        let key = "± one standard deviation: two times in three the truth is nearer. Simulated, not filmed: the follow-through is not in it.";
        for line in QUIET.wrapped(key, inside.width) {
            y += Size::Quiet.line_px();
            picture.text(inside.x, y, QUIET, &line);
        }
        y
    }

    fn cautions(&self, picture: &mut Picture, inside: Area, top: f64) -> f64 {
        let width = inside.width - 20.0;
        let mut y = top + 8.0;
        for caution in &self.cautions {
            for line in INK.wrapped(caution, width) {
                y += Size::Text.line_px();
                picture.text(inside.x + 10.0, y, INK, &line);
            }
        }
        let frame = Area::new(inside.x, top, inside.width, y + 12.0 - top);
        picture.frame(frame, Stroke::solid(LIGHT.ink, 1.0));
        frame.bottom()
    }
}

/// Side by side, each in its own shape.
fn places(stills: &[Still], room: Area) -> Vec<Area> {
    const GAP: f64 = 12.0;
    let count = stills.len().max(1) as f64;
    let width = (room.width - GAP * (count - 1.0)) / count;
    let place = |(n, still): (usize, &Still)| {
        let [across, down] = still.size.map(f64::from);
        let height = (width * down / across.max(1.0)).min(420.0);
        Area::new(room.x + n as f64 * (width + GAP), room.y, width, height)
    };
    stills.iter().enumerate().map(place).collect()
}

fn put(page: &mut Pixmap, still: &Still, place: Area) -> Result<(), Stop> {
    let [width, height] = still.size;
    let source = pixmap(width, height, &still.rgba).map_err(|it| mistake(&it))?;
    let scale =
        (PIXELS * place.width / f64::from(width)).min(PIXELS * place.height / f64::from(height));
    let (x, y) = (PIXELS * place.x, PIXELS * place.y);
    let at = Transform::from_row(scale as f32, 0.0, 0.0, scale as f32, x as f32, y as f32);
    let paint = PixmapPaint { quality: FilterQuality::Bicubic, ..Default::default() };
    page.draw_pixmap(0, 0, source.as_ref(), &paint, at, None);
    Ok(())
}
