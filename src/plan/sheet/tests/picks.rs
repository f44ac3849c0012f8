//! What is said of the part to fit: every way it can come out, worked out by hand.

use super::*;

fn found(name: &str, value: f64, fitted: &[f64], set: &[SetPart]) -> Picked {
    match proposed(name, value, fitted, set) {
        Proposal::Found(found) => found,
        other => panic!("{name} at {value}: {other:?}"),
    }
}

fn missing(name: &str, value: f64, fitted: &[f64], set: &[SetPart]) -> String {
    match proposed(name, value, fitted, set) {
        Proposal::Missing(what) => what,
        other => panic!("{name} at {value}: {other:?}"),
    }
}

/// Each offer in a line: what, what it leaves, whether it fits, whether it is the best.
fn offers(found: &Picked) -> Vec<String> {
    let mark = |yes: bool, word: &str| if yes { format!(" {word}") } else { String::new() };
    let line = |offer: &Offer| {
        format!("{}: {}{}{}", offer.what, offer.leaves, mark(offer.fits, "fits"), mark(offer.best, "best"))
    };
    found.offers.iter().map(line).collect()
}

fn fronts() -> Vec<SetPart> {
    set(SetKind::FrontWasher, &[("0.084", "", ""), ("0.095", "0.002", "yellow"), ("0.106", "", "")])
}

#[test]
fn what_is_missing_is_asked_for_by_name() {
    let set_missing = missing("front-end-play", 0.031, &[0.073], &[]);
    assert_eq!(
        set_missing,
        "The set \u{201c}Front washers\u{201d} is not typed in yet. Type what is on the shelf, then the page chooses \
         from it."
    );
    let old = missing("front-end-play", 0.031, &[], &fronts());
    assert_eq!(old, "Measure the washer that is in now with a micrometer and type it.");
    let steels = set(SetKind::DirectSteels, &[("0.077", "", "")]);
    let one = measurement_named("direct-clearance").expect("a measurement");
    let blank = (one.band)(&Job::unknown(), &Limits::default());
    let fitted = Fitted(vec![0.077; 4]);
    let waits = pick(one, (0.05, 0.0), &blank, &fitted, &steels, &Limits::default());
    let words = "It cannot be chosen before the limit is known: see what it waits for.";
    assert_eq!(waits, Proposal::Missing(words.to_owned()));
    let none = pick(one, (0.05, 0.0), &Known::given(Band::NONE), &fitted, &steels, &Limits::default());
    assert_eq!(none, Proposal::Missing("There is no limit to choose a part by.".to_owned()));
    assert_eq!(proposed("crank-end-play", 0.014, &[], &[]), Proposal::Nothing);
}

#[test]
fn every_washer_says_what_it_leaves_and_how_sure_that_is() {
    // Readings that lay 0.002 apart are unsure by 0.001; √(0.002² + 0.001²) = 0.0022.
    let one = measurement_named("front-end-play").expect("a measurement");
    let limits = Limits::default();
    let band = (one.band)(&Job::plain(), &limits);
    let Proposal::Found(found) = pick(one, (0.031, 0.002), &band, &Fitted(vec![0.073]), &fronts(), &limits) else {
        panic!("found")
    };
    assert_eq!(
        offers(&found),
        [
            "0.084 in: 0.020 in (\u{b1} 0.001 in) fits",
            "0.095 in \u{b1} 0.002 in, yellow: 0.009 in (\u{b1} 0.003 in at the worst, \u{b1} 0.0022 in as likely) fits best",
            "0.106 in: no room: 0.002 in too thick",
        ]
    );
    let exactly_none = found_at(0.033, "0.106");
    assert_eq!(offers(&exactly_none), ["0.106 in: 0.000 in best"], "no play at all is too little, and not too thick");
}

/// With one washer on the shelf, and one of 0.073 in.
fn found_at(value: f64, size: &str) -> Picked {
    found("front-end-play", value, &[0.073], &set(SetKind::FrontWasher, &[(size, "", "")]))
}

#[test]
fn a_washer_that_may_come_out_beyond_the_limit_is_to_be_read_again() {
    // 0.073 + 0.031 - 0.081 = 0.023, and a thousandth of an inch is left to the most; the part may be two off.
    let unsure = found("front-end-play", 0.031, &[0.073], &set(SetKind::FrontWasher, &[("0.081", "0.002", "")]));
    assert_eq!(
        unsure.sentence,
        "Fit 0.081 in \u{b1} 0.002 in. It will leave 0.023 in (\u{b1} 0.002 in). Read again when it is in: at its worst it \
         would be outside."
    );
    let sure = found("front-end-play", 0.031, &[0.073], &set(SetKind::FrontWasher, &[("0.081", "0.001", "")]));
    assert_eq!(sure.sentence, "Fit 0.081 in \u{b1} 0.001 in. It will leave 0.023 in (\u{b1} 0.001 in).");
}

#[test]
fn no_washer_fits_on_either_side_and_the_nearest_is_named() {
    let loose = found("front-end-play", 0.060, &[0.073], &fronts());
    assert!(!loose.fits);
    assert_eq!(
        loose.sentence,
        "No part in the set fits. The nearest is 0.106 in: it would leave 0.027 in, which is 0.003 in too much. A part of \
         about 0.121 in is wanted."
    );
    assert_eq!(offers(&loose)[2], "0.106 in: 0.027 in best");
    let tight = found_at(0.021, "0.093");
    assert_eq!(
        tight.sentence,
        "No part in the set fits. The nearest is 0.093 in: it would leave 0.001 in, which is 0.002 in too little. A part \
         of about 0.082 in is wanted."
    );
}

#[test]
fn a_pack_is_built_left_alone_or_beyond_its_steels() {
    let steels = set(SetKind::ForwardSteels, &[("0.077", "", ""), ("0.097", "", "")]);
    let forward = |value: f64, fitted: &[f64]| found("forward-clearance", value, fitted, &steels);
    let alone = forward(0.050, &[0.077; 4]);
    assert_eq!(
        alone.sentence,
        "Leave the steels as they are: nothing on the shelf comes nearer to the aim than 0.050 in."
    );
    assert_eq!(offers(&alone), ["4 of 0.077 in (0 new): 0.050 in fits best"]);
    let build = forward(0.130, &[0.077; 4]);
    assert!(build.fits);
    assert_eq!(
        build.working,
        "the stack has to grow by reading - aim = 0.130 in - 0.050 in = 0.080 in; over 4 steels that is 0.020 in each"
    );
    assert_eq!(
        offers(&build),
        ["4 of 0.097 in (4 new): 0.050 in fits best", "2 of 0.077 in and 2 of 0.097 in (2 new): 0.090 in fits",]
    );
    let nearer = forward(0.100, &[0.077, 0.097, 0.097, 0.077]);
    assert_eq!(
        nearer.sentence,
        "Build the pack with 4 of 0.097 in. It will leave 0.060 in. As it is now it has 0.100 in: also inside."
    );
    let side = |value: f64| {
        let found = forward(value, &[0.077; 4]);
        assert!(!found.fits && found.offers.len() == 1 && found.offers[0].best && !found.offers[0].fits);
        found.sentence
    };
    assert_eq!(
        side(0.300),
        "No steels in the set \u{201c}Forward steels\u{201d} fit. The nearest pack is 4 of 0.097 in: it would leave 0.220 \
         in, which is 0.120 in too much. Look at the pressure plate and the snap ring."
    );
    assert!(side(0.012).contains("4 of 0.077 in: it would leave 0.012 in, which is 0.018 in too little."));
}

#[test]
fn the_bearing_is_shimmed_to_the_height_of_the_pair() {
    let shelf = set(SetKind::Shims, &[("0.005", "", ""), ("0.010", "", "")]);
    let kit = |height: f64| found("needle-kit-stack", height, &[0.150], &shelf);
    let same = kit(0.150);
    assert!(same.fits);
    assert_eq!(same.sentence, "Under the bearing: no shim. It then stands the same height as the pair.");
    assert_eq!(same.working, "shims = old pair - bearing = 0.150 in - 0.150 in = 0.000 in");
    assert_eq!(offers(&same), ["no shim: the same height as the pair fits best"]);
    assert_eq!(kit(0.149).sentence, "Under the bearing: no shim. It then stands 0.001 in lower than the pair.");
    let two = kit(0.135);
    assert_eq!(offers(&two), ["shims: 1 of 0.005 in and 1 of 0.010 in: the same height as the pair fits best"]);
    let high = kit(0.1521);
    assert!(!high.fits && high.offers.is_empty());
    assert_eq!(
        high.sentence,
        "The bearing alone stands 0.0021 in higher than the pair, and no shim makes it lower. Take a thinner race, or keep \
         the washers."
    );
    let low = kit(0.110);
    assert!(!low.fits);
    assert_eq!(
        low.sentence,
        "No shims in the set \u{201c}Bearing shims\u{201d} fit. The nearest, shims: 3 of 0.010 in, leave it 0.010 in lower \
         than the pair; it has to be within 0.002 in."
    );
    assert_eq!(offers(&low), ["shims: 3 of 0.010 in: 0.010 in lower than the pair best"]);
}

#[test]
fn the_pin_is_the_one_whose_window_holds_the_mark() {
    let pins = set(SetKind::RearPins, &[("0", "0.060", "short"), ("0.060", "0.120", "")]);
    let at = |value: f64| found("rear-band-pin", value, &[], &pins);
    let short = at(0.030);
    assert_eq!((short.fits, short.sentence.as_str()), (true, "Fit short (for 0.000 in to 0.060 in)."));
    assert_eq!(short.working, "the gauge reads 0.030 in");
    assert_eq!(
        offers(&short),
        [
            "short (for 0.000 in to 0.060 in): the mark falls in its window fits best",
            "the pin for 0.060 in to 0.120 in: the mark falls outside its window",
        ]
    );
    let beyond = at(0.130);
    assert!(!beyond.fits);
    assert_eq!(
        beyond.sentence,
        "No pin in the set fits: the mark falls in no window. The nearest is the pin for 0.060 in to 0.120 in, and the \
         reading is 0.010 in above it."
    );
    assert_eq!(offers(&beyond)[1], "the pin for 0.060 in to 0.120 in: the mark falls outside its window best");
    let below = found("rear-band-pin", 0.050, &[], &pins[1..]).sentence;
    assert!(below.ends_with("and the reading is 0.010 in below it."), "{below}");
}

#[test]
fn dowels_and_spacers_follow_from_the_number_alone() {
    let dowels = found("bell-runout", 0.014, &[], &[]);
    assert!(dowels.fits);
    assert_eq!(dowels.working, "offset = runout / 2 = 0.014 in / 2 = 0.007 in");
    // Shop handbook: the gap is 1/8 to 3/16, and spacers bring it to 5/32 (looked up, common practice).
    let spacers = found("converter-gap", 0.1876, &[], &[]);
    assert!(spacers.fits && spacers.sentence.starts_with("Spacers of 0.0313 in at every pad"), "{}", spacers.sentence);
    assert_eq!(spacers.working, "spacer = gap - aim = 0.1876 in - 0.1562 in = 0.0313 in");
    let none = "No spacers are wanted: up to 0.1875 in the gap is left as it is.";
    for gap in [0.1875, 0.15625, 0.0625] {
        assert_eq!(found("converter-gap", gap, &[], &[]).sentence, none, "at {gap}");
    }
}

#[test]
fn only_when_nothing_reaches_what_the_shop_builds_is_what_is_allowed_the_measure() {
    // Rear end play: 0.005 to 0.025 allowed, 0.007 to 0.019 built, 0.010 aimed at.
    let rear = |value: f64, sizes: &[(&str, &str, &str)]| {
        found("rear-end-play", value, &[0.084], &set(SetKind::RearWasher, sizes)).sentence
    };
    assert_eq!(rear(0.020, &[("0.092", "", "")]), "Fit 0.092 in. It will leave 0.012 in.");
    assert_eq!(
        rear(0.030, &[("0.092", "", "")]),
        "Fit 0.092 in. It will leave 0.022 in. Nothing in the set reaches what this shop builds; this is allowed."
    );
    assert!(rear(0.034, &[("0.092", "", "")]).starts_with("No part in the set fits. The nearest is 0.092 in"));
    let both = rear(0.020, &[("0.082", "", ""), ("0.087", "", "")]);
    assert_eq!(both, "Fit 0.087 in. It will leave 0.017 in.", "and not the other, which would only be allowed");
}

#[test]
fn without_an_aim_the_middle_is_aimed_at() {
    let edge = |value| Some(Edge { value, mark: String::new(), limit: None });
    let band = Band { least: edge(0.004), most: edge(0.016), ..Band::NONE };
    let parts = set(SetKind::FrontWasher, &[("0.079", "", ""), ("0.084", "", ""), ("0.088", "", "")]);
    let tried = washers((0.020, 0.0), 0.073, &band, &parts).expect("there are limits");
    let leaves = tried.landings.iter().map(|landing| Scale::Length.say(landing.result.value())).collect::<Vec<_>>();
    assert_eq!(leaves, ["0.014 in", "0.009 in", "0.005 in"]);
    let crate::calc::fit::Pick::Fits(best) = tried.pick else { panic!("{:?}", tried.pick) };
    assert_eq!(best.part, 1, "0.009 is nearest to the middle, 0.010");
    assert_eq!(washers((0.020, 0.0), 0.073, &Band { most: None, ..band }, &parts), None);
}
