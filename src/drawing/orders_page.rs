//! Orders for the bench on A4 pages: a row a bat, what it asks of the wood, and the cleft for it.

use super::area::Area;
use super::palette::PRINT;
use super::picture::{Picture, Stroke};
use super::type_setting::{Lettering, Size};
use super::{DrawingFault, INSIDE, PX_PER_MM, cautions_box};

/// One figure of a row: what it is, the figure, and its limits.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cell {
    /// The figure.
    pub figure: String,
    /// Its limits, or what stands beside it; may be empty.
    pub limits: String,
}

/// One bat.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OrderRow {
    /// Its number in the maker's book.
    pub number: String,
    /// Its trade size.
    pub size: String,
    /// Weight, balance, swings, handle, in the order of [`HEADS`].
    pub cells: [Cell; 4],
    /// What its cleft must give.
    pub willow: String,
    /// The cleft for it, where a rack was asked, and whatever else is to be said of its wood.
    pub wood: Vec<String>,
    /// What the customer wishes; empty where nothing is wished.
    pub wish: String,
}

/// All orders.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OrdersPage {
    /// Over everything.
    pub title: String,
    /// Under it.
    pub about: String,
    /// The bats.
    pub rows: Vec<OrderRow>,
    /// What is left over and why, a line each.
    pub left: Vec<String>,
    /// What must be known beside it.
    pub notes: Vec<String>,
    /// What those who play must be told, in a box of its own; none where all are grown.
    pub cautions: Vec<String>,
}

/// What stands over the columns.
pub const HEADS: [&str; 4] = ["weight", "balance, from top", "pendulum", "handle over grip"];
/// Where the columns begin: number, size, then the cells, px.
const COLUMNS: [f64; 6] = [0.0, 92.0, 190.0, 322.0, 456.0, 596.0];
/// Space above a row's first line and below its last, px.
const ROW_GAP: f64 = 8.0;
/// Letters of the number that stand large; a longer one stands small.
const LARGE: usize = 5;
const HAIRLINE: Stroke = Stroke::solid(PRINT.hairline, 1.0);
const QUIET: Lettering = Lettering::new(Size::Quiet, PRINT.ink);
const TEXT: Lettering = Lettering::new(Size::Text, PRINT.ink);
const SENTENCE: Lettering = Lettering::new(Size::Sentence, PRINT.ink);

/// The pages as SVG, A4 each.
///
/// # Errors
/// If one row alone, or what is said besides, is longer than a page.
pub fn svgs(page: &OrdersPage) -> Result<Vec<String>, DrawingFault> {
    let tail = tail_px(page);
    let mut pages: Vec<Vec<&OrderRow>> = vec![Vec::new()];
    let mut used = head_px(page);
    for row in &page.rows {
        let needed = row_px(row);
        let is_last = std::ptr::eq(row, page.rows.last().unwrap_or(row));
        let room = INSIDE.height - if is_last { tail } else { 0.0 };
        if used + needed > room && pages.last().is_some_and(|it| !it.is_empty()) {
            pages.push(Vec::new());
            used = head_px(page);
        }
        used += needed;
        if let Some(last) = pages.last_mut() {
            last.push(row);
        }
    }
    let over = used + tail - INSIDE.height;
    if over > 0.0 {
        return Err(DrawingFault::PageTooLong { needed_mm: over / PX_PER_MM });
    }
    let count = pages.len();
    let drawn = pages.iter().enumerate().map(|(n, rows)| {
        let mut picture = Picture::page();
        let mut y = draw_head(&mut picture, page, (n + 1, count));
        for row in rows {
            y = draw_row(&mut picture, row, y);
        }
        if n + 1 == count {
            draw_tail(&mut picture, page, y);
        }
        picture.finish()
    });
    Ok(drawn.collect())
}

fn head_px(page: &OrdersPage) -> f64 {
    let about = QUIET.wrapped(&page.about, INSIDE.width);
    20.0 + Size::Quiet.line_px() * about.len() as f64 + 24.0
}

/// Title and heads of the columns; returns where the rows begin.
fn draw_head(picture: &mut Picture, page: &OrdersPage, (n, count): (usize, usize)) -> f64 {
    let title = match count {
        1 => page.title.clone(),
        _ => format!("{}, page {n} of {count}", page.title),
    };
    picture.text(INSIDE.x, INSIDE.y + 18.0, SENTENCE.bold(), &title);
    let y = picture.paragraph([INSIDE.x, INSIDE.y + 20.0], INSIDE.width, QUIET, &page.about);
    let heads = ["order", "size"].into_iter().chain(HEADS);
    let quiet = Lettering::new(Size::Quiet, PRINT.quiet);
    for (head, x) in heads.zip(COLUMNS) {
        picture.text(INSIDE.x + x, y + 20.0, quiet, &quiet.cut_to(head, column_px(x)));
    }
    y + 24.0
}

/// Room from the start of a column to the next, px.
fn column_px(x: f64) -> f64 {
    let next = COLUMNS.into_iter().find(|it| *it > x).unwrap_or(INSIDE.width);
    next - x - 6.0
}

/// Lines under a row's figures, the first of them what its cleft must give.
fn under(row: &OrderRow) -> Vec<(Lettering, String)> {
    let width = INSIDE.width - COLUMNS[1];
    let wish = match row.wish.is_empty() {
        true => None,
        false => Some(format!("Wish: {}", row.wish)),
    };
    let bold = QUIET.bold();
    let first = bold.wrapped(&row.willow, width).into_iter().map(|it| (bold, it));
    let rest = row.wood.iter().cloned().chain(wish);
    let rest = rest.flat_map(|it| QUIET.wrapped(&it, width));
    first.chain(rest.map(|it| (QUIET, it))).collect()
}

fn row_px(row: &OrderRow) -> f64 {
    let lines = under(row).len() as f64;
    2.0 * ROW_GAP + Size::Text.line_px() + Size::Quiet.line_px() * (1.0 + lines)
}

/// One bat; returns where the next begins.
fn draw_row(picture: &mut Picture, row: &OrderRow, top: f64) -> f64 {
    picture.line([INSIDE.x, top], [INSIDE.right(), top], HAIRLINE);
    let mut y = top + ROW_GAP + 14.0;
    let large = row.number.chars().count() <= LARGE;
    let number = if large { SENTENCE.bold() } else { QUIET.bold() };
    let room = column_px(COLUMNS[0]);
    // The longest number of a card has three lines; a card's file may be called longer.
    let lines = number.first_lines(number.wrapped(&row.number, room), 3, room, "…");
    for (k, line) in lines.iter().enumerate() {
        let down = if large { 2.0 } else { Size::Quiet.line_px() * k as f64 };
        picture.text(INSIDE.x, y + down, number, line);
    }
    let bold = TEXT.bold();
    let size = bold.cut_to(&row.size, column_px(COLUMNS[1]));
    picture.text(INSIDE.x + COLUMNS[1], y, bold, &size);
    for (cell, x) in row.cells.iter().zip(&COLUMNS[2..]) {
        let room = column_px(*x);
        picture.text(INSIDE.x + x, y, bold, &bold.cut_to(&cell.figure, room));
        let limits = QUIET.cut_to(&cell.limits, room);
        picture.text(INSIDE.x + x, y + Size::Quiet.line_px(), QUIET, &limits);
    }
    y += Size::Quiet.line_px() + 3.0;
    for (lettering, line) in under(row) {
        y += Size::Quiet.line_px();
        picture.text(INSIDE.x + COLUMNS[1], y, lettering, &line);
    }
    top + row_px(row)
}

/// What is left over, and the notes, in lines.
fn said(page: &OrdersPage) -> Vec<String> {
    let all = page.left.iter().chain(&page.notes);
    all.flat_map(|it| QUIET.wrapped(it, INSIDE.width)).collect()
}

fn tail_px(page: &OrdersPage) -> f64 {
    let said = ROW_GAP + Size::Quiet.line_px() * said(page).len() as f64;
    let cautions = match page.cautions.is_empty() {
        true => 0.0,
        false => ROW_GAP + cautions_box::height(&page.cautions, INSIDE.width),
    };
    said + 6.0 + cautions
}

/// What is left over, the notes, and the cautions, under the last row.
fn draw_tail(picture: &mut Picture, page: &OrdersPage, top: f64) {
    picture.line([INSIDE.x, top], [INSIDE.right(), top], HAIRLINE);
    let mut y = top + ROW_GAP;
    for line in said(page) {
        y += Size::Quiet.line_px();
        picture.text(INSIDE.x, y, QUIET, &line);
    }
    if !page.cautions.is_empty() {
        let area = Area::new(INSIDE.x, y + 6.0 + ROW_GAP, INSIDE.width, 0.0);
        cautions_box::draw(picture, area, &page.cautions);
    }
}
