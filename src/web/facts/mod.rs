//! Facts on pages: as questions on a form, as a list by sheet, and what a form of them means.

mod doubt;
mod edit;
mod field;
mod sheet;

pub use doubt::{Doubt, doubts};
pub use edit::{default_source, edit_of, held, only_the_edit, topics};
pub use field::{Answer, Control, FactField, as_typed, name_of, source_name_of};
pub use sheet::{FieldGroup, SheetCard, field_groups, filled, sheet_cards};
