//! The report for an engineer who doubts: one page that needs nothing else, by day and by night.

use backlift::drawing::palette::{Colour, DARK, LIGHT, Theme};
use backlift::validation::{Group, Row, Verdict};
use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::computed::Validated;
use super::notation::{accepted, cells};
use super::pictures::Shown;
use super::told::{heading, sentence, sources, why};

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
                style { (PreEscaped(style())) }
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
                    @for group in found.groups() { (group_part(found, group, pictures, &sources)) }
                    (no_data(found))
                    (limits())
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
            thead { tr { th {} th.figure { "agrees" } th.figure { "disagrees" } th.figure { "no data" } } }
            tbody {
                @for group in found.groups() {
                    tr {
                        th scope="row" { a href={ "#" (anchor(group)) } { (heading(group)) } }
                        @for verdict in [Verdict::Agrees, Verdict::Disagrees, Verdict::NoData] {
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
             difference. What a row is accepted within is written in the source of the check, and was \
             written before the figure was seen; no row is made to agree by moving it. A row in which nought \
             is expected shows the largest miss over many figures."
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
            span.mark aria-hidden="true" { "✗" } " disagrees, "
            span.mark aria-hidden="true" { "–" } " nothing to compare with."
        }
    }
}

fn disagreements(found: &Validated) -> Markup {
    let rows: Vec<&Row> = found.disagreements(None).map(|it| it.1).collect();
    html! {
        h2 { "What disagrees, by how much and why" }
        @if rows.is_empty() { p { "Nothing." } }
        @else {
            dl {
                @for row in rows {
                    dt { (heading(row.group)) ": " (row.what) }
                    dd { (why(row)) }
                }
            }
        }
    }
}

fn no_data(found: &Validated) -> Markup {
    let rows: Vec<&Row> =
        found.rows(None).map(|it| it.1).filter(|it| it.verdict == Verdict::NoData).collect();
    html! {
        @if !rows.is_empty() {
            h2 { "What nothing is known about" }
            dl {
                @for row in rows {
                    dt { (heading(row.group)) ": " (row.what) }
                    dd { (row.note) }
                }
            }
        }
    }
}

fn group_part(found: &Validated, group: Group, pictures: &[Shown], sources: &[&str]) -> Markup {
    let source = |row: &Row| sources.iter().position(|it| *it == row.source);
    html! {
        h2 id=(anchor(group)) { (heading(group)) }
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

fn line(row: &Row, source: Option<usize>) -> Markup {
    let it = cells(row);
    let mark = match row.verdict {
        Verdict::Agrees => "✓",
        Verdict::Disagrees => "✗",
        Verdict::NoData => "–",
    };
    html! {
        tr.disagrees[row.verdict == Verdict::Disagrees] {
            td {
                (row.what)
                @if row.verdict == Verdict::Agrees && !row.note.is_empty() {
                    div.quiet { (row.note) }
                }
            }
            td { @if let Some(n) = source { a href={ "#source-" (n + 1) } { "[" (n + 1) "]" } } }
            td.figure { (it.expected) }
            td.figure { (it.ours) }
            td.figure { (it.difference) }
            td { (accepted(row).unwrap_or_default()) }
            td.verdict { span.mark aria-hidden="true" { (mark) } " " (row.verdict.words()) }
        }
    }
}

fn limits() -> Markup {
    html! {
        h2 { "What no row of this report can show" }
        ul {
            li {
                "No bat speed of a junior, and no moment of inertia of a cricket bat, has been published. The \
                 swing of a child is checked for its mechanics only."
            }
            li {
                "Two programs that leave out the same thing agree with each other. Legs follow a path that \
                 belongs to the stroke, joints have no stops, the bat does not bend, and a player follows \
                 the same path with every bat, in all of them."
            }
            li {
                "The law of the stroke was written twice by the same people. Agreement shows that it is \
                 computed as written, not that a batter's nerves work so."
            }
        }
    }
}

fn anchor(group: Group) -> String {
    group.words().replace(' ', "-")
}

fn colours(theme: &Theme) -> String {
    let named: [(&str, Colour); 5] = [
        ("ground", theme.ground),
        ("panel", theme.panel),
        ("ink", theme.ink),
        ("quiet", theme.quiet),
        ("hairline", theme.hairline),
    ];
    let mut out: String =
        named.iter().map(|(name, colour)| format!("--{name}:{colour};")).collect();
    out += &format!("--link:{};--no:{};", theme.bats[0], theme.bats[1]);
    out
}

fn style() -> String {
    let (day, night) = (colours(&LIGHT), colours(&DARK));
    format!(
        ":root{{color-scheme:light dark;{day}}}\n\
         .night{{display:none}}\n\
         @media (prefers-color-scheme:dark){{:root{{{night}}}.day{{display:none}}.night{{display:block}}}}\n\
         @media print{{:root{{{day}}}.day{{display:block}}.night{{display:none}}}}\n{STYLE}"
    )
}

const STYLE: &str = "\
body{margin:0;background:var(--ground);color:var(--ink);font:16px/1.5 Inter,system-ui,sans-serif}
main{max-width:1180px;margin:0 auto;padding:24px 20px 64px}
h1{font-size:28px;line-height:1.25;margin:0 0 8px}
h2{font-size:20px;margin:40px 0 8px}
p,dl,ul,ol{max-width:46em}
.sentence{font-size:20px;line-height:1.4}
.quiet{color:var(--quiet);font-size:13px;line-height:1.4}
a{color:var(--link)}
table{border-collapse:collapse;background:var(--panel);font-variant-numeric:tabular-nums}
th,td{padding:5px 10px;border-bottom:1px solid var(--hairline);text-align:left;vertical-align:top;font-weight:400}
thead th{color:var(--quiet);font-size:13px}
.figure,.verdict{white-space:nowrap}
th.figure,td.figure{text-align:right}
.wide{overflow-x:auto}
.wide table{width:100%;font-size:14px}
.disagrees td{border-left:0;font-weight:600}
.disagrees .mark{color:var(--no)}
dt{font-weight:600;margin-top:10px}
dd{margin:0}
.pictures{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,480px),1fr));gap:16px;margin-top:16px}
figure{margin:0;border:1px solid var(--hairline)}
figure svg{display:block;width:100%;height:auto}
";
