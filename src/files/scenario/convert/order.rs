//! The order: what it is called, and what is wished besides.

use super::super::super::document::values::Values;
use super::super::{OrderV1, Text, WishV1};
use crate::bat::handle::HandleShape;
use crate::card::CardFault;
use crate::card::order::{MOST_GRIPS, Order, Wish, note, number};

/// The order; none where nothing is said of it.
pub(super) fn order(values: &mut Values, v1: &OrderV1) -> Option<Order> {
    let number = line(values, "order.number", &v1.number, number, "like \"17\", and no name");
    Order { number, wish: wish(values, &v1.wish) }.said()
}

fn wish(values: &mut Values, v1: &WishV1) -> Wish {
    let shapes: [(&[&str], HandleShape); 3] = [
        (&["oval"], HandleShape::Oval),
        (&["round"], HandleShape::Round),
        (&["semi-oval", "semi oval", "semioval"], HandleShape::SemiOval),
    ];
    let whole = |it: f64| (0.0..=f64::from(MOST_GRIPS)).contains(&it) && it.fract() == 0.0;
    let grips = values.number("order.wish.grips", &v1.grips, whole, "a whole number from 0 to 4");
    Wish {
        middle: values.choice("order.wish.middle", &v1.middle, &super::MIDDLES),
        handle_shape: values.choice("order.wish.handle", &v1.handle, &shapes),
        grips: grips.map(|it| it as u32),
        note: line(values, "order.wish.note", &v1.note, note, "and leave the rest for the bench"),
    }
}

/// One line of text, or a fault with its mend.
fn line(
    values: &mut Values,
    path: &str,
    text: &Option<Text>,
    of: impl Fn(&str) -> Result<Option<String>, CardFault>,
    like: &str,
) -> Option<String> {
    match of(&text.as_ref()?.0) {
        Ok(line) => line,
        Err(fault) => {
            values.fault(path, &fault.to_string(), &format!("write fewer letters, {like}"));
            None
        }
    }
}
