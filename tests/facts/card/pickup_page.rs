use super::sheet::clear_texts;
use backlift::card::cautions::{refit_stature_m, standing};
use backlift::drawing::DrawingFault;
use backlift::drawing::pickup_page::{OunceAt, OuncePlaces, PickupPage, ShownBat, svg};
use backlift::files::assets::sizes;

/// A page of the longest bat, or of the shortest.
fn page(longest: bool, cautions: Vec<String>, notes: Vec<String>) -> PickupPage {
    let sizes = sizes().unwrap();
    let size = if longest { sizes.last() } else { sizes.first() };
    let shape = size.unwrap().reference.clone();
    let balance_m = shape.mass_moments().com_B().x;
    let lines = ["weighs 2 lb 12.0 oz", "swings like 2 lb 13.0 oz", "late pull 63.1 km/h"];
    let bat = ShownBat {
        shape: shape.clone(),
        balance_m,
        name: "The quicker one".to_owned(),
        lines: lines.map(str::to_owned).to_vec(),
    };
    let place = |place: &str, from_top_m: f64| OunceAt {
        from_top_m,
        place: place.to_owned(),
        cost: from_top_m,
        words: format!("{from_top_m:.2} km/h"),
    };
    let places = vec![
        place("top of the handle", 0.0),
        place("bottom hand", shape.handle.bottom_hand_m()),
        place("balance point", balance_m),
        place("toe", shape.length_m()),
    ];
    PickupPage {
        title: "Two bats, one weight".to_owned(),
        sentence: "Both weigh the same, and one swings heavier than the other by far. ".repeat(2),
        whom: "A junior of 13".to_owned(),
        bats: [bat.clone(), bat],
        feel: "Feel it: hold each level by its handle and turn it to and fro. ".repeat(2),
        ounce: OuncePlaces { heading: "Why: an ounce costs ".repeat(4), shape, places },
        notes,
        cautions,
    }
}

#[test]
fn a_juniors_pickup_page_carries_every_standing_caution_clear_of_all_else() {
    let cautions = standing(13.0, refit_stature_m(13.0, 1.56));
    for longest in [true, false] {
        let notes = vec!["Both are shapes that could be made in this size. ".repeat(7)];
        let found = clear_texts(&svg(&page(longest, cautions.clone(), notes)).unwrap());
        for caution in &cautions {
            assert!(found.contains(caution), "{caution:?} is missing in {found:#?}");
        }
    }
}

#[test]
fn a_pickup_page_too_full_for_its_cautions_is_refused_and_not_cut() {
    let notes = vec!["one more thing to know ".repeat(200)];
    let full = svg(&page(true, standing(13.0, None), notes));
    assert!(matches!(full, Err(DrawingFault::PageTooLong { .. })));
}
