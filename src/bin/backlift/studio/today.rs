//! Today's bats: which to use, how sure that is, and whether each size suits. It comes before any search.

use std::sync::Arc;

use backlift::fit::fitting::TodayAdvice;
use backlift::questions::advice;
use backlift::questions::loaded::Loaded;
use backlift::worth::today::Given;

use super::answers::key;
use super::state::Studio;
use super::work::Question;

/// The advice, with the scenario it is for.
struct Advice {
    loaded: Arc<Loaded>,
    now: TodayAdvice,
}

impl Studio {
    pub fn today_key(&self) -> u64 {
        key(("today", self.derived.fit_key))
    }

    /// The advice on today's bats; perhaps of an earlier text.
    pub fn advice(&self) -> Option<(&Loaded, &TodayAdvice)> {
        let today = self.answers.last::<Advice>(Question::Today);
        match today.filter(|it| it.key == self.today_key() || self.is_fit_stale()) {
            Some(today) => Some((&*today.it.loaded, &today.it.now)),
            None => self.fitted().map(|it| (&it.it.loaded, &it.it.fitting.now)),
        }
    }

    /// Whether it is of the present text.
    pub fn is_advised(&self) -> bool {
        let known = self.answers.get::<Advice>(self.today_key()).is_some();
        !self.derived.is_stale() && (known || !self.is_fit_stale())
    }

    /// What it says of a weighed bat; none while it is of an earlier text.
    pub fn given(&self, bat: usize) -> Option<&Given> {
        let (_, now) = self.advice().filter(|_| self.is_advised())?;
        now.today.given.get(bat)
    }

    /// Asks for it if it is missing; whether it is waited for.
    pub(super) fn ask_for_today(&mut self, loaded: &Arc<Loaded>) -> bool {
        let key = self.today_key();
        if self.is_advised() || self.answers.has(key) {
            return false;
        }
        // Bats that an earlier advice swung for this player are not swung again.
        let before = self.answers.last::<Advice>(Question::Today).map(|it| it.key);
        let before = before.and_then(|key| self.answers.shared::<Advice>(key));
        let loaded = Arc::clone(loaded);
        self.work.start(Question::Today, key, move |progress, _| {
            let before = before.as_deref().map(|it| &it.now);
            let now = advice::today(&loaded, before, progress, [0.0, 1.0])?;
            Ok(Advice { loaded, now })
        });
        true
    }
}
