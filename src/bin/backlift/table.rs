//! Figures in rows and columns for a terminal.

use comfy_table::{CellAlignment, ContentArrangement, LineStyle, Table, TableStyle};

/// Widest line, characters: the same in every terminal and in a file.
const WIDTH: u16 = 80;

/// A table with hairlines under its heads; the first column holds words, the others figures.
pub fn table<R: Into<comfy_table::Row>>(
    heads: &[&str],
    rows: impl IntoIterator<Item = R>,
) -> String {
    let mut table = Table::new();
    table
        .load_style(TableStyle::new().header_separator(LineStyle::none().fill('─').junction('─')))
        .set_content_arrangement(ContentArrangement::Dynamic)
        .set_width(WIDTH + 1)
        .set_header(heads)
        .add_rows(rows);
    for column in table.column_iter_mut().skip(1) {
        column.set_cell_alignment(CellAlignment::Right);
    }
    without_right_edge(&table.to_string())
}

/// One row of things side by side: its head, and what it says of each.
pub type Row<'a, T> = (&'a str, &'a dyn Fn(&T) -> String);

/// Things side by side, each in a column under its name.
pub fn side_by_side<T>(things: &[(&str, &T)], rows: &[Row<'_, T>]) -> String {
    let heads: Vec<&str> =
        std::iter::once("").chain(things.iter().map(|(name, _)| *name)).collect();
    let row = |(head, cell): &Row<'_, T>| {
        let cells = things.iter().map(|(_, it)| cell(it));
        std::iter::once((*head).to_owned()).chain(cells).collect()
    };
    table::<Vec<String>>(&heads, rows.iter().map(row))
}

/// Things side by side in one table, so that it fits a terminal.
const SIDE_BY_SIDE: usize = 3;

/// Things parted for as few tables as hold them, as evenly as can be.
pub fn parted<T>(things: &[T]) -> impl Iterator<Item = &[T]> {
    let tables = things.len().div_ceil(SIDE_BY_SIDE).max(1);
    things.chunks(things.len().div_ceil(tables).max(1))
}

/// No blanks at the ends of the lines, and hairlines as long as what they divide.
fn without_right_edge(table: &str) -> String {
    let is_rule = |line: &str| line.starts_with('─');
    let wide = table.lines().filter(|it| !is_rule(it)).map(|it| it.trim_end().chars().count());
    let wide = wide.max().unwrap_or(0);
    let mut out = String::new();
    for line in table.lines() {
        match is_rule(line) {
            true => out.extend(line.chars().take(wide)),
            false => out += line.trim_end(),
        }
        out.push('\n');
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_table_is_wider_than_a_terminal_and_no_line_ends_in_blanks() {
        let long = "a label that somebody wrote at great length on a sticker";
        let shown = table(&["", long, long], [["weight", "2 lb", "3 lb"]]);
        for line in shown.lines() {
            assert!(line.chars().count() <= usize::from(WIDTH), "{line}");
            assert_eq!(line, line.trim_end());
        }
    }
}
