//! The compared bats by what `fit` says of them: the same possible players, the same figures.

use backlift::fit::fitting::TodayAdvice;
use backlift::units::Units;
use backlift::worth::constants::BEYOND_DOUBT_SD;
use backlift::worth::expected::Worth;
use backlift::worth::today::Given;
use serde_json::{Value, json};

use crate::figure::{number, percent, speed_unit};
use crate::questions::advice::{suits_key, suits_words};
use crate::table::table;

/// What the compared bats are worth, in the order in which they are compared.
pub struct Worths {
    given: Vec<Given>,
    /// Runs at which a late ball is met.
    runs: f64,
}

/// What the second bat is worth beyond the first.
struct Gain {
    bats: [usize; 2],
    gain_m_s: f64,
    sd_m_s: f64,
}

impl Gain {
    fn is_real(&self) -> bool {
        self.gain_m_s.abs() > BEYOND_DOUBT_SD.value * self.sd_m_s
    }
}

impl Worths {
    /// Of today's bats those with these numbers in the scenario.
    pub fn of(now: &TodayAdvice, bats: &[usize]) -> Self {
        let given = bats.iter().filter_map(|i| now.today.given.get(*i)).cloned().collect();
        Self { given, runs: now.setting.plan.runs }
    }

    /// Every pair that can be controlled, the second bat less the first, player by player.
    fn gains(&self) -> Vec<Gain> {
        let worth = |i: usize| self.given[i].worth.as_ref();
        let pair = |a: usize, b: usize| {
            let [gain_m_s, sd_m_s] = worth(a)?.to(worth(b)?);
            Some(Gain { bats: [a, b], gain_m_s, sd_m_s })
        };
        let count = self.given.len();
        (0..count).flat_map(|a| (a + 1..count).filter_map(move |b| pair(a, b))).collect()
    }

    fn label(&self, bat: usize) -> &str {
        &self.given[bat].label
    }

    /// Two tables: every bat, every pair.
    pub fn told(&self, units: Units) -> String {
        let (unit, per_m_s) = speed_unit(units);
        let speed = |mean: f64, sd: f64| {
            format!("{} ± {}", number(per_m_s * mean, 1), number(per_m_s * sd, 1))
        };
        let rows: Vec<Vec<String>> = self
            .given
            .iter()
            .map(|it| {
                let [ball, in_time] = it.worth.as_ref().map_or_else(
                    || ["beyond control".to_owned(), "–".to_owned()],
                    |it| [speed(it.mean_m_s(), it.sd_m_s()), percent(it.chance_in_time, 0)],
                );
                vec![it.label.clone(), suits_words(it.suits).to_owned(), ball, in_time]
            })
            .collect();
        let heads = [
            "what they are worth",
            "size suits",
            &format!("expected ball, {unit}"),
            &format!("in time at {:.0}", self.runs),
        ];
        let bats = table(&heads, &rows);
        let rows: Vec<Vec<String>> = self
            .gains()
            .iter()
            .map(|it| {
                let [a, b] = it.bats.map(|bat| self.label(bat));
                let plus = if per_m_s * it.gain_m_s >= 0.05 { "+" } else { "" };
                let real = if it.is_real() { "yes" } else { "no" };
                vec![
                    format!("{b} against {a}"),
                    format!("{plus}{}", speed(it.gain_m_s, it.sd_m_s)),
                    real.to_owned(),
                ]
            })
            .collect();
        let pairs = match rows.as_slice() {
            [] => String::new(),
            _ => table(&["", &format!("expected ball, {unit}"), "real?"], &rows),
        };
        format!("\n{bats}\n{pairs}")
    }

    /// By bat, as JSON has it.
    pub fn bats_json(&self) -> Vec<Value> {
        let row = |it: &Given| {
            let worth = it.worth.as_ref();
            json!({
                "label": it.label,
                "worth_m_s": worth.map(Worth::mean_m_s),
                "worth_sd_m_s": worth.map(Worth::sd_m_s),
                "chance_in_time": worth.map(|it| it.chance_in_time),
                "suits": suits_key(it.suits),
            })
        };
        self.given.iter().map(row).collect()
    }

    /// By pair, as JSON has it.
    pub fn pairs_json(&self) -> Vec<Value> {
        let row = |it: &Gain| {
            json!({
                "first": self.label(it.bats[0]),
                "second": self.label(it.bats[1]),
                "gain_m_s": it.gain_m_s,
                "gain_sd_m_s": it.sd_m_s,
                "real": it.is_real(),
            })
        };
        self.gains().iter().map(row).collect()
    }
}
