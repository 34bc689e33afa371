//! Today's bats: which to use, how sure that is, and whether each size suits. It comes before any search.

use std::sync::Arc;

use backlift::fit::fitting::TodayAdvice;
use backlift::worth::today::Given;

use super::innings::Before;
use super::state::Studio;
use super::work::Question;
use crate::outcome::Stop;
use crate::progress::Progress;
use backlift::questions::loaded::Loaded;

/// The advice, with the scenario it is for.
#[derive(Clone)]
pub struct Advice {
    /// Player and bats.
    pub loaded: Arc<Loaded>,
    /// The advice.
    pub now: TodayAdvice,
}

impl Advice {
    /// Works it out; bats that an earlier advice swung for this player are not swung again.
    pub fn of(
        loaded: &Arc<Loaded>,
        before: Option<&Self>,
        progress: &Progress,
    ) -> Result<Self, Stop> {
        let before = before.map(|it| &it.now);
        let now = backlift::questions::advice::today(loaded, before, progress, [0.0, 1.0])?;
        Ok(Self { loaded: Arc::clone(loaded), now })
    }
}

impl Studio {
    /// What the advice on today's bats hangs on.
    pub fn today_key(&self) -> u64 {
        self.derived.fit_key.rotate_left(29)
    }

    /// The advice on today's bats; perhaps of an earlier text.
    pub fn advice(&self) -> Option<(&Loaded, &TodayAdvice)> {
        let fitted = self.results.fitted.as_ref().map(|it| (&it.it.loaded, &it.it.fitting.now));
        let today = self.results.today.as_ref();
        match today.filter(|it| it.key == self.today_key() || self.is_fit_stale()) {
            Some(today) => Some((&*today.it.loaded, &today.it.now)),
            None => fitted,
        }
    }

    /// Whether it is of the present text.
    pub fn is_advised(&self) -> bool {
        let today = self.results.today.as_ref().map(|it| it.key);
        !self.derived.is_stale() && (today == Some(self.today_key()) || !self.is_fit_stale())
    }

    /// What it says of a weighed bat; none while it is of an earlier text.
    pub fn given(&self, bat: usize) -> Option<&Given> {
        let (_, now) = self.advice().filter(|_| self.is_advised())?;
        now.today.given.get(bat)
    }

    /// Asks for it if it is missing; whether it is waited for.
    pub(super) fn ask_for_today(&mut self, loaded: &Arc<Loaded>) -> bool {
        let key = self.today_key();
        if self.is_advised() || self.results.failed.contains_key(&key) {
            return false;
        }
        let advice = self.results.today.as_ref().map(|it| Arc::clone(&it.it));
        let before = Before { advice, ..Before::default() };
        self.work.ask_on(Question::Today, key, Arc::clone(loaded), before);
        true
    }
}
