//! Wear, measured while the unit is apart.

use super::{Band, Chapter::Parts, Counts, Instrument, Measurement, Scale::Length};
use crate::job::{BrakeKind, Gasket, YokeKind};
use crate::rules::{Ask as _, Known, LimitId};

pub(super) static SHEET: &[Measurement] = &[
    Measurement::new("pump-face-clearance", "Pump gears to pump face", Parts, Length, Instrument::Feeler)
        .fills("pump.face_clear_in")
        .told(
            "Lay the clean gears in the pump body, put a straightedge across the face and try which feeler leaf still \
             goes under it, at three places around. Write the thickest that goes at each: the largest counts.",
            "Too small scores the face, too large loses pressure. Change the gears or the pump as a set; do not dress \
             one to fit the other.",
        )
        .likely(0.0003, 0.012, 0.25)
        .at_places(3, 0.0007, Counts::Most)
        .band(|_, l| Known::given(Band::between(l, LimitId::pump_face_least, LimitId::pump_face_most))),
    Measurement::new("pump-bushing-clearance", "Pump bushing to converter hub", Parts, Length, Instrument::BoreGauge)
        .told(
            "Measure the bushing with a bore gauge at two depths and the hub of the converter with a micrometer where it \
             runs. Write the difference.",
            "Press in a new bushing, or send the hub to be ground. A loose one wears through the front seal, a tight \
             one seizes on the hub.",
        )
        .likely(0.0005, 0.02, 0.25)
        .repeated(2, 0.001)
        .band(|_, l| Known::given(Band::between(l, LimitId::pump_bushing_least, LimitId::pump_bushing_most))),
    Measurement::new("yoke-clearance", "Tail bushing to yoke", Parts, Length, Instrument::BoreGauge)
        .fills("yoke.clear_in")
        .told(
            "With the customer's own yoke in hand, measure the bushing with a bore gauge and the yoke with a micrometer \
             where it runs. Write the difference. A new bushing is usually tight and is honed to fit.",
            "Too tight: hone a little, clean, and measure again, before the final wash. Too loose: a new bushing.",
        )
        .likely(0.0005, 0.02, 0.25)
        .repeated(2, 0.001)
        .band(|_, l| {
            let band = Band::between(l, LimitId::yoke_clear_least, LimitId::yoke_clear_most);
            Known::given(band.aiming(l, LimitId::yoke_clear_aim))
        })
        .when(|j| j.yoke.kind.one_of(&[YokeKind::Slip, YokeKind::SlipRecessed])),
    Measurement::new("pinion-play", "Planet pinion end play", Parts, Length, Instrument::Feeler)
        .fills("gears.pinion_play_in")
        .told(
            "Slip a feeler under every pinion of every carrier, between pinion and thrust washer. Write the largest ones: the largest counts.",
            "Change the carrier. A pinion without play binds when it is hot; one with too much has worn its washers.",
        )
        .likely(0.003, 0.08, 0.5)
        .at_places(2, 0.002, Counts::Most)
        .band(|_, l| Known::given(Band::between(l, LimitId::pinion_play_least, LimitId::pinion_play_most))),
    Measurement::new("carrier-float", "Front carrier float", Parts, Length, Instrument::Dial)
        .told(
            "With the gear set on the bench, set a dial on the front carrier and move the carrier in and out. This one \
             floats by itself and does not show in the rear end play.",
            "There is no limit here: compare it with the unit's manual and with what this unit read before. When it has \
             grown, change the thrust washers in pairs.",
        )
        .likely(0.002, 0.12, 0.5)
        .repeated(2, 0.002),
    Measurement::new("valve-body-face", "Valve-body face out of flat", Parts, Length, Instrument::Feeler)
        .fills("case.face_flat_in")
        .told(
            "Lay a straightedge on the clean case face along, across and over both corners. Write the thickest leaf that \
             goes under it anywhere, 0 when none does.",
            "Dress the face on a stone or a surface plate until the leaf no longer goes in, then wash the case again.",
        )
        .likely(0.0, 0.015, 0.1)
        .band(|_, l| Known::given(Band::at_most(l, LimitId::face_flat)))
        .when(|j| j.valve_body.gasket.is(Gasket::None)),
    Measurement::new("converter-end-play", "Converter end play", Parts, Length, Instrument::Dial)
        .fills("converter.end_play_in")
        .told(
            "Expand the end-play tool in the turbine spline, set a dial on it, push and pull. Write the travel.",
            "The converter is worn inside: exchange it. Where its maker gives a smaller limit, that one counts.",
        )
        .likely(0.0, 0.08, 0.5)
        .repeated(2, 0.002)
        .band(|_, l| Known::given(Band::at_most(l, LimitId::converter_end_play))),
    Measurement::new("solenoid-room", "Room around the outside solenoid", Parts, Length, Instrument::Feeler)
        .fills("trans_brake.solenoid_clear_in")
        .told(
            "At mock-up, measure the nearest point of floor, shield and exhaust to the solenoid and its wires.",
            "Turn the solenoid, shield it, or move what is in the way. Do not cut a shield that carries a label.",
        )
        .hurts(
            "Under a vehicle: rated stands on hard, level ground, never a jack alone, wheels chocked. The exhaust stays hot \
             for long.",
        )
        .likely(0.05, 6.0, 24.0)
        .band(|_, l| Known::given(Band::at_least(l, LimitId::solenoid_gap)))
        .when(|j| j.valve_body.brake.is(BrakeKind::External)),
];
