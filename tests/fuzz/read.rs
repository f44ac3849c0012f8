//! One target for every reader of text: the first letter says which, the rest is what somebody sent.
//!
//! What must hold for any text at all: nothing panics, a refusal is a sentence, and what prints reads back the same
//! where that is promised.

#![no_main]

#[path = "targets/forms.rs"]
mod forms;
#[path = "targets/jobs.rs"]
mod jobs;
#[path = "targets/numbers.rs"]
mod numbers;
#[path = "targets/owner.rs"]
mod owner;
#[path = "targets/sheet.rs"]
mod sheet;
#[path = "targets/sums.rs"]
mod sums;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    let Some((which, sent)) = bytes.split_first() else { return };
    match (which, std::str::from_utf8(sent)) {
        (b'w', _) => forms::form(sent),
        (b'a', _) => jobs::spoiled(sent),
        (b'k', _) => jobs::check_lines(sent),
        (b'q', Ok(text)) => numbers::quantity(text),
        (b't', Ok(text)) => numbers::tire(text),
        (b's', Ok(text)) => sheet::reading(text),
        (b'p', Ok(text)) => sheet::part(text),
        (b'j', Ok(text)) => jobs::file(text),
        (b'f', Ok(text)) => jobs::field(text),
        (b'c', Ok(text)) => owner::condition(text),
        (b'u', Ok(text)) => sums::sum(text),
        (b'l', Ok(text)) => owner::limit(text),
        _ => {}
    }
});

/// A refusal has to tell somebody something, in one sentence or more, and not drown them in what they sent.
fn is_said(message: &str) {
    let words = message.split_whitespace().filter(|word| word.contains(char::is_alphabetic)).count();
    assert!(words >= 3, "no sentence: {message:?}");
    assert!(message.chars().count() < 1000, "longer than anybody reads: {message:?}");
}

/// One of many, chosen by the first letter, and the text behind it.
fn choice<'a, T: Copy>(text: &'a str, of: &[T]) -> Option<(T, &'a str)> {
    let mut letters = text.chars();
    let which = letters.next()? as usize % of.len().max(1);
    Some((*of.get(which)?, letters.as_str()))
}
