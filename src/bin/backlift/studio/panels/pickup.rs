//! Pickup against dead weight: the maker's demonstration.

use backlift::bat::figures::WeighedBat;
use backlift::comparison::difference::{toe_mass_kg, toe_words};
use backlift::comparison::figure::Figure;
use backlift::comparison::noticeable::{Felt, MOMENT_OF_INERTIA, felt};
use backlift::uncertain::independent_sd;
use backlift::units::{POUND_KG, Quantity, Units};
use egui::Ui;

use super::deeds::{button, choice};
use super::table::{Table, name};
use super::words::{bat_mark, big, head, measure, pending, quiet, sentence, why};
use crate::figure::{measured, plain};
use crate::studio::action::{Action, Pair};
use crate::studio::figures::swing_moment;
use crate::studio::state::Studio;

const FELT: &str = "Against published thresholds, which disagree: 2.5 to 6.7 % for weight, 2.5 to 28 % for swing moment";

/// Bats this near on the scale weigh the same, g.
const SAME_G: f64 = 10.0;

/// What to say to a customer.
pub fn told(it: &Studio, bats: [&WeighedBat; 2]) -> String {
    let [a, b] = bats;
    let (first, second) = (&a.reading.label, &b.reading.label);
    let moment = |it: &WeighedBat| it.swing_moment_kg_m2.value;
    let change = moment(b) - moment(a);
    let hand = toe_words(change, a.length_m.value);
    let grams = 1000.0 * (b.mass_kg.value - a.mass_kg.value);
    let apart = match it.look.units {
        Units::Si => plain(grams.abs(), 0, "g"),
        Units::Trade => plain(grams.abs() / 1000.0 / (POUND_KG / 16.0), 1, "oz"),
    };
    let (scale, yet) = match grams.abs() < SAME_G {
        true => ("weigh the same".to_owned(), "yet"),
        false => (format!("are {apart} apart on the scale"), "and"),
    };
    let mean = 0.5 * (moment(a) + moment(b));
    let feel = match felt(change, mean, &MOMENT_OF_INERTIA) {
        Felt::Yes => "; any hand feels that",
        Felt::Unsure => "; some hands feel that",
        Felt::No => "; too little to feel",
    };
    match hand.starts_with("as if") {
        true => {
            let hand = hand.replace("the toe", &format!("the toe of {first}"));
            format!("{first} and {second} {scale}, {yet} {second} swings {hand}{feel}")
        }
        false => format!("{first} and {second} {scale}, and {second} {hand}{feel}"),
    }
}

pub fn pickup(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        let pairs =
            [(Pair::SameScale, "Equal on the scale"), (Pair::SameHand, "Alike in the hand")];
        choice(ui, out, &pairs, it.pair, Action::Pair);
    });
    let bats = it.playback.bats;
    let weighed = |slot: usize| it.derived.loaded.as_ref()?.bats.get(*bats.get(slot)?);
    let (Some(a), Some(b)) = (weighed(0), weighed(1).filter(|_| bats[0] != bats[1])) else {
        return sentence(ui, "Two bats are needed to show it: add one at the bench");
    };
    sentence(ui, &told(it, [a, b]));
    let [from, to] = [a, b].map(|it| it.swing_moment_kg_m2);
    let at_toe = |kg_m2: f64| plain(1000.0 * toe_mass_kg(kg_m2, a.length_m.value), 0, "g");
    let doubt = at_toe(independent_sd(&[from.sd, to.sd]));
    big(
        ui,
        &at_toe(to.value - from.value),
        &format!("± {doubt}, at the toe: what the hand finds between them"),
        "Tape on the first bat's toe that would make it as hard to get moving as the second",
    );
    super::ounce::ounce(ui, it, out);
    head(ui, "On the scale and in the hand");
    bench(ui, it, bats, [a, b]);
    head(ui, &format!("In the {}", it.playback.stroke));
    pending(ui, bats.iter().any(|bat| it.is_pending(*bat)));
    super::swing::rows(ui, it);
    if !it.document.at("title").starts_with("Four bats on a maker") {
        quiet(
            ui,
            "These are the two that show it best of the bats here; a maker's bench shows it better",
        );
        button(ui, out, "Show a maker's bench", Action::Maker);
    }
    head(ui, "Why");
    quiet(
        ui,
        "A scale feels how much wood there is; a hand that swings feels how far out it lies, and that counts twice over. The swing moment holds both: how hard the bat is to get moving",
    );
}

fn bench(ui: &mut Ui, it: &Studio, bats: [usize; 2], [a, b]: [&WeighedBat; 2]) {
    let units = it.look.units;
    let mass = |it| measured(Quantity::Mass, it, units);
    let rows: [(&str, [String; 2], Option<Figure>, &str); 5] = [
        (
            "dead weight",
            [mass(a.mass_kg), mass(b.mass_kg)],
            Some(Figure::DeadWeight),
            "What a scale says",
        ),
        (
            "balance, from the top",
            [a, b].map(|it| measured(Quantity::Length, it.balance_m, units)),
            None,
            "Where it balances on a pencil",
        ),
        (
            "swing moment",
            [a, b].map(|it| swing_moment(it.swing_moment_kg_m2)),
            Some(Figure::SwingMoment),
            "How hard it is to get moving, about a point 6 in from the top, from the pendulum if it was timed",
        ),
        (
            "picks up like",
            [mass(a.pickup_weight_kg), mass(b.pickup_weight_kg)],
            Some(Figure::PickupWeight),
            "Scale weight of the standard bat of this size that is as hard to get moving",
        ),
        (
            "hold moment",
            [a, b].map(|it| {
                let sd = it.hold_moment_n_m.sd;
                format!("{} ± {}", plain(it.hold_moment_n_m.value, 2, "N m"), plain(sd, 2, "N m"))
            }),
            Some(Figure::HoldMoment),
            "What it takes to hold it out level",
        ),
    ];
    let table = Table::new(ui, &[1.1, 1.3, 1.3, 0.8]);
    table.row(ui, |ui, n| match n.checked_sub(1) {
        Some(n) if n < 2 => bat_mark(ui, &it.look, bats[n]),
        Some(_) => quiet(ui, "felt?"),
        None => {}
    });
    for (row, values, figure, words) in rows {
        let felt = it.compared().and_then(|shown| shown.difference([0, 1], figure?)?.felt);
        let said = match felt {
            Some(Felt::Yes) => "yes",
            Some(Felt::Unsure) => "may be",
            Some(Felt::No) => "no",
            None => "",
        };
        table.row(ui, |ui, n| match n {
            0 => name(ui, row),
            1 | 2 => measure(ui, &values[n - 1], words),
            _ => why(ui, said, FELT),
        });
    }
}
