//! What makes a text a bat's own file, and where in it the card stands.

use std::ops::Range;

use super::fault::Source;
use super::outline::Outline;

/// What stands in the field `version` of a bat's own file that this program can read.
pub const VERSION: &str = "backlift/shape/1";

/// Where the card stands in a bat's own file; none inside if it has no card, none at all if the text is something else.
pub fn card_in(source: &Source) -> Option<Option<Range<usize>>> {
    let outline = Outline::of(source.text());
    let version = source.text().get(outline.find("version")?.value.clone())?;
    let own = version.trim_matches('"') == VERSION;
    own.then(|| outline.find("card").map(|it| it.value.clone()))
}
