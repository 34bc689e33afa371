//! Keys that do the same as buttons, whatever has the keyboard.

use egui::{Event, InputState, Key, Modifiers, Ui};

use super::VIEWS;
use crate::studio::action::Action;
use crate::studio::look::TEXT_SCALES;
use crate::studio::state::Studio;

const TEXT_STEP: f32 = 0.1;

/// What the keys pressed mean. It is done after what the panels say of this picture: a field that is left because of a
/// key has its draft counted first.
pub fn shortcuts(ui: &mut Ui, it: &Studio) -> Vec<Action> {
    // Nothing else is done while a question waits for its answer.
    if it.waiting.is_some() || !it.asks.is_empty() {
        return Vec::new();
    }
    let mut out = Vec::new();
    if !gave_up_a_draft(ui) {
        out.extend(commands(ui, it));
    }
    let views = VIEWS.iter().enumerate().filter_map(|(n, row)| {
        let key = Key::from_name(&format!("F{}", n + 1))?;
        Some((Modifiers::NONE, key, Held::Once, Action::View(row.view)))
    });
    out.extend(pressed(ui, views));
    let focused = ui.memory(|memory| memory.focused());
    if let (Some(field), false) = (focused, out.is_empty()) {
        ui.memory_mut(|memory| memory.surrender_focus(field));
    }
    if focused.is_none() {
        out.extend(time(ui, it));
    }
    out
}

/// Whether Ctrl+Z was for what is typed in a field and not counted yet.
fn gave_up_a_draft(ui: &mut Ui) -> bool {
    let Some(field) = ui.memory(|memory| memory.focused()) else { return false };
    if ui.data(|data| data.get_temp::<String>(field)).is_none() {
        return false;
    }
    let given_up = ui.input_mut(|it| taken(it, Modifiers::COMMAND, Key::Z, Held::Again));
    if given_up {
        ui.data_mut(|data| data.remove::<String>(field));
    }
    given_up
}

fn commands(ui: &mut Ui, it: &Studio) -> Vec<Action> {
    use Held::{Again, Once};
    let command = Modifiers::COMMAND;
    let shifted = Modifiers::COMMAND | Modifiers::SHIFT;
    // Each is done to the paper in front.
    let front = it.view.paper();
    let scale = |by: f32| {
        let percent = (100.0 * (it.look.text_scale + by)).round();
        Action::TextScale((percent / 100.0).clamp(TEXT_SCALES[0], TEXT_SCALES[1]))
    };
    let all = [
        (shifted, Key::Z, Again, Action::Redo),
        (shifted, Key::S, Once, Action::AskSave.on(front)),
        (command, Key::Z, Again, Action::Undo),
        (command, Key::Y, Again, Action::Redo),
        (command, Key::S, Once, Action::Save.on(front)),
        (command, Key::O, Once, Action::AskOpen.on(front)),
        (command, Key::N, Once, Action::New.on(front)),
        (command, Key::Plus, Again, scale(TEXT_STEP)),
        (command, Key::Equals, Again, scale(TEXT_STEP)),
        (command, Key::Minus, Again, scale(-TEXT_STEP)),
        (command, Key::Num0, Once, Action::TextScale(1.0)),
    ];
    pressed(ui, all)
}

/// Time runs and stands, and goes on picture by picture.
fn time(ui: &mut Ui, it: &Studio) -> Vec<Action> {
    let none = Modifiers::NONE;
    let play = if it.playback.playing { Action::Pause } else { Action::Play };
    let all = [
        (none, Key::Space, Held::Once, play),
        (none, Key::ArrowRight, Held::Again, Action::Step(1)),
        (none, Key::ArrowLeft, Held::Again, Action::Step(-1)),
    ];
    pressed(ui, all)
}

/// What those of these keys mean that were pressed.
fn pressed(
    ui: &mut Ui,
    all: impl IntoIterator<Item = (Modifiers, Key, Held, Action)>,
) -> Vec<Action> {
    ui.input_mut(|input| {
        let all = all.into_iter();
        let pressed = all.filter(|(with, key, held, _)| taken(input, *with, *key, *held));
        pressed.map(|it| it.3).collect()
    })
}

/// What a key does that is held down.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Held {
    Once,
    Again,
}

/// Whether a key was pressed; nobody else hears of it then.
fn taken(input: &mut InputState, with: Modifiers, key: Key, held: Held) -> bool {
    let mut is_taken = false;
    input.events.retain(|event| match event {
        Event::Key { key: its, pressed: true, repeat, modifiers, .. }
            // Alt with Ctrl writes letters on some keyboards.
            if *its == key && modifiers.matches_logically(with) && !modifiers.alt =>
        {
            is_taken |= !repeat || held == Held::Again;
            false
        }
        _ => true,
    });
    is_taken
}
