//! What can be decided before any of it is done: a choice, or a part that is fitted in place of another.
//!
//! A wear mark, a reading, a trial or a hold point is found on the unit. Nobody can wish it better, so it is nothing to
//! try out, to keep for a customer to choose, or to plan into a pass.

use super::steps::{filler, is_work_done};
use crate::job::{FactId, Sheet};

/// Can a shop or its customer decide this fact beforehand?
pub fn can_be_decided(fact: FactId) -> bool {
    let said = fact.declaration();
    let decided = match said.sheet {
        Sheet::Spec => !FOUND.contains(&said.path) && !said.path.starts_with(RULEBOOK),
        Sheet::Outside | Sheet::Inside => PARTS.contains(&said.path),
        Sheet::Measured | Sheet::Paper => false,
    };
    decided && filler(fact).is_none() && !is_work_done(fact)
}

/// What the class asks for stands in its rulebook, whatever a shop would like.
const RULEBOOK: &str = "class_table.";

/// On the sheet of the use and the build, yet found by looking, trying or reading.
const FOUND: [&str; 4] = ["engine.idle_vacuum_inhg", "stick.clears_shield", "stick.matches", "valve_body.sheet"];

/// Seen from outside or inside, and settled by which part is fitted; not by what state it is in.
const PARTS: [&str; 46] = [
    "bell.kind",
    "bell.pattern",
    "bell.ring_holes",
    "case.pump_bosses",
    "case.variant",
    "converter.bolt_circle_in",
    "cooling.hose",
    "cooling.line_id_in",
    "direct.center_seal",
    "direct.frictions",
    "direct.springs",
    "direct.support_rings",
    "driveshaft.kind",
    "driveshaft.loop_fitted",
    "driveshaft.material",
    "flexplate.balance",
    "flexplate.bolt_circle_in",
    "flexplate.shield",
    "flexplate.spec",
    "flexplate.teeth",
    "forward.frictions",
    "intermediate.frictions",
    "one_way.race_shape",
    "output.end",
    "output.length",
    "output.o_ring",
    "output.shaft_layout",
    "output.spline",
    "output.tail",
    "output.tail_length",
    "pan.depth",
    "pan.filter_bolt",
    "pan.filter_tube",
    "pump.holes",
    "shield.kind",
    "shifter.kind",
    "shifter.lever_length",
    "shifter.pattern",
    "speedometer.drive",
    "speedometer.drive_teeth",
    "speedometer.driven_teeth",
    "stick.kind",
    "threads.linkage_nut",
    "threads.mount_bolt",
    "yoke.kind",
    "yoke.spline",
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{fact_ids, fact_named, random_job};
    use crate::plan::levers::levers;
    use std::collections::HashSet;

    fn decided(path: &str) -> bool {
        can_be_decided(fact_named(path).expect("a fact"))
    }

    #[test]
    fn a_choice_or_a_part_can_be_decided_and_nothing_that_is_found() {
        for path in ["valve_body.kind", "converter.stall_rpm", "use.raced", "yoke.spline", "pan.depth"] {
            assert!(decided(path), "{path}");
        }
        for path in [
            "one_way.free",
            "one_way.low",
            "one_way.race_state",
            "bench.rear_end_play_in",
            "bell.runout_in",
            "case.crack",
            "case.passages_mapped",
            "class_table.shield_always",
            "flexplate.expires",
            "order.final_wash",
            "paper.permanent_ack",
            "stick.matches",
        ] {
            assert!(!decided(path), "{path}");
        }
    }

    #[test]
    fn every_name_listed_is_a_fact_of_its_sheet() {
        for path in PARTS {
            let fact = fact_named(path).expect(path);
            assert!(matches!(fact.declaration().sheet, Sheet::Outside | Sheet::Inside), "{path}");
            assert!(can_be_decided(fact), "{path} is filled in by a step");
        }
        for path in FOUND {
            assert_eq!(fact_named(path).map(|fact| fact.declaration().sheet), Some(Sheet::Spec), "{path}");
        }
        assert!(fact_ids().any(|fact| fact.declaration().path.starts_with(RULEBOOK)));
    }

    /// What a lever only aims at has to be seen on the unit first.
    #[test]
    fn nothing_that_a_lever_only_aims_at_can_be_decided() {
        let mut seed = 21_u64;
        let mut next = || {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            seed >> 11
        };
        let mut aimed = HashSet::new();
        for job in (0..300).map(|_| random_job(&mut next)) {
            let sets = levers().iter().filter_map(|lever| lever.on(&job)).flatten();
            aimed.extend(sets.filter(|set| set.aimed).map(|set| set.fact));
        }
        let wrong: Vec<_> = aimed.iter().filter(|fact| can_be_decided(**fact)).collect();
        assert!(aimed.len() > 40 && wrong.is_empty(), "{wrong:?}");
    }
}
