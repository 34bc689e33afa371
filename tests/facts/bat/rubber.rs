//! How much of a handle may be rubber. Laws of Cricket, Appendix B, B.2.3: one tenth of its volume, types A and B.

use backlift::bat::described::{Described, DescribedHandle};
use backlift::bat::laws::Verdict;
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
