//! Hot and running: line pressures by range, stall, brake, cooler.

use super::{
    Band,
    Chapter::Running,
    Edge, Instrument, Measurement,
    Scale::{Flow, Pressure, Speed, Voltage},
};
use crate::calc::converter;
use crate::job::{BrakeKind, Job, ValveBodyKind};
use crate::rules::{Ask as _, Known, LimitId, Limits, Together as _};

const IDLING: &str = "The vehicle can jump and hot fluid burns. Chock the wheels, set the brake, keep everybody out of the \
     line of wheels and shafts, and look at hose and gauge before the engine runs. Follow the vehicle's own \
     instructions.";
const STALLED: &str = "A stalled vehicle wants to go. Chock the wheels, hold both brakes, nobody in front, behind or in \
     line with wheels and shafts. Five seconds at the most, then a minute in neutral at fast idle. Follow the \
     vehicle's own instructions; brakes beyond the unit belong to licensed practice.";
const LIVE: &str = "A shorted lead burns, and the vehicle may move when the brake lets go. Fuse the test lead, chock the \
     wheels and keep fingers away from the plunger.";

const LOW_OR_HIGH: &str = "Low in every range: pump, filter and its seal ring, regulator. Low in one range: the circuit \
     of that clutch. High everywhere with automatic shifts: modulator, hose and vacuum. The valve body's own sheet \
     goes before these limits.";

/// One window behind a valve body that shifts by itself, another behind one shifted by hand.
fn by_kind(job: &Job, limits: &Limits, own: (LimitId, LimitId)) -> Known<Band> {
    job.valve_body.kind.known().map(|kind| {
        let (least, most) = match kind {
            ValveBodyKind::Auto => own,
            ValveBodyKind::Manual => (LimitId::manual_line_least, LimitId::manual_line_most),
        };
        Band::between(limits, least, most)
    })
}

/// Reverse at idle: by the kind of valve body, and above what drive reads; shifted by hand it may equal it.
fn reverse_idle(job: &Job, limits: &Limits) -> Known<Band> {
    let own = by_kind(job, limits, (LimitId::auto_reverse_least, LimitId::auto_reverse_most));
    let asked = (own, job.valve_body.kind.known(), job.bench.line_drive_idle_psi.known()).together();
    asked.map(|(band, kind, drive)| {
        // A gauge shows whole pounds.
        let above = drive.value() + if kind == ValveBodyKind::Auto { 1.0 } else { 0.0 };
        let drive = Edge { value: above, mark: format!("above drive, {drive}: memory, low"), limit: None };
        let least = band.least.clone().filter(|least| least.value >= above).unwrap_or(drive);
        Band { least: Some(least), ..band }
    })
}

/// A pressure read on the line tap.
const fn pressure(
    name: &'static str,
    label: &'static str,
    how: &'static str,
    hurts: &'static str,
    band: fn(&Job, &Limits) -> Known<Band>,
) -> Measurement {
    Measurement::new(name, label, Running, Pressure, Instrument::PressureGauge)
        .told(how, LOW_OR_HIGH)
        .hurts(hurts)
        .likely(25.0, 300.0, 400.0)
        .repeated(2, 10.0)
        .band(band)
}

pub(super) static SHEET: &[Measurement] = &[
    pressure(
        "pressure-neutral-idle",
        "Line pressure, park and neutral, hot idle",
        "Gauge of 0 to 300 psi on the line tap, fluid hot, engine idling, in park and in neutral. With a vacuum \
         modulator, 18 inHg on the hand pump.",
        IDLING,
        |j, l| by_kind(j, l, (LimitId::auto_line_least, LimitId::auto_line_most)),
    ),
    pressure(
        "pressure-drive-idle",
        "Line pressure, drive, hot idle",
        "The same gauge in drive, brake held. With a vacuum modulator, 18 inHg on the hand pump.",
        IDLING,
        |j, l| by_kind(j, l, (LimitId::auto_line_least, LimitId::auto_line_most)),
    )
    .fills("bench.line_drive_idle_psi"),
    pressure(
        "pressure-drive-full",
        "Line pressure, first gear, full throttle",
        "The same gauge, first gear at full throttle for five seconds at the most. With a vacuum modulator it can be \
         read standing instead, with the hose off (0 inHg).",
        STALLED,
        |j, l| by_kind(j, l, (LimitId::auto_full_least, LimitId::auto_full_most)),
    )
    .fills("bench.line_stall_psi"),
    pressure(
        "pressure-held-idle",
        "Line pressure, second or low held, hot idle",
        "The same gauge with the lever in second, then in low, brake held. Write the lower one.",
        IDLING,
        |j, l| by_kind(j, l, (LimitId::auto_held_least, LimitId::auto_held_most)),
    ),
    pressure(
        "pressure-reverse-idle",
        "Line pressure, reverse, hot idle",
        "The same gauge in reverse, brake held, nobody behind. It has to be above drive.",
        IDLING,
        reverse_idle,
    )
    .fills("bench.line_reverse_idle_psi"),
    pressure(
        "pressure-reverse-full",
        "Line pressure, reverse, vacuum hose off",
        "The same gauge in reverse with the modulator hose off (0 inHg), standing. Do not stall it in reverse for this.",
        IDLING,
        |j, l| by_kind(j, l, (LimitId::auto_reverse_full_least, LimitId::auto_reverse_full_most)),
    )
    .when(|j| j.valve_body.kind.is(ValveBodyKind::Auto)),
    Measurement::new("stall-speed", "Stall speed", Running, Speed, Instrument::Tachometer)
        .told(
            "Only when line pressure is right and the fluid is hot. Hold both brakes, full throttle in drive, five \
             seconds at the most, and read the highest steady engine speed. A minute in neutral at fast idle between \
             two tries.",
            "Far above what was worked out: a clutch or the band slips, stop at once. Far below: the engine is down on \
             power, or the converter is not the one on the label.",
        )
        .hurts(STALLED)
        .likely(700.0, 7500.0, 12000.0)
        .repeated(2, 150.0)
        .band(|j, l| {
            let inputs = (j.converter.stall_rpm.known(), j.engine.torque_lbft.known(), j.converter.rated_torque_lbft.known());
            inputs.together().map(|(label, here, rated)| {
                let expected = converter::stall_at(label, here, rated);
                let off = l.stall_off_label.value();
                let edge = |factor: f64| {
                    let value = (expected.value() * factor / 10.0).round() * 10.0;
                    let limit = LimitId::stall_off_label;
                    let mark = format!(
                        "{} worked out for this engine, {} % off: {}",
                        expected.to_whole(),
                        (off * 100.0).round(),
                        limit.declaration().mark
                    );
                    Some(Edge { value, mark, limit: Some(limit) })
                };
                Band { least: edge(1.0 - off), most: edge(1.0 + off), aim: None, tight: None, loose: None }
            })
        }),
    Measurement::new("brake-volts", "Voltage at the brake solenoid", Running, Voltage, Instrument::Meter)
        .fills("trans_brake.volts")
        .told(
            "Engine running, button down, meter on the solenoid's own terminals. Hold and release ten times and feel \
             whether it lets go as quickly at the end as at the start.",
            "Thicker wire, a relay close to the solenoid, a better ground. A solenoid on too few volts lets go late.",
        )
        .hurts(LIVE)
        .likely(6.0, 16.5, 30.0)
        .repeated(2, 0.3)
        .band(|_, l| Known::given(Band::at_least(l, LimitId::brake_volts)))
        .when(|j| j.valve_body.brake.is_not(BrakeKind::None)),
    Measurement::new("cooler-flow", "Cooler flow", Running, Flow, Instrument::Watch)
        .fills("cooling.flow_s_per_qt")
        .told(
            "An extra quart in the unit. Lead the return line into a bucket, idle hot, and stop the time until one quart \
             is in it.",
            "Flush the cooler and lines, look for a kink, or replace the cooler. Metal from the old unit sits in it.",
        )
        .hurts(IDLING)
        .likely(3.0, 150.0, 3600.0)
        .repeated(2, 4.0)
        .band(|_, l| Known::given(Band::at_most(l, LimitId::cooler_flow))),
];
