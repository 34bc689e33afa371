//! The outline finds every value at its place.

use backlift::files::outline::Outline;
use backlift::files::scenario::DEMO;

#[test]
fn values_are_found_by_their_path_through_comments_and_strings() {
    let text = r#"// a: "no"
(
    a: "x, (y) \" z", /* b: /* nested */ 2 */ b: [1, (c: r"q\"), 3.5],
    d: Some("e"),
)"#;
    let outline = Outline::of(text);
    let at = |path: &str| outline.find(path).map(|it| &text[it.value.clone()]);
    assert_eq!(at("a"), Some(r#""x, (y) \" z""#));
    assert_eq!(at("b.0"), Some("1"));
    assert_eq!(at("b.1.c"), Some(r#"r"q\""#));
    assert_eq!(at("b.2"), Some("3.5"));
    assert_eq!(at("d"), Some(r#"Some("e")"#));
    assert_eq!(at("e"), None);
    assert!(outline.unclosed.is_empty());
}

#[test]
fn every_prefix_of_a_scenario_has_an_open_bracket_or_nothing_in_it() {
    let body = DEMO.trim_end();
    let start = body.find("\n(").unwrap() + 2;
    for end in (start..body.len()).filter(|it| body.is_char_boundary(*it)) {
        assert!(!Outline::of(&body[..end]).unclosed.is_empty(), "{end}");
    }
    assert!(Outline::of(body).unclosed.is_empty());
}

#[test]
fn a_text_of_brackets_only_does_not_exhaust_the_stack() {
    let outline = Outline::of(&"(".repeat(1 << 20));
    assert!(!outline.unclosed.is_empty());
}
