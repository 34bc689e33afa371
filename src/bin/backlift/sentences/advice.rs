//! An advice in sentences: which bat to use today and how sure that is, whether a new one pays and which.

use backlift::fit::fitting::TodayAdvice;
use backlift::fit::middles::{LimitedBy, MiddleRow};
use backlift::fit::pays::{Gain, Pays};
use backlift::fit::settle::WouldSettle;
use backlift::innings::score::runs_words;
use backlift::questions::fitted::Fitted;
use backlift::questions::loaded::Loaded;
use backlift::units::{Quantity, Units, spoken};
use backlift::worth::suits::Suits;
use backlift::worth::today::UseToday;

use crate::figure::{bare_speed, either, listed, number, speed_unit};

/// Which of these bats to use, and how sure that is.
pub fn which_today(loaded: &Loaded, now: &TodayAdvice) -> String {
    match &now.today.use_today {
        Some(it) => use_today(loaded, now, it),
        None => "None of these bats may be used: each is beyond this player's control or the Laws. Borrow a smaller one.".to_owned(),
    }
}

/// Strokes that are better left late in the innings with every one of these bats; none if all may be played.
pub fn left_alone(now: &TodayAdvice) -> Option<String> {
    let left: Vec<String> = now
        .today
        .better_left()
        .into_iter()
        .map(|k| now.setting.batter.strokes[k].stroke.name.clone())
        .collect();
    (!left.is_empty()).then(|| {
        format!("Leave {} alone late on against this bowling with all of these.", listed(&left))
    })
}

/// Which bat, how sure, and which others are as good.
fn use_today(loaded: &Loaded, now: &TodayAdvice, it: &UseToday) -> String {
    let given = &now.today.given[it.bat];
    let name = &given.label;
    if given.suits == Suits::TooLong {
        let size = loaded.standard_size().map_or_else(String::new, |it| format!(" {it}"));
        return format!(
            "Every one of these bats is too long for this stature. Borrow a size{size}. Until then {name}, the shortest and lightest to pick up, with a soft ball."
        );
    }
    let runs = runs_words(now.setting.plan.runs);
    let in_time = given.worth.as_ref().map_or(0.0, |it| it.chance_in_time);
    let chance = format!("Short balls at {runs}: in time in {:.0} of 100", 100.0 * in_time);
    let same: Vec<String> =
        it.as_good_as.iter().map(|i| now.today.given[*i].label.clone()).collect();
    let tail = match same.as_slice() {
        [] if now.today.given.len() == 1 => String::new(),
        [] => {
            format!(". It is the best or near it in {:.0} of 100", 100.0 * given.chance_near_best)
        }
        _ if loaded.is_junior() => {
            format!(". Too close to call against {}: the lighter pickup is named", either(&same))
        }
        _ => format!(". Too close to call against {}: choose by feel", either(&same)),
    };
    let short = if given.suits == Suits::TooShort { " (short for this stature)" } else { "" };
    format!("Use today: {name}{short}. {chance}{tail}.")
}

/// What the chances rest on.
pub fn rests_on(now: &TodayAdvice) -> String {
    let ball = "Ball: expected speed off the bat, late and mishit ones counted.";
    let contradicts = match now.today.seen_contradicts {
        true => " What was seen does not go together: no one player does both. Look again.",
        false => "",
    };
    match now.today.in_time_assumed {
        Some([low, high]) => format!(
            "{ball} In time: {:.0} to {:.0} of 100 fresh with the bat now used, assumed; say what was `seen`.",
            100.0 * low,
            100.0 * high
        ),
        None => format!("{ball} In time: from what was seen.{contradicts}"),
    }
}

/// Whether a new bat pays, which is empty where none of today's may be used; and which it would be.
pub fn order_in_two(it: &Fitted, units: Units) -> [String; 2] {
    let card = &it.card;
    let spec = format!(
        "size {}, {}, balanced {} from the top, {}",
        card.size,
        spoken(Quantity::Mass, card.mass_kg(), 0.005, units),
        spoken(Quantity::Length, card.balance_m(), 0.001, units),
        middles(it, units),
    );
    let gains = gained(&it.fitting.order, units);
    let rim = chosen_row(it).and_then(|row| rim(row, units)).unwrap_or_default();
    match it.fitting.order.pays {
        _ if it.fitting.now.today.use_today.is_none() => {
            [String::new(), format!("Order: {spec}.{rim}")]
        }
        Pays::Yes => [format!("A new bat pays: {gains}."), format!("Order {spec}.{rim}")],
        Pays::No => [
            format!("Keep it: a new bat would gain {gains}."),
            format!("If one is made: {spec}.{rim}"),
        ],
        Pays::Undecided => {
            [format!("A new bat: too close to call, {gains}."), format!("It would be {spec}.{rim}")]
        }
    }
}

/// "1.2 ± 0.4 km/h".
pub fn gained(it: &Gain, units: Units) -> String {
    format!("{} {}", bare_speed(it.gain_m_s, it.gain_sd_m_s, units), speed_unit(units).0)
}

fn chosen_row(it: &Fitted) -> Option<&MiddleRow> {
    let made = &it.fitting.recommendation.made;
    it.fitting.middles.iter().find(|row| &row.best.made == made)
}

/// "usual middle (high 60.1, low 60.3 km/h)".
fn middles(it: &Fitted, units: Units) -> String {
    let (unit, per_m_s) = speed_unit(units);
    let Some(chosen) = chosen_row(it) else { return String::new() };
    let own = chosen.best.worth.mean_m_s();
    let others: Vec<String> = it
        .fitting
        .middles
        .iter()
        .filter(|row| row.middle != chosen.middle)
        .map(|row| {
            let by = per_m_s * (row.best.worth.mean_m_s() - own);
            let sign = if by > 0.0 { "+" } else { "" };
            format!("{} {sign}{}", row.middle.words(), number(by, 1))
        })
        .collect();
    let others =
        if others.is_empty() { String::new() } else { format!(" ({} {unit})", others.join(", ")) };
    format!("{} middle{others}", chosen.middle.words())
}

/// A best weight at the rim is said.
fn rim(row: &MiddleRow, units: Units) -> Option<String> {
    let (unit, per_m_s) = speed_unit(units);
    let gains = row
        .beyond_gains_m_s
        .map_or_else(String::new, |it| format!(", by {} {unit}", number(per_m_s * it, 1)));
    let (kind, is_made) = match row.limited_by? {
        LimitedBy::LightestUsual => ("lighter", true),
        LimitedBy::LightestPossible => ("lighter", false),
        LimitedBy::HeaviestUsual => ("heavier", true),
        LimitedBy::HeaviestPossible => ("heavier", false),
    };
    let why = match is_made {
        true => format!("{gains}; {kind} is seldom sold"),
        false => "; none can be made".to_owned(),
    };
    Some(format!(" To this model {kind} would be better still{why}."))
}

/// What would settle it, with the chance that it would name another bat.
pub fn would_settle(now: &TodayAdvice) -> String {
    let named: Vec<String> = worth_a_word(now)
        .map(|it| format!("{} ({:.0} in 100)", it.what, 100.0 * it.chance))
        .collect();
    match named.as_slice() {
        [] => String::new(),
        _ => format!("Could name another bat: {}.", listed(&named)),
    }
}

/// What is likely enough to name another bat, the likeliest first.
pub fn worth_a_word(now: &TodayAdvice) -> impl Iterator<Item = &WouldSettle> {
    now.would_settle.iter().filter(|it| it.chance >= LEAST_CHANCE).take(2)
}

/// Chances below this are not worth a word.
const LEAST_CHANCE: f64 = 0.05;
