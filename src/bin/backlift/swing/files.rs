//! The swing as files: its series over time, and a picture of its arc.

use backlift::drawing::arc::{ArcMoment, ArcPicture, svg};
use backlift::drawing::palette::LIGHT;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::player::joints::JOINTS;
use backlift::questions::swung::Swung;
use backlift::swing::observed::Moment;
use backlift::units::Units;

use super::told::sentence;
use crate::beside::Beside;
use crate::written::add_picture;

/// Size of the picture, px.
const PICTURE: [f64; 2] = [1120.0, 560.0];
/// Steps of the series between two bats of the picture.
const EVERY: usize = 6;

pub fn add(
    folder: &mut Folder,
    swung: &Swung<'_>,
    beside: &Beside,
    units: Units,
) -> Result<(), Fault> {
    let name = &swung.stroke.name;
    folder.add(&format!("swing-{name}.csv"), csv(&swung.seen.series).as_bytes())?;
    let picture = svg(&arc(swung, beside, units), &LIGHT, PICTURE[0], PICTURE[1]);
    add_picture(folder, &format!("swing-{name}"), &picture)
}

fn arc(swung: &Swung<'_>, beside: &Beside, units: Units) -> ArcPicture {
    let series = &swung.seen.series;
    let met = &swung.seen.contact;
    // Counted back from the instant nearest to the ball, so that the last bat drawn meets it.
    let off = |it: &Moment| (it.t_s - met.time_s).abs();
    let last = match met.reached {
        true => (0..series.len()).min_by(|&a, &b| off(&series[a]).total_cmp(&off(&series[b]))),
        false => series.len().checked_sub(1),
    };
    let mut moments: Vec<ArcMoment> = last
        .map(|last| (0..=last).rev().step_by(EVERY))
        .into_iter()
        .flatten()
        .filter_map(|i| series.get(i))
        .map(|it| ArcMoment {
            t_s: it.t_s,
            handle_top_W: it.handle_top_W,
            toe_W: it.toe_W,
            contact_point_W: it.contact_W,
        })
        .collect();
    moments.reverse();
    let contact = met.reached.then(|| moments.len().saturating_sub(1));
    ArcPicture {
        sentence: beside.sentence(&sentence(swung, units).replace('\n', " ")),
        bat: swung.bat,
        moments,
        contact,
    }
}

/// One line an instant, the units in the heads. Stations and vectors in the world: x to the bowler, z up, from the
/// ground. A hand's couple is about its own point on the handle.
fn csv(series: &[Moment]) -> String {
    let mut out = String::from("t_s,bat_speed_m_s,path_error_m");
    let axes = |what: &str, unit: &str| {
        ["x", "y", "z"].map(|axis| format!(",{what}_{axis}{unit}")).concat()
    };
    for point in ["handle_top", "contact_point", "toe"] {
        out += &axes(point, "_m");
    }
    out += &axes("face", "");
    out += ",force_top_n,force_bottom_n,couple_top_n_m";
    for (what, unit) in [("angle", "_rad"), ("torque", "_n_m"), ("share", "")] {
        out += &joints(what, unit);
    }
    out += &joints("rate", "_rad_s");
    out += &axes("pelvis", "_m");
    for hand in ["top", "bottom"] {
        out += &axes(&format!("force_{hand}"), "_n");
        out += &axes(&format!("couple_{hand}"), "_n_m");
    }
    out.push('\n');
    for it in series {
        let mut row = vec![it.t_s, it.bat_speed_m_s, it.path_error_m];
        for v in [it.handle_top_W, it.contact_W, it.toe_W, it.face_W] {
            row.extend(v.to_array());
        }
        row.extend([it.hands.top, it.hands.bottom].map(|hand| hand.force_W.length()));
        row.push(it.hands.top.couple_W.length());
        row.extend(it.q);
        row.extend(it.torque_n_m);
        row.extend(it.share);
        row.extend(it.rate_rad_s);
        row.extend(it.pelvis_W.to_array());
        for hand in [it.hands.top, it.hands.bottom] {
            row.extend(hand.force_W.to_array());
            row.extend(hand.couple_W.to_array());
        }
        let row: Vec<String> = row.iter().map(|it| format!("{it:.9}")).collect();
        out += &(row.join(",") + "\n");
    }
    out
}

fn joints(what: &str, unit: &str) -> String {
    JOINTS.iter().map(|it| format!(",{}_{what}{unit}", it.name)).collect()
}
