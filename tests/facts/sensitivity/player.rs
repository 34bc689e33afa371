//! The study of a player: what is moved, and what the swings say.

use approx::assert_relative_eq;
use backlift::bat::figures::{WeighedBat, weigh};
use backlift::files::{assets, scenario, stroke};
use backlift::fit::setting::Setting;
use backlift::innings::played::play;
use backlift::measurement::plan::Scenario;
use backlift::player::{Player, player};
use backlift::sensitivity::figure::Figure;
use backlift::sensitivity::input::Input;
use backlift::sensitivity::spread::{Known, Moved, Standing, inputs};
use backlift::sensitivity::study::{Asked, Study, StudyFault, study};
use backlift::stroke::Stroke;
use backlift::swing::batter::Batter;
use core::ops::ControlFlow;

struct Loaded {
    scenario: Scenario,
    player: Player,
    bats: Vec<WeighedBat>,
    strokes: Vec<Stroke>,
}

impl Loaded {
    fn of(file: &str) -> Self {
        let file = format!("scenarios/{file}.ron");
        let scenario = scenario::load(Some(file.as_ref()), &[]).unwrap().scenario;
        let (sizes, laws) = (assets::sizes().unwrap(), assets::limits().unwrap());
        Self {
            player: player(&scenario.player).unwrap(),
            bats: scenario.bats.iter().map(|it| weigh(it, &sizes, &laws).unwrap()).collect(),
            strokes: stroke::usual().unwrap(),
            scenario,
        }
    }

    fn known(&self, bats: usize) -> Known<'_> {
        Known {
            reading: &self.scenario.player,
            player: &self.player,
            bat: &self.bats[0],
            other: self.bats.get(1).filter(|_| bats > 1),
            delivery: self.scenario.bowling,
        }
    }

    fn batter(&self) -> Batter {
        Batter::new(&self.player, &self.strokes, &self.bats[0].bat).unwrap()
    }

    fn asked_time_s(&self) -> Vec<f64> {
        let batter = self.batter();
        let factor = self.scenario.fit.asked_time_factor;
        Setting::asked_times_s(&batter, &self.bats[0].bat, factor).unwrap()
    }

    fn study(&self, rows: usize, asked_time_s: &[f64]) -> Result<Study, StudyFault> {
        let asked = Asked {
            known: self.known(1),
            strokes: &self.strokes,
            pull: 1,
            plan: &self.scenario.innings,
            asked_time_s,
            rows,
        };
        study(&asked, &|_| ControlFlow::Continue(()))
    }
}

fn find(moved: &[Moved], input: Input) -> Option<Moved> {
    moved.iter().copied().find(|it| it.input == input)
}

/// Each spread is the one that the player's list of estimates, the bench and the tables state.
/// What is said of each stands in a table, found by its place.
#[test]
fn every_input_and_figure_stands_in_its_own_row() {
    let inputs = Input::all().map(|it| it as usize);
    assert_eq!(inputs.collect::<Vec<_>>(), (0..21).collect::<Vec<_>>());
    let figures = Figure::all().map(|it| it as usize);
    assert_eq!(figures, [0, 1, 2, 3, 4, 5, 6]);
}

#[test]
fn every_input_is_moved_as_far_as_its_measurement_or_estimate_may_be_off() {
    let (well, hardly) = (Loaded::of("measured-well"), Loaded::of("measured-hardly"));
    let (measured, estimated) = (inputs(&well.known(2)), inputs(&hardly.known(2)));
    let table = [
        (Input::Grip, 0.05, 0.229),
        (Input::ArmLength, 0.01 / 0.56, 0.05),
        (Input::HandLength, 0.003 / 0.172, 0.0572),
        (Input::BodyMass, 0.5 / 46.0, 0.122),
        (Input::Balance, 0.002 / 0.4953, 0.0603),
        (Input::Trunk, 0.30, 0.30),
        (Input::Shoulders, 0.20, 0.20),
        (Input::Wrists, 0.15, 0.15),
        (Input::Friction, 0.25, 0.25),
        // Two of them from 15 to 60 ms about 30.
        (Input::TorqueRise, 0.3466, 0.3466),
    ];
    for (input, known, guessed) in table {
        let (a, b) = (find(&measured, input).unwrap(), find(&estimated, input).unwrap());
        assert_relative_eq!(a.relative_sd, known, max_relative = 0.01);
        assert_relative_eq!(b.relative_sd, guessed, max_relative = 0.01);
        if known != guessed {
            assert_eq!((a.standing, b.standing), (Standing::Measured, Standing::Measurable));
        } else {
            assert_eq!((a.standing, b.standing), (Standing::OutOfReach, Standing::OutOfReach));
        }
    }
    assert!(find(&measured, Input::WristHold).is_some());
    assert!(find(&estimated, Input::WristHold).is_none(), "the test was not done");
}

/// What the best values give is what the innings gives by itself; the ball's flight moves no bat; and
/// the same draws give the same bytes on one thread and on four.
#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn a_study_starts_from_the_innings_and_is_the_same_on_any_number_of_threads() {
    let loaded = Loaded::of("measured-well");
    let asked_time_s = loaded.asked_time_s();
    let on = |threads: usize| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build().unwrap();
        pool.install(|| loaded.study(2, &asked_time_s).unwrap())
    };
    let it = on(1);
    assert_eq!(it, on(4));
    assert_eq!((it.rows, it.left_out, it.figures.len()), (2, 0, 6), "one bat: no difference");

    let plan = &loaded.scenario.innings;
    let ball = loaded.scenario.bowling;
    let batter = loaded.batter();
    let bat = &loaded.bats[0].bat;
    let played = play(&batter, bat, plan, ball, &asked_time_s, &[0.0, plan.runs]).unwrap();
    let best = |figure: Figure| it.figures.iter().find(|it| it.figure == figure).unwrap().best;
    let (fresh, late) = (&played[0].without_slow[1], &played[1].with_slow[1]);
    let near = |figure: Figure, value: f64| {
        assert_relative_eq!(best(figure), value, max_relative = 5e-4);
    };
    near(Figure::FreshSpeed, fresh.fastest.bat_speed_m_s);
    near(Figure::LateSpeed, late.fastest.bat_speed_m_s);
    near(Figure::TimeInHand, late.time_in_hand_s);
    near(Figure::FastestBall, late.fastest_ball_m_s);
    near(Figure::WristShare, late.wrist_share);
    near(Figure::GripShare, late.grip_share);

    let total = |figure: Figure, input: Input| {
        let place = it.inputs.iter().position(|it| it.input == input).unwrap();
        let figure = it.figures.iter().find(|it| it.figure == figure).unwrap();
        figure.divided.indices[place].total.value
    };
    for input in [Input::BowlingSpeed, Input::BallFlight, Input::ReactionTime] {
        assert_eq!(total(Figure::LateSpeed, input), 0.0);
        assert_eq!(total(Figure::FreshSpeed, Input::LastingFatigue), 0.0);
    }
    assert!(total(Figure::TimeInHand, Input::BowlingSpeed) > 0.05);
    for input in [Input::Trunk, Input::TorqueRise, Input::Friction, Input::HandleDiameter] {
        assert!(total(Figure::LateSpeed, input) > 0.0, "{input:?}");
    }
}

#[test]
fn a_study_without_rows_is_refused_and_one_that_is_stopped_stops() {
    let loaded = Loaded::of("measured-well");
    let asked_time_s = [0.6; 3];
    assert_eq!(loaded.study(1, &asked_time_s), Err(StudyFault::Rows { rows: 1 }));
    let asked = Asked {
        known: loaded.known(1),
        strokes: &loaded.strokes,
        pull: 1,
        plan: &loaded.scenario.innings,
        asked_time_s: &asked_time_s,
        rows: 64,
    };
    let stopped = study(&asked, &|_| ControlFlow::Break(()));
    assert_eq!(stopped, Err(StudyFault::Stopped));
}
