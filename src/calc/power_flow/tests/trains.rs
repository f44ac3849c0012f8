//! Trains of several sets against published ratio tables and closed forms.

use super::{UNIT, assert_balanced, geared, input, load, near, ratio, speed, state};
use crate::calc::check::{Check, all};
use crate::calc::power_flow::three_speed::{self, Fitted, name::*, *};
use crate::calc::power_flow::*;
use proptest::prelude::*;

fn element(name: &'static str, kind: ElementKind, shaft: &'static str, to: &'static str) -> Element {
    Element { name, kind, shaft, to }
}

fn planetary(name: &'static str, pinions: Pinions, k: f64, [sun, ring, carrier]: [&'static str; 3]) -> PlanetarySet {
    PlanetarySet { name, pinions, ratio: ratio(k), sun, ring, carrier }
}

fn ratio_of(train: &Train, applied: &'static [&'static str]) -> f64 {
    let flow = train.flow(&Range { name: "range", applied }, UNIT).expect("its own elements");
    assert_balanced(train, &flow, UNIT);
    geared(&flow)
}

/// First, second, third and reverse of two sets on one sun.
fn simpson(front: f64, rear: f64) -> [f64; 4] {
    let train = three_speed::train(ratio(front), ratio(rear), Fitted::default()).expect("sound");
    [FIRST, SECOND, THIRD, REVERSE].map(|range| ratio_of(&train, range.applied))
}

/// First, second, third and reverse of two suns with one ring and one carrier: ring out, second sun held in second.
fn long_pinion(short_sun: f64, long_sun: f64, ring: f64) -> [f64; 4] {
    let sets = [
        planetary("by long pinions", Pinions::Single, ring / long_sun, ["long sun", "out", "carrier"]),
        planetary("by pairs", Pinions::Pair, ring / short_sun, ["short sun", "out", "carrier"]),
    ];
    let elements = [
        element("forward", ElementKind::Clutch, "short sun", "in"),
        element("high", ElementKind::Clutch, "long sun", "in"),
        element("second", ElementKind::Band, "long sun", CASE),
        element("reverse", ElementKind::Brake, "carrier", CASE),
        element("low", ElementKind::OneWay(Holds::Backward), "carrier", CASE),
    ];
    let train = Train::new(&sets, &elements, "in", "out").expect("sound");
    [&["forward"][..], &["forward", "second"], &["forward", "high"], &["high", "reverse"]]
        .map(|applied| ratio_of(&train, applied))
}

/// Low, direct and reverse of the two-speed kind: carrier out, sun of the pairs always driven.
fn two_speed(held_sun: f64, driven_sun: f64, ring: f64) -> [f64; 3] {
    let sets = [
        planetary("by long pinions", Pinions::Single, ring / held_sun, ["held sun", "ring", "out"]),
        planetary("by pairs", Pinions::Pair, ring / driven_sun, ["in", "ring", "out"]),
    ];
    let elements = [
        element("low", ElementKind::Band, "held sun", CASE),
        element("high", ElementKind::Clutch, "held sun", "in"),
        element("reverse", ElementKind::Brake, "ring", CASE),
    ];
    let train = Train::new(&sets, &elements, "in", "out").expect("sound");
    [&["low"][..], &["high"], &["reverse"]].map(|applied| ratio_of(&train, applied))
}

/// Two sets, each one's carrier on the other's ring, with four speeds forward.
fn cross_coupled(k1: f64, k2: f64) -> Train {
    let sets = [
        planetary("front", Pinions::Single, k1, ["front sun", "middle", "out"]),
        planetary("rear", Pinions::Single, k2, ["rear sun", "out", "middle"]),
    ];
    let elements = [
        element("forward", ElementKind::Clutch, "front sun", "in"),
        element("high", ElementKind::Clutch, "middle", "in"),
        element("reverse", ElementKind::Clutch, "rear sun", "in"),
        element("two-four", ElementKind::Band, "rear sun", CASE),
        element("low", ElementKind::Brake, "middle", CASE),
        element("low one-way", ElementKind::OneWay(Holds::Backward), "middle", CASE),
    ];
    Train::new(&sets, &elements, "in", "out").expect("sound")
}

const FOUR_SPEED: [&[&str]; 5] =
    [&["forward"], &["forward", "two-four"], &["forward", "high"], &["high", "two-four"], &["reverse", "low"]];

fn four_speed(k1: f64, k2: f64) -> [f64; 5] {
    let train = cross_coupled(k1, k2);
    FOUR_SPEED.map(|applied| ratio_of(&train, applied))
}

fn rows<const N: usize>(source: &'static str, computed: [f64; N], published: [f64; N], within: f64) -> Vec<Check> {
    let pairs = computed.into_iter().zip(published);
    pairs.map(|(computed, published)| Check { source, what: "ratio", computed, published, within }).collect()
}

#[test]
fn agrees_with_published_ratio_tables() {
    let table = "encyclopaedia table of a three-speed family";
    let from = |second: f64, reverse: f64| simpson(1.0 / (second - 1.0), reverse);
    let checks = [
        // Second and reverse make the sets; first has to follow.
        rows(table, from(1.479, 2.086), [2.479, 1.479, 1.0, -2.086], 0.0015),
        rows(table, from(1.562, 2.086), [2.733, 1.562, 1.0, -2.086], 0.0015),
        rows(table, from(1.500, 2.429), [2.714, 1.500, 1.0, -2.429], 0.0015),
        rows("public test suite, sun 30, ring 66", simpson(2.2, 2.2), [2.4545, 1.4545, 1.0, -2.2], 0.0005),
        rows("exercise, 57/28 and 80/37 teeth", simpson(57.0 / 28.0, 80.0 / 37.0), [2.553, 1.491, 1.0, -2.162], 0.0005),
        rows("tooth counts 30/62, derived", simpson(62.0 / 30.0, 62.0 / 30.0), [2.48, 1.48, 1.0, -2.07], 0.005),
        rows("tooth counts 34/66, derived", simpson(66.0 / 34.0, 66.0 / 34.0), [2.5152, 1.5152, 1.0, -1.9412], 0.0005),
        // First and reverse make the suns; second has to follow.
        rows(table, long_pinion(1.0 / 2.560, 0.5, 1.0), [2.560, 1.520, 1.0, -2.000], 0.0005),
        rows(table, long_pinion(1.0 / 2.286, 0.5, 1.0), [2.286, 1.429, 1.0, -2.000], 0.0005),
        rows("suns 23 and 28, ring 79, derived", two_speed(23.0, 28.0, 79.0), [1.8214, 1.0, -1.8214], 0.0005),
        rows("suns 26 and 34, ring 94, derived", two_speed(26.0, 34.0, 94.0), [1.7647, 1.0, -1.7647], 0.0005),
        rows(
            "cross-coupled, 35/17 and 39/17, derived",
            four_speed(35.0 / 17.0, 39.0 / 17.0),
            [3.0588, 1.6250, 1.0, 0.6964, -2.2941],
            0.0005,
        ),
        rows("the same, as published", four_speed(35.0 / 17.0, 39.0 / 17.0), [3.06, 1.63, 1.0, 0.70, -2.29], 0.005),
        // First and second make both sets; of the two copies of fourth, 0.677 and 0.667, the sets make the former.
        rows(
            "two public code files",
            four_speed(1.393, 1.393 / 0.450 - 1.0),
            [2.393, 1.450, 1.0, 0.677, -2.0956],
            0.0005,
        ),
    ];
    all(&checks.into_iter().flatten().collect::<Vec<_>>());
}

#[test]
fn an_overdrive_behind_the_box_is_one_more_set() {
    let box_of_three = three_speed::train(ratio(62.0 / 30.0), ratio(62.0 / 30.0), Fitted::default()).expect("sound");
    let mut sets = box_of_three.sets().to_vec();
    sets.push(planetary("overdrive", Pinions::Single, 3.0, ["overdrive sun", "tail", shaft::OUTPUT]));
    let mut elements = box_of_three.elements().to_vec();
    elements.push(element("overdrive brake", ElementKind::Brake, "overdrive sun", CASE));
    elements.push(element("overdrive one-way", ElementKind::OneWay(Holds::Backward), "tail", shaft::OUTPUT));
    let train = Train::new(&sets, &elements, shaft::INPUT, "tail").expect("sound");
    let over: &[&str] = &[FORWARD, DIRECT, INTERMEDIATE, "overdrive brake"];
    assert!(near(ratio_of(&train, over), 0.75, 1.0));
    assert!(near(ratio_of(&train, FIRST.applied), 2.0 + 30.0 / 62.0, 1.0));
    // Direct goes through the one-way clutch between two shafts, and lets go when the vehicle pushes.
    let third = |torque| train.flow(&THIRD, input(2000.0, torque)).expect("its own elements");
    assert_eq!(state(&third(100.0), "overdrive one-way"), ElementState::Locked);
    assert!(near(load(&third(100.0), "overdrive one-way"), 100.0, 100.0));
    assert!(matches!(third(-100.0).outcome, Outcome::Free { .. }));
    let over = train.flow(&Range { name: "over", applied: over }, input(2000.0, 100.0)).expect("its own elements");
    assert_eq!(state(&over, "overdrive one-way"), ElementState::Overrunning);
    assert!(near(
        over.element("overdrive one-way").and_then(|one| one.slip).expect("settled").value(),
        2000.0 / 3.0,
        1.0
    ));
    assert!(near(speed(&over, "tail"), 2000.0 / 0.75, 1.0));
}

#[test]
fn a_member_fixed_to_the_case_for_good_needs_no_element() {
    let reducer = [planetary("reducer", Pinions::Single, 3.0, ["in", CASE, "out"])];
    let train = Train::new(&reducer, &[], "in", "out").expect("sound");
    assert!(near(ratio_of(&train, &[]), 4.0, 1.0));
    let flow = train.flow(&Range { name: "on", applied: &[] }, input(400.0, 10.0)).expect("nothing to apply");
    let ring = flow.member("reducer", Member::Ring).expect("it is there");
    assert_eq!(ring.speed.map(|speed| speed.value()), Some(0.0));
    assert!(near(ring.torque.expect("known").value(), 30.0, 10.0), "the case holds the ring");
}

proptest! {
    #[test]
    fn the_closed_forms_of_each_family_hold(k1 in 1.3..4.0f64, k2 in 1.3..4.0f64) {
        let all_near = |found: &[f64], wanted: &[f64]| found.iter().zip(wanted).all(|(a, b)| near(*a, *b, 1.0));
        let found = four_speed(k1, k2);
        prop_assert!(all_near(&found, &[1.0 + k1, 1.0 + k1 / (1.0 + k2), 1.0, k2 / (1.0 + k2), -k2]), "{found:?}");
        // Sun A with the long pinions, B with the pairs, the ring larger than both.
        let (a, b, ring) = (k1, k2, k1 + k2 + 1.0);
        let found = two_speed(a, b, ring);
        prop_assert!(all_near(&found, &[1.0 + a / b, 1.0, 1.0 - ring / b]), "{found:?}");
        let found = long_pinion(b, a, ring);
        prop_assert!(all_near(&found, &[ring / b, (1.0 + a / b) / (1.0 + a / ring), 1.0, -ring / a]), "{found:?}");
    }

    #[test]
    fn torque_out_is_torque_in_and_what_the_case_holds(k1 in 1.3..4.0f64, k2 in 1.3..4.0f64, torque in 1.0..900.0f64) {
        let train = cross_coupled(k1, k2);
        for applied in FOUR_SPEED {
            let flow = train.flow(&Range { name: "range", applied }, input(900.0, torque)).expect("its own elements");
            let held: f64 = ["two-four", "low", "low one-way"].map(|name| load(&flow, name)).iter().sum();
            let out = -flow.shaft("out").and_then(|shaft| shaft.torque).expect("known").value();
            prop_assert!(near(out, torque * geared(&flow), torque) && near(out, torque + held, torque));
        }
    }
}
