//! What holds for every train: balance, linearity, scaling, and names that do not matter.

use super::{assert_balanced, input, ratio};
use crate::calc::power_flow::*;
use proptest::prelude::*;

const SHAFTS: [&str; 6] = ["a", "b", "c", "d", "e", "f"];
const OTHERS: [&str; 6] = ["f", "d", "a", "e", "c", "b"];
const NAMES: [&str; 8] = ["1", "2", "3", "4", "5", "6", "7", "8"];

/// A train of a few sets and elements on up to six shafts, as its parts.
#[derive(Clone, Debug)]
struct Parts {
    sets: Vec<(bool, f64, [usize; 3])>,
    elements: Vec<(u8, usize, usize)>,
    applied: u8,
}

impl Parts {
    /// The train with its shafts called by these names; `None` where the parts make none.
    fn train(&self, shafts: [&'static str; 6], backwards: bool) -> Option<Train> {
        let mut sets: Vec<PlanetarySet> = Vec::new();
        for (at, (pair, value, [sun, ring, carrier])) in self.sets.iter().enumerate() {
            let pinions = if *pair { Pinions::Pair } else { Pinions::Single };
            let [sun, ring, carrier] = [*sun, *ring, *carrier].map(|shaft| shafts[shaft]);
            sets.push(PlanetarySet { name: NAMES[7 - at], pinions, ratio: ratio(*value), sun, ring, carrier });
        }
        let mut elements: Vec<Element> = Vec::new();
        for (at, (kind, one, other)) in self.elements.iter().enumerate() {
            let (kind, to) = match kind {
                0 => (ElementKind::Clutch, shafts[*other]),
                1 => (ElementKind::Band, CASE),
                2 => (ElementKind::OneWay(Holds::Backward), CASE),
                _ => (ElementKind::OneWay(Holds::Forward), shafts[*other]),
            };
            elements.push(Element { name: NAMES[at], kind, shaft: shafts[*one], to });
        }
        if backwards {
            sets.reverse();
            elements.reverse();
        }
        Train::new(&sets, &elements, shafts[0], shafts[1]).ok()
    }

    fn flow(&self, train: &Train, with: Input) -> Flow {
        let applied: Vec<&'static str> = self
            .elements
            .iter()
            .zip(NAMES)
            .enumerate()
            .filter(|(at, ((kind, ..), _))| *kind < 2 && self.applied >> at & 1 == 1)
            .map(|(_, (_, name))| name)
            .collect();
        train
            .flow(&Range { name: "any", applied: Box::leak(applied.into_boxed_slice()) }, with)
            .expect("its own elements")
    }
}

prop_compose! {
    fn parts()(
        sets in prop::collection::vec((any::<bool>(), 1.2..4.0f64, [0..6usize, 0..6usize, 0..6usize]), 1..4),
        elements in prop::collection::vec((0..4u8, 0..6usize, 0..6usize), 1..5),
        applied in any::<u8>(),
    ) -> Parts {
        Parts { sets, elements, applied }
    }
}

/// The same but for rounding.
fn alike(one: Option<f64>, other: Option<f64>, scale: f64) -> bool {
    match (one, other) {
        (Some(one), Some(other)) => (one - other).abs() <= 1e-8 * scale.max(one.abs()),
        (one, other) => one == other,
    }
}

fn size(load: Load) -> Option<f64> {
    load.most().map(|torque| torque.value().abs())
}

proptest! {
    #![proptest_config(ProptestConfig { max_global_rejects: 200_000, cases: 400, ..ProptestConfig::default() })]

    #[test]
    fn every_train_balances_in_every_range(parts in parts(), torque in 1.0..1000.0f64, pushed in any::<bool>()) {
        let Some(train) = parts.train(SHAFTS, false) else { return Err(TestCaseError::reject("no train")) };
        let with = input(3000.0, if pushed { -torque } else { torque });
        assert_balanced(&train, &parts.flow(&train, with), with);
    }

    #[test]
    fn twice_the_torque_is_twice_every_torque_and_no_other_speed(parts in parts(), factor in 1.5..9.0f64) {
        let Some(train) = parts.train(SHAFTS, false) else { return Err(TestCaseError::reject("no train")) };
        let (once, more) = (parts.flow(&train, input(3000.0, 100.0)), parts.flow(&train, input(3000.0, 100.0 * factor)));
        prop_assert_eq!(&once.outcome, &more.outcome);
        for (one, other) in once.members.iter().zip(&more.members) {
            prop_assert_eq!(one.speed, other.speed);
            prop_assert!(alike(one.torque.map(|t| t.value() * factor), other.torque.map(|t| t.value()), 100.0));
        }
        for (one, other) in once.elements.iter().zip(&more.elements) {
            prop_assert_eq!((one.state, one.slip), (other.state, other.slip));
            prop_assert!(alike(size(one.load).map(|t| t * factor), size(other.load), 100.0));
        }
    }

    #[test]
    fn twice_the_speed_is_twice_every_speed_and_no_other_torque(parts in parts(), factor in 1.5..9.0f64) {
        let Some(train) = parts.train(SHAFTS, false) else { return Err(TestCaseError::reject("no train")) };
        let (once, more) = (parts.flow(&train, input(1000.0, 100.0)), parts.flow(&train, input(1000.0 * factor, 100.0)));
        prop_assert_eq!(&once.outcome, &more.outcome);
        for (one, other) in once.members.iter().zip(&more.members) {
            prop_assert_eq!(one.torque, other.torque);
            prop_assert!(alike(one.speed.map(|s| s.value() * factor), other.speed.map(|s| s.value()), 1000.0));
        }
    }

    #[test]
    fn neither_names_nor_order_change_anything(parts in parts()) {
        let made = parts.train(SHAFTS, false).zip(parts.train(OTHERS, true));
        let Some((train, renamed)) = made else { return Err(TestCaseError::reject("no train")) };
        let with = input(1000.0, 100.0);
        let (one, other) = (parts.flow(&train, with), parts.flow(&renamed, with));
        let there = |name: &str| OTHERS[SHAFTS.iter().position(|own| *own == name).expect(name)];
        prop_assert_eq!(one.ratio().is_some(), other.ratio().is_some());
        prop_assert_eq!(one.shared.len(), other.shared.len());
        for shaft in &one.shafts {
            let twin = other.shaft(there(shaft.name)).expect("renamed");
            prop_assert!(alike(shaft.speed.map(|s| s.value()), twin.speed.map(|s| s.value()), 1000.0), "{:?} {:?}", one, other);
            prop_assert!(alike(shaft.torque.map(|t| t.value()), twin.torque.map(|t| t.value()), 100.0));
        }
        for element in &one.elements {
            let twin = other.element(element.name).expect("same name");
            prop_assert_eq!(element.state, twin.state, "{:?} {:?}", one, other);
            prop_assert!(alike(size(element.load), size(twin.load), 100.0), "{:?} {:?}", element, twin);
        }
    }
}
