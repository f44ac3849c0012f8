//! How hard a text is to read: the Flesch-Kincaid grade, for the tests of this room and of those that show its texts.
//!
//! Grade = 0.39 words a sentence + 11.8 syllables a word - 15.59 (Kincaid and others, 1975, in public reports of the
//! United States Navy). A reader of that grade is about five years older than it.

/// The age at which a child in school reads this text with ease.
pub(crate) fn age(text: &str) -> f64 {
    let sentences = sentences(text).len().max(1) as f64;
    let words = words(text);
    let syllables: usize = words.iter().map(|word| syllables(word)).sum();
    let count = words.len().max(1) as f64;
    0.39 * count / sentences + 11.8 * syllables as f64 / count - 15.59 + 5.0
}

/// The sentences of a text; a colon or a semicolon is a place to rest as well.
pub(crate) fn sentences(text: &str) -> Vec<&str> {
    let mut rest = text;
    let mut found = Vec::new();
    while let Some(end) = rest.find(['.', '?', '!', ':', ';', '\n']) {
        // The point in 3.73 ends no sentence.
        let inside = rest[end + 1..].starts_with(|next: char| next.is_ascii_digit());
        if inside {
            let (head, tail) = rest.split_at(end + 1);
            let more = tail.find(['.', '?', '!', ':', ';', '\n']).map_or(tail.len(), |at| at + 1);
            found.push(&rest[..head.len() + more]);
            rest = &rest[head.len() + more..];
        } else {
            found.push(&rest[..=end]);
            rest = &rest[end + 1..];
        }
    }
    found.push(rest);
    found.into_iter().filter(|sentence| !words(sentence).is_empty()).collect()
}

/// The words of a text without its numbers and codes.
pub(crate) fn words(text: &str) -> Vec<&str> {
    text.split(|letter: char| !letter.is_alphanumeric() && letter != '\'')
        .filter(|word| !word.is_empty() && word.chars().all(|letter| letter.is_alphabetic() || letter == '\''))
        .collect()
}

/// Groups of vowels, without a silent e at the end.
fn syllables(word: &str) -> usize {
    let word = word.to_lowercase();
    let vowel = |letter: char| "aeiouy".contains(letter);
    let letters: Vec<char> = word.chars().collect();
    let groups = letters
        .iter()
        .enumerate()
        .filter(|(at, letter)| vowel(**letter) && (*at == 0 || !vowel(letters[at - 1])))
        .count();
    let silent = (word.ends_with('e') && !word.ends_with("le")
        || word.ends_with("ed") && !word.ends_with("ted") && !word.ends_with("ded"))
        && groups > 1;
    (groups - usize::from(silent)).max(1)
}

#[test]
fn easy_and_hard_texts_are_told_apart() {
    assert!(age("The cat sat on the mat. It was a warm day.") < 8.0);
    let hard = "Notwithstanding contractual stipulations, the undersigned acknowledges irrevocable authorisation of \
                subsequent modifications necessitated by dimensional incompatibilities.";
    assert!(age(hard) > 20.0);
}

#[test]
fn syllables_are_counted_as_they_are_spoken() {
    for (word, spoken) in [("the", 1), ("engine", 2), ("little", 2), ("stopped", 1), ("plated", 2), ("summary", 3)] {
        assert_eq!(syllables(word), spoken, "{word}");
    }
}

#[test]
fn a_decimal_point_ends_no_sentence() {
    assert_eq!(sentences("The ratio is 3.73 now. It was 2.48.").len(), 2);
}
