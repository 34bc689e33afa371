//! Scenarios: version 1 of the text, and its way into the core's types.
//!
//! Every field is text as people write it; `read` finds its faults and places, `overrides` puts
//! `--set` over it, `convert` turns it into the core's types.

mod convert;
pub mod edit;
mod keep;
mod load;
mod overrides;
mod places;
pub(in crate::files) mod read;
pub(in crate::files) mod text;
pub(in crate::files) mod values;

pub use keep::with_calibration;
pub use load::{Loaded, fields_of, load, load_text, set};
pub use places::Places;
pub use text::{DEMO, Given, text_of};

use serde::{Deserialize, Serialize};

use super::fault::Fault;

/// What stands in the field `version` of a scenario this program can read.
pub const VERSION: &str = "backlift/scenario/1";

/// One value as it was written, quoted or a bare number.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[serde(transparent)]
pub struct Text(pub String);

impl<'de> Deserialize<'de> for Text {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Scalar;
        impl serde::de::Visitor<'_> for Scalar {
            type Value = Text;
            fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str("text in quotation marks")
            }
            fn visit_str<E>(self, it: &str) -> Result<Text, E> {
                Ok(Text(it.to_owned()))
            }
            fn visit_bool<E>(self, it: bool) -> Result<Text, E> {
                Ok(Text(it.to_string()))
            }
            fn visit_i64<E>(self, it: i64) -> Result<Text, E> {
                Ok(Text(it.to_string()))
            }
            fn visit_u64<E>(self, it: u64) -> Result<Text, E> {
                Ok(Text(it.to_string()))
            }
            fn visit_f32<E>(self, it: f32) -> Result<Text, E> {
                Ok(Text(it.to_string()))
            }
            fn visit_f64<E>(self, it: f64) -> Result<Text, E> {
                Ok(Text(it.to_string()))
            }
        }
        deserializer.deserialize_any(Scalar)
    }
}

fn left_out<T: Default + PartialEq>(it: &T) -> bool {
    *it == T::default()
}

/// A part of the scenario: optional texts whose names are known, then parts within it.
macro_rules! part {
    ($(#[$about:meta])* $part:ident = $name:literal {
        $($(#[$doc:meta])* $text:ident,)*
        $(; $($(#[$inner_doc:meta])* $inner:ident: $type:ty,)*)?
    }) => {
        $(#[$about])*
        #[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
        #[serde(default, deny_unknown_fields, rename = $name)]
        pub struct $part {
            $($(#[$doc])* #[serde(skip_serializing_if = "Option::is_none")]
            pub $text: Option<Text>,)*
            $($($(#[$inner_doc])* #[serde(skip_serializing_if = "left_out")]
            pub $inner: $type,)*)?
        }
        impl $part {
            /// Names of everything in it.
            pub const NAMES: &'static [&'static str] =
                &[$(stringify!($text),)* $($(stringify!($inner),)*)?];
            /// The text of that name.
            pub fn text(&mut self, name: &str) -> Option<&mut Option<Text>> {
                match name {
                    $(stringify!($text) => Some(&mut self.$text),)*
                    _ => None,
                }
            }
        }
    };
}

part! {
    /// The player as measured.
    PlayerV1 = "Player" {
        /// "13", "13.5 years".
        age,
        /// "female" or "male".
        sex,
        /// Without shoes.
        stature,
        /// Body mass.
        mass,
        /// Batting hand, "right" or "left".
        handed,
        /// From the bony point of the shoulder to the centre of the grip.
        arm_length,
        /// From the wrist crease to the tip of the middle finger.
        hand_length,
        /// Dynamometer reading of the top hand.
        grip_top,
        /// Dynamometer reading of the bottom hand.
        grip_bottom,
        /// Seconds for which the top hand alone held a bat level, forearm supported.
        wrist_hold,
        /// Label of the bat that was held; the first bat if not given.
        wrist_hold_bat,
    }
}

part! {
    /// A pendulum test.
    PendulumV1 = "Pendulum" {
        /// Full swings timed, out and back.
        swings,
        /// Time of all of them.
        time,
        /// Pivot from the top of the handle.
        pivot,
        /// How far it was let go from hanging.
        amplitude,
    }
}

part! {
    /// The innings to last.
    InningsV1 = "Innings" {
        /// Score at which it ends.
        runs,
        /// "drive 50 %, pull 35 %, hook 15 %".
        mix,
        /// Balls faced for each run.
        balls_per_run,
        /// Share of the balls bowled that this player faces.
        faced_share,
        /// Time from one ball to the next.
        between_balls,
        /// Added between overs.
        between_overs,
        /// Bat held in the stance before each ball.
        stance,
    }
}

part! {
    /// The bowling to face.
    BowlingV1 = "Bowling" {
        /// Out of the hand.
        speed,
        /// Stumps to stumps.
        pitch_length,
        /// From release until the stroke can be started.
        reaction_time,
    }
}

part! {
    /// What the fit may choose from, and how it chooses.
    FitV1 = "Fit" {
        /// "5, 6, Harrow".
        sizes,
        /// Lightest bat to consider.
        lightest,
        /// Heaviest bat to consider.
        heaviest,
        /// "ball speed" or "bat speed".
        goal,
        /// Highest share of its capacity any joint may need.
        share_limit,
        /// Bats this near the best count as tied.
        tie_width,
        /// Asked stroke time as a multiple of the fresh fastest.
        asked_time_factor,
        /// Mass of the ball.
        ball_mass,
    }
}

part! {
    /// What readings in the nets said, as `backlift calibrate` keeps it.
    CalibrationV1 = "Calibration" {
        /// From how many readings.
        readings,
        /// The player it was made for.
        made_for,
        /// Strength of the trunk over what the tables say.
        trunk,
        /// Of shoulders and elbows.
        arms,
        /// Of forearms and wrists.
        wrists,
        /// Lower triangle of the covariance of the logarithms of the three, row by row.
        spread,
        /// Share of the legs' loss in an innings that trunk and arms lose: best guess.
        lasting,
        /// Low end.
        lasting_low,
        /// High end.
        lasting_high,
    }
}

part! {
    /// One bat as measured at the bench.
    BatV1 = "Bat" {
        /// Name by which the user calls it.
        label,
        /// Trade size.
        size,
        /// Overall length.
        length,
        /// Scale weight.
        mass,
        /// Balance point from the top of the handle.
        balance,
        /// Greatest width of the blade.
        width,
        /// Greatest edge thickness.
        edge,
        /// Greatest depth, face to spine.
        depth,
        /// Handle over the grip at the bottom hand.
        handle_diameter,
        ;
        /// Pendulum test; empty if not done.
        pendulum: PendulumV1,
    }
}

part! {
    /// A whole scenario.
    ScenarioV1 = "Scenario" {
        /// [`VERSION`].
        version,
        /// One line saying who and what.
        title,
        /// "yes" if people and figures are made up.
        invented,
        /// Whatever else should stand beside the result.
        note,
        /// Strokes to swing, if not those of the mix: "drive, pull".
        strokes,
        ;
        /// The player.
        player: PlayerV1,
        /// What readings in the nets said about the player; empty if there were none.
        calibration: CalibrationV1,
        /// The bats.
        bats: Vec<BatV1>,
        /// The innings.
        innings: InningsV1,
        /// The bowling.
        bowling: BowlingV1,
        /// The fit.
        fit: FitV1,
    }
}

impl ScenarioV1 {
    /// The text at a path like `bats.1.pendulum.time`; none if there is no such place.
    pub fn at(&mut self, path: &[&str]) -> Option<&mut Option<Text>> {
        match *path {
            [name] => self.text(name),
            ["player", name] => self.player.text(name),
            ["calibration", name] => self.calibration.text(name),
            ["innings", name] => self.innings.text(name),
            ["bowling", name] => self.bowling.text(name),
            ["fit", name] => self.fit.text(name),
            ["bats", n, name] => self.bat(n)?.text(name),
            ["bats", n, "pendulum", name] => self.bat(n)?.pendulum.text(name),
            _ => None,
        }
    }

    fn bat(&mut self, n: &str) -> Option<&mut BatV1> {
        self.bats.get_mut(n.parse::<usize>().ok()?)
    }

    /// The names that may stand under a path; none if nothing may.
    pub fn names_under(path: &[&str]) -> Option<&'static [&'static str]> {
        match *path {
            [] => Some(Self::NAMES),
            ["player"] => Some(PlayerV1::NAMES),
            ["calibration"] => Some(CalibrationV1::NAMES),
            ["innings"] => Some(InningsV1::NAMES),
            ["bowling"] => Some(BowlingV1::NAMES),
            ["fit"] => Some(FitV1::NAMES),
            ["bats", _] => Some(BatV1::NAMES),
            ["bats", _, "pendulum"] => Some(PendulumV1::NAMES),
            _ => None,
        }
    }

    /// As a scenario file.
    pub fn to_ron(&self) -> Result<String, Fault> {
        let layout = ron::ser::PrettyConfig::new().struct_names(false).indentor("    ");
        let options = ron::Options::default()
            .with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
        let text = options.to_string_pretty(self, layout).map_err(|error| {
            Fault::new(format!("the scenario cannot be put into words: {error}"))
        })?;
        Ok(text + "\n")
    }
}
