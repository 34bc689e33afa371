//! The maker's bench: dragged, carved, planed, kept.

use backlift::card::Figure;
use backlift::workshop::grab::{Grab, grabs};
use backlift::workshop::plane::Pass;
use egui::{Rect, pos2};
use egui_kittest::kittest::Queryable;
use tempfile::tempdir;

use super::paths::{click, drag, says, wait_until, window_on};
use super::{demo, file_of, killed, pass_until};
use crate::studio::action::{Action, Keep, View, Which};
use crate::studio::panels::{grab, target, wood};
use crate::studio::paper::OnDesk;
use crate::studio::recovery::Recovery;
use crate::studio::state::{Ask, Studio};
use crate::studio::wood::action::{Face, Holdable, Part, WoodAction, Work};

pub const CARD: &str = include_str!("../../../../../tests/commands/card.ron");
const BLADE: &str = include_str!("../../../../../scenarios/blade.ron");
const ROOM: Rect = Rect { min: pos2(0.0, 50.0), max: pos2(900.0, 450.0) };

pub fn act(it: &mut Studio, action: WoodAction) {
    it.apply(Action::Wood(action));
}

/// The junior's bench with a card opened.
pub fn with_card() -> (Studio, tempfile::TempDir) {
    let (folder, card) = file_of("card.ron", CARD);
    let mut it = demo();
    it.apply(Action::View(View::Wood));
    act(&mut it, WoodAction::Card(card));
    act(&mut it, WoodAction::New);
    (it, folder)
}

fn grab_of(it: &Studio, path: &str) -> Grab {
    let shape = it.wood.shown().unwrap();
    grabs(shape).into_iter().find(|it| it.path == path).unwrap()
}

/// A point that can be dragged as it is seen on the bench, if it is.
fn offered(it: &Studio, path: &str) -> Option<grab::Offered> {
    let bench = it.on_bench(ROOM)?;
    let on_screen = |at| bench.eye.on_screen(bench.point_W(at), ROOM);
    grab::offered(&grab_of(it, path), &on_screen)
}

fn passes(it: &Studio) -> &[Pass] {
    &it.wood.planned.as_ref().unwrap().plan.as_ref().unwrap().passes
}

fn mass_kg(it: &Studio) -> f64 {
    it.wood.worked.as_ref().unwrap().bat.mass_kg.value
}

#[test]
fn a_point_that_is_dragged_follows_the_pointer_and_its_figure_with_it() {
    let mut it = demo();
    it.apply(Action::View(View::Wood));
    act(&mut it, WoodAction::See(Face::Edge));
    for path in ["blade.depth", "blade.edge", "blade.swell", "blade.toe_depth", "blade.length"] {
        let before = grab_of(&it, path);
        // Far enough that the rounding of the figure is small.
        let way = offered(&it, path).unwrap().per_unit;
        let long = libm::hypot(way[0], way[1]);
        let by = way.map(|it| 12.0 * it / long);
        let value = before.dragged(before.value, by, way).unwrap();
        act(&mut it, WoodAction::Grab(path.to_owned(), value));
        let after = grab_of(&it, path);
        assert!((after.value - value).abs() < 1e-9, "{path}: {} {value}", after.value);
        // The bat is seen from nearer or farther when it gets longer: in metres, not in pixels.
        let moved_m = (after.at_B - before.at_B).dot(before.way_B) / before.way_B.length_squared();
        assert!((moved_m - (value - before.value)).abs() < 2e-4, "{path}: {moved_m}");
        act(&mut it, WoodAction::LetGo);
    }
    assert!(it.wood.faults.is_empty(), "{:?}", it.wood.faults);
}

#[test]
fn a_point_whose_way_runs_along_the_line_of_sight_is_not_offered() {
    let mut it = demo();
    it.apply(Action::View(View::Wood));
    let is_offered = |it: &Studio, path: &str| offered(it, path).is_some();
    assert!(is_offered(&it, "blade.width") && is_offered(&it, "blade.swell"));
    assert!(!is_offered(&it, "blade.depth") && !is_offered(&it, "blade.edge"));
    act(&mut it, WoodAction::See(Face::Edge));
    assert!(is_offered(&it, "blade.depth") && is_offered(&it, "blade.edge"));
    assert!(!is_offered(&it, "blade.width"));
}

#[test]
fn a_whole_drag_is_one_step_back() {
    let mut it = demo();
    it.apply(Action::View(View::Wood));
    let (text, before_kg) = (it.wood.paper.text().to_owned(), mass_kg(&it));
    let scenario = it.document.text().to_owned();
    for mm in [30.0, 31.0, 32.0, 33.0] {
        act(&mut it, WoodAction::Grab("blade.edge".into(), 1e-3 * mm));
        assert!(it.bench_solid(28).is_some());
    }
    act(&mut it, WoodAction::LetGo);
    assert_eq!(it.wood.paper.at("blade.edge"), "33 mm");
    assert_eq!(it.wood.paper.history().last(), Some("Blade edge: 33 mm"));
    let after_kg = mass_kg(&it);
    it.apply(Action::Undo);
    assert_eq!((it.wood.paper.text(), mass_kg(&it)), (text.as_str(), before_kg));
    it.apply(Action::Redo);
    assert_eq!(mass_kg(&it), after_kg);
    assert_eq!(it.document.text(), scenario, "steps at the maker's bench leave the scenario alone");
}

#[test]
fn a_shape_carved_to_the_card_turns_every_mark() {
    let (mut it, _folder) = with_card();
    assert!(target::targets(&it).iter().any(|it| !it.is_met()));
    act(&mut it, WoodAction::Set("blade.swell".into(), "170 mm".into()));
    act(&mut it, WoodAction::Hold(Holdable::Swell, true));
    act(&mut it, WoodAction::Carve);
    pass_until(&mut it, |it| it.carved().is_some());
    let carved = it.carved().unwrap();
    assert!(!carved.it.answers.is_empty(), "{:?}", carved.it.broken);
    let swell_m = it.wood.worked.as_ref().unwrap().bat.shape.swell_from_toe_m();
    act(&mut it, WoodAction::Take(0));
    let targets = target::targets(&it);
    assert_eq!(targets.len(), Figure::ALL.len());
    for it in &targets {
        assert!(it.is_met(), "{:?}: {} of {:?}", it.figure, it.value, it.asked);
    }
    let now_m = it.wood.worked.as_ref().unwrap().bat.shape.swell_from_toe_m();
    assert!((now_m - swell_m).abs() < 1e-5, "{now_m} {swell_m}");
    // Still a description that can be dragged at, and taken back.
    let edge_m = grab_of(&it, "blade.edge").value;
    act(&mut it, WoodAction::Grab("blade.edge".into(), edge_m - 0.002));
    act(&mut it, WoodAction::LetGo);
    assert!((grab_of(&it, "blade.edge").value - (edge_m - 0.002)).abs() < 1e-6);
    it.apply(Action::Undo);
    it.apply(Action::Undo);
    assert!(target::targets(&it).iter().any(|it| !it.is_met()));
}

#[test]
fn the_plan_of_a_heavy_bat_leads_pass_by_pass_to_its_card() {
    let (mut it, _folder) = with_card();
    let card = it.wood_card().unwrap().clone();
    it.apply(Action::Set("bats.0.mass".into(), format!("{:.3} kg", card.mass_kg() + 0.15)));
    it.apply(Action::Set("bats.0.balance".into(), format!("{:.4} m", card.balance_m() + 0.002)));
    it.apply(Action::Set("bats.0.size".into(), card.size.clone()));
    for field in ["swings", "time", "pivot"] {
        it.apply(Action::Set(format!("bats.0.pendulum.{field}"), String::new()));
    }
    it.apply(Action::BenchBat(0));
    act(&mut it, WoodAction::Work(Work::Plane));
    act(&mut it, WoodAction::On(Part::Oil, false));
    it.tick(0.0);
    let planned = it.wood.planned.as_ref().unwrap();
    let plan = planned.plan.as_ref().unwrap();
    assert!(!plan.passes.is_empty());
    let all = plan.passes.len();
    // What the regions take is what the passes take, before any and after some.
    for done in 0..=all {
        let regions: f64 = planned.regions(done).iter().map(|it| it.off_kg).sum();
        let passes: f64 = plan.passes.iter().skip(done).map(|it| it.off_kg).sum();
        assert!((regions - passes).abs() < 1e-12);
    }
    let before_kg = it.wood.shown().unwrap().mass_moments().mass_kg;
    act(&mut it, WoodAction::Done(all + 5));
    assert_eq!(it.wood.done, all);
    let off_kg: f64 = passes(&it).iter().map(|it| it.off_kg).sum();
    let after_kg = it.wood.shown().unwrap().mass_moments().mass_kg;
    assert!((before_kg - after_kg - off_kg).abs() < 1e-9);
    assert!(it.wood.to_come_off().is_empty());
    // Weighed again, the plan corrects itself and begins anew.
    let key = it.wood.planned.as_ref().unwrap().key;
    it.apply(Action::Set("bats.0.mass".into(), format!("{:.3} kg", card.mass_kg() + 0.03)));
    it.tick(0.0);
    let planned = it.wood.planned.as_ref().unwrap();
    assert_ne!(planned.key, key);
    let again: f64 = passes(&it).iter().map(|it| it.off_kg).sum();
    assert!((again - off_kg).abs() > 0.01);
    assert_eq!(it.wood.done, 0);
    assert!(passes(&it).is_empty() || !it.wood.to_come_off().is_empty());
}

#[test]
fn wood_to_come_off_is_painted_and_the_face_is_not() {
    let (mut it, _folder) = with_card();
    let card = it.wood_card().unwrap().clone();
    it.apply(Action::Set("bats.0.mass".into(), format!("{:.3} kg", card.mass_kg() + 0.15)));
    act(&mut it, WoodAction::Work(Work::Plane));
    it.tick(0.0);
    // Corners whose colour changes when all is planed; the blade does not move under them by a millimetre but
    // where it is cut.
    let face_m = it.wood.shown().unwrap().blade.face_m;
    let shoulder_m = it.wood.shown().unwrap().handle.length_m;
    let before = it.bench_solid(12).unwrap();
    act(&mut it, WoodAction::Done(usize::MAX));
    let after = it.bench_solid(12).unwrap();
    assert_eq!(before.positions.len(), after.positions.len());
    let (mut back, mut face) = (0, 0);
    for (n, [x, _, z]) in before.positions.iter().enumerate() {
        let is_blade = f64::from(*x) > shoulder_m + 0.01;
        if is_blade && before.tones[n] != after.tones[n] {
            // The face lies within its camber of its middle.
            let on_face = f64::from(*z) > face_m - 0.004;
            *(if on_face && before.normals[n][2] > 0.5 { &mut face } else { &mut back }) += 1;
        }
    }
    assert!(back > 100 && face == 0, "{back} {face}");
}

#[test]
fn a_described_bat_is_opened_changed_and_saved_with_its_notes() {
    let (_folder, file) = file_of("blade.ron", BLADE);
    let mut it = demo();
    it.apply(Action::Dropped(file.clone()));
    assert_eq!((it.view, it.wood.paper.path()), (View::Wood, Some(file.as_path())));
    act(&mut it, WoodAction::Set("blade.edge".into(), "35 mm".into()));
    act(&mut it, WoodAction::Save);
    assert!(!it.wood.paper.is_changed());
    let text = std::fs::read_to_string(&file).unwrap();
    assert_eq!(text, BLADE.replace("edge: \"37 mm\"", "edge: \"35 mm\""));
    // What cannot be is said at its field, and the last good bat stays.
    let kg = mass_kg(&it);
    act(&mut it, WoodAction::Set("blade.edge".into(), "90 mm".into()));
    assert_eq!(it.wood.about("blade.edge").count(), 1, "{:?}", it.wood.faults);
    assert_eq!(mass_kg(&it), kg);
}

#[test]
fn unsaved_wood_stands_in_the_way_of_closing_and_is_offered_after_a_kill() {
    let folder = tempdir().unwrap();
    let recovery = Recovery::within(folder.path().join("state"));
    killed(None, &recovery, |it| {
        it.apply(Action::View(View::Wood));
        act(it, WoodAction::Set("blade.edge".into(), "31 mm".into()));
    });

    let mut it = Studio::new(None, recovery).unwrap();
    assert!(it.document.offered().is_none() && it.wood.paper.offered().is_some());
    act(&mut it, WoodAction::Rescue);
    assert_eq!(it.wood.paper.at("blade.edge"), "31 mm");
    it.apply(Action::Close);
    assert!(!it.closed && it.waiting.is_some());
    it.apply(Action::Keep(Keep::Save));
    assert_eq!(it.asks.pop_front(), Some(Ask::SaveAs(Which::Bat)));
    act(&mut it, WoodAction::SaveAs(folder.path().join("bat.ron")));
    assert!(it.closed);

    let mut it = demo();
    act(&mut it, WoodAction::Set("blade.edge".into(), "31 mm".into()));
    it.apply(Action::Set("player.age".into(), "14".into()));
    it.apply(Action::Close);
    it.apply(Action::Keep(Keep::Drop));
    assert!(!it.closed, "the scenario was let go, the bat not yet");
    it.apply(Action::Keep(Keep::Drop));
    assert!(it.closed);
}

#[test]
fn a_maker_drags_a_ring_carves_to_the_card_and_sees_the_plan() {
    let (state, folder) = with_card();
    let mut it = window_on(state);
    let ring = it.get_all_by_label_contains("drag: spine height").last().unwrap().rect().center();
    let depth_m = grab_of(it.state(), "blade.depth").value;
    drag(&mut it, ring, ring + egui::vec2(0.0, 12.0));
    assert!(grab_of(it.state(), "blade.depth").value > depth_m + 0.001);
    assert!(it.state().wood.paper.history().last().is_some());
    click(&mut it, "Undo");
    click(&mut it, "hold the edge");
    click(&mut it, "Find shapes that meet it");
    wait_until(&mut it, |it| it.carved().is_some());
    click(&mut it, "plain");
    assert!(says(&it, "all the card asks"));
    click(&mut it, "Plane a bat");
    assert!(says(&it, "On the bench"));
    it.state_mut().apply(Action::Wood(WoodAction::Write(folder.path().join("bench"))));
    wait_until(&mut it, |it| !it.notices.is_empty());
    assert!(folder.path().join("bench").join("bat.stl").is_file());
    assert!(says(&it, "Wrote "));
}

#[test]
fn letting_changes_go_and_then_staying_loses_nothing() {
    let mut it = demo();
    it.apply(Action::Set("player.age".into(), "14".into()));
    act(&mut it, WoodAction::Set("blade.edge".into(), "31 mm".into()));
    it.apply(Action::Close);
    it.apply(Action::Keep(Keep::Drop));
    it.apply(Action::Keep(Keep::Stay));
    assert!(!it.closed && it.waiting.is_none());
    assert_eq!(it.document.at("player.age"), "14");
    assert_eq!(it.wood.paper.at("blade.edge"), "31 mm");
    // And the question comes for both again.
    it.apply(Action::Close);
    it.apply(Action::Keep(Keep::Drop));
    assert!(!it.closed && it.waiting.is_some());
}

#[test]
fn a_question_whose_reason_is_gone_does_nothing_later() {
    let mut it = demo();
    it.apply(Action::Set("player.age".into(), "14".into()));
    it.apply(Action::Close);
    it.apply(Action::Undo);
    assert!(it.waiting.is_none());
    it.apply(Action::Set("player.age".into(), "15".into()));
    let folder = tempdir().unwrap();
    it.apply(Action::SaveAs(folder.path().join("it.ron")));
    assert!(!it.closed);
}

#[test]
fn what_an_earlier_window_left_stays_beside_new_work_until_it_is_decided_on() {
    let folder = tempdir().unwrap();
    let recovery = Recovery::within(folder.path().join("state"));
    for edge in ["31 mm", "32 mm"] {
        killed(None, &recovery, |it| {
            act(it, WoodAction::Set("blade.edge".into(), edge.into()));
        });
    }
    let edges = |it: &Recovery| {
        let mut all = Vec::new();
        while let Some(rescued) = it.for_bats().any() {
            all.push(rescued.text.contains("31 mm"));
            it.for_bats().forget_rescued(&rescued);
        }
        all.sort_unstable();
        all
    };
    assert_eq!(edges(&recovery), [false, true]);
}

#[test]
fn a_bat_with_a_fault_is_not_shown_as_the_one_before() {
    let blade = BLADE.replace("edge: \"37 mm\"", "edge: \"90 mm\"");
    let (_folder, file) = file_of("blade.ron", &blade);
    let mut it = demo();
    it.apply(Action::View(View::Wood));
    assert!(it.on_bench(ROOM).is_some());
    act(&mut it, WoodAction::Open(file));
    assert!(it.on_bench(ROOM).is_none() && !it.wood.faults.is_empty());
}

#[test]
fn every_shape_that_is_offered_can_be_kept_and_still_meets_the_card() {
    let (mut it, _folder) = with_card();
    act(&mut it, WoodAction::Carve);
    pass_until(&mut it, |it| it.carved().is_some());
    let count = it.carved().unwrap().it.answers.len();
    assert!(count > 2);
    for n in 0..count {
        act(&mut it, WoodAction::Take(n));
        assert!(it.wood.faults.is_empty(), "{n}: {:?}", it.wood.faults);
        for target in target::targets(&it) {
            assert!(target.is_met(), "{n}: {:?} {}", target.figure, target.value);
        }
        it.apply(Action::Undo);
    }
}

#[test]
fn a_ring_that_is_dragged_too_far_stops_where_the_blade_allows_it_and_says_why() {
    let mut it = demo();
    it.apply(Action::View(View::Wood));
    let depth_m = grab_of(&it, "blade.depth").value;
    for path in ["blade.edge", "blade.toe_depth", "blade.hollow", "handle.diameter", "blade.width"]
    {
        let from = grab_of(&it, path).value;
        let [least, most] = grab_of(&it, path).range;
        for to in [least, most.min(0.3)] {
            act(&mut it, WoodAction::Grab(path.into(), to));
            assert!(it.wood.faults.is_empty(), "{path} to {to}: {:?}", it.wood.faults);
            let stop = it.wood.stop.clone();
            if let Some(stop) = &stop {
                let words = wood::stopped(stop, backlift::units::Units::Trade);
                eprintln!("{words}");
                assert!(words.contains(" stops at ") && !words.contains("\u{2009}m:"), "{words}");
                assert!((grab_of(&it, path).value - stop.value).abs() < 1e-6, "{path}");
                // The next step further is none.
                let step = if path == "blade.hollow" { 0.005 } else { 1e-4 };
                let further = stop.value + step * (to - from).signum();
                let text = it.wood.paper.text().to_owned();
                act(&mut it, WoodAction::Grab(path.into(), further));
                assert_eq!(it.wood.paper.text(), text, "{path}");
            }
            // And back again, in the same drag.
            act(&mut it, WoodAction::Grab(path.into(), from));
            assert!((grab_of(&it, path).value - from).abs() < 1e-4 && it.wood.stop.is_none());
            act(&mut it, WoodAction::LetGo);
        }
    }
    // Edges thicker than the blade is deep are what a drag reaches first.
    act(&mut it, WoodAction::Grab("blade.edge".into(), 0.3));
    let stop = it.wood.stop.clone().unwrap();
    assert!(stop.value <= depth_m && stop.value > 0.5 * depth_m, "{stop:?}");
    let told = wood::stopped(&stop, backlift::units::Units::Trade);
    assert!(told.contains("mm: ") && told.starts_with("Blade edge stops at "), "{told}");
    assert!(wood::stopped(&stop, backlift::units::Units::Si).contains("\u{2009}m: "));
    assert!(it.notices.is_empty());
    let shown = window_on(it);
    assert!(says(&shown, "Blade edge stops at "));
}

#[test]
fn a_blade_that_nobody_touched_is_of_the_size_of_its_card_and_one_that_was_stays() {
    let size = |it: &Studio| it.wood.worked.as_ref().unwrap().loaded.size.name.clone();
    let (_folder, card) = file_of("card.ron", &CARD.replace("size: \"6\"", "size: \"4\""));
    let mut it = demo();
    assert_eq!(size(&it), "6");
    it.apply(Action::Set("bats.0.size".into(), "Harrow".into()));
    assert_eq!(size(&it), "Harrow");
    act(&mut it, WoodAction::Card(card.clone()));
    let asked = it.wood_card().unwrap().size.clone();
    assert_ne!(asked, "Harrow");
    assert_eq!(size(&it), asked);
    act(&mut it, WoodAction::FittedCard);
    assert_eq!(size(&it), "Harrow");
    act(&mut it, WoodAction::Set("blade.edge".into(), "31 mm".into()));
    act(&mut it, WoodAction::Card(card));
    assert_eq!(size(&it), "Harrow");
}
