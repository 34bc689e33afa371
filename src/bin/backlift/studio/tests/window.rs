//! The real window on a display that nobody sees: real clicks and typing the whole way, and what it shows
//! held against the panels drawn without it; and that it rests.

use std::path::{Path, PathBuf};
use std::process::Child;
use std::time::{Duration, Instant};

use egui_kittest::kittest::Queryable;
use resvg::tiny_skia::Pixmap;
use tempfile::{TempDir, tempdir};

use super::display::{Display, SCREEN, pause};
use super::paths::{Window, click, drag, wait, window_on};
use super::picture::Screen;
use super::{file_of, pull_demo};
use crate::studio::action::Action;
use crate::studio::look::Look;
use crate::studio::recovery::Recovery;
use crate::studio::state::Studio;

/// Mean difference of a channel, and share of pixels with one above 64, between the window and the panels
/// drawn without it: the same shapes, with other smoothing of their edges.
const MEAN: f64 = 6.0;
const ODD: f64 = 0.03;

/// Share of one processor that a window may take in which nothing happens.
const AT_REST: f64 = 0.02;
/// Watched for so long, s.
const WATCHED_S: f64 = 5.0;
/// Until then everything must have been worked out, on two shared cores.
const SETTLED: Duration = Duration::from_secs(240);

/// A file of one stroke: what is clicked and shown is the same of three.
fn kit() -> (TempDir, PathBuf) {
    file_of("kit.ron", pull_demo().document.text())
}

/// The window on the whole screen, with little detail from the start: a notice that it was reduced would move
/// everything.
fn opened(display: &Display, arguments: &[&str], folder: &Path) -> Child {
    let look = Look { reduced_detail: true, ..Look::default() };
    Recovery::within(folder.join("state").join("backlift")).keep_look(&look);
    let program = display.open(arguments, folder);
    display.tool(&["search", "--sync", "--onlyvisible", "--name", "Backlift"]);
    let [width, height] = SCREEN.map(|it| it.to_string());
    let search = ["search", "--name", "Backlift"];
    display.tool(&[&search[..], &["windowmove", "0", "0"]].concat());
    display.tool(&[&search[..], &["windowsize", "--sync", &width, &height]].concat());
    display.tool(&[&search[..], &["windowfocus"]].concat());
    // The first swing is worked out; a key that comes earlier finds nothing to stop.
    let waits = (0..120).find(|_| moved(display, 2) == 2);
    assert!(waits.is_some(), "nothing ever moves");
    program
}

/// The net in the middle of the window, without its words below and above.
fn net(display: &Display) -> Vec<[u8; 3]> {
    let picture = display.picture();
    let places = (120..480).flat_map(|y| (300..900).map(move |x| (x, y)));
    places.map(|(x, y)| picture[y * SCREEN[0] as usize + x]).collect()
}

/// How often the net is another a second later, in so many seconds.
fn moved(display: &Display, seconds: usize) -> usize {
    let mut before = net(display);
    let mut moves = || {
        pause(1_000);
        let now = net(display);
        std::mem::replace(&mut before, now.clone()) != now
    };
    (0..seconds).filter(|_| moves()).count()
}

/// Clicks the same in both; what follows is there in the panels at once.
fn click_both(display: &Display, it: &mut Window, label: &str) {
    let at = it.get_by_label(label).rect().center();
    display.click(at);
    click(it, label);
    wait(it);
}

/// What the window shows against the panels of the same state. A window that works may be slow to show what was clicked,
/// and is still meanwhile.
fn compare(display: &Display, it: &mut Window, room: egui::Rect, name: &str) {
    let mut screen = Screen::new(SCREEN);
    for _ in 0..3 {
        screen.frame(it.state_mut());
    }
    let output = screen.frame(it.state_mut());
    let drawn = screen.drawn(output);
    let [mut mean, mut odd] = [f64::INFINITY; 2];
    for _ in 0..20 {
        let seen = display.still_picture();
        keep(name, &seen, &drawn);
        [mean, odd] = apart(&seen, &drawn, room);
        if mean < MEAN && odd < ODD {
            break;
        }
    }
    eprintln!("{name}: mean {mean:.2}, odd {:.2} %", 100.0 * odd);
    assert!(mean < MEAN && odd < ODD, "{name}: {mean} {odd}");
}

/// Both as files, where somebody asks for them.
fn keep(name: &str, seen: &[[u8; 3]], drawn: &Pixmap) {
    let Some(folder) = std::env::var_os("BACKLIFT_PICTURES") else { return };
    let rgba: Vec<u8> = seen.iter().flat_map(|[r, g, b]| [*r, *g, *b, 255]).collect();
    let png = backlift::drawing::png::of_pixels(SCREEN[0], SCREEN[1], &rgba).unwrap();
    std::fs::write(Path::new(&folder).join(format!("window {name}.png")), png).unwrap();
    drawn.save_png(Path::new(&folder).join(format!("panels {name}.png"))).unwrap();
}

/// Mean difference of a channel, and the share of pixels with one above 64.
fn apart(seen: &[[u8; 3]], drawn: &Pixmap, room: egui::Rect) -> [f64; 2] {
    let (mut sum, mut odd, mut count) = (0.0, 0.0, 0.0);
    for (n, (a, b)) in seen.iter().zip(drawn.pixels()).enumerate() {
        let (x, y) = (n as u32 % SCREEN[0], n as u32 / SCREEN[0]);
        if !room.contains(egui::pos2(x as f32, y as f32)) {
            continue;
        }
        let drawn = [b.red(), b.green(), b.blue()];
        let most = drawn.iter().zip(a).map(|(p, q)| f64::from(p.abs_diff(*q))).fold(0.0, f64::max);
        sum += most;
        odd += f64::from(u8::from(most > 64.0));
        count += 1.0;
    }
    [sum / count, odd / count]
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn real_clicks_go_from_a_measurement_over_swing_innings_and_map_to_the_card() {
    let (folder, file) = kit();
    let display = Display::start(folder.path());
    let mut program = opened(&display, &["studio", "kit.ron"], folder.path());
    let mut it = window_on(Studio::new(Some(&file), Recovery::default()).unwrap());
    it.state_mut().apply(Action::ReducedDetail(true));
    it.run_steps(3);
    let whole = egui::Rect::from_min_size(egui::Pos2::ZERO, egui::vec2(1366.0, 768.0));

    // Measure: another scale weight, written as people write it.
    display.tool(&["key", "space"]);
    display.still_picture();
    click_both(&display, &mut it, "Bench");
    let field = it.get_all_by_label("Dead weight").last().unwrap().rect().center();
    display.click(field);
    display.with_control("a");
    display.tool(&["type", "--delay", "300", "2 lb 4 oz"]);
    display.tool(&["key", "Return"]);
    it.state_mut().apply(Action::Set("bats.0.mass".to_owned(), "2 lb 4 oz".to_owned()));
    wait(&mut it);
    compare(&display, &mut it, whole, "bench");

    // Swing: the figures beside, and a net that is no empty room.
    click_both(&display, &mut it, "Swing");
    let beside = egui::Rect::from_min_max(egui::pos2(960.0, 44.0), egui::pos2(1366.0, 540.0));
    compare(&display, &mut it, beside, "swing");
    let picture = display.picture();
    let colours: std::collections::BTreeSet<_> = (100..500)
        .flat_map(|y| (300..900).map(move |x| (x, y)))
        .map(|(x, y)| picture[y * SCREEN[0] as usize + x])
        .collect();
    assert!(colours.len() > 500, "only {} colours in the net", colours.len());

    // Innings.
    click_both(&display, &mut it, "Late on");
    click_both(&display, &mut it, "At fifty");
    let beside = egui::Rect::from_min_max(egui::pos2(960.0, 44.0), egui::pos2(1366.0, 560.0));
    compare(&display, &mut it, beside, "late on");

    // Map and card.
    click_both(&display, &mut it, "Map");
    let map = egui::Rect::from_min_max(egui::pos2(280.0, 50.0), egui::pos2(940.0, 760.0));
    compare(&display, &mut it, map, "map");
    click_both(&display, &mut it, "Card");
    compare(&display, &mut it, whole, "card");

    // The wood: a ring is dragged, figures and marks follow.
    click_both(&display, &mut it, "Wood");
    let ring = it.get_all_by_label_contains("drag: spine height").last().unwrap().rect().center();
    let end = ring + egui::vec2(0.0, 14.0);
    display.drag(ring, end);
    drag(&mut it, ring, end);
    wait(&mut it);
    assert!(!it.state().wood.paper.at("blade.depth").is_empty());
    compare(&display, &mut it, beside, "wood");
    click_both(&display, &mut it, "Card");

    // Saved, and closed: nothing is lost.
    display.with_control("s");
    pause(1_500);
    assert!(std::fs::read_to_string(&file).unwrap().contains("2 lb 4 oz"));
    program.kill().unwrap();
    program.wait().unwrap();
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn with_no_real_clicks_the_swing_moves_again_and_again_and_rests_when_paused() {
    let folder = tempdir().unwrap();
    let display = Display::start(folder.path());
    let mut program = opened(&display, &["studio"], folder.path());
    // A stroke is over in some seconds, and its end stands for one: what still moves went round again.
    let moves = moved(&display, 24);
    assert!(moves >= 12, "moved in {moves} of 24 seconds");
    display.tool(&["key", "space"]);
    display.still_picture();
    assert_eq!(moved(&display, 3), 0, "it moves while it is paused");
    display.tool(&["key", "space"]);
    let moves = moved(&display, 8);
    assert!(moves >= 4, "moved in {moves} of 8 seconds after it was played again");
    program.kill().unwrap();
    program.wait().unwrap();
}

/// Processor time that a program has taken, s.
fn taken_s(program: u32) -> f64 {
    let told = std::fs::read_to_string(format!("/proc/{program}/stat")).unwrap();
    let (_, after_name) = told.rsplit_once(')').unwrap();
    let ticks =
        |n: usize| -> f64 { after_name.split_whitespace().nth(n).unwrap().parse().unwrap() };
    (ticks(11) + ticks(12)) / 100.0
}

/// Waits until the window rests.
fn comes_to_rest(program: u32) -> bool {
    let started = Instant::now();
    while started.elapsed() < SETTLED {
        let before = taken_s(program);
        pause((1e3 * WATCHED_S) as u64);
        let share = (taken_s(program) - before) / WATCHED_S;
        eprintln!("{:.0?}: {:.1} % of a processor", started.elapsed(), 100.0 * share);
        if share < AT_REST {
            return true;
        }
    }
    false
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn a_window_in_which_nothing_happens_takes_no_processor() {
    let (folder, _) = kit();
    let display = Display::start(folder.path());
    let mut program = display.open(&["studio", "kit.ron"], folder.path());
    display.tool(&["search", "--sync", "--onlyvisible", "--name", "Backlift"]);
    display.tool(&["search", "--name", "Backlift", "windowfocus"]);
    pause(3_000);
    // A swing that nobody sees, and one that stands.
    display.tool(&["key", "F2"]);
    assert!(comes_to_rest(program.id()), "the bench");
    display.tool(&["key", "space"]);
    display.tool(&["key", "F3"]);
    assert!(comes_to_rest(program.id()), "a swing that stands");
    program.kill().unwrap();
    program.wait().unwrap();
}
