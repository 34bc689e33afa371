//! The order as it stands in a card's file: what was not said is left out.

use serde::{Deserialize, Serialize};

use crate::card::HandleShape;
use crate::card::order::{Order, Wish};
use crate::measurement::plan::Middle;

/// An order, version 1.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub(super) struct OrderV1 {
    #[serde(skip_serializing_if = "Option::is_none")]
    number: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    middle: Option<MiddleV1>,
    #[serde(skip_serializing_if = "Option::is_none")]
    handle: Option<HandleV1>,
    #[serde(skip_serializing_if = "Option::is_none")]
    grips: Option<u32>,
    #[serde(skip_serializing_if = "Option::is_none")]
    note: Option<String>,
}

#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
enum MiddleV1 {
    High,
    Usual,
    Low,
}

#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
enum HandleV1 {
    Round,
    Oval,
    SemiOval,
}

impl From<Order> for OrderV1 {
    fn from(Order { number, wish }: Order) -> Self {
        Self {
            number,
            middle: wish.middle.map(|it| match it {
                Middle::High => MiddleV1::High,
                Middle::Usual => MiddleV1::Usual,
                Middle::Low => MiddleV1::Low,
            }),
            handle: wish.handle_shape.map(|it| match it {
                HandleShape::Round => HandleV1::Round,
                HandleShape::Oval => HandleV1::Oval,
                HandleShape::SemiOval => HandleV1::SemiOval,
            }),
            grips: wish.grips,
            note: wish.note,
        }
    }
}

impl From<OrderV1> for Order {
    fn from(file: OrderV1) -> Self {
        let wish = Wish {
            middle: file.middle.map(|it| match it {
                MiddleV1::High => Middle::High,
                MiddleV1::Usual => Middle::Usual,
                MiddleV1::Low => Middle::Low,
            }),
            handle_shape: file.handle.map(|it| match it {
                HandleV1::Round => HandleShape::Round,
                HandleV1::Oval => HandleShape::Oval,
                HandleV1::SemiOval => HandleShape::SemiOval,
            }),
            grips: file.grips,
            note: file.note,
        };
        Self { number: file.number, wish }
    }
}
