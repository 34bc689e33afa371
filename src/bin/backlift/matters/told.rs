//! The study in words and a table.

use backlift::innings::score::runs_words;
use backlift::questions::matters::Shown;
use backlift::sensitivity::advice::Weight;
use backlift::sensitivity::figure::Figure;
use backlift::sensitivity::input::Input;
use backlift::sensitivity::spread::{Moved, Standing};
use backlift::sensitivity::study::Studied;
use backlift::units::{Quantity, Units, decimals, spoken};

use crate::figure::{capital, listed, number, percent};
use crate::paragraph::{each_set_in, paragraph};
use crate::table::table;

/// Everything, the sentence first.
pub fn told(shown: &Shown<'_>, units: Units) -> String {
    let mut out = paragraph(&sentence(shown)) + "\n\n";
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
    out + "\nWhat this rests on:\n" + &each_set_in(rests_on(shown))
}

/// Inputs out of reach that the sentence names.
const MOST_NAMED: usize = 3;

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
fn doubts(shown: &Shown<'_>, units: Units) -> String {
    let row = |it: &Studied| {
        let words = match (it.figure, &shown.other) {
            (Figure::LighterBat, Some(other)) => {
                format!("lighter pickup less heavier, late, with {other}")
            }
            (figure, _) => figure.words().to_owned(),
        };
        [format!("{}: {words}", head(it.figure)), doubted(it, units)]
    };
    table(&["", ""], shown.figures().map(row))
}

/// A row an input, a column a figure: the total shares.
fn shares(shown: &Shown<'_>) -> String {
    let mut heads = vec!["", "±, %"];
    heads.extend(shown.figures().map(|it| head(it.figure)));
    // An estimate may lie above the whole, where the truth is near it.
    let share = |total: f64| match total {
        nought if nought < 0.005 => "·".to_owned(),
        total => number(100.0 * total.min(1.0), 0),
    };
    let row = |place: usize| {
        let input = shown.input(place)?;
        let spread = spread(input).replace(['±', '\u{2009}', '%'], "");
        let mut row = vec![input.words().to_owned(), spread];
        let totals = shown.figures().filter_map(|it| it.divided.indices.get(place));
        row.extend(totals.map(|it| share(it.total.value)));
        Some(row)
    };
    table(&heads, shown.study.by_weight().into_iter().filter_map(row))
}

/// What each term of the model does to which of the two bats is the better.
fn decides(shown: &Shown<'_>) -> String {
    let (Some(terms), Some(other)) = (&shown.terms, &shown.other) else { return String::new() };
    let rows = terms.moved.iter().map(|it| {
        let (ratio, by) = match it.ratio {
            Some(ratio) => (number(ratio, 4), percent(ratio / terms.ratio - 1.0, 2)),
            None => ("beyond control".to_owned(), String::new()),
        };
        let doubt = shown.share_of_bats(it.input).map(|it| number(100.0 * it, 0));
        [it.what.to_owned(), ratio, by, doubt.unwrap_or_default()]
    });
    let head = format!(
        "What decides between the two: {other} is worth {} times what {} is, ± {} by everything that is drawn. With \
         one term of the model taken away or moved; doubt: the share of the doubt of the difference late (bats, above) \
         that what is moved carries there, %:",
        number(terms.ratio, 4),
        shown.bat,
        number(terms.ratio_sd, 4)
    );
    format!("\n{}\n", paragraph(&head)) + &table(&["", "times", "moved by", "doubt"], rows)
}

/// What is gained by choosing among many paths of a stroke.
fn chooses(shown: &Shown<'_>, units: Units) -> String {
    let (false, Some(other)) = (shown.choosing.is_empty(), &shown.other) else {
        return String::new();
    };
    let of = |it: Option<f64>, told: &dyn Fn(f64) -> String| it.map_or("·".to_owned(), told);
    let times = |it: Option<f64>| of(it, &|it| number(it, 3));
    let speed = |it: Option<f64>| of(it, &|it| spoken(Quantity::Speed, it, 0.1, units));
    let rows = shown.choosing.iter().map(|it| {
        let ratios = it.ratios();
        let most = ratios.iter().copied().max_by(f64::total_cmp);
        let least = ratios.iter().copied().min_by(f64::total_cmp);
        [
            it.stroke.clone(),
            speed(it.stored_m_s[0]),
            of(it.player_gains(0), &|it| percent(it, 1)),
            times(it.stored_ratio()),
            times(it.chosen_ratio()),
            format!("{} to {}", times(least), times(most)),
        ]
    });
    let head = format!(
        "Choosing among {} paths of each stroke, fresh. Speed with {}, what choosing adds to it; speed with {other} over \
         that, on the stored path, each on its fastest, and over all paths:",
        shown.choosing.iter().map(|it| it.by_path_m_s.len()).max().unwrap_or(0),
        shown.bat,
    );
    format!("\n{}\n", paragraph(&head))
        + &table(&["", "stored", "chosen", "stored", "chosen", "all"], rows)
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

fn rests_on(shown: &Shown<'_>) -> Vec<String> {
    let study = &shown.study;
    let mut out = vec![
        format!(
            "late: at {}, the end of the innings. A share is a part of the square of the doubt, with all that an input does together with others: a column adds to 100 or a little more",
            runs_words(shown.loaded.scenario.innings.runs)
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
fn half_width(shown: &Shown<'_>) -> f64 {
    let all = shown.study.figures.iter().flat_map(|it| &it.divided.indices);
    all.map(|it| 0.5 * (it.total.interval[1] - it.total.interval[0])).fold(0.0, f64::max)
}

/// What a coach could say aloud.
pub fn sentence(shown: &Shown<'_>) -> String {
    let careful = shown.names(Standing::Measured, Weight::Much);
    let missing = shown.names(Standing::Measurable, Weight::Much);
    let beyond = shown.names(Standing::OutOfReach, Weight::Much);
    let mut parts = Vec::new();
    if !missing.is_empty() {
        parts.push(format!("Find out first: {}", listed(&missing)));
    }
    if !careful.is_empty() {
        parts.push(format!("measure carefully: {}", listed(&careful)));
    }
    if parts.is_empty() {
        parts.push("Nothing that can be measured matters much any more".to_owned());
    }
    if !beyond.is_empty() {
        let most = &beyond[..beyond.len().min(MOST_NAMED)];
        parts.push(format!("the doubt that stays is mostly {}", listed(most)));
    }
    capital(&parts.join("; "))
}

/// How far it was moved: one standard deviation.
pub fn spread(it: &Moved) -> String {
    if it.input == Input::LastingFatigue {
        return "any".to_owned();
    }
    let digits = if it.relative_sd < 0.0995 { 1 } else { 0 };
    format!("±\u{2009}{}", percent(it.relative_sd, digits))
}

/// A figure's best value and its doubt.
pub fn doubted(it: &Studied, units: Units) -> String {
    let (value, sd) = (it.best, it.divided.sd);
    // One digit more than the doubt allows, so that two doubts can be compared.
    let of = |quantity| {
        let doubt = spoken(quantity, sd, 0.3 * sd, units);
        let with = spoken(quantity, value, 0.3 * sd, units);
        let number = with.split('\u{2009}').next().unwrap_or_default().to_owned();
        format!("{number} ± {doubt}")
    };
    match it.figure {
        Figure::FreshSpeed | Figure::LateSpeed | Figure::FastestBall | Figure::LighterBat => {
            of(Quantity::Speed)
        }
        Figure::TimeInHand => of(Quantity::Time),
        Figure::WristShare | Figure::GripShare => {
            let digits = decimals(100.0 * sd, 0);
            format!("{} ± {}", number(100.0 * value, digits), percent(sd, digits))
        }
    }
}
