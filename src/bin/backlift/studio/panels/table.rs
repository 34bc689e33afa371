//! Rows whose columns line up and whose words may wrap.

use egui::{Align, Layout, RichText, Ui};

use super::words::{quiet, wrapped};

/// Shares of the width that the columns have.
pub struct Table {
    widths: Vec<f32>,
}

impl Table {
    pub fn new(ui: &Ui, shares: &[f32]) -> Self {
        let gap = ui.spacing().item_spacing.x;
        let free = (ui.available_width() - gap * shares.len() as f32).max(0.0);
        let sum: f32 = shares.iter().sum();
        Self { widths: shares.iter().map(|it| free * it / sum).collect() }
    }

    pub fn heads(&self, ui: &mut Ui, words: &[&str]) {
        self.row(ui, |ui, n| quiet(ui, words.get(n).unwrap_or(&"")));
    }

    /// One row; `cell` draws the column of that number.
    pub fn row(&self, ui: &mut Ui, mut cell: impl FnMut(&mut Ui, usize)) {
        ui.horizontal_top(|ui| {
            for (n, width) in self.widths.iter().enumerate() {
                let layout = Layout::top_down(Align::Min);
                ui.allocate_ui_with_layout(egui::vec2(*width, 0.0), layout, |ui| {
                    ui.set_width(*width);
                    ui.spacing_mut().item_spacing.y = 0.0;
                    cell(ui, n);
                });
            }
        });
    }
}

pub fn name(ui: &mut Ui, words: &str) {
    wrapped(ui, RichText::new(words).weak());
}
