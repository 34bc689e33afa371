use super::sample::{card, figures_of, map, ordered};
use backlift::card::{Asked, Card, Figure, PlayerLine, cautions};
use backlift::drawing::map_picture::MapPicture;
use backlift::drawing::type_setting::tree;
use backlift::drawing::{DrawingFault, MARGIN_MM, PAGE_MM, PX_PER_MM};
use backlift::drawing::{pdf, png, sheet};
use backlift::files::card::read;
use backlift::measurement::person::Handed;
use resvg::{tiny_skia, usvg};

/// Every text with the area its ink covers, px.
pub fn texts(group: &usvg::Group, found: &mut Vec<(String, usvg::Rect)>) {
    for node in group.children() {
        match node {
            usvg::Node::Group(inner) => texts(inner, found),
            usvg::Node::Text(text) => {
                let written: String = text.chunks().iter().map(|it| it.text()).collect();
                if !written.trim().is_empty() {
                    found.push((written, text.flattened().abs_bounding_box()));
                }
            }
            _ => {}
        }
    }
}

fn adults_card() -> Card {
    let refit_stature_m = None;
    let mut figures = card().figures;
    figures[Figure::DeadWeight as usize] = Asked::new(1.247, [1.23, 1.26]);
    figures[Figure::Balance as usize] = Asked::new(0.56, [0.553, 0.566]);
    figures[Figure::SweetSpot as usize] = Asked::new(0.205, [0.2, 0.211]);
    Card {
        player: PlayerLine { age_y: 34.0, stature_m: 1.91, handed: Handed::Left },
        invented: false,
        size: "long handle".to_owned(),
        length_m: 0.873,
        figures,
        refit_stature_m,
        cautions: cautions::standing(34.0, refit_stature_m),
        ..card()
    }
}

/// Every text of a page, each on the page and clear of the others.
pub fn clear_texts(svg: &str) -> Vec<String> {
    let size = PAGE_MM.map(|it| (it * PX_PER_MM) as f32);
    clear_texts_on(svg, size, (MARGIN_MM * PX_PER_MM) as f32 - 0.5)
}

/// Every text of a picture of this size, each within its margin and clear of the others.
pub fn clear_texts_on(svg: &str, [width, height]: [f32; 2], margin: f32) -> Vec<String> {
    let tree = tree(svg).unwrap();
    let mut found = Vec::new();
    texts(tree.root(), &mut found);
    for (text, it) in &found {
        assert!(
            it.left() >= margin
                && it.top() >= margin
                && it.right() <= width - margin
                && it.bottom() <= height - margin,
            "\"{text}\" leaves the page: {it:?}"
        );
    }
    for (k, (text, it)) in found.iter().enumerate() {
        for (other, that) in &found[k + 1..] {
            let apart = it.right() <= that.left()
                || that.right() <= it.left()
                || it.bottom() <= that.top()
                || that.bottom() <= it.top();
            assert!(apart, "\"{text}\" and \"{other}\" overlap: {it:?} {that:?}");
        }
    }
    found.into_iter().map(|it| it.0).collect()
}

#[test]
fn every_text_of_the_card_stays_on_the_page_and_clear_of_the_others() {
    for (card, map) in [(card(), Some(map())), (card(), None), (adults_card(), Some(map()))] {
        let found = clear_texts(&sheet::svg(&card, map.as_ref()).unwrap());
        assert!(found.len() > 50, "only {} texts were found", found.len());
    }
}

#[test]
fn an_order_and_its_wish_stand_on_the_card_where_they_are_given() {
    let wish = "Soft in the handle, and the ends light: ".repeat(5);
    for card in [ordered(&wish), Card { invented: false, ..ordered(&wish) }] {
        let found = clear_texts(&sheet::svg(&card, Some(&map())).unwrap()).join(" ");
        for said in ["Order 2026-1138", "Wish middle high; handle round; two grips; Soft in the"] {
            assert!(found.contains(said), "{said} is missing in\n{found}");
        }
    }
    let found = clear_texts(&sheet::svg(&card(), Some(&map())).unwrap()).join(" ");
    assert!(!found.contains("Order") && !found.contains("Wish"), "{found}");
}

#[test]
fn the_five_figures_are_on_the_card_in_both_systems_of_units() {
    let tree = tree(&sheet::svg(&card(), None).unwrap()).unwrap();
    let mut found = Vec::new();
    texts(tree.root(), &mut found);
    let all: String = found.iter().map(|(text, _)| text.replace('\u{2009}', " ") + "\n").collect();
    for figure in [
        "2 lb 4.0 oz",
        "1.021 kg",
        "497 mm from the top",
        "19.57 in",
        "284 mm from the toe",
        "2 lb 2.8 oz",
        "0.987 kg",
        "13.46 s for 10 swings",
        "0.1583 kg m²",
        "179 mm from the toe",
        "7.05 in",
        "33.5 mm oval",
        "1.32 in",
    ] {
        assert!(all.contains(figure), "{figure} is missing:\n{all}");
    }
}

#[test]
fn the_pdf_is_one_a4_page_with_embedded_faces_and_text_that_can_be_selected() {
    let pdf = pdf::pdf(&[&sheet::svg(&card(), Some(&map())).unwrap()], "Card").unwrap();
    let text = String::from_utf8_lossy(&pdf);
    let count = |what: &str| text.matches(what).count();
    assert_eq!(count("/Type /Page\n") + count("/Type/Page/"), 1, "pages");
    assert!(text.contains("595.2") && text.contains("841.8"), "A4 is 595.28 by 841.89 points");
    assert_eq!(count("/FontFile3"), 2, "two faces, embedded");
    assert_eq!(count("/ToUnicode"), 2, "each with the way back to its letters");
    assert!(text.contains("BackliftText-Regular") && text.contains("BackliftText-SemiBold"));
}

#[test]
fn the_pdf_has_the_same_bytes_twice_and_no_clock_in_them() {
    let make = || pdf::pdf(&[&sheet::svg(&card(), Some(&map())).unwrap()], "Card").unwrap();
    let first = make();
    for _ in 0..5 {
        assert!(first == make());
    }
    let text = String::from_utf8_lossy(&first);
    assert!(!text.contains("CreationDate") && !text.contains("ModDate"));
}

/// The code on a sheet, read as a phone would: the code and its white border, not the page.
fn read_off(sheet: &str) -> String {
    const SCALE: f64 = 4.0;
    let png = png::png(sheet, SCALE).unwrap();
    let page = tiny_skia::Pixmap::decode_png(&png).unwrap();
    let side = ((sheet::CODE_MM + 4.0) * PX_PER_MM * SCALE) as usize;
    let left = page.width() as usize - ((MARGIN_MM - 2.0) * PX_PER_MM * SCALE) as usize - side;
    let top = ((MARGIN_MM - 2.0) * PX_PER_MM * SCALE) as usize;
    let mut image = rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| {
        page.pixels()[(top + y) * page.width() as usize + left + x].red()
    });
    let grids = image.detect_grids();
    grids.first().expect("no code was found").decode().unwrap().1
}

#[test]
fn the_code_on_the_card_reads_back_as_the_card_without_its_sentences() {
    let text = read_off(&sheet::svg(&card(), Some(&map())).unwrap());
    assert_eq!(read(&text), Ok(figures_of(&card())));
}

#[test]
fn texts_that_are_far_too_long_end_no_card() {
    let words = "not very sure at all of it ".repeat(400);
    let endless = "w".repeat(10_000);
    let further = |text: &str| {
        let mut all = card().cautions;
        all.extend([text.to_owned(), text.to_owned()]);
        all
    };
    // As the program draws it: the maker has no use for the bats the player has now.
    let map = MapPicture { bats: Vec::new(), ..map() };
    for text in [&words, &endless] {
        let long = [
            Card { how_sure: text.clone(), ..card() },
            Card { reason: text.clone(), ..card() },
            Card { reason: text.clone(), how_sure: text.clone(), ..card() },
            Card { cautions: further(text), ..card() },
            Card {
                reason: text.clone(),
                how_sure: text.clone(),
                cautions: further(text),
                ..card()
            },
        ];
        for (n, long) in long.iter().enumerate() {
            for map in [Some(&map), None] {
                let svg = sheet::svg(long, map).unwrap();
                let found = clear_texts(&svg);
                let all = found.join("\n");
                assert!(all.contains("card.ron"), "{n}: the page does not say where the rest is");
                let standing = cautions::standing(long.player.age_y, long.refit_stature_m);
                let first = standing[0].split(' ').next().unwrap();
                assert!(all.contains(first), "{n}: {first} is missing:\n{all}");
                if map.is_some() {
                    assert_eq!(all.contains("Left out for want of room: the map"), n >= 3, "{n}");
                }
                if n == 4 && map.is_some() {
                    assert_eq!(read(&read_off(&svg)), Ok(figures_of(long)));
                }
            }
        }
    }
}

#[test]
fn names_too_long_for_the_code_are_left_out_of_it_and_the_page_says_which() {
    let long = Card { software: "backlift ".repeat(200), model: "m".repeat(900), ..card() };
    let svg = sheet::svg(&long, Some(&map())).unwrap();
    let all = clear_texts(&svg).join("\n");
    for name in ["the program's name in the code", "the model's name in the code"] {
        assert!(all.contains(name), "{name} is not said:\n{all}");
    }
    let without = Card { software: String::new(), model: String::new(), ..figures_of(&long) };
    assert_eq!(read(&read_off(&svg)), Ok(without));
}

#[test]
fn letters_that_mean_something_in_svg_are_printed_as_they_are() {
    let odd = Card { size: "5 <&\"> 6".to_owned(), ..card() };
    let tree = tree(&sheet::svg(&odd, None).unwrap()).unwrap();
    let mut found = Vec::new();
    texts(tree.root(), &mut found);
    assert!(found.iter().any(|(text, _)| text.contains("5 <&\"> 6")));
}

#[test]
fn a_size_whose_name_would_run_into_the_code_is_refused() {
    let long = Card { size: "short handle, as his uncle calls it".to_owned(), ..card() };
    assert!(matches!(sheet::svg(&long, None), Err(DrawingFault::Refused { .. })));
}
