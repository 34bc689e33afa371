//! Figures with their doubt, in the words and units of the reader.

use backlift::bat::figures::WeighedBat;
use backlift::card::Figure;
use backlift::uncertain::Uncertain;
pub use backlift::units::number;
use backlift::units::{Quantity, THIN, Units, decimals, spoken};

/// Stands under a table of several sizes.
pub const ACROSS_SIZES: &str =
    "Picks up like: the standard bat of this size. These are of several sizes: from
one to another compare the swing moments\n\n";

/// Whether these bats are of more than one size.
pub fn of_several_sizes<'a>(bats: impl IntoIterator<Item = &'a WeighedBat>) -> bool {
    let mut sizes = bats.into_iter().map(|it| it.size.as_str());
    let first = sizes.next();
    sizes.any(|it| Some(it) != first)
}

/// Marks a figure that was not measured.
pub const ESTIMATED: &str = "*";

/// Speed in the reader's units: its unit, and how many of it are in a metre per second.
pub fn speed_unit(units: Units) -> (&'static str, f64) {
    match units {
        Units::Trade => ("km/h", 3.6),
        Units::Si => ("m/s", 1.0),
    }
}

/// A speed to a tenth of the reader's unit, which stands elsewhere: "60.1 ± 1.2".
pub fn bare_speed(mean_m_s: f64, sd_m_s: f64, units: Units) -> String {
    let (_, per_m_s) = speed_unit(units);
    format!("{} ± {}", number(per_m_s * mean_m_s, 1), number(per_m_s * sd_m_s, 1))
}

/// "2 lb 3.0 oz ± 0.2 oz".
pub fn with_doubt(quantity: Quantity, value: f64, sd: f64, units: Units) -> String {
    format!("{} ± {}", spoken(quantity, value, sd, units), spoken(quantity, sd, sd, units))
}

/// The same, with the mark where it was not measured.
pub fn measured(quantity: Quantity, it: Uncertain, units: Units) -> String {
    with_doubt(quantity, it.value, it.sd, units) + mark(it)
}

/// The same; where the doubt takes all of it, the most it can be.
pub fn measured_or_at_best(
    at_best: bool,
    quantity: Quantity,
    it: Uncertain,
    units: Units,
) -> String {
    match at_best {
        true => spoken(quantity, it.value, 0.1 * it.value, units) + " at best",
        false => measured(quantity, it, units),
    }
}

/// A figure of a card to the digits that its doubt allows; without its unit where that is not the trade's.
pub fn figure_words(figure: Figure, value: f64, sd: f64, units: Units) -> String {
    match figure.about().quantity {
        Some(quantity) => spoken(quantity, value, sd, units),
        None => number(value, decimals(sd, figure.about().decimals)),
    }
}

/// The same without a unit, which stands at the head of its row or column.
pub fn bare(it: Uncertain, most: usize) -> String {
    let digits = decimals(it.sd, most);
    format!("{} ± {:.digits$}{}", number(it.value, digits), it.sd, mark(it))
}

/// A number and its unit, no doubt stated.
pub fn plain(value: f64, decimals: usize, unit: &str) -> String {
    format!("{}{THIN}{unit}", number(value, decimals))
}

/// A share as a percentage, "12 %".
pub fn percent(share: f64, decimals: usize) -> String {
    plain(100.0 * share, decimals, "%")
}

fn mark(it: Uncertain) -> &'static str {
    if it.is_estimated() { ESTIMATED } else { "" }
}

/// In a column of verdicts.
pub fn yes_or_no(it: bool) -> &'static str {
    if it { "yes" } else { "no" }
}

/// What every time in hand hangs on, in words.
pub fn if_read_in(reaction_time_s: f64) -> String {
    format!(
        "if the ball is read in {}, which is an assumption",
        plain(1e3 * reaction_time_s, 0, "ms")
    )
}

/// "a, b or c".
pub fn either(words: &[String]) -> String {
    in_a_row(words, "or")
}

/// "a, b and c".
pub fn listed(words: &[String]) -> String {
    in_a_row(words, "and")
}

fn in_a_row(words: &[String], before_last: &str) -> String {
    match words {
        [most @ .., last] if !most.is_empty() => {
            format!("{} {before_last} {last}", most.join(", "))
        }
        _ => words.concat(),
    }
}

/// With a capital letter.
pub fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |it| it.to_uppercase().to_string() + letters.as_str())
}

/// With a small letter, to stand in the middle of a sentence.
pub fn lower(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |it| it.to_lowercase().to_string() + letters.as_str())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figure_has_no_more_digits_than_its_doubt() {
        let mass = Uncertain::measured(0.9922, 0.005);
        assert_eq!(
            measured(Quantity::Mass, mass, Units::Si).replace(THIN, " "),
            "0.992 kg ± 0.005 kg"
        );
        let twist = Uncertain::estimated(0.001_234_5, 0.000_18);
        assert_eq!(bare(twist, 5), "0.0012 ± 0.0002*");
        assert_eq!(number(-0.04, 1), "0.0");
        assert_eq!(number(-0.06, 1), "−0.1");
    }
}
