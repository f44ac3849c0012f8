//! What each measurement is held against, once more: from the shop's own sheet, not from the code.

use super::*;
use crate::rules::Known;

/// A job of which everything is known that a limit follows from.
fn measured() -> Job {
    let mut job = Job::plain();
    job.valve_body.kind.set(ValveBodyKind::Auto);
    job.forward.frictions.set(4);
    job.direct.frictions.set(6);
    job.intermediate.frictions.set(3);
    job.flexplate.pilot_recess_in.set(Quantity::new(0.25));
    job.converter.spacer_in.set(Quantity::new(0.06));
    job.driveshaft.front_angle_deg.set(Quantity::new(2.0));
    job.engine.torque_lbft.set(Quantity::new(520.0));
    job
}

fn band(name: &str, job: &Job) -> Band {
    let one = measurement_named(name).expect("a measurement");
    match (one.band)(job, &Limits::default()) {
        Known::Yes(band, _) => band,
        Known::Waits(facts) => panic!("{name} waits for {facts:?}"),
    }
}

fn told(name: &str, job: &Job) -> String {
    let scale = measurement_named(name).expect("a measurement").scale;
    let edges = band(name, job).told(scale).into_iter().map(|(edge, value, _)| format!("{edge} {value}"));
    edges.collect::<Vec<_>>().join("; ")
}

/// Shop handbook, measurement sheet (common practice and memory, as its marks say); worked out by hand where a limit
/// follows from the job: 6, 10 and 20 thousandths a friction; recess, spacers and an eighth; 1900 × √(520 / 380) = 2223
/// and 15 % of it, to the nearest ten.
#[test]
fn every_measurement_is_held_against_what_the_sheet_of_the_shop_says() {
    let sheet = [
        ("pump-face-clearance", "At least 0.0008 in; At most 0.0035 in"),
        ("pump-bushing-clearance", "At least 0.002 in; At most 0.005 in"),
        ("yoke-clearance", "At least 0.0015 in; Aim 0.003 in; At most 0.006 in"),
        ("pinion-play", "At least 0.009 in; At most 0.024 in"),
        ("carrier-float", ""),
        ("valve-body-face", "At most 0.003 in"),
        ("converter-end-play", "At most 0.024 in"),
        ("solenoid-room", "At least 0.500 in"),
        (
            "rear-end-play",
            "At least 0.005 in; Wanted from 0.007 in; Aim 0.010 in; Wanted to 0.019 in; At most 0.025 in",
        ),
        ("intermediate-clearance", "At least 0.018 in; Aim 0.030 in; At most 0.060 in"),
        ("direct-clearance", "At least 0.036 in; Aim 0.060 in; At most 0.120 in"),
        ("forward-clearance", "At least 0.024 in; Aim 0.040 in; At most 0.080 in"),
        ("needle-kit-stack", ""),
        ("front-end-play", "At least 0.003 in; Aim 0.012 in; At most 0.024 in"),
        ("rear-band-pin", ""),
        ("torque-support", "At least 20.7 lb-ft; Aim 23 lb-ft; At most 25.3 lb-ft"),
        ("torque-pump", "At least 16.2 lb-ft; Aim 18 lb-ft; At most 19.8 lb-ft"),
        ("torque-valve-body", "At least 7.2 lb-ft; Aim 8 lb-ft; At most 8.8 lb-ft"),
        ("torque-tail", "At least 20.7 lb-ft; Aim 23 lb-ft; At most 25.3 lb-ft"),
        ("torque-governor", "At least 16.2 lb-ft; Aim 18 lb-ft; At most 19.8 lb-ft"),
        ("torque-modulator", "At least 17.1 lb-ft; Aim 19 lb-ft; At most 20.9 lb-ft"),
        ("torque-pan", "At least 10.8 lb-ft; Aim 12 lb-ft; At most 13.2 lb-ft"),
        ("torque-bell", "At least 31.5 lb-ft; Aim 35 lb-ft; At most 38.5 lb-ft"),
        ("torque-converter", "At least 31.5 lb-ft; Aim 35 lb-ft; At most 38.5 lb-ft"),
        ("crank-end-play", "At most 0.010 in"),
        ("flexplate-runout", "At most 0.010 in"),
        ("bell-runout", "Wanted to 0.005 in; At most 0.010 in"),
        ("pilot-recess", ""),
        ("converter-spacers", ""),
        ("pilot-length", "At least 0.435 in"),
        (
            "converter-gap",
            "At least 0.0625 in; Wanted from 0.125 in; Aim 0.1562 in; Wanted to 0.1875 in; At most 0.250 in",
        ),
        ("yoke-droop", "At least 2.000 in"),
        ("yoke-ride", "At least 0.750 in; At most 1.000 in"),
        ("yoke-bump", "At least 0.250 in"),
        ("front-joint-angle", "At most 3°"),
        ("rear-joint-angle", "At least 1°; At most 3°"),
        ("pressure-neutral-idle", "At least 55 psi; At most 95 psi"),
        ("pressure-drive-idle", "At least 55 psi; At most 95 psi"),
        ("pressure-drive-full", "At least 140 psi; At most 170 psi"),
        ("pressure-held-idle", "At least 130 psi; At most 170 psi"),
        ("pressure-reverse-idle", "At least 95 psi; At most 150 psi"),
        ("pressure-reverse-full", "At least 200 psi; At most 270 psi"),
        ("stall-speed", "At least 1890 rpm; At most 2560 rpm"),
        ("brake-volts", "At least 11.5 V"),
        ("cooler-flow", "At most 20 s/qt"),
    ];
    let job = measured();
    let names: Vec<_> = measurements().map(|one| one.name).collect();
    assert_eq!(names, sheet.map(|(name, _)| name), "each stands here, in the order of the sheet");
    for (name, says) in sheet {
        assert_eq!(told(name, &job), says, "{name}");
    }
}

#[test]
fn behind_a_valve_body_shifted_by_hand_every_pressure_has_the_same_window() {
    let mut job = measured();
    job.valve_body.kind.set(ValveBodyKind::Manual);
    for one in measurements().filter(|one| one.scale == Scale::Pressure) {
        assert_eq!(told(one.name, &job), "At least 140 psi; At most 230 psi", "{}", one.name);
    }
}

#[test]
fn the_rear_joint_may_differ_from_the_front_one_but_not_run_beyond_the_limit() {
    let mut job = measured();
    for (front, says) in [
        (0.4, "At least 0°; At most 1.4°"),
        (1.5, "At least 0.5°; At most 2.5°"),
        (2.0, "At least 1°; At most 3°"),
        (2.5, "At least 1.5°; At most 3°"),
    ] {
        job.driveshaft.front_angle_deg.set(Quantity::new(front));
        assert_eq!(told("rear-joint-angle", &job), says, "with {front} in front");
    }
    // The mark says where the limit comes from: the joint in front below the limit of its own, that limit above it.
    let mark = |name: &str, job: &Job, edge: fn(Band) -> Option<Edge>| edge(band(name, job)).map(|edge| edge.mark);
    job.driveshaft.front_angle_deg.set(Quantity::new(1.5));
    let derived = Some("1° from the front joint's 1.5°: common practice".to_owned());
    assert_eq!(mark("rear-joint-angle", &job, |band| band.most), derived);
    assert_eq!(mark("rear-joint-angle", &job, |band| band.least), derived);
    job.driveshaft.front_angle_deg.set(Quantity::new(2.0));
    assert_eq!(mark("rear-joint-angle", &job, |band| band.most), Some("common practice".to_owned()));
}

#[test]
fn a_limit_that_is_worked_out_says_from_what() {
    let job = measured();
    let mark = |name: &str, edge: fn(Band) -> Option<Edge>| edge(band(name, &job)).expect("an edge").mark;
    assert_eq!(mark("intermediate-clearance", |band| band.least), "3 frictions at 0.006 in: memory, low");
    assert_eq!(mark("pilot-length", |band| band.least), "recess 0.25 in, spacers 0.06 in, 0.125 in held: looked up");
    assert_eq!(mark("torque-pump", |band| band.least), "10 % off the figure");
    let stall = mark("stall-speed", |band| band.most);
    assert!(stall.starts_with("2,223 rpm worked out for this engine, 15 % off: "), "{stall}");
}

#[test]
fn what_belongs_to_every_job_belongs_to_one_of_which_nothing_is_known() {
    let belongs = |name: &str| measurement_named(name).expect("a measurement").applies(&Job::unknown());
    assert_eq!(belongs("front-end-play").value(), Some(&true));
    assert_eq!(belongs("bell-runout").value(), None, "only where the bell is bolted on");
}
