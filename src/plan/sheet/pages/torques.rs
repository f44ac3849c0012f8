//! Bolt torques. Inch units; the unit's manual goes before every one of them.

use super::{Band, Chapter::Torques, Edge, Instrument, Measurement, Scale::Torque};
use crate::job::Job;
use crate::rules::{Known, LimitId, Limits};

/// A figure and what it may be off.
fn about(limits: &Limits, figure: LimitId) -> Known<Band> {
    let aim = Edge::of(limits, figure);
    let off = limits.torque_off.value();
    let edge = |factor: f64| {
        let value = (aim.value * factor * 10.0).round() / 10.0;
        Some(Edge {
            value,
            mark: format!("{} % off the figure", (off * 100.0).round()),
            limit: Some(LimitId::torque_off),
        })
    };
    Known::given(Band { least: edge(1.0 - off), most: edge(1.0 + off), aim: Some(aim), ..Band::NONE })
}

/// One bolt pattern.
const fn bolts(
    name: &'static str,
    label: &'static str,
    how: &'static str,
    (from, to): (f64, f64),
    band: fn(&Job, &Limits) -> Known<Band>,
) -> Measurement {
    Measurement::new(name, label, Torques, Torque, Instrument::TorqueWrench)
        .told(how, OUT)
        .likely(from, to, 200.0)
        .band(band)
}

const OUT: &str = "Loosen it, clean and oil the thread, see that the bolt is engaged one and a half times its diameter in \
     aluminum and does not bottom, and draw it up again. A hole that gives way is repaired, not filled.";

pub(super) static SHEET: &[Measurement] = &[
    bolts(
        "torque-support",
        "Center-support bolt",
        "Draw it up clean and oiled, then set the wrench and pull once. Write what the wrench was set to or showed.",
        (12.0, 30.0),
        |_, l| about(l, LimitId::torque_support),
    ),
    bolts(
        "torque-pump",
        "Pump to case",
        "Draw the pump in crosswise in small steps while the input shaft is turned by hand. Stop at once when it gets \
         stiff. Write the last torque.",
        (12.0, 24.0),
        |_, l| about(l, LimitId::torque_pump),
    ),
    bolts(
        "torque-valve-body",
        "Valve body",
        "From the middle outward, in two rounds. Write the last torque.",
        (5.0, 10.7),
        |_, l| about(l, LimitId::torque_valve_body),
    ),
    bolts(
        "torque-tail",
        "Rear housing",
        "Crosswise, with the new seal ring oiled. Write the last torque.",
        (14.0, 30.0),
        |_, l| about(l, LimitId::torque_tail),
    ),
    bolts(
        "torque-governor",
        "Governor cover",
        "Evenly round, with its gasket dry. Write the last torque.",
        (12.0, 24.0),
        |_, l| about(l, LimitId::torque_governor),
    ),
    bolts(
        "torque-modulator",
        "Modulator clamp",
        "The modulator turns free until the clamp is tight. Write the last torque.",
        (12.0, 25.0),
        |_, l| about(l, LimitId::torque_modulator),
    ),
    bolts(
        "torque-pan",
        "Pan",
        "Crosswise with a small wrench; the gasket is to be held, not squeezed out. The feel of the hand matters more \
         than the number.",
        (8.0, 16.0),
        |_, l| about(l, LimitId::torque_pan),
    ),
    bolts(
        "torque-bell",
        "Bell to engine",
        "Only with the bell already flat against the block on its dowels: bolts must not draw it up. Write the last \
         torque.",
        (25.0, 47.0),
        |_, l| about(l, LimitId::torque_bell),
    ),
    bolts(
        "torque-converter",
        "Converter to flexplate",
        "Turn the engine by hand from bolt to bolt; the key is out and the battery off. Write the last torque.",
        (25.0, 47.0),
        |_, l| about(l, LimitId::torque_converter),
    )
    .hurts(
        "An engine that turns while a hand is at the flexplate takes the fingers off. Take the battery off first, and \
         work only under a vehicle on rated stands on hard level floor.",
    ),
];
