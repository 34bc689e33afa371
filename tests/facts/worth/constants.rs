use backlift::worth::constants::{Status, constants};

#[test]
fn every_constant_lies_in_its_range_and_has_a_source() {
    for age_y in [12.0, 25.0] {
        for it in constants(age_y) {
            let [low, high] = it.range;
            assert!(low <= it.value && it.value <= high, "{}", it.what);
            assert!(!it.work.is_empty(), "{}", it.what);
        }
    }
}

#[test]
fn no_constant_rests_on_what_people_use() {
    // What is common practice may limit what is asked for; of the constants only the sizes' edges are.
    let common: Vec<&str> = constants(12.0)
        .iter()
        .filter(|it| it.status == Status::CommonPractice)
        .map(|it| it.what)
        .collect();
    assert_eq!(common, ["stature beyond a size's own within which it still suits"]);
}
