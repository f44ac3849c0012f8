//! What the rules work out by closed form and what the pages show from the power flow are the same numbers.

use super::super::{Derived, Limits};
use crate::calc::gear_set::first_from_others;
use crate::calc::holding::{Demand, Need, holding, need, three_speed_duties};
use crate::calc::power_flow::three_speed::{Fitted, Trains, name};
use crate::job::{BrakeKind, Job, UseKind};
use crate::quantity::{One, PoundFoot, Quantity};

fn raced(torque: f64, second: f64, reverse: f64, stall: f64, brake: BrakeKind) -> Job {
    let mut job = Job::plain();
    job.usage.kind.set(UseKind::Drag);
    job.engine.torque_lbft.set(Quantity::new(torque));
    job.gears.first_ratio.set(first_from_others(Quantity::new(second), Quantity::new(reverse)));
    job.gears.second_ratio.set(Quantity::new(second));
    job.gears.reverse_ratio.set(Quantity::new(reverse));
    job.converter.stall_ratio.set(Quantity::new(stall));
    job.valve_body.brake.set(brake);
    job
}

fn known<T: Copy>(fact: Option<&T>) -> T {
    *fact.expect("the plain job knows it")
}

/// Most the direct clutch and the intermediate one-way clutch must hold, by power flow.
fn by_power_flow(job: &Job, limits: &Limits) -> [Quantity<PoundFoot>; 2] {
    let ratio = |fact: Option<&Quantity<One>>| known(fact);
    let gears = &job.gears;
    let [first, second, reverse] =
        [&gears.first_ratio, &gears.second_ratio, &gears.reverse_ratio].map(|fact| ratio(fact.value()));
    let trains = Trains::from_ratios(first, second, reverse, Fitted::default()).expect("one set");
    let demand = Demand {
        engine_torque: known(job.engine.torque_lbft.value()),
        input_speed: Quantity::new(6500.0),
        coupling: limits.coupling,
        shock: limits.shock(known(job.usage.kind.value())),
        stall_ratio: job.converter.stall_ratio.value().copied(),
    };
    let brake = known(job.valve_body.brake.value()) != BrakeKind::None;
    let holdings = holding(&trains, &demand, &three_speed_duties(Fitted::default(), brake)).expect("its own ranges");
    [name::DIRECT, name::INTERMEDIATE_ONE_WAY].map(|element| match need(&holdings, element) {
        Need::Torque { load, .. } => load,
        other => panic!("{element}: {other:?}"),
    })
}

#[test]
fn the_power_flow_asks_what_the_rules_ask() {
    let limits = Limits::default();
    for (torque, second, reverse, stall) in
        [(560.0, 1.48, 2.08, 2.0), (820.0, 1.52, 1.94, 1.8), (380.0, 1.45, 2.2, 2.2)]
    {
        for brake in [BrakeKind::None, BrakeKind::External] {
            let job = raced(torque, second, reverse, stall, brake);
            let derived = Derived::of(&job, &limits);
            let [direct, one_way] = by_power_flow(&job, &limits);
            let ruled = known(derived.direct_need.value());
            let off = (direct * limits.clutch_margin.value() - ruled).abs();
            assert!(off.value() < 1e-9 * ruled.value(), "direct clutch at {torque}, {brake:?}: {off} off {ruled}");
            let ruled = known(derived.one_way_load.value());
            assert!(
                (one_way - ruled).abs().value() < 1e-9 * ruled.value(),
                "one-way clutch at {torque}: {one_way}, {ruled}"
            );
        }
    }
}

#[test]
fn ratios_rounded_to_two_decimals_ask_the_same_as_well() {
    let limits = Limits::default();
    let mut job = raced(560.0, 1.48, 2.08, 2.0, BrakeKind::External);
    // 1.48 and 2.08 make 2.4784; on the sheet it says 2.48.
    job.gears.first_ratio.set(Quantity::new(2.48));
    let ruled = known(Derived::of(&job, &limits).direct_need.value());
    let [direct, _] = by_power_flow(&job, &limits);
    let share = direct * limits.clutch_margin.value() / ruled;
    assert!((share - 1.0).abs() < 1e-9, "{share}");
}
