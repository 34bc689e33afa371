//! An SVG in the making: the few shapes and the one face that every picture here is made of.

use super::area::Area;
use super::palette::{Colour, PRINT, Theme};
use super::type_setting::{FAMILY, Lettering, Size};
use super::{PAGE_MM, PX_PER_MM};
use std::fmt::Write;

/// A line's look.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stroke {
    pub colour: Colour,
    /// Px.
    pub width: f64,
    /// Dash pattern, px; empty is solid.
    pub dash: &'static str,
}

impl Stroke {
    pub const fn solid(colour: Colour, width: f64) -> Self {
        Self { colour, width, dash: "" }
    }
}

/// An SVG in the making.
#[derive(Clone, Debug)]
pub struct Picture {
    width: f64,
    height: f64,
    pub(super) theme: Theme,
    body: String,
}

/// A number as SVG text: two decimals, no trailing zeros, no negative zero.
fn n(value: f64) -> String {
    let text = format!("{value:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

fn escaped(text: &str) -> String {
    text.chars()
        .filter(|it| !it.is_control())
        .map(|it| match it {
            '&' => "&amp;".to_owned(),
            '<' => "&lt;".to_owned(),
            '>' => "&gt;".to_owned(),
            '"' => "&quot;".to_owned(),
            _ => it.to_string(),
        })
        .collect()
}

impl Picture {
    /// An empty picture of so many px, filled with the theme's ground.
    pub fn new(width: f64, height: f64, theme: &Theme) -> Self {
        let mut picture = Self { width, height, theme: *theme, body: String::new() };
        picture.rect(picture.whole(), theme.ground);
        picture
    }

    /// An empty page of A4, upright, to be printed.
    pub(super) fn page() -> Self {
        Self::new(PAGE_MM[0] * PX_PER_MM, PAGE_MM[1] * PX_PER_MM, &PRINT)
    }

    /// All of it.
    pub(super) fn whole(&self) -> Area {
        Area::new(0.0, 0.0, self.width, self.height)
    }

    fn put(&mut self, element: std::fmt::Arguments<'_>) {
        // Writing to a String cannot fail.
        let _ = self.body.write_fmt(element);
        self.body.push('\n');
    }

    fn stroke(stroke: Stroke) -> String {
        let dash = if stroke.dash.is_empty() {
            String::new()
        } else {
            format!(" stroke-dasharray=\"{}\"", stroke.dash)
        };
        format!(
            "stroke=\"{}\" stroke-width=\"{}\" stroke-linecap=\"round\" stroke-linejoin=\"round\"{dash}",
            stroke.colour,
            n(stroke.width)
        )
    }

    pub fn rect(&mut self, area: Area, fill: Colour) {
        self.put(format_args!("<rect {} fill=\"{fill}\"/>", placed(area)));
    }

    /// A ruled rectangle.
    pub fn frame(&mut self, area: Area, stroke: Stroke) {
        self.put(format_args!("<rect {} fill=\"none\" {}/>", placed(area), Self::stroke(stroke)));
    }

    pub fn line(&mut self, from: [f64; 2], to: [f64; 2], stroke: Stroke) {
        self.polyline(&[from, to], stroke);
    }

    pub fn polyline(&mut self, points: &[[f64; 2]], stroke: Stroke) {
        let data = path_data(points, false);
        self.put(format_args!("<path d=\"{data}\" fill=\"none\" {}/>", Self::stroke(stroke)));
    }

    /// Filled polygons as one shape, so that no seam shows between them.
    pub fn polygons<'a>(
        &mut self,
        polygons: impl IntoIterator<Item = &'a [[f64; 2]]>,
        fill: Colour,
        opacity: f64,
    ) {
        let data: String = polygons.into_iter().map(|it| path_data(it, true)).collect();
        if !data.is_empty() {
            self.put(format_args!(
                "<path d=\"{data}\" fill=\"{fill}\" fill-opacity=\"{}\"/>",
                n(opacity)
            ));
        }
    }

    pub fn disc(&mut self, centre: [f64; 2], radius: f64, fill: Colour, rim: Stroke) {
        self.put(format_args!(
            "<circle cx=\"{}\" cy=\"{}\" r=\"{}\" fill=\"{fill}\" {}/>",
            n(centre[0]),
            n(centre[1]),
            n(radius),
            Self::stroke(rim)
        ));
    }

    /// Slanted rules over an area: what the model does not know, or what cannot be made.
    pub fn hatch(&mut self, area: Area, stroke: Stroke, gap: f64) {
        let mut lines = String::new();
        let mut offset = gap;
        while offset < area.width + area.height {
            let from = [area.x + (offset - area.height).max(0.0), area.y + offset.min(area.height)];
            let to = [area.x + offset.min(area.width), area.y + (offset - area.width).max(0.0)];
            lines.push_str(&path_data(&[from, to], false));
            offset += gap;
        }
        self.put(format_args!("<path d=\"{lines}\" fill=\"none\" {}/>", Self::stroke(stroke)));
    }

    /// One line of text; y is that of the baseline.
    pub fn text(&mut self, x: f64, y: f64, lettering: Lettering, text: &str) {
        self.runs(x, y, &[(lettering, text)]);
    }

    /// A text under a height, in lines as wide as that; returns the last baseline.
    pub(super) fn paragraph(
        &mut self,
        [x, top]: [f64; 2],
        width: f64,
        lettering: Lettering,
        text: &str,
    ) -> f64 {
        let mut y = top;
        for line in lettering.wrapped(text, width) {
            y += lettering.size.line_px();
            self.text(x, y, lettering, &line);
        }
        y
    }

    /// The sentence a picture opens with, over the width of an area; returns the height under it.
    pub(super) fn sentence(&mut self, area: Area, sentence: &str) -> f64 {
        let lettering = Lettering::new(Size::Sentence, self.theme.ink);
        self.paragraph([area.x + 16.0, area.y + 8.0], area.width - 32.0, lettering, sentence) + 8.0
    }

    /// One line of text in several letterings; the first one's anchor holds for all.
    pub fn runs<S: AsRef<str>>(&mut self, x: f64, y: f64, runs: &[(Lettering, S)]) {
        let anchor = runs.first().map_or("start", |(it, _)| it.anchor.svg());
        let mut spans = String::new();
        for (lettering, text) in runs {
            let _ = write!(
                spans,
                "<tspan font-size=\"{}\" font-weight=\"{}\" fill=\"{}\">{}</tspan>",
                n(lettering.size.px()),
                if lettering.is_bold { 600 } else { 400 },
                lettering.colour,
                escaped(text.as_ref())
            );
        }
        self.put(format_args!(
            "<text x=\"{}\" y=\"{}\" text-anchor=\"{anchor}\" xml:space=\"preserve\">{spans}</text>",
            n(x),
            n(y)
        ));
    }

    /// One line of text with a patch behind it, for labels that lie on lines.
    pub fn text_on_patch(
        &mut self,
        x: f64,
        y: f64,
        lettering: Lettering,
        text: &str,
        patch: Colour,
    ) {
        self.rect(lettering.extent(x, y, text), patch);
        self.text(x, y, lettering, text);
    }

    pub fn finish(self) -> String {
        let (width, height) = (n(self.width), n(self.height));
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {width} {height}\" font-family=\"{FAMILY}, Inter, sans-serif\">\n{}</svg>\n",
            self.body
        )
    }
}

fn placed(area: Area) -> String {
    let [x, y, width, height] = [area.x, area.y, area.width, area.height].map(n);
    format!("x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\"")
}

fn path_data(points: &[[f64; 2]], closed: bool) -> String {
    let mut data = String::new();
    for (k, [x, y]) in points.iter().enumerate() {
        let _ = write!(data, "{}{} {}", if k == 0 { 'M' } else { 'L' }, n(*x), n(*y));
    }
    if closed && !points.is_empty() {
        data.push('Z');
    }
    data
}
