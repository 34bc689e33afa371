//! Free bending: a uniform bar and a wedge in closed form, a bat by second differences.

use crate::bat::beam::{BeamSection, Mode, Tip, free_modes};
use crate::files::reference;
use crate::files::reference::bent_beam::Wedge;
use crate::validation::{Accept, CheckFault, Checked, Row};

/// Elements of the closed forms.
const ELEMENTS: usize = 24;
/// Frequencies of the closed forms: a ten-thousandth.
const CLOSED: Accept = Accept::Share(1e-4);
/// The bat by another way of dividing it up: a five-hundredth.
const DIFFERENCES: Accept = Accept::Share(2e-3);
/// Roots of cos x · cosh x = 1. Source: Timoshenko & Young, Vibration Problems in Engineering (from memory,
/// high).
const FREE_FREE: [f64; 3] = [4.730_040_745, 7.853_204_624, 10.995_607_838];
/// Nodes of the first mode from either end as a share of the length (same source).
const FIRST_NODE: f64 = 0.224_158;

pub(super) fn check() -> Result<Checked, CheckFault> {
    let reference = reference::bent_beam()?;
    let mut rows = uniform();
    rows.extend(wedge(&reference.wedge, &reference.made_by));
    let modes = reference.shape.bending_modes(reference.moduli, 2);
    let source = format!("second differences on 4000 cells, {}", reference.made_by);
    rows.extend(frequencies("bat", &source, &reference.frequency_hz, &modes, DIFFERENCES));
    if let (Some(ours), Some(theirs)) = (modes.first(), reference.nodes_m.first()) {
        for (end, ours, theirs) in [
            ("handle", ours.nodes_m.first(), theirs.first()),
            ("blade", ours.nodes_m.last(), theirs.last()),
        ] {
            if let (Some(ours), Some(theirs)) = (ours, theirs) {
                let what = format!("bat: node of the first bending in the {end}");
                let accept = Accept::Within(1e-3);
                rows.push(Row::compared(what, source.as_str(), "m", *theirs, *ours, accept));
            }
        }
    }
    Ok(rows.into())
}

fn frequencies(
    what: &str,
    source: &str,
    theirs_hz: &[f64],
    ours: &[Mode],
    accept: Accept,
) -> Vec<Row> {
    let pairs = theirs_hz.iter().zip(ours).enumerate();
    pairs
        .map(|(n, (theirs_hz, ours))| {
            let what = format!("{what}: free bending, frequency {}", n + 1);
            Row::compared(what, source, "Hz", *theirs_hz, ours.frequency_hz, accept)
        })
        .collect()
}

fn even(length_m: f64) -> Vec<f64> {
    (0..=ELEMENTS).map(|n| length_m * n as f64 / ELEMENTS as f64).collect()
}

fn uniform() -> Vec<Row> {
    let (length_m, EI_n_m2, mass_kg_m): (f64, f64, f64) = (0.8, 900.0, 1.4);
    let modes =
        free_modes(&even(length_m), &|_| BeamSection { EI_n_m2, mass_kg_m }, Tip::default(), 3);
    let source = "closed form of a free bar: Timoshenko & Young (from memory, high)";
    let theirs_hz = FREE_FREE.map(|root| {
        let share = root / length_m;
        share * share * libm::sqrt(EI_n_m2 / mass_kg_m) / std::f64::consts::TAU
    });
    let mut rows = frequencies("uniform bar", source, &theirs_hz, &modes, CLOSED);
    if let Some(node) = modes.first().and_then(|it| it.nodes_m.first()) {
        let what = "uniform bar: node of the first bending, share of the length";
        let ours = node / length_m;
        rows.push(Row::compared(what, source, "", FIRST_NODE, ours, Accept::Within(1e-4)));
    }
    rows
}

fn wedge(it: &Wedge, made_by: &str) -> Vec<Row> {
    let [from_m, to_m] = it.thickness_m;
    let section = |x: f64| {
        let thickness_m = from_m + (to_m - from_m) * x / it.length_m;
        let cube = thickness_m * thickness_m * thickness_m;
        BeamSection {
            EI_n_m2: it.modulus_pa * it.width_m * cube / 12.0,
            mass_kg_m: it.density_kg_m3 * it.width_m * thickness_m,
        }
    };
    let count = it.frequency_hz.len();
    let modes = free_modes(&even(it.length_m), &section, Tip::default(), count);
    let source = format!("closed form in Bessel functions, {made_by}");
    frequencies("wedge", &source, &it.frequency_hz, &modes, CLOSED)
}
