//! Orders for the bench on A4 pages: a row a bat, what it asks of the wood, and the cleft for it.

use super::area::Area;
use super::palette::{PRINT, Theme};
use super::picture::{PX_PER_MM, Picture, Stroke};
use super::sheet::{MARGIN_MM, PAGE_MM};
use super::type_setting::{Lettering, Size};
use super::{DrawingFault, cautions_box};

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

/// The pages as SVG, A4 each.
///
/// # Errors
/// If one row alone, or what is said besides, is longer than a page.
pub fn svgs(page: &OrdersPage) -> Result<Vec<String>, DrawingFault> {
    let theme = &PRINT;
    let [width, height] = PAGE_MM.map(|it| it * PX_PER_MM);
    let margin = MARGIN_MM * PX_PER_MM;
    let inside = Area::new(margin, margin, width - 2.0 * margin, height - 2.0 * margin);
    let set = Setting { theme, inside };
    let tail = set.tail_px(page);
    let mut pages: Vec<Vec<&OrderRow>> = vec![Vec::new()];
    let mut used = set.head_px(page);
    for row in &page.rows {
        let needed = set.row_px(row);
        let is_last = std::ptr::eq(row, page.rows.last().unwrap_or(row));
        let room = inside.height - if is_last { tail } else { 0.0 };
        if used + needed > room && pages.last().is_some_and(|it| !it.is_empty()) {
            pages.push(Vec::new());
            used = set.head_px(page);
        }
        used += needed;
        if let Some(last) = pages.last_mut() {
            last.push(row);
        }
    }
    let over = used + tail - inside.height;
    if over > 0.0 {
        return Err(DrawingFault::PageTooLong { needed_mm: over / PX_PER_MM });
    }
    let count = pages.len();
    let drawn = pages.iter().enumerate().map(|(n, rows)| {
        let mut picture = Picture::new(width, height, theme);
        let mut y = set.head(&mut picture, page, (n + 1, count));
        for row in rows {
            y = set.row(&mut picture, row, y);
        }
        if n + 1 == count {
            set.tail(&mut picture, page, y);
        }
        picture.finish()
    });
    Ok(drawn.collect())
}

/// How a page is set.
#[derive(Clone, Copy)]
struct Setting<'t> {
    theme: &'t Theme,
    inside: Area,
}

impl Setting<'_> {
    fn quiet(self) -> Lettering {
        Lettering::new(Size::Quiet, self.theme.ink)
    }

    fn text(self) -> Lettering {
        Lettering::new(Size::Text, self.theme.ink)
    }

    fn about(self, page: &OrdersPage) -> Vec<String> {
        self.quiet().wrapped(&page.about, self.inside.width)
    }

    fn head_px(self, page: &OrdersPage) -> f64 {
        20.0 + Size::Quiet.line_px() * self.about(page).len() as f64 + 24.0
    }

    /// Title and heads of the columns; returns where the rows begin.
    fn head(self, picture: &mut Picture, page: &OrdersPage, (n, count): (usize, usize)) -> f64 {
        let inside = self.inside;
        let title = match count {
            1 => page.title.clone(),
            _ => format!("{}, page {n} of {count}", page.title),
        };
        let bold = Lettering::new(Size::Sentence, self.theme.ink).bold();
        picture.text(inside.x, inside.y + 18.0, bold, &title);
        let mut y = inside.y + 20.0;
        for line in self.about(page) {
            y += Size::Quiet.line_px();
            picture.text(inside.x, y, self.quiet(), &line);
        }
        let heads = ["order", "size"].into_iter().chain(HEADS);
        let quiet = Lettering::new(Size::Quiet, self.theme.quiet);
        for (head, x) in heads.zip(COLUMNS) {
            let room = self.column_px(x);
            picture.text(inside.x + x, y + 20.0, quiet, &quiet.cut_to(head, room, "…"));
        }
        y + 24.0
    }

    /// Room from the start of a column to the next, px.
    fn column_px(self, x: f64) -> f64 {
        let next = COLUMNS.into_iter().find(|it| *it > x).unwrap_or(self.inside.width);
        next - x - 6.0
    }

    /// Lines under a row's figures, the first of them what its cleft must give.
    fn under(self, row: &OrderRow) -> Vec<(Lettering, String)> {
        let width = self.inside.width - COLUMNS[1];
        let wish = match row.wish.is_empty() {
            true => None,
            false => Some(format!("Wish: {}", row.wish)),
        };
        let bold = self.quiet().bold();
        let first = bold.wrapped(&row.willow, width).into_iter().map(|it| (bold, it));
        let rest = row.wood.iter().cloned().chain(wish);
        let rest = rest.flat_map(|it| self.quiet().wrapped(&it, width));
        first.chain(rest.map(|it| (self.quiet(), it))).collect()
    }

    fn row_px(self, row: &OrderRow) -> f64 {
        let lines = self.under(row).len() as f64;
        2.0 * ROW_GAP + Size::Text.line_px() + Size::Quiet.line_px() * (1.0 + lines)
    }

    /// One bat; returns where the next begins.
    fn row(self, picture: &mut Picture, row: &OrderRow, top: f64) -> f64 {
        let inside = self.inside;
        let hairline = Stroke::solid(self.theme.hairline, 1.0);
        picture.line([inside.x, top], [inside.right(), top], hairline);
        let mut y = top + ROW_GAP + 14.0;
        let large = row.number.chars().count() <= LARGE;
        let number = match large {
            true => Lettering::new(Size::Sentence, self.theme.ink).bold(),
            false => self.quiet().bold(),
        };
        let room = self.column_px(COLUMNS[0]);
        // The longest number of a card has three lines; a card's file may be called longer.
        let mut lines = number.wrapped(&row.number, room);
        if lines.len() > 3 {
            lines.truncate(3);
            lines[2] = number.ended(&lines[2], room, "…");
        }
        for (k, line) in lines.iter().enumerate() {
            let down = if large { 2.0 } else { Size::Quiet.line_px() * k as f64 };
            picture.text(inside.x, y + down, number, line);
        }
        let bold = self.text().bold();
        let size = bold.cut_to(&row.size, self.column_px(COLUMNS[1]), "…");
        picture.text(inside.x + COLUMNS[1], y, bold, &size);
        for (cell, x) in row.cells.iter().zip(&COLUMNS[2..]) {
            let room = self.column_px(*x);
            picture.text(inside.x + x, y, bold, &bold.cut_to(&cell.figure, room, "…"));
            let limits = self.quiet().cut_to(&cell.limits, room, "…");
            picture.text(inside.x + x, y + Size::Quiet.line_px(), self.quiet(), &limits);
        }
        y += Size::Quiet.line_px() + 3.0;
        for (lettering, line) in self.under(row) {
            y += Size::Quiet.line_px();
            picture.text(inside.x + COLUMNS[1], y, lettering, &line);
        }
        top + self.row_px(row)
    }

    fn said(self, page: &OrdersPage) -> Vec<String> {
        let all = page.left.iter().chain(&page.notes);
        all.flat_map(|it| self.quiet().wrapped(it, self.inside.width)).collect()
    }

    fn tail_px(self, page: &OrdersPage) -> f64 {
        let said = ROW_GAP + Size::Quiet.line_px() * self.said(page).len() as f64;
        let cautions = match page.cautions.is_empty() {
            true => 0.0,
            false => ROW_GAP + cautions_box::height(&page.cautions, self.inside.width, self.theme),
        };
        said + 6.0 + cautions
    }

    /// What is left over, the notes, and the cautions, under the last row.
    fn tail(self, picture: &mut Picture, page: &OrdersPage, top: f64) {
        let inside = self.inside;
        let hairline = Stroke::solid(self.theme.hairline, 1.0);
        picture.line([inside.x, top], [inside.right(), top], hairline);
        let mut y = top + ROW_GAP;
        for line in self.said(page) {
            y += Size::Quiet.line_px();
            picture.text(inside.x, y, self.quiet(), &line);
        }
        if !page.cautions.is_empty() {
            let area = Area::new(inside.x, y + 6.0 + ROW_GAP, inside.width, 0.0);
            cautions_box::draw(picture, area, &page.cautions, self.theme);
        }
    }
}
