//! The bat's own file, or the card that stands in for it: opened, and one more reading kept in it.

use std::path::{Path, PathBuf};

use backlift::card::Card;
use backlift::files::assets::sizes;
use backlift::files::card_file;
use backlift::files::document::TextFile;
use backlift::files::fault::{Fault, Faults};
use backlift::files::save::{check_new_file, new_file};
use backlift::files::shape::{LoadedShape, ShapeV1, load_own};
use backlift::files::shape_text::{own, with_entry};
use backlift::measurement::bench::BatReading;
use backlift::questions::own::{finished, no_card};
use backlift::workshop::season::Air;
use backlift::workshop::stages::{BatLog, Entry, Stage};

use crate::outcome::Stop;

/// What lies on the bench.
pub enum Own {
    /// A bat with a file of its own.
    Bat {
        /// What the file says.
        loaded: Box<LoadedShape>,
        /// Where it is.
        path: PathBuf,
    },
    /// A bat of which only the card is known.
    Card(Box<Card>),
}

/// Opens a bat's own file, or a card.
pub fn opened(path: &Path) -> Result<Own, Stop> {
    Ok(match load_own(path, &sizes()?)? {
        Some(loaded) => Own::Bat { loaded: Box::new(loaded), path: path.to_path_buf() },
        None => Own::Card(Box::new(card_file::read(path)?)),
    })
}

impl Own {
    /// What the bat is to come to.
    pub fn card(&self) -> Result<&Card, Stop> {
        match self {
            Self::Card(card) => Ok(card),
            Self::Bat { loaded, .. } => loaded.log.card.as_ref().ok_or_else(|| no_card().into()),
        }
    }

    /// What was read last of the finished bat; none of a card, or where nothing was read.
    pub fn finished(&self) -> Result<Option<BatReading>, Stop> {
        match self {
            Self::Card(_) => Ok(None),
            Self::Bat { loaded, .. } => Ok(finished(&loaded.log, self.card()?)?),
        }
    }

    /// What was read of it at all; none of a card.
    fn log(&self) -> Option<&BatLog> {
        match self {
            Self::Card(_) => None,
            Self::Bat { loaded, .. } => Some(&loaded.log),
        }
    }

    /// The workshop's air when it was read last with that.
    pub fn air(&self) -> Option<Air> {
        self.log()?.entries.iter().rev().find_map(|it| it.air)
    }

    /// What was read of it last.
    pub fn last(&self) -> Option<&Entry> {
        self.log()?.last()
    }

    /// Whether a stage is still to come.
    pub fn awaits(&self, stage: Stage) -> bool {
        self.log().is_none_or(|log| log.pending().contains(&stage))
    }

    /// Where the next reading is kept, if it shall be, which must be possible: nobody should weigh twice.
    pub fn keeps(&self, keep: bool, new: Option<&Path>) -> Result<Option<PathBuf>, Stop> {
        match (self, keep, new) {
            (_, false, None) => Ok(None),
            (Self::Bat { path, .. }, true, _) => Ok(Some(path.clone())),
            (Self::Card(_), _, Some(new)) => {
                check_new_file(new)?;
                Ok(Some(new.to_path_buf()))
            }
            (Self::Bat { path, .. }, false, Some(_)) => {
                let fault = Fault::new(format!("the bat has its own file: {}", path.display()));
                Err(fault.help("write --keep, and the reading is added to it").into())
            }
            (Self::Card(_), true, None) => {
                let fault = Fault::new("--keep: a card is not changed by what was read of a bat");
                Err(fault.help("begin the bat's own file with --new bat.ron").into())
            }
        }
    }

    /// Keeps one more reading.
    pub fn keep(&self, path: &Path, entry: &Entry) -> Result<(), Fault> {
        match self {
            Self::Card(card) => {
                let title = path
                    .file_stem()
                    .map_or_else(String::new, |it| it.to_string_lossy().into_owned());
                new_file(path, own(&title, card, std::slice::from_ref(entry))?.as_bytes())
            }
            Self::Bat { loaded, .. } => {
                let one = |it: Faults| {
                    it.0.into_iter().next().unwrap_or_else(|| Fault::new("it cannot be read"))
                };
                let file = TextFile::<ShapeV1>::open(path).map_err(one)?;
                let entries = &loaded.log.entries;
                let before = entries.last().map(|it| it.stage);
                let text = with_entry(file.text(), entries.len(), entry, before)?;
                file.with_text(&text).map_err(one)?.save()
            }
        }
    }
}
