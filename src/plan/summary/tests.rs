//! What a customer is told, and what they are never told.

use super::reading;
use super::*;
use crate::job::{UseKind, fact_ids, random_job};
use serde_json::json;
use std::collections::BTreeMap;

/// Nothing was changed for good in this shop.
pub(super) static NOTHING: BTreeMap<String, bool> = BTreeMap::new();

pub(super) fn matter<'a>(job: &'a Job, how_known: &'a dyn Fn(FactId) -> Option<HowKnown>) -> Matter<'a> {
    Matter {
        added: &[],
        done_here: &NOTHING,
        job,
        how_known,
        vehicle: "Green pickup, long bed",
        brought: Some("Converter\nDriveshaft yoke"),
        wants: Some("Firm shifts, no drips"),
        symptom: Some("slips when hot"),
        to_put_right: Vec::new(),
        to_know: Vec::new(),
        set_aside: Vec::new(),
        terms: "",
    }
}

pub(super) fn you_told(_: FactId) -> Option<HowKnown> {
    Some(HowKnown::YouTold)
}

pub(super) fn with(changes: &[(&str, serde_json::Value)]) -> Job {
    let mut job = Job::plain();
    for (path, value) in changes {
        let fact = crate::job::fact_named(path).expect("a fact of the job file");
        job.slot_mut(fact).read(value, fact.declaration()).expect("an allowed value");
    }
    job
}

pub(super) fn block_of(blocks: &[Block], heading: &str) -> String {
    blocks.iter().find(|block| block.heading == heading).map(|block| block.lines.join("\n")).unwrap_or_default()
}

fn whole(blocks: &[Block]) -> String {
    blocks.iter().flat_map(|block| block.lines.iter()).map(|line| format!("{line}\n")).collect()
}

/// Jobs as they come through the door, and forty-odd that nobody would invent.
fn all_sorts() -> Vec<Job> {
    let mut jobs = vec![
        Job::unknown(),
        Job::plain(),
        with(&[("bell.cut_planned", json!(true)), ("use.kind", json!("drag")), ("use.raced", json!(true))]),
        with(&[("use.kind", json!("tow")), ("vehicle.tow_weight_lb", json!(7000)), ("fluid.shipped_dry", json!(true))]),
        with(&[("valve_body.kind", json!("manual")), ("valve_body.brake", json!("internal"))]),
    ];
    let mut state = 0x9e37_79b9_7f4a_7c15_u64;
    jobs.extend((0..40).map(|_| {
        random_job(|| {
            state ^= state << 13;
            state ^= state >> 7;
            state ^= state << 17;
            state
        })
    }));
    jobs
}

/// Handbook figures: 8 on the shaft, 3.73, 28.5 in want 21.1; with 19 fitted the dial shows 66.7 at a true 60.
#[test]
fn the_speedometer_is_told_in_percent_and_mph_and_says_whose_numbers_it_rests_on() {
    let job = with(&[
        ("speedometer.kind", json!("cable")),
        ("speedometer.drive_teeth", json!(8)),
        ("speedometer.driven_teeth", json!(19)),
        ("vehicle.axle_ratio", json!(3.73)),
        ("vehicle.tire_diameter_in", json!(28.5)),
    ]);
    let tire = job.vehicle.tire_diameter_in.id();
    let how_known = |fact: FactId| Some(if fact == tire { HowKnown::WeMeasured } else { HowKnown::YouTold });
    let built = block_of(&build(&matter(&job, &how_known)), "What we will build");
    assert!(built.contains("11.1 percent too high. It shows 66.7 mph when you really go 60 mph (tire"), "{built}");
    assert!(built.contains("tire: we measured; axle: you told us"), "{built}");
    assert!(!built.contains("19"), "teeth are no customer's business: {built}");
}

#[test]
fn a_slow_dial_warns_that_you_go_faster_than_it_says_and_a_true_one_says_so() {
    let dial = |driven: u32| {
        let job = with(&[
            ("speedometer.drive_teeth", json!(8)),
            ("speedometer.driven_teeth", json!(driven)),
            ("vehicle.axle_ratio", json!(4.0)),
            ("vehicle.tire_diameter_in", json!(20.168)),
        ]);
        block_of(&build(&matter(&job, &you_told)), "What we will build")
    };
    assert!(
        dial(33).contains("too low. It shows 58.2 mph when you really go 60 mph, so you go faster"),
        "{}",
        dial(33)
    );
    assert!(dial(32).contains("will read true"), "{}", dial(32));
    assert!(dial(31).contains("too high"), "{}", dial(31));
}

#[test]
fn a_dial_that_cannot_be_worked_out_is_said_to_be_open() {
    let mut job = with(&[("speedometer.kind", json!("cable"))]);
    job.vehicle.tire_diameter_in.forget();
    let blocks = build(&matter(&job, &you_told));
    assert!(block_of(&blocks, "What we do not know yet").contains("How true your speedometer will read."));
    assert!(!whole(&blocks).contains("will read true"));
}

#[test]
fn nothing_known_is_never_told_as_fine() {
    let job = Job::unknown();
    for blocks in [build(&matter(&job, &|_| None)), teardown(&matter(&job, &|_| None))] {
        let open = block_of(&blocks, "What we do not know yet");
        for line in
            ["If the case has cracks.", "If park holds.", "We have not opened it yet.", "we do not call it fine"]
        {
            assert!(open.contains(line), "{open}");
        }
        let text = whole(&blocks);
        for claim in ["saw none", "Park holds.", "are sound", "All passed"] {
            assert!(!text.contains(claim), "{claim} in {text}");
        }
    }
}

#[test]
fn what_is_the_bench_business_alone_stays_there() {
    let job = Job::plain();
    let mut matter = matter(&job, &you_told);
    matter.to_put_right = vec![Point { code: "PMP-03", text: "" }, Point { code: "COL-01", text: "The port is bad." }];
    matter.to_know = vec![Point { code: "MEA-03", text: "  " }];
    let blocks = build(&matter);
    assert_eq!(block_of(&blocks, TO_PUT_RIGHT), "The port is bad.");
    assert_eq!(block_of(&blocks, TO_KNOW), "");
    assert!(!whole(&blocks).contains("PMP-03"));
}

#[test]
fn a_point_that_speaks_of_a_figure_carries_it() {
    let job = with(&[("speedometer.kind", json!("cable")), ("speedometer.driven_teeth", json!(30))]);
    let point = Point { code: "SPD-01", text: "Your speedometer will be off." };
    let text = tick(point, &matter(&job, &you_told));
    assert!(text.starts_with("Your speedometer will be off. Your speedometer will read") && text.contains("60 mph"));
    let bare = Point { code: "MNT-03", ..point };
    assert_eq!(tick(bare, &matter(&job, &you_told)), "Your speedometer will be off.");
}

#[test]
fn the_shops_own_words_stand_as_typed_and_only_where_there_are_some() {
    let job = Job::plain();
    let mut matter = matter(&job, &you_told);
    assert_eq!(block_of(&build(&matter), "What is not covered"), "");
    matter.terms = "Racing use.\n\nParts you bring.";
    assert_eq!(block_of(&build(&matter), "What is not covered"), "Racing use.\nParts you bring.");
    assert_eq!(block_of(&teardown(&matter), "Our terms for the teardown"), "Racing use.\nParts you bring.");
}

#[test]
fn every_number_of_the_customers_says_where_it_comes_from() {
    let job = with(&[("use.raced", json!(true)), ("use.kind", json!("tow")), ("vehicle.tow_weight_lb", json!(5000))]);
    assert_eq!(job.usage.kind.value(), Some(&UseKind::Tow));
    let looked = |_: FactId| Some(HowKnown::WeLooked);
    for heading in ["What you told us", "What we measured"] {
        let told = block_of(&build(&matter(&job, &looked)), heading);
        for line in told.lines().filter(|line| line.chars().any(|letter| letter.is_ascii_digit())) {
            assert!(line.ends_with("(we looked)."), "{line}");
        }
    }
    let told = block_of(&build(&matter(&job, &you_told)), "What you told us");
    assert!(!told.contains("(you told us)") && told.contains("as you told us, unless it says otherwise"), "{told}");
}

#[test]
fn every_paper_can_be_read_at_twelve() {
    for (place, job) in all_sorts().iter().enumerate() {
        for blocks in [build(&matter(job, &you_told)), teardown(&matter(job, &you_told))] {
            let text = whole(&blocks);
            let age = reading::age(&text);
            assert!(age <= 12.0, "job {place} reads like {age:.1}:\n{text}");
            for sentence in reading::sentences(&text) {
                let count = reading::words(sentence).len();
                assert!(count <= 22, "{count} words: {sentence}");
            }
        }
    }
}

#[test]
fn every_sentence_the_rule_book_has_for_customers_can_be_read_at_twelve() {
    let mut told = String::new();
    for text in crate::rules::rules().filter_map(|rule| rule.customer) {
        for sentence in reading::sentences(text) {
            let count = reading::words(sentence).len();
            assert!(count <= 25, "{count} words: {sentence}");
        }
        told.push_str(text);
        told.push('\n');
    }
    assert!(reading::age(&told) <= 12.0, "they read like {:.1}", reading::age(&told));
}

/// Words of the trade, and what has to stand in the same paper when one is used. An empty one is never used.
const TRADE: [(&str, &str); 22] = [
    ("torque", "twisting force"),
    ("bell", "cone"),
    ("trans brake", "holds the car"),
    ("converter", "joins engine and gears"),
    ("axle ratio", "driveshaft turns"),
    ("stall speed", "how fast the engine runs"),
    ("one-way clutch", "turns one way and locks"),
    ("flexplate", "plate between engine"),
    ("sprag", ""),
    ("modulator", ""),
    ("governor", ""),
    ("kickdown", ""),
    ("valve body", ""),
    ("pawl", ""),
    ("boss", ""),
    ("runout", ""),
    ("spline", ""),
    ("end play", ""),
    ("planetary", ""),
    ("helical", ""),
    ("tail housing", ""),
    ("worm", ""),
];

#[test]
fn no_word_of_the_trade_is_used_without_its_meaning() {
    for job in all_sorts() {
        for blocks in [build(&matter(&job, &you_told)), teardown(&matter(&job, &you_told))] {
            let text = whole(&blocks).replace("Converter\n", "").to_lowercase();
            for (word, meaning) in TRADE {
                let used = text.contains(word);
                assert!(
                    !used || (!meaning.is_empty() && text.contains(meaning)),
                    "{word} is not explained in:\n{text}"
                );
            }
        }
    }
}

#[test]
fn no_paper_has_an_empty_block_or_a_word_of_the_job_file() {
    for job in all_sorts() {
        for block in build(&matter(&job, &you_told)).iter().chain(&teardown(&matter(&job, &you_told))) {
            assert!(!block.lines.is_empty() && block.lines.iter().all(|line| !line.trim().is_empty()));
            let text = block.lines.join(" ");
            for fact in fact_ids() {
                assert!(!text.contains(fact.declaration().path), "{}", fact.declaration().path);
            }
            assert!(!text.contains("NaN") && !text.contains("inf "), "{text}");
        }
    }
}

/// What is only planned, and how the shop knows the rest.
pub(super) fn planning(planned: &'static [&'static str]) -> impl Fn(FactId) -> Option<HowKnown> {
    move |fact| {
        let planned = planned.contains(&fact.declaration().path);
        Some(if planned { HowKnown::WePlan } else { HowKnown::WeLooked })
    }
}

#[test]
fn what_is_planned_is_never_told_as_found_or_measured() {
    let job = with(&[("case.park_pawl", json!("works")), ("bench.front_end_play_in", json!(0.015))]);
    for (planned, told) in [(&[][..], true), (&["case.park_pawl", "bench.front_end_play_in"][..], false)] {
        let how_known = planning(planned);
        let blocks = build(&matter(&job, &how_known));
        let (found, measured) = (block_of(&blocks, "What we found"), block_of(&blocks, "What we measured"));
        assert_eq!(found.contains("Park holds."), told, "{found}");
        assert_eq!(measured.contains("The front shaft can slide"), told, "{measured}");
    }
}

#[test]
fn a_trans_brake_that_a_plan_takes_out_is_told_and_one_nobody_wanted_is_not() {
    let job = with(&[("valve_body.kind", json!("manual")), ("valve_body.brake", json!("none"))]);
    for (planned, told) in [(&["valve_body.brake"][..], true), (&[][..], false)] {
        let how_known = planning(planned);
        let built = block_of(&build(&matter(&job, &how_known)), "What we will build");
        assert_eq!(built.contains("without a trans brake"), told, "{built}");
    }
}
