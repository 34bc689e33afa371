//! The face of the blade to scale, lying with the toe to the left, and the ball speed off it wherever it is met.

use super::DrawingFault;
use super::area::Area;
use super::axis::{Axis, Plot};
use super::contour::Field;
use super::map::shaded;
use super::palette::Theme;
use super::picture::{Picture, Stroke};
use super::type_setting::{Lettering, Size};

/// What the map shows.
#[derive(Clone, Debug, PartialEq)]
pub struct FacePicture {
    /// What it says, in one sentence.
    pub sentence: String,
    /// What the value is, with its unit.
    pub value_label: String,
    /// Columns: from the toe, m, all rising or all falling.
    pub from_toe_m: Vec<f64>,
    /// Half the width of the face in each column, m.
    pub half_width_m: Vec<f64>,
    /// Rows: off the middle as a share of half the width, from −1 to 1, rising.
    pub across_share: Vec<f64>,
    /// Row by row.
    pub value: Vec<f64>,
    /// The place hit: from the toe, off the middle, m.
    pub hit_m: [f64; 2],
}

impl FacePicture {
    /// Half the width between two columns, m; nought beyond the last.
    fn half_width_at_m(&self, from_toe_m: f64) -> f64 {
        let columns = || self.from_toe_m.iter().zip(&self.half_width_m);
        let between = columns().zip(columns().skip(1)).find_map(|((a, half_a), (b, half_b))| {
            let t = (from_toe_m - a) / (b - a);
            (0.0..=1.0).contains(&t).then(|| half_a + t * (half_b - half_a))
        });
        between.unwrap_or(0.0)
    }
}

/// Scale of the blade, px to the metre.
const PX_PER_M: f64 = 1500.0;
/// Room left and right of the blade, and beside it, m.
const ROOM_M: f64 = 0.012;

/// The map as an SVG.
pub fn svg(face: &FacePicture, theme: &Theme) -> Result<String, DrawingFault> {
    let (columns, rows) = (face.from_toe_m.len(), face.across_share.len());
    if face.value.len() != columns * rows || face.half_width_m.len() != columns {
        let what = format!(
            "the map has {columns} × {rows} places, {} widths and {} values",
            face.half_width_m.len(),
            face.value.len()
        );
        return Err(DrawingFault::refused("a picture", what));
    }
    let reach = |all: &[f64]| all.iter().copied().fold(0.0, f64::max);
    let [length_m, half_m] = [&face.from_toe_m, &face.half_width_m].map(|it| reach(it));
    let [long, wide] = [length_m + 2.0 * ROOM_M, 2.0 * (half_m + ROOM_M)].map(|it| PX_PER_M * it);
    let width = long + 82.0;
    let sentence = Lettering::new(Size::Sentence, theme.ink);
    let quiet = Lettering::new(Size::Quiet, theme.quiet);
    let lines = sentence.wrapped(&face.sentence, width - 32.0);
    let key = format!(
        "Shades and lines: {}. The blade lies to scale, toe to the left. Ringed: the place hit",
        face.value_label
    );
    let keys = quiet.wrapped(&key, width - 32.0);
    let head = 16.0
        + Size::Sentence.line_px() * lines.len() as f64
        + Size::Quiet.line_px() * keys.len() as f64;
    let mut picture = Picture::new(width, head + 34.0 + wide + 56.0, theme);
    let top = picture.sentence(picture.whole(), &face.sentence);
    picture.paragraph([16.0, top - 4.0], width - 32.0, quiet, &key);
    let mm = |m: f64| 1e3 * m;
    let plot = Plot {
        area: Area::new(58.0, head + 34.0, long, wide),
        x: Axis {
            label: "from the toe, mm".to_owned(),
            range: [-mm(ROOM_M), mm(length_m + ROOM_M)],
        },
        y: Axis {
            label: "off the middle, mm".to_owned(),
            range: [-mm(half_m + ROOM_M), mm(half_m + ROOM_M)],
        },
    };
    plot.draw_ground(&mut picture);
    // Places of the grid are shares of half the width.
    let on_page = |[x, share]: [f64; 2]| plot.at(mm(x), mm(share * face.half_width_at_m(x)));
    let value: Vec<Option<f64>> = face.value.iter().copied().map(Some).collect();
    let field = Field { x: &face.from_toe_m, y: &face.across_share, value: &value };
    let names = shaded(&mut picture, &field, 9.0, &on_page);
    let side = |share: f64| face.from_toe_m.iter().map(move |x| [*x, share]);
    let outline = side(1.0).chain(side(-1.0).rev()).chain(side(1.0).take(1));
    let outline: Vec<[f64; 2]> = outline.map(on_page).collect();
    picture.polyline(&outline, Stroke::solid(theme.ink, 2.0));
    let [x, y] = face.hit_m;
    let at = plot.at(mm(x), mm(y));
    picture.disc(at, 7.0, theme.panel, Stroke::solid(theme.ink, 3.0));
    let mut taken = vec![Area::new(at[0] - 12.0, at[1] - 12.0, 24.0, 24.0)];
    // No name across the ends of the blade.
    let mut ends = face.from_toe_m.iter().zip(&face.half_width_m);
    for (x, half_m) in [ends.next(), ends.next_back()].into_iter().flatten() {
        let [left, top] = plot.at(mm(*x), mm(*half_m));
        let [_, bottom] = plot.at(mm(*x), -mm(*half_m));
        taken.push(Area::new(left - 2.0, top, 4.0, bottom - top));
    }
    for name in &names {
        name.draw(&mut picture, &plot, &mut taken);
    }
    Ok(picture.finish())
}
