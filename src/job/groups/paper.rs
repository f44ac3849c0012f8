//! What was agreed, priced and signed.

use super::group;
use crate::job::Bound::{Any, NotNegative};
use crate::job::Plain::{Number, YesNo};
use crate::quantity::{One, Quantity};

group! {
    /// The papers: permanent changes, parts, prices and versions.
    Paper "paper" {
        permanent_mods: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "Permanent changes are part of the job", note: "",
            how: "Read the spec for any cut, drilled boss, driven plug or ball, ground bridge or honed bushing.",
            why: "They cannot be undone, so the customer decides first.",
        }
        permanent_ack: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "Customer signed for the permanent changes", note: "",
            how: "Look for the signed line of each change, dated before the work.",
            why: "Work begun on a word over the telephone ends in a dispute about a case.",
        }
        customer_parts: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "Customer brought parts", note: "",
            how: "Ask at the counter, and compare with the parts list from intake.",
            why: "The shop cannot answer for parts it did not choose.",
        }
        customer_parts_ack: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "Customer signed for parts brought along", note: "",
            how: "Look for the signed line about them.",
            why: "It says beforehand who answers for them.",
        }
        quoted_total: Quantity<One> {
            sheet: Paper, bound: NotNegative, plain: Number(2000.0),
            label: "Total on the signed estimate", note: "in the shop's currency",
            how: "Read the estimate that the customer signed.",
            why: "The job may not grow past it without another signature.",
        }
        current_total: Quantity<One> {
            sheet: Paper, bound: NotNegative, plain: Number(2000.0),
            label: "Total as it stands now", note: "in the shop's currency",
            how: "Add labor, parts and outside work up to today.",
            why: "It shows when the customer must be asked again.",
        }
        change_signed: bool {
            sheet: Paper, bound: Any, plain: YesNo(false),
            label: "Change order signed", note: "",
            how: "Look for the signed change order that belongs to the present total.",
            why: "It covers what went past the estimate.",
        }
        spec_version: Quantity<One> {
            sheet: Paper, bound: NotNegative, plain: Number(3.0),
            label: "Version of the spec", note: "counts up with every change",
            how: "Read it at the top of the build summary.",
            why: "Whatever is signed must be this version.",
        }
        signed_version: Quantity<One> {
            sheet: Paper, bound: NotNegative, plain: Number(3.0),
            label: "Version the customer signed", note: "",
            how: "Read it on the signed paper.",
            why: "A signature on an older version covers something else than what was built.",
        }
    }
}
