//! The study as a chart.

use backlift::drawing::matters_chart::{Bar, InputRow, MattersPicture, Section, svg};
use backlift::drawing::palette::LIGHT;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::questions::matters::Shown;
use backlift::sensitivity::spread::Standing;
use backlift::units::Units;

use super::told::{doubted, sentence, spread};
use crate::beside::Beside;
use crate::written::add_picture;

/// Adds the chart to a folder.
pub fn add(folder: &mut Folder, shown: &Shown, beside: &Beside, units: Units) -> Result<(), Fault> {
    let mut chart = chart(shown, units);
    chart.sentence = beside.sentence(&chart.sentence);
    let picture = svg(&chart, &LIGHT);
    add_picture(folder, "matters", &picture)
}

fn chart(shown: &Shown, units: Units) -> MattersPicture {
    let row = |place: usize| {
        let input = shown.input(place)?;
        let bar = |it: &backlift::sensitivity::study::Studied| {
            let index = it.divided.indices.get(place)?;
            let (first, total) = (index.first.value, index.total.value);
            Some(Bar { first, total, interval: index.total.interval })
        };
        let bars = shown.figures().filter_map(bar).collect();
        Some(InputRow { name: input.words().to_owned(), spread: spread(input), bars })
    };
    let section = |title: &str, standing: Standing| Section {
        title: title.to_owned(),
        rows: shown.standing(standing).into_iter().filter_map(row).collect(),
        quiet: standing == Standing::OutOfReach,
    };
    let sections = [
        section("Not measured, but it could be", Standing::Measurable),
        section("Measured", Standing::Measured),
        section("Nobody can measure it at a bench", Standing::OutOfReach),
    ];
    MattersPicture {
        sentence: sentence(shown),
        columns: shown.figures().map(|it| [it.figure.words().into(), doubted(it, units)]).collect(),
        sections: sections.into_iter().filter(|it| !it.rows.is_empty()).collect(),
        legend: "How much of each figure's doubt an input carries, % of its square. Pale: with all it does together with others; dark: by itself; thin line: 19 times in 20 the truth lies on it. Beside each name: how far the input may be off, one standard deviation. The pull; late: at the end of the innings".to_owned(),
    }
}
