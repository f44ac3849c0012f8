//! The known name that a mistyped one was probably meant to be.

use super::{GROUPS, facts};

/// Longer names than this are no slips of the finger.
const LONGEST: usize = 64;
/// How alike two names must be, 1 being the same.
const ALIKE: f64 = 0.8;
/// How alike they must be when the right name stands somewhere else.
const ALIKE_ELSEWHERE: f64 = 0.9;

/// The most alike of the names, if any is alike enough.
pub fn nearest<'a>(name: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    best(name, known.into_iter().map(|name| (name, name)), ALIKE)
}

/// The group, or the fact of some group, that was meant by a name at the top of a job.
pub(super) fn nearest_group(name: &str) -> Option<&'static str> {
    nearest(name, GROUPS.iter().map(|(group, _)| *group)).or_else(|| nearest_leaf_anywhere(name))
}

/// The fact that was meant by a leaf name in a known group: one of that group before any other.
pub(super) fn nearest_fact(group: &str, leaf: &str) -> Option<&'static str> {
    let leaf = leaf.strip_prefix(group).and_then(|rest| rest.strip_prefix('.')).unwrap_or(leaf);
    let of_group = leaves().filter(|(path, _)| path.split('.').next() == Some(group));
    best(leaf, of_group, ALIKE).or_else(|| nearest_leaf_anywhere(leaf))
}

/// The fact that was meant by a dotted name of which nothing need be right.
pub fn nearest_path(path: &str) -> Option<&'static str> {
    match path.split_once('.') {
        Some((group, leaf)) if GROUPS.iter().any(|(known, _)| *known == group) => nearest_fact(group, leaf),
        _ => nearest(path, facts().iter().map(|fact| fact.path)),
    }
}

fn nearest_leaf_anywhere(leaf: &str) -> Option<&'static str> {
    best(leaf, leaves(), ALIKE_ELSEWHERE)
}

fn leaves() -> impl Iterator<Item = (&'static str, &'static str)> {
    facts().iter().map(|fact| (fact.path, fact.path.split_once('.').map_or(fact.path, |(_, leaf)| leaf)))
}

/// The first of the best: `known` pairs what to answer with what to compare.
fn best<'a>(name: &str, known: impl Iterator<Item = (&'a str, &'a str)>, alike: f64) -> Option<&'a str> {
    if name.chars().nth(LONGEST).is_some() {
        return None;
    }
    let name = name.trim().to_lowercase().replace([' ', '-'], "_");
    let mut found: Option<(&str, f64)> = None;
    for (answer, compared) in known {
        let score = strsim::jaro_winkler(&name, compared);
        if score >= alike && found.is_none_or(|(_, best)| score > best) {
            found = Some((answer, score));
        }
    }
    found.map(|(answer, _)| answer)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slips_of_the_finger_find_the_name() {
        for (typed, meant) in
            [("bel", "bell"), ("convertor", "converter"), ("uses", "use"), ("Valve-Body", "valve_body")]
        {
            assert_eq!(nearest_group(typed), Some(meant), "{typed}");
        }
        for (group, typed, meant) in [
            ("bell", "knd", "bell.kind"),
            ("bell", "ring_hole", "bell.ring_holes"),
            ("bell", "runout", "bell.runout_in"),
            ("engine", "torque", "engine.torque_lbft"),
            ("bell", "bell.kind", "bell.kind"),
            ("pump", "ring_holes", "bell.ring_holes"),
        ] {
            assert_eq!(nearest_fact(group, typed), Some(meant), "{group}.{typed}");
        }
        assert_eq!(nearest_group("ring_holes"), Some("bell.ring_holes"));
        assert_eq!(nearest_path("bel.kind"), Some("bell.kind"));
        assert_eq!(nearest_path("bell.ring_holez"), Some("bell.ring_holes"));
    }

    #[test]
    fn something_else_altogether_finds_nothing() {
        for typed in ["xyzzy", "", "колокол", &"bell".repeat(1000)] {
            assert_eq!(nearest_group(typed), None, "{typed}");
        }
        assert_eq!(nearest_fact("bell", "quux"), None);
    }
}
