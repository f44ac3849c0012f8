//! The gear train of a job: the power flow of its ranges, and what its elements must hold.

use super::Picture;
use super::capacity::{Capacity, Held, capacity};
use super::linked::{Linked, yes_no};
use super::of_job::drawable;
use super::power_flow::{PowerFlow, power_flow};
use super::put::{BAND_BACKING, DIRECT_BACKING, Put, sum_of};
use crate::calc::converter::turbine_torque;
use crate::calc::holding::{Demand, Holding, Moment, Need, holding, need, three_speed_duties};
use crate::calc::power_flow::three_speed::{self, Pair, Trains, name};
use crate::calc::power_flow::{Input, Range};
use crate::job::{BrakeKind, Fitted, Job};
use crate::quantity::{PoundFoot, Quantity};
use crate::rules::{Ask as _, Derived, Known, LimitId, Limits, Together as _, YesNo as _};

/// The parts of this build. A front band of which nothing is known is left out: it carries nothing in any range drawn.
fn fitted(job: &Job) -> three_speed::Fitted {
    let front_band = job.bands.front.is(Fitted::Fitted).value() == Some(&true);
    three_speed::Fitted { front_band, ..three_speed::Fitted::default() }
}

/// The trains these facts make, when the three ratios belong to one set of this family.
pub(super) struct Build {
    trains: Known<Option<Trains>>,
    fitted: three_speed::Fitted,
}

impl Build {
    pub(super) fn of(job: &Job) -> Self {
        let fitted = fitted(job);
        let trains = (job.gears.first_ratio.known(), job.gears.second_ratio.known(), job.gears.reverse_ratio.known())
            .together()
            .map(|(first, second, reverse)| Trains::from_ratios(first, second, reverse, fitted));
        Self { trains, fitted }
    }

    /// The facts behind the train and this, with the train as far as there is one.
    fn with<'a, T: 'a>(&'a self, other: Known<T>) -> Known<(Option<&'a Trains>, T)> {
        let trains = match &self.trains {
            Known::Yes(trains, facts) => Known::Yes(trains.as_ref(), *facts),
            Known::Waits(facts) => Known::Waits(*facts),
        };
        trains.and(other)
    }
}

/// A picture of a range.
pub(super) type Drawn = (&'static str, &'static str, Known<Picture>);

/// The power flow of every range this job has.
pub(super) fn of_ranges(job: &Job, build: &Build) -> Vec<Drawn> {
    let low_band = job.valve_body.low_band_first.yes().value() == Some(&true);
    let first = if low_band { three_speed::FIRST_HELD } else { three_speed::FIRST };
    let steady = [
        ("flow-first", "Power flow: first", first, if low_band { "first_held" } else { "first" }),
        ("flow-second", "Power flow: second", three_speed::SECOND, "second"),
        ("flow-third", "Power flow: third", three_speed::THIRD, "third"),
        ("flow-reverse", "Power flow: reverse", three_speed::REVERSE, "reverse"),
    ];
    let peak = (job.engine.torque_lbft.known(), job.engine.torque_peak_rpm.known()).together();
    let mut ranges: Vec<Drawn> = steady
        .into_iter()
        .map(|(name, title, range, word)| {
            let picture = build.with(peak).map(|(trains, (torque, speed))| {
                let source = format!(
                    "the engine's peak torque, {} at {}; the converter turns with it",
                    torque.to_whole(),
                    speed.to_whole()
                );
                of_range(name, (&range, word), trains?, build.fitted, Input { speed, torque }, &source)
            });
            (name, title, drawable(picture))
        })
        .collect();
    let brake = job.valve_body.brake.is_not(BrakeKind::None);
    if brake.value() != Some(&false) {
        let held = (brake, job.engine.torque_lbft.known(), job.converter.stall_ratio.known()).together();
        let picture = build.with(held).map(|(trains, (_, engine, stall_ratio))| {
            let torque = turbine_torque(engine, stall_ratio);
            let source = format!(
                "{} at stall: the engine's {} × {}, the converter's torque ratio",
                torque.to_whole(),
                engine.to_whole(),
                stall_ratio.to_places(2)
            );
            let input = Input { speed: Quantity::new(0.0), torque };
            of_range("flow-brake", (&three_speed::BRAKE, "brake"), trains?, build.fitted, input, &source)
        });
        ranges.push(("flow-brake", "Power flow: trans brake", drawable(picture)));
    }
    ranges
}

fn of_range(
    name: &'static str,
    (range, word): (&Range, &str),
    trains: &Trains,
    fitted: three_speed::Fitted,
    input: Input,
    source: &str,
) -> Option<Picture> {
    let train = trains.of(range);
    let flow = train.flow(range, input).ok()?;
    let typed = [
        ("range", word.to_owned()),
        ("torque", input.torque.value().to_string()),
        ("rpm", input.speed.value().to_string()),
        ("front_band", yes_no(fitted.front_band)),
        ("one_way", yes_no(fitted.intermediate_one_way)),
    ];
    let sums = Linked::to("power-flow", &typed).into_iter().collect();
    power_flow(&PowerFlow { name, train, flow: &flow, source, pair: Pair::of(range), sums })
}

/// Every element's load beside what it can hold.
pub(super) fn of_capacity(
    job: &Job,
    limits: &Limits,
    derived: &Derived,
    build: &Build,
    put: Put<'_>,
) -> Known<Picture> {
    let asked = (
        job.engine.torque_lbft.known(),
        job.converter.stall_ratio.known(),
        job.usage.kind.known(),
        job.valve_body.brake.is_not(BrakeKind::None),
        derived.direct_need,
        derived.one_way_load,
    )
        .together();
    drawable(build.with(asked).map(
        |(trains, (engine_torque, stall_ratio, usage, brake, direct_need, one_way_load))| {
            let demand = Demand {
                engine_torque,
                // What is held does not hang on how fast it turns.
                input_speed: Quantity::new(0.0),
                coupling: limits.coupling,
                shock: limits.shock(usage),
                stall_ratio: Some(stall_ratio),
            };
            let held = holding(trains?, &demand, &three_speed_duties(build.fitted, brake)).ok()?;
            let mut elements = Vec::new();
            for element in name::ALL {
                let Need::Torque { range, load } = need(&held, element) else { continue };
                let when = when(range, &held);
                elements.push(match element {
                    name::DIRECT => Held {
                        name: element,
                        load: direct_need,
                        when: format!("{when}; margin {} counted in", limits.used(LimitId::clutch_margin).in_words()),
                        capacity: of_direct(derived),
                        margin: Quantity::new(1.0),
                    },
                    name::INTERMEDIATE_ONE_WAY => Held {
                        name: element,
                        load: one_way_load,
                        when: format!("{when}; shock of this use counted in"),
                        capacity: of_one_way(job, limits),
                        margin: Quantity::new(1.0),
                    },
                    _ => {
                        let (capacity, margin) = (put.holds(element, limits), limits.clutch_margin);
                        Held { name: element, load, when, capacity, margin }
                    }
                });
            }
            // Backing up is a case of its own: fed at raised pressure, often on more area.
            for (element, backing) in [(name::DIRECT, DIRECT_BACKING), (name::REAR_BAND, BAND_BACKING)] {
                let load = held.iter().filter(|one| one.moment == Moment::Backing).flat_map(|one| &one.loads);
                let Some(load) = load.into_iter().find(|load| load.element == element).and_then(|load| load.load)
                else {
                    continue;
                };
                let when = "reverse, bare engine torque".to_owned();
                let (capacity, margin) = (put.holds(backing, limits), limits.clutch_margin);
                elements.push(Held { name: backing, load, when, capacity, margin });
            }
            let unsure = job.bands.front.known().value().is_none();
            let left_out =
                unsure.then(|| "The front band is left out: it is not known whether one is fitted.".to_owned());
            let sums = same_loads(build.fitted, brake).into_iter().chain(elements.iter().filter_map(missing)).collect();
            capacity(&Capacity { elements, notes: left_out.into_iter().collect(), sums })
        },
    ))
}

/// The sums that give these loads.
fn same_loads(fitted: three_speed::Fitted, brake: bool) -> Vec<Linked> {
    let typed = [
        ("brake", yes_no(brake)),
        ("front_band", yes_no(fitted.front_band)),
        ("one_way", yes_no(fitted.intermediate_one_way)),
    ];
    let names = ["need-by-range", "direct-need", "one-way-load", "reactions", "clutch-capacity"];
    names.into_iter().filter_map(|name| Linked::to(name, &typed)).collect()
}

/// The sum that would tell what this one holds.
fn missing(held: &Held) -> Option<Linked> {
    let sum = held.capacity.is_err().then(|| sum_of(held.name)).flatten()?;
    Some(Linked::to(sum, &[])?.about("put it on this job, and it stands here"))
}

fn of_direct(derived: &Derived) -> Result<(Quantity<PoundFoot>, String), String> {
    let from = "derived: friction × faces × (pressure × area - springs) × radius";
    let holds = derived.direct_capacity.value().map(|holds| (*holds, from.to_owned()));
    holds.ok_or_else(|| waits(&derived.direct_capacity))
}

fn of_one_way(job: &Job, limits: &Limits) -> Result<(Quantity<PoundFoot>, String), String> {
    let fitted = (job.one_way.kind.known(), job.one_way.elements.known()).together();
    let (kind, elements) = fitted.value().copied().ok_or_else(|| waits(&fitted))?;
    Ok((limits.one_way(kind, elements), limits.used(LimitId::of_one_way(kind, elements)).to_string()))
}

/// The labels of the facts that are missing.
fn waits<T>(of: &Known<T>) -> String {
    let labels: Vec<_> = of.waits_for().iter().map(|fact| fact.declaration().label.to_lowercase()).collect();
    format!("waits for {}", labels.join(", "))
}

/// The range that asks most, and what is counted in.
fn when(range: &str, held: &[Holding]) -> String {
    let moment = held.iter().find(|one| one.flow.range == range).map(|one| one.moment);
    let counted = match moment {
        Some(Moment::Standing) => "against the stalled converter",
        Some(Moment::Shifting) => "as it takes hold, coupling factor counted in",
        Some(Moment::Rolling) => "coupling factor counted in",
        Some(Moment::Backing) | None => "bare engine torque",
    };
    format!("{range}, {counted}")
}
