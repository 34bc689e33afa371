//! What the worth of a bat rests on that nobody measured of this player: each with a range and its source.
//!
//! Frozen on 2026-11-29, before any advice was computed from them. What people use was not looked at for any of
//! them, and none is moved because of what comes out. Where only a range is known, every draw takes its own value
//! from it, each as likely.

use crate::comparison::collision::CONTACT_S;

/// A figure with the range from which the draws take it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Constant {
    /// What it is, in plain words.
    pub what: &'static str,
    /// Its unit; empty for a share.
    pub unit: &'static str,
    /// Central value.
    pub value: f64,
    /// Lowest and highest value; the same twice for what is a rule and is not drawn.
    pub range: [f64; 2],
    /// Author and year, or whatever it rests on.
    pub work: &'static str,
    /// How far it may be relied on.
    pub status: Status,
}

/// How far a figure may be relied on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// Follows from a formula and inputs given beside it.
    Computed,
    /// A habit of the trade.
    CommonPractice,
    /// An assumption of this project.
    Assumption,
}

impl Status {
    /// In words, as printed.
    pub fn words(self) -> &'static str {
        match self {
            Self::Computed => "computed",
            Self::CommonPractice => "common practice, no source",
            Self::Assumption => "assumption, no source",
        }
    }
}

impl Constant {
    /// The value at a share of the way through the range.
    pub fn at(&self, share: f64) -> f64 {
        let [low, high] = self.range;
        low + share * (high - low)
    }
}

const fn constant(
    what: &'static str,
    unit: &'static str,
    value: f64,
    range: [f64; 2],
    work: &'static str,
    status: Status,
) -> Constant {
    Constant { what, unit, value, range, work, status }
}

const fn assumed(
    what: &'static str,
    unit: &'static str,
    value: f64,
    range: [f64; 2],
    work: &'static str,
) -> Constant {
    constant(what, unit, value, range, work, Status::Assumption)
}

const fn rule(what: &'static str, unit: &'static str, value: f64) -> Constant {
    assumed(what, unit, value, [value, value], "a rule of this project")
}

const BOWLER: Constant = assumed(
    "speed of one bowler from ball to ball, one standard deviation as a share",
    "",
    0.025,
    [0.015, 0.04],
    "measured in 92 bowlers by Andrews and others 2024 (PMC11235705), whose abstract alone could be read",
);
const JUNIOR_BOWLER: Constant = assumed(
    "speed of one junior bowler from ball to ball, one standard deviation as a share",
    "",
    0.04,
    [0.025, 0.07],
    "nothing was found; wider than grown bowlers'",
);
pub(crate) const PITCH: Constant = assumed(
    "pace kept off the pitch from ball to ball, one standard deviation as a share",
    "",
    0.03,
    [0.015, 0.06],
    "measured in 3,000 impacts by James, Carré and Haake 2004, whose abstract alone could be read",
);
pub(crate) const AFTER_BOUNCE: Constant = assumed(
    "part of a short ball's flight that lies after its bounce",
    "",
    0.4,
    [0.4, 0.4],
    "a ball that bounces 10 m after release of 17 m",
);
const OWN_START: Constant = assumed(
    "start of a grown player's stroke against the ball, one standard deviation",
    "s",
    0.025,
    [0.012, 0.05],
    "no scatter was found in print; above the 7 ms of interception (Brenner and others 2014, abstract read), below choice reactions",
);
const JUNIOR_OWN_START: Constant = assumed(
    "start of a junior's stroke against the ball, one standard deviation",
    "s",
    0.035,
    [0.02, 0.07],
    "no scatter was found in print; wider than grown players'",
);
pub(crate) const IN_TIME: Constant = assumed(
    "short balls chosen to be hit that are met in time, fresh, with the bat now used",
    "",
    0.83,
    [0.60, 0.97],
    "beside it: good contacts 58 and 70 % (Houghton, Dawson and Rubenson 2011, abstract read)",
);
pub(crate) const IN_TIME_BEFORE_SEEN: Constant = assumed(
    "the same before what was seen is weighed",
    "",
    0.5,
    [0.02, 0.995],
    "all but never to all but always",
);
/// Scatter of the muscles' torques; how it goes with a joint's strength and how long it stays alike stand with
/// [`MotorNoise`](crate::swing::noise::MotorNoise).
pub(crate) const TORQUE_NOISE: Constant = assumed(
    "scatter of a joint's torque as a share of it, for a joint of 70 N m; more in weaker ones",
    "",
    0.02,
    [0.01, 0.04],
    "that it goes with the torque: Jones, Hamilton and Wolpert 2002; less in stronger joints: Hamilton and others 2004 (abstracts read, without the figures)",
);
pub(crate) const TIMING: Constant = assumed(
    "timing of the meeting with a ball that was read well, one standard deviation",
    "s",
    0.007,
    [0.004, 0.012],
    "interception: some 7 ms (Brenner and others 2014, abstract read)",
);
const JUNIOR_TIMING: Constant = assumed(
    "timing of a junior's meeting with a ball that was read well, one standard deviation",
    "s",
    0.010,
    [0.005, 0.018],
    "nothing was found; wider than grown players'",
);
pub(crate) const JUDGED_PLACE: Constant = assumed(
    "where the ball is thought to come, along and across the blade, one standard deviation",
    "m",
    0.015,
    [0.008, 0.030],
    "no figure was read; beside it: 58 to 70 % good contacts go with 19 to 33 mm across in all (Houghton and others 2011, computed)",
);
pub(crate) const RESTITUTION: Constant = assumed(
    "restitution of ball on bat",
    "",
    0.50,
    [0.42, 0.58],
    "a round figure; willow kinds differ by 1 % (Singh and Smith, abstract read)",
);
/// How long ball and bat touch: what the face turns meanwhile spares a hit off the middle.
pub(crate) const CONTACT: Constant = assumed(
    "time for which ball and bat touch",
    "s",
    CONTACT_S.value,
    [0.7e-3, 1.5e-3],
    "about a millisecond (from memory, medium); the hit over time has 0.9 to 1.4 ms with the ball's stiffness in doubt as it is",
);
pub(crate) const BALL_AT_BAT: Constant = constant(
    "speed of the ball at the bat over that out of the hand",
    "",
    0.80,
    [0.75, 0.86],
    "drag and a bounce that keeps 85 to 93 % (read second-hand), computed",
    Status::Computed,
);
pub(crate) const LATE_BALL: Constant = assumed(
    "what a late ball, defended or left, is worth over one in time",
    "",
    0.25,
    [0.0, 0.5],
    "nothing is known",
);
pub(crate) const PATH: Constant = assumed(
    "way from the stored path of a stroke to that of twenty that suits player and bat best",
    "",
    0.5,
    [0.0, 1.0],
    "nobody is known to swing the best way for him or her, nor just as it was planned for another",
);
/// What a path's time counts against its speed.
pub const TIME_OVER_SPEED: Constant = rule(
    "what a share of the time of a stroke to the short ball is worth over the same share of its speed",
    "",
    3.0,
);
pub(crate) const RISE: Constant = assumed(
    "time in which torque rises",
    "s",
    0.0675,
    [crate::swing::activation::ACTIVATION_TIME_S, crate::swing::activation::FROM_REST_S],
    "from 30 ms, an assumption, to 105 ms from rest (Falk and others 2009, read)",
);
pub(crate) const LAW: Constant = assumed(
    "way from the law of following to one that holds to bat's attitude and joints' path three times as hard",
    "",
    0.5,
    [0.0, 1.0],
    "the law is this project's own; a factor of three is what its pilot study tried",
);

pub(crate) const NEAR_BEST: Constant =
    rule("bats within this share of the best count as good", "", 0.005);
pub(crate) const DOUBTFUL_ABOVE: Constant =
    rule("draws in which another bat is near the best, above which it is as good", "", 0.4);
/// Gain from which a new bat is worth ordering: one km/h of expected ball speed.
pub(crate) const WORTH_ORDERING: Constant =
    rule("gain from which a new bat pays", "m/s", 1.0 / 3.6);
pub(crate) const BEYOND_DOUBT_SD: Constant =
    rule("standard deviations beyond which a gain is sure", "", 1.96);
pub(crate) const LEAVE_BELOW: Constant =
    rule("share in time below which a stroke is better left", "", 0.5);
pub(crate) const SUITS_WITHIN: Constant = constant(
    "stature beyond a size's own within which it still suits",
    "m",
    0.03,
    [0.03, 0.03],
    "makers differ by 5 cm",
    Status::CommonPractice,
);
/// How far from the standard bat's the swell of a usual middle lies.
pub const USUAL_MIDDLE: Constant = rule(
    "distance of the swell from the standard bat's within which a middle is usual",
    "m",
    0.015,
);

/// Everything, for a player of this age: what is drawn, then the rules.
pub fn constants(age_y: f64) -> Vec<Constant> {
    let [bowler, own_start, timing] = by_age(age_y);
    vec![
        bowler,
        PITCH,
        AFTER_BOUNCE,
        own_start,
        IN_TIME,
        IN_TIME_BEFORE_SEEN,
        TORQUE_NOISE,
        timing,
        JUDGED_PLACE,
        RESTITUTION,
        CONTACT,
        BALL_AT_BAT,
        LATE_BALL,
        PATH,
        RISE,
        LAW,
        NEAR_BEST,
        DOUBTFUL_ABOVE,
        WORTH_ORDERING,
        BEYOND_DOUBT_SD,
        LEAVE_BELOW,
        SUITS_WITHIN,
        USUAL_MIDDLE,
    ]
}

/// Scatter of the bowler's speed, of the player's own start and of the timing of the meeting, by the player's age.
pub fn by_age(age_y: f64) -> [Constant; 3] {
    match age_y < GROWN_FROM_Y {
        true => [JUNIOR_BOWLER, JUNIOR_OWN_START, JUNIOR_TIMING],
        false => [BOWLER, OWN_START, TIMING],
    }
}

/// Age from which player and bowlers count as grown, years.
pub(crate) const GROWN_FROM_Y: f64 = 18.0;
