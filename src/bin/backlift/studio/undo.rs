//! Steps back and forward through a document's texts.

/// The texts before and after the present one.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    past: Vec<Step>,
    future: Vec<Step>,
}

/// A text, and in a few words the change that left it.
#[derive(Clone, Debug, PartialEq)]
struct Step {
    text: String,
    change: String,
}

/// Steps kept.
const MOST: usize = 500;

impl History {
    /// Remembers the text before a change.
    pub fn changed(&mut self, before: String, change: String) {
        self.future.clear();
        self.past.push(Step { text: before, change });
        if self.past.len() > MOST {
            self.past.remove(0);
        }
    }

    /// The text after the change last undone, or before the last change.
    pub fn travel(&mut self, now: &str, forward: bool) -> Option<String> {
        match forward {
            true => step(&mut self.future, &mut self.past, now),
            false => step(&mut self.past, &mut self.future, now),
        }
    }

    /// The change that the next undo takes back.
    pub fn last(&self) -> Option<&str> {
        self.past.last().map(|it| it.change.as_str())
    }

    /// The change that the next redo brings again.
    pub fn next(&self) -> Option<&str> {
        self.future.last().map(|it| it.change.as_str())
    }
}

/// A value put over a field, in a few words for the undo button.
pub fn of_field(name: &str, value: &str) -> String {
    match value.trim() {
        "" => format!("take away {name}"),
        _ => format!("{name}: {value}"),
    }
}

fn step(from: &mut Vec<Step>, to: &mut Vec<Step>, now: &str) -> Option<String> {
    let Step { text, change } = from.pop()?;
    to.push(Step { text: now.to_owned(), change });
    Some(text)
}
