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

#[test]
fn nought_is_a_matter_of_value_in_whatever_unit_it_is_written() {
    let sizes = assets::sizes().unwrap();
    let set = |field: &str, value: &str| {
        let sets = [format!("{field}={value}")];
        load_text(Source::new("bat.ron", DEMO), &sets, &sizes).map(|it| it.described)
    };
    let lengths = ["none", "No", "0", "0 mm", "0mm", "0.00 in", "0.0in", "-0 mm", "0 ft 0 in"];
    for value in lengths {
        let of = |field| set(field, value).unwrap_or_else(|it| panic!("{field} {value}: {it:?}"));
        assert_eq!(of("extras.toe_guard").extras.toe_guard_m, Some(0.0));
        assert_eq!(of("handle.twine").handle.twine_m, Some(0.0));
        assert_eq!(of("blade.camber").blade.camber_m, Some(0.0));
    }
    for value in ["none", "0 g", "0g", "0.0 oz", "0 lb 0 oz"] {
        let of = |field| set(field, value).unwrap_or_else(|it| panic!("{field} {value}: {it:?}"));
        assert_eq!(of("extras.oil").extras.oil_kg, Some(0.0));
        assert_eq!(of("extras.labels").extras.labels_kg, Some(0.0));
    }
    for value in ["0 g", "-1 mm", "0 furlongs", "0."] {
        assert!(set("extras.toe_guard", value).is_err(), "{value}");
    }
}

/// No grips and no twine: cane alone, thinner than over the grip so that the blade has room for it.
#[test]
fn a_bare_handle_can_be_described() {
    let sizes = assets::sizes().unwrap();
    let sets = ["handle.grips=0", "handle.twine=none", "handle.diameter=30 mm"];
    let sets = sets.map(str::to_owned);
    let loaded = load_text(Source::new("bat.ron", DEMO), &sets, &sizes).unwrap();
    let bat = loaded.described.shape(&loaded.size.reference).unwrap();
    assert_eq!(bat.handle.cover_m(), 0.0);
}
