//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, YesNo};
use crate::quantity::{One, Quantity};

group! {
    /// TEXT.
    Paper "paper" {
        permanent_mods: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "permanent mods", note: "",
            how: "",
            why: "",
        }
        permanent_ack: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "permanent ack", note: "",
            how: "",
            why: "",
        }
        customer_parts: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "customer parts", note: "",
            how: "",
            why: "",
        }
        customer_parts_ack: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "customer parts ack", note: "",
            how: "",
            why: "",
        }
        quoted_total: Quantity<One> {
            sheet: Paper, bound: NotNegative, plain: Number(2000.0),
            label: "quoted total", note: "",
            how: "",
            why: "",
        }
        current_total: Quantity<One> {
            sheet: Paper, bound: NotNegative, plain: Number(2000.0),
            label: "current total", note: "",
            how: "",
            why: "",
        }
        change_signed: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "change signed", note: "",
            how: "",
            why: "",
        }
        spec_version: Quantity<One> {
            sheet: Paper, bound: NotNegative, plain: Number(3.0),
            label: "spec version", note: "",
            how: "",
            why: "",
        }
        signed_version: Quantity<One> {
            sheet: Paper, bound: NotNegative, plain: Number(3.0),
            label: "signed version", note: "",
            how: "",
            why: "",
        }
    }
}
