//! Paper and ink: the window's colours, type and spacing, from the palette and the fonts of the sheets.

use std::collections::BTreeMap;
use std::sync::Arc;

use backlift::drawing::palette::{Colour, DARK, LIGHT, Theme};
use egui::{
    Color32, CornerRadius, FontData, FontDefinitions, FontFamily, FontId, Rgba, Stroke, TextStyle,
};

use super::look::Look;

const REGULAR: &[u8] = include_bytes!("../../../../assets/fonts/BackliftText-Regular.otf");
const SEMI_BOLD: &[u8] = include_bytes!("../../../../assets/fonts/BackliftText-SemiBold.otf");

/// The four sizes of type, px at scale 1.
const QUIET_PX: f32 = 13.0;
const TEXT_PX: f32 = 15.0;
const SENTENCE_PX: f32 = 20.0;
const NUMBER_PX: f32 = 34.0;
/// Things line up on this grid, px.
pub const GRID: f32 = 8.0;

pub fn theme(look: &Look) -> &'static Theme {
    if look.dark { &DARK } else { &LIGHT }
}

pub fn ink(colour: Colour) -> Color32 {
    let Colour([r, g, b]) = colour;
    Color32::from_rgb(r, g, b)
}

/// The same, thinned. The window's surface is mixed in linear light: thinned there, or colours turn grey.
pub fn wash(colour: Colour, share: f32) -> Color32 {
    thinned(ink(colour), share)
}

/// A share of one colour in another, as the eye mixes them; nothing shines through.
pub fn mixed(under: Colour, colour: Colour, share: f32) -> Color32 {
    ink(under).lerp_to_gamma(ink(colour), share)
}

/// The same as [`wash`] of any colour.
pub fn thinned(colour: Color32, share: f32) -> Color32 {
    Color32::from(Rgba::from(colour).multiply(share))
}

/// Alarm colour, kept for cautions about a person and for faults; 5.9 to 1 on either ground.
pub fn alarm(look: &Look) -> Color32 {
    if look.dark {
        Color32::from_rgb(0xF2, 0x8B, 0x82)
    } else {
        Color32::from_rgb(0xA8, 0x1E, 0x2C)
    }
}

pub fn bold() -> FontFamily {
    FontFamily::Name("semi-bold".into())
}

/// The style of the view's one big number.
pub fn number() -> TextStyle {
    TextStyle::Name("number".into())
}

/// Whether the faces can be drawn with: from the picture after the first on.
pub fn is_in_force(ctx: &egui::Context) -> bool {
    ctx.fonts(|fonts| fonts.definitions().families.contains_key(&bold()))
}

/// Puts fonts, colours and sizes in force, when they changed.
pub fn apply(ctx: &egui::Context, look: &Look) {
    let id = egui::Id::new("look in force");
    let before = ctx.data(|it| it.get_temp::<Look>(id));
    if before.as_ref() == Some(look) {
        return;
    }
    if before.is_none() {
        ctx.set_fonts(fonts());
    }
    ctx.set_theme(if look.dark { egui::Theme::Dark } else { egui::Theme::Light });
    ctx.all_styles_mut(|style| {
        style.text_styles = sizes(look.text_scale);
        style.visuals = visuals(look);
        style.animation_time = if look.reduced_motion { 0.0 } else { 0.15 };
        let scale = look.text_scale;
        style.spacing.item_spacing = egui::vec2(GRID, 0.75 * GRID) * scale;
        style.spacing.button_padding = egui::vec2(GRID, 0.5 * GRID) * scale;
        style.spacing.interact_size = egui::vec2(5.0, 3.0) * GRID * scale;
        style.spacing.slider_width = 20.0 * GRID * scale;
        style.spacing.text_edit_width = 16.0 * GRID * scale;
        style.spacing.tooltip_width = 40.0 * GRID * scale;
        style.spacing.icon_width = 2.0 * GRID * scale;
        style.spacing.icon_width_inner = GRID * scale;
    });
    ctx.data_mut(|it| it.insert_temp(id, look.clone()));
}

fn fonts() -> FontDefinitions {
    let mut fonts = FontDefinitions::default();
    let faces = [("regular", REGULAR, FontFamily::Proportional), ("semi-bold", SEMI_BOLD, bold())];
    let fallback = fonts.families.get(&FontFamily::Proportional).cloned().unwrap_or_default();
    for (name, bytes, family) in faces {
        fonts.font_data.insert(name.to_owned(), Arc::new(FontData::from_static(bytes)));
        let mut order = vec![name.to_owned()];
        order.extend(fallback.iter().cloned());
        fonts.families.insert(family, order);
    }
    fonts
}

fn sizes(scale: f32) -> BTreeMap<TextStyle, FontId> {
    let of = |px: f32| FontId::new(px * scale, FontFamily::Proportional);
    BTreeMap::from([
        (TextStyle::Small, of(QUIET_PX)),
        (TextStyle::Body, of(TEXT_PX)),
        (TextStyle::Button, of(TEXT_PX)),
        (TextStyle::Monospace, FontId::new(QUIET_PX * scale, FontFamily::Monospace)),
        (TextStyle::Heading, of(SENTENCE_PX)),
        (number(), FontId::new(NUMBER_PX * scale, bold())),
    ])
}

fn visuals(look: &Look) -> egui::Visuals {
    let theme = theme(look);
    let mut it = if look.dark { egui::Visuals::dark() } else { egui::Visuals::light() };
    let (paper, page) = (ink(theme.ground), ink(theme.panel));
    let line = Stroke::new(1.0, ink(theme.hairline));
    let text = Stroke::new(1.0, ink(theme.ink));
    let focus = Stroke::new(2.0, ink(theme.bats[0]));
    (it.panel_fill, it.window_fill, it.extreme_bg_color) = (paper, page, page);
    (it.faint_bg_color, it.code_bg_color) = (page, page);
    (it.window_stroke, it.window_shadow, it.popup_shadow) =
        (line, egui::Shadow::NONE, egui::Shadow::NONE);
    it.weak_text_color = Some(ink(theme.quiet));
    it.error_fg_color = alarm(look);
    it.warn_fg_color = ink(theme.quiet);
    it.hyperlink_color = ink(theme.bats[0]);
    it.selection.bg_fill = mixed(theme.ground, theme.bats[0], 0.22);
    it.selection.stroke = focus;
    let square = CornerRadius::same(2);
    for (widget, fill, edge) in [
        (&mut it.widgets.noninteractive, paper, line),
        (&mut it.widgets.inactive, page, line),
        (&mut it.widgets.hovered, page, Stroke::new(1.0, ink(theme.quiet))),
        (&mut it.widgets.active, mixed(theme.ground, theme.bats[0], 0.22), focus),
        (&mut it.widgets.open, page, line),
    ] {
        (widget.bg_fill, widget.weak_bg_fill, widget.bg_stroke) = (fill, fill, edge);
        (widget.fg_stroke, widget.corner_radius, widget.expansion) = (text, square, 0.0);
    }
    // What a slider or a box is filled with must stand out from the page.
    it.widgets.inactive.bg_fill = ink(theme.hairline);
    it.widgets.hovered.bg_fill = ink(theme.hairline);
    it
}
