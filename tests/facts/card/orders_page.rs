use super::sheet::clear_texts;
use backlift::card::cautions::standing;
use backlift::drawing::DrawingFault;
use backlift::drawing::orders_page::{Cell, OrderRow, OrdersPage, svgs};

fn page(rows: usize, letters: usize) -> OrdersPage {
    let cell =
        |figure: &str, limits: &str| Cell { figure: figure.to_owned(), limits: limits.to_owned() };
    let row = |n: usize| {
        OrderRow {
        number: format!("2026-11-{n:0letters$}"),
        size: "short handle".to_owned(),
        cells: [
            cell("2 lb 11.9 oz", "40.9 to 43.2 oz"),
            cell("12.11 in", "11.90 to 12.30 in"),
            cell("30 in 42.8 s", "41.4 to 42.2 s"),
            cell("34.9 mm", "oval above, round below, two grips"),
        ],
        willow: "Willow of 412 to 560 kg/m³, best 447; the usual cleft, 710 × 120 × 75 mm, weighs 5 lb 12 oz to 7 lb 14 oz".to_owned(),
        wood: vec!["Cleft A3: 452 ± 17 kg/m³, will do 98 %, 8 grains".to_owned()],
        wish: "no stickers, and the ends light ".repeat(6),
    }
    };
    OrdersPage {
        title: format!("{rows} bats to make"),
        about: "Invented examples: no real players.".to_owned(),
        rows: (0..rows).map(row).collect(),
        left: vec!["Cleft B2 is left: too heavy".to_owned(); 12],
        notes: vec!["Willow at 12 % water. ".repeat(20)],
        cautions: standing(13.0, None),
    }
}

#[test]
fn every_order_stands_on_a_page_clear_of_the_others_and_the_cautions_on_the_last() {
    for (rows, letters) in [(1, 2), (5, 16), (23, 2), (60, 40)] {
        let pages = svgs(&page(rows, letters)).unwrap();
        let found: Vec<Vec<String>> = pages.iter().map(|it| clear_texts(it)).collect();
        let all = found.concat();
        let drawn = all.iter().filter(|it| it.starts_with("Willow of")).count();
        assert_eq!(drawn, rows, "{} pages", pages.len());
        let last = found.last().unwrap();
        for caution in standing(13.0, None) {
            assert!(last.contains(&caution), "{caution:?} is missing in {last:#?}");
        }
        assert_eq!(pages.len() == 1, rows == 1, "{rows} rows on {} pages", pages.len());
    }
}

#[test]
fn five_bats_with_their_clefts_stand_on_one_page() {
    let mut page = OrdersPage { left: Vec::new(), ..page(5, 2) };
    page.rows.iter_mut().for_each(|it| "no stickers".clone_into(&mut it.wish));
    assert_eq!(svgs(&page).unwrap().len(), 1);
}

#[test]
fn what_is_longer_than_a_page_is_refused_and_not_cut() {
    let full = OrdersPage { notes: vec!["one more thing to know ".repeat(500)], ..page(1, 2) };
    assert!(matches!(svgs(&full), Err(DrawingFault::PageTooLong { .. })));
}
