//! The example of a described bat has every field that is read, and its notes say what is left out.

use std::fmt::Write;

use approx::assert_relative_eq;
use backlift::bat::shaped::{ShapedBat, shaped};
use backlift::files::assets;
use backlift::files::document::Part;
use backlift::files::fault::Source;
use backlift::files::shape::{DEMO, ShapeV1, load_text};

const PARTS: [&[&str]; 8] = [
    &[],
    &["blade"],
    &["blade", "stations", "0"],
    &["handle"],
    &["extras"],
    &["willow"],
    &["willow", "cleft"],
    &["log", "0"],
];

/// Names followed by a colon, in fields and notes.
fn named(text: &str) -> Vec<&str> {
    let is_name = |c: char| c.is_ascii_lowercase() || c == '_';
    let before_colon = text.split(':').filter_map(|it| it.rsplit(|c| !is_name(c)).next());
    before_colon.filter(|it| !it.is_empty()).collect()
}

/// What stands under one head of the example, up to its closing bracket.
fn part<'a>(text: &'a str, head: &str) -> &'a str {
    let from = text.find(&format!("\n    {head}: (")).unwrap() + 1;
    let rest = &text[from..];
    &rest[..rest.find("\n    ),").unwrap()]
}

#[test]
fn the_example_names_every_field_that_is_read_as_the_guide_says() {
    for path in PARTS {
        let text = match path.first() {
            None | Some(&"log") => DEMO,
            Some(head) => part(DEMO, head),
        };
        let there = named(text);
        for name in ShapeV1::names_under(path).unwrap() {
            assert!(there.contains(name), "{}.{name} is not in the example", path.join("."));
        }
    }
    // A part with names of its own that nobody listed above.
    let parts = ShapeV1::NAMES.iter().filter(|it| ShapeV1::names_under(&[**it]).is_some());
    assert!(parts.clone().all(|it| PARTS.contains(&&[*it][..])), "{:?}", parts.collect::<Vec<_>>());
}

fn bat(text: &str) -> ShapedBat {
    let loaded = load_text(Source::new("bat.ron", text), &[], &assets::sizes().unwrap());
    let loaded = loaded.unwrap_or_else(|it| panic!("{it:?}"));
    shaped("", &loaded.described, &loaded.size, &assets::limits().unwrap()).unwrap()
}

/// Notes are rounded to what a maker would write: a tenth of a gram and of a millimetre.
#[test]
fn the_notes_of_the_example_say_what_the_bat_is_without_them() {
    let mut said = String::new();
    let mut count = 0;
    for line in DEMO.lines() {
        let field = line.trim_start().strip_prefix("// ").filter(|it| {
            let is_value = it.contains(": \"") && !it.contains('…');
            is_value && it.starts_with(|c: char| c.is_ascii_lowercase())
        });
        count += usize::from(field.is_some());
        writeln!(said, "{}", field.unwrap_or(line)).unwrap();
    }
    let [short, long] = [bat(DEMO), bat(&said)];
    assert!(count >= 16, "{said}");
    assert!((short.mass_kg.value - long.mass_kg.value).abs() < 1e-4);
    assert!((short.balance_m.value - long.balance_m.value).abs() < 1e-4);
    let swing = [&short, &long].map(|it| it.swing_moment_kg_m2.value);
    assert_relative_eq!(swing[0], swing[1], max_relative = 2e-4);
    assert_relative_eq!(short.volume_m3, long.volume_m3, max_relative = 2e-4);
    assert_relative_eq!(short.mass_kg.sd, long.mass_kg.sd, max_relative = 2e-4);
}
