//! How much of a handle may be rubber. Laws of Cricket, Appendix B, B.2.3: one tenth of its volume in types A and B, one
//! fifth in types C and D.

use backlift::bat::described::{Described, DescribedHandle};
use backlift::bat::laws::{BatType, Verdict};
use backlift::bat::shaped::shaped;

use super::{limits, size};

#[test]
fn published_tenth_of_rubber_in_a_handle_is_allowed_and_more_is_not() {
    assert_eq!(limits().rubber_share, 0.10);
    for (rubber_share, allowed) in
        [(None, true), (Some(0.02), true), (Some(0.10), true), (Some(0.11), false)]
    {
        let handle = DescribedHandle { rubber_share, ..DescribedHandle::default() };
        let described = Described { handle, ..Described::default() };
        let bat = shaped("", &described, &size("6"), &limits()).unwrap();
        assert_eq!(bat.law.verdict, Verdict::Yes);
        assert_eq!(bat.rubber_share_allowed, allowed, "{rubber_share:?}");
        assert_eq!(bat.is_legal(), allowed, "{rubber_share:?}");
    }
}

#[test]
fn published_fifth_of_rubber_is_allowed_in_types_c_and_d_and_in_no_other() {
    let limits = limits();
    assert_eq!(limits.rubber_share_c_d, 0.20);
    for (law_type, rubber_share, allowed) in [
        (None, 0.11, false),
        (Some(BatType::A), 0.11, false),
        (Some(BatType::B), 0.11, false),
        (Some(BatType::C), 0.11, true),
        (Some(BatType::D), 0.20, true),
        (Some(BatType::D), 0.21, false),
    ] {
        let handle =
            DescribedHandle { rubber_share: Some(rubber_share), ..DescribedHandle::default() };
        let described = Described { handle, law_type, ..Described::default() };
        let bat = shaped("", &described, &size("6"), &limits).unwrap();
        assert_eq!(bat.rubber_share_allowed, allowed, "{law_type:?} {rubber_share}");
        assert_eq!(bat.is_legal(), allowed, "{law_type:?} {rubber_share}");
    }
}
