//! Sentences broken into lines for a terminal.

/// Widest line, characters.
const WIDTH: usize = 80;

/// The text with its lines broken between words.
pub fn paragraph(text: &str) -> String {
    broken(text, WIDTH)
}

/// The same, each line set in by two.
pub fn set_in(text: &str) -> String {
    format!("  {}", broken(text, WIDTH - 2).replace('\n', "\n  "))
}

/// Texts set in, each on lines of its own.
pub fn each_set_in(texts: impl IntoIterator<Item = impl AsRef<str>>) -> String {
    texts.into_iter().map(|it| set_in(it.as_ref()) + "\n").collect()
}

/// The same behind dashes.
pub fn dashed(texts: impl IntoIterator<Item = impl AsRef<str>>) -> String {
    texts.into_iter().map(|it| set_in(it.as_ref()).replacen("  ", "- ", 1) + "\n").collect()
}

fn broken(text: &str, most: usize) -> String {
    let mut out = String::new();
    let mut width = 0;
    for word in text.split([' ', '\n']) {
        let long = word.chars().count();
        if width > 0 && width + 1 + long > most {
            out.push('\n');
            width = 0;
        } else if width > 0 {
            out.push(' ');
            width += 1;
        }
        out += word;
        width += long;
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_line_is_wider_than_a_terminal_and_no_word_is_lost() {
        let text = "At fifty runs the pull is as fast ".repeat(9);
        let lines = paragraph(&text);
        assert!(lines.lines().all(|it| it.chars().count() <= WIDTH), "{lines}");
        assert_eq!(lines.replace('\n', " "), text);
    }
}
