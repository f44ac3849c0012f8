//! Chains of sizes, and whether repeated readings are a measurement.

use super::shared::listed;
use crate::calc::fit::{Dimension, chain, settle};
use crate::quantity::{Inch, Quantity};
use crate::sums::declaration::{Amiss, Input, Measure, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

const SIZES: &[Measure] = &[Measure::of::<Inch>(0.0, 60.0), Measure::of::<Inch>(0.0, 1.0)];

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "tolerance-chain",
        title: "Chain of sizes: the gap it leaves",
        what: "The gap a stack leaves, with what it may be off at its worst, and when the errors fall by chance.",
        inputs: &[
            Input::rows("opens", "What opens the gap", SIZES, (1, 8), "3.750 0.002; 3.750 0.003")
                .hint("Size and how far it may be off, either way; sizes with a semicolon between them."),
            Input::rows("closes", "What fills it", SIZES, (1, 12), "1.750 0.003; 5.700 0.001; 0.031 0.002")
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
    let source = "machine-design textbook, 9th ed., section 1-13";
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
