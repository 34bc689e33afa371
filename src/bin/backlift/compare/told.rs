//! The comparison in words and tables.

use backlift::comparison::bats::BatDifference;
use backlift::comparison::figure::{Figure, StrokeFigure, When};
use backlift::comparison::noticeable::Felt;
use backlift::questions::compared::{Gain, Shown, Worths};
use backlift::units::{Quantity, Units, decimals, spoken};
use backlift::worth::suits::suits_words;
use backlift::worth::today::Given;

use crate::bat_figure::{
    BALANCE, BatFigure, DEAD_WEIGHT, HOLD_MOMENT, How, PICKUP_WEIGHT, SWING_MOMENT,
};
use crate::figure::{
    ACROSS_SIZES, ESTIMATED, bare_speed, if_read_in, number, of_several_sizes, percent, speed_unit,
    yes_or_no,
};
use crate::paragraph::paragraph;
use crate::sentences::pair::sentence;
use crate::table::{parted, table};

pub fn told(shown: &Shown, worths: &Worths, units: Units) -> String {
    let mut out = paragraph(&sentence(shown, units)) + "\n\n";
    let places: Vec<usize> = (0..shown.bats.len()).collect();
    for bats in parted(&places) {
        out += &side_by_side(shown, bats, units);
        out.push('\n');
    }
    if of_several_sizes(&shown.bats) {
        out += ACROSS_SIZES;
    }
    if shown.bats.iter().any(|it| it.swing_moment_kg_m2.is_estimated()) {
        out += &format!("{ESTIMATED} not measured, and so less sure\n\n");
    }
    let pairs = shown.pairs();
    match pairs.as_slice() {
        [one] => out += &one_pair(shown, *one, units),
        all => out += &many_pairs(shown, all, units),
    }
    out + &worth(worths, units) + &words(shown)
}

fn words(shown: &Shown) -> String {
    let read_in = if_read_in(shown.reaction_time_s);
    format!(
        "
What the words mean:
  ±             one standard deviation: two times in three the truth is nearer.
                What is in doubt about the player is much the same for every
                bat, so differences are surer than the figures themselves
  real          more than the doubt of the difference (1.96 times its ±)
  felt          against published thresholds, which disagree: 2.5 to 6.7 % for
                weight, 2.5 to 28 % for swing moment; in between: may be.
                For a player's own speed and time nobody has published any: –
  at fifty      fifty runs into the innings
  average wrist effort
                of what the wrist can give, at one stroke time for all bats
  ball leaves at
                the bowled ball, met in that stroke at its usual place
  time in hand  left over between reading the ball and having to start,
                {read_in}
  expected ball its speed off the bat over the innings and the mix of strokes, late
                balls and mishits counted, against the scenario's bowling: `fit`
                chooses by it
  in time       how often a short ball is met in time at the end of the innings
"
    )
}

struct Line {
    name: String,
    figure: Figure,
    how: How,
}

fn lines(shown: &Shown) -> Vec<Line> {
    let line = |name: &str, figure, how| Line { name: name.to_owned(), figure, how };
    let at_bench = |it: &BatFigure, figure| line(it.words, figure, it.how);
    let mut out = vec![
        at_bench(&DEAD_WEIGHT, Figure::DeadWeight),
        at_bench(&BALANCE, Figure::Balance),
        at_bench(&SWING_MOMENT, Figure::SwingMoment),
        at_bench(&PICKUP_WEIGHT, Figure::PickupWeight),
        at_bench(&HOLD_MOMENT, Figure::HoldMoment),
    ];
    for (i, name) in shown.strokes.iter().enumerate() {
        let speed = |when| Figure::Stroke(i, when, StrokeFigure::BatSpeed);
        let how = How::Of(Quantity::Speed);
        out.push(line(&format!("{name}, fresh"), speed(When::Fresh), how));
        out.push(line(&format!("{name}, at fifty"), speed(When::AtFifty), how));
        out.push(line("  lost by fifty", Figure::Drop(i), How::Share));
    }
    let lead = shown.strokes.get(shown.lead).map_or("", String::as_str);
    let late = |name: &str, figure, how| {
        line(&format!("{lead} at fifty: {name}"), shown.late(figure), how)
    };
    out.extend([
        late("ball leaves at", StrokeFigure::ExitSpeed, How::Of(Quantity::Speed)),
        late("time in hand", StrokeFigure::TimeInHand, How::Of(Quantity::Time)),
    ]);
    if !shown.junior {
        out.push(late("fastest ball", StrokeFigure::FastestBall, How::Of(Quantity::Speed)));
    }
    out.push(late("average wrist effort", StrokeFigure::WristShare, How::Share));
    out
}

fn side_by_side(shown: &Shown, bats: &[usize], units: Units) -> String {
    let mut heads = vec![""];
    heads.extend(bats.iter().map(|it| shown.label(*it)));
    let cell = |line: &Line, bat: usize| line.how.shown(shown.value(bat, line.figure), units);
    let row = |line: &Line| {
        let mut row = vec![line.name.clone()];
        row.extend(bats.iter().map(|bat| cell(line, *bat)));
        row
    };
    table(&heads, lines(shown).iter().map(row))
}

/// With its sign, and as many digits as its doubt allows.
fn signed(line: &Line, it: &BatDifference, units: Units) -> String {
    let (value, sd) = (it.difference.value, it.difference.sd);
    let (text, doubt) = match line.how {
        How::Of(quantity) => (spoken(quantity, value, sd, units), spoken(quantity, sd, sd, units)),
        How::Bare(most) => {
            let digits = decimals(sd, most);
            (number(value, digits), number(sd, digits))
        }
        How::Share => {
            let digits = decimals(100.0 * sd, 2);
            (percent(value, digits), percent(sd, digits))
        }
    };
    let plus = if value > 0.0 && text.chars().any(|c| ('1'..='9').contains(&c)) { "+" } else { "" };
    format!("{plus}{text} ± {doubt}")
}

fn feel(it: &BatDifference) -> &'static str {
    match it.felt {
        Some(Felt::Yes) => "yes",
        Some(Felt::Unsure) => "may be",
        Some(Felt::No) => "no",
        None => "–",
    }
}

fn one_pair(shown: &Shown, pair: [usize; 2], units: Units) -> String {
    let [a, b] = pair.map(|it| shown.label(it));
    let row = |line: &Line| {
        let it = shown.difference(pair, line.figure)?;
        let real = yes_or_no(it.difference.real).to_owned();
        Some([line.name.clone(), signed(line, it, units), real, feel(it).to_owned()])
    };
    let heads = ["", "more or less", "real?", "felt?"];
    let rows = table(&heads, lines(shown).iter().filter_map(row));
    let hand = shown.in_hand(pair);
    let swings = if hand.starts_with("as if") { "swings " } else { "" };
    format!("{b} against {a}: {swings}{hand}\n{rows}")
}

/// One row a pair: what the hand and the late innings say.
fn many_pairs(shown: &Shown, pairs: &[[usize; 2]], units: Units) -> String {
    let lines = lines(shown);
    let cell = |pair: [usize; 2], figure: Figure| {
        let line = lines.iter().find(|it| it.figure == figure);
        match (line, shown.difference(pair, figure)) {
            (Some(line), Some(it)) => {
                let doubt = if it.difference.real { "" } else { "?" };
                signed(line, it, units) + doubt
            }
            _ => String::new(),
        }
    };
    let row = |&pair: &[usize; 2]| {
        let toe = shown
            .in_hand(pair)
            .replace("as if ", "")
            .replace(" were taped to the toe", " on")
            .replace(" were taken off the toe", " off")
            .replace("picks up the same, to the gram at the toe", "the same");
        let felt = shown.difference(pair, Figure::SwingMoment).map_or("", feel);
        [
            format!("{} against {}", shown.label(pair[1]), shown.label(pair[0])),
            toe,
            felt.to_owned(),
            cell(pair, shown.late(StrokeFigure::BatSpeed)),
        ]
    };
    let lead = shown.strokes.get(shown.lead).map_or("", String::as_str);
    let heads = ["", "at the toe", "felt?", &format!("{lead} at fifty")];
    "Bat against bat, as if tape were put on the first one's toe or taken off\n".to_owned()
        + &table(&heads, pairs.iter().map(row))
        + "? within the doubt: not real. Every figure of every pair: --json\n"
}

/// What `fit` says of them: every bat, then every pair.
fn worth(worths: &Worths, units: Units) -> String {
    let (unit, per_m_s) = speed_unit(units);
    let ball = format!("expected ball, {unit}");
    let of_one = |it: &Given| {
        let [ball, in_time] = it.worth.as_ref().map_or_else(
            || ["beyond control", "–"].map(str::to_owned),
            |it| [bare_speed(it.mean_m_s(), it.sd_m_s(), units), percent(it.chance_in_time, 0)],
        );
        [it.label.clone(), suits_words(it.suits).to_owned(), ball, in_time]
    };
    let in_time = format!("in time at {:.0}", worths.runs);
    let heads = ["what they are worth", "size suits", &ball, &in_time];
    let bats = table(&heads, worths.given.iter().map(of_one));
    let of_two = |it: &Gain| {
        let [a, b] = it.bats.map(|bat| worths.label(bat));
        let plus = if per_m_s * it.gain_m_s >= 0.05 { "+" } else { "" };
        [
            format!("{b} against {a}"),
            format!("{plus}{}", bare_speed(it.gain_m_s, it.sd_m_s, units)),
            yes_or_no(it.is_real()).to_owned(),
        ]
    };
    let gains = worths.gains();
    let pairs = match gains.is_empty() {
        true => String::new(),
        false => table(&["", &ball, "real?"], gains.iter().map(of_two)),
    };
    format!("\n{bats}\n{pairs}")
}
