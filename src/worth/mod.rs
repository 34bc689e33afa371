//! What a bat is worth to a player who is not known exactly: the ball speed off it that may be expected over an
//! innings, late balls and mishits counted.
//!
//! Knowledge is a set of possible players ([`possible`]), weighed by whatever was seen ([`evidence`]). Each swings
//! every bat ([`swings`]); each ball is in time or not, and meets the blade where bat and player bring it
//! ([`steadiness`], [`meeting`]); what comes
//! of it on average is one number a bat and a possible player ([`expected`]). The advice is read off all of them
//! together ([`today`]).

pub mod constants;
pub mod evidence;
pub mod expected;
pub mod meeting;
pub mod order;
pub mod other_path;
pub mod possible;
pub mod scores;
pub mod steadiness;
pub mod suits;
pub mod swings;
pub mod swung_bat;
pub mod today;
pub mod ways;
