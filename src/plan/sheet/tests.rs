use super::*;
use crate::job::{Job, Kind, Sheet as FactSheet, ValveBodyKind};
use crate::quantity::Quantity;
use crate::rules::{Known, LimitId, Limits};
use std::collections::HashSet;

mod bounds;
mod picks;
mod words;

#[test]
fn every_measurement_is_declared_whole() {
    let (mut names, mut facts) = (HashSet::new(), HashSet::new());
    for one in measurements() {
        assert!(names.insert(one.name), "{} twice", one.name);
        let plain = |sign: char| sign.is_ascii_lowercase() || sign == '-';
        assert!(one.name.chars().all(plain), "{}", one.name);
        for text in [one.how, one.out].into_iter().chain(one.hurts) {
            assert!(text.len() > 20 && text.ends_with('.'), "{}: {text}", one.name);
        }
        assert!(one.likely.from < one.likely.to && one.likely.to <= one.possible.to, "{}", one.name);
        assert!(one.readings >= 1 && (one.readings == 1 || one.may_move > 0.0), "{}", one.name);
        if let Fills::Number(path) | Fills::Word(path, ..) = one.fills {
            let fact = one.fact().unwrap_or_else(|| panic!("{}: no fact {path}", one.name)).declaration();
            assert!(facts.insert(path), "{path} filled twice");
            assert_eq!(fact.sheet, FactSheet::Measured, "{path}");
            match (one.fills, fact.kind) {
                (Fills::Number(_), Kind::Number(symbol)) => assert_eq!(symbol, one.scale.symbol(), "{path}"),
                (Fills::Word(_, fits, none), Kind::Choice(words)) => {
                    assert!([fits, none].iter().all(|word| words.iter().any(|one| one.code == *word)), "{path}");
                }
                _ => panic!("{path}: cannot be filled by {}", one.name),
            }
        }
    }
    assert!(names.len() >= 40, "{} measurements", names.len());
}

#[test]
fn every_limit_of_the_bench_lies_where_readings_are_likely() {
    let job = Job::plain();
    for one in measurements() {
        let Known::Yes(band, _) = (one.band)(&job, &Limits::default()) else { continue };
        let edges = [&band.least, &band.tight, &band.aim, &band.loose, &band.most];
        let values: Vec<f64> = edges.into_iter().flatten().map(|edge| edge.value).collect();
        assert!(values.is_sorted(), "{}: {values:?}", one.name);
        for value in values {
            assert!(one.possible.holds(value) && value <= one.likely.to, "{}: {value}", one.name);
        }
    }
}

#[test]
fn a_measurement_that_waits_for_a_fact_says_so_and_passes_nothing() {
    let (blank, limits) = (Job::unknown(), Limits::default());
    let pack = measurement_named("direct-clearance").expect("a measurement");
    let verdict = judge(Some(0.06), &(pack.band)(&blank, &limits));
    assert!(matches!(&verdict, Verdict::CannotSay(facts) if facts.len() == 1), "{verdict:?}");
    assert_eq!(judge(None, &(pack.band)(&blank, &limits)), Verdict::NotTaken);
    let pressure = measurement_named("pressure-drive-idle").expect("a measurement");
    assert!(matches!(judge(Some(70.0), &(pressure.band)(&blank, &limits)), Verdict::CannotSay(_)));
}

#[test]
fn a_verdict_turns_exactly_at_its_limit() {
    let (mut job, limits) = (Job::plain(), Limits::default());
    job.intermediate.frictions.set(3);
    let of = |name: &str, value: f64| {
        let one = measurement_named(name).expect("a measurement");
        judge(Some(value), &(one.band)(&job, &limits))
    };
    assert_eq!(of("front-end-play", 0.003), Verdict::Fine);
    assert_eq!(of("front-end-play", 0.0029), Verdict::Out(Side::Below, 0.0001));
    assert_eq!(of("front-end-play", 0.024), Verdict::Fine);
    assert_eq!(of("front-end-play", 0.0241), Verdict::Out(Side::Above, 0.0001));
    assert_eq!(of("rear-end-play", 0.006), Verdict::Allowed(Side::Below));
    assert_eq!(of("rear-end-play", 0.007), Verdict::Fine);
    assert_eq!(of("rear-end-play", 0.0195), Verdict::Allowed(Side::Above));
    assert_eq!(of("intermediate-clearance", 0.0179), Verdict::Out(Side::Below, 0.0001));
    // 3 × 0.006 ends a hair above 0.018, for the rule and here.
    let at = of("intermediate-clearance", 0.018).sentence(Scale::Length);
    assert_eq!(at, "Right at the least that is allowed, and the rule counts it as out. Read it again.");
    assert_eq!(of("carrier-float", 0.02), Verdict::NoLimit);
    let out = of("front-end-play", 0.031).sentence(Scale::Length);
    assert_eq!(out, "Out: 0.007 in above the most that is allowed.");
}

#[test]
fn a_valve_body_shifted_by_hand_has_its_own_pressures() {
    let (mut job, limits) = (Job::plain(), Limits::default());
    let one = measurement_named("pressure-drive-idle").expect("a measurement");
    job.valve_body.kind.set(ValveBodyKind::Auto);
    assert_eq!(judge(Some(70.0), &(one.band)(&job, &limits)), Verdict::Fine);
    job.valve_body.kind.set(ValveBodyKind::Manual);
    assert!(matches!(judge(Some(70.0), &(one.band)(&job, &limits)), Verdict::Out(Side::Below, _)));
}

#[test]
fn a_limit_is_told_with_its_mark_and_with_what_the_shop_made_of_it() {
    let (job, mut limits) = (Job::plain(), Limits::default());
    limits.set(LimitId::front_play_most, 0.020).expect("in range");
    let one = measurement_named("front-end-play").expect("a measurement");
    let Known::Yes(band, _) = (one.band)(&job, &limits) else { panic!("it waits for nothing") };
    let told = band.told(one.scale);
    assert_eq!(told[0], ("At least", "0.003 in".to_owned(), "memory, high".to_owned()));
    let moved = "set by this shop; 0.024 in as supplied: memory, high";
    assert_eq!(told[2], ("At most", "0.020 in".to_owned(), moved.to_owned()));
}

/// What the sheet says of readings as they were typed, and whether the rule about the fact they fill fires.
fn both_say(name: &str, code: &str, typed: &str, prepare: fn(&mut Job)) -> (Verdict, bool) {
    let (mut job, limits) = (Job::plain(), Limits::default());
    prepare(&mut job);
    let one = measurement_named(name).expect("a measurement");
    let taken = take(one, &[typed.to_owned()], "", Habit::default(), true).expect(typed);
    let fact = one.fact().expect("it fills a fact");
    job.slot_mut(fact).read(&taken.value.into(), fact.declaration()).expect("a number");
    let Some(rule) = crate::rules::rule_named(code) else { panic!("{code} is no rule") };
    let fires = rule.verdict(&job, &limits).value() == Some(&true);
    (judge(Some(taken.value), &(one.band)(&job, &limits)), fires)
}

/// The rules and the sheet hold a number against the same limits, so they say the same of it: on the limit, and one
/// step of the instrument to either side.
#[test]
fn the_sheet_and_the_rules_agree_at_the_very_limit() {
    let four: fn(&mut Job) = |job| {
        job.forward.frictions.set(4);
        job.direct.frictions.set(5);
        job.intermediate.frictions.set(4);
    };
    let inside_and_out = [
        ("front-end-play", "MEA-01", ["0.003 in", "0.0762 mm"], ["0.0029 in", "0.075 mm"]),
        ("front-end-play", "MEA-01", ["0.024 in", "0.6096 mm"], ["0.0241 in", "0.61 mm"]),
        ("rear-end-play", "MEA-02", ["0.005 in", "0.127 mm"], ["0.0049 in", "0.126 mm"]),
        ("rear-end-play", "MEA-02", ["25 thou", "0.635 mm"], ["25.1 thou", "0.636 mm"]),
        ("pump-face-clearance", "PMP-01", ["0.0008", "0.02032 mm"], ["0.0007", "0.020 mm"]),
        ("pump-face-clearance", "PMP-01", ["0.0035", "0.0889 mm"], ["0.0036", "0.089 mm"]),
        ("intermediate-clearance", "CLT-05", ["0.024", "0.6096 mm"], ["0.0239", "0.609 mm"]),
        ("intermediate-clearance", "CLT-05", ["0.080", "2.032 mm"], ["0.0801", "2.033 mm"]),
        ("forward-clearance", "CLT-03", ["0.024", "0.6096 mm"], ["0.0239", "0.609 mm"]),
        ("forward-clearance", "CLT-03", ["0.080", "2.032 mm"], ["0.0801", "2.033 mm"]),
        ("direct-clearance", "CLT-04", ["0.030", "0.762 mm"], ["0.0299", "0.761 mm"]),
        ("direct-clearance", "CLT-04", ["0.100", "2.54 mm"], ["0.1001", "2.541 mm"]),
    ];
    for (name, code, inside, out) in inside_and_out {
        for typed in inside {
            let (verdict, fires) = both_say(name, code, typed, four);
            assert!(!matches!(verdict, Verdict::Out(..)) && !fires, "{name} at {typed}: {verdict:?}, {fires}");
        }
        for typed in out {
            let (verdict, fires) = both_say(name, code, typed, four);
            assert!(matches!(verdict, Verdict::Out(..)) && fires, "{name} at {typed}: {verdict:?}, {fires}");
        }
    }
}

/// A machine finds 3 × 0.006 to be a hair more than 0.018. Whoever works the rule out elsewhere finds the same, so the rule
/// stands as it is written, and the sheet goes with it.
#[test]
fn whatever_a_product_comes_to_the_sheet_says_what_the_rule_says() {
    for count in 1..=8_u32 {
        let mut job = Job::plain();
        job.direct.frictions.set(count);
        let rule = crate::rules::rule_named("CLT-04").expect("a rule");
        let one = measurement_named("direct-clearance").expect("a measurement");
        let limits = [(6 * count, None), (6 * count - 1, Some(true)), (20 * count, None), (20 * count + 1, Some(true))];
        for (thousandths, wanted) in limits {
            // As it is typed: the nearest number to the decimal, and not the product of a machine.
            let read: f64 = format!("{}e-3", thousandths).parse().expect("a number");
            job.direct.clear_in.set(Quantity::new(read));
            let fires = rule.verdict(&job, &Limits::default()).value() == Some(&true);
            let verdict = judge(Some(read), &(one.band)(&job, &Limits::default()));
            assert_eq!(matches!(verdict, Verdict::Out(..)), fires, "{count} frictions at {read}");
            assert!(wanted.is_none_or(|wanted| wanted == fires), "{count} frictions at {read}");
        }
    }
}

#[test]
fn reverse_has_to_read_above_drive_and_behind_a_valve_body_shifted_by_hand_no_less() {
    let said = |kind, drive: Option<f64>, reverse: f64| {
        let mut job = Job::plain();
        job.valve_body.kind.set(kind);
        job.bench.line_drive_idle_psi.forget();
        if let Some(drive) = drive {
            job.bench.line_drive_idle_psi.set(Quantity::new(drive));
        }
        let one = measurement_named("pressure-reverse-idle").expect("a measurement");
        judge(Some(reverse), &(one.band)(&job, &Limits::default()))
    };
    use ValveBodyKind::{Auto, Manual};
    assert_eq!(said(Manual, Some(220.0), 150.0), Verdict::Out(Side::Below, 70.0));
    assert_eq!(said(Manual, Some(180.0), 180.0), Verdict::Fine, "equal will do");
    assert_eq!(said(Auto, Some(95.0), 95.0), Verdict::Out(Side::Below, 1.0), "equal is a leak");
    assert_eq!(said(Auto, Some(95.0), 96.0), Verdict::Fine);
    assert_eq!(
        said(Auto, Some(60.0), 90.0),
        Verdict::Out(Side::Below, 5.0),
        "above drive and still below its own limit"
    );
    assert!(matches!(said(Auto, None, 110.0), Verdict::CannotSay(_)), "drive is read first");
}

fn set(kind: SetKind, sizes: &[(&str, &str, &str)]) -> Vec<SetPart> {
    let part = |(nth, part): (usize, &(&str, &str, &str))| kind.read_part(nth + 1, *part, Habit::default());
    sizes.iter().enumerate().map(part).collect::<Result<_, _>>().expect("a set")
}

fn proposed(name: &str, value: f64, fitted: &[f64], set: &[SetPart]) -> Proposal {
    let one = measurement_named(name).expect("a measurement");
    let (job, limits) = (Job::plain(), Limits::default());
    pick(one, (value, 0.0), &(one.band)(&job, &limits), &Fitted(fitted.to_vec()), set, &limits)
}

#[test]
fn the_washer_to_fit_comes_with_what_it_leaves() {
    let front = set(SetKind::FrontWasher, &[("0.084", "", ""), ("0.095", "", "yellow"), ("0.106", "", "")]);
    let Proposal::Found(found) = proposed("front-end-play", 0.031, &[0.073], &front) else { panic!("found") };
    assert!(found.fits);
    assert_eq!(found.sentence, "Fit 0.095 in, yellow. It will leave 0.009 in.");
    assert_eq!(found.working, "new = old + reading - aim = 0.073 in + 0.031 in - 0.012 in = 0.092 in");
    let leaves: Vec<_> = found.offers.iter().map(|offer| (offer.leaves.as_str(), offer.fits, offer.best)).collect();
    assert_eq!(
        leaves,
        [("0.020 in", true, false), ("0.009 in", true, true), ("no room: 0.002 in too thick", false, false)]
    );
    let none = set(SetKind::FrontWasher, &[("0.062", "", "")]);
    let Proposal::Found(none) = proposed("front-end-play", 0.031, &[0.073], &none) else { panic!("found") };
    assert!(
        !none.fits && none.sentence.starts_with("No part in the set fits. The nearest is 0.062 in"),
        "{}",
        none.sentence
    );
    assert!(matches!(proposed("front-end-play", 0.031, &[0.073], &[]), Proposal::Missing(_)));
    assert!(matches!(proposed("front-end-play", 0.031, &[], &front), Proposal::Missing(_)));
}

#[test]
fn a_washer_that_is_only_allowed_is_said_to_be_so() {
    let rear = set(SetKind::RearWasher, &[("0.076", "0.002", "")]);
    let Proposal::Found(found) = proposed("rear-end-play", 0.022, &[0.076], &rear) else { panic!("found") };
    assert!(
        found.fits && found.sentence.contains("Nothing in the set reaches what this shop builds"),
        "{}",
        found.sentence
    );
    assert!(
        found.sentence.starts_with("Leave what is in") && found.sentence.contains("(\u{b1} 0.002 in)"),
        "{}",
        found.sentence
    );
}

#[test]
fn steels_shims_and_pins_are_chosen_as_the_trade_chooses_them() {
    let steels = set(SetKind::ForwardSteels, &[("0.077", "", ""), ("0.097", "", "")]);
    let Proposal::Found(pack) = proposed("forward-clearance", 0.130, &[0.077; 4], &steels) else { panic!("found") };
    assert_eq!(
        pack.sentence,
        "Build the pack with 4 of 0.097 in. It will leave 0.050 in. With 2 new it would be 0.090 in: also inside."
    );
    let shims = set(SetKind::Shims, &[("0.005", "", ""), ("0.010", "", "")]);
    let Proposal::Found(kit) = proposed("needle-kit-stack", 0.141, &[0.150], &shims) else { panic!("found") };
    assert_eq!(kit.sentence, "Under the bearing: shims: 1 of 0.010 in. It then stands 0.001 in higher than the pair.");
    let pins = set(SetKind::RearPins, &[("0", "0.060", "short"), ("0.060", "0.120", "middle")]);
    let Proposal::Found(pin) = proposed("rear-band-pin", 0.090, &[], &pins) else { panic!("found") };
    assert_eq!(pin.sentence, "Fit middle (for 0.060 in to 0.120 in).");
    let Proposal::Found(none) = proposed("rear-band-pin", 0.130, &[], &pins) else { panic!("found") };
    assert!(!none.fits && none.sentence.starts_with("No pin in the set fits"), "{}", none.sentence);
}

#[test]
fn what_the_handbook_works_out_comes_out_here() {
    // Shop handbook: bell runout 0.014 takes offset dowels of 0.007; a gap of 0.220 takes spacers of 0.064.
    let Proposal::Found(dowels) = proposed("bell-runout", 0.014, &[], &[]) else { panic!("found") };
    assert!(dowels.sentence.starts_with("Dowels with 0.007 in of offset"), "{}", dowels.sentence);
    let Proposal::Found(spacers) = proposed("converter-gap", 0.220, &[], &[]) else { panic!("found") };
    assert!(spacers.sentence.starts_with("Spacers of 0.0638 in at every pad"), "{}", spacers.sentence);
    let Proposal::Found(none) = proposed("converter-gap", 0.150, &[], &[]) else { panic!("found") };
    assert_eq!(none.sentence, "No spacers are wanted: up to 0.1875 in the gap is left as it is.");
}

#[test]
fn a_part_that_cannot_be_is_refused_at_its_field() {
    let read = |size, other| SetKind::RearWasher.read_part(3, (size, other, ""), Habit::default());
    let field = |read: Result<SetPart, Vec<(&'static str, String)>>| read.expect_err("refused")[0].clone();
    assert_eq!(field(read("84", "")).0, "size");
    assert!(field(read("84", "")).1.starts_with("Line 3, size: "));
    assert_eq!(field(read("0", "")).0, "size");
    assert_eq!(field(read("0.084", "0.05")).0, "other");
    let pin = SetKind::RearPins.read_part(1, ("0.06", "0.02", "short"), Habit::default());
    assert_eq!(field(pin).0, "other");
    assert_eq!(read("84 thou", "0.002").expect("a part").thickness(), Quantity::new(0.084));
}

/// The limits that the sheet holds something against or aims at, whatever the job.
fn limits_on_sheet() -> Vec<LimitId> {
    let jobs = [ValveBodyKind::Auto, ValveBodyKind::Manual].map(|kind| {
        let mut job = Job::plain();
        job.valve_body.kind.set(kind);
        job
    });
    let limits = Limits::default();
    let mut found = vec![LimitId::kit_stack];
    for band in jobs.iter().flat_map(|job| measurements().map(|one| (one.band)(job, &limits))) {
        let Known::Yes(Band { least, tight, aim, loose, most }, _) = band else { continue };
        found.extend([least, tight, aim, loose, most].into_iter().flatten().filter_map(|edge| edge.limit));
    }
    found.sort_unstable();
    found.dedup();
    found
}

#[test]
fn no_limit_is_declared_for_nothing() {
    let on_sheet = limits_on_sheet();
    for limit in LimitId::ALL {
        let used = crate::rules::rules().any(|rule| rule.all_limits().contains(limit));
        assert!(used || on_sheet.contains(limit), "{limit:?} is used by no rule and by no measurement");
    }
}
