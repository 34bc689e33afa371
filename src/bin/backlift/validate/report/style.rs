//! What the report looks like: the colours of the pictures, by day and by night.

use backlift::drawing::palette::{Colour, DARK, LIGHT, Theme};

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

pub fn sheet() -> String {
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
h3{font-size:16px;margin:24px 0 8px}
p,dl,ul,ol{max-width:46em}
.sentence{font-size:20px;line-height:1.4}
.quiet{color:var(--quiet);font-size:13px;line-height:1.4}
a{color:var(--link)}
table{border-collapse:collapse;background:var(--panel);font-variant-numeric:tabular-nums}
th,td{padding:5px 10px;border-bottom:1px solid var(--hairline);text-align:left;vertical-align:top;font-weight:400}
thead th{color:var(--quiet);font-size:13px}
.figure,.verdict,.accepted{white-space:nowrap}
th.figure,td.figure{text-align:right}
.wide{overflow-x:auto}
.wide table{width:100%;font-size:14px}
.disagrees td{font-weight:600}
.disagrees .mark{color:var(--no)}
dt{font-weight:600;margin-top:10px}
dd{margin:0}
.pictures{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,480px),1fr));gap:16px;margin-top:16px}
figure{margin:0;border:1px solid var(--hairline)}
figure svg{display:block;width:100%;height:auto}
";
