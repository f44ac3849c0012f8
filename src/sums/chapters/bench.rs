//! Small sums of the bench: offset dowels, cooler flow, how long a label is good.

use crate::calc::{cooler, dowel, label};
use crate::job::Word;
use crate::quantity::{Inch, Quart, Second};
use crate::rules::LimitId;
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, short};

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "offset-dowel",
        title: "Bell bore: offset dowel",
        what: "The offset of the dowels that brings a bell bore true to the crank.",
        inputs: &[Input::number::<Inch>("runout", "Bell bore runout, total", (0.0, 0.2), "0.014")
            .hint("The whole swing of the needle.")
            .fact("bell.runout_in")],
        work: dowels,
        care: "The indicator sweeps the bore with the engine turned by hand: ignition off, battery off.",
    },
    Sum {
        name: "cooler-flow",
        title: "Cooler flow",
        what: "Seconds that a quart takes through the cooler, from what was caught in a jug.",
        inputs: &[
            Input::number::<Second>("time", "Time", (0.5, 600.0), "30"),
            Input::number::<Quart>("caught", "Fluid caught", (0.1, 20.0), "2"),
        ],
        work: flow,
        care: "The fluid is hot and the engine runs: brakes on, wheels chocked, hose held, eyes covered. Stop before the \
               pan runs low.",
    },
    Sum {
        name: "label-expiry",
        title: "How long a safety label is good",
        what: "The last day that a dated label counts, from the month on it and the years its program gives.",
        inputs: &[
            Input::choice("part", "Part", part_words, "shield"),
            Input::month("month", "Month on the label", "2024-11").hint("Year and month."),
            Input::count("years", "Years it is good", (1, 10), "5")
                .hint("4.1 and 30.1 five, 29.1 three (memory, medium): read the label and the issuer's current list."),
        ],
        work: expiry,
        care: "A label in date says nothing about a part that was hit, cut, welded or bored. Whoever runs the event \
               decides.",
    },
];

fn part_words() -> Vec<Word> {
    vec![Word { code: "shield", label: "Shield" }, Word { code: "flexplate", label: "Flexplate" }]
}

fn dowels(given: &Given<'_>) -> Worked {
    let runout = given.number::<Inch>("runout")?;
    Ok(Outcome::default()
        .line(Line::new(
            "Offset of the dowels",
            dowel::offset(runout).to_places(4),
            "half of the total runout",
            format!("{} / 2", short(runout)),
            "exact (geometry) for a round bore",
        ))
        .at_most("The runout", runout.value(), LimitId::bell_runout, given.limits())
        .remark("Offset dowels come in a few sizes: fit the nearest, and sweep the bore again."))
}

fn flow(given: &Given<'_>) -> Worked {
    let (time, caught) = (given.number::<Second>("time")?, given.number::<Quart>("caught")?);
    let flow = cooler::flow(time, caught);
    Ok(Outcome::default()
        .line(
            Line::new(
                "A quart takes",
                flow.to_places(1),
                "time / fluid caught",
                format!("{} / {}", short(time), short(caught)),
                "definition; what is enough is common practice",
            )
            .fills("cooling.flow_s_per_qt", (flow.value() * 100.0).round() / 100.0),
        )
        .at_most("A quart's time", flow.value(), LimitId::cooler_flow, given.limits()))
}

fn expiry(given: &Given<'_>) -> Worked {
    let (month, years) = (given.month("month")?, given.count("years")?);
    let fact = match given.word("part")? {
        "flexplate" => "flexplate.expires",
        _ => "shield.expires",
    };
    let Some(end) = i16::try_from(years).ok().and_then(|years| label::good_until(month, years)) else {
        return Amiss::clash("month", "Month on the label cannot be so far ahead.");
    };
    Ok(Outcome::default()
        .line(
            Line::new(
                "Good until",
                end.to_string(),
                "end of the month on the label, so many years later",
                format!("{} + {years} years, end of the month", month.strftime("%Y-%m")),
                "years by the program, memory, medium: the label comes first",
            )
            .fills_day(fact, end),
        )
        .remark("Compare it with the day of the event, not with today."))
}
