//! The map of the face and the hands' force over time, as pictures.

use backlift::drawing::axis::Axis;
use backlift::drawing::chart::{self, Chart, Curve, Point};
use backlift::drawing::face_map::{FacePicture, svg};
use backlift::drawing::palette::LIGHT;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::impact::strike::FELT_S;
use backlift::questions::hit::Found;
use backlift::units::{Quantity, Units, spoken};

use super::told::{HANDS, sentence, swing_words};
use crate::beside::Beside;
use crate::figure::speed_unit;
use crate::written::add_picture;

/// Size of the chart, px.
const CHART: [f64; 2] = [900.0, 420.0];

pub fn add(folder: &mut Folder, it: &Found, beside: &Beside, units: Units) -> Result<(), Fault> {
    if let Some(face) = face(it, beside, units) {
        add_picture(folder, "face", &svg(&face, &LIGHT).map_err(Fault::new)?)?;
    }
    let chart = chart::svg(&hands(it, beside), &LIGHT, CHART[0], CHART[1]);
    add_picture(folder, "hands", &chart)
}

fn face(it: &Found, beside: &Beside, units: Units) -> Option<FacePicture> {
    let map = it.map.as_ref()?;
    let (unit, per_m_s) = speed_unit(units);
    let parts = &it.hit.parts;
    Some(FacePicture {
        sentence: beside.sentence(&sentence(it, units)),
        value_label: format!(
            "speed of a ball of {} off the bat in {}, {unit}",
            spoken(Quantity::Speed, it.hit.ball_m_s, 0.3, units),
            swing_words(it)
        ),
        from_toe_m: map.from_top_m.iter().map(|top| parts.toe_m - top).collect(),
        half_width_m: map.half_width_m.clone(),
        across_share: map.across_share.clone(),
        value: map.exit_m_s.iter().map(|m_s| per_m_s * m_s).collect(),
        hit_m: [it.from_toe_m, it.hit.across_m],
    })
}

fn hands(it: &Found, beside: &Beside) -> Chart {
    let moments = &it.doubted.struck.moments;
    let curve = |n: usize| Curve {
        bat: n,
        label: HANDS[n].to_owned(),
        points: moments
            .iter()
            .filter(|at| at.t_s <= FELT_S)
            .map(|at| Point { x: 1e3 * at.t_s, y: at.hands_n[n], sd: 0.0 })
            .collect(),
    };
    let forces = moments.iter().flat_map(|at| at.hands_n);
    Chart {
        sentence: beside
            .sentence("What each hand feels of the hit, over and above the swing's own load"),
        x: Axis { label: "time since first touch, ms".to_owned(), range: [0.0, 1e3 * FELT_S] },
        y: Axis::around("force on the hand the way the bat swings, N", forces, 10.0),
        curves: vec![curve(0), curve(1)],
    }
}
