//! Loads of a build against the handbook's worked numbers and the closed forms behind the rules.

use super::*;
use crate::calc::check::{Check, all, same};
use crate::calc::power_flow::three_speed::{Trains, name::*, shaft};
use crate::calc::{clutch, gear_set, one_way};
use proptest::prelude::*;

/// The shop's own margin unless it moves it.
const MARGIN: f64 = 1.25;

fn number<U>(value: f64) -> Quantity<U> {
    Quantity::new(value)
}

fn demand(torque: f64, coupling: f64, shock: f64, stall: Option<f64>) -> Demand {
    Demand {
        engine_torque: number(torque),
        input_speed: number(6500.0),
        coupling: number(coupling),
        shock: number(shock),
        stall_ratio: stall.map(Quantity::new),
    }
}

fn build(first: f64, second: f64, reverse: f64, demand: &Demand, trans_brake: bool) -> Vec<Holding> {
    let fitted = Fitted::default();
    let trains = Trains::from_ratios(number(first), number(second), number(reverse), fitted).expect("one set");
    holding(&trains, demand, &three_speed_duties(fitted, trans_brake)).expect("its own ranges")
}

fn in_range(holdings: &[Holding], range: &str, element: &str) -> HeldLoad {
    let of_range = holdings.iter().find(|holding| holding.flow.range == range).expect(range);
    *of_range.loads.iter().find(|held| held.element == element).expect(element)
}

fn load(holdings: &[Holding], range: &str, element: &str) -> f64 {
    in_range(holdings, range, element).load.expect("known").value()
}

#[test]
fn agrees_with_the_handbook() {
    let source = "shop handbook, sums 7 to 13";
    let hard = build(2.48, 1.48, 2.08, &demand(820.0, 1.10, 2.0, None), false);
    let plain = build(2.48, 1.48, 2.08, &demand(500.0, 1.0, 1.0, Some(1.0)), false);
    let brake = build(2.48, 1.48, 2.08, &demand(560.0, 1.10, 2.5, Some(2.0)), true);
    let (first, third, held) = ("first", "third", "trans brake");
    let drum = |range: &str| {
        let of_range = plain.iter().find(|holding| holding.flow.range == range).expect(range);
        of_range.flow.shaft(shaft::SUN).and_then(|drum| drum.speed).expect("settled").value()
    };
    let row = |what, computed, published, within| Check { source, what, computed, published, within };
    let Need::Torque { range, load: direct } = need(&brake, DIRECT) else { panic!("the direct clutch is loaded") };
    assert_eq!(range, held);
    let joined = number(1401.0);
    all(&[
        row("8: one-way clutch at 820, shock 2.0", load(&hard, "second", INTERMEDIATE_ONE_WAY), 866.0, 0.5),
        row(
            "8: against 450",
            1.0 / margin(number(450.0), number(load(&hard, "second", INTERMEDIATE_ONE_WAY))).value(),
            1.92,
            0.005,
        ),
        row("9: low one-way clutch in first", load(&plain, first, LOW_ONE_WAY), 740.0, 1e-6),
        row("9: rear band in reverse", load(&plain, "reverse", REAR_BAND), 1540.0, 2.0),
        row("10: direct on the brake", load(&brake, held, DIRECT), 609.0, 0.5),
        row("10: forward on the brake", load(&brake, held, FORWARD), 511.0, 0.5),
        row("10: band on the brake", load(&brake, held, REAR_BAND), 1120.0, 1e-6),
        row("11: direct in third", load(&plain, third, DIRECT), 162.0, 0.5),
        row("11: forward in third", load(&plain, third, FORWARD), 338.0, 0.5),
        row("13: need of the direct clutch with margin", direct.value() * MARGIN, 761.0, 0.5),
        row("13: margin of the joined feed", margin(joined, direct).value(), 2.30, 0.005),
        row("7: drum in first", drum(first), -5460.0, 0.5),
        row("7: drum in second", drum("second"), 0.0, 1e-9),
        row("7: drum in third", drum(third), 6500.0, 1e-6),
    ]);
}

#[test]
fn only_a_one_way_clutch_takes_the_jolt_and_only_as_a_range_takes_hold() {
    let holdings = build(2.48, 1.48, 2.08, &demand(400.0, 1.1, 2.5, Some(2.0)), true);
    for holding in &holdings {
        for held in &holding.loads {
            let second = holding.flow.range.starts_with("second");
            let jolted = second && held.element == INTERMEDIATE_ONE_WAY;
            assert_eq!(held.jolt.value(), if jolted { 2.5 } else { 1.0 }, "{} {}", holding.flow.range, held.element);
            let times = match holding.flow.range {
                "reverse" => 1.0,
                "third" => 1.1,
                _ if second => 1.1,
                _ => 2.0,
            };
            assert_eq!(held.multiplied.map(Quantity::value), Some(times), "{}", holding.flow.range);
            let product = 400.0
                * held.share.expect("known").value()
                * held.multiplied.expect("known").value()
                * held.jolt.value();
            assert!(same(held.load.expect("known").value(), product));
        }
    }
    let launch = in_range(&holdings, "first", LOW_ONE_WAY);
    assert!((launch.load.expect("known").value() - 1.48 * 400.0 * 2.0).abs() < 1e-6, "on launch");
    let alone = in_range(&holdings, "first, held by the band", LOW_ONE_WAY);
    assert_eq!((alone.helped, launch.helped), (true, false));
    assert!(
        same(alone.load.expect("known").value(), launch.load.expect("known").value()),
        "must hold it alone as well"
    );
}

#[test]
fn every_element_that_carries_stands_in_its_range_and_no_other() {
    let holdings = build(2.48, 1.48, 2.08, &demand(400.0, 1.1, 2.0, Some(2.0)), true);
    let carried: Vec<(&str, Vec<&str>)> = holdings
        .iter()
        .map(|holding| (holding.flow.range, holding.loads.iter().map(|held| held.element).collect()))
        .collect();
    assert_eq!(
        carried,
        [
            ("first", vec![FORWARD, LOW_ONE_WAY]),
            ("first, held by the band", vec![FORWARD, LOW_ONE_WAY, REAR_BAND]),
            ("second", vec![FORWARD, INTERMEDIATE, INTERMEDIATE_ONE_WAY]),
            ("second, held by the band", vec![FORWARD, INTERMEDIATE, INTERMEDIATE_ONE_WAY, FRONT_BAND]),
            ("third", vec![FORWARD, DIRECT]),
            ("reverse", vec![DIRECT, REAR_BAND]),
            ("trans brake", vec![FORWARD, DIRECT, REAR_BAND]),
        ]
    );
    let no_band = three_speed_duties(Fitted { front_band: false, ..Fitted::default() }, false);
    assert!(no_band.iter().all(|duty| duty.range != three_speed::SECOND_HELD && duty.range != three_speed::BRAKE));
    assert_eq!(no_band.len(), 5);
}

#[test]
fn an_unknown_stall_ratio_is_no_light_load() {
    let unknown = build(2.48, 1.48, 2.08, &demand(400.0, 1.1, 2.0, None), false);
    assert_eq!(in_range(&unknown, "first", LOW_ONE_WAY).load, None);
    assert_eq!(need(&unknown, LOW_ONE_WAY), Need::Unknown { range: "first" });
    let brake = build(2.48, 1.48, 2.08, &demand(400.0, 1.1, 2.0, None), true);
    assert_eq!(need(&brake, DIRECT), Need::Unknown { range: "trans brake" }, "third is known, the brake may be more");
    assert!(matches!(need(&unknown, DIRECT), Need::Torque { range: "third", .. }));
    assert!(matches!(need(&unknown, INTERMEDIATE_ONE_WAY), Need::Torque { range: "second", .. }));
    assert_eq!(need(&unknown, "belt"), Need::Nothing);
    let known = build(2.48, 1.48, 2.08, &demand(400.0, 1.1, 2.0, Some(2.0)), false);
    assert!(matches!(need(&known, FORWARD), Need::Torque { range: "first", load } if same(load.value(), 800.0)));
    assert!(matches!(need(&known, REAR_BAND), Need::Torque { range: "first, held by the band", .. }));
    assert!(load(&known, "reverse", DIRECT) > load(&known, "third", DIRECT), "backing up has its own capacity");
}

proptest! {
    #[test]
    fn the_closed_forms_behind_the_rules_agree(
        second in 1.3..1.9f64, reverse in 1.6..2.6f64, torque in 50.0..2000.0f64,
        coupling in 1.0..1.4f64, shock in 1.0..3.0f64, stall in 1.5..2.6f64,
    ) {
        let first = gear_set::first_from_others(number(second), number(reverse)).value();
        let holdings = build(first, second, reverse, &demand(torque, coupling, shock, Some(stall)), true);
        let (second_ratio, torque) = (number(second), number(torque));
        let one_way = one_way::second_gear_load(second_ratio, torque, number(coupling), number(shock));
        prop_assert!(same(load(&holdings, "second", INTERMEDIATE_ONE_WAY), one_way.value()));
        let share = gear_set::direct_share_on_brake(number(first), number(reverse));
        let on_brake = clutch::direct_load_on_brake(share, torque, number(stall));
        prop_assert!(same(load(&holdings, "trans brake", DIRECT), on_brake.value()));
        let third = clutch::direct_need(second_ratio, torque, number(coupling), None, number(1.0));
        prop_assert!(same(load(&holdings, "third", DIRECT), third.value()));
        let both = clutch::direct_need(second_ratio, torque, number(coupling), Some(on_brake), number(MARGIN)).value();
        let found = load(&holdings, "trans brake", DIRECT).max(load(&holdings, "third", DIRECT));
        prop_assert!(same(found * MARGIN, both));
    }
}
