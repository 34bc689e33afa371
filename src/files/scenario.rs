//! Scenarios: version 1 of the text, and its way into the core's types.
//!
//! Every field is text as people write it; [`document`](super::document) reads it, `convert` turns it into
//! the core's types.

mod convert;
mod edited;
pub mod examples;
mod keep;
mod load;

pub use super::document::{Places, Text, edit};
pub use keep::{over_unchanged, with_calibration};
pub use load::{BLANK, DEMO, Loaded, STARTER, load, load_text};

use super::document::{Document, Kind, Mends, NoRoom, left_out, part};

/// What stands in the field `version` of a scenario this program can read.
pub const VERSION: &str = "backlift/scenario/1";

/// A scenario, in the words of its faults.
pub(in crate::files) const SCENARIO: Kind = Kind {
    what: "a scenario file",
    noun: "scenario",
    named: "a .ron file",
    like: "a scenario is a page of text; name the .ron file that holds it",
    none: "write a new one with `backlift new FILE`, or name none for the built-in demo",
};

/// A stroke of the user's own, in the words of its faults.
pub(in crate::files) const STROKE: Kind = Kind {
    what: "a stroke file",
    noun: "stroke",
    named: "a .ron file that `backlift stroke` wrote",
    like: "a stroke is a page of text; name the .ron file that holds it",
    none: "strokes are looked for beside the scenario; make one with `backlift stroke KEYS.ron NEW.ron`",
};

const MENDS: Mends = Mends {
    instead: "name the player's scenario",
    brackets: "fields and bats are parted with commas; each \"(\" needs its \")\"",
    list: "write it as [(label: \"A\", …), (label: \"B\", …)]",
    start: "write a new one with `backlift new FILE`",
    compare: "compare with the file that `backlift new FILE` writes",
};

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
        /// Nine balls in ten of the spell: "85 to 105 km/h".
        nine_in_ten,
    }
}

part! {
    /// What a coach saw: how often a stroke with one bat was in time.
    SeenV1 = "Seen" {
        /// Label of the bat.
        bat,
        /// The stroke.
        stroke,
        /// Runs scored before; fresh if not given.
        runs,
        /// Speed of the bowling then; as under bowling if not given.
        bowling,
        /// About so many short balls that the player chose to hit.
        balls,
        /// "nearly all", "most", "half" or "few".
        in_time,
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
        /// "high", "usual" or "low": where the middle of the blade shall be.
        middle,
        /// "yes" if bats lighter or heavier than are usually sold may be asked for.
        beyond_usual,
        /// Of an earlier rule; read and no longer used.
        share_limit,
        /// Of an earlier rule; read and no longer used.
        tie_width,
        /// Asked stroke time as a multiple of the fresh fastest.
        asked_time_factor,
        /// Mass of the ball.
        ball_mass,
    }
}

part! {
    /// What the customer wishes: it changes no figure.
    WishV1 = "Wish" {
        /// "high", "usual" or "low": where the middle of the blade shall be.
        middle,
        /// "oval", "round" or "semi-oval".
        handle,
        /// Number of grips.
        grips,
        /// Whatever else, one line.
        note,
    }
}

part! {
    /// The order, as the maker's book has it.
    OrderV1 = "Order" {
        /// Its number there; no name.
        number,
        ;
        wish: WishV1,
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
        /// Lower triangle L of the covariance L Lᵀ of the logarithms of the three, row by row.
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
        /// Strokes to swing, if not all that come with the program: "drive, pull, my-sweep.ron", or a list of them.
        #[serde(deserialize_with = "super::document::names")]
        strokes,
        /// Label of the bat now used; the first if not given.
        uses,
        ;
        player: PlayerV1,
        /// What readings in the nets said about the player; empty if there were none.
        calibration: CalibrationV1,
        bats: Vec<BatV1>,
        seen: Vec<SeenV1>,
        innings: InningsV1,
        bowling: BowlingV1,
        fit: FitV1,
        order: OrderV1,
    }
}

impl Document for ScenarioV1 {
    const KIND: Kind = SCENARIO;
    const MENDS: Mends = MENDS;
    const VERSION: &'static str = VERSION;

    /// Makes room for one more bat or one more thing seen, so that `bats.N` may be the first after the last.
    fn make_room(&mut self, path: &[&str]) -> Result<(), NoRoom> {
        match *path {
            ["bats", n, ..] => one_more(&mut self.bats, n, "bats", "bat"),
            ["seen", n, ..] => one_more(&mut self.seen, n, "seen", "thing seen"),
            _ => Ok(()),
        }
    }
}

/// Makes room in a list for the place of that number, which may be the first after the last.
fn one_more<T: Default>(
    list: &mut Vec<T>,
    n: &str,
    name: &str,
    what: &'static str,
) -> Result<(), NoRoom> {
    let no_room = |help: String| NoRoom { step: n.to_owned(), what, help };
    let count = list.len();
    match n.parse::<usize>() {
        Ok(n) if n < count => Ok(()),
        Ok(n) if n == count => {
            list.push(T::default());
            Ok(())
        }
        Ok(_) => Err(no_room(format!(
            "there are {count} {name} here, counted from 0; the next new one is {name}.{count}"
        ))),
        Err(_) => Err(no_room(format!(
            "{name} are counted from 0: {name}.0 to {name}.{}",
            count.saturating_sub(1)
        ))),
    }
}
