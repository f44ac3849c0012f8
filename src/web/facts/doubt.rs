//! Numbers on a form that are asked about before they are believed.

use super::name_of;
use crate::job::fact_named;
use crate::plan::doubt;
use crate::ticket::{Contents, FactChange};
use crate::web::form::{Fields, Problem};

/// The form's name for the ticks that say a number really is so.
const SURE: &str = "sure";

/// One such number.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Doubt {
    /// The fact's field.
    pub field: String,
    /// Why, and what was perhaps meant.
    pub message: String,
    /// What the tick sends: the fact with this very number, so that another number is asked about anew.
    pub sure: String,
    /// Is it ticked?
    pub ticked: bool,
}

impl Doubt {
    /// Asked at its field, until somebody ticks that it is so.
    pub fn problem(&self) -> Problem {
        let message = format!("{} Put it right, or tick that it is so.", self.message);
        Problem { field: self.field.clone(), message }
    }
}

/// The changed numbers that hardly can be.
pub fn doubts(changes: &[FactChange], recorded: &Contents, typed: &Fields) -> Vec<Doubt> {
    let doubted = |change: &FactChange| {
        let (fact, value) = (fact_named(&change.path)?, change.value.as_ref()?);
        let message = doubt(fact, value).filter(|_| recorded.facts.value(fact).as_ref() != Some(value))?;
        let sure = format!("{}={value}", change.path);
        let ticked = typed.all(SURE).any(|one| one == sure);
        Some(Doubt { field: name_of(fact.declaration()), message, sure, ticked })
    };
    changes.iter().filter_map(doubted).collect()
}
