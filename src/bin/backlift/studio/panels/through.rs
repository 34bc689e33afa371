//! The line of time under the net: bat speed and the load of each wrist through the stroke, bat by bat, and the instant
//! on the screen.

use backlift::drawing::palette::bat_look;
use egui::{Align2, Key, Pos2, Rect, Sense, Stroke, TextStyle, Ui};

use super::deeds::has_keyboard;
use super::words::bat_line;
use crate::figure::{number, percent, speed_unit};
use crate::studio::action::Action;
use crate::studio::scene::Instant;
use crate::studio::state::Studio;
use crate::studio::style::{ink, mixed, theme};

/// Height of a row over that of its words.
const TALL: f32 = 2.7;
/// Room for the names of the rows, and for their figures, over the height of the words.
const NAMES: f32 = 6.5;
const FIGURES: f32 = 7.0;

/// One row: its name, a figure of an instant as a share of the row's height, and the same in words.
struct Row {
    name: &'static str,
    share: fn(&Instant) -> f64,
    full: f64,
    words: fn(&Studio, f64) -> String,
}

const ROWS: [Row; 3] = [
    Row {
        name: "bat speed",
        share: |it| it.bat_speed_m_s,
        full: 0.0,
        words: |it, m_s| {
            let (unit, per_m_s) = speed_unit(it.look.units);
            format!("{} {unit}", number(per_m_s * m_s, 0))
        },
    },
    Row {
        name: "top wrist",
        share: |it| it.wrist_share[0],
        full: 1.0,
        words: |_, it| percent(it, 0),
    },
    Row {
        name: "bottom wrist",
        share: |it| it.wrist_share[1],
        full: 1.0,
        words: |_, it| percent(it, 0),
    },
];

/// Draws it; a hand on it, or the arrows, choose the instant.
pub fn through(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let small = TextStyle::Small.resolve(ui.style());
    let tall = TALL * small.size;
    let size = egui::vec2(ui.available_width(), tall * ROWS.len() as f32 + 4.0);
    let (whole, response) = ui.allocate_exact_size(size, Sense::click_and_drag());
    let length_s = it.length_s();
    let now_s = it.playback.time_s.min(length_s);
    response.widget_info(|| {
        egui::WidgetInfo::slider(true, now_s, "time after the top of the backlift")
    });
    let line = Rect::from_min_max(
        Pos2::new(whole.left() + NAMES * small.size, whole.top() + 2.0),
        Pos2::new(whole.right() - FIGURES * small.size, whole.bottom() - 2.0),
    );
    if !line.is_positive() {
        return;
    }
    draw(ui, it, line, [now_s, length_s]);
    let hand = response.interact_pointer_pos().filter(|_| response.dragged() || response.clicked());
    if let Some(place) = hand {
        let share = f64::from((place.x - line.left()) / line.width()).clamp(0.0, 1.0);
        out.push(Action::Scrub(share * length_s));
    }
    if has_keyboard(ui, &response, whole) {
        let pressed = |key| ui.input(|input| input.key_pressed(key));
        let steps = i32::from(pressed(Key::ArrowRight)) - i32::from(pressed(Key::ArrowLeft));
        if steps != 0 {
            out.push(Action::Step(steps));
        }
    }
    response.on_hover_text(
        "Bat speed, and what each wrist gives of what it has left, from the top of the backlift to the ball; of the likeliest player. Drag to an instant",
    );
}

/// The rows, and this instant across them.
fn draw(ui: &Ui, it: &Studio, line: Rect, [now_s, length_s]: [f64; 2]) {
    let theme = theme(&it.look);
    let small = TextStyle::Small.resolve(ui.style());
    let painter = ui.painter();
    let x = |t_s: f64| line.left() + (t_s / length_s.max(1e-6)) as f32 * line.width();
    let strokes: Vec<(usize, Vec<Instant>)> = (0..it.slots())
        .filter_map(|slot| Some((*it.playback.bats.get(slot)?, it.through(slot))))
        .collect();
    let tall = TALL * small.size;
    for (n, row) in ROWS.iter().enumerate() {
        let corner = Pos2::new(line.left(), line.top() + n as f32 * tall + 2.0);
        let rect = Rect::from_min_size(corner, egui::vec2(line.width(), tall - 4.0));
        let hairline = Stroke::new(1.0, ink(theme.hairline));
        painter.hline(rect.x_range(), rect.bottom(), hairline);
        painter.hline(rect.x_range(), rect.top(), hairline);
        let at = Pos2::new(rect.left() - 8.0, rect.center().y);
        painter.text(at, Align2::RIGHT_CENTER, row.name, small.clone(), ink(theme.quiet));
        let most = strokes.iter().flat_map(|it| &it.1).map(row.share).fold(row.full, f64::max);
        let part = |share: f64| (share / most.max(1e-9)) as f32;
        for (n, (bat, instants)) in strokes.iter().enumerate() {
            let colour = bat_look(theme, *bat).0;
            let height = |it: &Instant| part((row.share)(it)) * rect.height();
            let points: Vec<Pos2> = instants
                .iter()
                .map(|it| Pos2::new(x(it.t_s), rect.bottom() - height(it)))
                .collect();
            painter.extend(bat_line(&points, *bat, ink(colour), 1.5));
            // The load at this instant as a bar at the row's end: full is all there is.
            let now = instants.iter().take_while(|it| it.t_s <= now_s + 1e-9).last();
            let Some(share) = now.map(row.share) else { continue };
            let half = 0.5 * rect.height();
            let at = Pos2::new(rect.right() + 6.0, rect.top() + n as f32 * half);
            let size = egui::vec2(FIGURES * small.size - 8.0, half);
            let bar = Rect::from_min_size(at, size).shrink2(egui::vec2(0.0, 1.0));
            let filled = egui::vec2(bar.width() * part(share), bar.height());
            painter.rect_filled(bar, 1.0, ink(theme.panel));
            let pale = mixed(theme.ground, colour, 0.35);
            painter.rect_filled(Rect::from_min_size(bar.min, filled), 1.0, pale);
            let words = (row.words)(it, share);
            let font = egui::FontId::new(bar.height().min(small.size), small.family.clone());
            let end = bar.right_center() - egui::vec2(2.0, 0.0);
            painter.text(end, Align2::RIGHT_CENTER, words, font, ink(theme.ink));
        }
    }
    painter.vline(x(now_s), line.y_range(), Stroke::new(2.0, ink(theme.ink)));
}
