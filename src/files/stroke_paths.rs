//! Files with many joint paths of one stroke (RON), and those that come with the program.

use super::stroke::{BUILT_IN, StrokeFault, built_in, parsed, path_rows};
use crate::player::joints::JOINT_COUNT;
use crate::stroke::Stroke;
use crate::stroke::joint_path::{CONTROL_COUNT, JointPath};
use crate::stroke::range::{MOVES, moved};
use crate::swing::plan::paths::FoundPath;
use serde::Deserialize;

/// Many joint paths of one stroke.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Paths {
    /// All of them, the fastest first.
    pub all: Vec<FoundPath>,
    /// Indices of those that serve nearly everybody: chosen one after another to gain the most over 24 drawn players
    /// with two bats each. What choosing among them loses against choosing among all is asked of other players by the
    /// tests.
    pub serving: Vec<usize>,
}

/// Version of the file.
pub const SCHEMA: &str = "backlift/stroke-paths/1";

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct PathsFile {
    schema: String,
    stroke: String,
    #[serde(default)]
    serving: Vec<usize>,
    paths: Vec<PathInFile>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct PathInFile {
    moves: [f64; MOVES],
    plan_time_s: f64,
    bat_speed_m_s: f64,
    joint_path_rad: [[f64; JOINT_COUNT]; CONTROL_COUNT],
}

/// Paths of a stroke that come with the program; none of a stroke that somebody added, be it called the same.
pub fn built_in_paths(stroke: &Stroke) -> Result<Paths, StrokeFault> {
    let file = BUILT_IN.get_file(format!("paths/{}.ron", stroke.name));
    match file.and_then(|it| it.contents_utf8()) {
        Some(text) if built_in()?.contains(stroke) => read(text, stroke),
        _ => Ok(Paths::default()),
    }
}

/// Of several strokes the paths that serve nearly everybody, one after the other.
pub fn serving_paths(strokes: &[Stroke]) -> Result<Vec<Stroke>, StrokeFault> {
    let mut out = Vec::new();
    for stroke in strokes {
        let Paths { all, serving } = built_in_paths(stroke)?;
        out.extend(serving.iter().filter_map(|i| Some(all.get(*i)?.stroke.clone())));
    }
    Ok(out)
}

/// Reads the paths of a stroke.
pub fn read(text: &str, stroke: &Stroke) -> Result<Paths, StrokeFault> {
    let file: PathsFile = parsed(text)?;
    if file.schema != SCHEMA {
        let what = format!("schema `{}` is not `{SCHEMA}`", file.schema);
        return Err(StrokeFault(what));
    }
    if file.stroke != stroke.name {
        let what = format!("these are paths of the {}, not of the {}", file.stroke, stroke.name);
        return Err(StrokeFault(what));
    }
    let found = |it: PathInFile| {
        let joint_path = JointPath { control_rad: it.joint_path_rad };
        let moved = moved(stroke, &it.moves);
        let (plan_time_s, bottom_hand_holds) = (it.plan_time_s, true);
        FoundPath {
            moves: it.moves,
            stroke: Stroke { joint_path, plan_time_s, bottom_hand_holds, ..moved },
            bat_speed_m_s: it.bat_speed_m_s,
        }
    };
    Ok(Paths { all: file.paths.into_iter().map(found).collect(), serving: file.serving })
}

const HEAD: &str = "\
// Joint paths of one stroke, planned by `backlift stroke --paths`: how far the keys were moved, each from -1 to 1 of
// its range; the stroke time planned for; bat speed of the reference player's fastest controlled swing; control points
// of the joint angles, rad, in the order of JOINTS.
";

/// Paths of a stroke as the text of their file.
pub fn write(stroke: &Stroke, paths: &Paths) -> String {
    let mut out = format!("{HEAD}(\n    schema: {SCHEMA:?},\n    stroke: {:?},\n", stroke.name);
    if !paths.serving.is_empty() {
        out += &format!("    serving: {:?},\n", paths.serving);
    }
    out += "    paths: [\n";
    for it in &paths.all {
        let moves: Vec<String> = it.moves.iter().map(|it| format!("{it:.4}")).collect();
        out += &format!("        (\n            moves: ({}),\n", moves.join(", "));
        out += &format!("            plan_time_s: {:.4},\n", it.stroke.plan_time_s);
        out += &format!("            bat_speed_m_s: {:.3},\n", it.bat_speed_m_s);
        out += "            joint_path_rad: (\n";
        out += &path_rows(&it.stroke.joint_path, 16, 4);
        out += "            ),\n        ),\n";
    }
    out + "    ],\n)\n"
}
