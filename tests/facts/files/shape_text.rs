//! Described bats written anew into their text.

use approx::assert_relative_eq;
use backlift::bat::described::Described;
use backlift::bat::shaped::shaped;
use backlift::files::fault::Source;
use backlift::files::shape::{DEMO, LoadedShape, load_text};
use backlift::files::shape_text::{rewritten, started};
use backlift::files::{assets, card};
use backlift::workshop::carved::Held;
use backlift::workshop::to_card::{Start, to_card};

fn read(text: &str) -> LoadedShape {
    load_text(Source::new("bat.ron", text), &[], &assets::sizes().unwrap()).unwrap()
}

#[test]
fn a_carved_shape_written_into_its_text_is_read_back_to_a_hundredth_of_a_gram() {
    let card = card::read(include_str!("../../commands/card.ron")).unwrap();
    let limits = assets::limits().unwrap();
    let text = started("A blade", &card.size).unwrap();
    let loaded = read(&text);
    let bat = shaped("", &loaded.described, &loaded.size, &limits).unwrap();
    let start = Start {
        shape: bat.shape.clone(),
        density_kg_m3: bat.density_kg_m3,
        willow_given: false,
        cleft: None,
        size: &loaded.size,
        limits: &limits,
        held: Held::default(),
    };
    let found = to_card(&start, &card, &|| false);
    assert!(!found.answers.is_empty());
    for it in &found.answers {
        let described = Described::of(&it.bat.shape, &loaded.size.reference, it.bat.density_kg_m3);
        let again = read(&rewritten(&text, &described).unwrap());
        let again = shaped("", &again.described, &again.size, &limits).unwrap();
        assert!((again.mass_kg.value - it.bat.mass_kg.value).abs() < 1e-5, "{}", it.name);
        assert_relative_eq!(
            again.swing_moment_kg_m2.value,
            it.bat.swing_moment_kg_m2.value,
            max_relative = 2e-5
        );
    }
}

#[test]
fn notes_outside_of_what_is_written_anew_stay() {
    let loaded = read(DEMO);
    let limits = assets::limits().unwrap();
    let bat = shaped("", &loaded.described, &loaded.size, &limits).unwrap();
    let described = Described::of(&bat.shape, &loaded.size.reference, bat.density_kg_m3);
    let text = rewritten(DEMO, &described).unwrap();
    assert!(text.starts_with("// An invented bat as its maker describes it."), "{text}");
    assert!(text.contains("// Weighed and measured as sawn"), "{text}");
    assert_eq!(read(&text).title, loaded.title);
    let again = read(&text);
    let again = shaped("", &again.described, &again.size, &limits).unwrap();
    assert!((again.mass_kg.value - bat.mass_kg.value).abs() < 1e-5);
}
