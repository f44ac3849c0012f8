//! What is typed into the sums.

use crate::{choice, is_said};
use endplay::form::Fields;
use endplay::job::Job;
use endplay::rules::Limits;
use endplay::sums::{Answer, Line, Sum, address, all, find, words_of};

/// A sum: a letter for the sum, then lines, each a letter for an input and what was typed into it. An input without a
/// line holds its example.
pub fn sum(text: &str) {
    let every: Vec<&'static Sum> = all().map(|(_, sum)| sum).collect();
    let Some((sum, rest)) = choice(text, &every) else { return };
    let names: Vec<&'static str> = sum.inputs.iter().map(|input| input.name).collect();
    let typed_in: Vec<(&str, &str)> = rest.split('\n').filter_map(|line| choice(line, &names)).collect();
    let typed = |name: &str| {
        let line = typed_in.iter().find(|(input, _)| *input == name);
        line.map_or_else(|| sum.input(name).map_or("", |input| input.example), |(_, text)| text).to_owned()
    };
    let answer = sum.answer(typed, &Limits::default());
    is_an_answer(sum, &answer, text);
    // The link carries all of it.
    let link = address(sum, typed);
    let (_, query) = link.split_once('?').unwrap_or((&link, ""));
    let carried = Fields::parse(query.as_bytes());
    for name in names {
        assert_eq!(carried.get(name).unwrap_or_default(), typed(name).trim(), "{link}");
    }
    find(&words_of(rest));
}

fn is_an_answer(sum: &Sum, answer: &Answer, text: &str) {
    for wrong in &answer.wrong {
        is_said(&wrong.message);
        assert!(sum.input(wrong.input).is_some(), "{}: {wrong:?}", sum.name);
    }
    let open = !answer.wrong.is_empty() || !answer.needs.is_empty();
    assert_ne!(answer.outcome.is_some(), open, "{}: {answer:?}", sum.name);
    let Some(outcome) = &answer.outcome else { return };
    assert!(!outcome.lines.is_empty() || !outcome.remarks.is_empty(), "{}: {text} says nothing", sum.name);
    for line in &outcome.lines {
        assert!(is_a_number(line), "{}: {text}: {line:?}", sum.name);
        if let Some(filled) = &line.fills {
            let taken = Job::unknown().apply([(filled.fact, &filled.value)]);
            assert!(taken.is_ok(), "{}: {text}: {filled:?} cannot be kept: {taken:?}", sum.name);
        }
    }
}

/// Nothing that the machine says when it has no number.
fn is_a_number(line: &Line) -> bool {
    let mut words = line.value.split_whitespace().chain(line.worked.split_whitespace());
    !words.any(|word| matches!(word.trim_matches(['(', ')', '-', ',', '.', ';']), "NaN" | "inf"))
}
