//! What an owner writes: conditions of the shop's own rules, and limits.

use crate::{choice, is_said};
use endplay::job::{Job, facts, random_job};
use endplay::rules::house::read;
use endplay::rules::{Derived, DerivedId, LimitId, Limits};

/// A condition of a rule of the shop's own; a letter behind `@` stands for a fact and behind `#` for a computed quantity,
/// since no chance ever spells their names.
pub fn condition(text: &str) {
    let text = &named(text);
    match read(text) {
        Ok(condition) => {
            assert_eq!(condition.text(), text);
            assert_eq!(read(condition.text()).as_ref(), Ok(&condition));
            let names = condition.names();
            assert!(!names.facts.is_empty() || !names.computed.is_empty(), "{text} names nothing");
            let mut draw = text.len() as u64;
            let by_chance = random_job(|| {
                draw = draw.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
                draw >> 16
            });
            for job in [Job::unknown(), Job::plain(), by_chance] {
                let verdict = condition.verdict(&job, &Derived::of(&job, &Limits::default()));
                assert_eq!(verdict, condition.verdict(&job, &Derived::of(&job, &Limits::default())), "{text}");
            }
        }
        Err(amiss) => {
            assert!(!amiss.is_empty(), "{text}");
            amiss.iter().for_each(|amiss| is_said(&amiss.message));
        }
    }
}

fn named(text: &str) -> String {
    let mut spelled = String::new();
    let mut letters = text.chars();
    while let Some(letter) = letters.next() {
        let names = match letter {
            '@' => facts().iter().map(|fact| fact.path).collect::<Vec<_>>(),
            '#' => DerivedId::ALL.iter().map(|computed| computed.declaration().path).collect(),
            other => {
                spelled.push(other);
                continue;
            }
        };
        if let Some(which) = letters.next() {
            spelled.push_str(names[which as usize % names.len()]);
        }
    }
    spelled
}

/// A limit moved: a letter for the limit, then what was typed.
pub fn limit(text: &str) {
    let Some((limit, typed)) = choice(text, LimitId::ALL) else { return };
    let number = match limit.read(typed) {
        Ok(number) => number,
        Err(unread) => return is_said(&unread.to_string()),
    };
    let mut limits = Limits::default();
    match limits.set(limit, number) {
        Ok(()) => {
            assert_eq!(limits.get(limit), number, "{typed}");
            assert_eq!(limit.read(&number.to_string()), Ok(number), "the form shows it like that: {typed}");
        }
        Err(refused) => {
            is_said(&refused.to_string());
            assert_eq!(limits, Limits::default(), "{typed}");
        }
    }
}
