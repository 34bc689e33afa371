//! The report for an engineer who doubts: one page that needs nothing else, by day and by night.

mod style;

use backlift::drawing::against::svg;
use backlift::drawing::palette::{DARK, LIGHT};
use backlift::questions::validated::{Answer, Validated};
use backlift::validation::{Curve, Group, Row, Verdict};
use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::notation::{accepted, cells};
use super::told::{heading, sentence, sources, why};
use crate::figure::percent;
use crate::{innings, swing};

/// Size of a picture, px.
const PICTURE: [f64; 2] = [560.0, 380.0];

/// One curve.
pub struct Shown {
    /// What it is about.
    pub group: Group,
    /// What is plotted, for those who cannot see it.
    pub title: String,
    /// Name of its files, without the ending.
    pub file: String,
    /// By day.
    pub light: String,
    /// By night.
    pub dark: String,
}

pub fn pictures(found: &Validated) -> Vec<Shown> {
    let [width, height] = PICTURE;
    let drawn = |(n, (group, curve)): (usize, (Group, &Curve))| Shown {
        group,
        title: curve.title.clone(),
        file: format!("{:02}-{}", n + 1, file_name(&curve.title)),
        light: svg(curve, &LIGHT, width, height),
        dark: svg(curve, &DARK, width, height),
    };
    found.curves().enumerate().map(drawn).collect()
}

/// A title as part of a file's name: small letters, figures and hyphens, its first words.
fn file_name(title: &str) -> String {
    const WORDS: usize = 6;
    let plain: String = title
        .to_lowercase()
        .chars()
        .map(|c| if c.is_ascii_alphanumeric() { c } else { ' ' })
        .collect();
    plain.split_whitespace().take(WORDS).collect::<Vec<_>>().join("-")
}

/// The page; `part` is how many checks of how many were asked for, if not all.
pub fn page(found: &Validated, pictures: &[Shown], part: Option<(usize, usize)>) -> String {
    let sources = sources(found);
    html! {
        (DOCTYPE)
        html lang="en-GB" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { "Backlift: how far its figures may be trusted" }
                style { (PreEscaped(style::sheet())) }
            }
            body {
                main {
                    h1 { "How far the figures may be trusted" }
                    p.sentence { (sentence(found)) "." }
                    @if let Some((some, all)) = part {
                        p { "This report holds " (some) " of " (all) " checks." }
                    }
                    (counts(found))
                    (how_to_read())
                    (disagreements(found))
                    @for group in found.groups() { (group_part(found, group, pictures)) }
                    (no_data(found))
                    (limits())
                    h2 id="rows" { "Every row" }
                    @for group in found.groups() { (rows(found, group, &sources)) }
                    h2 id="sources" { "Sources" }
                    ol {
                        @for (n, source) in sources.iter().enumerate() {
                            li id={ "source-" (n + 1) } { (source) }
                        }
                    }
                    p.quiet { "Backlift " (env!("CARGO_PKG_VERSION")) ", " code { "backlift validate --out DIR" } }
                }
            }
        }
    }
    .into_string()
}

fn counts(found: &Validated) -> Markup {
    let cell = |group, verdict| match found.count(Some(group), verdict) {
        0 => "–".to_owned(),
        n => n.to_string(),
    };
    html! {
        table {
            thead { tr { th {} th.figure { "agrees" } th.figure { "built so" } th.figure { "disagrees" } th.figure { "no data" } } }
            tbody {
                @for group in found.groups() {
                    tr {
                        th scope="row" { a href={ "#" (anchor(group)) } { (heading(group)) } }
                        @for verdict in [Verdict::Agrees, Verdict::ByConstruction, Verdict::Disagrees, Verdict::NoData] {
                            td.figure { (cell(group, verdict)) }
                        }
                    }
                }
            }
        }
    }
}

fn how_to_read() -> Markup {
    html! {
        h2 { "How to read it" }
        p {
            "Each row holds one figure from outside this program, what the program itself gives, and the \
             difference. What a row is accepted within is written beside the check and is not moved to make \
             the row agree. A row in which nought is expected shows the largest miss over many figures. "
            a href="#rows" { "Every row" } " stands at the end; the parts before it show each check, and the \
             row that comes nearest to its limit: 100 % would be at it."
        }
        p {
            "“Agrees” says that the program computes what the source says, within so much. It does not say \
             that the source is right for this player. Programs and closed forms test the mechanics; only \
             measured players test the model."
        }
        p {
            "In the pictures the line is this program and the rings are the source; a bar through a ring is \
             two standard deviations to either side, where a spread is published. "
            span.mark aria-hidden="true" { "✓" } " agrees, "
            span.mark aria-hidden="true" { "○" } " built so: ours was taken from that very figure, "
            span.mark aria-hidden="true" { "✗" } " disagrees, "
            span.mark aria-hidden="true" { "–" } " nothing to compare with."
        }
    }
}

fn disagreements(found: &Validated) -> Markup {
    html! {
        h2 { "What disagrees, by how much and why" }
        @if found.count(None, Verdict::Disagrees) == 0 { p { "Nothing." } }
        @else { (noted(found, Verdict::Disagrees)) }
    }
}

fn no_data(found: &Validated) -> Markup {
    html! {
        @if found.count(None, Verdict::NoData) > 0 {
            h2 { "What nothing is known about" }
            (noted(found, Verdict::NoData))
        }
    }
}

/// The rows of one verdict with their words.
fn noted(found: &Validated, verdict: Verdict) -> Markup {
    html! {
        dl {
            @for (answer, row) in found.rows(None).filter(|it| it.1.verdict == verdict) {
                dt { (heading(answer.group)) ": " (row.what) }
                dd { (why(row)) }
            }
        }
    }
}

fn group_part(found: &Validated, group: Group, pictures: &[Shown]) -> Markup {
    html! {
        h2 id=(anchor(group)) { (heading(group)) }
        div.wide {
            table {
                thead {
                    tr {
                        th { "check" } th.figure { "rows" } th { "verdict" }
                        th { "nearest to its limit" } th.figure { "of what is accepted" }
                    }
                }
                tbody {
                    @for it in found.answers.iter().filter(|it| it.group == group) { (overview(it)) }
                }
            }
        }
        div.pictures {
            @for it in pictures.iter().filter(|it| it.group == group) {
                figure {
                    div.day role="img" aria-label=(it.title) { (PreEscaped(&it.light)) }
                    div.night role="img" aria-label=(it.title) { (PreEscaped(&it.dark)) }
                }
            }
        }
    }
}

/// One check: how many rows, the worst verdict, the row that comes nearest to its limit.
fn overview(it: &Answer) -> Markup {
    let rows = &it.found.rows;
    let has = |verdict| rows.iter().any(|row| row.verdict == verdict);
    let verdict = match () {
        () if has(Verdict::Disagrees) => Verdict::Disagrees,
        () if has(Verdict::Agrees) => Verdict::Agrees,
        () if has(Verdict::ByConstruction) => Verdict::ByConstruction,
        () => Verdict::NoData,
    };
    let used = rows.iter().filter_map(|row| row.used().map(|used| (used, row)));
    let nearest = used.max_by(|a, b| a.0.total_cmp(&b.0));
    html! {
        tr.disagrees[verdict == Verdict::Disagrees] {
            td { (it.check) }
            td.figure { (rows.len()) }
            (marked(verdict))
            @match nearest {
                Some((used, row)) => {
                    td { (row.what) }
                    td.figure { (percent(used, 0)) }
                }
                None => { td {} td {} }
            }
        }
    }
}

fn rows(found: &Validated, group: Group, sources: &[&str]) -> Markup {
    let source = |row: &Row| sources.iter().position(|it| *it == row.source);
    html! {
        h3 { (heading(group)) }
        div.wide {
            table {
                thead {
                    tr {
                        th { "what" } th { "source" } th.figure { "expected" } th.figure { "ours" }
                        th.figure { "difference" } th { "accepted" } th { "verdict" }
                    }
                }
                tbody { @for (_, row) in found.rows(Some(group)) { (line(row, source(row))) } }
            }
        }
    }
}

fn marked(verdict: Verdict) -> Markup {
    let mark = match verdict {
        Verdict::Agrees => "✓",
        Verdict::ByConstruction => "○",
        Verdict::Disagrees => "✗",
        Verdict::NoData => "–",
    };
    html! { td.verdict { span.mark aria-hidden="true" { (mark) } " " (verdict.words()) } }
}

fn line(row: &Row, source: Option<usize>) -> Markup {
    let it = cells(row);
    html! {
        tr.disagrees[row.verdict == Verdict::Disagrees] {
            td {
                (row.what)
                @let told_below = [Verdict::Disagrees, Verdict::NoData].contains(&row.verdict);
                @if !told_below && !row.note.is_empty() {
                    div.quiet { (row.note) }
                }
            }
            td { @if let Some(n) = source { a href={ "#source-" (n + 1) } { "[" (n + 1) "]" } } }
            td.figure { (it.expected) }
            td.figure { (it.ours) }
            td.figure { (it.difference) }
            td.accepted { (accepted(row).unwrap_or_default()) }
            (marked(row.verdict))
        }
    }
}

fn limits() -> Markup {
    html! {
        h2 { "What no row of this report can show" }
        ul {
            li {
                "No bat speed of a junior and no swing moment of a cricket bat was found published. The \
                 swing of a child is checked for its mechanics only."
            }
            li {
                "The law of the stroke was written twice by the same people. Agreement shows that it is \
                 computed as written, not that a batter's nerves work so."
            }
            li {
                "Two programs that leave out the same thing agree with each other. Of a swing and an innings \
                 the model leaves out, or does not know:"
                ul { @for it in swing::LIMITS.iter().chain(&innings::LIMITS) { li { (it) } } }
            }
        }
    }
}

fn anchor(group: Group) -> String {
    group.words().replace(' ', "-")
}
