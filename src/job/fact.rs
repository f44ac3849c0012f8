//! One fact of a job: a value that may be unknown, and knows its own name.

use super::value::{FactValue, Refused};
use super::{Declaration, FactId};
use serde_json::Value;

/// A fact's value, or nothing yet. Absent is *unknown*, never a default.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fact<T> {
    id: FactId,
    value: Option<T>,
}

impl<T> Fact<T> {
    /// A fact that nobody knows yet.
    pub const fn unknown(id: FactId) -> Self {
        Self { id, value: None }
    }

    /// Its place in the registry.
    pub const fn id(&self) -> FactId {
        self.id
    }

    /// The value, when it is known.
    pub const fn value(&self) -> Option<&T> {
        self.value.as_ref()
    }

    /// Writes a value down.
    pub fn set(&mut self, value: T) {
        self.value = Some(value);
    }

    /// Makes it unknown again.
    pub fn forget(&mut self) {
        self.value = None;
    }
}

/// A fact whose type is not known here: what reading, writing and forms work with.
pub trait Slot {
    /// Its place in the registry.
    fn id(&self) -> FactId;
    /// The value as the job file writes it; `None` while unknown.
    fn json(&self) -> Option<Value>;
    /// Takes the value from a job file; null makes it unknown.
    ///
    /// # Errors
    /// [`Refused`] when the value is of the wrong kind, outside the choices or impossible; the fact keeps what it held.
    fn read(&mut self, given: &Value, declaration: &Declaration) -> Result<(), Refused>;
    /// Makes it unknown again.
    fn forget(&mut self);
}

impl<T: FactValue> Slot for Fact<T> {
    fn id(&self) -> FactId {
        self.id
    }

    fn json(&self) -> Option<Value> {
        self.value.as_ref().map(FactValue::json)
    }

    fn read(&mut self, given: &Value, declaration: &Declaration) -> Result<(), Refused> {
        self.value = if given.is_null() { None } else { Some(T::read(given, declaration)?) };
        Ok(())
    }

    fn forget(&mut self) {
        self.value = None;
    }
}
