//! Elements that hold the same thing twice over: who is in which group, and what each may carry.

use super::{UNIT, geared, input, load, near, ratio, state};
use crate::calc::power_flow::three_speed::{name::*, shaft, *};
use crate::calc::power_flow::*;

const SPARE: Element = Element { name: "spare", kind: ElementKind::Band, shaft: shaft::REAR_CARRIER, to: CASE };
const SECOND_FORWARD: Element =
    Element { name: "second forward", kind: ElementKind::Clutch, shaft: shaft::FRONT_RING, to: shaft::INPUT };

/// The three-speed family with more elements than it has.
fn with(more: &[Element]) -> Train {
    let (front, rear) = sets_from_ratios(ratio(2.48), ratio(1.48));
    let plain = three_speed::train(front, rear, Fitted::default()).expect("sound");
    let elements: Vec<Element> = plain.elements().iter().chain(more).copied().collect();
    Train::new(plain.sets(), &elements, shaft::INPUT, shaft::OUTPUT).expect("sound")
}

fn up_to(flow: &Flow, element: &str) -> f64 {
    match flow.element(element).expect(element).load {
        Load::UpTo(torque) => torque.value(),
        other => panic!("{element}: {other:?}"),
    }
}

#[test]
fn two_groups_that_have_nothing_to_do_with_each_other_stay_apart() {
    let train = with(&[SECOND_FORWARD]);
    let range = Range { name: "first", applied: &[FORWARD, "second forward", REAR_BAND] };
    let flow = train.flow(&range, input(1000.0, 100.0)).expect("its own elements");
    let mut shared = flow.shared.clone();
    shared.sort();
    assert_eq!(shared, [vec![FORWARD, "second forward"], vec![LOW_ONE_WAY, REAR_BAND]]);
    for (element, most) in [(FORWARD, 100.0), ("second forward", 100.0), (LOW_ONE_WAY, 148.0), (REAR_BAND, 148.0)] {
        assert!(near(up_to(&flow, element), most, 100.0), "{element}");
    }
    assert!(near(geared(&flow), 2.48, 1.0));
    // The sets carry what they carry, whoever holds them.
    let sun = flow.member(set::FRONT, Member::Sun).and_then(|sun| sun.torque).expect("known");
    assert!(near(sun.value(), 48.0, 100.0));
}

#[test]
fn three_that_hold_one_thing_are_one_group_of_which_no_more_is_told() {
    let train = with(&[SPARE]);
    let range = Range { name: "first", applied: &[FORWARD, REAR_BAND, "spare"] };
    let flow = train.flow(&range, UNIT).expect("its own elements");
    assert_eq!(flow.shared, [[LOW_ONE_WAY, REAR_BAND, "spare"]]);
    assert_eq!(state(&flow, LOW_ONE_WAY), ElementState::Undecided, "it may help, it may not");
    assert!(
        [LOW_ONE_WAY, REAR_BAND, "spare"].iter().all(|name| flow.element(name).map(|e| e.load) == Some(Load::Unknown))
    );
    assert!(flow.element("spare").and_then(|spare| spare.load.most()).is_none());
    assert!(near(load(&flow, FORWARD), 1.0, 1.0) && near(geared(&flow), 2.48, 1.0), "the rest is as certain as ever");
}

#[test]
fn a_one_way_clutch_beside_a_band_helps_only_the_way_it_holds() {
    let train = with(&[]);
    let driven = train.flow(&FIRST_HELD, input(1000.0, 100.0)).expect("its own elements");
    assert!(near(up_to(&driven, REAR_BAND), 148.0, 100.0) && near(up_to(&driven, LOW_ONE_WAY), 148.0, 100.0));
    let most = driven.element(REAR_BAND).and_then(|band| band.load.most()).expect("told");
    assert!(near(most.value(), 148.0, 100.0), "a band has to be able to hold it alone: {most}");
    let pushed = train.flow(&FIRST_HELD, input(1000.0, -100.0)).expect("its own elements");
    assert!(near(load(&pushed, REAR_BAND), -148.0, 100.0) && load(&pushed, LOW_ONE_WAY) == 0.0);
    assert!(pushed.shared.is_empty());
    // Three in a ring: the band on one side, plates and one-way clutch in a row on the other.
    let second = train.flow(&SECOND_HELD, input(1000.0, 100.0)).expect("its own elements");
    for element in [INTERMEDIATE, INTERMEDIATE_ONE_WAY, FRONT_BAND] {
        assert!(near(up_to(&second, element), 48.0, 100.0), "{element}");
    }
    let through = second.element(INTERMEDIATE_ONE_WAY).expect("it is there");
    assert_eq!(
        (through.power, through.slip),
        (None, Some(crate::quantity::Quantity::new(0.0))),
        "what is shared is not told"
    );
}

/// One set of which one-way clutches and a band may keep the ring.
fn kept_ring(pinions: Pinions, one_ways: usize, holds: Holds) -> Train {
    let set = PlanetarySet { name: "set", pinions, ratio: ratio(2.0), sun: "in", ring: "ring", carrier: "out" };
    let kind = ElementKind::OneWay(holds);
    let mut elements = vec![Element { name: "band", kind: ElementKind::Band, shaft: "ring", to: CASE }];
    elements.extend(SIDE_BY_SIDE.iter().take(one_ways).map(|name| Element { name, kind, shaft: "ring", to: CASE }));
    Train::new(&[set], &elements, "in", "out").expect("sound")
}

const SIDE_BY_SIDE: [&str; 3] = ["left", "middle", "right"];

#[test]
fn a_one_way_clutch_that_holds_forwards_shares_with_its_band_as_one_that_holds_backwards() {
    // Meshing pairs of pinions push the ring forwards: what is to keep it holds that way.
    let held = Range { name: "held", applied: &["band"] };
    for (pinions, holds, most) in [(Pinions::Single, Holds::Backward, 200.0), (Pinions::Pair, Holds::Forward, -200.0)] {
        let train = kept_ring(pinions, 1, holds);
        let driven = train.flow(&held, input(1000.0, 100.0)).expect("its own band");
        assert!(near(up_to(&driven, "band"), most, 100.0) && near(up_to(&driven, "left"), most, 100.0), "{holds:?}");
        let pushed = train.flow(&held, input(1000.0, -100.0)).expect("its own band");
        assert!(near(load(&pushed, "band"), -most, 100.0) && load(&pushed, "left") == 0.0, "{holds:?}");
    }
}

#[test]
fn one_way_clutches_side_by_side_hold_together_and_let_go_together() {
    let alone = Range { name: "alone", applied: &[] };
    for count in 1..=3 {
        let holding = kept_ring(Pinions::Single, count, Holds::Backward).flow(&alone, UNIT).expect("nothing to apply");
        assert!(near(geared(&holding), 3.0, 1.0), "{count} hold");
        assert!(SIDE_BY_SIDE.iter().take(count).all(|name| state(&holding, name) != ElementState::Unloaded), "{count}");
        let letting = kept_ring(Pinions::Single, count, Holds::Forward).flow(&alone, UNIT).expect("nothing to apply");
        assert!(matches!(letting.outcome, Outcome::Free { .. }), "{count} let go: {:?}", letting.outcome);
    }
}

#[test]
fn two_sets_side_by_side_share_what_no_element_settles() {
    let one = |name| PlanetarySet {
        name,
        pinions: Pinions::Single,
        ratio: ratio(2.0),
        sun: "in",
        ring: "ring",
        carrier: "out",
    };
    let band = Element { name: "band", kind: ElementKind::Band, shaft: "ring", to: CASE };
    let train = Train::new(&[one("left"), one("right")], &[band], "in", "out").expect("sound");
    let flow = train.flow(&Range { name: "low", applied: &["band"] }, UNIT).expect("its own band");
    assert!(near(geared(&flow), 3.0, 1.0) && near(load(&flow, "band"), 2.0, 1.0));
    assert!(flow.members.iter().all(|member| member.torque.is_none() && member.speed.is_some()));
    assert!(flow.shared.is_empty(), "no element shares with another");
}

#[test]
fn two_that_share_nothing_carry_nothing() {
    let train = with(&[Element { shaft: shaft::RACE, ..SPARE }]);
    let third = Range { name: "third", applied: &[FORWARD, DIRECT, INTERMEDIATE, "spare"] };
    let flow = train.flow(&third, input(1000.0, 100.0)).expect("its own elements");
    assert_eq!(flow.shared, [[INTERMEDIATE, "spare"]]);
    assert_eq!([load(&flow, INTERMEDIATE), load(&flow, "spare")], [0.0, 0.0], "the race they hold is not pulled at");
}

#[test]
fn power_goes_where_the_torque_goes() {
    let train = with(&[]);
    let flow = train.flow(&THIRD, input(3000.0, 500.0)).expect("its own elements");
    let through = |name| flow.element(name).and_then(|element| element.power).expect("known").value();
    let all = power(crate::quantity::Quantity::new(500.0), crate::quantity::Quantity::new(3000.0)).value();
    assert!(near(through(FORWARD) + through(DIRECT), all, all), "two paths carry it all");
    assert!(near(through(DIRECT) / all, 0.48 / 1.48, 1.0));
    assert!(
        [INTERMEDIATE, INTERMEDIATE_ONE_WAY, FRONT_BAND, LOW_ONE_WAY, REAR_BAND]
            .iter()
            .all(|name| through(name) == 0.0)
    );
    // 500 lb-ft at 3,000 rpm: 285.6 hp of 550 lbf·ft/s, 212.98 kW (computed apart).
    assert!((all - 212.97).abs() < 0.02, "{all}");
    let first = train.flow(&FIRST, input(3000.0, 500.0)).expect("its own elements");
    let into = |set, member| first.member(set, member).and_then(|member| member.power).expect("known").value();
    assert!(near(into(set::FRONT, Member::Ring), all, all), "all of it enters by the front ring");
    let given = into(set::FRONT, Member::Carrier) + into(set::REAR, Member::Ring);
    assert!(near(given, -all, all), "and leaves by the two members on the output");
}
