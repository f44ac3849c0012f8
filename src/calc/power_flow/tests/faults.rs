//! What is no gear train is refused with its fault named; what cannot be told is said so.

use super::{UNIT, geared, input, near, ratio, state};
use crate::calc::power_flow::*;
use crate::quantity::Quantity;

const SET: PlanetarySet = PlanetarySet {
    name: "set",
    pinions: Pinions::Single,
    ratio: Quantity::new(2.0),
    sun: "in",
    ring: "ring",
    carrier: "out",
};

const BAND: Element = Element { name: "band", kind: ElementKind::Band, shaft: "ring", to: CASE };

fn fault(sets: &[PlanetarySet], elements: &[Element]) -> Option<Fault> {
    Train::new(sets, elements, "in", "out").err()
}

#[test]
fn every_fault_is_named() {
    assert_eq!(fault(&[SET], &[BAND]), None);
    for value in [0.0, -2.0, f64::NAN, f64::INFINITY] {
        assert_eq!(
            fault(&[PlanetarySet { ratio: ratio(value), ..SET }], &[BAND]),
            Some(Fault::Ratio("set")),
            "{value}"
        );
    }
    let even = PlanetarySet { ratio: ratio(1.0), ..SET };
    assert_eq!(fault(&[even], &[BAND]), None, "single pinions of equal step");
    assert_eq!(fault(&[PlanetarySet { pinions: Pinions::Pair, ..even }], &[BAND]), Some(Fault::Ratio("set")));
    for doubled in [
        PlanetarySet { ring: "in", ..SET },
        PlanetarySet { carrier: "ring", ..SET },
        PlanetarySet { carrier: "in", ..SET },
    ] {
        assert_eq!(fault(&[doubled], &[BAND]), Some(Fault::SameShaft("set")), "{doubled:?}");
    }
    for wrong in [
        Element { to: "out", ..BAND },
        Element { kind: ElementKind::Brake, to: "out", ..BAND },
        Element { kind: ElementKind::Clutch, ..BAND },
        Element { shaft: CASE, ..BAND },
        Element { kind: ElementKind::Clutch, to: "ring", ..BAND },
        Element { kind: ElementKind::OneWay(Holds::Forward), shaft: CASE, to: "ring", ..BAND },
    ] {
        assert_eq!(fault(&[SET], &[wrong]), Some(Fault::WrongEnd("band")), "{wrong:?}");
    }
    assert_eq!(fault(&[SET], &[]), Some(Fault::LooseShaft("ring")), "a ring nothing reaches");
    let twice = Element { name: "set", ..BAND };
    assert_eq!(fault(&[SET], &[twice]), Some(Fault::SameName("set")));
    for (input, output) in [("in", "in"), (CASE, "out"), ("in", CASE)] {
        assert_eq!(Train::new(&[SET], &[BAND], input, output).err(), Some(Fault::Ends), "{input} {output}");
    }
}

#[test]
fn a_train_may_be_as_large_as_is_said_and_no_larger() {
    const NAMES: [&str; 24] = [
        "a", "b", "c", "d", "e", "f", "g", "h", "i", "j", "k", "l", "m", "n", "o", "p", "q", "r", "s", "t", "u", "v",
        "w", "x",
    ];
    let bands = |count: usize| -> Vec<Element> { NAMES[..count].iter().map(|name| Element { name, ..BAND }).collect() };
    assert_eq!(fault(&[SET], &bands(MOST_JOINTS - 1)), None);
    assert_eq!(fault(&[SET], &bands(MOST_JOINTS)), Some(Fault::TooLarge));
    let one_ways = |count: usize| -> Vec<Element> {
        let one_way = Element { kind: ElementKind::OneWay(Holds::Backward), ..BAND };
        NAMES[..count].iter().map(|name| Element { name, ..one_way }).collect()
    };
    assert_eq!(fault(&[SET], &one_ways(MOST_ONE_WAYS)), None);
    assert_eq!(fault(&[SET], &one_ways(MOST_ONE_WAYS + 1)), Some(Fault::TooLarge));
    // Every band on a shaft of its own, and on the ring by a clutch: two names a shaft.
    let chained = |shafts: usize| -> Vec<Element> {
        let extra = NAMES[..shafts].iter().enumerate();
        let clutch = |(at, shaft): (usize, &&'static str)| Element {
            name: NAMES[at],
            kind: ElementKind::Clutch,
            shaft,
            to: if at == 0 { "ring" } else { NAMES[at - 1] },
        };
        let last = Element { name: "last", shaft: NAMES[shafts - 1], ..BAND };
        extra.map(clutch).chain([last]).collect()
    };
    assert_eq!(fault(&[SET], &chained(MOST_SHAFTS - 3)), None);
    assert_eq!(fault(&[SET], &chained(MOST_SHAFTS - 2)), Some(Fault::TooLarge));
    // The largest there may be still works.
    let train = Train::new(&[SET], &bands(MOST_JOINTS - 1), "in", "out").expect("sound");
    let flow = train.flow(&Range { name: "on", applied: &NAMES[..MOST_JOINTS - 1] }, UNIT).expect("its own bands");
    assert_eq!(flow.ratio(), Some(ratio(3.0)));
    assert_eq!(flow.shared.len(), 1, "all of them share");
    assert!(flow.elements.iter().all(|element| element.load == Load::Unknown), "in more than one way");
}

#[test]
fn a_range_may_apply_only_what_the_valve_body_can() {
    let one_way = Element { name: "one-way", kind: ElementKind::OneWay(Holds::Backward), ..BAND };
    let train = Train::new(&[SET], &[BAND, one_way], "in", "out").expect("sound");
    let applied = |applied| train.flow(&Range { name: "range", applied }, UNIT).map(|flow| flow.ratio());
    assert_eq!(applied(&["band"]), Ok(Some(ratio(3.0))));
    assert_eq!(applied(&["one-way"]), Err(Fault::NotApplied("one-way")));
    assert_eq!(applied(&["belt"]), Err(Fault::NotApplied("belt")));
    assert!(Fault::NotApplied("belt").to_string().contains("\"belt\""));
}

/// A forward gear and a reverse gear, each by a one-way clutch that holds while the vehicle pushes.
fn two_ways() -> Train {
    let second = PlanetarySet { name: "second", ring: "out", carrier: "other", ..SET };
    let one_way = |name, holds, shaft| Element { name, kind: ElementKind::OneWay(holds), shaft, to: CASE };
    let aside = Element { name: "aside", shaft: "drum", ..BAND };
    let elements = [
        one_way("forward", Holds::Forward, "ring"),
        one_way("reverse", Holds::Backward, "other"),
        BAND,
        aside,
        Element { name: "aside again", ..aside },
    ];
    Train::new(&[SET, second], &elements, "in", "out").expect("sound")
}

#[test]
fn where_two_ways_fit_neither_is_told() {
    // The output may turn either way while it pushes, and which it does is not given.
    let train = two_ways();
    let range = Range { name: "range", applied: &["aside"] };
    let flow = train.flow(&range, input(1000.0, -1.0)).expect("its own band");
    assert_eq!(flow.outcome, Outcome::Undecided { one_ways: vec!["forward", "reverse"] });
    assert_eq!([state(&flow, "forward"), state(&flow, "band")], [ElementState::Undecided, ElementState::Open]);
    assert!(flow.elements.iter().all(|element| element.load == Load::Unknown && element.slip.is_none()));
    assert!(flow.shafts.iter().all(|shaft| shaft.speed.is_none() && shaft.torque.is_none()));
    assert!(flow.members.iter().all(|member| member.torque.is_none() && member.power.is_none()));
    assert_eq!(flow.members.len(), 6);
    let driven = train.flow(&range, input(1000.0, 1.0)).expect("its own band");
    assert!(matches!(driven.outcome, Outcome::Free { .. }), "neither holds while the engine drives");
    // The band settles it: the ring is held, and the reverse one-way clutch overruns.
    let held = train.flow(&Range { name: "held", applied: &["band"] }, input(1000.0, -1.0)).expect("its own band");
    assert!(near(geared(&held), 3.0, 1.0));
    assert_eq!([state(&held, "reverse"), state(&held, "band")], [ElementState::Overrunning, ElementState::Applied]);
}

#[test]
fn numbers_that_are_none_break_nothing_and_pass_for_none() {
    let one_way = Element { kind: ElementKind::OneWay(Holds::Backward), ..BAND };
    let train = Train::new(&[SET], &[one_way], "in", "out").expect("sound");
    let range = Range { name: "range", applied: &[] };
    let flow = train.flow(&range, input(f64::NAN, 1.0)).expect("nothing to apply");
    assert!(flow.shafts[1].speed.is_none_or(|speed| speed.value().is_nan()));
    let flow = train.flow(&range, input(1000.0, f64::NAN)).expect("nothing to apply");
    assert!(flow.elements[0].load.most().is_none_or(|torque| torque.value().is_nan()));
}

#[test]
fn at_rest_the_torque_says_which_way_it_would_turn() {
    let one_way = Element { kind: ElementKind::OneWay(Holds::Backward), ..BAND };
    let train = Train::new(&[SET], &[one_way], "in", "out").expect("sound");
    let still = train.flow(&Range { name: "range", applied: &[] }, input(0.0, 5.0)).expect("nothing to apply");
    assert_eq!(still.ratio(), Some(ratio(3.0)), "as it would turning");
    assert_eq!(state(&still, "band"), ElementState::Locked);
    for holds in [Holds::Backward, Holds::Forward] {
        let one_way = Element { kind: ElementKind::OneWay(holds), ..BAND };
        let direct = Element { name: "direct", kind: ElementKind::Clutch, shaft: "out", to: "in" };
        let train = Train::new(&[SET], &[one_way, direct], "in", "out").expect("sound");
        for applied in [&[][..], &["direct"]] {
            let nothing = train.flow(&Range { name: "range", applied }, input(0.0, 0.0)).expect("its own clutch");
            assert!(!matches!(nothing.outcome, Outcome::Undecided { .. }), "{applied:?}: {:?}", nothing.outcome);
            assert_eq!(state(&nothing, "band"), ElementState::Unloaded, "nothing moves it and nothing pulls at it");
        }
    }
}

#[test]
fn two_one_way_clutches_in_a_row_are_not_suited_one_by_one() {
    // Direct by a one-way clutch would turn "d" forwards, and the two in a row from it to the band allow no such thing:
    // each could still turn as it likes, as "c" between them floats.
    let planetary =
        |name, pinions, sun, ring, carrier| PlanetarySet { name, pinions, ratio: ratio(1.2), sun, ring, carrier };
    let sets = [planetary("8", Pinions::Single, "b", "a", "f"), planetary("7", Pinions::Pair, "d", "a", "f")];
    let one_way = |name, shaft, to| Element { name, kind: ElementKind::OneWay(Holds::Forward), shaft, to };
    let band = Element { name: "3", shaft: "e", ..BAND };
    let elements = [one_way("1", "c", "e"), one_way("2", "d", "c"), band, one_way("4", "d", "f")];
    let train = Train::new(&sets, &elements, "a", "b").expect("sound");
    let flow = train.flow(&Range { name: "range", applied: &["3"] }, UNIT).expect("its own band");
    assert!(near(geared(&flow), 1.0 / 12.0, 1.0));
    let states = ["1", "2", "4"].map(|name| state(&flow, name));
    assert_eq!(states, [ElementState::Locked, ElementState::Locked, ElementState::Overrunning]);
}
