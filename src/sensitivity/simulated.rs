//! One draw swung: the pull fresh and at the end of the innings, in layers, so that what an input does
//! not touch is not swung again.

use super::figure::Figure;
use super::moved::Drawn;
use super::spread::Asked;
use crate::bat::Bat;
use crate::bat::figures::WeighedBat;
use crate::innings::ball_by_ball::Left;
use crate::innings::played::{InningsFault, LATE_SHARE, left_at};
use crate::player::joints::{FRESH, GROUP_COUNT};
use crate::swing::batter::Batter;
use crate::swing::contact::Contact;
use crate::swing::observed::observe;
use crate::swing::player_stroke::Held;

/// One bat in the player's hands: the pull, and the capacity that the innings leaves.
#[derive(Clone, Debug)]
struct Taken {
    pull: Held,
    left: Left,
}

/// The player with both bats, and the fresh pull.
#[derive(Clone, Debug)]
pub(super) struct Ready {
    batter: Batter,
    bat: Taken,
    other: Option<Taken>,
    fresh: Contact,
}

/// The same player late in the innings: the pull with each bat.
#[derive(Clone, Debug)]
pub(super) struct Late {
    capacity: [f64; GROUP_COUNT],
    pull: Contact,
    other: Option<Contact>,
}

/// A draw swung.
#[derive(Clone, Debug)]
pub(super) struct Swung {
    ready: Ready,
    late: Late,
    /// In the order of [`Figure::all`]; without another bat the last is nought.
    pub figures: [f64; Figure::COUNT],
}

/// What of an earlier draw still holds.
#[derive(Clone, Copy, Debug)]
pub(super) enum Kept<'a> {
    /// Nothing; searches start near it, where there is one.
    Near(Option<&'a Swung>),
    /// The paths of the strokes.
    Paths(&'a Swung),
    /// All swings but the late ones.
    Ready(&'a Swung),
    /// All swings.
    Swings(&'a Swung),
}

impl Asked<'_> {
    /// Swings a draw.
    pub(super) fn swung(&self, drawn: &Drawn, kept: Kept<'_>) -> Result<Swung, InningsFault> {
        let ready = match kept {
            Kept::Ready(it) | Kept::Swings(it) => it.ready.clone(),
            Kept::Paths(it) => self.ready(in_hands(&it.ready.batter, drawn), drawn, Some(it))?,
            Kept::Near(it) => self.ready(self.batter(drawn)?, drawn, it)?,
        };
        let late = match kept {
            Kept::Swings(it) => it.late.clone(),
            Kept::Paths(it) | Kept::Ready(it) => self.late(&ready, drawn.lasting, Some(it))?,
            Kept::Near(it) => self.late(&ready, drawn.lasting, it)?,
        };
        let figures = self.figures(&ready, &late, drawn);
        Ok(Swung { ready, late, figures })
    }

    fn batter(&self, drawn: &Drawn) -> Result<Batter, InningsFault> {
        Ok(in_hands(&Batter::new(&drawn.player, self.strokes, &drawn.bat)?, drawn))
    }

    fn ready(
        &self,
        batter: Batter,
        drawn: &Drawn,
        near: Option<&Swung>,
    ) -> Result<Ready, InningsFault> {
        let bat = self.taken(&batter, &drawn.bat)?;
        let other = drawn.other.as_ref().map(|it| self.taken(&batter, it)).transpose()?;
        let near_s = near.map(|it| it.ready.fresh.stroke_time_s);
        let fresh = bat.pull.fastest(&FRESH, near_s)?;
        Ok(Ready { batter, bat, other, fresh })
    }

    fn taken(&self, batter: &Batter, bat: &Bat) -> Result<Taken, InningsFault> {
        let mut taken_up = batter.take_up(bat)?;
        let left = left_at(batter, &taken_up, self.plan, self.asked_time_s, self.plan.runs)?;
        Ok(Taken { pull: taken_up.swap_remove(self.pull), left })
    }

    fn late(
        &self,
        ready: &Ready,
        lasting: f64,
        near: Option<&Swung>,
    ) -> Result<Late, InningsFault> {
        let capacity = capacity(&ready.bat.left, lasting);
        let guess_s = LATE_SHARE * ready.fresh.stroke_time_s;
        let pull = ready.bat.pull.fastest(&capacity, Some(guess_s))?;
        // The other bat's time goes with this one's.
        let apart = near
            .and_then(|it| Some(it.late.other?.stroke_time_s / it.late.pull.stroke_time_s))
            .unwrap_or(1.0);
        let other = ready.other.as_ref().map(|it| {
            let capacity = self::capacity(&it.left, lasting);
            it.pull.fastest(&capacity, Some(apart * pull.stroke_time_s))
        });
        Ok(Late { capacity, pull, other: other.transpose()? })
    }

    fn figures(&self, ready: &Ready, late: &Late, drawn: &Drawn) -> [f64; Figure::COUNT] {
        let asked_s = self.asked_time_s.get(self.pull).copied().unwrap_or(f64::NAN);
        let seen = observe(&ready.bat.pull, &late.capacity, asked_s);
        let late_m_s = late.pull.bat_speed_m_s;
        let pickup = |bat: &WeighedBat| bat.swing_moment_kg_m2.value;
        let known = &self.known;
        let other_is_lighter = known.other.is_some_and(|it| pickup(it) < pickup(known.bat));
        Figure::all().map(|figure| match figure {
            Figure::FreshSpeed => ready.fresh.bat_speed_m_s,
            Figure::LateSpeed => late_m_s,
            Figure::TimeInHand => drawn.delivery.time_in_hand_s(late.pull.stroke_time_s),
            Figure::FastestBall => drawn.delivery.fastest_ball_m_s(late.pull.stroke_time_s),
            Figure::WristShare => seen.wrist_share(),
            Figure::GripShare => seen.grip_share(&drawn.player),
            Figure::LighterBat => late.other.map_or(0.0, |other| {
                let gain_m_s = other.bat_speed_m_s - late_m_s;
                if other_is_lighter { gain_m_s } else { -gain_m_s }
            }),
        })
    }
}

/// Capacity with the lasting fatigue at a share of its band: it takes a share of the logarithm.
fn capacity(left: &Left, lasting: f64) -> [f64; GROUP_COUNT] {
    core::array::from_fn(|group| {
        let (none, all) = (left.without_slow[group], left.with_slow_high[group]);
        none * libm::pow(all / none, lasting)
    })
}

/// The drawn player on the same paths, with the drawn handle and all that is assumed.
fn in_hands(batter: &Batter, drawn: &Drawn) -> Batter {
    batter.in_place(&drawn.player, drawn.handle_diameter_m, drawn.assumed)
}
