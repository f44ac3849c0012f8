//! The solver against closed forms, published tables and the balances it must keep.

mod balances;
mod faults;
mod sharing;
mod single_set;
mod three_speed;
mod trains;

use super::*;
use crate::quantity::{One, PoundFoot, Quantity};

/// Input at 1 lb-ft and 1,000 rpm.
pub(super) const UNIT: Input = input(1000.0, 1.0);

pub(super) const fn input(speed: f64, torque: f64) -> Input {
    Input { speed: Quantity::new(speed), torque: Quantity::new(torque) }
}

pub(super) fn ratio(value: f64) -> Quantity<One> {
    Quantity::new(value)
}

/// What an element carries, which has to be certain.
pub(super) fn load(flow: &Flow, element: &str) -> f64 {
    match flow.element(element).expect(element).load {
        Load::Carries(torque) => torque.value(),
        other => panic!("{element} in {}: {other:?}", flow.range),
    }
}

pub(super) fn state(flow: &Flow, element: &str) -> ElementState {
    flow.element(element).expect(element).state
}

/// Speed of a shaft, which has to be settled.
pub(super) fn speed(flow: &Flow, shaft: &str) -> f64 {
    flow.shaft(shaft).expect(shaft).speed.expect("settled").value()
}

pub(super) fn geared(flow: &Flow) -> f64 {
    flow.ratio().unwrap_or_else(|| panic!("{}: {:?}", flow.range, flow.outcome)).value()
}

/// Torque, up to rounding at the size of the torque that goes through.
pub(super) fn near(one: f64, other: f64, scale: f64) -> bool {
    (one - other).abs() <= 1e-9 * scale.abs().max(one.abs()).max(other.abs())
}

/// Fails unless every set, every shaft and the whole train balance to 1e-9 of what goes through.
pub(super) fn assert_balanced(train: &Train, flow: &Flow, input: Input) {
    let scale = input.torque.value().abs();
    let zero: Quantity<PoundFoot> = Quantity::new(0.0);
    let through = power(input.torque, input.speed).value().abs();
    for set in flow.members.chunks(3) {
        if let [Some(sun), Some(ring), Some(carrier)] = [set[0].torque, set[1].torque, set[2].torque] {
            let total = (sun + ring + carrier).value();
            assert!(
                total.abs() <= 1e-9 * (scale + ring.value().abs()),
                "{}: torques of {} add up to {total}",
                flow.range,
                set[0].set
            );
        }
        if let [Some(sun), Some(ring), Some(carrier)] = [set[0].power, set[1].power, set[2].power] {
            let total = (sun + ring + carrier).value();
            let most = sun.value().abs().max(ring.value().abs()).max(through);
            assert!(total.abs() <= 1e-9 * most, "{}: {} makes {total} kW", flow.range, set[0].set);
        }
    }
    for (set, said) in flow.members.chunks(3).zip(train.sets()) {
        if let [Some(sun), Some(ring), Some(carrier)] = [set[0].speed, set[1].speed, set[2].speed] {
            let k = if said.pinions == Pinions::Single { said.ratio.value() } else { -said.ratio.value() };
            let off = sun.value() + k * ring.value() - (1.0 + k) * carrier.value();
            let most = sun.value().abs().max(ring.value().abs()).max(carrier.value().abs()).max(input.speed.value());
            assert!(off.abs() <= 1e-9 * k.abs() * most, "{}: {} turns against Willis by {off}", flow.range, said.name);
        }
    }
    for shaft in &flow.shafts {
        let members = flow.members.iter().filter(|member| member.shaft == shaft.name);
        let Some(members) = members.map(|member| member.torque).sum_of(zero) else { continue };
        let held = train.elements().iter().zip(&flow.elements);
        let on = held.filter(|(element, _)| element.shaft == shaft.name || element.to == shaft.name);
        let on = on.map(|(element, now)| match now.load {
            Load::Carries(torque) if element.shaft == shaft.name => Some(torque),
            Load::Carries(torque) => Some(zero - torque),
            Load::UpTo(_) | Load::Unknown => None,
        });
        let Some(elements) = on.sum_of(zero) else { continue };
        let left = (shaft.torque.expect("known") + elements - members).value();
        assert!(
            left.abs() <= 1e-9 * (scale + members.value().abs()),
            "{}: {left} lb-ft left on {}",
            flow.range,
            shaft.name
        );
    }
    if let Outcome::Driven(_) = flow.outcome {
        let of = |shaft: &ShaftFlow| power(shaft.torque.expect("known"), shaft.speed.expect("settled")).value();
        let total = of(&flow.shafts[0]) + of(&flow.shafts[1]);
        assert!(total.abs() <= 1e-9 * through, "{}: {total} kW from nowhere", flow.range);
    }
}

/// A sum of which no part may be unknown.
trait SumOf {
    fn sum_of(self, zero: Quantity<PoundFoot>) -> Option<Quantity<PoundFoot>>;
}

impl<I: Iterator<Item = Option<Quantity<PoundFoot>>>> SumOf for I {
    fn sum_of(mut self, zero: Quantity<PoundFoot>) -> Option<Quantity<PoundFoot>> {
        self.try_fold(zero, |sum, part| Some(sum + part?))
    }
}
