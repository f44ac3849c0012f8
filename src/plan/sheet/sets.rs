//! The selective sets a shop keeps: which there are, and what a part of one is.

use super::scale::Habit;
use crate::quantity::{Inch, Quantity};
use serde::{Deserialize, Serialize};

/// Declares the sets: doc, name, code, label, what is typed of each part.
macro_rules! sets {
    ($($(#[$doc:meta])+ $name:ident = $code:literal, $label:literal, $what:literal;)+) => {
        /// A set of parts that differ in one size.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum SetKind {
            $($(#[$doc])+ $name,)+
        }

        impl SetKind {
            /// Every set.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            /// Its code in the database and in addresses.
            pub const fn code(self) -> &'static str {
                match self { $(Self::$name => $code),+ }
            }

            /// What people call it.
            pub const fn label(self) -> &'static str {
                match self { $(Self::$name => $label),+ }
            }

            /// What it is for, and what to measure on each part.
            pub const fn what(self) -> &'static str {
                match self { $(Self::$name => $what),+ }
            }

            /// The set with this code.
            pub fn from_code(code: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|one| one.code() == code)
            }
        }
    };
}

sets! {
    /// At the rear of the case.
    RearWasher = "rear-washers", "Rear washers",
        "The three-lug steel washers at the rear of the case. They set the rear end play. Measure each one: notches and \
         marks tell the step it was made for, not what it is now.";
    /// Between pump cover and forward drum.
    FrontWasher = "front-washers", "Front washers",
        "The washers between pump cover and forward drum. They set the front end play. Their color fades in oil: \
         measure each one.";
    /// In the forward drum.
    ForwardSteels = "forward-steels", "Forward steels",
        "The plain steels of the forward pack, one size a line. Say nothing of how many there are: the page reckons \
         with enough of each.";
    /// In the direct drum.
    DirectSteels = "direct-steels", "Direct steels",
        "The plain steels of the direct pack, one size a line. The page reckons with enough of each.";
    /// In the case.
    IntermediateSteels = "intermediate-steels", "Intermediate steels",
        "The plain steels of the intermediate pack, one size a line. The page reckons with enough of each.";
    /// Under a needle bearing.
    Shims = "bearing-shims", "Bearing shims",
        "The shims that go under a needle-bearing kit until it stands as high as the pair of washers it replaces.";
    /// In the rear servo.
    RearPins = "rear-band-pins", "Rear band pins",
        "The apply pins of the rear servo. Of each pin type the readings of the pin gauge it belongs to, from the sheet \
         of the unit: the lowest and the highest.";
}

/// The most parts a set can have.
pub const MOST_PARTS: usize = 12;

/// One part of a set.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SetPart {
    /// Its thickness in inches; of a pin, the lowest reading it belongs to.
    pub size: f64,
    /// The size as it was typed.
    pub typed: String,
    /// How far it may be off, either way, in inches; of a pin, the highest reading it belongs to.
    pub other: f64,
    /// The other number as it was typed; empty for none.
    pub other_typed: String,
    /// How it is marked: notches, color, letter; empty for none.
    pub mark: String,
}

impl SetKind {
    /// Does its second number end a window of the gauge? Of all other sets it is how far the size may be off.
    pub const fn has_windows(self) -> bool {
        matches!(self, Self::RearPins)
    }

    /// Reads one part as typed; `nth` is its line, counted from 1.
    ///
    /// # Errors
    /// Sentences, each with the field it is about: `size`, `other` or `mark`.
    pub fn read_part(
        self,
        nth: usize,
        (size, other, mark): (&str, &str, &str),
        habit: Habit,
    ) -> Result<SetPart, Vec<(&'static str, String)>> {
        let mut wrong = Vec::new();
        let named = |what: &str| format!("Line {nth}, {what}");
        let (first, second) = if self.has_windows() { ("from", "to") } else { ("size", "how far it may be off") };
        let mut read = |field, label: &str, typed: &str| {
            super::reading::read_size(&named(label), typed, habit)
                .map_err(|message| wrong.push((field, message)))
                .unwrap_or_default()
        };
        let size_read = read("size", first, size);
        let other_read =
            if other.trim().is_empty() && !self.has_windows() { 0.0 } else { read("other", second, other) };
        if wrong.is_empty() {
            let ends_badly = if self.has_windows() { other_read <= size_read } else { other_read > size_read / 4.0 };
            if size_read == 0.0 && !self.has_windows() {
                wrong.push(("size", format!("{}: a part has some thickness.", named(first))));
            } else if ends_badly && self.has_windows() {
                wrong.push(("other", format!("{}: it has to be more than where the window begins.", named(second))));
            } else if ends_badly {
                let message = format!(
                    "{}: that is more than a quarter of the part itself. Write how far it may be off, such as 0.002.",
                    named(second)
                );
                wrong.push(("other", message));
            }
        }
        let mark = mark.split_whitespace().collect::<Vec<_>>().join(" ");
        if mark.chars().count() > 40 || mark.contains(char::is_control) {
            wrong.push(("mark", format!("{}: 40 plain characters at most.", named("mark"))));
        }
        if !wrong.is_empty() {
            return Err(wrong);
        }
        let (typed, other_typed) = (size.trim().to_owned(), other.trim().to_owned());
        Ok(SetPart { size: size_read, typed, other: other_read, other_typed, mark })
    }
}

impl SetPart {
    /// Its thickness.
    pub const fn thickness(&self) -> Quantity<Inch> {
        Quantity::new(self.size)
    }

    /// As a person picks it from the drawer: `0.095 in, two notches`.
    pub fn say(&self, set: SetKind) -> String {
        let say = |value: f64| super::Scale::Length.say(value);
        let size = match (set.has_windows(), self.mark.as_str()) {
            (true, "") => return format!("the pin for {} to {}", say(self.size), say(self.other)),
            (true, mark) => return format!("{mark} (for {} to {})", say(self.size), say(self.other)),
            (false, _) => say(self.size),
        };
        let give = if self.other > 0.0 { format!(" \u{b1} {}", say(self.other)) } else { String::new() };
        let mark = if self.mark.is_empty() { String::new() } else { format!(", {}", self.mark) };
        format!("{size}{give}{mark}")
    }
}
