//! Stature and body mass index by age.

use super::ages_y;
use crate::measurement::person::Sex;
use crate::player::growth::{body_mass_index, median_stature_m, stature_z};
use crate::validation::{Accept, CheckFault, Checked, Curve, Reading, Row};

const WHO: &str =
    "WHO Growth Reference 2007 (de Onis et al. 2007, Bull WHO 85:660; read second-hand)";
const ANSUR: &str = "ANSUR II, 4082 men and 1986 women (computed from its records)";

/// Age; stature: median and one standard deviation above, m; body mass index: median, one standard
/// deviation below and above, kg/m². Half-years, which the model interpolates between its whole years.
type HalfYear = [f64; 6];

const BOYS: [HalfYear; 11] = [
    [8.5, 1.299_300, 1.3576, 15.8855, 14.50, 17.66],
    [9.5, 1.351_829, 1.4138, 16.2333, 14.76, 18.18],
    [10.5, 1.403_948, 1.4695, 16.6786, 15.11, 18.81],
    [11.5, 1.459_891, 1.5290, 17.2236, 15.54, 19.54],
    [12.5, 1.524_425, 1.5970, 17.8704, 16.06, 20.38],
    [13.5, 1.596_962, 1.6727, 18.6148, 16.68, 21.30],
    [14.5, 1.663_050, 1.7407, 19.3937, 17.33, 22.23],
    [15.5, 1.711_468, 1.7895, 20.1427, 17.95, 23.12],
    [16.5, 1.742_251, 1.8194, 20.8287, 18.52, 23.91],
    [17.5, 1.757_672, 1.8333, 21.4354, 19.02, 24.60],
    [18.5, 1.763_851, 1.8377, 21.9585, 19.44, 25.19],
];
const GIRLS: [HalfYear; 11] = [
    [8.5, 1.294_975, 1.3545, 15.8738, 14.26, 18.01],
    [9.5, 1.355_410, 1.4180, 16.3425, 14.63, 18.67],
    [10.5, 1.417_892, 1.4832, 16.9136, 15.08, 19.43],
    [11.5, 1.481_804, 1.5493, 17.6088, 15.64, 20.32],
    [12.5, 1.540_041, 1.6091, 18.3986, 16.28, 21.31],
    [13.5, 1.582_997, 1.6525, 19.1931, 16.93, 22.28],
    [14.5, 1.608_927, 1.6781, 19.9070, 17.52, 23.15],
    [15.5, 1.621_880, 1.6902, 20.4769, 17.98, 23.83],
    [16.5, 1.627_165, 1.6945, 20.8863, 18.30, 24.32],
    [17.5, 1.629_649, 1.6961, 21.1586, 18.50, 24.65],
    [18.5, 1.631_279, 1.6970, 21.3480, 18.63, 24.87],
];

pub(super) fn check() -> Result<Checked, CheckFault> {
    let mut out = Checked::default();
    for (sex, words, table) in [(Sex::Male, "boys", &BOYS), (Sex::Female, "girls", &GIRLS)] {
        out.rows.extend(rows(sex, words, table));
        out.curves.push(curve(sex, words, table));
    }
    for (sex, words, mean, sd) in
        [(Sex::Male, "men", 1.7562, 0.0686), (Sex::Female, "women", 1.6285, 0.0642)]
    {
        let what = format!("{words} of 19 to 40: stature taken as usual");
        let (ours, accept) = (median_stature_m(sex, 30.0), Accept::Deviations(0.5));
        out.rows.push(Row::compared(what, ANSUR, "m", (mean, Some(sd)), ours, accept));
    }
    out.rows.push(Row::no_data(
        "body mass index of adults taken as usual",
        "kg/m²",
        Some(body_mass_index(Sex::Male, 30.0).0),
        "no table was read; 24 ± 3.3 from 30 years on is an assumption, and a scale replaces it",
    ));
    Ok(out)
}

fn rows(sex: Sex, words: &str, table: &[HalfYear]) -> [Row; 4] {
    let largest = |of: &dyn Fn(&HalfYear) -> f64| table.iter().map(of).fold(0.0, f64::max);
    let row = |what: &str, unit, ours, accept| {
        let what = format!("{words} of 8 to 19: {what}, largest error at half-years");
        Row::compared(what, WHO, unit, 0.0, ours, accept)
    };
    let stature = largest(&|r| (median_stature_m(sex, r[0]) / r[1] - 1.0).abs());
    let z = largest(&|r| (stature_z(sex, r[0], r[2]) - 1.0).abs());
    let bmi = largest(&|r| (body_mass_index(sex, r[0]).0 / r[3] - 1.0).abs());
    let spread = largest(&|r| (body_mass_index(sex, r[0]).1 / (0.5 * (r[5] - r[4])) - 1.0).abs());
    [
        row("median stature", "share", stature, Accept::Within(0.002)),
        row("a stature one SD up", "SD", z, Accept::Within(0.05)),
        row("median body mass index", "share", bmi, Accept::Within(0.01)),
        row("spread of body mass index", "share", spread, Accept::Within(0.05)),
    ]
}

fn curve(sex: Sex, words: &str, table: &[HalfYear]) -> Curve {
    Curve {
        title: format!("Stature by age, {words}"),
        x_label: "age (years)".into(),
        y_label: "stature (m)".into(),
        ours: ages_y().map(|age_y| (age_y, median_stature_m(sex, age_y))).collect(),
        theirs: table.iter().map(|r| Reading { x: r[0], y: r[1], sd: Some(r[2] - r[1]) }).collect(),
        source: WHO.into(),
    }
}
