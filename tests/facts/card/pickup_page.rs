use super::sheet::clear_texts;
use backlift::card::cautions::{refit_stature_m, standing};
use backlift::drawing::DrawingFault;
use backlift::drawing::pickup_page::{PickupPage, ShownBat, ShownPair, svg};
use backlift::files::assets::sizes;

fn page(cautions: Vec<String>, notes: Vec<String>) -> PickupPage {
    let shape = sizes().unwrap().last().unwrap().reference.clone();
    let balance_m = shape.mass_moments().com_B().x;
    let lines = vec!["One: 2 lb on the scale".to_owned(), "balance 20 in from the top".to_owned()];
    let bat = ShownBat { shape, balance_m, lines };
    let pair = ShownPair {
        title: "Alike on the scale, unlike in the hand".to_owned(),
        words: "Both weigh the same, and one picks up heavier than the other by far. ".repeat(2),
        bats: [bat.clone(), bat],
    };
    PickupPage {
        title: "What pickup is".to_owned(),
        whom: "A junior of 13".to_owned(),
        pairs: [pair.clone(), pair],
        notes,
        cautions,
    }
}

#[test]
fn a_juniors_pickup_page_carries_every_standing_caution_clear_of_all_else() {
    let cautions = standing(13.0, refit_stature_m(13.0, 1.56));
    let notes = vec!["All four are shapes that could be made in this size. ".repeat(6)];
    let found = clear_texts(&svg(&page(cautions.clone(), notes)).unwrap());
    for caution in cautions {
        assert!(found.contains(&caution), "{caution:?} is missing in {found:#?}");
    }
}

#[test]
fn a_pickup_page_too_full_for_its_cautions_is_refused_and_not_cut() {
    let notes = vec!["one more thing to know ".repeat(200)];
    let full = svg(&page(standing(13.0, None), notes));
    assert!(matches!(full, Err(DrawingFault::PageTooLong { .. })));
}
