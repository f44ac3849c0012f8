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

/// A number as somebody types it: six figures that count and no more, never with an exponent or a comma.
///
/// A size that was measured in millimetres is kept to the last bit, and nobody reads 0.007086614173228346.
fn as_typed(number: f64) -> String {
    if number == 0.0 || !number.is_finite() {
        return "0".to_owned();
    }
    let figures = number.abs().log10().floor() as i32;
    let places = usize::try_from(5 - figures).unwrap_or(0).min(12);
    let printed = format!("{number:.places$}");
    if printed.contains('.') { printed.trim_end_matches('0').trim_end_matches('.').to_owned() } else { printed }
}

/// Every input of a sum that this job knows.
pub fn taken_from(sum: &'static Sum, job: &Job) -> Vec<Taken> {
    let taken = |input: &'static Input| {
        let fact = fact_named(input.fact?)?;
        let text = match job.slot(fact).json()? {
            Value::Number(number) => as_typed(number.as_f64()?),
            Value::String(text) => text,
            _ => return None,
        };
        Some(Taken { input, fact, text })
    };
    sum.inputs.iter().filter_map(taken).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_number_is_filled_in_as_somebody_would_type_it() {
        for (number, typed) in [
            (0.18 / 25.4, "0.00708661"),
            (28.5, "28.5"),
            (3200.0, "3200"),
            (0.073, "0.073"),
            (1_234_567.0, "1234567"),
            (123_456.78, "123457"),
            (-0.000_02, "-0.00002"),
            (0.0, "0"),
        ] {
            assert_eq!(as_typed(number), typed);
        }
    }

    proptest! {
        #[test]
        fn what_is_filled_in_is_the_number_to_six_figures(number in -1e6..1e6f64) {
            let back: f64 = as_typed(number).parse().expect("a number");
            prop_assert!((back - number).abs() <= 5e-6 * number.abs() + 1e-12, "{number}: {back}");
        }
    }
}
