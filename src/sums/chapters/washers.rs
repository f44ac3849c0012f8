//! Washers and shims: which one to fit, and the play it leaves.

use super::shared::{PROVEN, listed};
use crate::calc::fit::{Landing, Part, Pick, Shimmed, Stack, Window, choose, landings, shim, wanted};
use crate::plan::sheet::PRYING;
use crate::quantity::{Inch, Quantity};
use crate::rules::LimitId;
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, short};

const OLD: Input =
    Input::number::<Inch>("old", "Washer that is in", (0.02, 0.5), "0.073").hint("Measured, not by its color.");
const SHELF: Input = Input::numbers::<Inch>(
    "shelf",
    "Washers on the shelf",
    (0.02, 0.5),
    (1, 12),
    "0.060 0.071 0.082 0.095 0.106 0.117",
)
.hint("Each measured, with blanks between them.");
const UNSURE: Input = Input::number::<Inch>("unsure", "How far the reading may be off", (0.0, 0.02), "0.001")
    .hint("Either way; leave it blank when you do not know.")
    .optional();

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "front-washer",
        title: "Front end play: washer to fit",
        what: "From the washer that is in, the reading and the shelf: the washer to fit, and the play it will leave.",
        inputs: &[
            OLD,
            Input::number::<Inch>("reading", "Front end play measured", (0.0, 0.5), "0.031")
                .fact("bench.front_end_play_in"),
            SHELF,
            UNSURE,
        ],
        work: front,
        care: PRYING,
    },
    Sum {
        name: "rear-washer",
        title: "Rear end play: washer to fit",
        what: "From the washer that is in, the reading and the shelf: the washer to fit, and the play it will leave.",
        inputs: &[
            OLD,
            Input::number::<Inch>("reading", "Rear end play measured", (0.0, 0.5), "0.031")
                .fact("bench.rear_end_play_in"),
            SHELF,
            UNSURE,
        ],
        work: rear,
        care: PRYING,
    },
    Sum {
        name: "needle-kit",
        title: "Needle-bearing kit: shims",
        what: "The shims that bring a needle-bearing kit to the height of the pair of washers it replaces.",
        inputs: &[
            Input::number::<Inch>("old", "Pair of washers that came out", (0.02, 1.0), "0.120"),
            Input::number::<Inch>("new", "Bearing with its races", (0.02, 1.0), "0.104"),
            Input::numbers::<Inch>("shelf", "Shims on the shelf", (0.001, 0.2), (1, 12), "0.005 0.010 0.015"),
        ],
        work: kit,
        care: "",
    },
];

fn front(given: &Given<'_>) -> Worked {
    let limits = [LimitId::front_play_least, LimitId::front_play_aim, LimitId::front_play_most];
    washer(given, limits)
}

fn rear(given: &Given<'_>) -> Worked {
    let limits = [LimitId::rear_play_least, LimitId::rear_play_aim, LimitId::rear_play_most];
    washer(given, limits)
}

fn washer(given: &Given<'_>, [least, aim, most]: [LimitId; 3]) -> Worked {
    let (old, reading) = (given.number::<Inch>("old")?, given.number::<Inch>("reading")?);
    let unsure = given.maybe::<Inch>("unsure");
    let limits = given.limits();
    let at = |limit| Quantity::<Inch>::new(limits.get(limit));
    let window = Window { least: at(least), aim: at(aim), most: at(most) };
    let shelf = given.numbers::<Inch>("shelf")?;
    let parts: Vec<Part> = shelf.iter().map(|size| Part { size: *size, give: Quantity::new(0.0) }).collect();
    let all = landings(old, reading, unsure.unwrap_or(Quantity::new(0.0)), &window, &parts);
    let exact = Line::new(
        "Thickness wanted",
        wanted(old, reading, window.aim).to_places(4),
        "washer that is in + reading - aim",
        format!("{} + {} - {}", short(old), short(reading), short(window.aim)),
        "exact (geometry)",
    );
    let result = |landing: &Landing| {
        Line::new(
            "Play it will leave",
            landing.result.to_places(4),
            "reading + washer that is in - washer to fit",
            format!("{} + {} - {}", short(reading), short(old), short(shelf[landing.part])),
            "exact (geometry)",
        )
    };
    let best = |landing: &Landing, label: &str| {
        Line::new(
            label,
            shelf[landing.part].to_places(4),
            "the one on the shelf that lands nearest to the aim",
            format!("nearest to {} of {} sizes", short(wanted(old, reading, window.aim)), shelf.len()),
            "exact for the sizes given",
        )
    };
    let (landing, outcome) = match choose(&all, &window) {
        Pick::Fits(landing) => (landing, Outcome::default().line(best(&landing, "Washer to fit"))),
        Pick::NoneFits { nearest, off } => {
            let way = if off.value() > 0.0 { "too loose" } else { "too tight" };
            let remark = format!("No washer on the shelf fits. The nearest would be {} {way}.", short(off.abs()));
            (nearest, Outcome::default().line(best(&nearest, "No washer fits; nearest")).remark(remark))
        }
        Pick::NoParts => return Err(Amiss::Absent("shelf")),
    };
    let unsure = unsure.map(|_| {
        let end = if landing.sure { "still within." } else { "which would be outside." };
        let (low, high) = (landing.result - landing.worst, landing.result + landing.worst);
        format!("With the reading as far off as you say it comes to {} to {}, {end}", short(low), short(high))
    });
    Ok(outcome
        .line(result(&landing))
        .line(exact)
        .at_least("The play it will leave", landing.result.value(), least, limits)
        .at_most("The play it will leave", landing.result.value(), most, limits)
        .remarks(unsure)
        .remark(format!("It aims by the {}.", limits.used(aim)))
        .remark(PROVEN))
}

fn kit(given: &Given<'_>) -> Worked {
    let (old, new) = (given.number::<Inch>("old")?, given.number::<Inch>("new")?);
    let shelf = given.numbers::<Inch>("shelf")?;
    let limits = given.limits();
    let stack = Stack { old, new, within: Quantity::new(limits.get(LimitId::kit_stack)) };
    let line = |label: &str, shims: &[Quantity<Inch>]| {
        let value = if shims.is_empty() { "none".to_owned() } else { format!("{} in", listed(shims)) };
        Line::new(
            label,
            value,
            "pair that came out - bearing with its races, by the fewest shims that come near enough",
            format!("{} - {} by {}", short(old), short(new), listed(&shelf)),
            "exact (geometry); at most three shims",
        )
    };
    let (outcome, higher) = match shim(&stack, &shelf, 3) {
        Shimmed::Fits { shims, higher } => (Outcome::default().line(line("Shims", &shims)), higher),
        Shimmed::NoneFits { shims, higher } => {
            let said = "No three shims from this shelf bring it near enough.";
            (Outcome::default().line(line("No shims fit; nearest", &shims)).remark(said), higher)
        }
        Shimmed::TooHigh(higher) => {
            let said = "The bearing alone stands higher than the pair: no shim makes it lower.";
            (Outcome::default().line(line("Shims", &[])).remark(said), higher)
        }
    };
    Ok(outcome
        .line(Line::new(
            "Higher than the pair was",
            higher.to_places(4),
            "bearing + shims - pair that came out; below nought it stands lower",
            format!("{} + shims - {}", short(new), short(old)),
            "exact (geometry)",
        ))
        .at_most("The difference either way", higher.abs().value(), LimitId::kit_stack, limits)
        .remark(PROVEN))
}
