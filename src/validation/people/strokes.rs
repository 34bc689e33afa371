//! Bat speeds and stroke times against every figure of batting that was read.

use super::typical::{Typical, adult, boy_of_fifteen, boy_of_twelve, girl_of_twelve, woman};
use crate::measurement::plan::Bowling;
use crate::player::joints::FRESH;
use crate::swing::contact::Contact;
use crate::swing::observed::observe;
use crate::swing::player_stroke::Held;
use crate::validation::{Accept, CheckFault, Checked, Row};

const STRETCH: &str = "Stretch et al. 1998, J Sports Sci 16:711 (read): 14 provincial men, ordinary play, \
                       medium-fast bowling";
const MCLEOD: &str = "McLeod 1987, Perception 16:49 (read): about 200 ms, international men";
const RANGE_HITTING: &str = "McErlain-Naylor et al. 2021, J Sports Sci 39:2393 (read): men higher in range hitting, means not seen";
/// Start of the downswing before impact, s; horizontal bat speed and its SD, m/s.
const DRIVE_TIME_S: f64 = 0.36;
const DRIVE_M_S: (f64, f64) = (11.8, 4.61);

const GRIP: &str = "3.3 and 8 times theirs, which is the peak squeeze; ours is what the handle needs not to slip along \
                    the hand nor turn in it, at a friction of 0.6, which is an assumption. The hands twist the \
                    handle against each other to within an eighth of what the grip can hold, in a drive that \
                    is not hurried. Nobody measured that twist. Before the bottom hand had a couple, only that \
                    hand disagreed";

fn held(who: &Typical, stroke: &str) -> Result<Held, CheckFault> {
    let index = who.batter.stroke_index(stroke).ok_or_else(|| format!("no {stroke}"))?;
    Ok(who.batter.strokes[index].hold(&who.bat)?)
}

fn fastest(who: &Typical, stroke: &str) -> Result<Contact, CheckFault> {
    Ok(held(who, stroke)?.fastest(&FRESH, None)?)
}

pub(super) fn published() -> Result<Checked, CheckFault> {
    let man = adult()?;
    let best = fastest(&man, "drive")?;
    let played = observe(&held(&man, "drive")?, &FRESH, DRIVE_TIME_S);
    let (mean, sd) = DRIVE_M_S;
    let speed = |what: &str, ours: &Contact, accept| {
        Row::compared(what, STRETCH, "m/s", (mean, Some(sd)), ours.normal_speed_m_s, accept)
    };
    let (one_sd, to_two_sd) = (Accept::Deviations(1.0), Accept::Between(mean, mean + 2.0 * sd));
    // Half to twice theirs.
    let grip = |hand: &str, theirs_n: f64, ours_n: f64| {
        let what = format!("men: grip of the {hand} hand in that drive");
        let accept = Accept::Between(0.5 * theirs_n, 2.0 * theirs_n);
        Row::compared(what, STRETCH, "N", theirs_n, ours_n, accept).noted(GRIP)
    };
    let time = "men: time of the fastest controlled drive";
    let answered = "time before a changed ball is answered";
    let answered_s = Bowling::usual_at(25.0).reaction_time_s;
    let ratio = best.bat_speed_m_s / fastest(&woman()?, "drive")?.bat_speed_m_s;
    let women = "men over women: fastest controlled drive";
    let mut rows = vec![
        speed("men: horizontal bat speed of a drive played in 0.36 s", &played.contact, one_sd).noted(
            "like with like: our man, not hurried, in their time; theirs is the peak 0.02 s before impact, \
             the point of the bat not stated",
        ),
        speed("men: fastest controlled drive", &best, to_two_sd)
            .noted("a fastest swing must be quicker than ordinary play, and not beyond two of its SD"),
        Row::compared(time, STRETCH, "s", DRIVE_TIME_S, best.time_s, Accept::AtMost)
            .noted("theirs is ordinary play"),
        grip("top", 129.0, played.top.grip_needed_n),
        grip("bottom", 52.0, played.bottom.grip_needed_n),
        Row::compared(answered, MCLEOD, "s", 0.2, answered_s, Accept::Share(0.1))
            .by_construction("taken as it is; 25 and 12 years have the same"),
        Row::compared(women, RANGE_HITTING, "", 1.0, ratio, Accept::AtLeast)
            .noted("only the sign can be compared"),
    ];
    rows.extend(left_out());
    Ok(rows.into())
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
    .map(|(what, why)| Row::no_data(what, "", None, why))
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
                format!("{}: bat speed of the fastest controlled {stroke}", who.words),
                "m/s",
                Some(found.bat_speed_m_s),
                format!(
                    "in {:.3} s; no such figure was read: of men only means of range hitting are remembered, \
                     of women and juniors nothing",
                    found.time_s
                ),
            ));
        }
    }
    Ok(rows.into())
}
