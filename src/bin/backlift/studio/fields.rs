//! The fields as the window calls them: one table for the rows that are filled in and for what is said of them.

/// Path, name, what may stand in it, and how to measure it.
pub type Line = [&'static str; 4];

/// Of the player: who it is, and what makes the advice surer. The examples are a junior's; those that hang on age are
/// made for the player.
pub const PLAYER: [Line; 8] = [
    ["player.age", "Age", "13 years 4 months", "Strength and growth go by it"],
    ["player.stature", "Height", "5 ft 3 in", "Without shoes"],
    ["player.mass", "Body mass", "46 kg", "In light clothes"],
    ["player.grip_top", "Grip, top hand", "23 kg", "Best of three on a dynamometer"],
    ["player.grip_bottom", "Grip, bottom hand", "25 kg", "Best of three on a dynamometer"],
    ["player.arm_length", "Arm", "56 cm", "Point of the shoulder to the middle of the grip"],
    ["player.hand_length", "Hand", "17.2 cm", "Wrist crease to the tip of the middle finger"],
    [
        "player.wrist_hold",
        "Wrist hold",
        "14 s",
        "Forearm supported and level, the top hand alone holds the bat out, until the toe drops",
    ],
];
/// Of what is asked of the player.
pub const ASKED: [Line; 4] = [
    ["innings.runs", "Innings to last", "50", "Runs at which it ends: the local retirement score"],
    ["innings.mix", "Strokes", "drive 50 %, pull 35 %, hook 15 %", "How often each is played"],
    ["bowling.speed", "Bowling", "90 km/h", "Out of the hand"],
    ["bowling.pitch_length", "Pitch", "20.12 m", "Stumps to stumps"],
];

/// Those of which one of two is chosen.
pub const SEX: [&str; 2] = ["player.sex", "Sex"];
pub const HANDED: [&str; 2] = ["player.handed", "Bats"];

/// Of a bat: under `bats.0.`, and so on.
pub const BAT: [Line; 9] = [
    ["label", "Name", "Old faithful", "What you call it"],
    ["size", "Size", "6", "1 to 6, Harrow, short handle or long handle"],
    ["mass", "Dead weight", "2 lb 3 oz", "On a kitchen scale, grips and toe guard on"],
    ["length", "Length", "31.75 in", "From the top of the handle to the toe"],
    [
        "balance",
        "Balance point",
        "19.5 in",
        "Where it balances on a pencil, from the top of the handle",
    ],
    ["width", "Width", "104 mm", "Greatest width of the blade"],
    ["edge", "Edge", "32 mm", "Greatest thickness of an edge"],
    ["depth", "Depth", "55 mm", "From the face to the highest point of the back"],
    ["handle_diameter", "Handle", "33 mm", "Across the handle over the grip, at the bottom hand"],
];

/// Of a bat's pendulum test.
pub const PENDULUM: [Line; 4] = [
    ["pendulum.swings", "Swings", "10", "Full swings timed, out and back"],
    ["pendulum.time", "Time of all", "13.72 s", "From letting the first pass to the last"],
    ["pendulum.pivot", "Pivot", "6 in", "From the top of the handle to the rods"],
    ["pendulum.amplitude", "Half-swing", "5 deg", "How far it was let go from hanging"],
];

/// Of a described bat: each part's name, and its fields.
pub const WOOD: [(&str, &[Line]); 3] =
    [("Blade", &BLADE), ("Handle and what is on it", &HANDLE), ("Wood", &WILLOW)];
const BLADE: [Line; 13] = [
    ["size", "Size", "short handle", "1 to 6, Harrow, short handle or long handle"],
    ["law_type", "Type", "A", "A to D under the Laws: how much of the handle may be rubber"],
    ["blade.length", "Blade length", "559 mm", "From shoulder to toe"],
    ["blade.width", "Blade width", "107 mm", "Greatest width"],
    ["blade.edge", "Blade edge", "36 mm", "Greatest thickness of the edges"],
    ["blade.depth", "Spine height", "60 mm", "From the face to the spine at the swell"],
    ["blade.swell", "Swell", "8 in", "Height of the deepest place over the toe"],
    [
        "blade.hollow",
        "Hollow of the back",
        "40 %",
        "0 straight, 100 % level at the edge, below 0 full",
    ],
    [
        "blade.camber",
        "Camber of the face",
        "2 mm",
        "Height of the middle of the face over its edges",
    ],
    ["blade.shoulder_width", "Shoulder width", "45 mm", "Where the handle goes in"],
    ["blade.shoulder_length", "Shoulder length", "60 mm", "From there to full width"],
    ["blade.toe_depth", "Toe depth", "28 mm", "Depth at the toe"],
    ["blade.bow", "Bow", "8 mm", "Height of the face's arc along the blade"],
];
const HANDLE: [Line; 10] = [
    ["handle.length", "Handle length", "290 mm", "From its top to the shoulder"],
    ["handle.diameter", "Handle diameter", "34 mm", "Over the grip, at the bottom hand"],
    ["handle.section", "Handle section", "oval", "Round, oval or semi-oval"],
    ["handle.pieces", "Pieces of cane", "3", "Glued up of so many, rubber between each two"],
    ["handle.strip", "Rubber strip", "1.5 mm", "Thickness of the rubber between them"],
    ["handle.grips", "Grips", "1", "How many, one over the other"],
    ["extras.labels", "Labels", "8 g", "Labels and glue"],
    ["extras.face_sheet", "Face sheet", "20 g", "Its weight, or none"],
    ["extras.toe_guard", "Toe guard", "1.5 mm", "Its thickness, or none"],
    ["extras.oil", "Oil", "12 g", "In the wood"],
];
const WILLOW: [Line; 6] = [
    ["willow.density", "Willow", "440 kg/m³", "Density, where it is known; else the cleft below"],
    ["willow.cleft.mass", "Cleft weight", "2.75 kg", "As sawn"],
    ["willow.cleft.length", "Cleft length", "710 mm", "Along the grain"],
    ["willow.cleft.width", "Cleft width", "118 mm", "Across"],
    ["willow.cleft.depth", "Cleft depth", "72 mm", "From face to back"],
    ["willow.cleft.moisture", "Cleft moisture", "13 %", "Water when it was weighed"],
];

/// Of a reading of a bat on the bench: under `log.0.`, and so on.
pub const READING: [Line; 14] = [
    ["mass", "Weight", "921 g", "On the scale, with what is on it now"],
    [
        "balance",
        "Balance point",
        "502 mm",
        "Where it balances on a pencil: from the top of the handle, or \"303 mm from toe\"",
    ],
    ["time", "Time of all swings", "41.1 s", "About 6 in (152 mm) from the top of the handle"],
    ["swings", "Swings", "30", "Full swings timed, out and back"],
    [
        "planed",
        "Planed",
        "toe",
        "Where the plane was at work since the reading before; empty if nowhere",
    ],
    ["handle", "Handle", "34 mm", "Across at the bottom hand, over what is on it"],
    [
        "side",
        "Heavier side",
        "2 mm left",
        "Face up along a straight edge: how far from its middle the blade balances, seen from the face with the toe down",
    ],
    ["stage", "Stage", "sanded", "What it has come to; empty if as at the reading before"],
    [
        "on",
        "On it",
        "twine, grip",
        "Grip, twine, toe guard, oil, labels or all; empty if its stages say so",
    ],
    ["at", "When", "2026-11-26 14:00", "By the workshop's clock"],
    ["meter", "Moisture", "11 %", "Water in the wood by a meter"],
    ["grains", "Grains", "8", "Across the face"],
    ["air", "Air", "18 C, 55 %", "Of the workshop, a mean of some weeks"],
    ["note", "Note", "the plane chatters", "What else there is to say"],
];

/// What is filled in by a choice, or in the file alone.
const OTHERS: [[&str; 2]; 25] = [
    SEX,
    HANDED,
    ["player.wrist_hold_bat", "Bat of the wrist hold"],
    ["uses", "Bat used now"],
    ["seen.bat", "What was seen, the bat"],
    ["seen.stroke", "What was seen, the stroke"],
    ["seen.runs", "What was seen, the runs before"],
    ["seen.balls", "What was seen, the short balls"],
    ["seen.in_time", "What was seen, how often in time"],
    ["innings.balls_per_run", "Balls faced for each run"],
    ["innings.faced_share", "Share of the balls faced"],
    ["innings.between_balls", "Time between balls"],
    ["innings.between_overs", "Time between overs"],
    ["bowling.reaction_time", "Time to read the ball"],
    ["bowling.nine_in_ten", "Nine balls in ten"],
    ["fit.sizes", "Sizes to choose from"],
    ["fit.lightest", "Lightest to choose"],
    ["fit.heaviest", "Heaviest to choose"],
    ["fit.asked_time_factor", "Asked stroke time"],
    ["fit.ball_mass", "Weight of the ball"],
    ["order.number", "Number of the order"],
    ["order.wish.middle", "Middle that is wished"],
    ["order.wish.handle", "Handle that is wished"],
    ["order.wish.grips", "Grips that are wished"],
    ["order.wish.note", "What else is wished"],
];

/// What a field is called, without the bat or the reading it is of; none of one that the window has no name for.
pub fn name(path: &str) -> Option<&'static str> {
    let in_lines = |all: &[Line], path: &str| all.iter().find(|it| it[0] == path).map(|it| it[1]);
    let of_bat = |path: &str| in_lines(&BAT, path).or_else(|| in_lines(&PENDULUM, path));
    if let Some((n, rest)) = path.strip_prefix("bats.").and_then(|it| it.split_once('.')) {
        return n.parse::<usize>().ok().and_then(|_| of_bat(rest));
    }
    if let Some((n, rest)) = path.strip_prefix("log.").and_then(|it| it.split_once('.')) {
        return n.parse::<usize>().ok().and_then(|_| in_lines(&READING, rest));
    }
    // Of what was seen there may be several; the window shows one.
    let path = match path.strip_prefix("seen.").and_then(|it| it.split_once('.')) {
        Some((_, rest)) => format!("seen.{rest}"),
        None => path.to_owned(),
    };
    let other = || OTHERS.iter().find(|it| it[0] == path).map(|it| it[1]);
    let of_wood = || WOOD.iter().find_map(|(_, all)| in_lines(all, &path));
    let found = in_lines(&PLAYER, &path).or_else(|| in_lines(&ASKED, &path));
    found.or_else(other).or_else(of_wood)
}

/// The same of a field named alone in a sentence: `grip_top`.
pub fn named_alone(word: &str) -> Option<&'static str> {
    ["player.", "bats.0.", "fit.", "innings.", "bowling."]
        .iter()
        .find_map(|under| name(&format!("{under}{word}")))
}
