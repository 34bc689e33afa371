//! Figures in rows and columns for a terminal.

use comfy_table::{CellAlignment, ContentArrangement, LineStyle, Table, TableStyle};

/// Widest line, characters: the same in every terminal and in a file.
const WIDTH: u16 = 80;

/// A table with hairlines under its heads; the first column holds words, the others figures.
pub fn table(heads: &[&str], rows: &[Vec<String>]) -> String {
    let mut table = Table::new();
    table
        .load_style(TableStyle::new().header_separator(LineStyle::none().fill('─').junction('─')))
        .set_content_arrangement(ContentArrangement::Dynamic)
        .set_width(WIDTH + 1)
        .set_header(heads);
    for row in rows {
        table.add_row(row);
    }
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
    table(&heads, &rows.iter().map(row).collect::<Vec<Vec<String>>>())
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
        let rows = [vec!["weight".to_owned(), "2 lb".to_owned(), "3 lb".to_owned()]];
        let shown = table(&["", long, long], &rows);
        for line in shown.lines() {
            assert!(line.chars().count() <= usize::from(WIDTH), "{line}");
            assert_eq!(line, line.trim_end());
        }
    }
}
