//! The converter: stall behind another engine, heat on the brake, spacer and pilot.

use super::shared::{CONVERTER_FLUID, CONVERTER_METAL, ENGINE_TORQUE, RATED, STALL, brake_power_line};
use crate::calc::converter::{brake_power, off_the_label, pilot_engaged, spacer, stall_at, temperature_rise};
use crate::quantity::{Inch, Kilogram, PoundFoot, Quantity, Rpm, Second};
use crate::rules::LimitId;
use crate::sums::declaration::{Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, short};

/// The bench rule for every stall, quoted wherever one is planned.
pub(super) const STALL_CARE: &str = "A stall test: wheels chocked, brakes on, nobody before or behind, five seconds at most, then \
                          neutral until it has cooled. The unit's manual comes first.";

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "stall-elsewhere",
        title: "Stall behind another engine",
        what: "What a converter stalls at behind another torque than the one on its label.",
        inputs: &[STALL, RATED, ENGINE_TORQUE],
        work: stall,
        care: STALL_CARE,
    },
    Sum {
        name: "brake-heat",
        title: "Heat on the trans brake",
        what: "The power that turns to heat while the brake holds, and how far the converter warms.",
        inputs: &[
            ENGINE_TORQUE,
            Input::number::<Rpm>("held", "Stall speed", (500.0, 9000.0), "4098")
                .hint("Behind this engine; the sum before this one gives it."),
            Input::number::<Second>("seconds", "Time held", (0.1, 60.0), "3").fact("trans_brake.hold_s"),
            CONVERTER_FLUID,
            CONVERTER_METAL,
        ],
        work: heat,
        care: STALL_CARE,
    },
    Sum {
        name: "converter-spacer",
        title: "Converter gap, spacer and pilot",
        what: "The spacer that brings the pull-forward gap right, and how much pilot is left in the crank behind it.",
        inputs: &[
            Input::number::<Inch>("gap", "Gap, pad to flexplate", (0.0, 1.5), "0.220")
                .hint("With the converter fully back.")
                .fact("converter.gap_in"),
            Input::number::<Inch>("pilot", "Pilot ahead of the pads", (0.0, 2.0), "0.55")
                .fact("converter.pilot_length_in"),
            Input::number::<Inch>("recess", "Flexplate face to the crank's bore", (0.0, 1.5), "0.20")
                .fact("flexplate.pilot_recess_in"),
        ],
        work: gap,
        care: "A converter bolted up without its gap breaks the pump, and one whose pilot is not held runs out and can \
               come through the bell. Turn it by hand before and after every bolt.",
    },
];

fn stall(given: &Given<'_>) -> Worked {
    let (label, rated, here) =
        (given.number::<Rpm>("stall")?, given.number::<PoundFoot>("rated")?, given.number::<PoundFoot>("torque")?);
    let stall = stall_at(label, here, rated);
    let off = off_the_label(stall, label);
    Ok(Outcome::default()
        .line(Line::new(
            "Stall here",
            stall.to_whole(),
            "stall on the label × root of (torque here / torque it was given at)",
            format!("{} × √({} / {})", short(label), short(here), short(rated)),
            "holds while the converter's capacity factor stays the same",
        ))
        .line(Line::new(
            "Against the label",
            off.to_percent(1),
            "stall here / stall on the label - 1",
            format!("{} / {} - 1", stall.to_whole(), short(label)),
            "exact",
        ))
        .at_most("The difference either way", off.abs().value(), LimitId::stall_off_label, given.limits())
        .remark("Use the engine's torque near the stall speed, not its peak: a peaky engine makes less down there."))
}

fn heat(given: &Given<'_>) -> Worked {
    let (torque, held) = (given.number::<PoundFoot>("torque")?, given.number::<Rpm>("held")?);
    let seconds = given.number::<Second>("seconds")?;
    let (fluid, metal) = (given.number::<Kilogram>("fluid")?, given.number::<Kilogram>("metal")?);
    let power = brake_power(torque, held);
    let rise = temperature_rise(power, seconds, fluid, metal);
    Ok(Outcome::default()
        .line(Line::new(
            "The converter warms by",
            rise.to_places(0),
            "kW × s / (2.0 × kg fluid + 0.46 × kg steel)",
            format!("{} × {} / (2.0 × {} + 0.46 × {})", power.to_places(0), short(seconds), short(fluid), short(metal)),
            "energy balance with nothing led away; heat of the fluid memory, high",
        ))
        .line(brake_power_line(torque, held))
        .at_most("Warming in one hold", rise.value(), LimitId::brake_heat, given.limits()))
}

fn gap(given: &Given<'_>) -> Worked {
    let (gap, pilot, recess) =
        (given.number::<Inch>("gap")?, given.number::<Inch>("pilot")?, given.number::<Inch>("recess")?);
    let limits = given.limits();
    let needed = spacer(gap, limits.gap_aim);
    let wanted = gap > limits.gap_wide;
    let engaged = pilot_engaged(pilot, needed, recess);
    let none = needed == Quantity::new(0.0);
    let mut shim = Line::new(
        "Spacer at every pad",
        needed.to_places(3),
        "gap - aim, nothing when the gap is that small already",
        format!("{} - {}", short(gap), short(limits.gap_aim)),
        "exact; 5/32 as aim and 1/8 to 3/16 are looked up, and the shop's to move",
    );
    if none {
        shim.worked = format!("{} is not above {}, so the spacer is {}", short(gap), short(limits.gap_aim), shim.value);
    }
    let thickness = (needed.value() * 1e4).round() / 1e4;
    let left = gap - needed;
    Ok(Outcome::default()
        .line(if wanted { shim.plans("converter.spacer_in", thickness) } else { shim })
        .remarks(
            (!wanted)
                .then(|| format!("Up to {} the gap is left as it is: no spacer is wanted.", short(limits.gap_wide))),
        )
        .line(Line::new(
            "Gap with that spacer",
            left.to_places(3),
            "gap - spacer",
            format!("{} - {}", short(gap), needed.to_places(3)),
            "exact",
        ))
        .line(Line::new(
            "Pilot left in the crank",
            engaged.to_places(3),
            "pilot - spacer - recess",
            format!("{} - {} - {}", short(pilot), needed.to_places(3), short(recess)),
            "exact; below nought it does not reach the crank",
        ))
        .at_least("The gap with that spacer", left.value(), LimitId::gap_tight, given.limits())
        .at_most("The gap with that spacer", left.value(), LimitId::gap_wide, given.limits())
        .at_least("The pilot left in the crank", engaged.value(), LimitId::pilot_held, given.limits()))
}
