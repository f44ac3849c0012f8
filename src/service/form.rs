//! Texts as people type them: made fit to keep, or refused with a sentence.

use crate::ticket::Problem;

/// A field of one line.
#[derive(Clone, Copy)]
pub(super) struct Field {
    /// The form's name for it.
    pub name: &'static str,
    /// What people call it.
    pub label: &'static str,
    /// The most characters.
    pub most: usize,
    /// Must there be something?
    pub needed: bool,
}

/// The text without blanks at its ends and without doubled blanks, or what is wrong with it.
pub(super) fn one_line(field: Field, given: &str, problems: &mut Vec<Problem>) -> String {
    let text = given.split_whitespace().collect::<Vec<_>>().join(" ");
    let length = text.chars().count();
    if field.needed && !shows(&text) {
        problems.push(Problem::new(field.name, format!("{} is empty. Please fill it in.", field.label)));
    } else if length > field.most {
        let message = format!("{} is {length} characters long; {} is the most.", field.label, field.most);
        problems.push(Problem::new(field.name, message));
    } else if text.chars().any(|letter| letter.is_control() || turns(letter)) {
        let message = format!("{} holds a character that cannot be printed. Type it again.", field.label);
        problems.push(Problem::new(field.name, message));
    }
    text
}

/// A written reason or note: several lines, with a bound.
pub(super) fn several_lines(field: Field, given: &str, problems: &mut Vec<Problem>) -> String {
    let text = given.trim().replace("\r\n", "\n");
    let length = text.chars().count();
    if field.needed && !shows(&text) {
        problems.push(Problem::new(field.name, format!("{} is empty. Please fill it in.", field.label)));
    } else if length > field.most {
        let message = format!("{} is {length} characters long; {} is the most.", field.label, field.most);
        problems.push(Problem::new(field.name, message));
    } else if text.chars().any(|letter| turns(letter) || (letter.is_control() && letter != '\n' && letter != '\t')) {
        let message = format!("{} holds a character that cannot be printed. Type it again.", field.label);
        problems.push(Problem::new(field.name, message));
    }
    text
}

/// A text from outside that nobody is asked to correct: without control characters, cut to a length.
pub(super) fn clean(text: &str, most: usize) -> String {
    text.chars().filter(|letter| !letter.is_control() && !turns(*letter)).take(most).collect()
}

/// Is there a letter or a digit to see in it? A name of blanks without width would stand on a receipt as nothing at all.
fn shows(text: &str) -> bool {
    let filler = |letter: char| matches!(letter, '\u{115f}' | '\u{1160}' | '\u{3164}' | '\u{ffa0}');
    text.chars().any(|letter| letter.is_alphanumeric() && !filler(letter))
}

/// Does it turn the direction of what follows? A text with such a sign can read otherwise than it was written.
const fn turns(letter: char) -> bool {
    matches!(letter, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// A name as it is compared: lower case, single blanks, and nothing without width, by which two names could differ
/// that look the same.
pub(super) fn name_key(name: &str) -> String {
    let no_width =
        |letter: char| matches!(letter, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{2060}'..='\u{2064}' | '\u{feff}');
    name.to_lowercase().replace(no_width, "").split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The words of a name, as they are searched.
pub(super) fn name_words(name: &str) -> Vec<String> {
    let lower = name.to_lowercase();
    lower.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty()).map(str::to_owned).collect()
}

/// The digits of a telephone number, last first, so that the last four find it.
pub(super) fn phone_backwards(phone: &str) -> String {
    phone.chars().filter(char::is_ascii_digit).rev().collect()
}

/// A plate as it is compared: letters and digits only, upper case.
pub(super) fn plate_key(plate: &str) -> String {
    plate.to_uppercase().chars().filter(|letter| letter.is_alphanumeric()).collect()
}

/// What has to be true for the problems to be none.
pub(super) fn none(problems: Vec<Problem>) -> Result<(), super::Failure> {
    if problems.is_empty() { Ok(()) } else { Err(super::Failure::Problems(problems)) }
}

#[cfg(test)]
mod tests {
    use super::*;

    const NAME: Field = Field { name: "name", label: "Name", most: 10, needed: true };

    #[test]
    fn what_cannot_be_kept_is_named() {
        let wrong = [
            ("  ", "empty"),
            ("\u{200b}\u{2060}", "empty"),
            ("\u{3164}", "empty"),
            ("- .", "empty"),
            ("abcdefghijk", "11 characters"),
            ("a\u{0}b", "printed"),
            ("Ro\u{202e}as", "printed"),
        ];
        for (given, word) in wrong {
            let read = [one_line, several_lines].map(|read| {
                let mut problems = Vec::new();
                read(NAME, given, &mut problems);
                problems.remove(0).message
            });
            assert!(read.iter().all(|message| message.contains(word)), "{given:?}: {read:?}");
        }
        let mut problems = Vec::new();
        assert_eq!(one_line(NAME, "  Rosa \t Lee ", &mut problems), "Rosa Lee");
        for name in ["李雷", "מרים", "Zo\u{eb}", "می\u{200c}نا"] {
            assert_eq!(one_line(NAME, name, &mut problems), name);
        }
        assert!(problems.is_empty(), "{problems:?}");
    }

    #[test]
    fn search_terms_do_not_depend_on_how_people_write() {
        assert_eq!(name_words("O'Brien-Núñez, Ana"), ["o", "brien", "núñez", "ana"]);
        assert_eq!(phone_backwards("(555) 010-4477"), "7744010555");
        assert_eq!(plate_key(" ab-12 cd"), "AB12CD");
        assert_eq!(name_key("  Rosa   LEE "), "rosa lee");
        assert_eq!(name_key("\u{200b}Ro\u{ad}sa Lee\u{feff}"), "rosa lee");
    }
}
