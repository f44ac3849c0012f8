//! What a customer sends: a signature or a no. The use case checks it; here it is only read.

use crate::service::{self, CustomerAnswer, CustomerChoice};
use crate::ticket;
use crate::web::form::{Entry, Problem, Reader};

/// A signature as it was sent.
pub struct Signed {
    shown: String,
    accepted: Vec<String>,
    name: String,
}

/// A no as it was sent.
pub struct Declined {
    shown: String,
    name: String,
    why: String,
}

/// A choice between variants as it was sent.
pub struct Choice {
    variant: String,
    name: String,
}

/// How the fields of ticks begin.
const TICK: &str = "tick.";

impl Entry for Signed {
    fn read(reader: &mut Reader<'_>) -> Self {
        let fields = reader.fields();
        let ticked = fields.starting(TICK).filter(|(_, value)| *value == "yes");
        Self {
            shown: fields.get("shown").unwrap_or_default().to_owned(),
            accepted: ticked.map(|(code, _)| code.to_owned()).collect(),
            name: fields.get("name").unwrap_or_default().to_owned(),
        }
    }
}

impl Entry for Declined {
    fn read(reader: &mut Reader<'_>) -> Self {
        let field = |name: &str| reader.fields().get(name).unwrap_or_default().to_owned();
        Self { shown: field("shown"), name: field("who"), why: field("why") }
    }
}

impl Entry for Choice {
    fn read(reader: &mut Reader<'_>) -> Self {
        let field = |name: &str| reader.fields().get(name).unwrap_or_default().to_owned();
        let (variant, name) = (field("variant"), field("chooser"));
        if variant.is_empty() {
            reader.wrong("variant", "Pick one of the builds, or sign the one that stands below.");
        }
        Self { variant, name }
    }
}

impl Choice {
    /// The command it stands for; none when no variant has such a name.
    pub fn choice(self, agent: String) -> Option<CustomerChoice> {
        let mut parts = self.variant.splitn(3, '.');
        let (nth, version) = (parts.next()?.parse().ok()?, parts.next()?.parse().ok()?);
        let told = parts.next().unwrap_or_default().to_owned();
        Some(CustomerChoice { nth, version, told, name: self.name, agent })
    }
}

impl Signed {
    /// The command it stands for.
    pub fn answer(self, address: String, agent: String) -> CustomerAnswer {
        let Self { shown, accepted, name } = self;
        CustomerAnswer { answer: ticket::Answer::Signed, shown, accepted, name, why: String::new(), address, agent }
    }
}

impl Declined {
    /// The command it stands for.
    pub fn answer(self, address: String, agent: String) -> CustomerAnswer {
        let Self { shown, name, why } = self;
        CustomerAnswer { answer: ticket::Answer::Declined, shown, accepted: Vec::new(), name, why, address, agent }
    }
}

/// What became of an answer that was sent.
pub enum Outcome {
    /// Kept, under this reference.
    Kept(String),
    /// Something has to be put right; the problems are those of the use case.
    Wrong(Vec<ticket::Problem>),
    /// The page takes no answer any more; it says itself why.
    Closed,
}

/// Sorts what the use case said.
///
/// # Errors
/// What has nothing to do with the form.
pub fn outcome(done: Result<service::Answered, service::Failure>) -> Result<Outcome, service::Failure> {
    match done {
        Ok(answered) => Ok(Outcome::Kept(answered.reference)),
        Err(service::Failure::Problems(problems)) => Ok(Outcome::Wrong(problems)),
        Err(service::Failure::LinkClosed) => Ok(Outcome::Closed),
        Err(failure) => Err(failure),
    }
}

/// The problems at the fields of the form for signing.
pub fn signed(problems: Vec<ticket::Problem>) -> Vec<Problem> {
    problems.into_iter().map(|problem| Problem { field: problem.field, message: problem.message }).collect()
}

/// The problems at the fields of the form for saying no.
pub fn declined(problems: Vec<ticket::Problem>) -> Vec<Problem> {
    let field = |field: String| if field == "name" { "who".to_owned() } else { field };
    problems.into_iter().map(|problem| Problem { field: field(problem.field), message: problem.message }).collect()
}
