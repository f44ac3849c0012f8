//! The calculations against published values: sixteen subjects, each value with its source beside it.
//!
//! One file a subject. A value is read from the named source or computed apart from this program; it is never what the
//! program gave on some earlier day.

mod check;
mod s01_threads;
mod s02_pipe_and_ports;
mod s03_inserts_and_clearance;
mod s04_torque_and_tension;
mod s05_planetary_sets;
mod s06_clutches;
mod s07_speedometer;
mod s08_tires;
mod s09_driveshaft;
mod s10_converter;
mod s11_quarter_mile;
mod s12_safety_gear;
mod s13_signatures;
mod s14_shafts_and_splines;
mod s15_end_play;
mod s16_fluid;

use check::Check;
use std::collections::BTreeSet;

/// Gives the checks of one subject.
type Checks = fn() -> Vec<Check>;

/// Subject, its checks, and how many there are at least: a check that gets lost is missed here.
const SUBJECTS: [(&str, Checks, usize); 16] = [
    ("1 threads", s01_threads::checks, 142),
    ("2 pipe and ports", s02_pipe_and_ports::checks, 85),
    ("3 inserts and clearance holes", s03_inserts_and_clearance::checks, 93),
    ("4 torque and tension", s04_torque_and_tension::checks, 67),
    ("5 planetary sets", s05_planetary_sets::checks, 14),
    ("6 clutches and bands", s06_clutches::checks, 29),
    ("7 speedometer", s07_speedometer::checks, 41),
    ("8 tires", s08_tires::checks, 36),
    ("9 driveshaft", s09_driveshaft::checks, 38),
    ("10 converter", s10_converter::checks, 72),
    ("11 quarter mile", s11_quarter_mile::checks, 12),
    ("12 safety gear", s12_safety_gear::checks, 17),
    ("13 signatures", s13_signatures::checks, 19),
    ("14 shafts and splines", s14_shafts_and_splines::checks, 33),
    ("15 end play", s15_end_play::checks, 12),
    ("16 fluid", s16_fluid::checks, 23),
];

#[test]
fn every_calculation_agrees_with_what_is_published() {
    let off: Vec<String> = SUBJECTS
        .iter()
        .flat_map(|(subject, checks, _)| {
            checks().into_iter().filter_map(move |check| check.off().map(|off| format!("{subject}: {off}")))
        })
        .collect();
    assert!(off.is_empty(), "{}", off.join("\n"));
}

#[test]
fn every_subject_is_held_against_its_sources_and_no_value_is_counted_twice() {
    let mut total = 0;
    for (subject, checks, least) in SUBJECTS {
        let checks = checks();
        println!("{subject}: {}", checks.len());
        assert!(checks.len() >= least, "{subject}: {} values, at least {least} are known", checks.len());
        let different: BTreeSet<_> = checks.iter().map(|check| (check.source.0, check.what.as_str())).collect();
        assert_eq!(different.len(), checks.len(), "{subject}: two values under one name");
        assert!(checks.iter().all(|check| !check.source.0.is_empty() && !check.what.is_empty()), "{subject}");
        total += checks.len();
    }
    println!("all: {total}");
    assert!(total >= 150, "{total} values");
}
