//! How things are said on the screen: the sentence first, then figures with their doubt and their why.

use backlift::drawing::palette::{BAT_DASHES, bat_look};
use backlift::files::fault::Fault;
use backlift::measurement::bench::bat_letter;
use egui::{Align2, Color32, Pos2, RichText, Sense, Shape, Stroke, Ui, WidgetType};

use crate::studio::look::Look;
use crate::studio::style::{bold, ink, number, theme};

/// The sentence of a view.
pub fn sentence(ui: &mut Ui, words: &str) {
    wrapped(ui, RichText::new(words).heading());
}

/// Words in as many lines as they need.
pub fn wrapped(ui: &mut Ui, words: RichText) -> egui::Response {
    ui.add(egui::Label::new(words).wrap())
}

pub fn head(ui: &mut Ui, words: &str) {
    ui.add_space(ui.spacing().item_spacing.y);
    ui.label(RichText::new(words).family(bold()));
}

/// Words of second rank.
pub fn quiet(ui: &mut Ui, words: &str) {
    wrapped(ui, RichText::new(words).small().weak());
}

pub fn small(ui: &mut Ui, words: &str) {
    wrapped(ui, RichText::new(words).small());
}

/// A caution or a fault.
pub fn caution(ui: &mut Ui, words: &str) {
    let colour = ui.visuals().error_fg_color;
    wrapped(ui, RichText::new(words).small().color(colour));
}

/// A fault, and what to do about it.
pub fn fault(ui: &mut Ui, it: &Fault, words: &str) {
    caution(ui, &with_mend(it, words));
}

/// What is wrong or odd, and what to do about it.
pub fn with_mend(it: &Fault, words: &str) -> String {
    it.help.as_deref().map_or(words.to_owned(), |mend| format!("{words}; {mend}"))
}

/// A figure that says on hovering where it comes from; it can be reached by the keyboard too.
pub fn why(ui: &mut Ui, value: &str, words: &str) {
    let it = ui.add(egui::Label::new(value).sense(Sense::focusable_noninteractive()));
    if it.has_focus() {
        it.show_tooltip_text(words);
    }
    it.on_hover_text(words);
}

/// A figure with its doubt under it.
pub fn measure(ui: &mut Ui, told: &str, words: &str) {
    match told.split_once(" ± ") {
        Some((value, doubt)) => {
            why(ui, value, &format!("± {doubt}. {words}"));
            quiet(ui, &format!("± {doubt}"));
        }
        None => why(ui, told, words),
    }
}

/// What a control is to those who do not see it.
pub fn named(it: &egui::Response, kind: WidgetType, words: &str) {
    it.widget_info(|| egui::WidgetInfo::labeled(kind, true, words));
}

/// The one big number of a view.
pub fn big(ui: &mut Ui, value: &str, name: &str, words: &str) {
    ui.add(egui::Label::new(RichText::new(value).text_style(number()))).on_hover_text(words);
    quiet(ui, name);
}

/// The mark of what is not computed yet.
pub fn pending(ui: &mut Ui, on: bool) {
    if on {
        ui.label(RichText::new("being worked out").small().weak().italics())
            .on_hover_text("The figures shown are of an earlier state; the new ones follow");
    }
}

/// Letter and line of a bat, as it is drawn everywhere.
pub fn bat_mark(ui: &mut Ui, look: &Look, bat: usize) {
    let height = ui.text_style_height(&egui::TextStyle::Body);
    // In a narrow cell of a table its line is shorter.
    let width = (3.0 * height).min(ui.available_width()).max(1.5 * height);
    let (rect, response) = ui.allocate_exact_size(egui::vec2(width, height), Sense::hover());
    let colour = ink(bat_look(theme(look), bat).0);
    let y = rect.center().y;
    let line = [Pos2::new(rect.left(), y), Pos2::new(rect.right() - height, y)];
    ui.painter().extend(bat_line(&line, bat, colour, 2.5));
    let font = egui::TextStyle::Body.resolve(ui.style());
    let letter = bat_letter(bat);
    ui.painter().text(rect.right_center(), Align2::RIGHT_CENTER, &letter, font, colour);
    named(&response, WidgetType::Label, &format!("bat {letter}"));
}

/// A line with the bat's own dashes.
pub fn bat_line(points: &[Pos2], bat: usize, colour: Color32, width: f32) -> Vec<Shape> {
    let stroke = Stroke::new(width, colour);
    let dashes = BAT_DASHES.get(bat).map_or("", |it| *it);
    let lengths: Vec<f32> = dashes.split_whitespace().filter_map(|it| it.parse().ok()).collect();
    match lengths.as_slice() {
        [dash, gap] if *dash < 1.0 => Shape::dotted_line(points, colour, *gap, 0.6 * width),
        [dash, gap] => Shape::dashed_line(points, stroke, *dash, *gap),
        [dash, gap, dot, last] => {
            let (dashes, gaps) = ([*dash, dot.max(width)], [*gap, *last]);
            Shape::dashed_line_with_offset(points, stroke, &dashes, &gaps, 0.0)
        }
        _ => vec![Shape::line(points.to_vec(), stroke)],
    }
}
