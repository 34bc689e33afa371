//! The blade from the side and its strips on paper.

use super::sheet::clear_texts;
use backlift::bat::shape::BatShape;
use backlift::bat::sizes::named;
use backlift::drawing::profile::pages;
use backlift::files::assets::sizes;

fn reference(size: &str) -> BatShape {
    named(&sizes().unwrap(), size).unwrap().reference.clone()
}

/// The blade with its edges and spine so many times as thick, bowed.
fn thicker(shape: &BatShape, factor: f64, bow_m: f64) -> BatShape {
    let mut it = shape.clone();
    it.blade.thicken(factor);
    it.blade.bow_m = bow_m;
    it
}

#[test]
fn every_text_of_the_profile_stays_on_its_page_and_clear_of_the_others() {
    let title = "A blade with a name so long that nobody would write it in one line on any bat. The described bat is invented";
    for size in ["1", "6", "Harrow", "short handle"] {
        for bow_m in [0.0, 0.012, 0.030] {
            let after = thicker(&reference(size), 1.0, bow_m);
            let before = thicker(&after, 1.06, bow_m);
            for before in [None, Some(&before)] {
                let pages = pages(before, &after, title);
                for page in &pages {
                    assert!(clear_texts(page).len() > 8, "{size} {bow_m}");
                }
            }
        }
    }
}

#[test]
fn an_adult_blade_lies_on_three_pages_and_a_childs_on_two_and_the_strips_on_as_many() {
    for (size, count) in [("short handle", 6), ("1", 4)] {
        assert_eq!(pages(None, &reference(size), "").len(), count, "{size}");
    }
}

#[test]
fn what_has_to_come_off_is_the_difference_of_the_two_shapes_at_each_inch() {
    let after = reference("short handle");
    let before = thicker(&after, 1.05, 0.0);
    let all: Vec<String> =
        pages(Some(&before), &after, "").iter().flat_map(|it| clear_texts(it)).collect();
    let blade = &after.blade;
    for inch in [2.0, 8.0, 16.0] {
        let at = blade.at(1.0 - inch * 0.0254 / blade.length_m).unwrap();
        for (name, is_m) in [("spine", at.depth_m), ("edges", at.edge_m)] {
            let words = format!(
                "{name} {:.1} to {:.1}, take {:.1}",
                1050.0 * is_m,
                1000.0 * is_m,
                50.0 * is_m
            );
            assert!(all.iter().any(|it| it.replace('\u{2009}', " ") == words), "{words}: {all:#?}");
        }
    }
    let same =
        pages(Some(&after), &after, "").iter().flat_map(|it| clear_texts(it)).collect::<Vec<_>>();
    assert!(
        same.iter().any(|it| it.ends_with("stays")) && !same.iter().any(|it| it.contains("take "))
    );
}

/// The inch ticks at the left of the side pages are 96 px apart, as CSS has it: true size.
#[test]
fn a_blade_and_its_strips_are_drawn_at_their_true_size() {
    let blade = reference("short handle").blade;
    let page = pages(None, &reference("short handle"), "").remove(0);
    // Spine at the toe: as far right of the face as the toe is deep.
    let deep_px = blade.stations.last().unwrap().depth_m / 0.0254 * 96.0;
    let left = 10.0 / 25.4 * 96.0 + 84.0;
    let n = |it: f64| {
        let text = format!("{it:.2}");
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    };
    let spine = format!("M{} ", n(left + deep_px));
    assert!(page.contains(&spine), "{spine}: {page}");
}
