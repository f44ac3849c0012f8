//! What people rely on when two of them edit one ticket.

use super::*;
use crate::job::fact_ids;
use crate::quantity::Cents;
use crate::ticket::changes;
use proptest::prelude::*;
use serde_json::json;

fn hand(by: &str) -> Hand {
    Hand { by: by.into(), at: Timestamp::UNIX_EPOCH }
}

fn said_so(path: &str, value: Value) -> FactChange {
    FactChange { path: path.into(), value: Some(value), source: Source::Looked }
}

fn edit(facts: Vec<FactChange>) -> Edit {
    Edit { facts, ..Edit::default() }
}

fn merged(base: &Contents, current: &Contents, edit: &Edit, by: &str) -> Contents {
    merge(base, current, edit, &hand(by)).expect("no quarrel")
}

fn known(contents: &Contents, path: &str) -> Option<Value> {
    contents.facts.value(fact_named(path).expect("a fact of the job file"))
}

#[test]
fn different_facts_of_two_people_both_stand() {
    let base = Contents::default();
    let ada = merged(&base, &base, &edit(vec![said_so("bell.kind", json!("bolt_on"))]), "Ada");
    let both = merged(&base, &ada, &edit(vec![said_so("bell.ring_holes", json!(7))]), "Ben");
    assert_eq!(known(&both, "bell.kind"), Some(json!("bolt_on")));
    assert_eq!(known(&both, "bell.ring_holes"), Some(json!(7)));
}

#[test]
fn the_same_fact_changed_by_both_is_shown_with_who_and_when_and_nothing_is_written() {
    let base = Contents::default();
    let ada = merged(&base, &base, &edit(vec![said_so("bell.ring_holes", json!(6))]), "Ada");
    let ben = edit(vec![said_so("bell.ring_holes", json!(8)), said_so("bell.kind", json!("bolt_on"))]);
    let Err(Unmerged::Clashes(clashes)) = merge(&base, &ada, &ben, &hand("Ben")) else { panic!("a clash") };
    assert_eq!(clashes.len(), 1);
    assert_eq!((clashes[0].yours.as_str(), clashes[0].theirs.as_str()), ("8", "6"));
    assert_eq!((clashes[0].by.as_deref(), clashes[0].at), (Some("Ada"), Some(Timestamp::UNIX_EPOCH)));
    // Having seen Ada's value, Ben sends his again from what stands now: that is a decision.
    assert_eq!(known(&merged(&ada, &ada, &ben, "Ben"), "bell.ring_holes"), Some(json!(8)));
}

#[test]
fn a_form_that_sends_back_old_values_overwrites_nothing() {
    let base = merged(
        &Contents::default(),
        &Contents::default(),
        &edit(vec![said_so("bell.ring_holes", json!(6)), said_so("pump.holes", json!(6))]),
        "Ada",
    );
    let newer = merged(&base, &base, &edit(vec![said_so("bell.ring_holes", json!(8))]), "Ada");
    let whole_form = edit(vec![said_so("bell.ring_holes", json!(6)), said_so("pump.holes", json!(7))]);
    let both = merged(&base, &newer, &whole_form, "Ben");
    assert_eq!(known(&both, "bell.ring_holes"), Some(json!(8)));
    assert_eq!(known(&both, "pump.holes"), Some(json!(7)));
}

#[test]
fn the_same_value_from_two_people_is_no_quarrel() {
    let base = Contents::default();
    let ada = merged(&base, &base, &edit(vec![said_so("vehicle.tire_diameter_in", json!(28))]), "Ada");
    let ben = FactChange { source: Source::Measured, ..said_so("vehicle.tire_diameter_in", json!(28.0)) };
    assert_eq!(merged(&base, &ada, &edit(vec![ben]), "Ben"), ada);
}

#[test]
fn measuring_what_the_customer_said_changes_where_it_comes_from() {
    let told = FactChange { source: Source::CustomerSaid, ..said_so("vehicle.axle_ratio", json!(3.73)) };
    let base = merged(&Contents::default(), &Contents::default(), &edit(vec![told]), "Ada");
    let seen = merged(&base, &base, &edit(vec![said_so("vehicle.axle_ratio", json!(3.73))]), "Ben");
    let change = &changes(&base, &seen)[0];
    assert_eq!((change.from.as_str(), change.to.as_str()), ("3.73 (customer said)", "3.73 (looked)"));
}

#[test]
fn every_problem_is_named_at_once_and_nothing_is_written() {
    let bad = Edit {
        facts: vec![
            said_so("bell.ring_hole", json!(6)),
            said_so("vehicle.tire_diameter_in", json!(-1)),
            said_so("bell.kind", json!("welded")),
        ],
        wants: Some("quiet\u{0}shifts".into()),
        symptom: Some("x".repeat(WORDS_LIMIT + 1)),
        price: Some(Price::single(" ", Cents(5))),
        ..Edit::default()
    };
    let Err(Unmerged::Problems(problems)) = merge(&Contents::default(), &Contents::default(), &bad, &hand("Ada"))
    else {
        panic!("problems")
    };
    let fields: Vec<_> = problems.iter().map(|problem| problem.field.as_str()).collect();
    assert_eq!(fields, ["bell.ring_hole", "vehicle.tire_diameter_in", "bell.kind", "wants", "symptom", "price"]);
    assert!(problems[0].message.contains("bell.ring_holes"), "{}", problems[0].message);
    assert!(problems[1].message.contains("-1 was given"), "{}", problems[1].message);
}

#[test]
fn texts_and_price_clash_and_merge_like_facts() {
    let base = Contents::default();
    let ada = Edit { wants: Some("firm shifts".into()), ..Edit::default() };
    let now = merged(&base, &base, &ada, "Ada");
    let ben = Edit { wants: Some("soft shifts".into()), ..Edit::default() };
    assert!(
        matches!(merge(&base, &now, &ben, &hand("Ben")), Err(Unmerged::Clashes(clashes)) if clashes[0].field == "wants")
    );
    let priced = Edit { price: Some(Price::single("rebuild", Cents(180_000))), ..Edit::default() };
    let both = merged(&base, &now, &priced, "Ben");
    assert_eq!(both.words.wants.as_ref().map(|wording| wording.text.as_str()), Some("firm shifts"));
    assert_eq!(both.price().and_then(Price::total), Some(Cents(180_000)));
    let other = Edit { price: Some(Price::single("rebuild", Cents(190_000))), ..Edit::default() };
    assert!(
        matches!(merge(&base, &both, &other, &hand("Cy")), Err(Unmerged::Clashes(clashes)) if clashes[0].field == "price")
    );
}

/// A few yes/no and count facts with a few values each, so that edits often meet.
fn some_edit() -> impl Strategy<Value = Edit> {
    let paths: Vec<&str> = ["bell.ring_holes", "pump.holes", "bell.cut_planned", "use.raced", "case.bosses"]
        .into_iter()
        .filter(|path| fact_named(path).is_some())
        .collect();
    let change = (proptest::sample::select(paths), 0_u8..4).prop_map(|(path, pick)| {
        let fact = fact_named(path).expect("filtered");
        let yes_no = fact.declaration().kind == crate::job::Kind::YesNo;
        let value = match (pick, yes_no) {
            (0, _) => None,
            (1, true) => Some(json!(true)),
            (_, true) => Some(json!(false)),
            (n, false) => Some(json!(5 + n)),
        };
        FactChange { path: path.into(), value, source: Source::Looked }
    });
    let text = proptest::option::of(proptest::sample::select(vec!["", "firm", "soft"]).prop_map(str::to_owned));
    (proptest::collection::btree_map(0_u8..6, change, 0..5), text).prop_map(|(changes, wants)| {
        let mut seen = std::collections::BTreeSet::new();
        let facts = changes.into_values().filter(|change| seen.insert(change.path.clone())).collect();
        Edit { facts, wants, ..Edit::default() }
    })
}

fn applied(base: &Contents, edit: &Edit, by: &str) -> Contents {
    match merge(base, base, edit, &hand(by)) {
        Ok(contents) => contents,
        Err(_) => base.clone(),
    }
}

proptest! {
    /// Nothing is lost: whatever merges holds every change of both people; what does not merge
    /// is a fact that both changed to different values.
    #[test]
    fn a_merge_loses_nothing(start in some_edit(), theirs in some_edit(), mine in some_edit()) {
        let base = applied(&Contents::default(), &start, "Start");
        let current = applied(&base, &theirs, "Theirs");
        let alone = applied(&base, &mine, "Mine");
        match merge(&base, &current, &mine, &hand("Mine")) {
            Ok(merged) => for fact in fact_ids() {
                let (was, now, want) = (base.facts.value(fact), current.facts.value(fact), alone.facts.value(fact));
                let expected = if want == was { now } else { want };
                prop_assert_eq!(merged.facts.value(fact), expected);
            },
            Err(Unmerged::Clashes(clashes)) => for clash in clashes {
                prop_assert!(clash.yours != clash.theirs);
                let on = |contents: &Contents| match fact_named(&clash.field) {
                    Some(fact) => contents.facts.value(fact),
                    None => contents.words.wants.as_ref().map(|wording| json!(wording.text)),
                };
                prop_assert!(on(&base) != on(&current) && on(&base) != on(&alone) && on(&current) != on(&alone));
            },
            Err(Unmerged::Problems(problems)) => {
                prop_assert!(applied(&base, &mine, "Mine") == base, "{problems:?}");
            }
        }
    }

    /// An edit against what stands now never clashes, and its difference is exactly what it says.
    #[test]
    fn an_edit_of_the_present_always_merges(start in some_edit(), mine in some_edit()) {
        let base = applied(&Contents::default(), &start, "Start");
        prop_assert!(!matches!(merge(&base, &base, &mine, &hand("Mine")), Err(Unmerged::Clashes(_))));
        let after = applied(&base, &mine, "Mine");
        for change in changes(&base, &after) {
            prop_assert!(change.field == "wants" || mine.facts.iter().any(|sent| sent.path == change.field));
        }
        prop_assert!(changes(&after, &after).is_empty());
    }
}
