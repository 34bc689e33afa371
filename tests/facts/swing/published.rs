//! The one published drive.

use backlift::measurement::person::Handed;

use super::players::{Search, adult, adult_bat, strokes};

/// Stretch et al. 1998, J Sports Sci 16(8):711-720 (abstract): 14 provincial batsmen in ordinary play,
/// front-foot drive: downswing 0.36 s before impact, horizontal bat speed 11.8 m/s (SD 4.6).
/// A fastest controlled swing must be shorter and faster than ordinary play, and not beyond belief: within
/// two of their standard deviations.
#[test]
fn published_drives_of_ordinary_play_are_slower_than_the_fastest_controlled_one() {
    let strokes = strokes(&adult(Handed::Right));
    let drive = strokes.iter().find(|s| s.stroke.name == "drive").unwrap();
    let fastest = Search::new(drive).fastest(&adult_bat(), &super::players::FRESH);
    println!(
        "published: drive {:.3} s to contact, {:.2} m/s at the contact point",
        fastest.contact.time_s, fastest.contact.bat_speed_m_s
    );
    assert!(fastest.contact.time_s < 0.36);
    assert!(fastest.contact.bat_speed_m_s > 11.8);
    assert!(fastest.contact.bat_speed_m_s < 11.8 + 2.0 * 4.61);
}
