//! TEXT.

use super::group;
use crate::job::Bound::{Any, NotNegative, OneOf};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{CaseHistory, CaseVariant, Connector, Crack, ParkPawl};
use crate::quantity::{Inch, Quantity};

group! {
    /// TEXT.
    Case "case" {
        pump_bosses: u32 {
            sheet: Outside, bound: OneOf(&[6.0, 7.0, 8.0]), plain: Number(6.0),
            label: "pump bosses", note: "",
            how: "",
            why: "",
        }
        pump_tapped: u32 {
            sheet: Inside, bound: OneOf(&[6.0, 7.0, 8.0]), plain: Number(6.0),
            label: "pump tapped", note: "",
            how: "",
            why: "",
        }
        crack: Crack {
            sheet: Outside, bound: Any, plain: Word("none"),
            label: "crack", note: "",
            how: "",
            why: "",
        }
        threads_bad: u32 {
            sheet: Outside, bound: NotNegative, plain: Number(0.0),
            label: "threads bad", note: "",
            how: "",
            why: "",
        }
        threads_repaired: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(0.0),
            label: "threads repaired", note: "",
            how: "",
            why: "",
        }
        history: CaseHistory {
            sheet: Outside, bound: Any, plain: Word("original"),
            label: "history", note: "",
            how: "",
            why: "",
        }
        passages_mapped: bool {
            sheet: Inside, bound: Any, plain: YesNo(true),
            label: "passages mapped", note: "",
            how: "",
            why: "",
        }
        connector: Connector {
            sheet: Outside, bound: Any, plain: Word("one_wire"),
            label: "connector", note: "",
            how: "",
            why: "",
        }
        park_pawl: ParkPawl {
            sheet: Outside, bound: Any, plain: Word("works"),
            label: "park pawl", note: "",
            how: "",
            why: "",
        }
        variant: CaseVariant {
            sheet: Inside, bound: Any, plain: Word("heavy"),
            label: "variant", note: "",
            how: "",
            why: "",
        }
        feed_plugged: bool {
            sheet: Inside, bound: Any, plain: YesNo(false),
            label: "feed plugged", note: "",
            how: "",
            why: "",
        }
        passage_ball: bool {
            sheet: Inside, bound: Any, plain: YesNo(false),
            label: "passage ball", note: "",
            how: "",
            why: "",
        }
        bridge_lowered: bool {
            sheet: Inside, bound: Any, plain: YesNo(false),
            label: "bridge lowered", note: "",
            how: "",
            why: "",
        }
        failure_debris: bool {
            sheet: Inside, bound: Any, plain: YesNo(false),
            label: "failure debris", note: "",
            how: "",
            why: "",
        }
        coolant_found: bool {
            sheet: Inside, bound: Any, plain: YesNo(false),
            label: "coolant found", note: "",
            how: "",
            why: "",
        }
        face_flat_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.001),
            label: "face flat in", note: "",
            how: "",
            why: "",
        }
    }
}
