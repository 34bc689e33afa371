//! The bats on the map, and the one to make.

use super::area::Area;
use super::axis::Plot;
use super::map_picture::{MapPicture, MapTarget};
use super::palette::{BLACK, bat_look};
use super::picture::{Picture, Stroke};
use super::type_setting::{Anchor, Lettering, Size};
use crate::measurement::bench::bat_letter;

/// The areas that the bats' marks take, kept free of other names; last the target's name.
pub(super) fn areas(map: &MapPicture, plot: &Plot) -> Vec<Area> {
    let around = |mass_kg: f64, balance_m: f64| {
        let [x, y] = plot.at(mass_kg, 1e3 * balance_m);
        Area::new(x - 13.0, y - 13.0, 26.0, 26.0)
    };
    let bats = map.bats.iter().map(|it| around(it.mass_kg, it.balance_m));
    let mut taken: Vec<Area> = bats.collect();
    if let Some(target) = &map.target {
        taken.push(around(target.mass_kg.target, target.balance_m.target));
        taken.push(limits(target, plot));
        let [x, y] = name_of_target(target, plot, &taken);
        taken.push(NAME.extent(x, y, TARGET_NAME));
    }
    taken
}

/// How the target is named, and in what letters.
const TARGET_NAME: &str = "make this";
const NAME: Lettering = Lettering::new(Size::Quiet, BLACK).bold().anchored(Anchor::Middle);

/// Where the target's limits lie on the page.
fn limits(target: &MapTarget, plot: &Plot) -> Area {
    let [low_kg, high_kg] = target.mass_kg.tolerance;
    let [low_m, high_m] = target.balance_m.tolerance;
    let [left, bottom] = plot.at(low_kg, 1e3 * low_m);
    let [right, top] = plot.at(high_kg, 1e3 * high_m);
    Area::new(left, top, right - left, bottom - top)
}

/// Where the target's name lies on the map and covers no bat: above, below, right or left of its limits, or at
/// a corner of them.
fn name_of_target(target: &MapTarget, plot: &Plot, taken: &[Area]) -> [f64; 2] {
    let frame = limits(target, plot);
    let [x, y] = plot.at(target.mass_kg.target, 1e3 * target.balance_m.target);
    let half = 0.5 * NAME.width(TARGET_NAME) + 8.0;
    let above = [x, frame.y.min(y - 9.0) - 6.0];
    let below = [x, frame.bottom().max(y + 9.0) + 16.0];
    let right = [frame.right().max(x + 9.0) + half, y + 4.5];
    let left = [frame.x.min(x - 9.0) - half, y + 4.5];
    let extent = |[x, y]: &[f64; 2]| NAME.extent(*x, *y, TARGET_NAME);
    let free = |at: &[f64; 2]| !taken.iter().any(|it| it.touches(extent(at)));
    let on_map = |at: &[f64; 2]| plot.area.holds(extent(at));
    let corner = |side: [f64; 2], level: [f64; 2]| [side[0], level[1]];
    let places = [
        above,
        below,
        right,
        left,
        corner(right, above),
        corner(left, above),
        corner(right, below),
        corner(left, below),
    ];
    let both = places.into_iter().find(|it| free(it) && on_map(it));
    both.or_else(|| places.into_iter().find(free)).unwrap_or(above)
}

/// Draws the bats as lettered rings, the target as a diamond in the frame of its limits.
pub(super) fn draw(picture: &mut Picture, map: &MapPicture, plot: &Plot) {
    let theme = picture.theme;
    let letter = Lettering::new(Size::Quiet, theme.ink).bold().anchored(Anchor::Middle);
    for (n, bat) in map.bats.iter().enumerate() {
        let centre = plot.at(bat.mass_kg, 1e3 * bat.balance_m);
        let (colour, _) = bat_look(&theme, n);
        picture.disc(centre, 12.0, theme.panel, Stroke::solid(theme.panel, 1.0));
        picture.disc(centre, 9.5, theme.panel, Stroke::solid(colour, 3.0));
        picture.text(centre[0], centre[1] + 4.5, letter, &bat_letter(n));
    }
    if let Some(target) = map.target {
        let limits = limits(&target, plot);
        picture.frame(limits, Stroke::solid(theme.panel, 4.5));
        picture.frame(limits, Stroke::solid(theme.ink, 2.0));
        let [x, y] = plot.at(target.mass_kg.target, 1e3 * target.balance_m.target);
        let diamond = |r: f64| [[x - r, y], [x, y - r], [x + r, y], [x, y + r]];
        picture.polygons([diamond(9.0).as_slice()], theme.panel, 1.0);
        picture.polygons([diamond(6.5).as_slice()], theme.ink, 1.0);
        if let Some(name) = areas(map, plot).last() {
            let middle = name.x + 0.5 * name.width;
            let baseline = name.y + 0.86 * Size::Quiet.px();
            picture.text_on_patch(middle, baseline, letter, TARGET_NAME, theme.panel);
        }
    }
}
