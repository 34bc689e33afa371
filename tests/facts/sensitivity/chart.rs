//! The chart says what the study says.

use backlift::drawing::matters_chart::{Bar, InputRow, MattersPicture, Section, svg};
use backlift::drawing::palette::LIGHT;
use backlift::drawing::png::png;

use crate::card::sheet::clear_texts_on;

fn chart(total: f64) -> MattersPicture {
    let bar = Bar { first: 0.5 * total, total, interval: [0.8 * total, 1.2 * total] };
    let row = |name: &str| InputRow { name: name.into(), spread: "± 5 %".into(), bars: vec![bar] };
    let section = |title: &str, name: &str, quiet: bool| Section {
        title: title.into(),
        rows: vec![row(name)],
        quiet,
    };
    MattersPicture {
        sentence: "Measure <grip> carefully".into(),
        columns: vec![["bat speed".into(), "44 ± 4 km/h".into()]],
        sections: vec![
            section("Measured", "grip strength", false),
            section("Out of reach", "trunk strength", true),
        ],
        legend: "What the bars mean".into(),
    }
}

/// Left and right edge of the shapes filled with this colour and opacity, px.
fn boxes(picture: &str, colour: &str, opacity: &str) -> Vec<[f64; 2]> {
    let wanted = format!("fill=\"{colour}\" fill-opacity=\"{opacity}\"");
    let corners = |line: &str| -> Option<[f64; 2]> {
        let data = line.split('"').nth(1)?;
        let x = |part: &str| part.split(' ').next()?.parse::<f64>().ok();
        let mut parts = data.trim_start_matches('M').split('L');
        Some([x(parts.next()?)?, x(parts.next()?)?])
    };
    picture.lines().filter(|it| it.contains(&wanted)).filter_map(corners).collect()
}

#[test]
fn a_bar_is_as_long_as_its_share_and_never_longer_than_the_whole() {
    let width = |total: f64, colour: &str, opacity: &str| {
        let all = boxes(&svg(&chart(total), &LIGHT), colour, opacity);
        assert_eq!(all.len(), 1, "{colour} {opacity}");
        all[0][1] - all[0][0]
    };
    let (blue, grey) = (LIGHT.bats[0].to_string(), LIGHT.quiet.to_string());
    let whole = width(1.0, &blue, "0.35");
    for share in [0.1, 0.25, 0.5] {
        assert!((width(share, &blue, "0.35") - share * whole).abs() < 0.02);
        assert!((width(share, &blue, "1") - 0.5 * share * whole).abs() < 0.02);
        assert!((width(share, &grey, "0.35") - share * whole).abs() < 0.02, "out of reach: grey");
    }
    assert_eq!(width(1.17, &blue, "0.35"), whole);
    assert!(
        svg(&chart(1.17), &LIGHT).contains(">100</tspan>"),
        "no share above the whole is shown"
    );
    let nothing = svg(&chart(0.001), &LIGHT);
    assert!(boxes(&nothing, &blue, "0.35").is_empty(), "nothing is drawn for nothing");
}

#[test]
fn the_chart_names_everything_and_becomes_a_png() {
    let picture = svg(&chart(0.3), &LIGHT);
    for words in ["Measure &lt;grip&gt;", "grip strength", "trunk strength", "± 5 %", ">30</tspan>"]
    {
        assert!(picture.contains(words), "{words}");
    }
    let pixels = png(&picture, 1.0).unwrap();
    assert_eq!(&pixels[1..4], b"PNG");
}

#[test]
fn the_names_over_the_columns_are_clear_of_each_other() {
    let mut chart = chart(0.3);
    let column = |name: &str| [name.to_owned(), "37 ± 7 %".to_owned()];
    chart.columns = ["average wrist effort, late", "grip needed, late"].map(column).to_vec();
    let picture = svg(&chart, &LIGHT);
    let found = clear_texts_on(&picture, [1e4; 2], 0.0).join(" ");
    assert!(found.contains("average wrist") && found.contains("grip needed"), "{found}");
}
