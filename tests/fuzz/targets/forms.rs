//! Whole forms as they come over the wire, and the fields every form shares: words, days, money.

use crate::is_said;
use endplay::form::{Fields, Reader};

/// The body of a form: `words=...&day=...&money=...`.
pub fn form(sent: &[u8]) {
    let fields = Fields::parse(sent);
    let mut reader = Reader::new(&fields);
    reader.needed_line("line", "The name", 60, "Write a name.");
    let words = reader.words("words", "The note", 1000);
    assert!(!words.contains('\0'), "{words:?}");
    let day = reader.date("day", "The day");
    let money = reader.money("money", "The price");
    reader.number("turn");
    reader.key("once");
    for problem in reader.problems() {
        is_said(&problem.message);
        assert!(["line", "words", "day", "money"].contains(&problem.field.as_str()), "{problem:?}");
    }
    if let Some(day) = day {
        let again = Fields::default().with("day", day.to_string());
        assert_eq!(Reader::new(&again).date("day", "The day"), Some(day));
    }
    if let Some(money) = money {
        assert!(money.0 >= 0, "{money}");
        let again = Fields::default().with("money", money.to_string());
        assert_eq!(Reader::new(&again).money("money", "The price"), Some(money));
    }
    let carried: Vec<(&str, &str)> = fields.pairs().collect();
    assert!(carried.iter().all(|(name, _)| fields.get(name).is_some()));
}
