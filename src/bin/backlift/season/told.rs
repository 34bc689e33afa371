//! A season in words.

use backlift::card::Card;
use backlift::questions::season::{Found, Given, Gone};
use backlift::uncertain::Uncertain;
use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::pressing::PRACTICE;
use backlift::workshop::season::swelling::{RADIAL, TANGENTIAL, swelling};
use backlift::workshop::season::uptake::DAY_S;
use backlift::workshop::season::{Air, State};

use crate::figure::{listed, number, percent, plain, with_doubt};
use crate::paragraph::{dashed, each_set_in, paragraph, set_in};
use crate::table::table;

/// What the model does not know.
pub const LIMITS: [&str; 4] = [
    "The water in wood is the Wood Handbook's equation, for wood in general: willow has no table of its own, and wood that dries holds more than wood that wets; ± holds 20 % of the change for both (assumption)",
    "Both airs are taken as entered and the bat as having lain in the first until it kept its weight; twine, rubber, labels and guard take no water; cane is taken as wood (assumption)",
    "How fast is an assumption: water creeping through a slab as thick as the blade on average, in wood that may be 2.5 times quicker or slower",
    "Oil is linseed oil as on test boards (Wood Handbook, Table 16-3): it holds vapour up for days, not weeks, and changes nothing in the end",
];

/// Everything, the advice first.
pub fn told(given: &Given, found: &Found, units: Units) -> String {
    let mut out = paragraph(&sentence(found, units)) + "\n\n";
    out += &both_airs(found, given.card.as_ref(), units);
    out += &further(found, units);
    if let Some(words) = estimated(given) {
        out += &(set_in(words) + "\n");
    }
    if let Some(words) = limits(found) {
        out += &format!("\n{}\n", paragraph(&words));
    }
    out += &format!("\n{}", course(found, units));
    if let Some(words) = pressing(found) {
        out += &format!("\n{}\n", paragraph(&words));
    }
    out + "\nWhat this rests on:\n" + &dashed(LIMITS)
}

fn air(it: Air) -> String {
    format!("{}, {}", plain(it.celsius(), 0, "°C"), percent(it.relative_humidity(), 0))
}

/// What the scale shows must change, at least, to be worth a word, kg.
const NOTHING_KG: f64 = 0.001;
/// Doubt to which weights are printed, kg: a tenth of an ounce, a gram.
const MASS_STEP_KG: f64 = 0.003;

fn sentence(found: &Found, units: Units) -> String {
    let it = &found.seasoned;
    let mass = |value: f64| spoken(Quantity::Mass, value, MASS_STEP_KG, units);
    let change = it.mass_change_kg.value;
    if change.abs() < NOTHING_KG {
        return format!("The bat weighs the same in both airs: aim for {}", mass(it.here.mass_kg));
    }
    let way = if change > 0.0 { "heavier" } else { "lighter" };
    format!(
        "For {} where it will live, the scale must read {} today: in its new air the bat gets {} {way}",
        mass(it.here.mass_kg),
        mass(it.aim.mass_kg),
        mass((it.here.mass_kg - it.aim.mass_kg).abs()),
    )
}

fn plus(it: Uncertain) -> &'static str {
    if it.value > 0.0 { "+" } else { "" }
}

fn signed(quantity: Quantity, it: Uncertain, units: Units) -> String {
    plus(it).to_owned() + &with_doubt(quantity, it.value, it.sd, units)
}

fn both_airs(found: &Found, card: Option<&Card>, units: Units) -> String {
    let it = &found.seasoned;
    let mass = |value: f64| spoken(Quantity::Mass, value, MASS_STEP_KG, units);
    let length = |value: f64| spoken(Quantity::Length, value, 0.001, units);
    let row = |name: &str, of: &dyn Fn(&State) -> String, change: String| {
        vec![name.to_owned(), of(&it.here), of(&it.there), change, of(&it.aim)]
    };
    let swing = it.swing_moment_change_kg_m2;
    let water = |share: f64| percent(share, 1);
    let mut rows = vec![
        vec![
            "water in wood".to_owned(),
            water(it.moisture_from),
            water(it.moisture_to),
            String::new(),
            water(it.moisture_from),
        ],
        row("dead weight", &|s| mass(s.mass_kg), signed(Quantity::Mass, it.mass_change_kg, units)),
        row(
            "balance, from top",
            &|s| length(s.balance_m),
            signed(Quantity::Length, it.balance_change_m, units),
        ),
        row(
            "swing, kg m²",
            &|s| number(s.swing_moment_kg_m2, 4),
            format!("{}{} ± {:.4}", plus(swing), number(swing.value, 4), swing.sd),
        ),
        row(
            "picks up like",
            &|s| mass(s.pickup_weight_kg),
            signed(Quantity::Mass, it.pickup_weight_change_kg, units),
        ),
    ];
    // As many as its card times.
    let swings = card.map_or(10, |it| it.pendulum_swings);
    if let Some(time_s) = found.aim_ten_swings_s {
        let time_s = 0.1 * f64::from(swings) * time_s;
        let timed = if swings == 10 { "ten swings".to_owned() } else { format!("{swings} swings") };
        let blank = String::new;
        rows.push(vec![timed, blank(), blank(), blank(), plain(time_s, 2, "s")]);
    }
    let [from, to] = found.asked.airs.map(air);
    table(
        &["", &format!("weighed at\n{from}"), &format!("and then at\n{to}"), "change", "aim today"],
        &rows,
    )
}

fn further(found: &Found, units: Units) -> String {
    let it = &found.seasoned;
    let mass = |value: f64| spoken(Quantity::Mass, value, MASS_STEP_KG, units);
    let swollen = |shrinkage: f64| 100.0 * swelling(shrinkage, it.moisture_from, it.moisture_to);
    let (width, depth) = (swollen(RADIAL), swollen(TANGENTIAL));
    let (way, mind) = match width < 0.0 {
        true => ("narrower", ""),
        false => ("wider", ": mind the size limits"),
    };
    each_set_in([
        format!(
            "aim today: what scale, pencil and watch must show now for the first column to hold there, ± {}",
            spoken(Quantity::Mass, it.mass_change_kg.sd, it.mass_change_kg.sd, units)
        ),
        format!(
            "5 % more humidity there is worth {}; of the bat {} is willow",
            mass(it.mass_for_5_percent_kg),
            mass(it.willow_kg)
        ),
        format!(
            "the blade gets {} {way} and {} in depth, with rings that run from face to back{mind}",
            plain(width.abs(), 1, "%"),
            plain(depth.abs(), 1, "%")
        ),
    ])
}

/// What is the size's own and not this bat's.
fn estimated(given: &Given) -> Option<&'static str> {
    match given.estimated().as_slice() {
        [] => None,
        ["balance_m", ..] => Some(
            "balance, swing and pickup are those of the size: give --balance and --time for the bat's own",
        ),
        _ => Some("swing and pickup are those of the size: give --time for the bat's own"),
    }
}

fn limits(found: &Found) -> Option<String> {
    let limits = found.limits.as_ref()?;
    let out: Vec<String> =
        limits.there.iter().filter(|it| !it.2).map(|it| it.0.words().to_owned()).collect();
    let there = match out.as_slice() {
        [] => "A bat that meets the card today still does there".to_owned(),
        _ => format!("A bat that meets the card today no longer does there: {}", listed(&out)),
    };
    Some(format!(
        "{there}. In a year that swings evenly from one of these airs to the other and back, the bat following at once (an assumption), it is within all limits for {} of the time; made to the aim of today, for {}",
        percent(limits.year_made_to_card, 0),
        percent(limits.year_made_to_aim, 0)
    ))
}

fn course(found: &Found, units: Units) -> String {
    let row = |gone: &Gone| {
        let [low, usual, high] = gone.bare.map(|it| number(100.0 * it, 0));
        [
            plain(f64::from(gone.days), 0, if gone.days == 1 { "day" } else { "days" }),
            format!("{usual} % ({low} to {high})"),
            percent(gone.oiled, 0),
            spoken(Quantity::Mass, found.mass_after_kg(gone), MASS_STEP_KG, units),
        ]
    };
    let kind = if found.asked.oiled { "oiled" } else { "bare" };
    let [quick, usual, slow] = found.time_constants_s.map(|it| number(it / DAY_S, 0));
    let heads = ["in the new air", "bare", "oiled", &format!("weighs, {kind}")];
    let constant =
        format!("time constant of the last part {usual} days ({quick} to {slow}), an assumption");
    "How much of the change has come:\n".to_owned()
        + &table(&heads, found.course.iter().map(row))
        + &set_in(&constant)
        + "\n"
}

fn pressing(found: &Found) -> Option<String> {
    let (asked, pressed) = found.pressing.as_ref()?;
    let millimetres = |metres: f64, digits: usize| plain(1000.0 * metres, digits, "mm");
    Some(format!(
        "Pressed back by {}, a face {} denser than the willow ({:.0} kg/m³) is squeezed {} deep. That moves the centre of the bat {} to the back and the swing moment by {} kg m²: nearly nothing, for no wood is lost and none moves along the bat. {PRACTICE}",
        millimetres(asked.depth_m, 1),
        percent(asked.denser, 0),
        pressed.face_kg_m3,
        millimetres(pressed.layer_m, 0),
        millimetres(-pressed.com_change_m, 2),
        number(pressed.swing_moment_change_kg_m2, 6),
    ))
}
