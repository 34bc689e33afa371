//! The log in words: the bench at a glance, then bat by bat.

use backlift::questions::bench_log::{Bench, Standing};
use backlift::uncertain::Uncertain;
use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::cautions::WORKSHOP;
use backlift::workshop::stages::{Moment, Stage};

use crate::bat_figure::{BALANCE, DEAD_WEIGHT, PICKUP_WEIGHT, SWING_MOMENT};
use crate::figure::{listed, plain, with_doubt};
use crate::paragraph::{dashed, each_set_in, paragraph, set_in};
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
        out += &each_set_in(&it.doubts);
        out += &each_set_in(waiting(it, bench.now));
    }
    out += &format!("\n{}\n", paragraph(RESTS_ON));
    out += &format!("\nIn the workshop:\n{}", dashed(WORKSHOP));
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
    let parts = [
        said(&ready, "can go on now", "can go on now"),
        said(&waiting, "has to wait", "have to wait"),
        said(&done, "is done", "are done"),
    ];
    parts.into_iter().flatten().collect::<Vec<_>>().join("; ")
}

fn at_a_glance(bench: &Bench<'_>) -> String {
    let row = |it: &Standing<'_>| {
        let next = match (it.plane_first_kg, it.next) {
            (Some(_), _) => "plane",
            (None, next) => next.map_or("nothing", Stage::name),
        };
        [
            it.log.label.clone(),
            it.last.stage.name().to_owned(),
            next.to_owned(),
            it.wait.map_or_else(|| "now".to_owned(), |it| it.until.to_string()),
        ]
    };
    table(&["", "stands at", "next", "not before"], bench.bats.iter().map(row))
}

fn to_come(bench: &Bench<'_>, units: Units) -> String {
    let row = |it: &Standing<'_>| {
        [
            it.log.label.clone(),
            DEAD_WEIGHT.shown(it.forecast.mass_kg, units),
            BALANCE.shown(it.forecast.balance_m, units),
            SWING_MOMENT.shown(it.forecast.swing_moment_kg_m2, units),
            PICKUP_WEIGHT.shown(it.pickup_weight_kg, units),
        ]
    };
    let heads = ["", "will weigh", "balance, from top", "swing, kg m²", "pick up like"];
    table(&heads, bench.bats.iter().map(row))
}

fn aim(it: &Standing<'_>, units: Units) -> String {
    let forecast = &it.forecast;
    let grams = |it: Uncertain| with_doubt(Quantity::Mass, it.value, it.sd, units);
    let first = match (it.next, it.plane_first_kg, forecast.to_take_off_kg) {
        (None, ..) => "all done".to_owned(),
        (Some(next), Some(off), _) => {
            format!("plane off {} before you {}, or it will be too heavy", grams(off), next.task())
        }
        (Some(next), None, None) => format!("next {}", next.task()),
        (Some(next), None, Some(off)) => {
            let wanted = it.log.target.mass_kg.unwrap_or(0.0);
            let wanted = spoken(Quantity::Mass, wanted, 0.003, units);
            let then = match off.value {
                // Within its doubt: no word of wood.
                value if value.abs() <= off.sd => {
                    let sd = spoken(Quantity::Mass, off.sd, off.sd, units);
                    format!("on its way to {wanted}, ± {sd}")
                }
                value if value > 0.0 => {
                    format!("take off {} in all for {wanted} as played", grams(off))
                }
                value => {
                    let missing = grams(Uncertain { value: -value, ..off });
                    format!("already {missing} too light for {wanted} as played")
                }
            };
            format!("next {}; {then}", next.task())
        }
    };
    let mut parts = vec![first];
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
        let [time, asked] = [time_s, asked_s].map(seconds);
        parts.push(format!("{count} swings will take {time}, {asked} asked"));
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
