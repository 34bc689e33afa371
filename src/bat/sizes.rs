//! Trade sizes from junior to long handle, each with one reference bat.
//!
//! There is no standard for sizes: makers differ by about 2 cm of bat and 5 cm of the player's height.
//! Common practice, no source. The reference bats are scaled from one adult shape of ours (assumption).

use super::shape::BatShape;

/// One trade size.
#[derive(Clone, Debug, PartialEq)]
pub struct Size {
    /// Name in the trade: "1" … "6", "Harrow", "short handle", "long handle".
    pub name: String,
    /// Other spellings of the name.
    pub also: Vec<String>,
    /// Shortest player it is sold for, m; `None` for no lower end.
    pub stature_from_m: Option<f64>,
    /// Tallest player it is sold for, m; `None` for no upper end.
    pub stature_to_m: Option<f64>,
    /// Lightest and heaviest bat that is commonly sold in the size, kg: common practice, no source.
    pub usual_kg: [f64; 2],
    /// The reference bat: pickup weights of this size refer to it, and every parametric bat of the
    /// size is carved from it.
    pub reference: BatShape,
    /// What a maker of this size can vary.
    pub craft: Craft,
}

/// What a maker can vary when carving a bat of one size. Assumptions throughout.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Craft {
    /// Lightest and heaviest willow chosen, kg/m³.
    pub density_kg_m3: [f64; 2],
    /// Share of a wanted change of mass that is met by choosing a denser or lighter cleft; carving
    /// does the rest.
    pub density_share: f64,
    /// Greatest lengthwise taper of the thickness that is still made, as a share at the toe.
    pub greatest_taper: f64,
    /// Move of the swell for each unit of taper, as a share of the blade.
    pub swell_per_taper: f64,
    /// Greatest move of the swell from the reference, as a share of the blade.
    pub greatest_swell_move: f64,
    /// How much more or less wood the ends of the blade may hold at the same weight and balance, as a
    /// share of the thickness there.
    pub ends_spread: f64,
    /// How much the density of a handle varies, as a share.
    pub handle_spread: f64,
    /// Thinnest edge that lasts, m.
    pub thinnest_edge_m: f64,
    /// Lowest and highest swell that is proposed, over the toe, as a share of the blade.
    pub swell_from_toe: [f64; 2],
}

/// One row of the table of sizes: how the reference bat of the size differs from the adult shape.
#[derive(Clone, Debug, PartialEq)]
pub struct SizeRow {
    /// Name in the trade.
    pub name: String,
    /// Other spellings.
    pub also: Vec<String>,
    /// Overall length, m.
    pub length_m: f64,
    /// From the top of the handle to the shoulder, m.
    pub handle_m: f64,
    /// Greatest width of the blade, m.
    pub width_m: f64,
    /// Edges, depth and camber as a share of the adult bat's.
    pub thickness: f64,
    /// Diameter of the bare handle at its top, m.
    pub handle_diameter_m: f64,
    /// Shortest player, m.
    pub stature_from_m: Option<f64>,
    /// Tallest player, m.
    pub stature_to_m: Option<f64>,
    /// Lightest and heaviest that is commonly sold, kg.
    pub usual_kg: [f64; 2],
}

impl Size {
    /// The size of one row, its reference bat scaled from the adult shape.
    pub fn scaled(adult: &BatShape, row: SizeRow, craft: Craft) -> Self {
        let mut reference = adult.with_width_m(row.width_m);
        let handle = &mut reference.handle;
        let (along, across) =
            (row.handle_m / handle.length_m, row.handle_diameter_m / handle.top_diameter_m);
        handle.length_m = row.handle_m;
        handle.grip_length_m *= along;
        handle.splice_m *= across;
        handle.top_diameter_m *= across;
        handle.shoulder_diameter_m *= across;
        let blade = &mut reference.blade;
        blade.length_m = row.length_m - row.handle_m;
        blade.face_m *= across;
        blade.thicken(row.thickness);
        Self {
            name: row.name,
            also: row.also,
            stature_from_m: row.stature_from_m,
            stature_to_m: row.stature_to_m,
            usual_kg: row.usual_kg,
            reference,
            craft,
        }
    }

    /// Overall length of the size, m.
    pub fn length_m(&self) -> f64 {
        self.reference.length_m()
    }

    /// True when this is what `name` means, in any case and spacing.
    pub fn is_called(&self, name: &str) -> bool {
        let plain = |it: &str| it.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase();
        let name = plain(name);
        let name = name.strip_prefix("size ").unwrap_or(&name);
        plain(&self.name) == name || self.also.iter().any(|it| plain(it) == name)
    }

    /// True when a player of this stature is offered this size.
    pub fn suits_stature_m(&self, stature_m: f64) -> bool {
        self.stature_from_m.is_none_or(|it| stature_m >= it)
            && self.stature_to_m.is_none_or(|it| stature_m < it)
    }
}

/// No size is called so.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("no size is called {name:?}")]
pub struct UnknownSize {
    /// What was asked for.
    pub name: String,
    /// The sizes there are.
    pub known: Vec<String>,
}

impl UnknownSize {
    /// What to do about it.
    pub fn mend(&self) -> String {
        format!("the sizes are {}", self.known.join(", "))
    }
}

/// The size called `name`.
///
/// # Errors
/// If there is none.
pub fn find<'a>(sizes: &'a [Size], name: &str) -> Result<&'a Size, UnknownSize> {
    named(sizes, name).ok_or_else(|| UnknownSize {
        name: name.to_owned(),
        known: sizes.iter().map(|it| it.name.clone()).collect(),
    })
}

/// The size called `name`, if there is one.
pub fn named<'a>(sizes: &'a [Size], name: &str) -> Option<&'a Size> {
    sizes.iter().find(|it| it.is_called(name))
}

/// The size of which a figure is least off what was measured, if there are any sizes.
pub fn nearest(sizes: &[Size], off: impl Fn(&Size) -> f64) -> Option<&Size> {
    sizes.iter().min_by(|a, b| off(a).abs().total_cmp(&off(b).abs()))
}
