//! Forms: what was typed, what was read from it, and what is said when it could not be read.

mod fields;
mod reader;
mod sent;

pub use fields::Fields;
pub use reader::{Entry, Reader};
pub use sent::Sent;

use uuid::Uuid;

/// One thing to put right, beside the field it is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// The field's name in the form, which is also its id on the page.
    pub field: String,
    /// The sentence, the same on top of the page and at the field.
    pub message: String,
}

/// A form on a page: what stands in its fields and what is wrong with them.
pub struct FormState {
    /// Names this sending of this form, so that sending it twice does it once.
    pub once: Uuid,
    typed: Fields,
    /// What to put right, in the order of the form.
    pub problems: Vec<Problem>,
}

impl FormState {
    /// An empty form.
    pub fn empty() -> Self {
        Self::holding(Fields::default())
    }

    /// A form with these values in it.
    pub fn holding(typed: Fields) -> Self {
        Self { once: Uuid::now_v7(), typed, problems: Vec::new() }
    }

    /// A form that was sent and comes back with everything typed and what to put right.
    pub fn back(typed: Fields, problems: Vec<Problem>) -> Self {
        Self { once: Uuid::now_v7(), typed, problems }
    }

    /// A number for one more form on the same page.
    pub fn another(&self) -> Uuid {
        Uuid::now_v7()
    }

    /// Everything that stands in it.
    pub const fn typed(&self) -> &Fields {
        &self.typed
    }

    /// What stands in a field.
    pub fn value(&self, name: &str) -> &str {
        self.typed.get(name).unwrap_or_default()
    }

    /// Is this the one that is chosen?
    pub fn chosen(&self, name: &str, value: &str) -> bool {
        self.typed.all(name).any(|typed| typed == value)
    }

    /// What is wrong with a field; empty when nothing is.
    pub fn problem(&self, name: &str) -> &str {
        self.problems.iter().find(|problem| problem.field == name).map_or("", |problem| problem.message.as_str())
    }

    /// Did it come back with something to put right?
    pub fn is_wrong(&self) -> bool {
        !self.problems.is_empty()
    }
}

/// A form that is only a button.
pub struct Nothing;

impl Entry for Nothing {
    fn read(_: &mut Reader<'_>) -> Self {
        Self
    }
}

/// The use case's problems, to be shown at the fields of the same names.
pub fn problems_of(problems: Vec<crate::ticket::Problem>) -> Vec<Problem> {
    problems.into_iter().map(|problem| Problem { field: problem.field, message: problem.message }).collect()
}
