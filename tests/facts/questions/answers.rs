//! The answer asked for here is the one that the command line prints.

use super::{junior, printed, quietly, same};
use backlift::card::returned_bat::check;
use backlift::files::air::air;
use backlift::files::{card_file, stroke};
use backlift::measurement::bench::{BatReading, PendulumReading};
use backlift::questions::advice::today;
use backlift::questions::delivered::{returned, weigh_up};
use backlift::questions::innings::play;
use backlift::questions::season::{Asked, Given, season};
use backlift::questions::shape::held;
use backlift::questions::swung::swing;
use backlift::stroke::leading;
use serde_json::json;

#[test]
fn todays_advice_is_what_fit_prints() {
    let asked = today(junior(), None, &quietly, [0.0, 1.0]).unwrap().today;
    let printed = printed(&["fit", "--today"]);
    assert_eq!(printed["given"].as_array().unwrap().len(), asked.given.len());
    for (printed, asked) in printed["given"].as_array().unwrap().iter().zip(&asked.given) {
        assert_eq!(printed["label"], json!(asked.label));
        let worth = asked.worth.as_ref().unwrap();
        same(&printed["worth_m_s"], worth.mean_m_s());
        same(&printed["worth_sd_m_s"], worth.sd_m_s());
        same(&printed["chance_in_time"], worth.chance_in_time);
    }
}

#[test]
fn a_swing_is_what_swing_prints() {
    let junior = junior();
    let asked = swing(junior, 1, junior.lead(), 1.0, None, &quietly).unwrap();
    let printed = printed(&["swing", "--bat", "1"]);
    assert_eq!(printed["stroke"], json!(asked.stroke.name));
    same(&printed["bat_speed_m_s"], asked.seen.contact.bat_speed_m_s);
    same(&printed["stroke_time_s"], asked.fastest_s);
    same(&printed["bat_speed_sd_m_s"], asked.seen.contact.bat_speed_m_s * asked.doubt.speed());
}

#[test]
fn results_are_led_by_the_pull_or_else_by_what_answers_the_short_ball() {
    let usual = stroke::usual().unwrap();
    let led = |names: &[&'static str]| {
        let those = names.iter().map(|name| usual.iter().find(|it| it.name == *name).unwrap());
        names[leading(&those.cloned().collect::<Vec<_>>())]
    };
    assert_eq!(led(&["drive", "hook", "pull"]), "pull");
    assert_eq!(led(&["drive", "hook"]), "hook");
    assert_eq!(led(&["drive"]), "drive");
}

#[test]
fn a_delivered_bat_is_judged_as_check_judges_it() {
    let card = card_file::read("tests/commands/card.ron".as_ref()).unwrap();
    let reading = BatReading {
        size: Some(card.size.clone()),
        balance_m: Some(0.502),
        pendulum: Some(PendulumReading {
            swings: card.pendulum_swings,
            pivot_from_top_m: card.pendulum_pivot_m,
            ..PendulumReading::ten(41.8)
        }),
        ..BatReading::weighed("the delivered bat", 0.894)
    };
    let (bat, _) = weigh_up(&reading, str::to_owned).unwrap();
    let asked = check(&card, &returned(&bat));
    let given = ["--mass", "894g", "--balance", "502mm", "--time", "41.8s"];
    let printed = printed(&[&["check", "tests/commands/card.ron"][..], &given].concat());
    assert_eq!(printed["accepted"], json!(asked.accepted));
    for (printed, asked) in printed["items"].as_array().unwrap().iter().zip(&asked.items) {
        same(&printed["asked"], asked.asked.target);
        assert_eq!(printed["measured"].is_null(), asked.measured.is_none());
    }
}

#[test]
fn the_leading_stroke_of_an_innings_lies_between_its_lowest_and_its_highest() {
    let junior = junior();
    let played = play(junior, 0, None, 1.0, &quietly).unwrap();
    for lead in [played.at_fifty, played.at_end] {
        let drop = |it| lead.drop_share(it);
        assert!(drop(&lead.with_slow_low) <= drop(&lead.with_slow), "{} runs", lead.runs);
        assert!(drop(&lead.with_slow) <= drop(&lead.with_slow_high), "{} runs", lead.runs);
    }
    assert!(played.points.windows(2).all(|it| it[0].left.runs < it[1].left.runs));
}

#[test]
fn a_bat_carried_to_the_same_air_stays_as_it_is() {
    let card = card_file::read("tests/commands/card.ron".as_ref()).unwrap();
    let (given, _) = Given::carded(card, str::to_owned).unwrap();
    let air = air("18 C, 55 %").unwrap();
    let asked = Asked { airs: [air, air], oiled: true, days: None, pressed_m: None, denser: None };
    let found = season(&given, asked).unwrap();
    assert_eq!(found.seasoned.mass_change_kg.value, 0.0);
    let limits = found.limits.unwrap();
    assert!(limits.there.iter().all(|(_, _, within)| *within));
}

#[test]
fn what_is_held_is_read_with_its_unit_and_nothing_else_is() {
    let given = |it: &str| held(&[it.to_owned()]);
    assert_eq!(given("edge=38 mm").unwrap().edge_m, Some(0.038));
    for bad in ["edge 38 mm", "edge=-1 mm", "edge=38 g", "weight=1 kg"] {
        assert!(given(bad).is_err(), "{bad}");
    }
}
