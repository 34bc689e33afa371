//! An SVG in the making: the few shapes and the one face that every picture here is made of.

use super::area::Area;
use super::palette::{Colour, Theme};
use super::type_setting::{FAMILY, Lettering, Size};
use std::fmt::Write;

/// CSS pixels in a millimetre.
pub const PX_PER_MM: f64 = 96.0 / 25.4;

/// A line's look.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stroke {
    /// Its colour.
    pub colour: Colour,
    /// Its width, px.
    pub width: f64,
    /// Dash pattern, px; empty is solid.
    pub dash: &'static str,
}

impl Stroke {
    /// A solid line.
    pub const fn solid(colour: Colour, width: f64) -> Self {
        Self { colour, width, dash: "" }
    }
}

/// An SVG in the making.
#[derive(Clone, Debug)]
pub struct Picture {
    width: f64,
    height: f64,
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
        let mut picture = Self { width, height, body: String::new() };
        picture.rect(Area::new(0.0, 0.0, width, height), theme.ground);
        picture
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

    /// A filled rectangle.
    pub fn rect(&mut self, area: Area, fill: Colour) {
        self.put(format_args!(
            "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"{fill}\"/>",
            n(area.x),
            n(area.y),
            n(area.width),
            n(area.height)
        ));
    }

    /// A ruled rectangle.
    pub fn frame(&mut self, area: Area, stroke: Stroke) {
        self.put(format_args!(
            "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"none\" {}/>",
            n(area.x),
            n(area.y),
            n(area.width),
            n(area.height),
            Self::stroke(stroke)
        ));
    }

    /// A straight line.
    pub fn line(&mut self, from: [f64; 2], to: [f64; 2], stroke: Stroke) {
        self.polyline(&[from, to], stroke);
    }

    /// A line through points.
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

    /// A disc with a rim.
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

    /// The sentence a picture opens with, over the width of an area; returns the height under it.
    pub fn sentence(&mut self, area: Area, theme: &Theme, sentence: &str) -> f64 {
        let lettering = Lettering::new(Size::Sentence, theme.ink);
        let mut top = area.y + 16.0;
        for line in lettering.wrapped(sentence, area.width - 32.0) {
            top += Size::Sentence.line_px();
            self.text(area.x + 16.0, top - 8.0, lettering, &line);
        }
        top
    }

    /// One line of text in several letterings; the first one's anchor holds for all.
    pub fn runs(&mut self, x: f64, y: f64, runs: &[(Lettering, &str)]) {
        let anchor = runs.first().map_or("start", |(it, _)| it.anchor.svg());
        let mut spans = String::new();
        for (lettering, text) in runs {
            let _ = write!(
                spans,
                "<tspan font-size=\"{}\" font-weight=\"{}\" fill=\"{}\">{}</tspan>",
                n(lettering.size.px()),
                lettering.weight.svg(),
                lettering.colour,
                escaped(text)
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

    /// The SVG.
    pub fn finish(self) -> String {
        let (width, height) = (n(self.width), n(self.height));
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {width} {height}\" font-family=\"{FAMILY}, Inter, sans-serif\">\n{}</svg>\n",
            self.body
        )
    }
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
