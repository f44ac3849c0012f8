//! One planetary set: Willis's equation, the four arrangements, published exercises.

use super::{assert_balanced, geared, input, near, ratio, speed};
use crate::calc::check::{Check, all};
use crate::calc::power_flow::*;
use crate::quantity::Quantity;
use proptest::prelude::*;

/// One set with one member held, another driven and the third driving out.
fn geared_set(k: f64, pinions: Pinions, driven: &'static str, held: &'static str, with: Input) -> Flow {
    let set = PlanetarySet { name: "set", pinions, ratio: ratio(k), sun: "sun", ring: "ring", carrier: "carrier" };
    let holds = Element { name: "brake", kind: ElementKind::Brake, shaft: held, to: CASE };
    let out = ["sun", "ring", "carrier"].into_iter().find(|name| *name != driven && *name != held).expect("a third");
    let train = Train::new(&[set], &[holds], driven, out).expect("sound");
    let flow = train.flow(&Range { name: "on", applied: &["brake"] }, with).expect("its own brake");
    assert_balanced(&train, &flow, with);
    flow
}

/// Input turns per output turn of a single-pinion set by its teeth.
fn single(sun: u32, ring: u32, driven: &'static str, held: &'static str) -> f64 {
    geared(&geared_set(Teeth { sun, ring }.ratio().value(), Pinions::Single, driven, held, super::UNIT))
}

#[test]
fn agrees_with_published_exercises() {
    let page = "encyclopaedic teaching page on planetary ratios, sun 30, ring 72";
    let bulletin = "trade bulletin of 1989, transmission arithmetic, sun 20, ring 34";
    let suite = "public test suite, sun 30, pinion 18, ring 66";
    let turned = |sun, ring, driven, held, rpm: f64, out| {
        let flow = geared_set(Teeth { sun, ring }.ratio().value(), Pinions::Single, driven, held, input(rpm, 1.0));
        speed(&flow, out)
    };
    let row = |source, what, computed, published, within| Check { source, what, computed, published, within };
    all(&[
        row(page, "sun in, ring held", single(30, 72, "sun", "ring"), 3.4, 1e-9),
        row(page, "carrier in, sun held", single(30, 72, "carrier", "sun"), 0.71, 0.005),
        row(page, "sun in, carrier held", single(30, 72, "sun", "carrier"), -2.4, 1e-9),
        row(
            "university program test run, sun 21, ring 108",
            "sun in, ring held",
            single(21, 108, "sun", "ring"),
            6.14286,
            5e-6,
        ),
        row(
            "solved homework, sun 23 fixed, arm at 100",
            "ring",
            turned(23, 55, "carrier", "sun", 100.0, "ring"),
            141.8,
            0.05,
        ),
        row(
            "machine-design text, exercise 20/30/80, sun at -100",
            "arm",
            turned(20, 80, "sun", "ring", -100.0, "carrier"),
            -20.0,
            1e-9,
        ),
        row(bulletin, "sun in, ring held", single(20, 34, "sun", "ring"), 2.7, 1e-9),
        row(bulletin, "ring in, sun held", single(20, 34, "ring", "sun"), 1.588, 0.0005),
        row(bulletin, "carrier in, sun held", single(20, 34, "carrier", "sun"), 0.63, 0.0005),
        row(bulletin, "carrier in, ring held", single(20, 34, "carrier", "ring"), 0.37, 0.0005),
        row(suite, "sun in, ring held", single(30, 66, "sun", "ring"), 3.2, 1e-9),
        row(suite, "ring in, sun held", single(30, 66, "ring", "sun"), 1.4545, 0.000_05),
        row(suite, "carrier in, sun held", single(30, 66, "carrier", "sun"), 0.6875, 1e-9),
        row(suite, "sun in, carrier held", single(30, 66, "sun", "carrier"), -2.2, 1e-9),
        row(
            "overdrive with ring three times the sun, derived",
            "carrier in, sun held",
            single(24, 72, "carrier", "sun"),
            0.75,
            1e-9,
        ),
    ]);
}

proptest! {
    #[test]
    fn every_arrangement_follows_its_closed_form(k in 1.1..6.0f64) {
        let of = |pinions, driven, held| geared(&geared_set(k, pinions, driven, held, super::UNIT));
        for (driven, held, single, pair) in [
            ("sun", "ring", 1.0 + k, 1.0 - k),
            ("ring", "sun", 1.0 + 1.0 / k, 1.0 - 1.0 / k),
            ("sun", "carrier", -k, k),
            ("ring", "carrier", -1.0 / k, 1.0 / k),
            ("carrier", "sun", k / (1.0 + k), k / (k - 1.0)),
            ("carrier", "ring", 1.0 / (1.0 + k), 1.0 / (1.0 - k)),
        ] {
            prop_assert!(near(of(Pinions::Single, driven, held), single, 1.0), "{driven} in, {held} held");
            prop_assert!(near(of(Pinions::Pair, driven, held), pair, 1.0), "pairs, {driven} in, {held} held");
        }
    }

    #[test]
    fn torques_stand_in_the_proportion_of_the_lever(k in 1.1..6.0f64, torque in 1.0..500.0f64) {
        let flow = geared_set(k, Pinions::Single, "sun", "ring", input(700.0, torque));
        let on = |member| flow.member("set", member).and_then(|member| member.torque).map(Quantity::value);
        prop_assert!(near(on(Member::Sun).expect("known"), torque, torque));
        prop_assert!(near(on(Member::Ring).expect("known"), k * torque, torque));
        prop_assert!(near(on(Member::Carrier).expect("known"), -(1.0 + k) * torque, torque));
        // The brake gives the ring what the set takes from it.
        prop_assert!(near(super::load(&flow, "brake"), k * torque, torque));
    }
}
