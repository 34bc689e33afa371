//! The page of the comparison on the screen.

use backlift::card::cautions::{refit_stature_m, standing};
use backlift::drawing::pair_page::{Line, Page};
use backlift::innings::score::runs_words;

use super::figures::{Row, Told};
use super::state::Studio;

/// Instants to take, s from the top of the backlift: on the way, and at the ball.
pub fn instants_s(length_s: f64) -> Vec<f64> {
    vec![0.75 * length_s, length_s]
}

impl Studio {
    /// The page of what is on the screen.
    pub(super) fn page(&self) -> Page {
        let loaded = self.derived.loaded.as_ref();
        let player = loaded.map(|it| &it.player);
        let runs = self.playback.runs;
        let when = if runs == 0 {
            "fresh".to_owned()
        } else {
            format!("after {}", runs_words(f64::from(runs)))
        };
        let shown = self.playback.bats.iter().take(self.slots());
        Page {
            sentence: self.pair_sentence(),
            player: player.map_or(String::new(), |it| {
                format!("For a player of {:.0} years and {:.2} m", it.age_y, it.stature_m)
            }),
            heading: format!("The {}, {when}", self.playback.stroke),
            bats: shown.map(|bat| (*bat, self.label(*bat))).collect(),
            lines: self.swing_rows().into_iter().map(line).collect(),
            cautions: player.map_or(Vec::new(), |it| {
                standing(it.age_y, refit_stature_m(it.age_y, it.stature_m))
            }),
            is_invented: loaded.is_some_and(|it| it.scenario.invented),
        }
    }
}

fn line(it: Row) -> Line {
    let told = |it: Told| [it.value, it.doubt];
    Line {
        name: it.name.to_owned(),
        values: it.values.into_iter().map(|it| it.map(told)).collect(),
        difference: it.difference.map(|it| it.0),
    }
}
