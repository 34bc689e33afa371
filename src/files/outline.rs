//! The outline of a RON text: where each name and each value stands.
//!
//! The `ron` crate decides what is valid; this walk only finds places, and goes as far as it can in
//! a text that is not.

use std::collections::BTreeMap;
use std::ops::Range;

/// One value and where it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Names and indices from the top, joined with dots: `bats.1.balance`.
    pub path: String,
    /// The name before the colon, if there is one.
    pub name: Option<Range<usize>>,
    /// The value.
    pub value: Range<usize>,
}

impl Entry {
    /// Name and value.
    pub fn whole(&self) -> Range<usize> {
        self.name.as_ref().map_or(self.value.start, |it| it.start)..self.value.end
    }

    /// The same and the comma behind it.
    pub fn with_comma(&self, text: &str) -> Range<usize> {
        let Range { start, end } = self.whole();
        let after = text.get(end..).unwrap_or_default();
        let next = after.trim_start();
        start..if next.starts_with(',') { end + after.len() - next.len() + 1 } else { end }
    }
}

/// All entries of a text, parents before their children, and what stayed open.
#[derive(Clone, Debug, Default)]
pub struct Outline {
    /// The entries in order of their start.
    pub entries: Vec<Entry>,
    /// Brackets that were opened and never closed, outermost first.
    pub unclosed: Vec<usize>,
    /// There are more entries than anybody writes, and the walk stopped.
    pub is_cut: bool,
    /// The first entry of each path.
    by_path: BTreeMap<String, usize>,
}

/// Deeper than this nobody nests a scenario; the walk stops, `ron` refuses it too.
const DEEPEST: usize = 32;
/// A full log of a bench has 5000 weighings of eight values.
const MOST_ENTRIES: usize = 50_000;
/// A longer path is made of names that no text of ours has; nor is a longer name one.
const LONGEST_PATH_BYTES: usize = 200;

impl Outline {
    /// Walks a text.
    pub fn of(text: &str) -> Self {
        let mut walk = Walk { text, at: 0, outline: Self::default(), open: Vec::new() };
        walk.space();
        while walk.rest().starts_with("#!") {
            let line = walk.rest().find('\n').unwrap_or(walk.rest().len());
            walk.at += line;
            walk.space();
        }
        walk.value(String::new(), None, 0);
        let mut outline = Self { unclosed: walk.open, ..walk.outline };
        for (n, it) in outline.entries.iter().enumerate() {
            outline.by_path.entry(it.path.clone()).or_insert(n);
        }
        outline
    }

    /// The entry at a path.
    pub fn find(&self, path: &str) -> Option<&Entry> {
        self.entries.get(*self.by_path.get(path)?)
    }
}

struct Walk<'t> {
    text: &'t str,
    at: usize,
    outline: Outline,
    open: Vec<usize>,
}

impl<'t> Walk<'t> {
    fn rest(&self) -> &'t str {
        self.text.get(self.at..).unwrap_or_default()
    }

    fn next_is(&self, c: char) -> bool {
        self.rest().starts_with(c)
    }

    fn skip_while(&mut self, belongs: impl Fn(char) -> bool) -> Range<usize> {
        let start = self.at;
        let rest = self.rest();
        self.at += rest.find(|c| !belongs(c)).unwrap_or(rest.len());
        start..self.at
    }

    /// White space and comments.
    fn space(&mut self) {
        loop {
            self.skip_while(char::is_whitespace);
            if self.rest().starts_with("//") {
                self.skip_while(|c| c != '\n');
            } else if self.rest().starts_with("/*") {
                let mut depth = 0;
                while !self.rest().is_empty() {
                    if self.rest().starts_with("/*") {
                        depth += 1;
                        self.at += 2;
                    } else if self.rest().starts_with("*/") {
                        depth -= 1;
                        self.at += 2;
                        if depth == 0 {
                            break;
                        }
                    } else {
                        self.at += self.rest().chars().next().map_or(1, char::len_utf8);
                    }
                }
            } else {
                return;
            }
        }
    }

    /// One value under `path`; false when the walk has to stop.
    fn value(&mut self, path: String, name: Option<Range<usize>>, depth: usize) -> bool {
        let (start, slot) = (self.at, self.outline.entries.len());
        if slot == MOST_ENTRIES || path.len() > LONGEST_PATH_BYTES {
            self.outline.is_cut = true;
            return false;
        }
        self.outline.entries.push(Entry { path: path.clone(), name, value: start..start });
        if depth > DEEPEST {
            return false;
        }
        self.skip_while(|c| c.is_alphanumeric() || "_.+-".contains(c));
        let word = start..self.at;
        self.space();
        let ok = match self.rest().chars().next() {
            Some('(') => self.bracket(')', &path, depth),
            Some('[') if word.is_empty() => self.bracket(']', &path, depth),
            Some('{') if word.is_empty() => self.bracket('}', &path, depth),
            Some('"' | '#') if word.is_empty() || &self.text[word.clone()] == "r" => self.string(),
            _ => {
                self.at = word.end;
                if word.is_empty() {
                    self.skip_while(|c| !c.is_whitespace() && !",)]}".contains(c));
                }
                self.at > start
            }
        };
        self.outline.entries[slot].value = start..self.at;
        ok
    }

    /// A string, plain or raw, from its quotation mark or hashes to its end.
    fn string(&mut self) -> bool {
        let hashes = self.skip_while(|c| c == '#').len();
        let raw = hashes > 0 || self.text[..self.at].ends_with('r');
        if !self.next_is('"') {
            return false;
        }
        self.at += 1;
        let end = format!("\"{}", "#".repeat(hashes));
        while !self.rest().is_empty() {
            if self.rest().starts_with(&end) {
                self.at += end.len();
                return true;
            }
            if !raw && self.next_is('\\') {
                self.at += 1;
            }
            self.at += self.rest().chars().next().map_or(0, char::len_utf8);
        }
        false
    }

    fn bracket(&mut self, close: char, path: &str, depth: usize) -> bool {
        self.open.push(self.at);
        self.at += 1;
        for index in 0.. {
            self.space();
            if self.next_is(close) {
                self.at += 1;
                self.open.pop();
                return true;
            }
            if self.rest().is_empty() {
                return false;
            }
            let start = self.at;
            self.skip_while(|c| c.is_alphanumeric() || c == '_' || c == '#');
            let name = start..self.at;
            self.space();
            if name.len() > LONGEST_PATH_BYTES {
                self.outline.is_cut = true;
                return false;
            }
            let (step, name) = if self.next_is(':') && !name.is_empty() {
                self.at += 1;
                self.space();
                (self.text[name.clone()].to_owned(), Some(name))
            } else {
                self.at = start;
                (index.to_string(), None)
            };
            let below = if path.is_empty() { step } else { format!("{path}.{step}") };
            if !self.value(below, name, depth + 1) {
                return false;
            }
            self.space();
            if self.next_is(',') {
                self.at += 1;
            } else if !self.next_is(close) {
                return false;
            }
        }
        false
    }
}
