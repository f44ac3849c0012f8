//! Job files, streams of jobs, and one fact in a form's field.

use crate::{choice, is_said};
use endplay::command::check::{Format, check};
use endplay::job::{Job, facts, nearest_path, random_job, read_text, say};
use serde_json::Value;

/// A job file.
pub fn file(text: &str) {
    match Job::from_json(text) {
        Ok(job) => {
            let printed = job.to_json();
            let again = Job::from_json(&printed.to_string()).expect("what was printed");
            assert_eq!(again.to_json(), printed, "{text}");
        }
        Err(errors) => {
            assert!(!errors.is_empty(), "{text}");
            for error in errors {
                is_said(&error.message);
                assert!(error.line.is_some_and(|line| line >= 1 && line <= text.split('\n').count()), "{error:?}");
            }
        }
    }
}

/// A job file that somebody spoiled: eight bytes draw the job, two say where, one how much goes, the rest goes in there.
pub fn spoiled(sent: &[u8]) {
    let Some((drawn, rest)) = sent.split_first_chunk::<8>() else { return };
    let Some((&[high, low, gone], put_in)) = rest.split_first_chunk::<3>() else { return };
    let mut draw = u64::from_le_bytes(*drawn);
    let job = random_job(|| {
        draw = draw.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        draw >> 16
    });
    let mut bytes = job.to_json().to_string().into_bytes();
    let from = (usize::from(high) << 8 | usize::from(low)) % bytes.len();
    let to = bytes.len().min(from + usize::from(gone));
    bytes.splice(from..to, put_in.iter().copied());
    file(&String::from_utf8_lossy(&bytes));
}

/// What is piped into the check, in either form of output.
pub fn check_lines(sent: &[u8]) {
    for format in [Format::Text, Format::Json] {
        let (mut out, mut complaints) = (Vec::new(), Vec::new());
        let outcome = check(&["-".to_owned()], format, 1, &mut &*sent, &mut out, &mut complaints)
            .expect("writing into memory does not fail");
        assert_eq!(outcome.unreadable, !complaints.is_empty(), "whoever is refused is told");
        let out = String::from_utf8(out).expect("text");
        if format == Format::Json {
            for line in out.lines() {
                let answer: Value = serde_json::from_str(line).expect("one object a line");
                assert!(answer.is_object(), "{line}");
            }
        }
    }
}

/// A field: a letter for the fact, then what was typed.
pub fn field(text: &str) {
    let Some((declaration, typed)) = choice(text, facts()) else { return };
    match read_text(typed, declaration) {
        Ok(None) => assert!(typed.trim().is_empty(), "{typed} is not blank"),
        Ok(Some(value)) => {
            let said = say(&value, declaration);
            assert_eq!(read_text(&said, declaration), Ok(Some(value)), "{}: {typed} says {said}", declaration.path);
        }
        Err(refused) => {
            is_said(&refused.message);
            assert_eq!(refused.path, declaration.path);
        }
    }
    if let Some(near) = nearest_path(typed) {
        assert!(facts().iter().any(|fact| fact.path == near), "{typed} is near to {near}");
    }
}
