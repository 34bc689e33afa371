//! Bat speeds and stroke times against every figure of batting that was read.

use super::GROUP;
use super::typical::{Typical, adult, boy_of_fifteen, boy_of_twelve, girl_of_twelve, woman};
use crate::measurement::plan::Bowling;
use crate::player::joints::FRESH;
use crate::swing::fastest_controlled::Fastest;
use crate::swing::observed::Observed;
use crate::validation::{Accept, CheckFault, Checked, Row};

const STRETCH: &str = "Stretch et al. 1998, J Sports Sci 16:711 (read): 14 provincial men, ordinary play, \
                       medium-fast bowling";
/// Start of the downswing before impact, s; horizontal bat speed and its SD, m/s.
const DRIVE_TIME_S: f64 = 0.36;
const DRIVE_M_S: (f64, f64) = (11.8, 4.61);

const GRIP: &str = "3.3 and 8 times theirs, which is the peak squeeze; ours is what the handle needs not to slip along \
                    the hand nor turn in it, at a friction of 0.6, which is an assumption. The hands twist the \
                    handle against each other to within an eighth of what the grip can hold, in a drive that \
                    is not hurried. Nobody measured that twist. Before the bottom hand had a couple, only that \
                    hand disagreed";

fn index(who: &Typical, stroke: &str) -> Result<usize, CheckFault> {
    who.batter.stroke_index(stroke).ok_or_else(|| format!("no {stroke}").into())
}

fn fastest(who: &Typical, stroke: &str) -> Result<Fastest, CheckFault> {
    Ok(who.batter.strokes[index(who, stroke)?].hold(&who.bat)?.fastest(&FRESH, None)?)
}

fn observed(who: &Typical, stroke: &str, time_s: f64) -> Result<Observed, CheckFault> {
    let held = who.batter.strokes[index(who, stroke)?].hold(&who.bat)?;
    Ok(who.batter.observe(&held, &FRESH, time_s))
}

pub(super) fn published() -> Result<Checked, CheckFault> {
    let man = adult()?;
    let best = fastest(&man, "drive")?;
    let played = observed(&man, "drive", DRIVE_TIME_S)?;
    let (mean, sd) = DRIVE_M_S;
    let row = |what: &str, source: &str, unit, expected, ours, accept| {
        Row::compared(GROUP, what, source, unit, expected, ours, accept)
    };
    let mut rows = vec![
        row(
            "men: horizontal bat speed of a drive played in 0.36 s",
            STRETCH,
            "m/s",
            (mean, Some(sd)),
            played.contact.normal_speed_m_s,
            Accept::Deviations(1.0),
        )
        .noted(
            "like with like: our man, not hurried, in their time; theirs is the peak 0.02 s before impact, \
             the point of the bat not stated",
        ),
        row(
            "men: fastest controlled drive",
            STRETCH,
            "m/s",
            (mean, Some(sd)),
            best.contact.normal_speed_m_s,
            Accept::Between(mean, mean + 2.0 * sd),
        )
        .noted("a fastest swing must be quicker than ordinary play, and not beyond two of its SD"),
        row(
            "men: time of the fastest controlled drive",
            STRETCH,
            "s",
            (DRIVE_TIME_S, None),
            best.contact.time_s,
            Accept::AtMost,
        )
        .noted("theirs is ordinary play"),
        row(
            "men: grip of the top hand in that drive",
            STRETCH,
            "N",
            (129.0, None),
            played.top.grip_needed_n,
            Accept::Between(64.5, 258.0),
        )
        .noted(GRIP),
        row(
            "men: grip of the bottom hand in that drive",
            STRETCH,
            "N",
            (52.0, None),
            played.bottom.grip_needed_n,
            Accept::Between(26.0, 104.0),
        )
        .noted(GRIP),
        row(
            "time before a changed ball is answered",
            "McLeod 1987, Perception 16:49 (read): about 200 ms, international men",
            "s",
            (0.2, None),
            Bowling::usual_at(25.0).reaction_time_s,
            Accept::Share(0.1),
        )
        .by_construction("taken as it is; 25 and 12 years have the same"),
    ];
    let woman = fastest(&woman()?, "drive")?;
    rows.push(
        row(
            "men over women: fastest controlled drive",
            "McErlain-Naylor et al. 2021, J Sports Sci 39:2393 (read): men higher in range hitting, means not seen",
            "",
            (1.0, None),
            best.contact.bat_speed_m_s / woman.contact.bat_speed_m_s,
            Accept::AtLeast,
        )
        .noted("only the sign can be compared"),
    );
    rows.extend(left_out());
    Ok(Checked { rows, curves: vec![] })
}

/// Figures that were read and have no counterpart here.
fn left_out() -> [Row; 5] {
    [
        (
            "men: forward defensive, 3.53 SD 3.44 m/s and 0.38 s (Stretch et al. 1998)",
            "no defensive stroke is simulated",
        ),
        (
            "men: backlift 0.74 m in the drive (Stretch et al. 1998)",
            "which point of the bat above what is not in the abstract",
        ),
        (
            "men: stride of 0.68 m, started 0.58 s before impact (Stretch et al. 1998)",
            "feet are not simulated; the pelvis's place follows the stroke's keys",
        ),
        (
            "men: bat speed 0.02 s after impact, 11.3 SD 4.21 m/s (Stretch et al. 1998)",
            "the swing ends at the ball",
        ),
        (
            "skilled and less skilled men: no difference in bat speed (Taliep et al. 2007)",
            "skill is not in the model: all players follow one path",
        ),
    ]
    .map(|(what, why)| Row::no_data(GROUP, what, "", None, why))
}

/// What nobody has published, with ours.
pub(super) fn unpublished() -> Result<Checked, CheckFault> {
    let mut rows = Vec::new();
    for (who, strokes) in [
        (adult()?, &["pull", "hook"][..]),
        (woman()?, &["drive", "pull", "hook"]),
        (boy_of_fifteen()?, &["drive", "pull", "hook"]),
        (boy_of_twelve()?, &["drive", "pull", "hook"]),
        (girl_of_twelve()?, &["drive", "pull", "hook"]),
    ] {
        for stroke in strokes {
            let found = fastest(&who, stroke)?;
            rows.push(Row::no_data(
                GROUP,
                format!("{}: bat speed of the fastest controlled {stroke}", who.words),
                "m/s",
                Some(found.contact.bat_speed_m_s),
                format!(
                    "in {:.3} s; no such figure was read: of men only means of range hitting are remembered, \
                     of women and juniors nothing",
                    found.contact.time_s
                ),
            ));
        }
    }
    Ok(Checked { rows, curves: vec![] })
}
