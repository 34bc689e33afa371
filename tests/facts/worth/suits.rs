use backlift::bat::sizes::Size;
use backlift::files::assets::sizes;
use backlift::worth::suits::{Suits, suits};

fn size(name: &str) -> Size {
    sizes().unwrap().into_iter().find(|it| it.name == name).unwrap()
}

#[test]
fn within_three_centimetres_of_an_edge_both_sizes_suit() {
    // Sizes 5 and 6 part at 1.575 m.
    for stature_m in [1.55, 1.575, 1.60] {
        assert_eq!(suits(&size("5"), stature_m), Suits::Yes, "{stature_m}");
        assert_eq!(suits(&size("6"), stature_m), Suits::Yes, "{stature_m}");
    }
}

#[test]
fn a_size_for_taller_players_is_too_long_and_one_for_shorter_too_short() {
    assert_eq!(suits(&size("6"), 1.48), Suits::TooLong);
    assert_eq!(suits(&size("4"), 1.48), Suits::Yes);
    assert_eq!(suits(&size("4"), 1.56), Suits::TooShort);
    assert_eq!(suits(&size("1"), 1.10), Suits::Yes);
    assert_eq!(suits(&size("long handle"), 2.05), Suits::Yes);
}
