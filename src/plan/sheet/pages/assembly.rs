//! Selective fits while the unit goes together.

use super::{Band, Chapter::Assembly, Edge, Fit, Instrument, Measurement, Scale::Length, SetKind};
use crate::job::{BrakeKind, Fact, UseKind};
use crate::rules::{Ask as _, Known, LimitId, Limits, YesNo as _};

/// Regulated air at a pack.
pub const AIR: &str = "A piston moves at once: keep fingers out of the pack, wear eye protection, and never point air at \
     skin. Use regulated dry air, no more than 30 psi here; the unit's manual and the rules of your workplace decide.";
/// The unit is moved and pried at.
pub const PRYING: &str = "The unit is heavy and slippery, and a bar that slips takes the hand with it. Hold the unit in its \
     stand, pry away from yourself, and keep fingers out of the gap.";
/// The servo spring.
pub const SERVO: &str = "The servo's cover and spring are under load. Hold them with the tool made for it, by the unit's \
     manual, and wear eye protection.";

/// The window of a pack of so many frictions.
fn pack(frictions: &Fact<u32>, limits: &Limits) -> Known<Band> {
    frictions.known().map(|count| {
        let edge = |limit| Some(Edge::for_each(limits, limit, count, "frictions"));
        Band {
            least: edge(LimitId::pack_clear_least),
            most: edge(LimitId::pack_clear_most),
            aim: edge(LimitId::pack_clear_aim),
            ..Band::NONE
        }
    })
}

const PACK_HOW: &str = "Stack the pack dry with its pressure plate and snap ring. Put a feeler between ring and plate at \
     three places around, or set a dial on the plate and lift it with regulated air. Write what each reading shows.";
const PACK_OUT: &str = "Change steels: what the stack grows, the clearance shrinks. Where the steels do not reach, a \
     thicker pressure plate or a selective snap ring does. Then read again.";

pub(super) static SHEET: &[Measurement] = &[
    Measurement::new("rear-end-play", "Rear end play", Assembly, Length, Instrument::Dial)
        .fills("bench.rear_end_play_in")
        .told(
            "With the center-support bolt at its torque, set a dial on the end of the output shaft. Push the shaft fully \
             in, zero the dial, pull the shaft out and read. Do it three times. Take it before the teardown as well, \
             and write that one down first.",
            "Make sure that the support is home and the shaft was pushed in. Then change the steel washer with three \
             lugs at the rear of the case, and read again. Measure the old one; its notches only tell its step.",
        )
        .hurts(PRYING)
        .likely(0.002, 0.08, 1.0)
        .repeated(3, 0.002)
        .band(|_, l| {
            Known::given(Band {
                tight: Some(Edge::of(l, LimitId::rear_play_tight)),
                loose: Some(Edge::of(l, LimitId::rear_play_loose)),
                ..Band::between(l, LimitId::rear_play_least, LimitId::rear_play_most).aiming(l, LimitId::rear_play_aim)
            })
        })
        .fit(Fit::Washer(SetKind::RearWasher)),
    Measurement::new("intermediate-clearance", "Intermediate pack clearance", Assembly, Length, Instrument::Feeler)
        .fills("intermediate.clear_in")
        .told(PACK_HOW, PACK_OUT)
        .hurts(AIR)
        .likely(0.005, 0.25, 1.0)
        .repeated(3, 0.006)
        .band(|j, l| pack(&j.intermediate.frictions, l))
        .fit(Fit::Pack(SetKind::IntermediateSteels)),
    Measurement::new("direct-clearance", "Direct pack clearance", Assembly, Length, Instrument::Feeler)
        .fills("direct.clear_in")
        .told(PACK_HOW, PACK_OUT)
        .hurts(AIR)
        .likely(0.008, 0.35, 1.0)
        .repeated(3, 0.006)
        .band(|j, l| pack(&j.direct.frictions, l))
        .fit(Fit::Pack(SetKind::DirectSteels)),
    Measurement::new("forward-clearance", "Forward pack clearance", Assembly, Length, Instrument::Feeler)
        .fills("forward.clear_in")
        .told(PACK_HOW, PACK_OUT)
        .hurts(AIR)
        .likely(0.008, 0.35, 1.0)
        .repeated(3, 0.006)
        .band(|j, l| pack(&j.forward.frictions, l))
        .fit(Fit::Pack(SetKind::ForwardSteels)),
    Measurement::new("needle-kit-stack", "Needle-bearing kit, height", Assembly, Length, Instrument::Micrometer)
        .told(
            "Only when a needle bearing goes in where a pair of washers came out. Measure the pair together, then the \
             bearing with its races together, pressed flat. Write the bearing here and the pair beside it.",
            "Put shims under the bearing until it stands as high as the pair did, then read the end play. A bearing \
             that stands higher than the pair cannot be shimmed: take a thinner race, or keep the washers.",
        )
        .likely(0.06, 0.35, 1.0)
        .repeated(2, 0.001)
        .fit(Fit::Shims(SetKind::Shims)),
    Measurement::new("front-end-play", "Front end play", Assembly, Length, Instrument::Dial)
        .fills("bench.front_end_play_in")
        .told(
            "With the pump at its torque, pry the output shaft forward so that the rear play is gone. Set a dial on the \
             input shaft, lift it with about 20 lb and read. Do it three times. Read before the pump is tight it means \
             nothing.",
            "Change the washer between pump cover and forward drum, torque the pump and read again. Measure the washer: \
             its color fades in oil.",
        )
        .hurts(PRYING)
        .likely(0.002, 0.09, 1.0)
        .repeated(3, 0.002)
        .band(|_, l| {
            let band = Band::between(l, LimitId::front_play_least, LimitId::front_play_most);
            Known::given(band.aiming(l, LimitId::front_play_aim))
        })
        .fit(Fit::Washer(SetKind::FrontWasher)),
    Measurement::new("rear-band-pin", "Rear band apply pin, gauge reading", Assembly, Length, Instrument::PinGauge)
        .fills_word("bands.rear_pin", "gauged", "not_gauged")
        .told(
            "Set the pin gauge on the rear servo bore and put the torque of the shop's sheet on it (about 25 lb-ft; \
             memory, medium). Write where its mark stands. The pin belongs to the window the mark falls in.",
            "Fit the pin of that window. When the mark falls in none, the band, its anchor or the servo is not as it \
             should be: look there before you grind a pin.",
        )
        .hurts(SERVO)
        .likely(0.0, 0.5, 2.0)
        .repeated(2, 0.005)
        .when(|j| {
            j.valve_body.brake.is_not(BrakeKind::None)
                | j.valve_body.low_band_first.yes()
                | j.usage.kind.one_of(&[UseKind::Tow, UseKind::Offroad])
        })
        .fit(Fit::Pin(SetKind::RearPins)),
];
