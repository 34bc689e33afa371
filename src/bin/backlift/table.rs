//! Figures in rows and columns for a terminal.

use comfy_table::{CellAlignment, ContentArrangement, LineStyle, Table, TableStyle};

/// A table with hairlines under its heads; the first column holds words, the others figures.
pub fn table(heads: &[&str], rows: &[Vec<String>]) -> String {
    let mut table = Table::new();
    table
        .load_style(TableStyle::new().header_separator(LineStyle::none().fill('─').junction('─')))
        .set_content_arrangement(ContentArrangement::Dynamic)
        .set_header(heads);
    for row in rows {
        table.add_row(row);
    }
    for column in table.column_iter_mut().skip(1) {
        column.set_cell_alignment(CellAlignment::Right);
    }
    format!("{table}\n")
}
