//! The solid as other programs read it: every triangle of the file, by the four-byte floats that stand in it.

use std::collections::BTreeMap;

use backlift::bat::described::{Described, DescribedExtras, DescribedHandle};
use backlift::bat::mesh::shells;
use backlift::bat::shape::BatShape;
use backlift::files::{assets, shape, solid};

type Corner = [u32; 3];

/// Corners of every triangle of a binary STL, by their bits.
fn triangles(stl: &[u8]) -> Vec<[Corner; 3]> {
    let word = |at: usize| u32::from_le_bytes(stl[at..at + 4].try_into().unwrap());
    let count = word(80) as usize;
    assert_eq!(stl.len(), 84 + 50 * count);
    let corner = |at: usize| [word(at), word(at + 4), word(at + 8)];
    (0..count).map(|n| [12, 24, 36].map(|from| corner(84 + 50 * n + from))).collect()
}

fn area_mm2([a, b, c]: [Corner; 3]) -> f64 {
    let [a, b, c] = [a, b, c].map(|it| it.map(|k| f64::from(f32::from_bits(k))));
    let minus = |p: [f64; 3], q: [f64; 3]| [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
    let (u, v) = (minus(b, a), minus(c, a));
    let cross = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    0.5 * cross.iter().map(|it| it * it).sum::<f64>().sqrt()
}

/// Every edge lies between two triangles which run along it opposite ways.
fn is_watertight(triangles: &[[Corner; 3]]) -> bool {
    let mut edges: BTreeMap<(Corner, Corner), [u32; 2]> = BTreeMap::new();
    for [a, b, c] in triangles {
        for (from, to) in [(a, b), (b, c), (c, a)] {
            let forth = from < to;
            let key = if forth { (*from, *to) } else { (*to, *from) };
            edges.entry(key).or_default()[usize::from(forth)] += 1;
        }
    }
    edges.values().all(|it| *it == [1, 1])
}

fn assert_sound(bat: &BatShape, words: &str) {
    let shells = shells(bat);
    for shell in &shells {
        let found = triangles(&solid::stl(std::slice::from_ref(shell)));
        let flat = found.iter().filter(|it| area_mm2(**it) <= 0.0).count();
        assert_eq!(flat, 0, "{words}, {}: flat triangles", shell.name);
        assert!(is_watertight(&found), "{words}, {}", shell.name);
    }
    let all = triangles(&solid::stl(&shells));
    assert_eq!(all.len(), shells.iter().map(|it| it.triangles.len()).sum::<usize>());
}

#[test]
fn no_triangle_is_flat_and_no_edge_open_whatever_is_on_the_handle_and_under_the_toe() {
    for size in assets::sizes().unwrap() {
        for grips in [0, 1, 2] {
            for toe_guard_m in [0.0, 0.0015] {
                for twine_m in [0.0, 0.0005] {
                    let said = Described {
                        handle: DescribedHandle {
                            grips: Some(grips),
                            twine_m: Some(twine_m),
                            ..DescribedHandle::default()
                        },
                        extras: DescribedExtras {
                            toe_guard_m: Some(toe_guard_m),
                            ..DescribedExtras::default()
                        },
                        ..Described::default()
                    };
                    let bat = said.shape(&size.reference).unwrap();
                    let words = format!("{}, {grips} grips, {toe_guard_m} m", size.name);
                    assert_sound(&bat, &words);
                }
            }
        }
    }
}

#[test]
fn no_triangle_is_flat_and_no_edge_open_where_the_grips_end_at_the_shoulder_or_all_but_there() {
    let mut bat = assets::sizes().unwrap()[0].reference.clone();
    for short_m in [0.0, 1e-9, 2e-6, 1e-3] {
        bat.handle.grip_length_m = bat.handle.length_m - short_m;
        assert_sound(&bat, &format!("{short_m} m short"));
    }
}

#[test]
fn the_described_example_is_sound_with_one_grip_and_bare() {
    let sizes = assets::sizes().unwrap();
    for sets in [&[][..], &["handle.grips=0", "handle.diameter=30 mm"]] {
        let sets: Vec<String> = sets.iter().map(|it| (*it).to_owned()).collect();
        let loaded = shape::load(None, &sets, &sizes).unwrap();
        assert_sound(&loaded.described.shape(&loaded.size.reference).unwrap(), &loaded.title);
    }
}
