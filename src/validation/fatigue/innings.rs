//! An innings: how long it takes, what is known of its cost, and what ours makes of it.

use crate::innings::ball_by_ball::{BallLoads, capacity_at_scores};
use crate::innings::played::{FIFTY, StrokeNow, play};
use crate::innings::schedule::Schedule;
use crate::innings::slow_state::Exertion;
use crate::measurement::nets::Lasting;
use crate::measurement::plan::{Bowling, InningsPlan};
use crate::player::joints::{GROUP_COUNT, Group as Joints};
use crate::swing::observed::PhaseLoad;
use crate::validation::people::typical::{Typical, adult, boy_of_twelve};
use crate::validation::{Accept, CheckFault, Checked, Row};

const CHRISTIE: &str =
    "Christie et al. 2019, J Strength Cond Res 33:3056 (read): 20 batters, 42 balls";
const POTE: &str =
    "Pote & Christie 2016, S Afr J Sports Med 28:48 (read): a simulated one-day century";
const CENTURY: &str = "a typical one-day century, thesis quoting Christie et al. 2008 and Duffield & Drinkwater 2008 \
                       (read second-hand)";

pub(super) fn check() -> Result<Checked, CheckFault> {
    let mut rows = times()?;
    rows.extend(knee());
    for who in [adult()?, boy_of_twelve()?] {
        rows.extend(falls(&who)?);
    }
    Ok(rows.into())
}

fn times() -> Result<Vec<Row>, CheckFault> {
    let schedule = Schedule::ordinary(vec![0.5, 0.35, 0.15]);
    let five_overs_s: f64 = schedule.balls().take(30).map(|it| it.interval_s).sum();
    let idle = PhaseLoad { duration_s: 0.0, share: [0.0; GROUP_COUNT] };
    let loads = BallLoads { stance: idle, strokes: vec![] };
    let century = capacity_at_scores(&schedule, &loads, &[105.0])?;
    let century_s = century.first().map_or(f64::NAN, |it| it.time_s);
    let row = |what: &str, source: &str, theirs_min: f64, ours_s: f64, share: f64| {
        Row::compared(what, source, "min", theirs_min, ours_s / 60.0, Accept::Share(share))
    };
    Ok(vec![
        row("time of five overs", POTE, 21.0, five_overs_s, 1e-9)
            .by_construction("the schedule was taken from it"),
        row("time at the wicket for 105 runs", CENTURY, 136.0, century_s, 0.25).noted(
            "ours scores at a ball and a fifth a run with every second ball faced, both assumptions; a \
             scenario may set its own",
        ),
    ])
}

/// The only measured losses: legs. The high end of the slow state is drawn through them.
fn knee() -> [Row; 2] {
    [(6.0, 0.10), (12.0, 0.18)].map(|(sprints, loss)| {
        let bout =
            Exertion { balls_faced: 42.0, runs_run: 7.0 * sprints, time_s: 42.0 * 42.0 };
        let what =
            format!("knee after 42 balls with {sprints} sprints an over: the slow state's high end");
        let ours = 1.0 - bout.capacity(Lasting::UNKNOWN.high);
        Row::compared(what, CHRISTIE, "share lost", loss, ours, Accept::Within(5e-4))
        .by_construction(format!(
            "the slow state was drawn through it; arms and trunk are taken to lose between none of it and all of it, a third \
             ({:.3}) in the middle: nothing was measured there",
            1.0 - bout.capacity(Lasting::UNKNOWN.central)
        ))
    })
}

/// What fifty runs take from the pull, with the slow state and without.
fn falls(who: &Typical) -> Result<[Row; 2], CheckFault> {
    let plan = InningsPlan::default();
    let asked = who.asked_times_s()?;
    let bowling = Bowling::usual_at(who.batter.player.age_y);
    let scores = play(&who.batter, &who.bat, &plan, bowling, &asked, &[0.0, FIFTY])?;
    let [fresh, late] = &scores[..] else { return Err("two scores were asked".into()) };
    let pull = who.batter.stroke_index("pull").ok_or("no pull")?;
    let speed = |it: &[StrokeNow]| it[pull].bat_speed_m_s();
    let without = 1.0 - speed(&late.without_slow) / speed(&fresh.without_slow);
    let with = 1.0 - speed(&late.with_slow) / speed(&fresh.with_slow);
    let shoulder = Joints::BottomShoulder as usize;
    let row = |how: &str, ours, why: &str| {
        let what = format!("bat speed of the pull lost at fifty, {}, {how}", who.words);
        Row::no_data(what, "share", Some(ours), why)
    };
    let left = format!(
        "nothing to compare with; capacity of the bottom shoulder left: {:.3} without, {:.3} with, \
         {:.3} at the high end of the band",
        late.left.without_slow[shoulder],
        late.left.with_slow[shoulder],
        late.left.with_slow_high[shoulder]
    );
    let level = "no fall of bat speed over an innings was ever published; the compartments recover between \
                 balls and level off within a dozen of them";
    Ok([row("three compartments alone", without, level), row("with the slow state", with, &left)])
}
