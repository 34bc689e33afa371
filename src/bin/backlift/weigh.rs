//! `backlift weigh`: bats from the bench.

use backlift::bat::figures::WeighedBat;
use backlift::bat::laws::{Breach, Dimension, LawCheck, Verdict};
use backlift::bat::notes::EstimatedFigure;
use backlift::comparison::difference::difference;
use backlift::uncertain::{Uncertain, independent_sd};
use backlift::units::{Quantity, Units, spoken};
use serde_json::{Value, json};

use crate::bat_figure::{
    BALANCE, DEAD_WEIGHT, HOLD_MOMENT, LENGTH, PERCUSSION, PICKUP_WEIGHT, SWING_MOMENT,
    TWIST_MOMENT, breach_words,
};
use crate::beside::Beside;
use crate::figure::{ACROSS_SIZES, ESTIMATED, either, listed, of_several_sizes, percent};
use crate::given::{ScenarioArgs, ShowArgs};
use crate::json::joined;
use crate::outcome::{Outcome, Stop};
use crate::paragraph::{each_set_in, paragraph};
use crate::table::{Row, parted, side_by_side};
use crate::written::say;

/// Weigh up bats: dead weight, balance, pickup, sweet spot, and the size check
///
/// From scale weight, length, balance point and the time of ten pendulum swings. What was not measured
/// is estimated from the size, and marked.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift weigh --bat \"Old faithful\" --units si")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    /// Only this bat, by its label or its number from 0
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true)]
    bat: Option<String>,

    #[command(flatten)]
    show: ShowArgs,
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = args.given.load()?;
    let bats: Vec<&WeighedBat> = match args.bat.as_deref() {
        None => loaded.bats.iter().collect(),
        named => loaded.bats.get(loaded.bat(named)?).into_iter().collect(),
    };
    let beside = Beside::scenario(&loaded);
    say("weigh", &args.show, &beside, || figures(&bats), |units| told(&bats, units))
}

fn told(bats: &[&WeighedBat], units: Units) -> String {
    let mut out = paragraph(&sentence(bats, units)) + "\n\n";
    for bats in parted(bats) {
        out += &in_columns(bats, units);
        out.push('\n');
    }
    if of_several_sizes(bats.iter().copied()) {
        out += ACROSS_SIZES;
    }
    let estimates = estimates(bats);
    if !estimates.is_empty() {
        out += &format!("{ESTIMATED} not measured, and so less sure:\n{estimates}\n");
    }
    out += &law(bats, units);
    out += WORDS;
    out
}

const WORDS: &str = "
What the words mean:
  ±               one standard deviation: two times in three the truth is nearer
  swing moment    how hard the bat is to get moving about the hands. What an
                  ounce costs a swing hangs on where it sits: least at the top
                  of the handle, most at the toe, in no stroke quite as the
                  scale or the swing moment alone would say (`backlift pickup`
                  says how much in each)
  picks up like   the scale weight of the standard bat of this size with the
                  same swing moment
  hold moment     what the wrists carry when the bat is held out level
  twist moment    how well the face stays straight when the ball hits its edge
  sweet spot      a hit there does not jar the top hand (centre of percussion)
";

/// Who is easiest and who is hardest to get moving, or how one bat picks up.
fn sentence(bats: &[&WeighedBat], units: Units) -> String {
    let swing = |it: &&&WeighedBat| it.swing_moment_kg_m2.value;
    let by_swing = |a: &&&WeighedBat, b: &&&WeighedBat| swing(a).total_cmp(&swing(b));
    let (Some(light), Some(heavy)) = (bats.iter().min_by(by_swing), bats.iter().max_by(by_swing))
    else {
        return String::new();
    };
    let label = |it: &WeighedBat| it.reading.label.clone();
    if bats.len() == 1 {
        let (mass, pickup) = (light.mass_kg, light.pickup_weight_kg);
        let kind = if pickup.value < mass.value { "lighter" } else { "heavier" };
        let sure = (pickup.value - mass.value).abs() > independent_sd(&[pickup.sd, mass.sd]);
        return format!(
            "{} weighs {} and picks up like {}{}",
            label(light),
            spoken(Quantity::Mass, mass.value, mass.sd, units),
            spoken(Quantity::Mass, pickup.value, pickup.sd, units),
            if sure { format!(": {kind} than its dead weight says") } else { String::new() }
        );
    }
    let is_real = |a: &WeighedBat, b: &WeighedBat| {
        difference(a.swing_moment_kg_m2, b.swing_moment_kg_m2).real
    };
    let more = percent(swing(&heavy) / swing(&light) - 1.0, 0);
    let (lightest, heaviest) = (label(light), label(heavy));
    if !is_real(light, heavy) {
        return format!(
            "Too close to call which is easier to get moving: {heaviest} has {more} more swing moment than {lightest}, which is within the measuring error"
        );
    }
    let like = |it: &WeighedBat| {
        let all = bats.iter().filter(|other| !is_real(it, other));
        all.map(|it| label(it)).collect::<Vec<String>>()
    };
    let (easy, hard) = (like(light), like(heavy));
    if easy.len() == 1 && hard.len() == 1 {
        return format!(
            "{lightest} is the easiest to get moving, {heaviest} the hardest: {more} more swing moment, which is more than the measuring error"
        );
    }
    let easy = match easy.as_slice() {
        [one] => format!("{one} is the easiest to get moving"),
        all => format!("Too close to call which is the easiest to get moving, {}", either(all)),
    };
    let hard = match hard.as_slice() {
        [one] => format!("{one} is the hardest"),
        all => format!("too close to call which is the hardest, {}", either(all)),
    };
    format!(
        "{easy}; {hard}: {heaviest} has {more} more swing moment than {lightest}, which is more than the measuring error"
    )
}

fn in_columns(bats: &[&WeighedBat], units: Units) -> String {
    let length = |it: Uncertain| LENGTH.shown(it, units);
    let rows: [Row<'_, WeighedBat>; 11] = [
        ("size", &|it| it.size.clone()),
        (DEAD_WEIGHT.words, &|it| DEAD_WEIGHT.shown(it.mass_kg, units)),
        (LENGTH.words, &|it| length(it.length_m)),
        (BALANCE.words, &|it| BALANCE.shown(it.balance_m, units)),
        ("balance from the toe", &|it| length(it.from_toe_m(it.balance_m))),
        (SWING_MOMENT.words, &|it| SWING_MOMENT.shown(it.swing_moment_kg_m2, units)),
        (PICKUP_WEIGHT.words, &|it| PICKUP_WEIGHT.shown(it.pickup_weight_kg, units)),
        (HOLD_MOMENT.words, &|it| HOLD_MOMENT.shown(it.hold_moment_n_m, units)),
        (TWIST_MOMENT.words, &|it| TWIST_MOMENT.shown(it.twist_moment_kg_m2, units)),
        ("sweet spot from the toe", &|it| length(it.from_toe_m(it.percussion_m))),
        ("within the Laws", &|it| verdict(it.law.verdict).replace('_', " ")),
    ];
    let named: Vec<(&str, &WeighedBat)> =
        bats.iter().map(|it| (it.reading.label.as_str(), *it)).collect();
    side_by_side(&named, &rows)
}

fn estimates(bats: &[&WeighedBat]) -> String {
    let mut lines: Vec<(String, Vec<String>)> = Vec::new();
    for bat in bats {
        for it in &bat.estimated {
            let line = format!("{} (± {}), {}", it.what, percent(it.relative_sd, 0), it.from);
            match lines.iter_mut().find(|(known, _)| *known == line) {
                Some((_, labels)) => labels.push(bat.reading.label.clone()),
                None => lines.push((line, vec![bat.reading.label.clone()])),
            }
        }
    }
    each_set_in(lines.iter().map(|(line, labels)| format!("{}: {line}", listed(labels))))
}

/// The verdict with its edition and grounds.
fn law(bats: &[&WeighedBat], units: Units) -> String {
    let Some(first) = bats.first() else { return String::new() };
    let ground = |bat: &&WeighedBat| format!("{}: {}", bat.reading.label, grounds(&bat.law, units));
    paragraph(&format!("Size check: {}", first.law.edition))
        + "\n"
        + &each_set_in(bats.iter().map(ground))
}

fn grounds(law: &LawCheck, units: Units) -> String {
    let words =
        |it: &[Dimension]| listed(&it.iter().map(|it| it.words().to_owned()).collect::<Vec<_>>());
    match law.verdict {
        Verdict::Yes => "yes, in length, width, depth and edge".to_owned(),
        Verdict::NotMeasured => {
            format!("no breach found, but {} not measured", words(&law.not_measured))
        }
        Verdict::No => {
            let breaches: Vec<String> =
                law.breaches.iter().map(|it| breach_words(it, units)).collect();
            format!("no: {}", breaches.join("; "))
        }
    }
}

fn verdict(it: Verdict) -> &'static str {
    match it {
        Verdict::Yes => "yes",
        Verdict::No => "no",
        Verdict::NotMeasured => "not_measured",
    }
}

fn figures(bats: &[&WeighedBat]) -> Value {
    json!({ "bats": bats.iter().map(|it| row(it)).collect::<Value>() })
}

fn row(bat: &WeighedBat) -> Value {
    let breach = |it: &Breach| {
        json!({
            "dimension": it.dimension.words(),
            "measured_m": it.measured_m,
            "limit_m": it.limit_m,
        })
    };
    let estimated = |it: &EstimatedFigure| {
        json!({
            "what": it.what,
            "from": it.from,
            "relative_sd": it.relative_sd,
        })
    };
    joined([
        json!({ "label": bat.reading.label, "size": bat.size }),
        LENGTH.json(bat.length_m),
        DEAD_WEIGHT.json(bat.mass_kg),
        BALANCE.json(bat.balance_m),
        SWING_MOMENT.json(bat.swing_moment_kg_m2),
        json!({ "swing_moment_is_estimated": bat.swing_moment_kg_m2.is_estimated() }),
        HOLD_MOMENT.json(bat.hold_moment_n_m),
        TWIST_MOMENT.json(bat.twist_moment_kg_m2),
        PERCUSSION.json(bat.percussion_m),
        PICKUP_WEIGHT.json(bat.pickup_weight_kg),
        json!({
            "com_B_m": bat.bat.com_B().to_array(),
            "inertia_com_B_kg_m2": bat.bat.I_Com_B().to_cols_array_2d(),
            "legal": verdict(bat.law.verdict),
            "edition": bat.law.edition,
            "breaches": bat.law.breaches.iter().map(breach).collect::<Value>(),
            "estimated": bat.estimated.iter().map(estimated).collect::<Value>(),
            "warnings": bat.warnings.iter().map(ToString::to_string).collect::<Value>(),
        }),
    ])
}
