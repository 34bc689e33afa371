//! Stroke files (RON) and the strokes that come with the program.

use crate::frames::DVec3;
use crate::measurement::plan::InningsPlan;
use crate::player::joints::JOINT_COUNT;
use crate::stroke::joint_path::{CONTROL_COUNT, JointPath};
use crate::stroke::key_spline::KeySpline;
use crate::stroke::world_turn::parted;
use crate::stroke::{Key, Stroke, Tolerance};
use include_dir::{Dir, include_dir};
use serde::Deserialize;
use serde::de::DeserializeOwned;

/// Version of the stroke file that this program writes.
pub const SCHEMA: &str = "backlift/stroke/2";
/// Version before hips and spine were two joints; read as well.
const IN_THE_WORLD: &str = "backlift/stroke/1";

/// Which version a file is of.
#[derive(Deserialize)]
struct Version {
    schema: String,
}

/// A stroke as its file has it; angles in degrees. A row of the joint path has as many angles as its version.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct StrokeFile<Row> {
    #[serde(rename = "schema")]
    _schema: String,
    name: String,
    source: String,
    oblique_deg: f64,
    roll_deg: f64,
    #[serde(default)]
    bottom_hand_holds: bool,
    #[serde(default)]
    answers_short_ball: bool,
    contact_from_toe_m: f64,
    plan_time_s: f64,
    tolerance: ToleranceInFile,
    keys: Vec<KeyInFile>,
    #[serde(default = "Vec::new")]
    joint_path_rad: Vec<Row>,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct ToleranceInFile {
    position_m: f64,
    face_deg: f64,
    line_deg: f64,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct KeyInFile {
    p: f64,
    grip: (f64, f64, f64),
    toe: (f64, f64, f64),
    face: (f64, f64, f64),
    trunk_deg: (f64, f64, f64),
    pelvis: (f64, f64, f64),
    pelvis_turn_deg: f64,
}

/// Why a text is not a stroke: where it is broken, or what no stroke can have, and the mend.
#[derive(Clone, Debug, thiserror::Error)]
#[error("{0}")]
pub struct StrokeFault(pub(super) String);

/// The files that come with the program: a stroke in each, and in the folder `paths` many joint paths of one.
pub(super) static BUILT_IN: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/../assets/strokes");

/// Names of the strokes that come with the program, as their files are called: those of the usual mix first.
pub fn built_in_names() -> Vec<&'static str> {
    let usual = InningsPlan::default();
    let place = |name: &str| usual.strokes().position(|it| it == name).unwrap_or(usize::MAX);
    let mut names: Vec<&str> =
        BUILT_IN.files().filter_map(|it| it.path().file_stem()?.to_str()).collect();
    names.sort_by_key(|name| (place(name), *name));
    names
}

/// Strokes that come with the program, in the order of their names.
pub fn built_in() -> Result<Vec<Stroke>, StrokeFault> {
    let text = |name: &str| BUILT_IN.get_file(format!("{name}.ron"))?.contents_utf8();
    built_in_names().into_iter().filter_map(text).map(read).collect()
}

/// Strokes of the usual mix.
pub fn usual() -> Result<Vec<Stroke>, StrokeFault> {
    let mix = InningsPlan::default();
    Ok(built_in()?.into_iter().filter(|it| mix.mix_share(&it.name) > 0.0).collect())
}

/// Reads a stroke with its joint path.
pub fn read(text: &str) -> Result<Stroke, StrokeFault> {
    let stroke = read_keys(text)?;
    if stroke.joint_path.control_rad.iter().flatten().all(|q| *q == 0.0) {
        return Err(StrokeFault(format!(
            "stroke `{}` has keys but no joint path: make one with `backlift stroke FILE NEW`",
            stroke.name
        )));
    }
    Ok(stroke)
}

/// Reads a stroke whose joint path may still be missing; it is then zero throughout.
pub fn read_keys(text: &str) -> Result<Stroke, StrokeFault> {
    let version: Version = parsed(text)?;
    match version.schema.as_str() {
        SCHEMA => stroke(parsed(text)?, |_, control_rad| JointPath { control_rad: *control_rad }),
        IN_THE_WORLD => stroke(parsed(text)?, parted),
        other => {
            Err(StrokeFault(format!("schema `{other}` is neither `{SCHEMA}` nor `{IN_THE_WORLD}`")))
        }
    }
}

pub(super) fn parsed<T: DeserializeOwned>(text: &str) -> Result<T, StrokeFault> {
    ron::from_str(text).map_err(|e| {
        let start = e.span.start;
        StrokeFault(format!("line {}, column {}: {}", start.line, start.col, e.code))
    })
}

/// A stroke of either version; `path` makes the joint path of today from the rows of the file.
fn stroke<const N: usize>(
    file: StrokeFile<[f64; N]>,
    path: impl Fn(&KeySpline, &[[f64; N]; CONTROL_COUNT]) -> JointPath,
) -> Result<Stroke, StrokeFault> {
    let fault = |what: String| Err(StrokeFault(what));
    let p: Vec<f64> = file.keys.iter().map(|k| k.p).collect();
    if p.len() < 3
        || p[0] != 0.0
        || p[p.len() - 1] < 1.21
        || p.windows(2).any(|w| !matches!(w[0].partial_cmp(&w[1]), Some(core::cmp::Ordering::Less)))
    {
        return fault(
            "keys must rise from p: 0.0 to p: 1.21 or beyond, three of them at least".into(),
        );
    }
    let keys: Vec<Key> = file.keys.iter().map(key).collect();
    let finite = file.joint_path_rad.iter().flatten().all(|q| q.is_finite())
        && keys.iter().all(|k| {
            k.grip.is_finite()
                && k.pelvis.is_finite()
                && k.toe.is_finite()
                && k.toe.length() > 0.1
                && k.face.is_finite()
                && k.toe.cross(k.face).length() > 0.1 * k.toe.length() * k.face.length()
        });
    if !finite {
        return fault("every number must be finite, and toe and face must not be parallel".into());
    }
    let joint_path = match file.joint_path_rad.len() {
        0 => JointPath { control_rad: [[0.0; JOINT_COUNT]; CONTROL_COUNT] },
        _ => match <[_; CONTROL_COUNT]>::try_from(file.joint_path_rad) {
            Ok(rows) => path(&KeySpline::new(&keys), &rows),
            Err(rows) => {
                return fault(format!(
                    "joint_path_rad has {} rows, {CONTROL_COUNT} are needed",
                    rows.len()
                ));
            }
        },
    };
    Ok(Stroke {
        name: file.name,
        source: file.source,
        oblique_rad: file.oblique_deg.to_radians(),
        roll_rad: file.roll_deg.to_radians(),
        bottom_hand_holds: file.bottom_hand_holds,
        answers_short_ball: file.answers_short_ball,
        contact_from_toe_m: file.contact_from_toe_m,
        plan_time_s: file.plan_time_s,
        tolerance: Tolerance {
            position_m: file.tolerance.position_m,
            face_rad: file.tolerance.face_deg.to_radians(),
            line_rad: file.tolerance.line_deg.to_radians(),
        },
        keys,
        joint_path,
    })
}

fn key(k: &KeyInFile) -> Key {
    let v = |t: (f64, f64, f64)| DVec3::new(t.0, t.1, t.2);
    Key {
        p: k.p,
        grip: v(k.grip),
        toe: v(k.toe),
        face: v(k.face),
        trunk_rad: [k.trunk_deg.0, k.trunk_deg.1, k.trunk_deg.2].map(f64::to_radians),
        pelvis: v(k.pelvis),
        pelvis_turn_rad: k.pelvis_turn_deg.to_radians(),
    }
}

const UNITS: &str = "\
// Lengths in arm lengths (hands, from the middle of the shoulders at rest) and leg lengths (pelvis), directions
// in the world: x to the bowler, y to a right-hander's back, z up. p = (time / stroke time)², contact at 1.
";

const PATH: &str = "    // Control points of the joint angles, rad, in the order of JOINTS; made from the keys by `backlift stroke`.
    joint_path_rad: [
";

/// A stroke as the text of its file, joint angles to five decimals; the notes at the top of the file
/// it was read from are not kept.
pub fn write(stroke: &Stroke) -> String {
    let mut out = format!("// {}\n{UNITS}(\n", stroke.name);
    for (field, value) in [
        ("schema", format!("{SCHEMA:?}")),
        ("name", format!("{:?}", stroke.name)),
        ("source", format!("{:?}", stroke.source)),
        ("oblique_deg", degrees(stroke.oblique_rad)),
        ("roll_deg", degrees(stroke.roll_rad)),
        ("bottom_hand_holds", format!("{:?}", stroke.bottom_hand_holds)),
        ("answers_short_ball", format!("{:?}", stroke.answers_short_ball)),
        ("contact_from_toe_m", format!("{:?}", stroke.contact_from_toe_m)),
        ("plan_time_s", format!("{:?}", stroke.plan_time_s)),
        ("tolerance", tolerance(&stroke.tolerance)),
    ] {
        out += &format!("    {field}: {value},\n");
    }
    out += "    keys: [\n";
    for key in &stroke.keys {
        out += &format!("        {},\n", key_text(key));
    }
    out += "    ],\n";
    out += PATH;
    out += &path_rows(&stroke.joint_path, 8, 5);
    out + "    ],\n)\n"
}

/// The control points, a row each, set in so far, to so many decimals.
pub(super) fn path_rows(path: &JointPath, set_in: usize, decimals: usize) -> String {
    let row = |row: &[f64; JOINT_COUNT]| {
        let angles: Vec<String> = row.iter().map(|q| format!("{q:.decimals$}")).collect();
        format!("{:set_in$}({}),\n", "", angles.join(", "))
    };
    path.control_rad.iter().map(row).collect()
}

/// Degrees without the rounding that the way through radians leaves.
fn degrees(rad: f64) -> String {
    format!("{:?}", (rad.to_degrees() * 1e9).round() / 1e9)
}

fn tolerance(t: &Tolerance) -> String {
    let (face, line) = (degrees(t.face_rad), degrees(t.line_rad));
    format!("(position_m: {:?}, face_deg: {face}, line_deg: {line})", t.position_m)
}

fn key_text(k: &Key) -> String {
    let v = |v: DVec3| format!("({:?}, {:?}, {:?})", v.x, v.y, v.z);
    let [turn, bend, lean] = k.trunk_rad.map(degrees);
    format!(
        "(p: {:?}, grip: {}, toe: {}, face: {}, trunk_deg: ({turn}, {bend}, {lean}), pelvis: {}, pelvis_turn_deg: {})",
        k.p,
        v(k.grip),
        v(k.toe),
        v(k.face),
        v(k.pelvis),
        degrees(k.pelvis_turn_rad)
    )
}
