//! The gear set with one shared sun: reactions, drum speed, what the trans brake splits, ratios that belong together.

use super::shared::{ENGINE_SPEED, ENGINE_TORQUE, FIRST, REVERSE, SECOND, STALL_RATIO, ratio};
use crate::calc::converter::turbine_torque;
use crate::calc::gear_set::{
    direct_drum_speed, direct_share_in_third, direct_share_on_brake, first_disagreement, first_from_others,
    forward_reaction, reverse_reaction,
};
use crate::calc::power_flow::three_speed::DISAGREEMENT;
use crate::quantity::{One, PoundFoot, Quantity, Rpm};
use crate::sums::declaration::{Amiss, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, short};

const DERIVED: &str = "derived from the balance of torques; before the converter multiplies";

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "ratios-agree",
        title: "Do the ratios belong together?",
        what: "Two sets on one sun make first gear follow from second and reverse. A written first that does not is a \
               slip of the pen, or a set of another kind.",
        inputs: &[FIRST, SECOND, REVERSE],
        work: agree,
        care: "",
    },
    Sum {
        name: "reactions",
        title: "Reactions in first and reverse",
        what: "What the rear one-way clutch holds in first, and the rear band in reverse.",
        inputs: &[FIRST, REVERSE, ENGINE_TORQUE],
        work: reactions,
        care: "",
    },
    Sum {
        name: "third-split",
        title: "Who carries third gear",
        what: "How the input torque splits between the direct and the forward clutch in third.",
        inputs: &[SECOND, ENGINE_TORQUE],
        work: third,
        care: "",
    },
    Sum {
        name: "brake-split",
        title: "Who carries the trans brake",
        what: "What the direct clutch, the forward clutch and the rear band hold while the trans brake is on and nothing \
               pushes at the wheels.",
        inputs: &[FIRST, REVERSE, ENGINE_TORQUE, STALL_RATIO],
        work: brake,
        care: "A unit on the brake stores a launch. Nobody stands before or behind the vehicle, wheels chocked on the \
               stand, and no hold longer than the shop allows.",
    },
    Sum {
        name: "drum-speed",
        title: "Direct drum speed",
        what: "How fast the direct drum turns: backwards in first, not at all in second, with the input in third.",
        inputs: &[FIRST, SECOND, ENGINE_SPEED.fact("engine.max_rpm")],
        work: drum,
        care: "A drum that bursts goes through the case. The drum maker's own speed limit comes before any sum.",
    },
];

fn agree(given: &Given<'_>) -> Worked {
    let (first, second, reverse) =
        (given.number::<One>("first")?, given.number::<One>("second")?, given.number::<One>("reverse")?);
    let from_others = first_from_others(second, reverse);
    let apart = first_disagreement(first, second, reverse);
    let remark = if apart <= DISAGREEMENT {
        "Ratios written to two decimals stay within about 0.02, and 0.03 is let pass: these belong together. Some other arrangements keep the \
         same relation, so it proves nothing about the kind of set."
    } else {
        "More than the 0.03 that rounding can explain: look at the numbers again, or the set is of another kind."
    };
    Ok(Outcome::default()
        .line(Line::new(
            "First gear by the other two",
            from_others.to_places(3),
            "second + (second - 1) × reverse",
            format!("{0} + ({0} - 1) × {1}", ratio(second), ratio(reverse)),
            "derived; holds for every pair of sets on one sun",
        ))
        .line(Line::new(
            "Apart from the first gear given",
            apart.to_places(3),
            "first given less first by the other two, without its sign",
            format!("{} - {}", ratio(first), from_others.to_places(3)),
            "derived",
        ))
        .remark(remark))
}

fn reactions(given: &Given<'_>) -> Worked {
    let (first, reverse, torque) =
        (given.number::<One>("first")?, given.number::<One>("reverse")?, given.number::<PoundFoot>("torque")?);
    Ok(Outcome::default()
        .line(Line::new(
            "Rear one-way clutch in first",
            forward_reaction(first, torque).to_whole(),
            "(first - 1) × torque",
            format!("({} - 1) × {}", ratio(first), short(torque)),
            DERIVED,
        ))
        .line(Line::new(
            "Rear band in reverse",
            reverse_reaction(reverse, torque).to_whole(),
            "(reverse + 1) × torque",
            format!("({} + 1) × {}", ratio(reverse), short(torque)),
            DERIVED,
        )))
}

fn third(given: &Given<'_>) -> Worked {
    let (second, torque) = (given.number::<One>("second")?, given.number::<PoundFoot>("torque")?);
    let share = direct_share_in_third(second);
    let direct = torque * share.value();
    Ok(Outcome::default()
        .line(Line::new(
            "Share of the direct clutch",
            share.to_places(3),
            "(second - 1) / second",
            format!("({0} - 1) / {0}", ratio(second)),
            "derived",
        ))
        .line(Line::new(
            "Direct clutch",
            direct.to_whole(),
            "share × torque",
            format!("{} × {}", share.to_places(3), short(torque)),
            DERIVED,
        ))
        .line(Line::new(
            "Forward clutch",
            (torque - direct).to_whole(),
            "torque - direct clutch",
            format!("{} - {}", short(torque), direct.to_whole()),
            DERIVED,
        )))
}

fn brake(given: &Given<'_>) -> Worked {
    let (first, reverse) = (given.number::<One>("first")?, given.number::<One>("reverse")?);
    let (torque, stall) = (given.number::<PoundFoot>("torque")?, given.number::<One>("stall_ratio")?);
    let share = direct_share_on_brake(first, reverse);
    let turbine = turbine_torque(torque, stall);
    let direct = turbine * share.value();
    Ok(Outcome::default()
        .line(Line::new(
            "Share of the direct clutch",
            share.to_places(3),
            "first / (first + reverse)",
            format!("{0} / ({0} + {1})", ratio(first), ratio(reverse)),
            "derived",
        ))
        .line(Line::new(
            "Turbine torque, all of it on the rear band",
            turbine.to_whole(),
            "engine torque × torque ratio",
            format!("{} × {}", short(torque), ratio(stall)),
            "derived; the band reacts in the sense of reverse, so the one-way clutch is no help",
        ))
        .line(Line::new(
            "Direct clutch",
            direct.to_whole(),
            "share × turbine torque",
            format!("{} × {}", share.to_places(3), turbine.to_whole()),
            "derived",
        ))
        .line(Line::new(
            "Forward clutch",
            (turbine - direct).to_whole(),
            "turbine torque - direct clutch",
            format!("{} - {}", turbine.to_whole(), direct.to_whole()),
            "derived",
        )))
}

fn drum(given: &Given<'_>) -> Worked {
    let (first, second, input) =
        (given.number::<One>("first")?, given.number::<One>("second")?, given.number::<Rpm>("rpm")?);
    if first <= second {
        let message =
            format!("First gear ratio cannot be {}: it is above the second, {}.", ratio(first), ratio(second));
        return Amiss::clash("first", message);
    }
    let line = |label: &str, gear: Quantity<One>| {
        Line::new(
            label,
            direct_drum_speed(gear, second, input).to_whole(),
            "input × (second / gear - 1) / (second - 1); below nought it runs backwards",
            format!("{} × ({} / {} - 1) / ({1} - 1)", short(input), ratio(second), ratio(gear)),
            "derived from the balance of speeds",
        )
    };
    Ok(Outcome::default()
        .line(line("Drum in first", first))
        .line(line("Drum in second", second))
        .line(line("Drum in third", Quantity::new(1.0))))
}
