//! The card, the map and the innings as files.

use backlift::bat::figures::WeighedBat;
use backlift::bat::pickup_weight::pickup_weight_kg;
use backlift::card::Figure;
use backlift::drawing::DrawingFault;
use backlift::drawing::map;
use backlift::drawing::map_picture::{MapBat, MapPicture, MapTarget};
use backlift::drawing::ounce_chart;
use backlift::drawing::palette::LIGHT;
use backlift::drawing::pdf::pdf;
use backlift::drawing::png::png;
use backlift::drawing::sheet;
use backlift::files::card;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::fit::map::{Cell, Grid};
use backlift::innings::score::runs_words;
use backlift::measurement::bench::bat_letter;
use backlift::measurement::plan::Goal;
use backlift::questions::fitted::{BAT_TO_ORDER, Fitted};
use backlift::stroke::PULL;
use backlift::units::{Quantity, Units, spoken};

use crate::beside::Beside;
use crate::figure::speed_unit;
use crate::innings_picture::Through;
use crate::ounce;
use crate::written::add_picture;

/// Pixels of the card's picture to a px of the sheet.
const PIXELS: f64 = 2.0;
/// Size of the map, px.
const MAP: [f64; 2] = [900.0, 640.0];

pub fn add(folder: &mut Folder, it: &Fitted, units: Units) -> Result<(), Fault> {
    let beside = Beside::scenario(&it.loaded);
    let picture = map_picture(it, units);
    let sheet = sheet_with(it, &picture).map_err(Fault::new)?;
    let mut ounces = ounce::picture(&it.ounces(), units);
    ounces.sentence = beside.sentence(&ounces.sentence);
    let second = ounce_chart::page(&ounces);
    folder.add("card.pdf", &pdf(&[&sheet, &second], "Bat card").map_err(Fault::new)?)?;
    folder.add("card.png", &png(&sheet, PIXELS).map_err(Fault::new)?)?;
    folder.add("card.ron", card::write(&it.card).map_err(Fault::new)?.as_bytes())?;
    let sentence = beside.sentence(&picture.sentence);
    let picture = MapPicture { sentence, ..picture };
    let svg = map::svg(&picture, &LIGHT, MAP[0], MAP[1]).map_err(Fault::new)?;
    add_picture(folder, "map", &svg)?;
    let through = Through { bat: 0, label: BAT_TO_ORDER, points: &it.headline.points };
    let strokes = it.fitting.setting().batter.strokes.iter().map(|it| it.stroke.name.clone());
    through.add(folder, strokes.enumerate(), beside.sentence(&innings_sentence(it, units)), units)
}

/// The card as one A4 page.
#[cfg(feature = "studio")]
pub fn sheet(it: &Fitted, units: Units) -> Result<String, DrawingFault> {
    sheet_with(it, &map_picture(it, units))
}

/// The card with its map; the maker has no use for the bats the player has now.
fn sheet_with(it: &Fitted, picture: &MapPicture) -> Result<String, DrawingFault> {
    let for_the_maker = MapPicture { bats: Vec::new(), ..picture.clone() };
    sheet::svg(&it.card, Some(&for_the_maker))
}

/// The map on the grid of its cells.
pub fn map_picture(it: &Fitted, units: Units) -> MapPicture {
    let Grid { mass_kg, balance_m, cells } = Grid::of(it.fitting.map());
    let (unit, per_m_s) = speed_unit(units);
    let size = it.loaded.sizes.iter().find(|s| s.name == it.card.size);
    let reference = size.and_then(|s| s.reference.bat("reference").ok());
    let value = cells.iter().map(|it| it.map(|it| per_m_s * it.worth.mean_m_s())).collect();
    let pickup = |it: &Cell| {
        let moment = it.made.bat.swing_moment_kg_m2();
        reference.as_ref().map(|reference| pickup_weight_kg(reference, moment))
    };
    let pickup = cells.iter().map(|it| it.and_then(pickup)).collect();
    let of_bat =
        |it: &WeighedBat| MapBat { mass_kg: it.bat.mass_kg(), balance_m: it.bat.balance_m() };
    MapPicture {
        sentence: format!(
            "What bats of size {} are worth to this player over the innings; the frame is the card's tolerance{}",
            it.card.size,
            letters(it)
        ),
        mass_kg,
        balance_m,
        value,
        value_label: value_label(it, unit),
        pickup_weight_kg: pickup,
        bats: it.loaded.bats.iter().map(of_bat).collect(),
        target: Some(MapTarget {
            mass_kg: it.card.asked(Figure::DeadWeight),
            balance_m: it.card.asked(Figure::Balance),
        }),
    }
}

/// What the shades are, as the goal judges bats.
pub fn value_label(it: &Fitted, unit: &str) -> String {
    match it.loaded.scenario.fit.goal {
        Goal::BallSpeed => format!("expected ball speed, late balls and mishits counted, {unit}"),
        Goal::BatSpeed => format!("expected bat speed, late balls counted, {unit}"),
    }
}

/// Which letter is which of the weighed bats: "; A is Old faithful, B Big edges".
fn letters(it: &Fitted) -> String {
    let named =
        |(n, bat): (usize, &WeighedBat)| format!("{} is {}", bat_letter(n), bat.reading.label);
    let all: Vec<String> = it.loaded.bats.iter().enumerate().map(named).collect();
    if all.is_empty() { String::new() } else { format!("; {}", all.join(", ")) }
}

/// What a coach would say of the innings: the pull, then what the band is.
fn innings_sentence(it: &Fitted, units: Units) -> String {
    let band = "the band is how little is known of lasting fatigue";
    let pull = it.fitting.setting().batter.stroke_index(PULL);
    let points = &it.headline.points;
    let speed_at =
        |n: usize, stroke: usize| points.get(n).map(|p| p.with_slow[stroke].bat_speed_m_s());
    let pull = pull.and_then(|i| speed_at(0, i).zip(speed_at(it.headline.end, i)));
    let Some((fresh, late)) = pull else {
        return format!("Bat speed of each stroke through the innings; {band}");
    };
    let lost = (fresh - late).max(0.0);
    format!(
        "With the bat to order the pull loses {} of its {} by {}; {band}",
        spoken(Quantity::Speed, lost, 0.3 * lost, units),
        spoken(Quantity::Speed, fresh, 0.3, units),
        runs_words(it.fitting.setting().plan.runs)
    )
}
