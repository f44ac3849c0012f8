//! The invented shop's bench: its instruments, what is in its drawers, and how its people measure.

use crate::plan::sheet::{Proposal, SetKind, measurement_named};
use crate::service::{
    Caller, ChoosePart, Failure, Key, Service, TakeReading, TypedPart, Who, WriteInstrument, WriteSet, latest,
    proposal, taking_of,
};
use jiff::ToSpan;
use jiff::civil::Date;

/// Calibrated so many days before today, good for so many days from today; none: no date on it.
type Days = Option<(i32, i32)>;

/// Name, kind and dates.
const INSTRUMENTS: [(&str, &str, Days); 9] = [
    ("Dial A", "dial", Some((210, 155))),
    ("Dial B, the old one", "dial", Some((402, -37))),
    ("Feeler set", "feeler", None),
    ("Micrometer 0 to 1", "micrometer", Some((95, 270))),
    ("Bore gauge", "bore-gauge", Some((95, 270))),
    ("Gauge 300", "pressure-gauge", Some((120, 245))),
    ("Wrench to 80", "torque-wrench", Some((150, 215))),
    ("Drill shanks", "drill-shank", None),
    ("Pin gauge", "pin-gauge", None),
];

/// The dial that is good, the old one, the feelers, the gauge, the wrench, the shanks: their places in the list above.
pub const DIAL: i32 = 1;
/// Past its date.
pub const OLD_DIAL: i32 = 2;
/// For packs.
pub const FEELER: i32 = 3;
/// For bushings.
pub const BORE_GAUGE: i32 = 5;
/// For line pressure.
pub const PRESSURE: i32 = 6;
/// For bolts.
pub const WRENCH: i32 = 7;
/// For the converter gap.
pub const SHANKS: i32 = 8;

/// Size, how far it may be off, mark.
type Line = (&'static str, &'static str, &'static str);

/// What is in the drawers. Invented, in the steps the trade knows.
const SETS: [(SetKind, &[Line]); 7] = [
    (
        SetKind::RearWasher,
        &[
            ("0.076", "0.001", "no notch"),
            ("0.084", "0.001", "one notch"),
            ("0.092", "0.001", "two notches"),
            ("0.100", "0.001", "three notches"),
            ("0.108", "0.001", "notch on a lug"),
        ],
    ),
    (
        SetKind::FrontWasher,
        &[
            ("0.062", "", "drawer 1"),
            ("0.073", "", "drawer 2"),
            ("0.084", "", "drawer 3"),
            ("0.095", "", "drawer 4"),
            ("0.106", "", "drawer 5"),
        ],
    ),
    (SetKind::ForwardSteels, &[("0.077", "", ""), ("0.087", "", ""), ("0.097", "", "")]),
    (SetKind::DirectSteels, &[("0.077", "", ""), ("0.087", "", ""), ("0.097", "", "")]),
    (SetKind::IntermediateSteels, &[("0.097", "", ""), ("0.107", "", "")]),
    (SetKind::Shims, &[("0.005", "", ""), ("0.010", "", ""), ("0.020", "", "")]),
    (
        SetKind::RearPins,
        &[("0", "0.060", "short pin"), ("0.060", "0.120", "middle pin"), ("0.120", "0.180", "long pin")],
    ),
];

/// Writes the instruments down and types the sets.
///
/// # Errors
/// When the service refuses one, which is a slip in the lists above.
pub async fn stock(service: &Service, bench: &Caller, today: Date) -> Result<(), Failure> {
    let day = |days: i32| today.saturating_add(days.days());
    for (name, kind, dates) in INSTRUMENTS {
        let write = WriteInstrument {
            follows: None,
            name: name.into(),
            kind: kind.into(),
            calibrated: dates.map(|(ago, _)| day(-ago)),
            due: dates.map(|(_, on)| day(on)),
            retired: false,
        };
        service.write(Who::Staff(bench.clone()), Key::fresh(), write).await?;
    }
    for (kind, lines) in SETS {
        let part = |(size, other, mark): &Line| TypedPart {
            size: (*size).into(),
            other: (*other).into(),
            mark: (*mark).into(),
        };
        let write = WriteSet { code: kind.code().into(), made_from: 0, parts: lines.iter().map(part).collect() };
        service.write(Who::Staff(bench.clone()), Key::fresh(), write).await?;
    }
    Ok(())
}

/// Takes a reading on a ticket.
///
/// # Errors
/// When the service refuses it.
pub async fn measure(
    service: &Service,
    bench: &Caller,
    ticket: i64,
    (measurement, readings, fitted, instrument): (&str, &[&str], &str, i32),
) -> Result<(), Failure> {
    let made_from = service.ticket(bench, ticket).await?.ticket.revision;
    let take = TakeReading {
        ticket,
        made_from,
        measurement: measurement.into(),
        readings: readings.iter().map(|reading| (*reading).into()).collect(),
        fitted: fitted.into(),
        instrument: Some(instrument),
        sure: false,
    };
    service.write(Who::Staff(bench.clone()), Key::fresh(), take).await.map(drop)
}

/// Chooses the best part by the latest reading of a measurement.
///
/// # Errors
/// When nothing fits, or the service refuses it.
pub async fn choose_best(service: &Service, bench: &Caller, ticket: i64, name: &str) -> Result<(), Failure> {
    let measurement = measurement_named(name).ok_or(Failure::NotFound("such measurement"))?;
    let sheet = service.bench_sheet(bench, ticket, Some(name)).await?;
    let page = service.ticket(bench, ticket).await?;
    let latest = latest(&sheet.readings, name).ok_or(Failure::NotFound("such reading"))?;
    let limits = &page.book.limits;
    let band = (measurement.band)(page.revision.contents.facts.job(), limits);
    let Proposal::Found(found) = proposal(measurement, &taking_of(latest), &band, &sheet.shelf, limits) else {
        return Err(Failure::NotFound("part by this reading"));
    };
    let best = found.offers.into_iter().find(|offer| offer.best && offer.fits);
    let part = best.ok_or(Failure::NotFound("part that fits"))?.what;
    let choose = ChoosePart { ticket, measurement: name.into(), reading: latest.turn, part };
    service.write(Who::Staff(bench.clone()), Key::fresh(), choose).await
}
