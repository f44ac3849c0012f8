//! Which pictures a job's facts allow, from the very quantities the rules use.

use super::Picture;
use super::driveshaft::{Driveshaft, driveshaft};
use super::end_play::{EndPlay, Washer, end_play};
use super::of_bolt::of_mount_bolt;
use super::of_train::{Build, of_capacity, of_ranges};
use super::put::Put;
use super::speeds::{Speeds, speeds};
use super::stall::{Stall, stall};
use crate::calc::converter::torque_curve::TorqueCurve;
use crate::calc::fit::{Landing, Pick};
use crate::job::Job;
use crate::plan::sheet::{Fit, SetPart, measurement_named, washers};
use crate::quantity::{Inch, Quantity};
use crate::rules::{Ask as _, Derived, Known, LimitId, Limits, Together as _};

/// A place for one picture.
#[derive(Clone, Debug)]
pub struct Slot {
    /// Its name.
    pub name: &'static str,
    /// What it shows.
    pub title: &'static str,
    /// The picture, or the facts it waits for.
    pub picture: Known<Picture>,
}

/// What is on the bench and on the shelf for one end play.
#[derive(Clone, Debug, Default)]
pub struct Bench {
    /// The washer that is in now, when it was measured.
    pub washer: Option<Quantity<Inch>>,
    /// How unsure its reading is from end to end, when there was one.
    pub unsure: Option<Quantity<Inch>>,
    /// The washers of the shop's set.
    pub set: Vec<SetPart>,
}

/// What a job's own facts do not hold.
#[derive(Clone, Copy, Debug, Default)]
pub struct Beside<'a> {
    /// Bench and shelf of the front end play.
    pub front: Option<&'a Bench>,
    /// Those of the rear one.
    pub rear: Option<&'a Bench>,
    /// The sums that were put on the job.
    pub put: Put<'a>,
}

/// Every picture that belongs to this job, drawn or waiting.
pub fn pictures(job: &Job, limits: &Limits, derived: &Derived, beside: &Beside<'_>) -> Vec<Slot> {
    let slot = |name, title, picture| Slot { name, title, picture };
    let build = Build::of(job);
    let loads = of_capacity(job, limits, derived, &build, beside.put);
    let mut slots = vec![slot("speeds", "Road speed over engine speed", of_speeds(job, derived))];
    slots.extend(of_ranges(job, &build).into_iter().map(|(name, title, picture)| slot(name, title, picture)));
    slots.push(slot("capacity", "Load against capacity", loads));
    slots.push(slot("front-end-play", "Front end play", of_end_play("front-end-play", beside.front, job, limits)));
    slots.push(slot("rear-end-play", "Rear end play", of_end_play("rear-end-play", beside.rear, job, limits)));
    slots.push(slot(
        "stall",
        "Stall: where the engine meets the converter",
        of_stall(job, derived, beside.put.curve(limits)),
    ));
    slots.push(slot("driveshaft", "Driveshaft speed against its critical speed", of_driveshaft(job, limits, derived)));
    slots.push(slot("mount-thread", "Mount bolt: what gives first", of_mount_bolt(job, limits)));
    slots
}

/// What cannot be drawn, because a number in it is too big, waits for the facts behind it.
pub(super) fn drawable(picture: Known<Option<Picture>>) -> Known<Picture> {
    match picture {
        Known::Yes(Some(picture), facts) => Known::Yes(picture, facts),
        Known::Yes(None, facts) | Known::Waits(facts) => Known::Waits(facts),
    }
}

fn of_speeds(job: &Job, derived: &Derived) -> Known<Picture> {
    let cruise = job.usage.cruise_mph.known().value().copied().zip(derived.cruise_rpm.value().copied());
    drawable(
        (
            job.gears.first_ratio.known(),
            job.gears.second_ratio.known(),
            job.vehicle.axle_ratio.known(),
            job.vehicle.tire_diameter_in.known(),
            job.engine.max_rpm.known(),
        )
            .together()
            .map(|(first, second, axle, tire, highest)| speeds(&Speeds { first, second, axle, tire, highest, cruise })),
    )
}

fn of_stall(job: &Job, derived: &Derived, curve: Option<TorqueCurve>) -> Known<Picture> {
    let peak = job.engine.torque_peak_rpm.known().value().copied();
    drawable(
        (
            job.converter.stall_rpm.known(),
            job.converter.rated_torque_lbft.known(),
            job.engine.torque_lbft.known(),
            derived.stall_here,
        )
            .together()
            .map(|(label, rated, torque, here)| stall(&Stall { label, rated, torque, here, peak, curve })),
    )
}

fn of_driveshaft(job: &Job, limits: &Limits, derived: &Derived) -> Known<Picture> {
    let share = |limit: LimitId| (Quantity::new(limits.get(limit)), limits.used(limit).to_string());
    drawable(
        (
            derived.critical_rpm,
            job.engine.max_rpm.known(),
            derived.critical_share,
            job.vehicle.axle_ratio.known(),
            job.vehicle.tire_diameter_in.known(),
        )
            .together()
            .map(|(critical, highest, of_critical, axle, tire)| {
                driveshaft(&Driveshaft {
                    critical,
                    highest,
                    share: of_critical,
                    near: share(LimitId::critical_near),
                    at: share(LimitId::critical_at),
                    axle,
                    tire,
                })
            }),
    )
}

fn of_end_play(which: &'static str, bench: Option<&Bench>, job: &Job, limits: &Limits) -> Known<Picture> {
    let nothing = Bench::default();
    let bench = bench.unwrap_or(&nothing);
    let reading = match which {
        "front-end-play" => job.bench.front_end_play_in.known(),
        _ => job.bench.rear_end_play_in.known(),
    };
    let Some(measurement) = measurement_named(which) else { return Known::Waits(reading.facts()) };
    drawable(reading.and((measurement.band)(job, limits)).map(|(reading, band)| {
        let tried = bench.washer.and_then(|old| {
            washers((reading.value(), bench.unsure.map_or(0.0, Quantity::value)), old.value(), &band, &bench.set)
        });
        let set = tried.zip(measurement.fit.and_then(Fit::set)).map_or_else(Vec::new, |(tried, kind)| {
            let chosen = match tried.pick {
                Pick::Fits(best) | Pick::NoneFits { nearest: best, .. } => Some(best.part),
                Pick::NoParts => None,
            };
            let washer = |landing: &Landing| Washer {
                what: bench.set[landing.part].say(kind),
                size: Quantity::new(bench.set[landing.part].size),
                leaves: landing.result,
                worst: landing.worst,
                fits: landing.fits,
                best: chosen == Some(landing.part),
            };
            tried.landings.iter().map(washer).collect()
        });
        end_play(&EndPlay { name: which, label: measurement.label, reading, band, washer: bench.washer, set })
    }))
}
