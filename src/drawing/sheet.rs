//! The maker's card on one A4 page.

use super::DrawingFault;
use super::area::Area;
use super::map_picture::MapPicture;
use super::palette::PRINT;
use super::picture::{Picture, Stroke};
use super::sheet_texts::{INDENT, NARROWEST_MAP, TEXT};
use super::type_setting::{Lettering, Size};
use super::words::{self, joined};
use super::{INSIDE, PX_PER_MM, bat_outline, cautions_box, map, qr, sheet_figures, sheet_texts};
use crate::card::Card;
use crate::files::card::write_short;

/// Side of the QR code, mm; its white border lies in the margin.
pub const CODE_MM: f64 = 25.0;

/// Widths the map may have, px, the one with most to see first.
const MAP_WIDTHS: [f64; 3] = [290.0, 265.0, NARROWEST_MAP];

/// From the left of the bat's drawing to the right of its toe, px.
const BESIDE_TOE_PX: f64 = 86.0;
/// Where the order's number stands, and whether the player is invented: px below the page's top margin.
const ORDER_PX: f64 = 90.0;
const QUIET: Lettering = Lettering::new(Size::Quiet, PRINT.ink);

/// The card as an SVG of one A4 page, with its map if there is one.
///
/// No text is too long for it: what there is no room for is cut, the map left out, and the page says so.
/// Pass a card [`Card::rounded_for_the_bench`]: the code carries its figures as they are.
pub fn svg(card: &Card, map: Option<&MapPicture>) -> Result<String, DrawingFault> {
    let mut picture = Picture::page();
    let (mut y, mut left_out) = heading(&mut picture, card)?;
    let figures = Area::new(INSIDE.x, y + 12.0, 480.0, 0.0);
    let bat = Area::new(figures.right() + 14.0, figures.y + 8.0, 200.0, 0.0);
    y = sheet_figures::draw(&mut picture, figures, card);
    bat_outline::draw(&mut picture, bat, card);
    let key = [
        "Bars: what will do;",
        "mark: the target.",
        &format!("Bat drawn 1 : {}.", words::number(bat_outline::ONE_TO, 0)),
    ];
    for (k, line) in key.iter().enumerate() {
        let key_y = y - 46.0 + Size::Quiet.line_px() * k as f64;
        picture.text(bat.x + BESIDE_TOE_PX, key_y, QUIET, line);
    }
    picture.line([INSIDE.x, y], [INSIDE.right(), y], Stroke::solid(PRINT.hairline, 1.0));
    y = paragraph(&mut picture, y + 8.0, "Pendulum", &pendulum(card));
    let wish = card.order.as_ref().map(|it| words::wish(&it.wish));
    if let Some(wish) = wish.filter(|it| !it.is_empty()) {
        y = paragraph(&mut picture, y + 4.0, "Wish", &wish);
    }
    let foot_y = INSIDE.bottom() - 4.0;
    let texts = sheet_texts::fitted(card, map.is_some(), foot_y - 18.0 - y);
    y = lines(&mut picture, y + 4.0, "Why", &texts.reason);
    y = lines(&mut picture, y + 4.0, "How sure", &texts.how_sure);
    let with_map = map.filter(|_| texts.with_map);
    if map.is_some() && with_map.is_none() {
        left_out.push("the map".to_owned());
    }

    let rest = Area::new(INSIDE.x, y + 8.0, INSIDE.width, foot_y - 18.0 - (y + 8.0));
    let fits =
        |width: &&f64| cautions_box::height(&texts.cautions, rest.width - **width) <= rest.height;
    let map_width = match with_map {
        // The more there is to be cautious about, the smaller the map.
        Some(_) => *MAP_WIDTHS.iter().find(fits).unwrap_or(&NARROWEST_MAP),
        None => 0.0,
    };
    let box_area = Area::new(rest.x + map_width, rest.y, rest.width - map_width, rest.height);
    cautions_box::draw(&mut picture, box_area, &texts.cautions);
    if let Some(it) = with_map {
        let key = format!(
            "Shades and lines: {}. Frame: what will do. Hatched: cannot be made.",
            it.value_label
        );
        let lines = QUIET.wrapped(&key, map_width - 14.0);
        let line_px = Size::Quiet.line_px();
        let map_height = (rest.height - line_px * lines.len() as f64).min(230.0);
        let area = Area::new(rest.x - 12.0, rest.y - 6.0, map_width + 4.0, map_height);
        map::draw(&mut picture, area, it, false)?;
        for (k, line) in lines.iter().enumerate() {
            picture.text(rest.x, area.bottom() + 10.0 + line_px * k as f64, QUIET, line);
        }
    }
    let mut foot = format!("{}, model {}", card.software, card.model);
    if !left_out.is_empty() {
        foot = format!("Left out for want of room: {}. {foot}", left_out.join(", "));
    }
    picture.text(INSIDE.x, foot_y, QUIET, &QUIET.cut_to(&foot, INSIDE.width));
    Ok(picture.finish())
}

/// Who and what, with the code at the right; returns the lower edge, and what the code has no room for.
fn heading(picture: &mut Picture, card: &Card) -> Result<(f64, Vec<String>), DrawingFault> {
    let side = CODE_MM * PX_PER_MM;
    let code = Area::new(INSIDE.right() - side, INSIDE.y, side, side);
    let short = write_short(card, qr::MOST_BYTES)?;
    qr::draw(picture, code, &short.text)?;
    let title = format!(
        "Make: size {}, {} ({}) long",
        card.size,
        joined(&words::inches(card.length_m)),
        joined(&words::millimetres(card.length_m))
    );
    let heading = Lettering::new(Size::Sentence, PRINT.ink).bold();
    if INSIDE.x + heading.width(&title) > code.x - 8.0 {
        let what = format!("the size's name \"{}\" is too long for the card", card.size);
        return Err(DrawingFault::refused("a card", what));
    }
    picture.text(INSIDE.x, INSIDE.y + 18.0, heading, &title);
    let lines = [
        format!("for a player of {}", words::player(card)),
        format!("All figures hold with {}.", words::condition(card.condition)),
    ];
    for (k, line) in lines.iter().enumerate() {
        picture.text(INSIDE.x, INSIDE.y + 44.0 + 21.0 * k as f64, TEXT, line);
    }
    let mut x = INSIDE.x;
    if card.invented {
        let text = "Invented example: not a real player";
        let y = INSIDE.y + ORDER_PX;
        let extent = TEXT.bold().extent(x + 6.0, y, text);
        let frame = Area::new(INSIDE.x, extent.y - 1.0, extent.width + 8.0, extent.height + 2.0);
        picture.frame(frame, Stroke::solid(PRINT.ink, 1.0));
        picture.text(x + 6.0, y, TEXT.bold(), text);
        x = frame.right() + 16.0;
    }
    if let Some(number) = card.order.as_ref().and_then(|it| it.number.as_ref()) {
        picture.text(x, INSIDE.y + ORDER_PX, TEXT.bold(), &format!("Order {number}"));
    }
    let left_out = short.left_out.iter().map(|it| format!("{it} in the code")).collect();
    Ok((INSIDE.y + side, left_out))
}

fn pendulum(card: &Card) -> String {
    format!(
        "Tie thin rods across face and back of the handle, {} ({}) from its top; one bears. Swing it face first, a hand’s width; out and back is one.{}",
        joined(&words::inches(card.pendulum_pivot_m)),
        joined(&words::millimetres(card.pendulum_pivot_m)),
        times_by_weight(card),
    )
}

/// " Seconds by weight: 948 g 40.6 to 41.0; …": the lightest, the middle and the heaviest weight that will do, rounded
/// inward to what a stopwatch tells.
fn times_by_weight(card: &Card) -> String {
    let all = card.pendulum_times();
    let Some(last) = all.len().checked_sub(1) else { return String::new() };
    let rows: Vec<String> = [0, last / 2, last]
        .into_iter()
        .filter_map(|i| all.get(i))
        .map(|it| {
            let grams = words::number(1000.0 * it.mass_kg, 0);
            let low = words::number(libm::ceil(10.0 * it.low_s) / 10.0, 1);
            let high = words::number(libm::floor(10.0 * it.high_s) / 10.0, 1);
            format!("{grams}\u{a0}g {low} to {high}")
        })
        .collect();
    format!(" Seconds by weight: {}.", rows.join("; "))
}

/// A heading in the margin column and its text beside it; returns the lower edge.
fn paragraph(picture: &mut Picture, top: f64, heading: &str, text: &str) -> f64 {
    lines(picture, top, heading, &TEXT.wrapped(text, INSIDE.width - INDENT))
}

/// The same with the text in its lines.
fn lines(picture: &mut Picture, top: f64, heading: &str, lines: &[String]) -> f64 {
    picture.text(INSIDE.x, top + 15.0, TEXT.bold(), heading);
    for (k, line) in lines.iter().enumerate() {
        picture.text(INSIDE.x + INDENT, top + 15.0 + Size::Text.line_px() * k as f64, TEXT, line);
    }
    top + Size::Text.line_px() * lines.len().max(1) as f64
}
