use backlift::bat::sizes::{Size, named};
use backlift::files::assets;
use backlift::measurement::bench::{PendulumReading, SCALE_SD_KG};
use backlift::workshop::pickup_moments::PickupMoments;
use backlift::workshop::stages::forecast::forecast;
use backlift::workshop::stages::steps::{Steps, keeps};
use backlift::workshop::stages::{BatLog, Entry, LogFault, Moment, Stage, Target, waiting};
use proptest::prelude::*;

pub fn size(name: &str) -> Size {
    named(&assets::sizes().unwrap(), name).unwrap().clone()
}

fn day(day: i64) -> Moment {
    Moment::new(2026, 11, day, 9, 0).unwrap()
}

pub fn entry(stage: Stage, at: Moment, mass_kg: f64) -> Entry {
    Entry::weighed(stage, at, mass_kg)
}

fn log(entries: Vec<Entry>) -> BatLog {
    BatLog {
        label: "invented".into(),
        size: "6".into(),
        target: Target::default(),
        card: None,
        entries,
    }
}

/// The size's own bat, taken back stage by stage from what was played.
fn own_bat_at_each_stage(size: &Size) -> Vec<(Stage, PickupMoments)> {
    let steps = Steps::of(size);
    let mut bat = steps.reference;
    let mut back = Vec::new();
    for stage in Stage::ALL.into_iter().rev() {
        back.push((stage, bat));
        if let Some(moments) = steps.put_on(stage) {
            bat = bat - moments;
            continue;
        }
        let handle = steps.put_on(Stage::Spliced).filter(|_| stage.has_handle());
        let willow_kg = bat.mass_kg - handle.map_or(0.0, |it| it.mass_kg);
        let taken_kg = willow_kg / keeps(stage) - willow_kg;
        bat = bat + steps.blade * (taken_kg / steps.blade.mass_kg);
    }
    back.reverse();
    back
}

#[test]
fn the_sizes_own_bat_is_forecast_from_every_stage() {
    for name in ["1", "6", "short handle"] {
        let size = size(name);
        let own = Steps::of(&size).reference;
        let mut entries = Vec::new();
        for (n, (stage, bat)) in own_bat_at_each_stage(&size).into_iter().enumerate() {
            let mut it = entry(stage, day(1 + n as i64), bat.mass_kg);
            it.balance_m = stage.has_handle().then(|| bat.balance_m());
            entries.push(it);
            let BatLog { entries: so_far, .. } = log(entries.clone());
            let found = forecast(&log(so_far), &size).unwrap();
            assert!((found.mass_kg.value - own.mass_kg).abs() < 1e-9, "{name} {stage:?}");
            assert!((found.balance_m.value - own.balance_m()).abs() < 1e-9, "{name} {stage:?}");
            let swing = found.swing_moment_kg_m2.value;
            assert!((swing - own.second_kg_m2).abs() < 1e-6, "{name} {stage:?} {swing}");
        }
    }
}

/// By hand, size 6: a grip of 1.6 mm rubber over a 29 mm handle, 265 mm long, weighs 45 g or so; near the top
/// of the handle it draws the balance point up by a centimetre or two.
#[test]
fn putting_the_grip_on_draws_the_balance_to_the_handle() {
    let grip = Steps::of(&size("6")).put_on(Stage::Gripped).unwrap();
    assert!((0.04..0.09).contains(&grip.mass_kg), "{}", grip.mass_kg);
    let bare = own_bat_at_each_stage(&size("6"))[7].1;
    let drawn_m = bare.balance_m() - (bare + grip).balance_m();
    assert!((0.005..0.03).contains(&drawn_m), "{drawn_m}");
}

#[test]
fn a_finished_bat_weighs_what_the_scale_says_within_the_scale() {
    let done = log(own_bat_at_each_stage(&size("6"))
        .into_iter()
        .enumerate()
        .map(|(n, (stage, bat))| entry(stage, day(1 + n as i64), bat.mass_kg))
        .collect());
    assert_eq!(done.pending(), []);
    let found = forecast(&done, &size("6")).unwrap();
    assert_eq!(found.mass_kg.value, done.last().unwrap().mass_kg);
    assert_eq!(found.mass_kg.sd, SCALE_SD_KG);
    assert!(found.to_take_off_kg.is_none());
}

#[test]
fn what_is_to_take_off_leaves_the_weight_wanted() {
    let size = size("6");
    let (stage, bat) = own_bat_at_each_stage(&size)[4];
    let mut it = log(vec![entry(stage, day(1), bat.mass_kg)]);
    it.target.mass_kg = Some(Steps::of(&size).reference.mass_kg - 0.030);
    let off = forecast(&it, &size).unwrap().to_take_off_kg.unwrap();
    let usual_kg =
        own_bat_at_each_stage(&size)[4].1.mass_kg - own_bat_at_each_stage(&size)[5].1.mass_kg;
    assert!((off.value - 0.030 - usual_kg).abs() < 1e-9, "{}", off.value);
}

proptest! {
    /// Whatever the scale, pencil and watch say.
    #[test]
    fn no_doubt_grows_by_a_further_stage(
        kept in prop::collection::vec(0.5..1.0_f64, 10),
        cleft_kg in 1.3..2.2_f64,
        added in prop::collection::vec(0.0..0.3_f64, 10),
        balance in prop::collection::vec(prop::option::of(0.46..0.53_f64), 10),
        swings in prop::collection::vec(prop::option::of(13.0..14.5_f64), 10),
        taken in prop::collection::vec(prop::bool::weighted(0.7), 10),
        target in prop::option::of(0.8..1.1_f64),
    ) {
        let size = size("6");
        let mut it = log(vec![]);
        it.target.mass_kg = target;
        let mut mass_kg = cleft_kg;
        let mut before: Option<[f64; 3]> = None;
        for (n, stage) in Stage::ALL.into_iter().enumerate() {
            if !taken[n] { continue }
            mass_kg = if stage.adds() { mass_kg + added[n] } else { mass_kg * kept[n] };
            let mut next = entry(stage, day(1 + n as i64), mass_kg);
            if stage.has_handle() {
                next.balance_m = balance[n];
                next.pendulum = balance[n].and(swings[n]).map(PendulumReading::ten);
            }
            it.entries.push(next);
            let found = forecast(&it, &size).unwrap();
            let now = [found.mass_kg.sd, found.balance_m.sd, found.swing_moment_kg_m2.sd];
            prop_assert!(now.iter().all(|it| it.is_finite() && *it > 0.0));
            if let Some(before) = before {
                for (now, before) in now.iter().zip(before) {
                    prop_assert!(*now <= before * (1.0 + 1e-12), "{stage:?}: {now} after {before}");
                }
            }
            before = Some(now);
        }
    }

    #[test]
    fn a_moment_is_written_as_it_was_read(minutes in 0i64..540_000_000) {
        let moment = Moment::from_minutes(minutes);
        let written = moment.to_string();
        prop_assert_eq!(backlift::files::stages::moment(&written), Ok(moment));
    }
}

/// `date -u -d "2026-11-26 14:00" +%s` (GNU coreutils) says 1795701600.
#[test]
fn reference_seconds_of_a_day_agree_with_the_systems_calendar() {
    let there = Moment::new(2026, 11, 26, 14, 0).unwrap();
    assert_eq!(60 * there.minutes_since(Moment::from_minutes(0)), 1_795_701_600);
    assert!(Moment::new(2000, 2, 29, 0, 0).is_some());
    for (y, m, d, h, min) in [
        (2100, 2, 29, 0, 0),
        (2026, 2, 29, 0, 0),
        (2026, 13, 1, 0, 0),
        (2026, 1, 1, 24, 0),
        (2026, 1, 0, 0, 0),
    ] {
        assert_eq!(Moment::new(y, m, d, h, min), None);
    }
}

#[test]
fn a_splice_is_clamped_for_a_day_and_the_bat_rests_for_two() {
    let it = log(vec![entry(Stage::Spliced, day(10), 1.1)]);
    assert_eq!(waiting::next(&it).unwrap().until, day(11));
    assert_eq!(waiting::playable(&it), Some(day(12)));
    assert_eq!(waiting::playable(&log(vec![entry(Stage::Cleft, day(10), 1.5)])), None);
}

#[test]
fn a_sanding_that_adds_weight_and_a_wet_cleft_are_doubted_and_a_wet_one_is_taken_as_dried() {
    let wet = Entry { meter: Some(0.25), ..entry(Stage::Cleft, day(1), 1.60) };
    let shaped = entry(Stage::Shaped, day(5), 0.85);
    let sanded = entry(Stage::Sanded, day(6), 0.86);
    let it = log(vec![wet.clone(), shaped.clone(), sanded]);
    let words = it.doubts();
    assert!(words.len() == 2 && words[0].contains("25 % water"), "{words:?}");
    assert!(words[1].contains("10 g more"), "{words:?}");
    assert!(it.faults(&size("6")).is_empty());
    assert!(log(vec![entry(Stage::Cleft, day(1), 1.6), shaped]).doubts().is_empty());
    // 1.25 kg of wet wood for each of dry becomes 1.12.
    approx::assert_relative_eq!(wet.seasoned_kg(), 1.60 * 1.12 / 1.25, max_relative = 1e-12);
}

#[test]
fn what_cannot_be_is_said_at_its_entry_and_field() {
    let size = size("6");
    let cleft = entry(Stage::Cleft, day(3), 1.5);
    let with = |second: Entry| -> Vec<(usize, &'static str)> {
        let found = log(vec![cleft.clone(), second]).faults(&size);
        assert!(
            found.iter().all(|it| !it.fault.mend().is_empty() && !it.fault.to_string().is_empty())
        );
        found.iter().map(|it| (it.entry, it.field)).collect()
    };
    assert_eq!(with(entry(Stage::Pressed, day(4), 1.5)), []);
    assert_eq!(with(entry(Stage::Pressed, day(4), 1.515)), [], "two weighings of one thing differ");
    assert_eq!(with(entry(Stage::Cleft, day(4), 1.5)), [(1, "stage")]);
    assert_eq!(with(entry(Stage::Pressed, day(2), 1.5)), [(1, "at")]);
    assert_eq!(with(entry(Stage::Roughed, day(4), 1.6)), [(1, "mass")]);
    assert_eq!(with(entry(Stage::Spliced, day(4), 1.6)), [], "a handle was put in");
    assert_eq!(with(entry(Stage::Spliced, day(4), 16.0)), [(1, "mass")]);
    let more = |change: &dyn Fn(&mut Entry)| {
        let mut it = entry(Stage::Shaped, day(4), 0.9);
        change(&mut it);
        with(it)
    };
    assert_eq!(more(&|it| it.balance_m = Some(0.9)), [(1, "balance")]);
    assert_eq!(more(&|it| it.pendulum = Some(PendulumReading::ten(13.9))), [(1, "ten_swings")]);
    assert_eq!(
        more(&|it| (it.balance_m, it.pendulum) = (Some(0.5), Some(PendulumReading::ten(139.0)))),
        [(1, "ten_swings")]
    );
    assert_eq!(more(&|it| it.meter = Some(0.6)), [(1, "meter")]);
    let early = log(vec![Entry { balance_m: Some(0.4), ..cleft }]);
    assert!(matches!(early.faults(&size)[0].fault, LogFault::NoHandle { .. }));
    let order = log(vec![entry(Stage::Shaped, day(3), 0.9), entry(Stage::Roughed, day(4), 0.8)]);
    assert!(matches!(order.faults(&size)[0].fault, LogFault::OutOfOrder { .. }));
    let ends = [Stage::Gripped, Stage::Bound, Stage::Oiled];
    let ends = ends.into_iter().map(|it| entry(it, day(5), 0.9)).collect();
    assert_eq!(log(ends).faults(&size), [], "oil, twine and grip go on in any order");
}
