//! Selective fits: the washer, the steels, the shims or the pin to fit, chains of sizes, repeated readings.

use crate::calc::fit::{
    Dimension, Landing, Packing, Part, Pick, Pin, PinPick, Shimmed, Stack, Window, chain, choose, fill, landings,
    pick_pin, settle, shim, wanted,
};
use crate::quantity::{Inch, Quantity};
use crate::rules::LimitId;
use crate::sums::declaration::{Amiss, Input, Measure, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

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
const STEELS: Input =
    Input::numbers::<Inch>("shelf", "Steels on the shelf", (0.02, 0.5), (1, 12), "0.077 0.090 0.097 0.110")
        .hint("Each size once; the sum reckons with enough of each.");

const AGAIN: &str = "A part is chosen by arithmetic and proven by measuring: build it with the new part and read the gauge \
                     again before it is closed.";

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "front-washer",
        title: "Front end play: washer to fit",
        what: "From the washer that is in, the reading and the shelf: the washer to fit, and the play it will leave.",
        inputs: &[
            OLD,
            Input::number::<Inch>("reading", "Front end play measured", (0.0, 0.5), "0.031").fact("bench.front_end_play_in"),
            SHELF,
            UNSURE,
        ],
        work: front,
        care: "",
    },
    Sum {
        name: "rear-washer",
        title: "Rear end play: washer to fit",
        what: "From the washer that is in, the reading and the shelf: the washer to fit, and the play it will leave.",
        inputs: &[
            OLD,
            Input::number::<Inch>("reading", "Rear end play measured", (0.0, 0.5), "0.031").fact("bench.rear_end_play_in"),
            SHELF,
            UNSURE,
        ],
        work: rear,
        care: "",
    },
    Sum {
        name: "pack-steels",
        title: "Pack clearance: steels to fit",
        what: "From the steels in a pack, its clearance and the shelf: the steels to build it with, several sizes at once \
               where that comes nearer.",
        inputs: &[
            Input::count("frictions", "Lined plates", (1, 10), "6"),
            Input::numbers::<Inch>("fitted", "Steels in the pack", (0.02, 0.5), (1, 10), "0.090 0.090 0.090 0.090 0.090")
                .hint("Each of them, with blanks between."),
            Input::number::<Inch>("clearance", "Clearance measured", (0.0, 0.5), "0.140"),
            STEELS,
        ],
        work: pack,
        care: "",
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
    Sum {
        name: "band-pin",
        title: "Rear band: apply pin",
        what: "The apply pin whose window the gauge reading falls in.",
        inputs: &[
            Input::number::<Inch>("reading", "Gauge reading", (0.0, 2.0), "0.210"),
            Input::pairs(
                "pins",
                "Windows of the pins",
                (Measure::of::<Inch>(0.0, 2.0), Measure::of::<Inch>(0.0, 2.0)),
                (1, 8),
                "0.000 0.120; 0.120 0.240; 0.240 0.360",
            )
            .hint("Lowest and highest reading of each pin, from the sheet of the unit, pins with a semicolon between them."),
        ],
        work: pin,
        care: "",
    },
    Sum {
        name: "tolerance-chain",
        title: "Chain of sizes: the gap it leaves",
        what: "The gap a stack leaves, with what it may be off at its worst, and when the errors fall by chance.",
        inputs: &[
            Input::pairs("opens", "What opens the gap", (SIZE, GIVE), (1, 8), "3.750 0.002; 3.750 0.003")
                .hint("Size and how far it may be off, either way; sizes with a semicolon between them."),
            Input::pairs("closes", "What fills it", (SIZE, GIVE), (1, 12), "1.750 0.003; 5.700 0.001; 0.031 0.002")
                .hint("The same of everything that stands in the gap."),
        ],
        work: gap,
        care: "",
    },
    Sum {
        name: "repeated-readings",
        title: "Repeated readings: is it a measurement?",
        what: "One number out of several readings of the same thing; readings that move too far are none.",
        inputs: &[
            Input::numbers::<Inch>("readings", "Readings", (-1.0, 60.0), (2, 12), "0.012 0.0125 0.0115")
                .hint("With blanks between them."),
            Input::number::<Inch>("may_move", "How far they may lie apart", (0.0001, 1.0), "0.002"),
            Input::number::<Inch>("step", "Least the instrument shows", (0.0001, 0.1), "0.0005"),
        ],
        work: readings,
        care: "",
    },
];

const SIZE: Measure = Measure::of::<Inch>(0.0, 60.0);
const GIVE: Measure = Measure::of::<Inch>(0.0, 1.0);

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
        .remark(AGAIN))
}

fn listed(sizes: &[Quantity<Inch>]) -> String {
    sizes.iter().map(|size| plain(size.value())).collect::<Vec<_>>().join(", ")
}

fn pack(given: &Given<'_>) -> Worked {
    let frictions = f64::from(given.count("frictions")?);
    let (fitted, shelf) = (given.numbers::<Inch>("fitted")?, given.numbers::<Inch>("shelf")?);
    let clearance = given.number::<Inch>("clearance")?;
    let limits = given.limits();
    let at = |limit| Quantity::<Inch>::new(limits.get(limit)) * frictions;
    let window = Window {
        least: at(LimitId::pack_clear_least),
        aim: at(LimitId::pack_clear_aim),
        most: at(LimitId::pack_clear_most),
    };
    let (nearest, fewest, remark) = match fill(&fitted, clearance, &window, &shelf) {
        Packing::Fits { nearest, fewest } => (nearest, fewest, None),
        Packing::NoneFits { nearest, off } => {
            let way = if off.value() > 0.0 { "too loose" } else { "too tight" };
            let said = format!("No steels from this shelf fit. The nearest would be {} {way}.", short(off.abs()));
            (nearest, None, Some(said))
        }
        Packing::NoSteels => return Err(Amiss::Absent("fitted")),
    };
    let line = |label: &'static str, steels: &crate::calc::fit::Filled| {
        let sum: f64 = fitted.iter().map(|steel| steel.value()).sum();
        Line::new(
            label,
            format!("{} in, leaving {}", listed(&steels.steels), steels.result.to_places(4)),
            "clearance + steels that are in - steels to fit, of all ways the one nearest to the aim",
            format!("{} + {} - ({})", short(clearance), plain(sum), listed(&steels.steels).replace(", ", " + ")),
            "exact (geometry)",
        )
    };
    let result = nearest.result.value() / frictions;
    Ok(Outcome::default()
        .line(line(if remark.is_some() { "No steels fit; nearest" } else { "Steels to fit" }, &nearest))
        .lines(fewest.iter().map(|steels| line("With the fewest steels changed", steels)))
        .line(Line::new(
            "Clearance wanted",
            window.aim.to_places(3),
            "aim for each friction × frictions",
            format!("{} × {}", plain(limits.get(LimitId::pack_clear_aim)), plain(frictions)),
            "the shop's aim",
        ))
        .at_least("The clearance for each friction", result, LimitId::pack_clear_least, limits)
        .at_most("The clearance for each friction", result, LimitId::pack_clear_most, limits)
        .remarks(remark)
        .remark(format!("It aims by the {}.", limits.used(LimitId::pack_clear_aim)))
        .remark(AGAIN))
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
        .remark(AGAIN))
}

fn pin(given: &Given<'_>) -> Worked {
    let reading = given.number::<Inch>("reading")?;
    let windows = given.pairs::<Inch, Inch>("pins")?;
    if let Some((from, to)) = windows.iter().find(|(from, to)| from > to) {
        let message = format!(
            "Windows of the pins cannot be “{} {}”: the lowest reading comes first.",
            plain(from.value()),
            plain(to.value())
        );
        return Amiss::clash("pins", message);
    }
    let pins: Vec<Pin> = windows.iter().map(|(from, to)| Pin { from: *from, to: *to }).collect();
    let (place, off) = match pick_pin(reading, &pins) {
        PinPick::Fits(place) => (place, None),
        PinPick::NoneFits { nearest, off } => (nearest, Some(off)),
        PinPick::NoPins => return Err(Amiss::Absent("pins")),
    };
    let pin = pins[place];
    let value = format!("pin {} of the list, {} to {}", place + 1, short(pin.from), short(pin.to));
    Ok(Outcome::default()
        .line(Line::new(
            if off.is_some() { "No pin fits; nearest" } else { "Pin to fit" },
            value,
            "the pin whose window the reading falls in",
            format!("{} among {} windows", short(reading), pins.len()),
            "exact for the windows given",
        ))
        .remarks(off.map(|off| {
            let way = if off.value() > 0.0 { "above" } else { "below" };
            format!(
                "The reading is {} {way} the nearest window: measure again, and look for what is worn.",
                short(off.abs())
            )
        })))
}

fn gap(given: &Given<'_>) -> Worked {
    let all = |name, opens| -> Result<Vec<Dimension>, Amiss> {
        let pairs = given.pairs::<Inch, Inch>(name)?;
        Ok(pairs.into_iter().map(|(size, give)| Dimension { size, give, opens }).collect())
    };
    let (opens, closes) = (all("opens", true)?, all("closes", false)?);
    let said = |sizes: &[Dimension]| sizes.iter().map(|one| plain(one.size.value())).collect::<Vec<_>>().join(" + ");
    let every: Vec<Dimension> = opens.iter().chain(&closes).copied().collect();
    let gives: Vec<String> = every.iter().map(|one| plain(one.give.value())).collect();
    let squares: Vec<String> = gives.iter().map(|give| format!("{give}²")).collect();
    let chain = chain(&every);
    let ends =
        |off: Quantity<Inch>| format!("{} to {}", (chain.gap - off).to_places(4), (chain.gap + off).to_places(4));
    let source = "Shigley's Mechanical Engineering Design, 9th edition, section 1-13";
    Ok(Outcome::default()
        .line(Line::new(
            "Gap as meant",
            chain.gap.to_places(4),
            "what opens it - what fills it",
            format!("{} - ({})", said(&opens), said(&closes)),
            source,
        ))
        .line(Line::new(
            "Off at its worst, either way",
            chain.worst.to_places(4),
            "all that the sizes may be off, added up",
            gives.join(" + "),
            source,
        ))
        .line(Line::new(
            "Off by chance, either way",
            chain.likely.to_places(4),
            "root of the sum of the squares; for errors that are independent and centered",
            format!("√({})", squares.join(" + ")),
            source,
        ))
        .remark(format!("At its worst the gap is {}, by chance {}.", ends(chain.worst), ends(chain.likely))))
}

fn readings(given: &Given<'_>) -> Worked {
    let (readings, may_move) = (given.numbers::<Inch>("readings")?, given.number::<Inch>("may_move")?);
    let step = given.number::<Inch>("step")?;
    match settle(&readings, may_move, step) {
        None => Err(Amiss::Absent("readings")),
        Some(Err(moves)) => Amiss::clash(
            "readings",
            format!(
                "Readings cannot be from {} to {}: they lie further apart than {}, so this is no measurement. Look how it \
                 is held, and read again.",
                short(moves.low),
                short(moves.high),
                short(may_move)
            ),
        ),
        Some(Ok(settled)) => Ok(Outcome::default()
            .line(Line::new(
                "The measurement",
                short(settled.value),
                "mean of the readings, rounded to what the instrument shows",
                format!("({}) / {}", listed(&readings).replace(", ", " + "), readings.len()),
                "common practice",
            ))
            .line(Line::new(
                "Spread",
                short(settled.spread),
                "highest - lowest",
                format!("highest - lowest of {}", listed(&readings)),
                "exact",
            ))),
    }
}
