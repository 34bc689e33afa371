//! An innings: how long it takes, what is known of its cost, and what ours makes of it.

use super::GROUP;
use crate::innings::ball_by_ball::{BallLoads, capacity_at_scores};
use crate::innings::played::{FIFTY, delivery, play};
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

pub(super) fn check() -> Result<Checked, CheckFault> {
    let mut rows = times()?;
    rows.extend(knee());
    for who in [adult()?, boy_of_twelve()?] {
        rows.extend(falls(&who)?);
    }
    Ok(Checked { rows, curves: vec![] })
}

fn times() -> Result<Vec<Row>, CheckFault> {
    let schedule = Schedule::ordinary(vec![0.5, 0.35, 0.15]);
    let five_overs_s: f64 = schedule.balls().take(30).map(|it| it.interval_s).sum();
    let idle = PhaseLoad { duration_s: 0.0, share: [0.0; GROUP_COUNT] };
    let loads = BallLoads { stance: idle, strokes: vec![] };
    let century = capacity_at_scores(&schedule, &loads, &[105.0])?;
    let century_s = century.first().map_or(f64::NAN, |it| it.time_s);
    Ok(vec![
        Row::compared(
            GROUP,
            "time of five overs",
            "Pote & Christie 2016, S Afr J Sports Med 28:48 (read): a simulated one-day century",
            "min",
            (21.0, None),
            five_overs_s / 60.0,
            Accept::Share(1e-9),
        )
        .by_construction("the schedule was taken from it"),
        Row::compared(
            GROUP,
            "time at the wicket for 105 runs",
            "a typical one-day century, thesis quoting Christie et al. 2008 and Duffield & Drinkwater 2008 \
             (read second-hand)",
            "min",
            (136.0, None),
            century_s / 60.0,
            Accept::Share(0.25),
        )
        .noted(
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
        Row::compared(
            GROUP,
            format!("knee after 42 balls with {sprints} sprints an over: the slow state's high end"),
            CHRISTIE,
            "share lost",
            (loss, None),
            1.0 - bout.capacity(Lasting::UNKNOWN.high),
            Accept::Within(5e-4),
        )
        .by_construction(format!(
            "the slow state was drawn through it; arms and trunk are taken to lose between none of it and all of it, a third \
             ({:.3}) in the middle: nothing was measured there",
            1.0 - bout.capacity(Lasting::UNKNOWN.central)
        ))
    })
}

/// What fifty runs take from the pull, with the slow state and without.
fn falls(who: &Typical) -> Result<Vec<Row>, CheckFault> {
    let plan = InningsPlan::default();
    let asked = who.asked_times_s()?;
    let bowling = delivery(&Bowling::usual_at(who.batter.player.age_y));
    let scores = play(&who.batter, &who.bat, &plan, bowling, &asked, &[0.0, FIFTY])?;
    let [fresh, late] = &scores[..] else { return Err("two scores were asked".into()) };
    let pull = who.batter.stroke_index("pull").ok_or("no pull")?;
    let speed = |it: &[crate::innings::played::StrokeNow]| it[pull].bat_speed_m_s();
    let without = 1.0 - speed(&late.without_slow) / speed(&fresh.without_slow);
    let with = 1.0 - speed(&late.with_slow) / speed(&fresh.with_slow);
    let shoulder = Joints::BottomShoulder as usize;
    let row = |what: String, ours, why: String| Row::no_data(GROUP, what, "share", Some(ours), why);
    Ok(vec![
        row(
            format!("bat speed of the pull lost at fifty, {}, three compartments alone", who.words),
            without,
            "no fall of bat speed over an innings was ever published; the compartments recover between \
             balls and level off within a dozen of them"
                .into(),
        ),
        row(
            format!("bat speed of the pull lost at fifty, {}, with the slow state", who.words),
            with,
            format!(
                "nothing to compare with; capacity of the bottom shoulder left: {:.3} without, {:.3} with, \
                 {:.3} at the high end of the band",
                late.left.without_slow[shoulder],
                late.left.with_slow[shoulder],
                late.left.with_slow_high[shoulder]
            ),
        ),
    ])
}
