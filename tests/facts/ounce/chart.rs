//! The picture says where the ounce sits and where the axes lie.

use backlift::drawing::ounce_chart::{OunceCurve, OunceMark, OuncePicture, page, svg};
use backlift::drawing::palette::{DARK, LIGHT, Theme};
use backlift::drawing::png::png;

use crate::card::sheet::clear_texts_on;

const LENGTH_M: f64 = 0.85;

fn curve(stroke: &str, axis_m: f64, at_toe: f64) -> OunceCurve {
    let per = at_toe / ((LENGTH_M + axis_m) * (LENGTH_M + axis_m));
    let point = |n: u32| {
        let x = LENGTH_M * f64::from(n) / 10.0;
        [x, per * (x + axis_m) * (x + axis_m)]
    };
    OunceCurve {
        stroke: stroke.to_owned(),
        points: (0..=10).map(point).collect(),
        axis_above_top_m: axis_m,
        axis_words: format!("{stroke}: an axis {axis_m:.2} m above the top of the handle"),
    }
}

fn picture(axes_m: [f64; 3]) -> OuncePicture {
    let pull = curve("pull", axes_m[0], 0.72);
    let mark = |n: usize| OunceMark {
        from_top_m: pull.points[n][0],
        cost: pull.points[n][1],
        words: format!("{:.2}", pull.points[n][1]),
    };
    OuncePicture {
        sentence: "Where an ounce sits decides".into(),
        length_m: LENGTH_M,
        handle_diameter_m: 0.036,
        along: ("cm from the top of the handle".into(), 100.0),
        cost_label: "bat speed that an ounce there takes, km/h".into(),
        marks: [0, 2, 6, 10].map(mark).to_vec(),
        curves: vec![pull, curve("drive", axes_m[1], 0.64), curve("hook", axes_m[2], 0.97)],
    }
}

/// Left and right end of the bat's outline, px: the polygon filled with the panel's colour.
fn bat_px(picture: &str, theme: &Theme) -> [f64; 2] {
    let filled = format!("fill=\"{}\" fill-opacity=\"1\"", theme.panel);
    let line = picture.lines().find(|it| it.contains(&filled)).unwrap();
    let data = line.split('"').nth(1).unwrap().trim_start_matches('M').trim_end_matches('Z');
    let x = |part: &str| part.split(' ').next().unwrap().parse::<f64>().unwrap();
    let ends = data.split('L').map(x);
    ends.fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], it| [a.min(it), b.max(it)])
}

/// Middles of the discs, px, in the order drawn.
fn discs_x(picture: &str) -> Vec<f64> {
    let cx = |line: &str| line.strip_prefix("<circle cx=\"")?.split('"').next()?.parse().ok();
    picture.lines().filter_map(cx).collect()
}

#[test]
fn axes_and_marks_stand_where_they_are_along_the_bat() {
    let axes_m = [0.30, 0.16, 0.22];
    let drawn = svg(&picture(axes_m), &LIGHT, 1120.0, 640.0);
    let [top, toe] = bat_px(&drawn, &LIGHT);
    let px = |from_top_m: f64| top + (toe - top) * from_top_m / LENGTH_M;
    let discs = discs_x(&drawn);
    let nearest_first = [0.16, 0.22, 0.30];
    for (x, axis_m) in discs.iter().zip(nearest_first) {
        assert!((x - px(-axis_m)).abs() < 0.05, "{axis_m}: {x} {}", px(-axis_m));
    }
    for (x, at) in discs.iter().skip(3).zip([0.0, 0.17, 0.51, 0.85]) {
        assert!((x - px(at)).abs() < 0.05, "{at}: {x} {}", px(at));
    }
    assert_eq!(discs.len(), 7);
}

#[test]
fn an_axis_on_the_bat_is_drawn_on_it() {
    let drawn = svg(&picture([-0.1, 0.05, 0.1]), &LIGHT, 1120.0, 640.0);
    let [top, toe] = bat_px(&drawn, &LIGHT);
    assert!(discs_x(&drawn).iter().any(|x| (x - top - (toe - top) * 0.1 / LENGTH_M).abs() < 0.05));
}

#[test]
fn every_word_of_the_picture_is_on_it_and_clear_of_the_others() {
    for axes_m in [[0.30, 0.16, 0.22], [0.2, 0.2, 0.2], [0.02, 0.3, 0.31]] {
        for theme in [&LIGHT, &DARK] {
            let drawn = svg(&picture(axes_m), theme, 1120.0, 640.0);
            let found = clear_texts_on(&drawn, [1120.0, 640.0], 6.0);
            for words in ["pull", "drive", "hook", "0.72", "Where an ounce sits decides"] {
                assert!(found.iter().any(|it| it == words), "{words} is missing in {found:?}");
            }
            assert_eq!(&png(&drawn, 1.0).unwrap()[1..4], b"PNG");
        }
        let paper = page(&picture(axes_m));
        let found = clear_texts_on(&paper, [1122.6, 793.8], 37.0);
        assert!(found.iter().any(|it| it.starts_with("hook: an axis")), "{found:?}");
    }
}
