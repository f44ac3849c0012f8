//! Power flow: what every element does in a range, and what tooth counts make.

use super::shared::{FIRST, REVERSE as REVERSE_RATIO, SECOND, ratio};
use crate::calc::power_flow::three_speed::{
    BRAKE, FIRST as FIRST_GEAR, FIRST_HELD, Fitted, NEUTRAL, Pair, REVERSE, SECOND as SECOND_GEAR, SECOND_HELD, THIRD,
    Trains, sets_from_ratios,
};
use crate::calc::power_flow::{
    ElementFlow, ElementState, Flow, Input as Shaft, Load, Misfit, Outcome as Does, Range, Teeth,
};
use crate::job::Word;
use crate::quantity::{One, PoundFoot, Quantity, Rpm, Unit};
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, short};

const BALANCE: &str = "derived: balance of speeds, torques and power over every member (Willis)";

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "power-flow",
        title: "Power flow of a range",
        what: "What every clutch, band and one-way clutch of the three-speed set holds in a range, how fast the shafts turn, \
               and what ties up or runs free.",
        inputs: &[
            FIRST,
            SECOND,
            REVERSE_RATIO
                .hint("As a plain size: reverse and the trans brake go by it. Blank, it follows from the other two.")
                .optional(),
            Input::choice("range", "Range", range_words, "second"),
            Input::number::<PoundFoot>("torque", "Torque at the input shaft", (-5000.0, 10000.0), "500")
                .hint("Behind the converter; below nought when the vehicle pushes the engine."),
            Input::number::<Rpm>("rpm", "Speed of the input shaft", (0.0, 15000.0), "3000"),
            Input::yes_no("front_band", "Front band fitted", "yes"),
            Input::yes_no("one_way", "Intermediate one-way clutch fitted", "yes"),
        ],
        work: flow,
        care: "What the sum holds, parts have to hold: none of it says that they do. Two ranges at once on the stand or the \
               road stops the output shaft dead.",
    },
    Sum {
        name: "planetary-teeth",
        title: "Planetary set by its teeth",
        what: "The ratio of ring to sun that tooth counts make, the pinion between them, and whether the pinions can be put \
               in evenly.",
        inputs: &[
            Input::count("sun", "Teeth of the sun gear", (5, 300), "30"),
            Input::count("ring", "Teeth of the ring gear", (10, 400), "62"),
            Input::count("pinions", "Pinions", (1, 12), "4"),
        ],
        work: counted,
        care: "",
    },
];

const RANGES: [(Word, &Range); 8] = [
    (Word { code: "first", label: "First" }, &FIRST_GEAR),
    (Word { code: "first_held", label: "First, held by the rear band" }, &FIRST_HELD),
    (Word { code: "second", label: "Second" }, &SECOND_GEAR),
    (Word { code: "second_held", label: "Second, held by the front band" }, &SECOND_HELD),
    (Word { code: "third", label: "Third" }, &THIRD),
    (Word { code: "reverse", label: "Reverse" }, &REVERSE),
    (Word { code: "brake", label: "Trans brake" }, &BRAKE),
    (Word { code: "neutral", label: "Neutral" }, &NEUTRAL),
];

fn range_words() -> Vec<Word> {
    RANGES.iter().map(|(word, _)| *word).collect()
}

fn flow(given: &Given<'_>) -> Worked {
    let (first, second) = (given.number::<One>("first")?, given.number::<One>("second")?);
    if first <= second {
        let message =
            format!("First gear ratio cannot be {}: it is above the second, {}.", ratio(first), ratio(second));
        return Amiss::clash("first", message);
    }
    let code = given.word("range")?;
    let (_, range) = RANGES.iter().find(|(word, _)| word.code == code).ok_or(Amiss::Absent("range"))?;
    let (speed, torque) = (given.number::<Rpm>("rpm")?, given.number::<PoundFoot>("torque")?);
    let fitted = Fitted { front_band: given.yes("front_band")?, intermediate_one_way: given.yes("one_way")? };
    let (_, follows) = sets_from_ratios(first, second);
    let reverse = given.maybe::<One>("reverse").unwrap_or(follows);
    let Some(trains) = Trains::from_ratios(first, second, reverse, fitted) else {
        let message = format!(
            "Reverse gear ratio cannot be {}: two sets on one sun make it {} beside {} and {}.",
            ratio(reverse),
            follows.to_places(2),
            ratio(first),
            ratio(second)
        );
        return Amiss::clash("reverse", message);
    };
    let train = trains.of(range);
    let flow = match train.flow(range, Shaft { speed, torque }) {
        Ok(flow) => flow,
        Err(fault) => return Amiss::clash("range", format!("Range cannot be that with these parts: {fault}.")),
    };
    let sets: Vec<_> = train.sets().iter().map(|set| ratio(set.ratio)).collect();
    let outcome = told(&flow, &format!("sets {}, {} at {}", sets.join(" and "), short(torque), short(speed)));
    Ok(outcome.remark(format!("Worked with the ratios of {}, which decide this range.", Pair::of(range).words())))
}

fn told(flow: &Flow, put_in: &str) -> Outcome {
    let (what, remark) = match &flow.outcome {
        Does::Driven(ratio) => (format!("{} input turns for one of the output", ratio.to_places(3)), None),
        Does::Stalled { fighting } => (
            "nothing turns".to_owned(),
            Some(format!(
                "These hold against each other: {}. Torques are those with nothing pushing at the wheels.",
                fighting.join(", ")
            )),
        ),
        Does::Free { loose, .. } => {
            let loose = if loose.is_empty() {
                String::new()
            } else {
                format!(" Speeds that nothing settles: {}.", loose.join(", "))
            };
            ("no torque goes through".to_owned(), Some(format!("The range drives nothing.{loose}")))
        }
        Does::Undecided { one_ways } => (
            "cannot be told".to_owned(),
            Some(format!("These one-way clutches could stand one way or the other: {}.", one_ways.join(", "))),
        ),
    };
    let whole = Line::new(
        format!("In {}", flow.range),
        what,
        "for every set: sun + ratio × ring = (1 + ratio) × carrier in speeds; the torques of its members add up to nought",
        put_in,
        BALANCE,
    );
    let shared = flow.shared.iter().map(|group| {
        format!("{} hold the same thing: how they share it depends on how hard each is applied.", group.join(" and "))
    });
    let elements = flow.elements.iter().filter(|element| element.state != ElementState::Open);
    let shafts = flow.shafts.iter().map(|shaft| {
        Line::new(
            format!("Speed, {}", shaft.name),
            or_unknown(shaft.speed),
            "from the balance of speeds; below nought it turns against the input",
            put_in,
            BALANCE,
        )
    });
    Outcome::default()
        .line(whole)
        .lines(elements.map(|element| element_line(element, put_in)))
        .lines(shafts)
        .remarks(remark)
        .remarks(shared)
}

fn or_unknown<U: Unit>(number: Option<Quantity<U>>) -> String {
    number.map_or_else(|| "not settled".to_owned(), Quantity::to_whole)
}

fn element_line(element: &ElementFlow, put_in: &str) -> Line {
    let load = match element.load {
        Load::Carries(torque) => torque.abs().to_whole(),
        Load::UpTo(torque) => format!("up to {}", torque.abs().to_whole()),
        Load::Unknown => "load cannot be told".to_owned(),
    };
    let value = match element.state {
        ElementState::Overrunning => format!("turns freely, at {}", or_unknown(element.slip.map(Quantity::abs))),
        ElementState::Unloaded => "carries nothing".to_owned(),
        ElementState::Undecided => "cannot be told".to_owned(),
        ElementState::Applied | ElementState::Open => load,
        ElementState::Locked => format!("holds {load}"),
    };
    Line::new(
        format!("The {}", element.name),
        value,
        "torque it puts on its shaft, from the balance of torques",
        put_in,
        BALANCE,
    )
}

fn counted(given: &Given<'_>) -> Worked {
    let teeth = Teeth { sun: given.count("sun")?, ring: given.count("ring")? };
    let pinions = given.count("pinions")?;
    let Some(pinion) = teeth.pinion() else {
        let message = format!(
            "Teeth of the ring gear cannot be “{}”: with a sun of {} there is no room for a pinion.",
            teeth.ring, teeth.sun
        );
        return Amiss::clash("ring", message);
    };
    let misfits = teeth.misfits(pinions);
    let told = misfits.iter().map(|misfit| match misfit {
        Misfit::NoRoom => "No pinion fits between sun and ring.",
        Misfit::OddDifference => {
            "Ring less sun is odd: no standard pinion meshes with both; one with a shifted profile might."
        }
        Misfit::Spacing => "This many pinions do not come to mesh at even spacing.",
        Misfit::Touching => "Neighboring pinions would touch.",
    });
    let fits = if misfits.is_empty() { "goes together, evenly spaced" } else { "does not go together evenly" };
    Ok(Outcome::default()
        .line(Line::new(
            "Ratio of ring to sun",
            teeth.ratio().to_places(4),
            "ring teeth / sun teeth",
            format!("{} / {}", teeth.ring, teeth.sun),
            "definition",
        ))
        .line(Line::new(
            "Pinion between them",
            format!("{pinion} teeth"),
            "(ring - sun) / 2",
            format!("({} - {}) / 2", teeth.ring, teeth.sun),
            "any machine-design text on planetary gears",
        ))
        .line(Line::new(
            format!("With {pinions} pinions it"),
            fits,
            "(sun + ring) / pinions is whole; tips of neighbors stay apart",
            format!("({} + {}) / {pinions}, pinion {pinion}", teeth.sun, teeth.ring),
            "any machine-design text on planetary gears",
        ))
        .remarks(told.map(str::to_owned)))
}
