use backlift::bat::family::Family;
use backlift::bat::moisture::equilibrium_moisture;
use backlift::bat::sizes::named;
use backlift::files::air::air;
use backlift::files::assets;
use backlift::workshop::carved::Figures;
use backlift::workshop::season::drift::season;
use backlift::workshop::season::swelling::{FIBRE_SATURATION, RADIAL, TANGENTIAL, swelling};
use backlift::workshop::season::wetted::wetted;
use backlift::workshop::season::year::share_within;
use backlift::workshop::season::{Air, AirFault, Seasoned};
use proptest::prelude::*;

fn carried(mass_kg: f64, from: Air, to: Air) -> Seasoned {
    let sizes = assets::sizes().unwrap();
    let size = named(&sizes, "6").unwrap();
    let reference = size.reference.bat("").unwrap();
    let bat = Figures { mass_kg, balance_m: 0.497, swing_moment_kg_m2: None };
    season(&Family::of(size), &reference, &bat, [from, to]).unwrap()
}

fn mild() -> Air {
    Air::new(18.0, 0.55).unwrap()
}

fn damp() -> Air {
    Air::new(30.0, 0.75).unwrap()
}

/// Wood Handbook, ch. 4: density at moisture M is that of the dry wood in the same volume times (1 + M)
/// (from memory, high). A box of willow alone.
#[test]
fn willow_alone_weighs_one_and_its_moisture_times_its_dry_weight() {
    let mut shape = super::pressing::boxed([0.1, 0.04]);
    shape.handle.density_kg_m3 = 0.0;
    let dry_kg = wetted(&shape, 0.1, 0.0, 1.0).mass_moments().mass_kg;
    for moisture in [0.05, 0.1, 0.2] {
        let wet = wetted(&shape, 0.1, moisture, 1.0).mass_moments();
        assert!((wet.mass_kg / dry_kg - 1.0 - moisture).abs() < 1e-12);
        assert!((wet.com_B() - shape.mass_moments().com_B()).length() < 1e-12);
    }
}

/// Table 4-2 of the Wood Handbook prints 10.1 % for 18 °C (between 60 and 70 °F) and 55 %, and between 14.2
/// and 13.9 % for 30 °C and 75 %.
#[test]
fn published_moisture_of_both_airs_is_what_the_bat_is_given() {
    let it = carried(0.894, mild(), damp());
    assert!((it.moisture_from - 0.1015).abs() < 0.001, "{}", it.moisture_from);
    assert!((it.moisture_to - 0.1405).abs() < 0.002, "{}", it.moisture_to);
    assert_eq!(it.moisture_to, equilibrium_moisture(30.0, 0.75));
}

/// By hand: three quarters of a 0.894 kg bat is willow, most of the rest handle, so that 3.9 points of water
/// on 1.10 weigh between 2.6 and 3.5 % of the bat.
#[test]
fn the_bat_gains_what_its_wood_gains() {
    let it = carried(0.894, mild(), damp());
    let share = it.mass_change_kg.value / 0.894;
    assert!((0.026..0.035).contains(&share), "{share}");
    let wood = it.willow_kg + 0.78 * it.handle_kg;
    let by_hand = wood * (it.moisture_to - it.moisture_from) / (1.0 + it.moisture_from);
    assert!((it.mass_change_kg.value / by_hand - 1.0).abs() < 0.02);
    assert!(it.willow_kg + it.handle_kg < 0.894);
}

#[test]
fn no_change_of_air_changes_nothing_and_has_no_doubt() {
    let it = carried(0.894, mild(), mild());
    assert_eq!(it.mass_change_kg.value, 0.0);
    assert_eq!(it.mass_change_kg.sd, 0.0);
    assert!((it.aim.mass_kg - 0.894).abs() < 1e-12);
    assert!(it.mass_for_5_percent_kg > 0.0);
}

#[test]
fn a_bat_made_to_the_aim_is_as_wanted_where_it_lives() {
    let aim = carried(0.894, mild(), damp()).aim;
    let sizes = assets::sizes().unwrap();
    let size = named(&sizes, "6").unwrap();
    let bat = Figures {
        mass_kg: aim.mass_kg,
        balance_m: aim.balance_m,
        swing_moment_kg_m2: Some(aim.swing_moment_kg_m2),
    };
    let reference = size.reference.bat("").unwrap();
    let there = season(&Family::of(size), &reference, &bat, [mild(), damp()]).unwrap().there;
    let wanted = carried(0.894, mild(), damp()).here;
    assert!((there.mass_kg - 0.894).abs() < 2e-4, "{}", there.mass_kg);
    assert!((there.balance_m - 0.497).abs() < 2e-4, "{}", there.balance_m);
    assert!((there.swing_moment_kg_m2 - wanted.swing_moment_kg_m2).abs() < 1e-4);
}

#[test]
fn air_outside_the_table_is_refused_at_its_figure() {
    assert_eq!(
        Air::new(18.0, 1.0),
        Err(AirFault::Humidity { relative_humidity: 1.0 }),
        "condensing air is not in the table"
    );
    assert!(matches!(Air::new(60.0, 0.5), Err(AirFault::Temperature { .. })));
    for (celsius, humidity) in [(f64::NAN, 0.5), (18.0, f64::NAN), (-10.0, 0.5), (18.0, 0.0)] {
        assert!(Air::new(celsius, humidity).is_err());
    }
}

#[test]
fn air_is_read_as_people_write_it() {
    let wanted = Air::new(18.0, 0.55).unwrap();
    for text in ["18 C, 55 %", "18°C 55%", " 18.0 c ; 55 % RH", "18 C,55%"] {
        assert_eq!(air(text), Ok(wanted), "{text}");
    }
    assert!((air("64.4 F, 55 %").unwrap().celsius() - 18.0).abs() < 1e-9);
    for text in
        ["", "18", "18 C", "18 K, 55 %", "18 C, 55", "C, %", "18 C, 55 % wet", "18 °", "é, 5 %"]
    {
        assert!(air(text).is_err(), "{text}");
    }
    assert!(air("18 C, 100 %").unwrap_err().0.contains("100 %"));
}

/// A year of a sine, counted hour by hour.
#[test]
fn the_share_of_a_year_is_that_of_a_sine_counted_hour_by_hour() {
    let ends = [0.90, 0.93];
    let limits = [0.89, 0.91];
    let hours = 8766;
    let within = (0..hours)
        .filter(|hour| {
            let phase = 2.0 * std::f64::consts::PI * f64::from(*hour) / f64::from(hours);
            let mass = ends[0] + (ends[1] - ends[0]) * 0.5 * (1.0 - phase.cos());
            (limits[0]..=limits[1]).contains(&mass)
        })
        .count();
    let counted = within as f64 / f64::from(hours);
    assert!((share_within(&[(ends, limits)]) - counted).abs() < 0.001, "{counted}");
    assert_eq!(share_within(&[(ends, [0.8, 1.0])]), 1.0);
    assert_eq!(share_within(&[(ends, [0.8, 0.85])]), 0.0);
    assert_eq!(share_within(&[([0.9, 0.9], [0.8, 0.85])]), 0.0);
    assert_eq!(share_within(&[([0.9, 0.9], [0.8, 0.95])]), 1.0);
}

/// Wood Handbook, Table 4-3, black willow: green to dry 3.3 % along the radius, 8.7 % along the rings.
#[test]
fn published_shrinkage_of_willow_comes_back_from_green_to_dry() {
    assert!((swelling(RADIAL, FIBRE_SATURATION, 0.0) + 0.033).abs() < 1e-12);
    assert!(
        (swelling(TANGENTIAL, 0.5, 0.0) + 0.087).abs() < 1e-12,
        "above saturation nothing moves"
    );
}

proptest! {
    /// More water, more weight; and the doubt is never larger than the change itself allows.
    #[test]
    fn damper_air_never_makes_a_bat_lighter(
        celsius in 0.0..40.0, low in 0.1..0.6, more in 0.01..0.3, mass_kg in 0.86..0.94
    ) {
        let from = Air::new(celsius, low).unwrap();
        let to = Air::new(celsius, low + more).unwrap();
        let it = carried(mass_kg, from, to);
        prop_assert!(it.mass_change_kg.value > 0.0);
        prop_assert!(it.swing_moment_change_kg_m2.value > 0.0);
        prop_assert!(it.aim.mass_kg < mass_kg);
        prop_assert!(it.mass_change_kg.sd > 0.1 * it.mass_change_kg.value);
        prop_assert!(it.mass_change_kg.sd < 0.5 * it.mass_change_kg.value);
    }
}
