//! A RON text of ours as people write it: its fields, their places, and every fault at once.
//!
//! Every field is text; `read` finds names and brackets that are wrong, [`values`] single values,
//! `overrides` puts `--set` over it, [`edit`] changes its text and leaves every note, [`TextFile`] is one being
//! worked on.

pub mod edit;
mod overrides;
mod places;
mod read;
mod text;
mod text_file;
pub mod values;

pub use places::Places;
pub(super) use read::version_fault;
pub use read::{Fields, fields, fields_of, word_at};
pub(super) use text::paths_in;
pub use text::{Kind, still_holds, text_of_file};
pub use text_file::TextFile;

use serde::{Deserialize, Serialize};

use super::fault::{Fault, plain};

/// What stands under the names in a document, or in a part or a list of parts within it.
pub trait Part {
    /// The text at a path like `bats.1.pendulum.time`; none if there is no such place.
    fn at(&mut self, path: &[&str]) -> Option<&mut Option<Text>>;
    /// The names that may stand under a path; none if nothing may.
    fn names_under(path: &[&str]) -> Option<&'static [&'static str]>;
}

/// Parts are counted from 0.
impl<P: Part> Part for Vec<P> {
    fn at(&mut self, path: &[&str]) -> Option<&mut Option<Text>> {
        let (n, within) = path.split_first()?;
        self.get_mut(n.parse::<usize>().ok()?)?.at(within)
    }

    fn names_under(path: &[&str]) -> Option<&'static [&'static str]> {
        P::names_under(path.get(1..)?)
    }
}

/// Of what is read apart from the rest no path is known.
impl<T> Part for Option<T> {
    fn at(&mut self, _: &[&str]) -> Option<&mut Option<Text>> {
        None
    }

    fn names_under(_: &[&str]) -> Option<&'static [&'static str]> {
        None
    }
}

/// What all documents can do.
pub trait Document: Part + serde::de::DeserializeOwned {
    /// In the words of its faults.
    const KIND: Kind;
    /// What to do about one that cannot be read.
    const MENDS: Mends;
    /// What stands in its field `version`.
    const VERSION: &'static str;

    /// Makes room for a path that names the first element after the last of a list, where it has a list that grows so.
    fn make_room(&mut self, _: &[&str]) -> Result<(), NoRoom> {
        Ok(())
    }

    /// As a file.
    fn to_ron(&self) -> Result<String, Fault>
    where
        Self: Serialize,
    {
        Ok(in_ron(self)? + "\n")
    }
}

/// A part of a document as it is written into a file.
pub fn in_ron(it: &impl Serialize) -> Result<String, Fault> {
    laid_out(it, ron::ser::PrettyConfig::new().indentor("    "))
}

/// A small part of a document on one line.
pub fn in_one_line(it: &impl Serialize) -> Result<String, Fault> {
    laid_out(it, ron::ser::PrettyConfig::new().compact_structs(true))
}

/// How all documents are read and written: what may be left out stands there without `Some`.
pub(in crate::files) fn options() -> ron::Options {
    ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME)
}

pub(in crate::files) fn laid_out(
    it: &impl Serialize,
    layout: ron::ser::PrettyConfig,
) -> Result<String, Fault> {
    options()
        .to_string_pretty(it, layout.struct_names(false))
        .map_err(|error| Fault::new(format!("it cannot be put into words: {error}")))
}

/// What to do about a document that cannot be read.
pub struct Mends {
    /// What to do when another text of ours was named in its place.
    pub instead: &'static str,
    /// How its parts are set apart.
    pub brackets: &'static str,
    /// How a list in it is written.
    pub list: &'static str,
    /// What to do about an empty file.
    pub start: &'static str,
    /// What to compare with.
    pub compare: &'static str,
}

/// A path names an element of a list that is neither there nor the next.
pub struct NoRoom {
    /// The step that leads nowhere.
    pub step: String,
    /// What was looked for.
    pub what: &'static str,
    /// The mend.
    pub help: String,
}

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
                Ok(Text(plain(it)))
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

/// Names in one text parted by commas, or in a list, which is the same.
pub(in crate::files) fn names<'de, D: serde::Deserializer<'de>>(
    deserializer: D,
) -> Result<Option<Text>, D::Error> {
    struct Names;
    impl<'de> serde::de::Visitor<'de> for Names {
        type Value = Text;
        fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
            f.write_str("text in quotation marks, or a list of it")
        }
        fn visit_str<E>(self, it: &str) -> Result<Text, E> {
            Ok(Text(plain(it)))
        }
        fn visit_seq<A: serde::de::SeqAccess<'de>>(self, mut list: A) -> Result<Text, A::Error> {
            let mut all: Vec<String> = Vec::new();
            while let Some(Text(it)) = list.next_element()? {
                all.push(it);
            }
            Ok(Text(all.join(", ")))
        }
    }
    deserializer.deserialize_any(Names).map(Some)
}

pub(in crate::files) fn left_out<T: Default + PartialEq>(it: &T) -> bool {
    *it == T::default()
}

/// A part of a document: optional texts whose names are known, then parts within it.
macro_rules! part {
    ($(#[$about:meta])* $part:ident = $name:literal {
        $($(#[$doc:meta])* $text:ident,)*
        $(; $($(#[$inner_doc:meta])* $inner:ident: $type:ty,)*)?
    }) => {
        $(#[$about])*
        #[derive(Clone, Debug, Default, PartialEq, serde::Serialize, serde::Deserialize)]
        #[serde(default, deny_unknown_fields, rename = $name)]
        pub struct $part {
            $($(#[$doc])* #[serde(skip_serializing_if = "Option::is_none")]
            pub $text: Option<Text>,)*
            $($($(#[$inner_doc])* #[serde(skip_serializing_if = "left_out")]
            #[allow(missing_docs, reason = "the part itself says what it is")]
            pub $inner: $type,)*)?
        }
        impl $part {
            /// Names of everything in it.
            pub const NAMES: &'static [&'static str] =
                &[$(stringify!($text),)* $($(stringify!($inner),)*)?];
        }
        impl $crate::files::document::Part for $part {
            fn at(&mut self, path: &[&str]) -> Option<&mut Option<Text>> {
                match path {
                    $([stringify!($text)] => Some(&mut self.$text),)*
                    $($([stringify!($inner), within @ ..] => {
                        $crate::files::document::Part::at(&mut self.$inner, within)
                    })*)?
                    _ => None,
                }
            }
            fn names_under(path: &[&str]) -> Option<&'static [&'static str]> {
                match path {
                    [] => Some(Self::NAMES),
                    $($([stringify!($inner), within @ ..] => {
                        <$type as $crate::files::document::Part>::names_under(within)
                    })*)?
                    _ => None,
                }
            }
        }
    };
}

pub(in crate::files) use part;
