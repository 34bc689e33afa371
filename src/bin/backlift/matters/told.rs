//! The study in words and a table.

use backlift::innings::score::runs_words;
use backlift::sensitivity::advice::Weight;
use backlift::sensitivity::figure::Figure;
use backlift::sensitivity::spread::Standing;
use backlift::units::{Quantity, Units, spoken};

use super::shown::{Shown, doubted, name, spread};
use crate::figure::{listed, number, percent};
use crate::paragraph::{paragraph, set_in};
use crate::table::table;

/// Everything, the sentence first.
pub fn told(shown: &Shown, units: Units) -> String {
    let mut out = paragraph(&shown.sentence()) + "\n\n";
    for (head, standing, weight) in LISTS {
        let names = shown.names(standing, weight);
        if !names.is_empty() {
            out += &(paragraph(&format!("{head}: {}", listed(&names))) + "\n");
        }
    }
    out += &format!("\nThe pull with {}, and its doubt:\n", shown.bat);
    out += &doubts(shown, units);
    out += "\nWho carries how much of that doubt, %:\n";
    out += &shares(shown);
    out += &decides(shown);
    out += &chooses(shown, units);
    out += "\nWhat this rests on:\n";
    for it in rests_on(shown) {
        out += &(set_in(&it) + "\n");
    }
    out
}

const LISTS: [(&str, Standing, Weight); 7] = [
    ("Not measured, and worth it", Standing::Measurable, Weight::Much),
    ("Measured, and worth care", Standing::Measured, Weight::Much),
    ("Measured, some care", Standing::Measured, Weight::Some),
    ("Measured well enough", Standing::Measured, Weight::Little),
    ("Not measured, of some worth", Standing::Measurable, Weight::Some),
    ("Not measured, and not worth it as things stand", Standing::Measurable, Weight::Little),
    ("Out of anybody's reach, and it matters", Standing::OutOfReach, Weight::Much),
];

/// What the columns of the other table are.
fn doubts(shown: &Shown, units: Units) -> String {
    let rows: Vec<Vec<String>> = shown
        .figures()
        .map(|it| {
            let words = match (it.figure, &shown.other) {
                (Figure::LighterBat, Some(other)) => {
                    format!("lighter pickup less heavier, late, with {other}")
                }
                (figure, _) => figure.words().to_owned(),
            };
            vec![format!("{}: {words}", head(it.figure)), doubted(it, units)]
        })
        .collect();
    table(&["", ""], &rows)
}

/// A row an input, a column a figure: the total shares.
fn shares(shown: &Shown) -> String {
    let mut heads = vec!["", "±, %"];
    heads.extend(shown.figures().map(|it| head(it.figure)));
    // An estimate may lie above the whole, where the truth is near it.
    let share = |total: f64| match total {
        nought if nought < 0.005 => "·".to_owned(),
        total => number(100.0 * total.min(1.0), 0),
    };
    let row = |place: usize| {
        let input = shown.input(place)?;
        let totals = shown.figures().filter_map(|it| it.divided.indices.get(place));
        let totals = totals.map(|it| share(it.total.value));
        let spread = spread(input).replace(['±', '\u{2009}', '%'], "");
        Some([name(input), spread].into_iter().chain(totals).collect::<Vec<String>>())
    };
    table(&heads, &shown.study.by_weight().into_iter().filter_map(row).collect::<Vec<_>>())
}

/// What each term of the model does to which of the two bats is the better.
fn decides(shown: &Shown) -> String {
    let (Some(terms), Some(other)) = (&shown.terms, &shown.other) else { return String::new() };
    let rows: Vec<Vec<String>> = terms
        .moved
        .iter()
        .map(|it| {
            let (ratio, by) = match it.ratio {
                Some(ratio) => (number(ratio, 4), percent(ratio / terms.ratio - 1.0, 2)),
                None => ("beyond control".to_owned(), String::new()),
            };
            vec![it.what.to_owned(), ratio, by, shown.share_of_bats(it.input).unwrap_or_default()]
        })
        .collect();
    let head = format!(
        "What decides between the two: {other} is worth {} times what {} is, ± {} by everything that is drawn. With \
         one term of the model taken away or moved; doubt: the share of the doubt of the difference late (bats, above) \
         that what is moved carries there, %:",
        number(terms.ratio, 4),
        shown.bat,
        number(terms.ratio_sd, 4)
    );
    format!("\n{}\n", paragraph(&head)) + &table(&["", "times", "moved by", "doubt"], &rows)
}

/// What is gained by choosing among many paths of a stroke.
fn chooses(shown: &Shown, units: Units) -> String {
    let (false, Some(other)) = (shown.choosing.is_empty(), &shown.other) else {
        return String::new();
    };
    let of = |it: Option<f64>, told: &dyn Fn(f64) -> String| it.map_or("·".to_owned(), told);
    let times = |it: Option<f64>| of(it, &|it| number(it, 3));
    let rows: Vec<Vec<String>> = shown
        .choosing
        .iter()
        .map(|it| {
            let speed = |it: Option<f64>| of(it, &|it| spoken(Quantity::Speed, it, 0.1, units));
            let ratios = it.ratios();
            let most = ratios.iter().copied().max_by(f64::total_cmp);
            let least = ratios.iter().copied().min_by(f64::total_cmp);
            vec![
                it.stroke.clone(),
                speed(it.stored_m_s[0]),
                of(it.player_gains(0), &|it| percent(it, 1)),
                times(it.stored_ratio()),
                times(it.chosen_ratio()),
                format!("{} to {}", times(least), times(most)),
            ]
        })
        .collect();
    let head = format!(
        "Choosing among {} paths of each stroke, fresh. Speed with {}, what choosing adds to it; speed with {other} over \
         that, on the stored path, each on its fastest, and over all paths:",
        shown.choosing.iter().map(|it| it.by_path_m_s.len()).max().unwrap_or(0),
        shown.bat,
    );
    format!("\n{}\n", paragraph(&head))
        + &table(&["", "stored", "chosen", "stored", "chosen", "all"], &rows)
}

fn head(figure: Figure) -> &'static str {
    match figure {
        Figure::FreshSpeed => "fresh",
        Figure::LateSpeed => "late",
        Figure::TimeInHand => "hand",
        Figure::FastestBall => "ball",
        Figure::WristShare => "wrist",
        Figure::GripShare => "grip",
        Figure::LighterBat => "bats",
    }
}

fn rests_on(shown: &Shown) -> Vec<String> {
    let study = &shown.study;
    let mut out = vec![
        format!(
            "late: at {}, the end of the innings. A share is a part of the square of the doubt, with all that an input does together with others: a column adds to 100 or a little more",
            runs_words(shown.runs)
        ),
        format!(
            "{} draws of the player and the bats, each swung, none interpolated; the least sure of these shares is known within ± {} (19 times in 20), the small ones far better. Surer with more --samples",
            study.draws,
            number(100.0 * half_width(shown), 0)
        ),
        "±: how far an input may be off, one standard deviation of what its measurement or table leaves; lasting fatigue may lie anywhere in its band. Those of stature, arm, handle, friction, build-up of force, bowling and reaction are assumptions".to_owned(),
    ];
    if study.left_out > 0 {
        out.push(format!(
            "{} of {} rows are left out: a player or bat drawn in them could not bring off a controlled pull",
            study.left_out, study.rows
        ));
    }
    out
}

/// Half the widest interval of a total share.
fn half_width(shown: &Shown) -> f64 {
    let all = shown.study.figures.iter().flat_map(|it| &it.divided.indices);
    all.map(|it| 0.5 * (it.total.interval[1] - it.total.interval[0])).fold(0.0, f64::max)
}
