//! A described bat as files: templates to print, the solid, and the figures.

use backlift::bat::completed::Completed;
use backlift::bat::laws::Dimension;
use backlift::bat::mesh::shells;
use backlift::bat::shape::BatShape;
use backlift::bat::shaped::ShapedBat;
use backlift::card::{Card, Figure};
use backlift::drawing::{profile, templates};
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::files::solid;
use backlift::questions::shape::Worked;
use backlift::uncertain::Uncertain;
use backlift::workshop::cautions::SHAPE;
use backlift::workshop::to_card::{Answer, BrokenDemand, ToCard};
use serde_json::{Value, json};

use crate::bat_figure::{BALANCE, DEAD_WEIGHT, SWING_MOMENT};
use crate::beside::Beside;
use crate::json::{self, joined};
use crate::outcome::Stop;
use crate::written::add_pages;

/// Adds all of them to a folder.
pub fn add(folder: &mut Folder, worked: &Worked) -> Result<(), Stop> {
    let (bat, beside) = (worked.chosen(), beside(worked));
    let title = beside.sentence(&worked.title());
    let sections = templates::pages(&bat.shape.blade, &title);
    add_pages(folder, "sections", &sections, "Sections at true size")?;
    add_profile(folder, None, &bat.shape, &title)?;
    if let Some(text) = worked.written()? {
        folder.add("bat.ron", text.as_bytes())?;
    }
    let shells = shells(&bat.shape);
    folder.add("bat.stl", &solid::stl(&shells))?;
    folder.add("bat.glb", &solid::glb(&shells).map_err(Fault::new)?)?;
    let figures = json::document("shape", beside.figures(figures(worked)))?;
    Ok(folder.add("shape.json", figures.as_bytes())?)
}

/// Adds the blade from the side and the strips to cut out; with `before`, what comes off.
pub fn add_profile(
    folder: &mut Folder,
    before: Option<&BatShape>,
    after: &BatShape,
    title: &str,
) -> Result<(), Fault> {
    let pages = profile::pages(before, after, title);
    add_pages(folder, "profile", &pages, "Profile at true size")
}

/// The cautions of the bench and of the card's player; what is invented.
pub fn beside(worked: &Worked) -> Beside {
    let card = worked.to.as_ref().map(|(card, _)| Beside::card(card)).unwrap_or_default();
    card.after(SHAPE).described(worked.loaded.invented)
}

/// Writes the files of a described bat into a folder; returns how many.
#[cfg(feature = "studio")]
pub fn write(
    folder: &std::path::Path,
    loaded: backlift::files::shape::LoadedShape,
    bat: ShapedBat,
) -> Result<usize, Stop> {
    let mut into = Folder::open(folder)?;
    add(&mut into, &Worked { loaded, bat, middles: Vec::new(), to: None, own: true })?;
    Ok(into.commit()?.len())
}

/// The shape for other programs.
pub fn figures(worked: &Worked) -> Value {
    let bat = worked.chosen();
    let to = worked.to.as_ref();
    let met = match to {
        Some((card, it)) => {
            let best = it.answers.first().or(it.nearest.as_ref());
            best.map_or_else(Vec::new, |it| met_of(it, card))
        }
        None => laws_met(bat),
    };
    let answers = to.map(|(_, it)| {
        let wished = it.wished.as_ref();
        let one = |it: &Answer| {
            let mut out = named(it.name, &it.bat);
            out["middle"] = json!(it.middle.words());
            out["as_wished"] = json!(wished.map(|of| of.middle == it.middle));
            out
        };
        json!({
            "answers": it.answers.iter().map(one).collect::<Value>(),
            "chosen": worked.answer().map(|it| it.name),
            "wished_middle": wished.map(|it| it.middle.words()),
        })
    });
    let all_broken = |it: &ToCard| it.broken.iter().map(broken).collect::<Value>();
    let demands = to.map(|(_, it)| json!({ "demands_broken": all_broken(it) }));
    joined([
        json!({ "title": worked.loaded.title, "size": worked.loaded.size.name }),
        bat_of(bat),
        completed(worked),
        json!({
            "edition": bat.law.edition,
            "middles": worked.middles.iter().map(|(name, it)| named(name, it)).collect::<Value>(),
        }),
        answers.unwrap_or_default(),
        json!({ "met": met }),
        demands.unwrap_or_default(),
    ])
}

/// Where the blade was measured, and what its size's lines completed.
fn completed(worked: &Worked) -> Value {
    let blade = &worked.bat.shape.blade;
    let from_toe_m = |it: f64| (1.0 - it) * blade.length_m;
    let one = |it: &Completed| {
        let [from, to] = it.stretch;
        json!({
            "figure": it.line.words(),
            "from_toe_m": [from_toe_m(to), from_toe_m(from)],
            "sd": it.most_sd(),
        })
    };
    let measured = worked.loaded.described.blade.stations.iter();
    json!({
        "measured_from_toe_m": measured.map(|it| it.from_toe_m).collect::<Vec<f64>>(),
        "completed": worked.completed().iter().map(one).collect::<Value>(),
    })
}

fn broken(it: &BrokenDemand) -> Value {
    json!({
        "figure": it.figure.words(),
        "asked": it.asked.target,
        "tolerance": it.asked.tolerance,
        "nearest": it.nearest,
        "why": it.why,
    })
}

fn named(name: &str, bat: &ShapedBat) -> Value {
    let mut out = bat_of(bat);
    out["name"] = json!(name);
    out
}

fn sd(it: Option<Uncertain>) -> Option<f64> {
    it.map(|it| it.sd)
}

fn bat_of(it: &ShapedBat) -> Value {
    let I = it.bat.I_Com_B();
    let rows = [I.row(0), I.row(1), I.row(2)].map(|row| row.to_array());
    let blade = &it.shape.blade;
    let swell = blade.deepest();
    let rest = json!({
        "pickup_weight_kg": it.pickup_weight_kg.value,
        "com_B_m": it.bat.com_B().to_array(),
        "inertia_com_B_kg_m2": rows,
        "volume_m3": it.volume_m3,
        "area_m2": it.area_m2,
        "density_kg_m3": it.shape.blade.density_kg_m3,
        "density_sd_kg_m3": it.density_kg_m3.sd,
        "percussion_m": it.percussion_m.value,
        "bending_node_m": it.bending_node_m.map(|it| it.value),
        "bending_node_sd_m": sd(it.bending_node_m),
        "bending_hz": it.bending_hz.map(|it| it.value),
        "bending_sd_hz": sd(it.bending_hz),
        "length_m": it.shape.length_m(),
        "width_m": blade.width_m(),
        "edge_m": blade.thickest_edge_m(),
        "depth_m": swell.map(|it| it.depth_m),
        "hollow": swell.map(|it| it.hollow),
        "swell_from_toe_m": it.shape.swell_from_toe_m(),
        "legal": it.is_legal(),
        "rubber_share": it.rubber_share,
        "law_type": it.law_type.map(|it| it.letter()),
        "rubber_share_limit": it.rubber_share_limit,
        "rubber_share_allowed": it.rubber_share_allowed,
        "gauge_room_m": it.gauge.room_m,
    });
    joined([
        DEAD_WEIGHT.json(it.mass_kg),
        BALANCE.json(it.balance_m),
        SWING_MOMENT.json(it.swing_moment_kg_m2),
        rest,
    ])
}

fn met_of(answer: &Answer, card: &Card) -> Vec<Value> {
    let one = |(figure, value): &(Figure, f64)| {
        let asked = card.asked(*figure);
        json!({
            "figure": figure.words(),
            "asked": asked.target,
            "tolerance": asked.tolerance,
            "came_out": value,
        })
    };
    answer.met.iter().map(one).collect()
}

/// Without a card: the limits of the Laws that are kept.
fn laws_met(bat: &ShapedBat) -> Vec<Value> {
    let broken = |it: &Dimension| bat.law.breaches.iter().any(|b| b.dimension == *it);
    [Dimension::Length, Dimension::Width, Dimension::Depth, Dimension::Edge]
        .iter()
        .filter(|it| !broken(it))
        .map(|it| json!({"figure": format!("the Laws: {}", it.words())}))
        .collect()
}
