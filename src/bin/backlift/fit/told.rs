//! An advice as a coach reads it: one screen, the answer first.

use backlift::card::cautions;
use backlift::card::{Asked, Card, Figure};
use backlift::fit::fitting::TodayAdvice;
use backlift::questions::fitted::Fitted;
use backlift::questions::loaded::Loaded;
use backlift::units::{Quantity, Units, spoken};
use backlift::worth::suits::suits_words;

use crate::beside::Beside;
use crate::figure::{bare_speed, figure_words, number, percent, speed_unit};
use crate::ounce;
use crate::paragraph::paragraph;
use crate::sentences::advice::{left_alone, order_in_two, rests_on, which_today, would_settle};
use crate::table::table;

/// Today's bats and the bat to order, on one screen.
pub fn told(it: &Fitted, units: Units) -> String {
    let [pays, which] = order_in_two(it, units);
    let order = line(format!("{pays} {which}").trim_start());
    let ounce = line(&ounce::line(&it.ounces(), units));
    around(&it.loaded, &it.fitting.now, &(order + &ounce), units)
}

/// Today's bats alone, on one screen.
pub fn told_today(loaded: &Loaded, now: &TodayAdvice, units: Units) -> String {
    around(loaded, now, "", units)
}

/// Today's bats before the bat to order, what could name another and the cautions behind it.
fn around(loaded: &Loaded, now: &TodayAdvice, order: &str, units: Units) -> String {
    let mut out = line(&Beside::scenario(loaded).sentence(&loaded.scenario.title));
    out += &loaded.scenario.note.as_deref().map(line).unwrap_or_default();
    out += &line(&which_today(loaded, now));
    out += &given_table(loaded, now, units);
    out += &line(&rests_on(now));
    out += &left_alone(now).as_deref().map(line).unwrap_or_default();
    out += order;
    out += &line(&would_settle(now));
    out + &paragraph(&cautions(loaded).join(" ")) + "\n"
}

/// Everything else that `--all` shows: the card's figures, the middles, what it rests on.
pub fn all(it: &Fitted, units: Units) -> String {
    let (middles, ounces) = (middles_table(it, units), ounce::in_table(&it.ounces(), units));
    let (spec, times) = (spec_table(&it.card, units), times_table(&it.card, units));
    let mut out = format!("\n{middles}\n{ounces}\n{spec}{times}\n");
    out += &line(&it.card.reason);
    out += &line(&format!(
        "How sure: {} The map is a smooth curve through full swings of this player, tried on bats and strengths it had not seen and {} off at most there; bat speeds of the card are simulated.",
        it.card.how_sure,
        percent(it.fitting.surrogate_error(), 2),
    ));
    let estimated = estimated(&it.loaded);
    if !estimated.is_empty() {
        out += &line(&format!("Not measured, so estimated: {}.", estimated.join("; ")));
    }
    out
}

fn given_table(loaded: &Loaded, now: &TodayAdvice, units: Units) -> String {
    let rows = now.today.given.iter().zip(&loaded.bats).map(|(g, weighed)| {
        let pickup = weighed.pickup_weight_kg;
        let [ball, in_time, near_best] = match &g.worth {
            Some(worth) => [
                bare_speed(worth.mean_m_s(), worth.sd_m_s(), units),
                percent(worth.chance_in_time, 0),
                percent(g.chance_near_best, 0),
            ],
            None => ["beyond control", "–", "–"].map(str::to_owned),
        };
        [
            g.label.clone(),
            suits_words(g.suits).to_owned(),
            spoken(Quantity::Mass, pickup.value, pickup.sd, units),
            ball,
            in_time,
            near_best,
        ]
    });
    let ball = format!("ball, {}", speed_unit(units).0);
    table(&["bat", "suits", "picks up like", &ball, "in time", "near best"], rows)
}

/// What must be said with any advice to this player.
pub fn cautions(loaded: &Loaded) -> Vec<String> {
    let player = &loaded.player;
    cautions::standing(player.age_y, cautions::refit_stature_m(player.age_y, player.stature_m))
}

pub fn estimated(loaded: &Loaded) -> Vec<String> {
    let player = loaded.player.estimated.iter().map(|e| format!("{} (from {})", e.what, e.from));
    let bats = loaded
        .bats
        .iter()
        .flat_map(|bat| bat.estimated.iter().map(|e| format!("{}: {}", bat.reading.label, e.what)));
    player.chain(bats).collect()
}

fn middles_table(it: &Fitted, units: Units) -> String {
    let (unit, per_m_s) = speed_unit(units);
    let rows = it.fitting.middles.iter().map(|row| {
        let bat = &row.best.made.bat;
        [
            row.middle.words().to_owned(),
            spoken(Quantity::Mass, bat.mass_kg(), 0.005, units),
            spoken(Quantity::Length, bat.balance_m(), 0.001, units),
            spoken(Quantity::Length, bat.length_m() - bat.percussion_m(), 0.001, units),
            number(per_m_s * row.best.worth.mean_m_s(), 1),
        ]
    });
    let worth = format!("expected ball, {unit}");
    let heads =
        ["middle", "best weight", "balance, from the top", "sweet spot, from the toe", &worth];
    table(&heads, rows)
}

fn spec_table(card: &Card, units: Units) -> String {
    let row = |words: &str, asked: Asked, print: &dyn Fn(f64) -> String| {
        let [low, high] = asked.tolerance;
        let limits = format!("{} to {}", print(low), print(high));
        [words.to_owned(), print(asked.target), limits]
    };
    let mut rows = Vec::new();
    for figure in Figure::PRINTED {
        let sd = match figure.about().quantity {
            Some(Quantity::Mass) => 0.005,
            Some(_) => 0.001,
            None => 0.0,
        };
        let print = |it| figure_words(figure, it, sd, units);
        rows.push(row(figure.about().row_words, card.asked(figure), &print));
        if figure == Figure::SwingMoment {
            rows.push(row(&swings_words(card), card.pendulum_time_s, &|it| number(it, 2)));
        }
    }
    table(&["the maker's figures", "asked", "within, all at once"], rows)
}

fn swings_words(card: &Card) -> String {
    format!("{} swings from 6 in, s", card.pendulum_swings)
}

/// Seconds of the pendulum for the weight on the scale.
fn times_table(card: &Card, units: Units) -> String {
    let times = card.pendulum_times();
    if times.is_empty() {
        return String::new();
    }
    let rows = times.iter().map(|it| {
        let mass = spoken(Quantity::Mass, it.mass_kg, 0.001, units);
        [mass, format!("{} to {}", number(it.low_s, 2), number(it.high_s, 2))]
    });
    format!("\n{}", table(&["if the scale says", &swings_words(card)], rows))
}

/// A paragraph of its own.
fn line(text: &str) -> String {
    if text.is_empty() { String::new() } else { paragraph(text) + "\n" }
}
