//! The pairs in words, on a page, and for other programs.

use backlift::bat::shape::BatShape;
use backlift::comparison::figure::StrokeFigure::{
    self, BatSpeed, FastestBall, TimeInHand, WristShare,
};
use backlift::drawing::pickup_page::{OunceAt, OuncePlaces, PickupPage, ShownBat};
use backlift::questions::pairs::{Shown, Swung};
use backlift::units::{Quantity, Units, spoken};
use serde_json::{Value, json};

use crate::beside::Beside;
use crate::figure::{if_read_in, lower, number, percent};
use crate::json::{joined, of_stroke};
use crate::ounce;
use crate::paragraph::{each_set_in, paragraph, set_in};
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
    let [swung_m_s, by_ounce_m_s] = it.slower_m_s();
    let more = far.made.bat.swing_moment_kg_m2() / near.made.bat.swing_moment_kg_m2() - 1.0;
    let nearer_m = far.made.bat.balance_m() - near.made.bat.balance_m();
    let mass = |kg: f64| spoken(Quantity::Mass, kg, DIGIT_KG, units);
    let speed = |m_s: f64| spoken(Quantity::Speed, m_s, DIGIT_M_S, units);
    format!(
        "Both weigh {}. Balanced {} nearer the toe, one has {} more swing moment and picks up like {} instead of {}; the late pull is {} slower, {} by what an ounce costs",
        mass(near.made.bat.mass_kg()),
        spoken(Quantity::Length, nearer_m, DIGIT_M, units),
        percent(more, 0),
        mass(far.pickup_weight_kg),
        mass(near.pickup_weight_kg),
        speed(swung_m_s),
        speed(by_ounce_m_s),
    )
}

fn hand_words(it: &Shown, units: Units) -> String {
    let [light, heavy] = &it.same_hand;
    let apart = (speed(light) - speed(heavy)).abs();
    let which = if speed(light) > speed(heavy) { "lighter" } else { "heavier" };
    let mass = |kg: f64| spoken(Quantity::Mass, kg, DIGIT_KG, units);
    format!(
        "Both pick up like {}. One weighs {} more on the scale, and the late pull is {} apart, the {which} ahead",
        mass(light.pickup_weight_kg),
        mass(heavy.made.bat.mass_kg() - light.made.bat.mass_kg()),
        spoken(Quantity::Speed, apart, DIGIT_M_S, units),
    )
}

/// An ounce of pickup and an ounce on the scale, in what each took from the late pull between the bats of a
/// pair.
fn between(it: &Shown, units: Units) -> String {
    let speed = |it: f64| spoken(Quantity::Speed, it, 0.2 * DIGIT_M_S, units);
    let [pickup, scale] = it.ounce_between_m_s().map(speed);
    format!(
        "Between these bats an ounce more pickup at the same dead weight costs the late pull {pickup}, an ounce more dead weight at the same pickup {scale}"
    )
}

/// Everything, a sentence for each pair first.
pub fn told(it: &Shown, units: Units) -> String {
    let mut out = String::new();
    for (title, words, pair) in [
        ("Alike on the scale, unlike in the hand", scale_words(it, units), &it.same_scale),
        ("Alike in the hand, unlike on the scale", hand_words(it, units), &it.same_hand),
    ] {
        let words = paragraph(&format!("{title}: {}", lower(&words)));
        out += &format!("{words}\n\n{}\n", in_columns(pair, units));
    }
    out += &(paragraph(&between(it, units)) + "\n\n");
    out += &(paragraph(&ounce::sentence(&it.ounces, units)) + "\n\n");
    out += &(ounce::in_table(&it.ounces, units) + "\n");
    out += &(set_in(&left_out(it)) + "\n");
    out + &each_set_in(not_to_make(it))
}

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

/// The page, to be read in a minute: the pair alike on the scale, and the ounce.
pub fn page(it: &Shown, beside: &Beside, units: Units) -> PickupPage {
    let mass = |kg: f64| spoken(Quantity::Mass, kg, DIGIT_KG, units);
    let bat = |name: &str, it: &Swung| ShownBat {
        shape: it.shape().clone(),
        balance_m: it.made.bat.balance_m(),
        name: name.to_owned(),
        lines: vec![
            format!("weighs {}", mass(it.made.bat.mass_kg())),
            format!("swings like {}", mass(it.pickup_weight_kg)),
            format!("late pull {}", spoken(Quantity::Speed, speed(it), DIGIT_M_S, units)),
        ],
    };
    let [first, second] = &it.same_scale;
    let nearer_m = second.made.bat.balance_m() - first.made.bat.balance_m();
    PickupPage {
        title: "Two bats, one weight".to_owned(),
        sentence: format!(
            "The scale cannot tell these two apart: both weigh {}. The second has its wood {} nearer the toe, and swings like a bat of {}.",
            mass(first.made.bat.mass_kg()),
            spoken(Quantity::Length, nearer_m, DIGIT_M, units),
            mass(second.pickup_weight_kg),
        ),
        whom: beside.sentence(&format!("{} · size {}", it.title, it.size)),
        bats: [bat(FIRST, first), bat(SECOND, second)],
        feel: FEEL.to_owned(),
        ounce: OuncePlaces {
            heading: format!(
                "Why: {} costs more the nearer it sits to the toe. Stuck on {}, it slows this player’s late pull by",
                ounce::ounce(units),
                it.ounces.bat.label(),
            ),
            shape: first.shape().clone(),
            places: places(it, units),
        },
        notes: std::iter::once(NOTE.to_owned()).chain(not_to_make(it)).collect(),
        cautions: beside.cautions.clone(),
    }
}

/// What the two bats are called, on the page and in their files.
const FIRST: &str = "The quicker one";
const SECOND: &str = "The slower one";

/// The files of the bats that a maker can make, what they are called in them, and the bats.
pub fn to_make(it: &Shown) -> Vec<(&'static str, &'static str, &BatShape)> {
    let files = [("quicker.ron", FIRST), ("slower.ron", SECOND)].into_iter().zip(&it.same_scale);
    let made =
        files.filter_map(|((file, title), it)| Some((file, title, it.to_make.as_ref().ok()?)));
    made.collect()
}

/// What stands in the way of making the two, where something does.
fn not_to_make(it: &Shown) -> Vec<String> {
    let both = [FIRST, SECOND].into_iter().zip(&it.same_scale);
    let why = both.filter_map(|(name, it)| Some((name, it.to_make.as_ref().err()?)));
    why.map(|(name, why)| format!("{name} cannot be carved quite so: {why}")).collect()
}

const NOTE: &str = "Late: at fifty runs. Both could be made in this size, and were not weighed: quicker.ron and slower.ron describe them to a maker, the same in weight, balance point and swing moment. Each pull is the fastest controlled one, for the player's likeliest strength.";

const FEEL: &str = "Feel it: hold each level by its handle with one hand, then turn it to and fro. The slower one hangs heavier, and starts and stops later.";

/// The ounce where everybody can put it: at both ends of the bat, at the bottom hand and at the balance point.
fn places(it: &Shown, units: Units) -> Vec<OunceAt> {
    let Some(pull) = it.ounces.lead() else { return Vec::new() };
    let (shape, bat) = (it.same_scale[0].shape(), &it.ounces.bat);
    let all = [
        ("top of the handle", 0.0),
        ("bottom hand", shape.handle.bottom_hand_m()),
        ("balance point", bat.balance_m()),
        ("toe", bat.length_m()),
    ];
    let at = |(place, from_top_m): (&str, f64)| {
        let cost = -pull.ounce_at_m_s(from_top_m);
        OunceAt { from_top_m, place: place.to_owned(), cost, words: ounce::takes(-cost, units) }
    };
    all.map(at).to_vec()
}

/// Of the late pull, for other programs.
const TOLD_OF_THE_PULL: [StrokeFigure; 4] = [BatSpeed, TimeInHand, WristShare, FastestBall];

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
        "same_scale_slower_m_s": it.slower_m_s()[0],
        "same_scale_slower_by_ounce_m_s": it.slower_m_s()[1],
    });
    joined([pairs, ounce::figures(&it.ounces)])
}
