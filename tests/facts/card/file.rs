use super::sample::{card, figures_of, ordered};
use backlift::card::{Card, Condition, HandleShape};
use backlift::files::card::{CardFileFault, read, write, write_short};

#[test]
fn a_card_written_in_full_reads_back_the_same() {
    assert_eq!(read(&write(&card()).unwrap()), Ok(card()));
}

#[test]
fn a_card_with_an_order_reads_back_the_same_and_one_without_says_nothing_of_it() {
    let longest = ordered(&"ö".repeat(200));
    assert_eq!(read(&write(&longest).unwrap()), Ok(longest));
    assert!(!write(&card()).unwrap().contains("order"));
    let long = write(&ordered(&"ö".repeat(201))).unwrap();
    let said = read(&long).unwrap_err().to_string();
    assert!(said.contains("the card's wish has 201 letters, 200 at most"), "{said}");
}

#[test]
fn an_order_changes_no_figure_of_a_card_and_says_its_grips_and_handle() {
    let (plain, ordered) = (card(), ordered("Soft in the handle"));
    assert_eq!((ordered.condition.grips, ordered.handle_shape), (2, HandleShape::Round));
    let condition = Condition { grips: plain.condition.grips, ..ordered.condition };
    let back = Card { condition, handle_shape: plain.handle_shape, order: None, ..ordered };
    assert_eq!(back, plain);
    assert_eq!(card().ordered(None), card());
}

#[test]
fn a_card_written_short_reads_back_with_its_figures_and_standing_cautions() {
    let short = write_short(&card(), 400).unwrap();
    assert_eq!(short.left_out, Vec::<&str>::new(), "{} bytes", short.text.len());
    assert_eq!(read(&short.text), Ok(figures_of(&card())));
}

#[test]
fn a_short_card_leaves_out_names_and_no_figures() {
    let short = write_short(&card(), 0).unwrap();
    assert_eq!(short.left_out, ["the program's name", "the model's name", "the size's name"]);
    let nameless = Card {
        software: String::new(),
        model: String::new(),
        size: String::new(),
        ..figures_of(&card())
    };
    assert_eq!(read(&short.text), Ok(nameless));
}

#[test]
fn a_short_card_of_the_first_edition_is_still_read_with_its_sentences() {
    let old = "(\"backlift/card-short/1\",(true,13.4,1.56,Right),(\"5\",0.781),(1.021,0.998,1.035),(0.497,0.49,0.502),(0.1583,0.1545,0.1606),0.987,(0.1524,10,(13.46,13.3,13.56)),(0.179,0.172,0.188),(0.0335,0.0325,0.0345),Oval,(1,false,false),REFIT,\"Because.\",\"Not very.\",[\"Mind the step.\"],\"backlift 0.1.0\",\"2026-11\")";
    let refit = card().refit_stature_m.map_or("None".to_owned(), |it| format!("Some({it})"));
    let mut expected = figures_of(&card());
    expected.reason = "Because.".to_owned();
    expected.how_sure = "Not very.".to_owned();
    expected.cautions.push("Mind the step.".to_owned());
    assert_eq!(read(&old.replace("REFIT", &refit)), Ok(expected));
}

#[test]
fn a_half_written_card_is_refused_at_the_line_where_it_ends() {
    let text = write(&card()).unwrap();
    let half: String = text.lines().take(9).map(|it| format!("{it}\n")).collect();
    match read(&half) {
        Err(CardFileFault::Broken { line, .. }) => assert!((9..=10).contains(&line), "{line}"),
        other => panic!("{other:?}"),
    }
    let short = write_short(&card(), 400).unwrap().text;
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
