//! The operating system's own windows for files, each on a thread of its own.

use std::path::PathBuf;
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
    let dialog = rfd::FileDialog::new();
    let ended = |path: PathBuf| match path.extension() {
        Some(_) => path,
        None => path.with_extension("ron"),
    };
    match ask {
        Ask::Open(which) => dialog
            .add_filter(noun(which), &["ron"])
            .set_title(format!("Open a {}", noun(which)))
            .pick_file()
            .map(|it| Action::Open(it).on(which)),
        Ask::SaveAs(which) => dialog
            .add_filter(noun(which), &["ron"])
            .set_title(format!("Keep the {}", noun(which)))
            .set_file_name(name)
            .save_file()
            .map(|it| Action::SaveAs(ended(it)).on(which)),
        Ask::CardFolder => {
            dialog.set_title("A folder for the card").pick_folder().map(Action::WriteCard)
        }
        Ask::Clip => dialog
            .set_title("Keep the clip")
            .add_filter("animated picture", &["gif"])
            .set_file_name("swing.gif")
            .save_file()
            .map(Action::WriteClip),
        Ask::Page => dialog
            .set_title("Keep the page")
            .add_filter("picture", &["png"])
            .set_file_name("swing.png")
            .save_file()
            .map(Action::WritePage),
        Ask::CardFile => dialog
            .set_title("The card the bat was ordered with")
            .add_filter("card", &["ron"])
            .pick_file()
            .map(Action::Check),
        Ask::WoodCard => dialog
            .set_title("The card the bat is made for")
            .add_filter("card", &["ron"])
            .pick_file()
            .map(|it| Action::Wood(WoodAction::Card(it))),
        Ask::WoodFolder => dialog
            .set_title("A folder for templates and solid")
            .pick_folder()
            .map(|it| Action::Wood(WoodAction::Write(it))),
    }
}
