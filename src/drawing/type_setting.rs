//! The faces, the four sizes, how wide a text is, and where a line breaks.

use super::DrawingFault;
use super::area::Area;
use super::palette::Colour;
use resvg::usvg;
use std::sync::Arc;

/// Family name of the faces in `assets/fonts`: Inter with tabular figures, licence OFL-1.1 beside them.
pub const FAMILY: &str = "Backlift Text";

const REGULAR: &[u8] = include_bytes!("../../assets/fonts/BackliftText-Regular.otf");
const SEMI_BOLD: &[u8] = include_bytes!("../../assets/fonts/BackliftText-SemiBold.otf");

/// The only four sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Size {
    /// Units, notes, axes.
    Quiet,
    /// Running text.
    Text,
    /// The sentence a view opens with.
    Sentence,
    /// The one big number.
    Big,
}

impl Size {
    /// Px.
    pub fn px(self) -> f64 {
        match self {
            Self::Quiet => 13.0,
            Self::Text => 15.0,
            Self::Sentence => 20.0,
            Self::Big => 34.0,
        }
    }
    /// From one baseline to the next, px.
    pub fn line_px(self) -> f64 {
        match self {
            Self::Quiet => 17.0,
            Self::Text => 20.0,
            Self::Sentence => 26.0,
            Self::Big => 40.0,
        }
    }
}

/// Which end of a text stands at the given x.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// The left end.
    Start,
    /// The middle.
    Middle,
    /// The right end.
    End,
}

impl Anchor {
    pub(super) fn svg(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// How a text is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lettering {
    pub(super) size: Size,
    pub(super) is_bold: bool,
    pub(super) colour: Colour,
    pub(super) anchor: Anchor,
}

impl Lettering {
    /// Regular, from the left.
    pub const fn new(size: Size, colour: Colour) -> Self {
        Self { size, is_bold: false, colour, anchor: Anchor::Start }
    }
    /// The same, semi-bold: for figures and headings.
    pub const fn bold(self) -> Self {
        Self { is_bold: true, ..self }
    }
    /// The same, anchored elsewhere.
    pub const fn anchored(self, anchor: Anchor) -> Self {
        Self { anchor, ..self }
    }

    /// Width of a text, px: the sum of its letters' advances, kerning left out (it only narrows).
    pub fn width(self, text: &str) -> f64 {
        let face = if self.is_bold { SEMI_BOLD } else { REGULAR };
        let Ok(face) = ttf_parser::Face::parse(face, 0) else {
            return 0.0; // the faces are part of the program: a test parses them
        };
        let advance = |it: char| {
            let glyph = face.glyph_index(it).unwrap_or(ttf_parser::GlyphId(0));
            f64::from(face.glyph_hor_advance(glyph).unwrap_or(0))
        };
        text.chars().map(advance).sum::<f64>() * self.size.px() / f64::from(face.units_per_em())
    }

    /// The area a text takes with its baseline at y.
    pub fn extent(self, x: f64, y: f64, text: &str) -> Area {
        let width = self.width(text);
        let left = match self.anchor {
            Anchor::Start => x,
            Anchor::Middle => x - 0.5 * width,
            Anchor::End => x - width,
        };
        let px = self.size.px();
        Area::new(left - 2.0, y - 0.86 * px, width + 4.0, 1.14 * px)
    }

    /// The text in lines no wider than `width` px; a single word that is wider is broken.
    pub fn wrapped(self, text: &str, width: f64) -> Vec<String> {
        let mut lines: Vec<String> = Vec::new();
        // Not at thin or fixed spaces: they bind a unit to its number.
        for word in text.split([' ', '\n', '\t']).filter(|it| !it.is_empty()) {
            match lines.last_mut() {
                Some(line) if self.width(&format!("{line} {word}")) <= width => {
                    line.push(' ');
                    line.push_str(word);
                }
                _ => lines.extend(self.broken(word, width)),
            }
        }
        lines
    }

    /// A word in pieces no wider than `width` px, of a letter each at the least.
    fn broken(self, word: &str, width: f64) -> Vec<String> {
        if self.width(word) <= width {
            return vec![word.to_owned()];
        }
        let mut pieces = vec![String::new()];
        let mut used = 0.0;
        for letter in word.chars() {
            let more = self.width(letter.encode_utf8(&mut [0; 4]));
            if used > 0.0 && used + more > width {
                pieces.push(String::new());
                used = 0.0;
            }
            if let Some(piece) = pieces.last_mut() {
                piece.push(letter);
            }
            used += more;
        }
        pieces
    }

    /// The text where it is no wider than `width` px, or as much of its beginning as is, and that there is more.
    pub(super) fn cut_to(self, text: &str, width: f64) -> String {
        if self.width(text) <= width {
            return text.to_owned();
        }
        self.ended(text, width, "…")
    }

    /// No more than `most` lines, the last of them with `ending` where there are more.
    pub(super) fn first_lines(
        self,
        mut lines: Vec<String>,
        most: usize,
        width: f64,
        ending: &str,
    ) -> Vec<String> {
        if lines.len() > most {
            lines.truncate(most);
            if let Some(last) = lines.last_mut() {
                *last = self.ended(last, width, ending);
            }
        }
        lines
    }

    /// As much of the beginning of `text` as leaves room for `ending` within `width` px, and that.
    fn ended(self, text: &str, width: f64, ending: &str) -> String {
        let room = width - self.width(ending);
        let mut used = 0.0;
        let kept: String = text
            .chars()
            .take_while(|it| {
                used += self.width(it.encode_utf8(&mut [0; 4]));
                used <= room
            })
            .collect();
        kept.trim_end().to_owned() + ending
    }
}

/// The picture as a tree of shapes and laid-out text, with our faces and no others.
pub fn tree(svg: &str) -> Result<usvg::Tree, DrawingFault> {
    let mut faces = usvg::fontdb::Database::new();
    faces.load_font_data(REGULAR.to_vec());
    faces.load_font_data(SEMI_BOLD.to_vec());
    faces.set_sans_serif_family(FAMILY);
    let options = usvg::Options {
        fontdb: Arc::new(faces),
        font_family: FAMILY.to_owned(),
        ..usvg::Options::default()
    };
    usvg::Tree::from_str(svg, &options).map_err(|it| DrawingFault::refused("a picture", it))
}
