//! Readings that are doubted, and readings that are refused.

use super::players::{Dice, by_curve, drawn, nets, plan, pulls, read};
use backlift::calibration::{CalibrationFault, calibrate};
use backlift::measurement::nets::{NetFault, NetReading, Read};

fn readings(seed: u64) -> Vec<NetReading> {
    let mut dice = Dice(seed);
    let truth = drawn(&mut dice);
    read(&mut dice, &truth, 0.03, &plan(8, 6), &by_curve)
}

fn with_time(it: &NetReading, by: f64) -> NetReading {
    let Read::Time { time_s, frame_rate_hz } = it.read else { return it.clone() };
    NetReading { read: Read::Time { time_s: by * time_s, frame_rate_hz }, ..it.clone() }
}

#[test]
fn one_miscounted_film_is_named_and_hardly_moves_the_answer() {
    let nets = nets();
    for seed in [41, 42, 43] {
        let good = readings(seed);
        let mut bad = good.clone();
        bad[3] = with_time(&bad[3], 1.4);
        let [good, bad] =
            [good, bad].map(|it| calibrate(&nets.order(), &nets.simulated, &it).unwrap());
        assert!(bad.judged[3].is_doubted() && bad.judged[3].counted < 0.2, "{:?}", bad.judged[3]);
        assert!(bad.judged[3].off_share > 0.2);
        let doubted = |it: &backlift::calibration::Calibrated| {
            it.judged.iter().filter(|it| it.is_doubted()).count()
        };
        assert!(doubted(&bad) <= doubted(&good) + 1);
        let (was, is) = (good.surer.fresh_pull_m_s[1], bad.surer.fresh_pull_m_s[1]);
        assert!((was.mean - is.mean).abs() < 0.35 * was.sd, "{was:?} {is:?}");
    }
}

#[test]
fn a_film_played_at_another_rate_than_it_was_taken_is_refused() {
    let nets = nets();
    let mut all = readings(44);
    all[5] = with_time(&all[5], 4.0);
    let fault = calibrate(&nets.order(), &nets.simulated, &all).unwrap_err();
    match fault {
        CalibrationFault::NotThisPlayer { reading: 5, field: "time", factor, .. } => {
            assert!(factor > 2.0);
        }
        CalibrationFault::Readings(it) => assert_eq!(it[0].0, 5),
        other => panic!("{other}"),
    }
}

#[test]
fn too_few_readings_and_readings_that_cannot_be_are_refused() {
    let nets = nets();
    let fit = |it: &[NetReading]| calibrate(&nets.order(), &nets.simulated, it).unwrap_err();
    let all = readings(45);
    assert_eq!(fit(&all[..2]), CalibrationFault::TooFew { fresh: 2 });
    // Tired readings alone say nothing of the fresh player.
    assert_eq!(fit(&pulls(0, 9)), CalibrationFault::TooFew { fresh: 0 });
    let with = |read: Read| {
        let mut all = all.clone();
        all[1].read = read;
        fit(&all)
    };
    let at = |time_s: f64, frame_rate_hz: f64| Read::Time { time_s, frame_rate_hz };
    for (read, field) in [
        (at(0.02, 240.0), "time"),
        (at(2.5, 240.0), "time"),
        (at(f64::NAN, 240.0), "time"),
        (at(0.45, 5.0), "frame_rate"),
        (at(0.33, 25.0), "frame_rate"),
        (Read::Speed { speed_m_s: 90.0 }, "speed"),
        (Read::Speed { speed_m_s: -3.0 }, "speed"),
    ] {
        let CalibrationFault::Readings(faults) = with(read) else { panic!("{read:?}") };
        assert_eq!((faults[0].0, faults[0].1.field()), (1, field), "{read:?}");
    }
    let mut unknown = all.clone();
    unknown[0].stroke = "sweep".into();
    assert_eq!(fit(&unknown), CalibrationFault::Readings(vec![(0, NetFault::NoSuchStroke)]));
}
