//! Commands shown in a page's `console` blocks, held against what is printed.

use std::ops::Range;

/// A command of this program: as typed, its arguments, the exit code it is shown with, the lines shown under it.
pub struct Shown {
    pub typed: String,
    pub arguments: Vec<String>,
    pub code: i32,
    pub output: Range<usize>,
}

/// Stands for any lines.
pub const GAP: &str = "…";

/// The commands of a page that start this program, in its order.
pub fn shown(page: &str) -> Vec<Shown> {
    let (mut in_console, mut open) = (false, false);
    let mut found: Vec<Shown> = Vec::new();
    for (n, line) in page.lines().enumerate() {
        if let Some(kind) = line.strip_prefix("```") {
            (in_console, open) = (kind == "console", false);
        } else if let Some(typed) = line.strip_prefix("$ ").filter(|_| in_console) {
            let command = command(typed, n + 1);
            open = command.is_some();
            found.extend(command);
        } else if let Some(last) = found.last_mut().filter(|_| open) {
            last.output.end = n + 1;
        }
    }
    found
}

fn command(typed: &str, first: usize) -> Option<Shown> {
    let (line, code) = match typed.split_once("# exit code ") {
        Some((line, code)) => (line, code.trim().parse().unwrap()),
        None => (typed, 0),
    };
    let program = ["cargo run --release -- ", "backlift "];
    let rest = program.iter().find_map(|it| line.strip_prefix(it))?;
    let typed = typed.to_owned();
    Some(Shown { typed, arguments: words(rest), code, output: first..first })
}

/// Parted at spaces, but not within quotation marks.
fn words(typed: &str) -> Vec<String> {
    let mut words = vec![String::new()];
    for (n, part) in typed.split('"').enumerate() {
        let mut pieces =
            if n % 2 == 1 { vec![part] } else { part.split(' ').collect() }.into_iter();
        if let (Some(last), Some(first)) = (words.last_mut(), pieces.next()) {
            last.push_str(first);
        }
        words.extend(pieces.map(str::to_owned));
    }
    words.retain(|it| !it.is_empty());
    words
}

/// Whether the shown lines are the printed ones, but for the gaps.
pub fn agree(shown: &[&str], printed: &[&str]) -> bool {
    let parts: Vec<&[&str]> = shown.split(|it| *it == GAP).collect();
    let Some(mut left) = printed.strip_prefix(parts[0]) else { return false };
    let Some((last, middle)) = parts[1..].split_last() else { return left.is_empty() };
    for part in middle.iter().filter(|it| !it.is_empty()) {
        let Some(at) = left.windows(part.len()).position(|it| it == *part) else { return false };
        left = &left[at + part.len()..];
    }
    left.ends_with(last)
}

/// The shown lines as they are printed now: between the same gaps the lines that are most like them.
pub fn renewed(shown: &[&str], printed: &[&str]) -> Vec<String> {
    if agree(shown, printed) {
        return shown.iter().map(|it| (*it).to_owned()).collect();
    }
    let parts: Vec<&[&str]> = shown.split(|it| *it == GAP).collect();
    let (mut anew, mut from) = (Vec::new(), 0);
    for (n, part) in parts.iter().enumerate() {
        let (first, last) = (n == 0, n + 1 == parts.len());
        let starts = if first { 0..=0 } else { from..=printed.len() };
        let ranges = starts.flat_map(|start| {
            // A sentence with other figures may break into a line more or less.
            let lines = (part.len().saturating_sub(2)..=part.len() + 2).rev();
            lines.map(move |lines| start..start + lines)
        });
        let fits = |it: &Range<usize>| match last {
            true => it.end == printed.len(),
            false => it.end <= printed.len(),
        };
        let like = |it: &Range<usize>| {
            strsim::sorensen_dice(&part.join("\n"), &printed[it.clone()].join("\n"))
        };
        let best = match (first && last, part.is_empty()) {
            (true, _) => Some(0..printed.len()),
            (_, true) => None,
            _ => ranges.filter(fits).max_by(|a, b| like(a).total_cmp(&like(b))),
        };
        if let Some(best) = best {
            from = best.end;
            anew.extend(printed[best].iter().map(|it| (*it).to_owned()));
        }
        anew.extend((!last).then(|| GAP.to_owned()));
    }
    anew
}

#[test]
fn a_line_that_is_not_printed_is_found_and_a_gap_stands_for_any_lines() {
    let printed = ["a 1", "b 2", "c 3", "d 4"];
    for good in [&printed[..], &["a 1", GAP], &[GAP, "c 3", GAP], &["a 1", GAP, "d 4"], &[GAP]] {
        assert!(agree(good, &printed), "{good:?}");
    }
    for bad in [&["a 1"][..], &["b 2", GAP], &[GAP, "c 4", GAP], &[GAP, "c 3"], &[]] {
        assert!(!agree(bad, &printed), "{bad:?}");
    }
}

#[test]
fn renewed_lines_agree_and_keep_their_gaps_and_their_sentence() {
    let shown = ["The pull is 2.9 % slower.", GAP, "Keep it: 0.1 ± 1.0 km/h", GAP];
    let printed =
        ["The pull is 12.9 %", "slower.", "", "a table", "Keep it: 0.4 ± 1.1 km/h", "end"];
    let anew = renewed(&shown, &printed);
    let anew: Vec<&str> = anew.iter().map(String::as_str).collect();
    assert_eq!(
        anew,
        ["The pull is 12.9 %", "slower.", GAP, "Keep it: 0.4 ± 1.1 km/h", GAP],
        "{anew:?}"
    );
    assert!(agree(&anew, &printed));
}

#[test]
fn commands_are_found_with_their_words_their_exit_code_and_what_they_print() {
    let page = "text\n```console\n$ cargo test\nnot ours\n$ backlift check a \"b c\" # exit code 1\nSent\n\nback\n```\n$ backlift no\n";
    let found = shown(page);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].arguments, ["check", "a", "b c"]);
    assert_eq!((found[0].code, found[0].output.clone()), (1, 5..8));
}
