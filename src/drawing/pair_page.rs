//! One page that a coach can send to a parent: the sentence, two pictures, the figures, what to mind.

use resvg::tiny_skia::{FilterQuality, Pixmap, PixmapPaint, Transform};

use super::DrawingFault;
use super::area::Area;
use super::palette::{LIGHT, bat_look};
use super::picture::{Picture, Stroke};
use super::png::{drawn, encoded, pixmap};
use super::still::Still;
use super::type_setting::{Lettering, Size};
use crate::measurement::bench::bat_letter;

/// A line of figures.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// What it is.
    pub name: String,
    /// Of each bat the figure, and its doubt; none where it is not known.
    pub values: Vec<Option<[String; 2]>>,
    /// Second less first, in words.
    pub difference: Option<String>,
}

/// Width of the page, px, and pixels to a px.
const WIDTH: f64 = 794.0;
const PIXELS: f64 = 2.0;
const MARGIN: f64 = 38.0;
const INK: Lettering = Lettering::new(Size::Text, LIGHT.ink);
const QUIET: Lettering = Lettering::new(Size::Quiet, LIGHT.quiet);

/// What stands on the page besides the pictures.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Page {
    /// What a coach could say.
    pub sentence: String,
    /// For whom.
    pub player: String,
    /// Over the figures.
    pub heading: String,
    /// Place of each bat in the list, and its label.
    pub bats: Vec<(usize, String)>,
    /// The figures.
    pub lines: Vec<Line>,
    /// What to mind.
    pub cautions: Vec<String>,
    /// The player is invented.
    pub is_invented: bool,
}

impl Page {
    /// The page as PNG.
    ///
    /// # Errors
    /// If a library refuses the picture.
    pub fn png(&self, stills: &[Still]) -> Result<Vec<u8>, DrawingFault> {
        // Drawn twice: the first time to know how tall it is.
        let (_, _, height) = self.laid_out(stills, WIDTH);
        let (picture, places, _) = self.laid_out(stills, height + MARGIN);
        let mut page = drawn(&picture.finish(), PIXELS)?;
        for (still, place) in stills.iter().zip(places) {
            put(&mut page, still, place)?;
        }
        encoded(&page)
    }

    /// The page of this height with the places of its pictures, and where it ends.
    fn laid_out(&self, stills: &[Still], height: f64) -> (Picture, Vec<Area>, f64) {
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
        let top = [inside.x, inside.y - 8.0];
        let y = picture.paragraph(top, inside.width, big, &self.sentence) + big.size.line_px();
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
        for line in &self.lines {
            picture.line([inside.x, y], [inside.right(), y], Stroke::solid(LIGHT.hairline, 1.0));
            y += Size::Text.line_px();
            picture.text(inside.x, y - 5.0, INK, &line.name);
            for (n, value) in line.values.iter().enumerate().take(self.bats.len()) {
                let Some([value, doubt]) = value else { continue };
                picture.text(column(n + 1), y - 5.0, INK, value);
                let beside = column(n + 1) + INK.width(value) + 8.0;
                picture.text(beside, y - 5.0, QUIET, doubt);
            }
            if let Some(words) = line.difference.as_ref().filter(|_| self.bats.len() > 1) {
                picture.text(column(3), y - 5.0, INK, words);
            }
            y += 4.0;
        }
        let key = "± one standard deviation: two times in three the truth is nearer. Simulated, not filmed: the follow-through is not in it.";
        picture.paragraph([inside.x, y], inside.width, QUIET, key)
    }

    fn cautions(&self, picture: &mut Picture, inside: Area, top: f64) -> f64 {
        let width = inside.width - 20.0;
        let mut y = top + 8.0;
        for caution in &self.cautions {
            y = picture.paragraph([inside.x + 10.0, y], width, INK, caution);
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

fn put(page: &mut Pixmap, still: &Still, place: Area) -> Result<(), DrawingFault> {
    let [width, height] = still.size;
    let source = pixmap(width, height, &still.rgba)?;
    let scale =
        (PIXELS * place.width / f64::from(width)).min(PIXELS * place.height / f64::from(height));
    let (x, y) = (PIXELS * place.x, PIXELS * place.y);
    let at = Transform::from_row(scale as f32, 0.0, 0.0, scale as f32, x as f32, y as f32);
    let paint = PixmapPaint { quality: FilterQuality::Bicubic, ..Default::default() };
    page.draw_pixmap(0, 0, source.as_ref(), &paint, at, None);
    Ok(())
}
