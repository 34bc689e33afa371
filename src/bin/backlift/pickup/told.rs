//! The pairs in words, on a page, and for other programs.

use backlift::comparison::figure::StrokeFigure;
use backlift::drawing::pickup_page::{PickupPage, ShownBat, ShownPair};
use backlift::questions::pairs::{Shown, Swung};
use backlift::units::{Quantity, Units, spoken};
use serde_json::{Value, json};

use crate::beside::Beside;
use crate::figure::{if_read_in, lower, number, percent, plain};
use crate::json::{joined, of_stroke};
use crate::ounce;
use crate::paragraph::{paragraph, set_in};
use crate::table::{Row, side_by_side};

const LEFT_OUT: &str = "All four are shapes that could be made in this size, not bats that were weighed. Each pull is the fastest controlled one at fifty runs, for the player's likeliest strength; what is in doubt about the player is much the same for all four";

fn left_out(it: &Shown) -> String {
    format!("{LEFT_OUT}. Time in hand: {}", if_read_in(it.reaction_time_s))
}

/// Digits that are worth showing: a tenth of an ounce, a hundredth of an inch, a tenth of a km/h.
const DIGIT_KG: f64 = 0.003;
const DIGIT_M: f64 = 0.001;
const DIGIT_M_S: f64 = 0.03;

fn speed(it: &Swung) -> f64 {
    it.pull.bat_speed_m_s()
}

fn scale_words(it: &Shown, units: Units) -> String {
    let [near, far] = &it.same_scale;
    let more = far.made.bat.swing_moment_kg_m2() / near.made.bat.swing_moment_kg_m2() - 1.0;
    format!(
        "Both weigh {}. Balanced {} nearer the toe, one has {} more swing moment and picks up like {} instead of {}; the late pull is {} slower",
        spoken(Quantity::Mass, near.made.bat.mass_kg(), DIGIT_KG, units),
        spoken(
            Quantity::Length,
            far.made.bat.balance_m() - near.made.bat.balance_m(),
            DIGIT_M,
            units
        ),
        percent(more, 0),
        spoken(Quantity::Mass, far.pickup_weight_kg, DIGIT_KG, units),
        spoken(Quantity::Mass, near.pickup_weight_kg, DIGIT_KG, units),
        spoken(Quantity::Speed, speed(near) - speed(far), DIGIT_M_S, units),
    )
}

fn hand_words(it: &Shown, units: Units) -> String {
    let [light, heavy] = &it.same_hand;
    let apart = (speed(light) - speed(heavy)).abs();
    let which = if speed(light) > speed(heavy) { "lighter" } else { "heavier" };
    format!(
        "Both pick up like {}. One weighs {} more on the scale, and the late pull is {} apart, the {which} ahead",
        spoken(Quantity::Mass, light.pickup_weight_kg, DIGIT_KG, units),
        spoken(
            Quantity::Mass,
            heavy.made.bat.mass_kg() - light.made.bat.mass_kg(),
            DIGIT_KG,
            units
        ),
        spoken(Quantity::Speed, apart, DIGIT_M_S, units),
    )
}

/// An ounce of pickup and an ounce on the scale, in what each took from the late pull between the bats of a
/// pair.
fn between(it: &Shown, units: Units) -> String {
    let [pickup, scale] = it.ounce_between_m_s();
    format!(
        "Between these bats an ounce more pickup at the same dead weight costs the late pull {}, an ounce more dead weight at the same pickup {}",
        spoken(Quantity::Speed, pickup, 0.2 * DIGIT_M_S, units),
        spoken(Quantity::Speed, scale, 0.2 * DIGIT_M_S, units)
    )
}

/// Everything, a sentence for each pair first.
pub fn told(it: &Shown, units: Units) -> String {
    let mut out = String::new();
    for (title, words, pair) in [
        (SAME_SCALE, scale_words(it, units), &it.same_scale),
        (SAME_HAND, hand_words(it, units), &it.same_hand),
    ] {
        out += &format!(
            "{}\n\n{}\n",
            paragraph(&format!("{title}: {}", lower(&words))),
            in_columns(pair, units)
        );
    }
    out += &(paragraph(&between(it, units)) + "\n\n");
    out += &(paragraph(&ounce::sentence(&it.ounces, units)) + "\n\n");
    out += &(ounce::in_table(&it.ounces, units) + "\n");
    out += &(set_in(&left_out(it)) + "\n");
    out
}

const SAME_SCALE: &str = "Alike on the scale, unlike in the hand";
const SAME_HAND: &str = "Alike in the hand, unlike on the scale";

fn in_columns([one, other]: &[Swung; 2], units: Units) -> String {
    let rows: [Row<'_, Swung>; 6] = [
        ("dead weight", &|it| spoken(Quantity::Mass, it.made.bat.mass_kg(), DIGIT_KG, units)),
        ("balance from the top", &|it| {
            spoken(Quantity::Length, it.made.bat.balance_m(), 0.0, units)
        }),
        ("swing moment, kg m²", &|it| number(it.made.bat.swing_moment_kg_m2(), 4)),
        ("picks up like", &|it| spoken(Quantity::Mass, it.pickup_weight_kg, DIGIT_KG, units)),
        ("pull at fifty", &|it| spoken(Quantity::Speed, speed(it), DIGIT_M_S, units)),
        ("time in hand", &|it| spoken(Quantity::Time, it.pull.time_in_hand_s, 0.0, units)),
    ];
    side_by_side(&[("one", one), ("the other", other)], &rows)
}

/// The page.
pub fn page(it: &Shown, beside: &Beside, units: Units) -> PickupPage {
    let bat = |name: &str, it: &Swung| ShownBat {
        shape: it.made.shape.clone(),
        balance_m: it.made.bat.balance_m(),
        lines: vec![
            format!(
                "{name}: {} on the scale, picks up like {}",
                spoken(Quantity::Mass, it.made.bat.mass_kg(), DIGIT_KG, units),
                spoken(Quantity::Mass, it.pickup_weight_kg, DIGIT_KG, units)
            ),
            format!(
                "balance {} from the top · swing moment {} · pull at fifty {} · time in hand {}",
                spoken(Quantity::Length, it.made.bat.balance_m(), 0.0, units),
                plain(it.made.bat.swing_moment_kg_m2(), 4, "kg m²"),
                spoken(Quantity::Speed, speed(it), DIGIT_M_S, units),
                spoken(Quantity::Time, it.pull.time_in_hand_s, 0.0, units)
            ),
        ],
    };
    let [a, b] = &it.same_scale;
    let [c, d] = &it.same_hand;
    PickupPage {
        title: "What pickup is".to_owned(),
        whom: beside.sentence(&format!("{} · size {}", it.title, it.size)),
        pairs: [
            ShownPair {
                title: SAME_SCALE.to_owned(),
                words: scale_words(it, units),
                bats: [bat("One", a), bat("The other", b)],
            },
            ShownPair {
                title: SAME_HAND.to_owned(),
                words: hand_words(it, units),
                bats: [bat("One", c), bat("The other", d)],
            },
        ],
        notes: vec![
            format!("{}. {}", between(it, units), ounce::short(&it.ounces, units)),
            left_out(it),
        ],
        cautions: beside.cautions.clone(),
    }
}

/// Of the late pull, for other programs.
const TOLD_OF_THE_PULL: [StrokeFigure; 4] = [
    StrokeFigure::BatSpeed,
    StrokeFigure::TimeInHand,
    StrokeFigure::WristShare,
    StrokeFigure::FastestBall,
];

/// For other programs.
pub fn figures(it: &Shown) -> Value {
    let bat = |it: &Swung| {
        json!({
            "mass_kg": it.made.bat.mass_kg(),
            "balance_m": it.made.bat.balance_m(),
            "swing_moment_kg_m2": it.made.bat.swing_moment_kg_m2(),
            "pickup_weight_kg": it.pickup_weight_kg,
            "pull_at_fifty": of_stroke(&it.pull, &TOLD_OF_THE_PULL),
        })
    };
    let pairs = json!({
        "size": it.size,
        "same_scale": it.same_scale.iter().map(bat).collect::<Value>(),
        "same_hand": it.same_hand.iter().map(bat).collect::<Value>(),
        "left_out": left_out(it),
    });
    joined([pairs, ounce::figures(&it.ounces)])
}
