//! What stands in the net at this instant: players, bats, ball and the eye, as plain values. The window
//! draws them, and adds nothing.

pub mod bat;
pub mod bench_overlay;
pub mod body;
pub mod eye;
pub mod ground;
pub mod overlay;
pub mod pose;
pub mod solid;
pub mod wood;

use backlift::frames::DVec3;
use backlift::measurement::plan::Bowling;
use backlift::questions::any_score::{Innings, Reel, Tempo};
use backlift::swing::film::Way;
use egui::Rect;

use super::action::View;
use super::playback::Camera;
use super::state::Studio;
use body::{Frame, eyes_m};
use eye::{Eye, Seen};
use pose::{Place, Pose, Posed};

/// Two players side by side stand this far apart, over stature.
const APART: f64 = 0.95;

/// One player with one bat.
pub struct Figure {
    /// First or second bat shown.
    pub slot: usize,
    /// The bat's place in the scenario; none for the one tried on the map.
    pub bat: Option<usize>,
    pub pose: Pose,
    /// How far it is moved aside on the screen, m, W.
    pub aside_W: DVec3,
    pub way: Way,
    /// Contact point from the top of the handle, m.
    pub contact_m: f64,
    pub length_m: f64,
    /// When bat meets ball, s.
    pub contact_s: f64,
    /// Where it does, m, W.
    pub contact_W: DVec3,
}

impl Figure {
    /// A point of the bat so far from the top of the handle, m, W.
    pub fn on_bat_W(&self, from_top_m: f64) -> DVec3 {
        self.pose.bat.point(DVec3::new(from_top_m, 0.0, 0.0)) + self.aside_W
    }
}

/// A bat at an instant of the stroke.
pub struct Instant {
    /// After the top of the backlift, s.
    pub t_s: f64,
    /// Its frame B.
    pub bat: Place,
    /// Way of the contact point since the top of the backlift, m.
    pub gone_m: f64,
    pub bat_speed_m_s: f64,
    /// Share of its capacity that each wrist gives, top hand and bottom hand.
    pub wrist_share: [f64; 2],
}

/// What is swung in one place.
struct Swung<'a> {
    innings: &'a Innings,
    /// So many times as long as the innings says.
    longer: f64,
    bat: Option<usize>,
}

pub struct Scene {
    /// Players; the second is drawn as arms and bat alone where both stand in one place.
    pub figures: Vec<Figure>,
    pub in_one_place: bool,
    pub is_from_the_eyes: bool,
    /// The ball on its way to the first bat, m, W.
    pub ball_W: Option<DVec3>,
    pub eye: Eye,
}

/// What stands in the room that the window draws.
pub enum Shown<'a> {
    Net(Scene),
    Bench(wood::Bench<'a>),
}

impl Shown<'_> {
    pub fn eye(&self) -> &Eye {
        match self {
            Self::Net(it) => &it.eye,
            Self::Bench(it) => &it.eye,
        }
    }
}

impl Studio {
    /// What is shown in a room on the screen, if anything is there to be shown.
    pub fn shown(&self, room: Rect) -> Option<Shown<'_>> {
        match self.view {
            View::Wood => self.on_bench(room).map(Shown::Bench),
            _ => self.scene(room).map(Shown::Net),
        }
    }

    /// The scene at this instant, for a room on the screen; none before the first swing is known.
    pub fn scene(&self, room: Rect) -> Option<Scene> {
        let loaded = self.derived.loaded.as_ref()?;
        let frame = Frame::of(&loaded.player);
        let innings = [0, 1].map(|slot| self.swung(slot));
        let both = self.slots() > 1 || self.is_trying();
        let is_from_the_eyes = self.playback.camera == Camera::Batter;
        let in_one_place = !both || self.playback.overlay || is_from_the_eyes;
        let shown = innings.iter().take(if both { 2 } else { 1 }).enumerate();
        let mut figures: Vec<Figure> =
            shown.filter_map(|(slot, it)| self.figure(slot, it.as_ref()?, frame)).collect();
        let first = figures.first()?;
        let mirror = innings.iter().flatten().next()?.innings.chains.first()?.0.mirror;
        let apart_m = if in_one_place { 0.0 } else { APART * frame.stature_m };
        let seen = Seen {
            mirror,
            stature_m: frame.stature_m,
            eyes_W: first.pose.head.point(eyes_m(&frame)),
            contact_W: first.contact_W,
            apart_m,
            aspect: f64::from(room.width() / room.height().max(1.0)),
        };
        let eye = Eye::of(self.playback.camera, self.playback.orbit, &seen);
        let [right, ..] = Eye::of(self.playback.camera, Default::default(), &seen).axes();
        let count = figures.len();
        for (n, figure) in figures.iter_mut().enumerate() {
            figure.aside_W = right * (apart_m * (n as f64 - 0.5 * (count as f64 - 1.0)));
        }
        let ball_W =
            figures.first().and_then(|it| self.ball(it, innings[0].as_ref()?.innings.delivery));
        Some(Scene { figures, in_one_place, is_from_the_eyes, ball_W, eye })
    }

    /// The stroke of a bat at the score shown.
    pub fn reel<'a>(&self, innings: &'a Innings) -> Option<Reel<'a>> {
        let now = &self.playback;
        innings.reel(innings.stroke(&now.stroke)?, f64::from(now.runs), now.tempo())
    }

    /// Whether a bat is tried on the map: it is swung in the second place.
    pub fn is_trying(&self) -> bool {
        self.view == View::Map && self.tried.is_some()
    }

    /// What is swung in a place. A tried bat moves as the first one does, in the time that the fitting's
    /// own approximation says.
    fn swung(&self, slot: usize) -> Option<Swung<'_>> {
        if slot == 0 || !self.is_trying() {
            let (innings, bat) = (self.innings(slot)?.it, self.playback.bats.get(slot).copied());
            return Some(Swung { innings, longer: 1.0, bat });
        }
        let fitted = &self.fitted()?.it.fitting;
        let [mass_kg, balance_m] = self.tried?;
        let bat = fitted.bat_at(mass_kg, balance_m)?;
        let time_s = fitted.stroke_time_s(&bat, &self.playback.stroke)?;
        let innings = self.innings(0)?.it;
        let stroke = innings.stroke(&self.playback.stroke)?;
        let first =
            innings.at(stroke, fitted.setting().plan.runs, |it| it.fastest.stroke_time_s)?;
        // Asked for in the same time it takes the same time.
        let longer = match self.playback.tempo() {
            Tempo::Fastest => time_s / first.best,
            Tempo::Asked => 1.0,
        };
        Some(Swung { innings, longer, bat: None })
    }

    fn figure(&self, slot: usize, swung: &Swung<'_>, frame: Frame) -> Option<Figure> {
        let longer = swung.longer;
        let reel = self.reel(swung.innings)?;
        let picture = reel.at(self.playback.time_s / longer)?;
        let at_contact = reel.at(reel.contact_s())?;
        let pose = Posed::new(reel.chain, frame).all(&picture, at_contact.pelvis_W);
        Some(Figure {
            slot,
            bat: swung.bat,
            pose,
            aside_W: DVec3::ZERO,
            way: reel.way(self.playback.time_s / longer)?,
            contact_m: reel.contact_from_top_m,
            length_m: reel.chain.bat_length_m,
            contact_s: reel.contact_s() * longer,
            contact_W: reel.contact_W(),
        })
    }

    /// The ball at its speed over the crease, off the ground where such a ball pitches; drawn by eye.
    fn ball(&self, first: &Figure, delivery: Bowling) -> Option<DVec3> {
        let before_s = (first.contact_s - self.playback.time_s).max(0.0);
        let [contact, pitched, hand] =
            ground::ball_path(first.contact_W, self.answers_short_ball());
        let mut left_m = before_s * delivery.speed_m_s;
        for (from, to) in [(contact, pitched), (pitched, hand)] {
            let way = to - from;
            if left_m <= way.length() {
                return Some(from + way * (left_m / way.length()) + first.aside_W);
            }
            left_m -= way.length();
        }
        None
    }

    /// The stroke shown with the first or second bat, at even steps of time.
    pub fn through(&self, slot: usize) -> Vec<Instant> {
        const STEPS: usize = 72;
        let Some(Swung { innings, longer, .. }) = self.swung(slot) else { return Vec::new() };
        let (Some(reel), Some(loaded)) = (self.reel(innings), &self.derived.loaded) else {
            return Vec::new();
        };
        let mut posed = Posed::new(reel.chain, Frame::of(&loaded.player));
        (0..=STEPS)
            .filter_map(|n| {
                let t_s = reel.contact_s() * n as f64 / STEPS as f64;
                let picture = reel.at(t_s)?;
                Some(Instant {
                    t_s: longer * t_s,
                    bat: posed.bat(&picture),
                    gone_m: picture.gone_m,
                    bat_speed_m_s: picture.bat_speed_m_s / longer,
                    wrist_share: picture.wrist_share,
                })
            })
            .collect()
    }

    /// Which of two bats in one place is drawn as a ghost of the other: the one that is harder to get moving.
    pub fn ghost(&self) -> Option<usize> {
        if self.is_trying() {
            return Some(1);
        }
        let bats = &self.derived.loaded.as_ref().filter(|_| self.slots() > 1)?.bats;
        let [a, b] = self.playback.bats.map(|it| Some(bats.get(it)?.swing_moment_kg_m2.value));
        Some(usize::from(b? >= a?))
    }
}
