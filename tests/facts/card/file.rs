use super::sample::card;
use backlift::files::card::{CardFileFault, read, write, write_short};

#[test]
fn a_card_written_in_full_reads_back_the_same() {
    assert_eq!(read(&write(&card()).unwrap()), Ok(card()));
}

#[test]
fn a_card_written_short_reads_back_the_same_cautions_included() {
    let text = write_short(&card()).unwrap();
    assert!(text.len() < 700, "{} bytes", text.len());
    assert_eq!(read(&text), Ok(card()));
}

#[test]
fn a_half_written_card_is_refused_at_the_line_where_it_ends() {
    let text = write(&card()).unwrap();
    let half: String = text.lines().take(9).map(|it| format!("{it}\n")).collect();
    match read(&half) {
        Err(CardFileFault::Broken { line, .. }) => assert!((9..=10).contains(&line), "{line}"),
        other => panic!("{other:?}"),
    }
    let short = write_short(&card()).unwrap();
    assert!(matches!(read(&short[..short.len() / 2]), Err(CardFileFault::Broken { line: 1, .. })));
}

#[test]
fn a_wrong_kind_of_value_is_refused_at_its_line() {
    let text = write(&card()).unwrap().replace("mass_kg: 1.021", "mass_kg: \"heavy\"");
    match read(&text) {
        Err(CardFileFault::Broken { line, what, .. }) => {
            let written = text.lines().nth(line - 1).unwrap();
            assert!(written.contains("heavy"), "{line}: {written}: {what}");
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_misnamed_field_is_refused_by_name() {
    let text = write(&card()).unwrap().replace("pickup_weight_kg", "pick_up_weight_kg");
    match read(&text) {
        Err(CardFileFault::Broken { what, .. }) => {
            assert!(
                what.contains("pick_up_weight_kg") && what.contains("pickup_weight_kg"),
                "{what}"
            );
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_card_of_another_edition_is_refused_by_the_name_it_bears() {
    let text = write(&card()).unwrap().replace("backlift/card/1", "backlift/card/2");
    assert_eq!(
        read(&text),
        Err(CardFileFault::OtherSchema { found: "backlift/card/2".to_owned() })
    );
}

#[test]
fn a_foreign_text_is_refused_and_not_guessed_at() {
    for text in
        ["", "{\"schema\": 1}", "%PDF-1.7", "(schema: \"backlift/fit/1\", map: [1, 2])", "\u{0}"]
    {
        assert!(read(text).is_err(), "{text:?}");
    }
}

#[test]
fn a_card_with_a_figure_that_is_not_a_number_is_refused() {
    let text = write(&card()).unwrap().replace("mass_kg: 1.021", "mass_kg: NaN");
    assert!(matches!(read(&text), Err(CardFileFault::Unfit(_))), "{:?}", read(&text));
}
