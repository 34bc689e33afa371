//! The operating system's own windows for files, each on a thread of its own.

use std::sync::mpsc::{Receiver, Sender, channel};

use super::action::{Action, Which};
use super::state::{Ask, Studio};
use super::wood::action::WoodAction;

/// Windows that are open, and what comes back from them.
pub struct Dialogs {
    sender: Sender<Action>,
    receiver: Receiver<Action>,
}

impl Default for Dialogs {
    fn default() -> Self {
        let (sender, receiver) = channel();
        Self { sender, receiver }
    }
}

impl Dialogs {
    /// Opens what is asked for, and does what was chosen.
    pub fn serve(&self, it: &mut Studio) {
        while let Some(ask) = it.asks.pop_front() {
            let name = match ask {
                Ask::SaveAs(which) => file_name(&it.paper(which).name()),
                _ => String::new(),
            };
            let sender = self.sender.clone();
            std::thread::spawn(move || {
                if let Some(action) = chosen(ask, &name) {
                    // The window is gone when nobody listens.
                    let _ = sender.send(action);
                }
            });
        }
        while let Ok(action) = self.receiver.try_recv() {
            it.apply(action);
        }
    }
}

fn file_name(of: &str) -> String {
    let letter = |c: char| if c.is_alphanumeric() || c == '.' { c } else { '-' };
    let name: String = of.chars().map(letter).collect();
    if name.ends_with(".ron") { name } else { name + ".ron" }
}

fn noun(which: Which) -> &'static str {
    match which {
        Which::Scenario => "scenario",
        Which::Bat => "described bat",
    }
}

fn chosen(ask: Ask, name: &str) -> Option<Action> {
    let dialog = |title: &str| rfd::FileDialog::new().set_title(title);
    let folder = |title: &str| dialog(title).pick_folder();
    let open = |title: &str, kind: &str| dialog(title).add_filter(kind, &["ron"]).pick_file();
    let keep = |title: &str, kind: &str, ending: &str, name: &str| {
        let path = dialog(title).add_filter(kind, &[ending]).set_file_name(name).save_file()?;
        Some(if path.extension().is_some() { path } else { path.with_extension(ending) })
    };
    match ask {
        Ask::Open(which) => {
            let title = format!("Open a {}", noun(which));
            open(&title, noun(which)).map(|it| Action::Open(it).on(which))
        }
        Ask::SaveAs(which) => {
            let title = format!("Keep the {}", noun(which));
            keep(&title, noun(which), "ron", name).map(|it| Action::SaveAs(it).on(which))
        }
        Ask::CardFolder => folder("A folder for the card").map(Action::WriteCard),
        Ask::Clip => {
            keep("Keep the clip", "animated picture", "gif", "swing.gif").map(Action::WriteClip)
        }
        Ask::Page => keep("Keep the page", "picture", "png", "swing.png").map(Action::WritePage),
        Ask::CardFile => open("The card the bat was ordered with", "card").map(Action::Check),
        Ask::WoodCard => open("The card the bat is made for", "card")
            .map(|it| Action::Wood(WoodAction::Card(it))),
        Ask::WoodFolder => {
            folder("A folder for templates and solid").map(|it| Action::Wood(WoodAction::Write(it)))
        }
    }
}
