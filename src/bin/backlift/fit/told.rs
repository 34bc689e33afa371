//! A fitting as a coach reads it.

use backlift::card::Card;
use backlift::drawing::map::MapTarget;
use backlift::fit::given::Given;
use backlift::fit::rule::Worth;
use backlift::innings::score::runs_words;
use backlift::units::{Quantity, Units, spoken};

use super::Fitted;
use crate::figure::{ACROSS_SIZES, number, of_several_sizes, percent};
use crate::paragraph;
use crate::table::table;

/// A map with a larger error, as a share, is called rough.
const SMOOTH: f64 = 0.001;

/// The whole text.
pub fn told(it: &Fitted, units: Units) -> String {
    let card = &it.card;
    let mut out = String::new();
    out += &line(&it.loaded.scenario.title);
    if card.invented {
        out += &line("Invented player and bats.");
    }
    out += "\n";
    if let Some(best) = it.fitting.best_given {
        out += &line(&format!(
            "Use today: {}. {}",
            it.fitting.given[best].label,
            given_reason(it, best)
        ));
        out += "\n";
    }
    out += &given_table(it, units);
    out += &line(&best_guess(it));
    out += "\n";
    if of_several_sizes(&it.loaded.bats) {
        out += ACROSS_SIZES;
    }
    out += &line(&format!(
        "Ask the maker for: size {}, {}, balanced {} from the top of the handle, picking up like {}.",
        card.size,
        spoken(Quantity::Mass, card.mass_kg, 0.005, units),
        spoken(Quantity::Length, card.balance_m, 0.001, units),
        spoken(Quantity::Mass, card.pickup_weight_kg, 0.005, units),
    ));
    out += "\n";
    out += &spec_table(card, units);
    out += "\n";
    out += &line(&card.reason);
    out += &line(&format!("The rule: {}", rule(it, units)));
    if let Some(next) = &it.fitting.runner_up {
        out += &line(&format!(
            "Runner-up: {} balanced at {}, swing moment {} kg m², with {} ball speed.",
            spoken(Quantity::Mass, next.bat.mass_kg(), 0.005, units),
            spoken(Quantity::Length, next.bat.balance_m(), 0.001, units),
            number(next.bat.swing_moment_kg_m2(), 4),
            against(next.goal_m_s / it.fitting.recommendation.worth.goal_m_s),
        ));
    }
    out += &line(&format!(
        "How sure: {} The map is a smooth curve through full swings of this player, tried on bats it had not seen and {} off at most there; the figures of the card are simulated.",
        card.how_sure,
        percent(it.fitting.surrogate_error, 2),
    ));
    if it.fitting.surrogate_error > SMOOTH {
        out += &line(
            "That is rougher than it should be: some of these bats are near the limit of what this player can swing, so trust the figures of the card before the map and the runner-up.",
        );
    }
    for moved in &it.fitting.moved {
        out += &line(&format!(
            "If {}: the choice would be {} at {}; {}.",
            moved.what,
            spoken(Quantity::Mass, moved.chosen.bat.mass_kg(), 0.005, units),
            spoken(Quantity::Length, moved.chosen.bat.balance_m(), 0.001, units),
            if moved.changes_advice {
                "this bat would no longer do"
            } else {
                "this bat still does"
            },
        ));
    }
    let estimated = estimated(it);
    if !estimated.is_empty() {
        out += &line(&format!("Not measured, so estimated: {}.", estimated.join("; ")));
    }
    out += "\n";
    for caution in &card.cautions {
        out += &line(&format!("! {caution}"));
    }
    out += "\n";
    out
}

/// What the yes and the no of the table rest on.
fn best_guess(it: &Fitted) -> String {
    let source = match it.loaded.player.calibration.is_some() {
        true => "the strength that the nets found likeliest",
        false => "the strength that the tables make likeliest",
    };
    format!(
        "Yes and no are for {source}, and the true one may be another: how likely each bat is in time, `backlift calibrate` says."
    )
}

/// The rule that chose, with what was set.
pub fn rule(it: &Fitted, units: Units) -> String {
    let s = &it.fitting.setting;
    let limits = &it.loaded.scenario.fit;
    format!(
        "at {} a pull and a hook must still come off in the {} s there are against {} bowling with no joint above {} of what it has left; of the bats that do, the most ball speed; within {} the lighter pickup wins.",
        runs_words(s.plan.runs),
        number(s.available_time_s(), 2),
        spoken(Quantity::Speed, s.delivery.speed_m_s, 0.3, units),
        percent(s.share_limit, 0),
        percent(limits.tie_width, 1),
    )
}

/// Why this one of the weighed bats.
pub fn given_reason(it: &Fitted, index: usize) -> String {
    let g = &it.fitting.given[index];
    let name = |i: Option<usize>| {
        i.map_or("stroke", |i| it.fitting.setting.batter.strokes[i].stroke.name.as_str())
    };
    let passes = |g: &Given| g.worth.as_ref().is_some_and(Worth::passes);
    let pass = it.fitting.given.iter().filter(|g| passes(g)).count();
    let runs = runs_words(it.fitting.setting.plan.runs);
    let of = it.fitting.given.len();
    let stroke = name(g.worth.as_ref().and_then(|w| w.tightest));
    match (passes(g), of, pass) {
        (true, 1, _) => format!("It leaves a pull and a hook in time at {runs}."),
        (true, _, 1) => format!(
            "It is the only one of these bats that leaves a pull and a hook in time at {runs}."
        ),
        (true, ..) => format!(
            "It leaves a pull and a hook in time at {runs}, and by the rule below it is the best of those that do."
        ),
        (false, 1, _) => {
            format!("It comes too late at {runs}, most of all in the {stroke}.")
        }
        (false, ..) => format!(
            "None of these bats leaves a pull and a hook in time at {runs}; with this one the {stroke} misses by least."
        ),
    }
}

/// What was estimated, in words.
pub fn estimated(it: &Fitted) -> Vec<String> {
    let player = it.loaded.player.estimated.iter().map(|e| format!("{} (from {})", e.what, e.from));
    let bats =
        it.loaded.bats.iter().flat_map(|bat| {
            bat.estimated.iter().map(|e| format!("{}: {}", bat.reading.label, e.what))
        });
    player.chain(bats).collect()
}

fn given_table(it: &Fitted, units: Units) -> String {
    let mut rows = Vec::new();
    let pull = it.fitting.setting.batter.stroke_index("pull");
    for (g, weighed) in it.fitting.given.iter().zip(&it.loaded.bats) {
        let worth = g.worth.as_ref();
        let late = pull.zip(worth).map_or_else(
            || "–".to_owned(),
            |(i, w)| spoken(Quantity::Speed, w.strokes[i].bat_speed_m_s, 0.05, units),
        );
        rows.push(vec![
            g.label.clone(),
            spoken(Quantity::Mass, weighed.mass_kg.value, weighed.mass_kg.sd, units),
            spoken(
                Quantity::Mass,
                weighed.pickup_weight_kg.value,
                weighed.pickup_weight_kg.sd,
                units,
            ),
            late,
            match worth {
                Some(w) if w.passes() => format!("yes, {} to spare", percent(w.slack, 1)),
                Some(w) => format!("no, {} short", percent(-w.slack, 1)),
                None => "no, beyond control".to_owned(),
            },
        ]);
    }
    let runs = it.fitting.setting.plan.runs;
    table(
        &[
            "bat",
            "dead weight",
            "picks up like",
            &format!("pull at {runs:.0}"),
            "in time, with reserve",
        ],
        &rows,
    )
}

fn spec_table(card: &Card, units: Units) -> String {
    let range = |q: Quantity, [low, high]: [f64; 2], sd: f64| {
        format!("{} to {}", spoken(q, low, sd, units), spoken(q, high, sd, units))
    };
    let moment = |v: f64| number(v, 4);
    let seconds = |v: f64| number(v, 2);
    let one = |q: Quantity, v: f64, sd: f64| spoken(q, v, sd, units);
    table(
        &["the maker's figures", "asked", "within"],
        &[
            vec![
                "dead weight".into(),
                one(Quantity::Mass, card.mass_kg, 0.005),
                range(Quantity::Mass, card.mass_tolerance_kg, 0.005),
            ],
            vec![
                "balance, from the top".into(),
                one(Quantity::Length, card.balance_m, 0.001),
                range(Quantity::Length, card.balance_tolerance_m, 0.001),
            ],
            vec![
                "swing moment, kg m²".into(),
                moment(card.swing_moment_kg_m2),
                format!(
                    "{} to {}",
                    moment(card.swing_moment_tolerance_kg_m2[0]),
                    moment(card.swing_moment_tolerance_kg_m2[1])
                ),
            ],
            vec![
                format!("{} swings from 6 in, s", card.pendulum_swings),
                seconds(card.pendulum_time_s),
                format!(
                    "{} to {}",
                    seconds(card.pendulum_time_tolerance_s[0]),
                    seconds(card.pendulum_time_tolerance_s[1])
                ),
            ],
            vec![
                "sweet spot, from the toe".into(),
                one(Quantity::Length, card.sweet_spot_from_toe_m, 0.001),
                range(Quantity::Length, card.sweet_spot_tolerance_m, 0.001),
            ],
            vec![
                "handle over the grip".into(),
                one(Quantity::Length, card.handle_diameter_m, 0.001),
                range(Quantity::Length, card.handle_tolerance_m, 0.001),
            ],
        ],
    )
}

/// "0.3 % less", "the same".
fn against(ratio: f64) -> String {
    match ratio - 1.0 {
        same if same.abs() < 0.0005 => "the same".to_owned(),
        more if more > 0.0 => format!("{} more", percent(more, 1)),
        less => format!("{} less", percent(-less, 1)),
    }
}

/// The target of the map.
pub fn target(card: &Card) -> MapTarget {
    MapTarget {
        mass_kg: card.mass_kg,
        mass_tolerance_kg: card.mass_tolerance_kg,
        balance_m: card.balance_m,
        balance_tolerance_m: card.balance_tolerance_m,
    }
}

/// A paragraph of its own.
fn line(text: &str) -> String {
    paragraph::paragraph(text) + "\n"
}
