//! Which pictures a job's facts allow, from the very quantities the rules use.

use super::Picture;
use super::capacity::{Capacity, Held, capacity};
use super::driveshaft::{Driveshaft, driveshaft};
use super::end_play::{EndPlay, Washer, end_play};
use super::engagement::{Engagement, engagement};
use super::power_flow::{PowerFlow, power_flow};
use super::speeds::{Speeds, speeds};
use super::stall::{Stall, stall};
use crate::calc::converter::turbine_torque;
use crate::calc::fit::{Landing, Pick};
use crate::calc::holding::{Demand, Duty, Moment, holding, three_speed_duties};
use crate::calc::power_flow::three_speed::{self, name, train_from_ratios};
use crate::calc::power_flow::{ElementKind, Input, Range, Train};
use crate::calc::thread::table::{metric_thread, unified};
use crate::calc::thread::tension::{CLASSES, GRADES, find};
use crate::job::{BrakeKind, Fitted, Job, ThreadSystem};
use crate::plan::sheet::{Fit, SetPart, measurement_named, washers};
use crate::quantity::{Inch, Megapascal, One, PoundFoot, Quantity, Rpm};
use crate::rules::{Ask as _, Derived, Known, LimitId, Limits, Together as _, YesNo as _};

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
    /// How far apart the readings lay, when there were several.
    pub spread: Option<Quantity<Inch>>,
    /// The washers of the shop's set.
    pub set: Vec<SetPart>,
}

/// Every picture that belongs to this job, drawn or waiting; `front` and `rear` are for its end plays.
pub fn pictures(job: &Job, limits: &Limits, derived: &Derived, [front, rear]: &[Bench; 2]) -> Vec<Slot> {
    let slot = |name, title, picture| Slot { name, title, picture };
    let mut slots = vec![slot("speeds", "Road speed over engine speed", of_speeds(job, derived))];
    slots.extend(of_ranges(job).into_iter().map(|(name, title, picture)| slot(name, title, picture)));
    slots.push(slot("capacity", "Load against capacity", of_capacity(job, limits, derived)));
    slots.push(slot("front-end-play", "Front end play", of_end_play("front-end-play", front, job, limits)));
    slots.push(slot("rear-end-play", "Rear end play", of_end_play("rear-end-play", rear, job, limits)));
    slots.push(slot("stall", "Stall: where the engine meets the converter", of_stall(job, derived)));
    slots.push(slot("driveshaft", "Driveshaft speed against its critical speed", of_driveshaft(job, limits, derived)));
    slots.push(slot("mount-thread", "Mount bolt: what gives first", of_mount_bolt(job, limits)));
    slots
}

/// What cannot be drawn, because a number in it is too big, waits for the facts behind it.
fn drawable(picture: Known<Option<Picture>>) -> Known<Picture> {
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

fn of_stall(job: &Job, derived: &Derived) -> Known<Picture> {
    let peak = job.engine.torque_peak_rpm.known().value().copied();
    drawable(
        (
            job.converter.stall_rpm.known(),
            job.converter.rated_torque_lbft.known(),
            job.engine.torque_lbft.known(),
            derived.stall_here,
        )
            .together()
            .map(|(label, rated, torque, here)| stall(&Stall { label, rated, torque, here, peak })),
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

fn of_end_play(which: &'static str, bench: &Bench, job: &Job, limits: &Limits) -> Known<Picture> {
    let reading = match which {
        "front-end-play" => job.bench.front_end_play_in.known(),
        _ => job.bench.rear_end_play_in.known(),
    };
    let Some(measurement) = measurement_named(which) else { return Known::Waits(reading.facts()) };
    drawable(reading.and((measurement.band)(job, limits)).map(|(reading, band)| {
        let tried = bench.washer.and_then(|old| {
            washers((reading.value(), bench.spread.map_or(0.0, Quantity::value)), old.value(), &band, &bench.set)
        });
        let set = tried.zip(measurement.fit.and_then(Fit::set)).map_or_else(Vec::new, |(tried, kind)| {
            let chosen = match tried.pick {
                Pick::Fits(best) | Pick::NoneFits { nearest: best, .. } => Some(best.part),
                Pick::NoParts => None,
            };
            let washer = |landing: &Landing| Washer {
                what: bench.set[landing.part].say(kind),
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

/// Tensile strength of the aluminum a case is cast of, taken low: 240 MPa (memory, medium).
const CAST_ALUMINUM: (Quantity<Megapascal>, &str) = (Quantity::new(240.0), "cast aluminum, memory, medium");

/// Torque factor of a bolt as it comes from the bin.
const TORQUE_FACTOR: (Quantity<One>, &str) = (Quantity::new(0.20), "zinc plated, machine-design textbook, 9th ed.");

/// The mount bolt as units of this family have it; a bolt and a hole of different systems are the rule book's matter.
fn of_mount_bolt(job: &Job, limits: &Limits) -> Known<Picture> {
    let wanted = (limits.thread_engaged, limits.used(LimitId::thread_engaged).to_string());
    let known = (job.threads.mount_bolt.known(), job.threads.mount_engage_d.known()).together();
    let (name, place) = ("mount-thread", "Mount bolt");
    drawable(known.map(|(system, engaged)| match system {
        ThreadSystem::Inch => {
            let row = unified("3/8-16")?;
            engagement(&Engagement {
                name,
                place,
                thread: row.name,
                form: row.form,
                engaged,
                wanted,
                grade: find(GRADES, "5", row.form.major)?,
                hole: (Quantity::new(CAST_ALUMINUM.0.value() * PSI_IN_MEGAPASCAL), CAST_ALUMINUM.1),
                factor: TORQUE_FACTOR,
            })
        }
        ThreadSystem::Metric => {
            let row = metric_thread("M10x1.5")?;
            engagement(&Engagement {
                name,
                place,
                thread: row.name,
                form: row.form,
                engaged,
                wanted,
                grade: find(CLASSES, "8.8", row.form.major)?,
                hole: CAST_ALUMINUM,
                factor: TORQUE_FACTOR,
            })
        }
    }))
}

/// 1 MPa, exact to the digits given.
const PSI_IN_MEGAPASCAL: f64 = 145.037_738;

/// The parts of this build. A front band of which nothing is known is left out: it carries nothing in any range drawn.
fn fitted(job: &Job) -> three_speed::Fitted {
    let front_band = job.bands.front.is(Fitted::Fitted).value() == Some(&true);
    three_speed::Fitted { front_band, ..three_speed::Fitted::default() }
}

/// The train these facts make; nothing when the three ratios belong to no set of this family.
fn of_train(job: &Job) -> Known<Option<Train>> {
    (job.gears.first_ratio.known(), job.gears.second_ratio.known(), job.gears.reverse_ratio.known())
        .together()
        .map(|(first, second, reverse)| train_from_ratios(first, second, reverse, fitted(job)))
}

type Drawn = (&'static str, &'static str, Known<Picture>);

fn of_ranges(job: &Job) -> Vec<Drawn> {
    let train = of_train(job);
    let steady = (train.clone(), job.engine.torque_lbft.known(), job.engine.torque_peak_rpm.known()).together();
    let source = |torque: Quantity<PoundFoot>, speed: Quantity<Rpm>| {
        format!("the engine's peak torque, {} at {}; the converter turns with it", torque.to_whole(), speed.to_whole())
    };
    let range = |name, title, range: Range| -> Drawn {
        let picture = steady.clone().map(|(train, torque, speed)| {
            let train = train?;
            let flow = train.flow(&range, Input { speed, torque }).ok()?;
            power_flow(&PowerFlow { name, train: &train, flow: &flow, source: &source(torque, speed) })
        });
        (name, title, drawable(picture))
    };
    let first = if job.valve_body.low_band_first.yes().value() == Some(&true) {
        three_speed::FIRST_HELD
    } else {
        three_speed::FIRST
    };
    let mut ranges = vec![
        range("flow-first", "Power flow: first", first),
        range("flow-second", "Power flow: second", three_speed::SECOND),
        range("flow-third", "Power flow: third", three_speed::THIRD),
        range("flow-reverse", "Power flow: reverse", three_speed::REVERSE),
    ];
    let brake = job.valve_body.brake.is_not(BrakeKind::None);
    if brake.value() != Some(&false) {
        let held = (brake, train, job.engine.torque_lbft.known(), job.converter.stall_ratio.known()).together();
        let picture = held.map(|(_, train, torque, stall_ratio)| {
            let train = train?;
            let turbine = turbine_torque(torque, stall_ratio);
            let flow = train.flow(&three_speed::BRAKE, Input { speed: Quantity::new(0.0), torque: turbine }).ok()?;
            let source = format!(
                "{} at stall: the engine's {} × {}, the converter's torque ratio",
                turbine.to_whole(),
                torque.to_whole(),
                stall_ratio.to_places(2)
            );
            power_flow(&PowerFlow { name: "flow-brake", train: &train, flow: &flow, source: &source })
        });
        ranges.push(("flow-brake", "Power flow: trans brake", drawable(picture)));
    }
    ranges
}

fn of_capacity(job: &Job, limits: &Limits, derived: &Derived) -> Known<Picture> {
    let loads = (
        of_train(job),
        job.engine.torque_lbft.known(),
        job.converter.stall_ratio.known(),
        job.usage.kind.known(),
        job.valve_body.brake.is_not(BrakeKind::None),
    )
        .together()
        .map(|(train, engine_torque, stall_ratio, usage, brake)| {
            let demand = Demand {
                engine_torque,
                // What is held does not hang on how fast it turns.
                input_speed: Quantity::new(0.0),
                coupling: limits.coupling,
                shock: limits.shock(usage),
                stall_ratio: Some(stall_ratio),
            };
            worst(&train?, &demand, &three_speed_duties(fitted(job), brake))
        });
    let both = (loads, derived.direct_need, derived.one_way_load).together();
    let one_way_limit = (job.one_way.kind.known(), job.one_way.elements.known()).together();
    drawable(both.map(|(loads, direct_need, one_way_load)| {
        let blank = || Err("the job has no fact for it".to_owned());
        let elements = loads?
            .into_iter()
            .map(|Worst { name: element, load, when }| match element {
                name::DIRECT => Held {
                    name: element,
                    load: direct_need,
                    when: format!("{when}; margin {} counted in", limits.used(LimitId::clutch_margin).in_words()),
                    capacity: derived.direct_capacity.value().copied().map_or_else(
                        || Err(waits(&derived.direct_capacity)),
                        |holds| {
                            Ok((holds, "derived: friction × faces × (pressure × area - springs) × radius".to_owned()))
                        },
                    ),
                },
                name::INTERMEDIATE_ONE_WAY => Held {
                    name: element,
                    load: one_way_load,
                    when: format!("{when}; shock of this use counted in"),
                    capacity: one_way_limit.value().copied().map_or_else(
                        || Err(waits(&one_way_limit)),
                        |(kind, elements)| {
                            Ok((
                                limits.one_way(kind, elements),
                                limits.used(LimitId::of_one_way(kind, elements)).to_string(),
                            ))
                        },
                    ),
                },
                _ => Held { name: element, load, when, capacity: blank() },
            })
            .collect();
        capacity(&Capacity { elements })
    }))
}

/// The labels of the facts that are missing.
fn waits<T>(of: &Known<T>) -> String {
    let labels: Vec<_> = of.waits_for().iter().map(|fact| fact.declaration().label.to_lowercase()).collect();
    format!("waits for {}", labels.join(", "))
}

/// The most an element has to hold.
struct Worst {
    name: &'static str,
    load: Quantity<PoundFoot>,
    when: String,
}

/// The greatest load of every element over its ranges, each reckoned as the sums of what is held do.
///
/// In reverse the direct clutch is fed at raised pressure, so that range is held against it nowhere; a band has
/// nothing else to show for it.
fn worst(train: &Train, demand: &Demand, duties: &[Duty]) -> Option<Vec<Worst>> {
    let mut worst: Vec<Worst> = Vec::new();
    for held in holding(train, demand, duties).ok()? {
        for one in &held.loads {
            if held.moment == Moment::Backing && one.kind != ElementKind::Band {
                continue;
            }
            let load = one.load?;
            let when = format!("{}, {}", held.flow.range, moment_word(held.moment));
            match worst.iter_mut().find(|known| known.name == one.element) {
                Some(known) if known.load >= load => {}
                Some(known) => *known = Worst { name: one.element, load, when },
                None => worst.push(Worst { name: one.element, load, when }),
            }
        }
    }
    Some(worst)
}

const fn moment_word(moment: Moment) -> &'static str {
    match moment {
        Moment::Standing => "against the stalled converter",
        Moment::Shifting => "as it takes hold, coupling factor counted in",
        Moment::Rolling => "coupling factor counted in",
        Moment::Backing => "bare engine torque",
    }
}
