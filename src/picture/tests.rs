//! The pictures of whole jobs: each drawn as its table says, and saying what the rule book says.

use super::check::sound_picture;
use super::{Bench, Beside, Cell, EndPlay, Picture, Slot, Washer, end_play, pictures};
use crate::job::{BrakeKind, Job, ThreadSystem};
use crate::plan::sheet::{Fitted, Habit, Proposal, SetKind, SetPart, measurement_named, pick};
use crate::quantity::Quantity;
use crate::rules::{Derived, Known, Limits};
use proptest::prelude::*;

pub(super) fn of(job: &Job) -> (Vec<Slot>, Derived) {
    let limits = Limits::default();
    let derived = Derived::of(job, &limits);
    (pictures(job, &limits, &derived, &Beside::default()), derived)
}

pub(super) fn racing() -> Job {
    let mut job = Job::plain();
    job.valve_body.brake.set(BrakeKind::Internal);
    job.engine.torque_lbft.set(Quantity::new(560.0));
    job
}

pub(super) fn drawn(slots: &[Slot], name: &str) -> Picture {
    let slot = slots.iter().find(|slot| slot.name == name).unwrap_or_else(|| panic!("{name} is no picture"));
    match &slot.picture {
        Known::Yes(picture, _) => picture.clone(),
        Known::Waits(facts) => panic!("{name} waits for {facts:?}"),
    }
}

/// The cells of the row that begins with this.
pub(super) fn row<'a>(picture: &'a Picture, first: &str) -> Vec<&'a str> {
    let found = picture.table.rows.iter().find(|row| row[0].text() == first);
    let found = found.unwrap_or_else(|| panic!("{}: no row {first} in {:?}", picture.name, picture.table.rows));
    found.iter().map(Cell::text).collect()
}

fn known<T: Copy>(known: &Known<T>) -> T {
    *known.value().expect("it is known of a full job")
}

#[test]
fn a_job_that_is_known_has_every_picture_and_each_says_what_its_table_says() {
    let (slots, _) = of(&racing());
    assert_eq!(slots.len(), 12);
    for slot in &slots {
        sound_picture(&drawn(&slots, slot.name));
    }
}

#[test]
fn what_the_rules_work_out_stands_in_the_pictures_to_the_last_digit() {
    let (slots, derived) = of(&racing());
    let capacity = drawn(&slots, "capacity");
    assert_eq!(row(&capacity, "direct clutch")[1], known(&derived.direct_need).to_whole());
    assert_eq!(row(&capacity, "direct clutch")[3], known(&derived.direct_capacity).to_whole());
    let one_way = row(&capacity, "intermediate one-way clutch");
    assert_eq!(one_way[1], known(&derived.one_way_load).to_whole());
    assert_eq!(one_way[4], known(&derived.one_way_share).to_percent(0));
    assert_eq!(row(&drawn(&slots, "stall"), "Behind this engine")[1], known(&derived.stall_here).to_whole());
    let driveshaft = drawn(&slots, "driveshaft");
    assert_eq!(row(&driveshaft, "Whips")[1], known(&derived.critical_rpm).to_whole());
    assert_eq!(row(&driveshaft, "Highest used")[3], known(&derived.critical_share).to_percent(0));
    assert_eq!(row(&drawn(&slots, "speeds"), "cruise in third")[3], known(&derived.cruise_rpm).to_whole());
}

fn played(washer: Option<f64>, set: Vec<Washer>) -> EndPlay {
    let measurement = measurement_named("front-end-play").expect("it is on the sheet");
    let Known::Yes(band, _) = (measurement.band)(&Job::plain(), &Limits::default()) else { panic!("it has a band") };
    EndPlay {
        name: "front-end-play",
        label: measurement.label,
        reading: Quantity::new(0.026),
        band,
        washer: washer.map(Quantity::new),
        set,
    }
}

fn washer(thick: f64, fits: bool, best: bool) -> Washer {
    Washer {
        what: format!("{thick:.3} in"),
        size: Quantity::new(thick),
        leaves: Quantity::new(0.074 + 0.026 - thick),
        worst: Quantity::new(0.001),
        fits,
        best,
    }
}

#[test]
fn an_end_play_shows_what_every_washer_would_leave_and_which_to_fit() {
    let set = vec![washer(0.074, false, false), washer(0.082, true, false), washer(0.088, true, true)];
    let picture = end_play(&played(Some(0.074), set)).expect("drawn");
    sound_picture(&picture);
    assert_eq!(row(&picture, "Now")[1..3], ["0.074 in", "0.026 in"]);
    assert_eq!(row(&picture, "0.088 in")[1..3], ["fit this", "0.012 in"]);
    assert_eq!(row(&picture, "0.074 in")[1], "no");
    assert!(picture.description.contains("fit this: 0.088 in, which leaves 0.012 in"), "{}", picture.description);
    assert!(picture.notes.is_empty(), "{:?}", picture.notes);
}

#[test]
fn the_washer_in_the_picture_is_the_one_the_sheet_proposes() {
    let mut job = racing();
    job.bench.front_end_play_in.set(Quantity::new(0.026));
    let limits = Limits::default();
    let habit = Habit::default();
    let part = |size: &str| SetKind::FrontWasher.read_part(1, (size, "0.001", ""), habit).expect("a size");
    let set: Vec<SetPart> = ["0.070", "0.083", "0.088", "0.099"].map(part).to_vec();
    let front = Bench { washer: Some(Quantity::new(0.074)), unsure: Some(Quantity::new(0.001)), set: set.clone() };
    let slots =
        pictures(&job, &limits, &Derived::of(&job, &limits), &Beside { front: Some(&front), ..Beside::default() });
    let picture = drawn(&slots, "front-end-play");
    sound_picture(&picture);
    let measurement = measurement_named("front-end-play").expect("it is on the sheet");
    let band = (measurement.band)(&job, &limits);
    let fitted = Fitted(vec![0.074]);
    let Proposal::Found(picked) = pick(measurement, (0.026, 0.001), &band, &fitted, &set, &limits) else {
        panic!("the sheet proposes one")
    };
    for offer in picked.offers {
        let shown = row(&picture, &offer.what);
        assert!(offer.leaves.starts_with(shown[2]), "{} is not {}", offer.leaves, shown[2]);
        assert_eq!(shown[1] == "fit this", offer.best, "{}", offer.what);
    }
}

#[test]
fn a_washer_that_was_not_measured_is_said_and_not_drawn_as_nought() {
    let picture = end_play(&played(None, Vec::new())).expect("drawn");
    sound_picture(&picture);
    assert!(row(&picture, "Now")[1].starts_with("not known"));
    assert!(picture.svg.contains("washer: not known") && !picture.svg.contains("washer 0.000"), "{}", picture.svg);
    assert!(picture.description.contains("0.014 in thicker"), "{}", picture.description);
}

#[test]
fn what_a_clutch_can_hold_is_said_to_be_unknown_until_it_is_known() {
    let mut job = racing();
    job.direct.spring_lb.forget();
    let (slots, _) = of(&job);
    let capacity = drawn(&slots, "capacity");
    sound_picture(&capacity);
    let direct = row(&capacity, "direct clutch");
    assert!(direct[3].starts_with("not known: waits for") && direct[3].contains("spring"), "{direct:?}");
    assert!(row(&capacity, "rear band")[3].starts_with("not known"));
}

#[test]
fn a_blank_leaves_out_the_pictures_that_need_it_and_names_itself() {
    let mut job = racing();
    job.vehicle.axle_ratio.forget();
    let waiting: Vec<_> = of(&job).0.into_iter().filter(|slot| slot.picture.value().is_none()).collect();
    assert_eq!(waiting.iter().map(|slot| slot.name).collect::<Vec<_>>(), ["speeds", "driveshaft"]);
    for slot in waiting {
        assert_eq!(slot.picture.waits_for().iter().collect::<Vec<_>>(), [job.vehicle.axle_ratio.id()], "{}", slot.name);
    }
    assert!(of(&Job::unknown()).0.iter().all(|slot| slot.picture.value().is_none()));
}

#[test]
fn the_trans_brake_has_its_picture_where_one_is_fitted_and_waits_where_it_is_not_known() {
    let brake = |job: &Job| of(job).0.into_iter().find(|slot| slot.name == "flow-brake").map(|slot| slot.picture);
    let mut job = racing();
    let Some(Known::Yes(picture, _)) = brake(&job) else { panic!("it is drawn") };
    assert!(picture.description.starts_with("Nothing turns: "), "{}", picture.description);
    job.valve_body.brake.forget();
    assert!(matches!(brake(&job), Some(Known::Waits(_))));
    job.valve_body.brake.set(BrakeKind::None);
    assert!(brake(&job).is_none());
}

#[test]
fn ratios_of_another_family_are_not_drawn_as_this_one() {
    let mut job = racing();
    job.gears.first_ratio.set(Quantity::new(2.84));
    let waiting: Vec<_> = of(&job).0.into_iter().filter(|slot| slot.picture.value().is_none()).collect();
    assert!(waiting.iter().all(|slot| slot.name.starts_with("flow-") || slot.name == "capacity"), "{waiting:?}");
    assert_eq!(waiting.len(), 6);
}

#[test]
fn the_load_of_the_power_flow_is_the_need_the_rules_reckon_with() {
    let (slots, derived) = of(&racing());
    let margin = Limits::default().clutch_margin;
    let brake = drawn(&slots, "flow-brake");
    let direct = brake.table.rows.iter().find(|row| row[0].text() == "direct clutch").expect("it is on");
    let shown: f64 = direct[3].text().replace(',', "").parse().expect("a number");
    assert!((shown * margin.value() - known(&derived.direct_need).value()).abs() < 1.0, "{shown}");
}

#[test]
fn with_little_thread_the_hole_strips_and_with_enough_the_bolt_breaks_in_either_system() {
    for system in [ThreadSystem::Inch, ThreadSystem::Metric] {
        for (engaged, gives) in [(0.8, "hole strips"), (1.8, "bolt breaks")] {
            let mut job = racing();
            job.threads.mount_bolt.set(system);
            job.threads.mount_engage_d.set(Quantity::new(engaged));
            let picture = drawn(&of(&job).0, "mount-thread");
            sound_picture(&picture);
            let measured = row(&picture, "As measured");
            assert_eq!(measured[2], gives, "{system:?} {engaged}");
            let unit = if system == ThreadSystem::Inch { " lb-ft" } else { " N·m" };
            assert!(measured[3].ends_with(unit), "{measured:?}");
            assert!(picture.notes[0].starts_with("Taken for granted"), "{:?}", picture.notes);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn whatever_the_numbers_the_pictures_are_sound(
        numbers in proptest::collection::vec(prop_oneof![0.0..1e4f64, 1e-6..1.0f64, 1e3..1e12f64], 20),
    ) {
        let mut job = racing();
        let mut numbers = numbers.into_iter();
        let mut next = || numbers.next().unwrap_or(1.0);
        job.vehicle.axle_ratio.set(Quantity::new(next()));
        job.vehicle.tire_diameter_in.set(Quantity::new(next()));
        job.engine.max_rpm.set(Quantity::new(next()));
        job.engine.torque_lbft.set(Quantity::new(next()));
        job.engine.torque_peak_rpm.set(Quantity::new(next()));
        job.converter.stall_rpm.set(Quantity::new(next()));
        job.converter.rated_torque_lbft.set(Quantity::new(next()));
        job.converter.stall_ratio.set(Quantity::new(next()));
        job.usage.cruise_mph.set(Quantity::new(next()));
        job.driveshaft.length_in.set(Quantity::new(next()));
        job.driveshaft.od_in.set(Quantity::new(next()));
        job.bench.front_end_play_in.set(Quantity::new(next()));
        job.bench.rear_end_play_in.set(Quantity::new(next()));
        job.direct.spring_lb.set(Quantity::new(next()));
        job.threads.mount_engage_d.set(Quantity::new(next()));
        for slot in of(&job).0 {
            if let Known::Yes(picture, _) = &slot.picture {
                sound_picture(picture);
            }
        }
        let set = (0..4).map(|_| washer(next(), true, false)).collect();
        if let Some(picture) = end_play(&played(Some(next()), set)) {
            sound_picture(&picture);
        }
    }
}
