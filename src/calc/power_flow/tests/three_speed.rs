//! The three-speed family: every range against the handbook and the closed forms of `gear_set`.

use super::{Quantity, UNIT, assert_balanced, geared, input, load, near, ratio, speed, state};
use crate::calc::check::{Check, all};
use crate::calc::gear_set;
use crate::calc::power_flow::three_speed::{name::*, shaft::*, *};
use crate::calc::power_flow::*;
use proptest::prelude::*;

const ALL: [Range; 8] = [FIRST, FIRST_HELD, SECOND, SECOND_HELD, THIRD, REVERSE, BRAKE, NEUTRAL];

/// 2.48 and 1.48, as the handbook writes them.
fn family() -> Train {
    forward(Fitted::default())
}

fn forward(fitted: Fitted) -> Train {
    let trains = Trains::from_ratios(ratio(2.48), ratio(1.48), ratio(2.08), fitted).expect("one set");
    trains.of(&FIRST).clone()
}

fn flow(train: &Train, range: &Range, with: Input) -> Flow {
    let flow = train.flow(range, with).expect("a range of this family");
    assert_balanced(train, &flow, with);
    flow
}

#[test]
fn agrees_with_the_handbook_range_by_range() {
    let shop = "shop handbook, drum motion, reactions, brake and third gear";
    let train = family();
    let at = |range, torque| flow(&train, range, input(6500.0, torque));
    let (first, second, third) = (at(&FIRST, 500.0), at(&SECOND, 820.0), at(&THIRD, 500.0));
    let (reverse, brake) = (at(&REVERSE, 500.0), at(&BRAKE, 560.0 * 2.0));
    let row = |what, computed, published, within| Check { source: shop, what, computed, published, within };
    all(&[
        row("first, drum", speed(&first, SUN), -5460.0, 0.5),
        row("first, drum share", speed(&first, SUN) / 6500.0, -0.84, 0.0005),
        row("second, drum", speed(&second, SUN), 0.0, 1e-9),
        row("third, drum", speed(&third, SUN), 6500.0, 1e-6),
        row(
            "second, one-way clutch at coupling 1.10 and shock 2.0",
            load(&second, INTERMEDIATE_ONE_WAY) * 2.2,
            866.0,
            0.5,
        ),
        row("first, low one-way clutch", load(&first, LOW_ONE_WAY), 740.0, 1e-6),
        // The handbook rounds reverse to 2.08; first and second make it 2.0833.
        row("reverse, band", -load(&reverse, REAR_BAND), 1540.0, 2.0),
        row("brake, direct share", load(&brake, DIRECT) / 1120.0, 0.544, 0.0006),
        row("brake, forward share", load(&brake, FORWARD) / 1120.0, 0.456, 0.0006),
        row("brake, direct", load(&brake, DIRECT), 609.0, 0.5),
        row("brake, forward", load(&brake, FORWARD), 511.0, 0.5),
        row("brake, band against reverse", load(&brake, REAR_BAND), -1120.0, 1e-6),
        row("third, direct", load(&third, DIRECT), 162.0, 0.5),
        row("third, forward", load(&third, FORWARD), 338.0, 0.5),
        row("third, direct share", load(&third, DIRECT) / 500.0, 0.324, 0.0005),
        row("third, forward share", load(&third, FORWARD) / 500.0, 0.676, 0.0005),
    ]);
}

#[test]
fn every_one_way_clutch_stands_as_the_range_wants_it() {
    use ElementState::{Locked, Overrunning, Unloaded};
    let train = family();
    for (range, torque, intermediate, low) in [
        (FIRST, 1.0, Unloaded, Locked),
        (FIRST, -1.0, Unloaded, Unloaded),
        (FIRST_HELD, 1.0, Unloaded, Locked),
        (FIRST_HELD, -1.0, Unloaded, Unloaded),
        (SECOND, 1.0, Locked, Overrunning),
        (SECOND_HELD, -1.0, Unloaded, Overrunning),
        (THIRD, 1.0, Overrunning, Overrunning),
        (THIRD, -1.0, Overrunning, Overrunning),
        (REVERSE, 1.0, Unloaded, Unloaded),
        // The band takes it all against reverse: the one-way clutch is no help.
        (BRAKE, 1.0, Unloaded, Unloaded),
    ] {
        let flow = flow(&train, &range, input(3000.0, torque));
        assert_eq!(state(&flow, INTERMEDIATE_ONE_WAY), intermediate, "{} at {torque}", range.name);
        assert_eq!(state(&flow, LOW_ONE_WAY), low, "{} at {torque}", range.name);
    }
}

#[test]
fn the_engine_brakes_only_where_a_band_helps_the_one_way_clutch() {
    let train = family();
    let pushed = input(3000.0, -100.0);
    for (range, brakes) in
        [(FIRST, false), (FIRST_HELD, true), (SECOND, false), (SECOND_HELD, true), (THIRD, true), (REVERSE, true)]
    {
        let flow = flow(&train, &range, pushed);
        assert_eq!(flow.ratio().is_some(), brakes, "{}", range.name);
        if !brakes {
            assert!(matches!(flow.outcome, Outcome::Free { .. }), "{:?}", flow.outcome);
        }
    }
    let held = flow(&train, &FIRST_HELD, pushed);
    assert!((load(&held, REAR_BAND) + 148.0).abs() < 1e-6, "the band holds the other way round");
    // Without the front band second runs free as soon as the driver lifts.
    let bare = Fitted { front_band: false, ..Fitted::default() };
    let bare = forward(bare);
    assert_eq!(bare.flow(&SECOND_HELD, pushed), Err(Fault::NotApplied(FRONT_BAND)));
    // With plates straight on the drum it brakes in plain second.
    let direct = Fitted { intermediate_one_way: false, ..Fitted::default() };
    let direct = forward(direct);
    assert_eq!(flow(&direct, &SECOND, pushed).ratio().map(|ratio| (ratio.value() * 100.0).round()), Some(148.0));
}

#[test]
fn two_that_hold_the_same_are_named_and_each_must_hold_it_all() {
    let train = family();
    let first = flow(&train, &FIRST_HELD, UNIT);
    assert_eq!(first.shared, [[LOW_ONE_WAY, REAR_BAND]]);
    let second = flow(&train, &SECOND_HELD, UNIT);
    assert_eq!(second.shared, [[INTERMEDIATE, INTERMEDIATE_ONE_WAY, FRONT_BAND]]);
    for (flow, element, most) in [(&first, LOW_ONE_WAY, 1.48), (&first, REAR_BAND, 1.48), (&second, FRONT_BAND, 0.48)] {
        let found = flow.element(element).expect(element).load;
        assert!(matches!(found, Load::UpTo(torque) if near(torque.value(), most, 1.0)), "{element}: {found:?}");
    }
}

#[test]
fn what_locks_up_names_what_fights() {
    let train = family();
    let brake = flow(&train, &BRAKE, UNIT);
    assert_eq!(brake.outcome, Outcome::Stalled { fighting: vec![FORWARD, DIRECT, REAR_BAND] });
    assert!(brake.shafts.iter().all(|shaft| shaft.speed.is_none_or(|speed| speed.value() == 0.0)));
    let pushed = flow(&train, &BRAKE, input(3000.0, -1.0));
    assert!(matches!(pushed.outcome, Outcome::Stalled { .. }), "nor can it be pushed through: {:?}", pushed.outcome);
    // First and second at once, and third with the front band: ties of the kind a stuck valve makes.
    let first_and_second = Range { name: "tie", applied: &[FORWARD, INTERMEDIATE, REAR_BAND] };
    let tied = flow(&train, &first_and_second, UNIT);
    assert_eq!(
        tied.outcome,
        Outcome::Stalled { fighting: vec![FORWARD, INTERMEDIATE, INTERMEDIATE_ONE_WAY, REAR_BAND] }
    );
    let third_and_band = Range { name: "tie", applied: &[FORWARD, DIRECT, FRONT_BAND] };
    let tied = flow(&train, &third_and_band, UNIT);
    assert_eq!(tied.outcome, Outcome::Stalled { fighting: vec![DIRECT, FRONT_BAND] });
}

#[test]
fn on_a_hill_second_with_the_band_holds_the_vehicle() {
    // Rolling back turns the input backwards: the low one-way clutch locks against the band on the sun.
    let train = family();
    let back = flow(&train, &SECOND_HELD, input(0.0, -100.0));
    assert_eq!(back.outcome, Outcome::Stalled { fighting: vec![FORWARD, FRONT_BAND, LOW_ONE_WAY] });
    assert!(flow(&train, &SECOND_HELD, input(3000.0, -100.0)).ratio().is_some(), "rolling on, the engine brakes");
    assert!(flow(&train, &SECOND_HELD, input(0.0, 100.0)).ratio().is_some(), "and driven off it starts in second");
    // Rolling back against the engine plain second works as first: the sun turns forwards and runs away from its race.
    let against = flow(&train, &SECOND, input(-500.0, 100.0));
    assert!(near(geared(&against), 2.48, 1.0));
    assert_eq!(state(&against, LOW_ONE_WAY), ElementState::Locked);
    assert_eq!(state(&against, INTERMEDIATE_ONE_WAY), ElementState::Overrunning);
}

#[test]
fn what_is_left_free_is_counted_and_named() {
    let train = family();
    let neutral = flow(&train, &NEUTRAL, UNIT);
    assert_eq!(
        neutral.outcome,
        Outcome::Free { freedoms: 3, loose: vec![OUTPUT, SUN, FRONT_RING, REAR_CARRIER, RACE] }
    );
    assert!(neutral.elements.iter().all(|element| element.load == Load::Carries(Quantity::new(0.0))));
    let coasting = flow(&train, &FIRST, input(3000.0, -1.0));
    assert_eq!(coasting.outcome, Outcome::Free { freedoms: 2, loose: vec![OUTPUT, SUN, REAR_CARRIER, RACE] });
    let no_torque = flow(&train, &FIRST, input(3000.0, 0.0));
    assert!(matches!(no_torque.outcome, Outcome::Free { .. }), "nothing loads the one-way clutch");
    let no_torque = flow(&train, &THIRD, input(3000.0, 0.0));
    assert!(near(geared(&no_torque), 1.0, 1.0) && load(&no_torque, DIRECT) == 0.0, "third needs none");
}

#[test]
fn a_one_way_clutch_put_in_backwards_shows() {
    let (front, rear) = sets_from_ratios(ratio(2.48), ratio(1.48));
    let right = three_speed::train(front, rear, Fitted::default()).expect("sound");
    let turned: Vec<Element> = right
        .elements()
        .iter()
        .map(|element| match element.name {
            LOW_ONE_WAY => Element { kind: ElementKind::OneWay(Holds::Forward), ..*element },
            _ => *element,
        })
        .collect();
    let wrong = Train::new(right.sets(), &turned, INPUT, OUTPUT).expect("sound");
    assert!(matches!(flow(&wrong, &FIRST, UNIT).outcome, Outcome::Free { .. }), "no first gear");
    let second = flow(&wrong, &SECOND, UNIT);
    assert!(
        matches!(&second.outcome, Outcome::Stalled { fighting } if fighting.contains(&LOW_ONE_WAY)),
        "ties up in second"
    );
}

#[test]
fn ratios_of_another_kind_of_set_make_no_train() {
    let made = |first, second, reverse| {
        Trains::from_ratios(ratio(first), ratio(second), ratio(reverse), Fitted::default()).is_some()
    };
    assert!(made(2.48, 1.48, 2.08) && made(2.52, 1.52, 1.94) && made(2.45, 1.45, 2.20));
    assert!(!made(2.84, 1.48, 2.08), "digits swapped");
    assert!(!made(1.0, 1.0, 2.08), "no reduction");
    assert!(!made(2.48, f64::NAN, 2.08));
}

/// Rounded ratios disagree a little; each range takes from them what the sums of the shop handbook take.
#[test]
fn a_range_asks_what_the_two_ratios_that_decide_it_ask() {
    let (first, second, reverse) = (ratio(2.48), ratio(1.48), ratio(2.08));
    let trains = Trains::from_ratios(first, second, reverse, Fitted::default()).expect("one set");
    let of = |range: &Range| flow(trains.of(range), range, UNIT);
    let close =
        |what: &str, found: f64, by_sum: f64| assert!((found - by_sum).abs() < 1e-9, "{what}: {found}, {by_sum}");
    close("first", of(&FIRST).ratio().expect("driven").value(), 2.48);
    close("second", of(&SECOND).ratio().expect("driven").value(), 1.48);
    close("reverse", of(&REVERSE).ratio().expect("driven").value(), -2.08);
    let per_unit = |flow: &Flow, element| (load(flow, element) / UNIT.torque.value()).abs();
    close("low one-way clutch in first", per_unit(&of(&FIRST), LOW_ONE_WAY), 1.48);
    close("rear band in reverse", per_unit(&of(&REVERSE), REAR_BAND), 3.08);
    let brake = of(&BRAKE);
    close(
        "direct clutch on the brake",
        per_unit(&brake, DIRECT),
        gear_set::direct_share_on_brake(first, reverse).value(),
    );
    close("rear band on the brake", per_unit(&brake, REAR_BAND), 1.0);
    for (range, words) in
        [(&THIRD, "first and second"), (&REVERSE, "second and reverse"), (&BRAKE, "first and reverse")]
    {
        assert_eq!(Pair::of(range).words(), words, "{}", range.name);
    }
}

proptest! {
    #[test]
    fn agrees_with_the_closed_forms(front in 1.3..4.0f64, rear in 1.3..4.0f64, torque in 10.0..2000.0f64) {
        let train = three_speed::train(ratio(front), ratio(rear), Fitted::default()).expect("sound");
        let with = input(5000.0, torque);
        let flows = ALL.map(|range| flow(&train, &range, with));
        let [first, _, second, _, third, reverse, brake, _] = &flows;
        let (r1, r2, rr) = (geared(first), geared(second), -geared(reverse));
        prop_assert!(near(r1, 1.0 + 1.0 / front + rear / front, 1.0));
        prop_assert!(near(r2, 1.0 + 1.0 / front, 1.0) && near(rr, rear, 1.0) && near(geared(third), 1.0, 1.0));
        prop_assert!(near(r1, gear_set::first_from_others(ratio(r2), ratio(rr)).value(), 1.0), "Simpson identity");
        let (first_ratio, second_ratio, reverse_ratio) = (ratio(r1), ratio(r2), ratio(rr));
        let drum = |gear| gear_set::direct_drum_speed(ratio(gear), second_ratio, with.speed).value();
        prop_assert!(near(speed(first, SUN), drum(r1), 5000.0) && near(speed(third, SUN), drum(1.0), 5000.0));
        prop_assert!(near(load(first, LOW_ONE_WAY), gear_set::forward_reaction(first_ratio, with.torque).value(), torque));
        prop_assert!(near(load(second, INTERMEDIATE_ONE_WAY), gear_set::forward_reaction(second_ratio, with.torque).value(), torque));
        prop_assert!(near(-load(reverse, REAR_BAND), gear_set::reverse_reaction(reverse_ratio, with.torque).value(), torque));
        prop_assert!(near(load(third, DIRECT), torque * gear_set::direct_share_in_third(second_ratio).value(), torque));
        prop_assert!(near(load(brake, DIRECT), torque * gear_set::direct_share_on_brake(first_ratio, reverse_ratio).value(), torque));
        prop_assert!(near(load(brake, REAR_BAND), -torque, torque));
        let (front_again, rear_again) = sets_from_ratios(first_ratio, second_ratio);
        prop_assert!(near(front_again.value(), front, 1.0) && near(rear_again.value(), rear, 1.0));
    }
}
