//! Engine, bell, converter and driveshaft.

use super::{
    Band,
    Chapter::Installation,
    Counts, Edge, Fit, Instrument, Measurement,
    Scale::{Angle, Length},
};
use crate::job::{BellKind, YokeKind};
use crate::rules::{Ask as _, Known, LimitId, Together as _};

const TURNING: &str = "An engine that turns while a hand is at the flexplate takes the fingers off. Take the battery off, \
     turn the crank with a bar, and have nobody at the key.";
const UNDER: &str = "Work only under a vehicle on rated stands on hard level floor, never on a jack alone; the vehicle's \
     manual says where it may be held.";

const SLIP: &[YokeKind] = &[YokeKind::Slip, YokeKind::SlipRecessed];

pub(super) static SHEET: &[Measurement] = &[
    Measurement::new("crank-end-play", "Crank end play", Installation, Length, Instrument::Dial)
        .fills("engine.crank_end_play_in")
        .told(
            "Set a dial on the crank flange and pry the crank fore and aft. Three times.",
            "It is engine work: too much play means the thrust bearing is going, and a converter that pushes makes it \
             worse. The engine maker's figure decides.",
        )
        .hurts(TURNING)
        .likely(0.0005, 0.05, 0.5)
        .repeated(3, 0.001)
        .band(|_, l| Known::given(Band::at_most(l, LimitId::crank_end_play))),
    Measurement::new("flexplate-runout", "Flexplate runout", Installation, Length, Instrument::Dial)
        .fills("flexplate.runout_in")
        .told(
            "Set a dial on the flexplate at the circle of the converter bolts and turn the crank by hand once round. \
             Write highest less lowest.",
            "Change the flexplate. Bending it straight only moves the crack.",
        )
        .hurts(TURNING)
        .likely(0.0, 0.06, 0.5)
        .repeated(2, 0.003)
        .band(|_, l| Known::given(Band::at_most(l, LimitId::flexplate_runout))),
    Measurement::new("bell-runout", "Bell bore runout to the crank", Installation, Length, Instrument::Dial)
        .fills("bell.runout_in")
        .told(
            "Bolt the empty bell to the block. Set a dial on the crank flange, turn the crank by hand and sweep the bore \
             that holds the pump. Write highest less lowest.",
            "Fit offset dowels: they move the bell by half of what the dial shows. Turn both the same way, then sweep \
             again.",
        )
        .hurts(TURNING)
        .likely(0.0, 0.06, 0.5)
        .repeated(2, 0.002)
        .band(|_, l| {
            let loose = Some(Edge::of(l, LimitId::bell_sweep_wanted));
            Known::given(Band { loose, ..Band::at_most(l, LimitId::bell_runout) })
        })
        .when(|j| j.bell.kind.is(BellKind::BoltOn))
        .fit(Fit::OffsetDowels),
    Measurement::new("pilot-recess", "Recess of the crank pilot bore", Installation, Length, Instrument::DepthGauge)
        .fills("flexplate.pilot_recess_in")
        .told(
            "With the flexplate on, measure from its face, where the converter pads will sit, to the mouth of the bore \
             that takes the pilot.",
            "There is no limit of its own: it is taken off the length of the pilot.",
        )
        .hurts(TURNING)
        .likely(0.03, 0.9, 3.0)
        .repeated(2, 0.005),
    Measurement::new("converter-spacers", "Spacers fitted at the converter", Installation, Length, Instrument::Micrometer)
        .fills("converter.spacer_in")
        .told(
            "Measure the spacers that are put between pad and flexplate, the same at every pad; 0 when there are none.",
            "There is no limit of its own: whatever they are thick is taken off the length of the pilot.",
        )
        .likely(0.0, 0.3, 2.0)
        .repeated(2, 0.003),
    Measurement::new("pilot-length", "Converter pilot length", Installation, Length, Instrument::DepthGauge)
        .fills("converter.pilot_length_in")
        .told(
            "Measure how far the pilot stands out ahead of the pads that touch the flexplate. Measure recess and spacers \
             first: the limit follows from them.",
            "Fit a longer pilot or a crank adapter. Held too little, the converter runs out of true and shakes itself \
             apart. See that it does not bottom: a thirty-second has to be left behind it (looked up).",
        )
        .likely(0.1, 1.5, 4.0)
        .repeated(2, 0.005)
        .band(|j, l| {
            let taken = (j.flexplate.pilot_recess_in.known(), j.converter.spacer_in.known()).together();
            taken.map(|(recess, spacer)| {
                let held = Edge::of(l, LimitId::pilot_held);
                let value = recess.value() + spacer.value() + held.value;
                let mark = format!("recess {recess}, spacers {spacer}, {} held: {}", l.pilot_held, held.mark);
                Band { least: Some(Edge { value, mark, limit: held.limit }), ..Band::NONE }
            })
        }),
    Measurement::new("converter-gap", "Converter gap", Installation, Length, Instrument::DrillShank)
        .fills("converter.gap_in")
        .told(
            "Bolt the unit up, push the converter fully back and try drill shanks between pad and flexplate at all three \
             pads. Write each of them: the tightest counts.",
            "Too little: stop, the converter is not home or the pilot bottoms; drawn up it breaks the pump. Too much: \
             equal spacers at every pad, then look again how far the pilot is held.",
        )
        .hurts(UNDER)
        .likely(0.02, 0.9, 4.0)
        .at_places(3, 0.032, Counts::Least)
        .band(|_, l| {
            Known::given(Band {
                tight: Some(Edge::of(l, LimitId::gap_tight)),
                loose: Some(Edge::of(l, LimitId::gap_wide)),
                ..Band::between(l, LimitId::gap_crushing, LimitId::gap_too_wide).aiming(l, LimitId::gap_aim)
            })
        })
        .fit(Fit::Spacers),
    Measurement::new("yoke-droop", "Spline engaged at full droop", Installation, Length, Instrument::Tape)
        .fills("yoke.engaged_droop_in")
        .told(
            "Let the axle hang, mark the yoke at the seal, pull the yoke off and measure how much spline was still in.",
            "The driveshaft is too short. Have a longer one made; a spacer behind a flange only hides it.",
        )
        .hurts(UNDER)
        .likely(0.5, 9.0, 24.0)
        .repeated(2, 0.125)
        .band(|_, l| Known::given(Band::at_least(l, LimitId::droop_engaged)))
        .when(|j| j.yoke.kind.one_of(SLIP)),
    Measurement::new("yoke-ride", "Slip left at ride height", Installation, Length, Instrument::Tape)
        .told(
            "With the vehicle on its wheels, or the axle held at ride height, push the yoke in until it stops and measure \
             how far it went.",
            "Shorten or lengthen the driveshaft by the difference.",
        )
        .hurts(UNDER)
        .likely(0.15, 4.0, 24.0)
        .repeated(2, 0.125)
        .band(|_, l| Known::given(Band::between(l, LimitId::ride_free_least, LimitId::ride_free_most)))
        .when(|j| j.yoke.kind.one_of(SLIP)),
    Measurement::new("yoke-bump", "Room left at full bump", Installation, Length, Instrument::Tape)
        .fills("yoke.gap_bump_in")
        .told(
            "Lift the axle to its stops and measure how far the yoke can still go in before it touches.",
            "The driveshaft is too long: at the first hard landing it drives the output shaft through the unit.",
        )
        .hurts(UNDER)
        .likely(0.0, 3.0, 24.0)
        .repeated(2, 0.125)
        .band(|_, l| Known::given(Band::at_least(l, LimitId::bump_gap)))
        .when(|j| j.yoke.kind.one_of(SLIP)),
    Measurement::new("front-joint-angle", "Front joint angle", Installation, Angle, Instrument::AngleGauge)
        .fills("driveshaft.front_angle_deg")
        .told(
            "With the vehicle at ride height, read the slope of the unit's output and of the driveshaft. Write the \
             difference.",
            "Shim the mount or the axle until the joint runs flatter.",
        )
        .hurts(UNDER)
        .likely(0.0, 12.0, 45.0)
        .repeated(2, 0.5)
        .band(|_, l| Known::given(Band::at_most(l, LimitId::joint_angle))),
    Measurement::new("rear-joint-angle", "Rear joint angle", Installation, Angle, Instrument::AngleGauge)
        .fills("driveshaft.rear_angle_deg")
        .told(
            "With the vehicle at ride height, read the slope of the axle's input and of the driveshaft. Write the \
             difference. Read the front joint first: the two have to be nearly the same.",
            "Shim the axle until both joints run at nearly the same angle; what one adds to the turn the other has to \
             take away.",
        )
        .hurts(UNDER)
        .likely(0.0, 12.0, 45.0)
        .repeated(2, 0.5)
        .band(|j, l| {
            j.driveshaft.front_angle_deg.known().map(|front| {
                let may = Edge::of(l, LimitId::joint_difference);
                let edge = |value: f64| {
                    let mark = format!("{} from the front joint's {front}: {}", l.joint_difference, may.mark);
                    Some(Edge { value, mark, limit: may.limit })
                };
                let highest = Edge::of(l, LimitId::joint_angle);
                let above = front.value() + may.value;
                let most = if above < highest.value { edge(above) } else { Some(highest) };
                Band { least: edge((front.value() - may.value).max(0.0)), most, ..Band::NONE }
            })
        }),
];
