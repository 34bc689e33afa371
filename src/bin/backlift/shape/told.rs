//! The shape in words.

use backlift::bat::completed::{Completed, Line};
use backlift::bat::shaped::ShapedBat;
use backlift::card::Figure;
use backlift::questions::shape::Worked;
use backlift::uncertain::Uncertain;
use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::to_card::{Answer, BrokenDemand, ToCard};

use crate::bat_figure::breach_words;
use crate::figure::{
    bare, either, listed, measured, number, percent, plain, with_doubt, yes_or_no,
};
use crate::paragraph::{each_set_in, paragraph, set_in};
use crate::sentences::wish;
use crate::table::{Row, side_by_side, table};

/// Everything, the sentence first.
pub fn told(worked: &Worked, units: Units) -> String {
    let mut out = match &worked.to {
        None => described(worked, units),
        Some((_, it)) => to_card(worked, it, units),
    };
    out += &laws(worked.chosen(), units);
    out + DOUBT[usize::from(!worked.completed().is_empty())] + LIMITS
}

/// What is in doubt of a bat described, and of one that was measured at some heights.
const DOUBT: [&str; 2] = [
    "
What the figures leave out:
  ±            only the density of the willow is in doubt here, and the stiffness
               of willow and cane for the ring; the shape is taken as described
",
    "
What the figures leave out:
  ±            the density of the willow is in doubt here, what was completed of
               the shape, and for the ring the stiffness of willow and cane; what
               was measured is taken as measured
",
];

const LIMITS: &str =
    "  rings at     a slender bat, free at both ends, without shear: some 4 % too high
  quiet place  node of that ring: a ball there does not set the blade ringing
";

fn described(worked: &Worked, units: Units) -> String {
    let bat = &worked.bat;
    let mass = |it: Uncertain| with_doubt(Quantity::Mass, it.value, it.sd, units);
    let sentence = format!(
        "{} weighs {} and picks up like {}",
        worked.loaded.title,
        mass(bat.mass_kg),
        mass(bat.pickup_weight_kg)
    );
    let mut out = paragraph(&sentence)
        + "\n\n"
        + &in_columns(&[("as described", bat)], None, true, units)
        + "\n";
    out += &completed(worked, units);
    if worked.middles.len() > 1 {
        let bats: Vec<(&str, &ShapedBat)> =
            worked.middles.iter().map(|(name, it)| (*name, it)).collect();
        out += "The swell moved by 30 mm at the same dead weight:\n";
        out += &in_columns(&bats, None, false, units);
        out += &(paragraph(&middle_cost(&worked.middles, units)) + "\n\n");
    }
    out
}

/// Where the blade was measured, and what its size's lines completed.
fn completed(worked: &Worked, units: Units) -> String {
    let completed = worked.completed();
    if completed.is_empty() {
        return String::new();
    }
    let length = |it: f64| spoken(Quantity::Length, it, 0.0, units);
    let stations = &worked.loaded.described.blade.stations;
    let heights: Vec<String> = stations.iter().map(|it| length(it.from_toe_m)).collect();
    let size = &worked.loaded.size.name;
    let mut out = paragraph(&format!(
        "Measured {} from the toe. What was not measured follows the lines of size {size}, scaled to what was; how far it may be off is an assumption and is in every ±:",
        listed(&heights)
    )) + "\n";
    let blade = &worked.bat.shape.blade;
    let from_toe = |it: f64| length((1.0 - it) * blade.length_m);
    let row = |it: &Completed| {
        let ([from, to], sd) = (it.stretch, it.most_sd());
        let where_ = match (from, to) {
            (0.0, 1.0) => "all along".to_owned(),
            (0.0, to) => format!("from the shoulder to {}", from_toe(to)),
            (from, 1.0) => format!("from {} to the toe", from_toe(from)),
            (from, to) => format!("{} to {}", from_toe(from), from_toe(to)),
        };
        let off = match it.line {
            Line::Camber => plain(1e3 * sd, 1, "mm"),
            _ => percent(sd, 1),
        };
        [it.line.words().to_owned(), where_, format!("± {off}")]
    };
    out += &table(&["the size's own", "from the toe", "at most"], completed.iter().map(row));
    out + "Measured at more heights, it is surer.\n\n"
}

/// What a low middle costs.
fn middle_cost(middles: &[(&'static str, ShapedBat)], units: Units) -> String {
    let (Some((_, high)), Some((_, low))) = (middles.first(), middles.last()) else {
        return String::new();
    };
    let more = low.swing_moment_kg_m2.value / high.swing_moment_kg_m2.value - 1.0;
    format!(
        "From the high middle to the low one the bat picks up {} heavier, {} more swing moment, at the same dead weight",
        spoken(
            Quantity::Mass,
            low.pickup_weight_kg.value - high.pickup_weight_kg.value,
            0.0,
            units
        ),
        percent(more, 1)
    )
}

fn to_card(worked: &Worked, it: &ToCard, units: Units) -> String {
    let size = &worked.loaded.size.name;
    let Some(first) = it.answers.first() else { return unmet(it, size, units) };
    let sentence = match it.answers.len() {
        1 => format!("One shape of size {size} meets the card"),
        n => format!("{n} shapes of size {size} meet the card: choose by edge, spine and middle"),
    };
    let mut out = paragraph(&sentence) + "\n\n";
    if let Some(wished) = &it.wished {
        out += &(paragraph(&wish::sentence(wished, &it.answers)) + "\n");
        out += &(set_in(&wish::rule()) + "\n\n");
    }
    let standard_m = worked.loaded.size.reference.swell_from_toe_m();
    let middle =
        it.wished.as_ref().map(|of| move |it: &ShapedBat| wish::of_one(it, standard_m, of));
    let middle = middle.as_ref().map(|it| ("middle", it as &dyn Fn(&ShapedBat) -> String));
    for three in it.answers.chunks(3) {
        let bats: Vec<(&str, &ShapedBat)> = three.iter().map(|it| (it.name, &it.bat)).collect();
        out += &(in_columns(&bats, middle, it.answers.len() == 1, units) + "\n");
    }
    out += &(paragraph(&chosen(worked, first, it, units)) + "\n\n");
    let met: Vec<String> = first.met.iter().map(|(it, _)| it.words().to_owned()).collect();
    out + &paragraph(&format!("Met: {}", listed(&met))) + "\n\n"
}

/// Which answer comes first, and why.
fn chosen(worked: &Worked, it: &Answer, all: &ToCard, units: Units) -> String {
    let away = &it.away;
    let mm = |value: f64| plain(1e3 * value.abs(), 1, "mm");
    let length = |value: f64| spoken(Quantity::Length, value.abs(), 0.0, units);
    let share = |value: f64| percent(value.abs(), 0);
    let differs: Vec<String> = [
        ("edges", away.edge_m, 5e-5, mm(away.edge_m), ["thicker", "thinner"]),
        ("spine", away.depth_m, 5e-5, mm(away.depth_m), ["higher", "lower"]),
        ("swell", away.swell_m, 5e-5, length(away.swell_m), ["higher", "lower"]),
        ("back", away.hollow, 5e-3, share(away.hollow), ["hollower", "fuller"]),
    ]
    .into_iter()
    .filter(|(_, value, least, ..)| value.abs() >= *least)
    .map(|(name, value, _, words, [more, less])| {
        format!("{name} {words} {}", if value > 0.0 { more } else { less })
    })
    .collect();
    let from = worked.carved_from();
    let of = all.answers.len();
    let nearest = match &all.wished {
        _ if of == 1 => format!("Against {from}"),
        None => format!("it is the nearest to {from}"),
        Some(wished) if wished.have_it > 0 => {
            format!("of those with the wished middle it is the nearest to {from}")
        }
        Some(_) => format!("it comes nearest to the wished middle. Against {from}"),
    };
    let nearest = match of {
        1 => nearest,
        _ => format!(
            "First, and what --out draws and writes, is \"{}\", 1 of {of}: {nearest}",
            it.name
        ),
    };
    format!("{nearest}: {}", listed(&differs))
}

fn unmet(it: &ToCard, size: &str, units: Units) -> String {
    let broken: Vec<String> = it.broken.iter().map(|it| it.figure.words().to_owned()).collect();
    let alone = it.broken.iter().any(|it| it.nearest.is_some());
    let sentence = match alone {
        true => format!(
            "No shape of size {size} meets the card. Giving way in {} would do",
            either(&broken)
        ),
        false => {
            format!("No shape of size {size} meets the card, nor comes near in any one demand")
        }
    };
    let mut out = paragraph(&sentence) + "\n";
    if let Some(first) = it.broken.first() {
        out += &(paragraph(&format!("What stands in the way: {}", first.why)) + "\n");
    }
    out.push('\n');
    let row = |it: &BrokenDemand| {
        let [low, high] = it.asked.tolerance;
        [
            it.figure.words().to_owned(),
            value(it.figure, it.asked.target, units),
            format!("{} to {}", value(it.figure, low, units), value(it.figure, high, units)),
            it.nearest.map_or_else(|| "none".to_owned(), |n| value(it.figure, n, units)),
        ]
    };
    let heads = ["", "asked", "limits", "nearest, the others as asked"];
    out += &table(&heads, it.broken.iter().map(row));
    if let Some(Answer { name, bat, .. }) = &it.nearest {
        out += &format!("\n{}", in_columns(&[(name, bat)], None, true, units));
    }
    out + "\n"
}

fn value(figure: Figure, it: f64, units: Units) -> String {
    match figure.about().quantity {
        Some(quantity) => spoken(quantity, it, 0.0, units),
        None => plain(it, figure.about().decimals, figure.about().unit),
    }
}

fn in_columns(
    bats: &[(&str, &ShapedBat)],
    middle: Option<Row<'_, ShapedBat>>,
    alone: bool,
    units: Units,
) -> String {
    let mm = |it: f64| plain(1e3 * it, 1, "mm");
    // Of several shapes in one wood the differences matter, and they are surer than the figures.
    let doubted = |quantity, it: Uncertain| match alone {
        true => measured(quantity, it, units),
        false => spoken(quantity, it.value, 0.0, units),
    };
    let from_toe = |bat: &ShapedBat, it: Uncertain| {
        doubted(Quantity::Length, Uncertain { value: bat.bat.length_m() - it.value, ..it })
    };
    let rows: [Row<'_, ShapedBat>; 13] = [
        ("dead weight", &|it| doubted(Quantity::Mass, it.mass_kg)),
        ("balance from the top", &|it| doubted(Quantity::Length, it.balance_m)),
        ("swing moment, kg m²", &|it| match alone {
            true => bare(it.swing_moment_kg_m2, 4),
            false => number(it.swing_moment_kg_m2.value, 4),
        }),
        ("picks up like", &|it| doubted(Quantity::Mass, it.pickup_weight_kg)),
        ("edges", &|it| mm(it.shape.blade.thickest_edge_m())),
        ("spine height", &|it| mm(it.shape.blade.deepest().map_or(0.0, |s| s.depth_m))),
        ("swell from the toe", &|it| {
            spoken(Quantity::Length, it.shape.swell_from_toe_m(), 0.0, units)
        }),
        ("hollow of the back", &|it| {
            percent(it.shape.blade.deepest().map_or(0.0, |s| s.hollow), 0)
        }),
        ("sweet spot from the toe", &|it| {
            let from_toe_m = it.bat.length_m() - it.percussion_m.value;
            spoken(Quantity::Length, from_toe_m, 0.0, units)
        }),
        ("quiet place from the toe", &|it| {
            it.bending_node_m.map_or_else(String::new, |n| from_toe(it, n))
        }),
        ("rings at, Hz", &|it| it.bending_hz.map_or_else(String::new, |n| bare(n, 0))),
        ("willow, kg/m³", &|it| number(it.shape.blade.density_kg_m3, 0)),
        ("within the Laws", &|it| yes_or_no(it.is_legal()).to_owned()),
    ];
    side_by_side(bats, &rows.into_iter().chain(middle).collect::<Vec<_>>())
}

/// What the Laws say of its sizes, its handle and its rubber, and whether the printed gauge passes.
fn laws(bat: &ShapedBat, units: Units) -> String {
    let mut out = paragraph(&format!("Size check: {}", bat.law.edition)) + "\n";
    out += &each_set_in(bat.law.breaches.iter().map(|it| breach_words(it, units)));
    if !bat.handle_share_allowed {
        out += &(set_in("handle longer than the share of the bat that is allowed") + "\n");
    }
    if let Some(share) = bat.rubber_share.filter(|_| !bat.rubber_share_allowed) {
        let of = match bat.law_type {
            Some(it) => format!("a bat of type {}", it.letter()),
            None => "bats of types A and B; if it is of type C or D, say so (law_type)".to_owned(),
        };
        let words = format!(
            "{} of the handle is rubber, more than is allowed: {} in {of}",
            percent(share, 0),
            percent(bat.rubber_share_limit, 0)
        );
        out += &(set_in(&words) + "\n");
    }
    let gauge = format!(
        "printed gauge, its opening from memory: {} {} to spare {} from the toe",
        if bat.gauge.passes() { "passes with" } else { "sticks, with" },
        plain(1e3 * bat.gauge.room_m, 1, "mm"),
        spoken(Quantity::Length, bat.gauge.tightest_from_toe_m, 0.0, units)
    );
    out + &set_in(&gauge) + "\n"
}
