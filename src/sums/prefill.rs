//! What a job already knows of a sum's inputs.

use super::declaration::{Input, Sum};
use crate::job::{FactId, Job, fact_named};
use serde_json::Value;

/// An input that a job fills in.
#[derive(Clone)]
pub struct Taken {
    /// The input.
    pub input: &'static Input,
    /// The fact.
    pub fact: FactId,
    /// As it would be typed.
    pub text: String,
}

/// Every input of a sum that this job knows.
pub fn taken_from(sum: &'static Sum, job: &Job) -> Vec<Taken> {
    let taken = |input: &'static Input| {
        let fact = fact_named(input.fact?)?;
        let text = match job.slot(fact).json()? {
            // Never with an exponent, which nobody types.
            Value::Number(number) => number.as_f64()?.to_string(),
            Value::String(text) => text,
            _ => return None,
        };
        Some(Taken { input, fact, text })
    };
    sum.inputs.iter().filter_map(taken).collect()
}
