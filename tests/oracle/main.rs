//! The rule book held against a second reading of the same conditions.
//!
//! `conditions.txt` says in a small language of its own when each rule is true and how each quantity is
//! computed. [`language`] reads it; nothing here knows how the program does it. Jobs at random go through
//! the real command line, and both have to agree on every finding, every open rule and what it waits for,
//! the count of clear rules, every number, and the steps the job needs.

mod agreement;
mod house_rules;
mod jobs;
mod language;
mod mutants;
mod source;
