//! The log in words: the bench at a glance, then bat by bat.

use backlift::questions::bench_log::{Bench, Standing};
use backlift::uncertain::Uncertain;
use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::cautions::WORKSHOP;
use backlift::workshop::stages::{Moment, Stage};

use crate::bat_figure::{BALANCE, DEAD_WEIGHT, PICKUP_WEIGHT, SWING_MOMENT};
use crate::figure::{listed, plain};
use crate::paragraph::{paragraph, set_in};
use crate::table::table;

/// Everything, the next hand's turn first.
pub fn told(bench: &Bench<'_>, units: Units) -> String {
    let mut out = paragraph(&sentence(bench)) + "\n\n";
    out += &at_a_glance(bench);
    out += &(set_in(&format!("at {}, by the workshop's clock", bench.now)) + "\n\n");
    out += &to_come(bench, units);
    out += &(set_in(ESTIMATES) + "\n\n");
    for it in &bench.bats {
        out += &(paragraph(&format!("{}: {}", it.log.label, aim(it, units))) + "\n");
        for doubt in &it.doubts {
            out += &(set_in(doubt) + "\n");
        }
        if let Some(words) = waiting(it, bench.now) {
            out += &(set_in(&words) + "\n");
        }
    }
    out += &(String::from("\n") + &paragraph(RESTS_ON) + "\n");
    out += "\nIn the workshop:\n";
    for it in WORKSHOP {
        out += &(set_in(it).replacen("  ", "- ", 1) + "\n");
    }
    if bench.invented {
        out += "These bats are invented\n";
    }
    out
}

const ESTIMATES: &str =
    "as played, with oil, twine, grip and guard; * from the size, not yet read off this bat";

const RESTS_ON: &str = "What each stage takes off and puts on, and the ± of it, is an assumption for the size: nobody's shavings were weighed. Waiting times are common practice, no source; the maker of the glue knows better. Water in the wood moves the weight too: see `backlift season`";

fn sentence(bench: &Bench<'_>) -> String {
    let names = |of: &dyn Fn(&&Standing<'_>) -> bool| -> Vec<String> {
        bench.bats.iter().filter(of).map(|it| it.log.label.clone()).collect()
    };
    let ready = names(&|it| it.next.is_some() && it.wait.is_none());
    let waiting = names(&|it| it.wait.is_some());
    let done = names(&|it| it.next.is_none() && it.wait.is_none());
    let said = |all: &[String], one: &str, many: &str| match all {
        [] => None,
        [_] => Some(format!("{} {one}", listed(all))),
        _ => Some(format!("{} {many}", listed(all))),
    };
    let parts: Vec<String> = [
        said(&ready, "can go on now", "can go on now"),
        said(&waiting, "has to wait", "have to wait"),
        said(&done, "is done", "are done"),
    ]
    .into_iter()
    .flatten()
    .collect();
    parts.join("; ")
}

fn at_a_glance(bench: &Bench<'_>) -> String {
    let rows: Vec<Vec<String>> = bench
        .bats
        .iter()
        .map(|it| {
            vec![
                it.log.label.clone(),
                it.last.stage.name().to_owned(),
                match (it.plane_first_kg, it.next) {
                    (Some(_), _) => "plane",
                    (None, next) => next.map_or("nothing", Stage::name),
                }
                .to_owned(),
                it.wait.map_or_else(|| "now".to_owned(), |it| it.until.to_string()),
            ]
        })
        .collect();
    table(&["", "stands at", "next", "not before"], &rows)
}

fn to_come(bench: &Bench<'_>, units: Units) -> String {
    let rows: Vec<Vec<String>> = bench
        .bats
        .iter()
        .map(|it| {
            vec![
                it.log.label.clone(),
                DEAD_WEIGHT.shown(it.forecast.mass_kg, units),
                BALANCE.shown(it.forecast.balance_m, units),
                SWING_MOMENT.shown(it.forecast.swing_moment_kg_m2, units),
                PICKUP_WEIGHT.shown(it.pickup_weight_kg, units),
            ]
        })
        .collect();
    table(&["", "will weigh", "balance, from top", "swing, kg m²", "pick up like"], &rows)
}

fn aim(it: &Standing<'_>, units: Units) -> String {
    let forecast = &it.forecast;
    let grams = |it: Uncertain| {
        let [value, sd] = [it.value, it.sd].map(|kg| spoken(Quantity::Mass, kg, it.sd, units));
        format!("{value} ± {sd}")
    };
    let plane_first = it.plane_first_kg.zip(it.next).map(|(off, next)| {
        let off = grams(off);
        format!("plane off {off} before you {}, or it will be too heavy", next.task())
    });
    let next = match (it.next, forecast.to_take_off_kg) {
        (None, _) => "all done".to_owned(),
        (Some(next), None) => format!("next {}", next.task()),
        (Some(next), Some(off)) => {
            let wanted = it.log.target.mass_kg.unwrap_or(0.0);
            let wanted = spoken(Quantity::Mass, wanted, 0.003, units);
            let sd = spoken(Quantity::Mass, off.sd, off.sd, units);
            match off.value {
                // Within its doubt: no word of wood.
                value if value.abs() <= off.sd => {
                    format!("next {}; on its way to {wanted}, ± {sd}", next.task())
                }
                value if value > 0.0 => format!(
                    "next {}; take off {} in all for {wanted} as played",
                    next.task(),
                    grams(off)
                ),
                value => format!(
                    "next {}; already {} too light for {wanted} as played",
                    next.task(),
                    grams(Uncertain { value: -value, ..off })
                ),
            }
        }
    };
    let mut parts = vec![plane_first.unwrap_or(next)];
    if let Some(wanted_m) = it.log.target.balance_m {
        let length = |value: f64| spoken(Quantity::Length, value, 0.001, units);
        let off = forecast.balance_m.value - wanted_m;
        let sure = off.abs() > 1.96 * forecast.balance_m.sd;
        let words = match (sure, off > 0.0) {
            (false, _) => format!("balance within its doubt of the {} asked", length(wanted_m)),
            (true, true) => format!("balance {} nearer the toe than asked", length(off)),
            (true, false) => format!("balance {} nearer the handle than asked", length(-off)),
        };
        parts.push(words);
    }
    if let (Some(asked_s), Some(time_s)) = (it.log.target.ten_swings_s, it.ten_swings_s) {
        // As many as its card times.
        let swings = it.log.card.as_ref().map_or(10, |card| card.pendulum_swings);
        let seconds = |of_ten_s: f64| plain(0.1 * f64::from(swings) * of_ten_s, 2, "s");
        let count = if swings == 10 { "ten".to_owned() } else { swings.to_string() };
        parts.push(format!(
            "{count} swings will take {}, {} asked",
            seconds(time_s),
            seconds(asked_s)
        ));
    }
    parts.join("; ")
}

fn waiting(it: &Standing<'_>, now: Moment) -> Option<String> {
    let mut parts = Vec::new();
    if let Some(wait) = it.wait {
        parts.push(format!("{}: not before {}", wait.why, wait.until));
    }
    if let Some(playable) = it.playable.filter(|it| *it > now) {
        parts.push(format!("not played before {playable}, 48 h after the splice was glued"));
    }
    (!parts.is_empty()).then(|| parts.join("; "))
}
