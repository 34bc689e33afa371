//! What a card writes by name, and the order on it, where what was not said is left out.

use crate::card::HandleShape;
use crate::card::order::{Order, Wish};
use crate::measurement::person::Handed;
use crate::measurement::plan::Middle;
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
#[serde(remote = "Handed")]
pub(super) enum HandedV1 {
    Right,
    Left,
}

#[derive(Serialize, Deserialize)]
#[serde(remote = "HandleShape")]
pub(super) enum HandleShapeV1 {
    Round,
    Oval,
    SemiOval,
}

#[derive(Serialize, Deserialize)]
#[serde(remote = "Middle")]
enum MiddleV1 {
    High,
    Usual,
    Low,
}

/// As [`HandleShapeV1`]; a fault in an order tells this name.
#[derive(Serialize, Deserialize)]
#[serde(remote = "HandleShape")]
enum HandleV1 {
    Round,
    Oval,
    SemiOval,
}

/// A middle where there may be none.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(transparent)]
struct WishedMiddle(#[serde(with = "MiddleV1")] Middle);

/// A handle where there may be none.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(transparent)]
struct WishedHandle(#[serde(with = "HandleV1")] HandleShape);

/// An order, version 1.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub(super) struct OrderV1 {
    #[serde(skip_serializing_if = "Option::is_none")]
    number: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    middle: Option<WishedMiddle>,
    #[serde(skip_serializing_if = "Option::is_none")]
    handle: Option<WishedHandle>,
    #[serde(skip_serializing_if = "Option::is_none")]
    grips: Option<u32>,
    #[serde(skip_serializing_if = "Option::is_none")]
    note: Option<String>,
}

impl From<Order> for OrderV1 {
    fn from(Order { number, wish }: Order) -> Self {
        Self {
            number,
            middle: wish.middle.map(WishedMiddle),
            handle: wish.handle_shape.map(WishedHandle),
            grips: wish.grips,
            note: wish.note,
        }
    }
}

impl From<OrderV1> for Order {
    fn from(file: OrderV1) -> Self {
        let wish = Wish {
            middle: file.middle.map(|it| it.0),
            handle_shape: file.handle.map(|it| it.0),
            grips: file.grips,
            note: file.note,
        };
        Self { number: file.number, wish }
    }
}
