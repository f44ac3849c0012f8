//! Forms as a browser sends them, without the pages they stand on.

#[path = "../../src/web/form/fields.rs"]
mod fields;

#[path = "../../src/web/form/reader.rs"]
mod reader;

pub use fields::Fields;
pub use reader::{Entry, Reader};

/// One thing to put right, beside the field it is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// The field's name in the form.
    pub field: String,
    /// The sentence.
    pub message: String,
}
