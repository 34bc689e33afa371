//! `backlift guide`: the pages that say how to measure and what the figures mean.

use clap::builder::PossibleValuesParser;

use crate::json;
use crate::outcome::{Outcome, Stop};

/// The pages by topic, in the order in which they are met.
const PAGES: [(&str, &str); 10] = [
    ("bench", include_str!("../../../assets/guide/bench.md")),
    ("nets", include_str!("../../../assets/guide/nets.md")),
    ("care", include_str!("../../../assets/guide/care.md")),
    ("scenario", include_str!("../../../assets/guide/scenario.md")),
    ("strokes", include_str!("../../../assets/guide/strokes.md")),
    ("figures", include_str!("../../../assets/guide/figures.md")),
    ("maker", include_str!("../../../assets/guide/maker.md")),
    ("wood", include_str!("../../../assets/guide/wood.md")),
    ("window", include_str!("../../../assets/guide/window.md")),
    ("trust", include_str!("../../../assets/guide/trust.md")),
];

/// Say how to measure, what the figures mean and how far to trust them
///
/// Without a topic the topics are listed.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift guide bench")]
pub struct Args {
    /// The page to read
    #[arg(value_parser = PossibleValuesParser::new(PAGES.map(|(topic, _)| topic)))]
    topic: Option<String>,
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let page = PAGES.iter().find(|(topic, _)| Some(*topic) == args.topic.as_deref());
    json::print(&page.map_or_else(topics, |(_, text)| (*text).to_owned()))?;
    Ok(Outcome::Done)
}

/// Each topic with the heading of its page.
fn topics() -> String {
    let heading = |text: &str| text.lines().next().unwrap_or_default().replace("# ", "");
    let lines = PAGES.map(|(topic, text)| format!("  {topic:<10}{}\n", heading(text)));
    format!("{}\nRead one: backlift guide {}\n", lines.concat(), PAGES[0].0)
}
