//! Speedometer gears: what reads true, what a fitted one shows, the best on the shelf, pulses.

use super::shared::{AXLE, TIRE, ratio, signed_percent, tire_remark, tire_said};
use crate::calc::speedometer::{
    Pair, best_driven, best_pairs, cable_turns, correction_ratio, error, exact_driven_teeth, pulse_rate,
    pulses_per_kilometre, shown,
};
use crate::calc::tire::turns_per_mile_shop;
use crate::quantity::{MilePerHour, One, Quantity};
use crate::rules::LimitId;
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

const DRIVE: Input = Input::count("drive", "Drive gear teeth", (4, 40), "8")
    .hint("The gear on the output shaft.")
    .fact("speedometer.drive_teeth");

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "driven-gear",
        title: "Driven gear to choose",
        what: "The driven gear that would read true, and which of the gears on the shelf comes nearest.",
        inputs: &[
            DRIVE,
            AXLE,
            TIRE,
            Input::numbers::<One>("shelf", "Driven gears on the shelf", (10.0, 60.0), (1, 20), "17 18 19 20 21 22")
                .hint("Their teeth with blanks between them, only those that fit the housing."),
        ],
        work: choose,
        care: "",
    },
    Sum {
        name: "gear-pairs",
        title: "Best pair of speedometer gears",
        what: "The pair of drive and driven gear that reads nearest to true, from all that the shop has.",
        inputs: &[
            AXLE,
            TIRE,
            Input::numbers::<One>("drives", "Drive gears on the shelf", (4.0, 40.0), (1, 12), "7 8 9"),
            Input::numbers::<One>("shelf", "Driven gears on the shelf", (10.0, 60.0), (1, 20), "17 18 19 20 21 22")
                .hint("Their teeth with blanks between them, only those that fit the housing."),
        ],
        work: pairs,
        care: "",
    },
    Sum {
        name: "speedometer-error",
        title: "Speedometer error",
        what: "How far the dial is off with the gears as fitted, and what would put it right.",
        inputs: &[
            DRIVE,
            Input::count("driven", "Driven gear teeth", (8, 60), "19").fact("speedometer.driven_teeth"),
            AXLE,
            TIRE,
        ],
        work: off,
        care: "A dial that reads low lets people drive faster than they know. What the law allows differs from place to \
               place: ask locally.",
    },
    Sum {
        name: "pulses",
        title: "Pulses of a sender",
        what: "How many pulses a second an electric sender gives at a road speed.",
        inputs: &[
            Input::ratio("a_mile", "Pulses in a mile", (100.0, 1_000_000.0), "4000")
                .hint("4000, 8000 and 128000 are met."),
            Input::number::<MilePerHour>("road", "Road speed", (1.0, 250.0), "60"),
        ],
        work: pulses,
        care: "",
    },
];

/// Teeth that would read true, with its line.
fn exact(given: &Given<'_>) -> Result<(Quantity<One>, Line, Vec<String>), Amiss> {
    let (drive, axle, tire) = (given.count("drive")?, given.number::<One>("axle")?, given.tire("tire")?);
    let exact = exact_driven_teeth(drive, axle, tire.diameter);
    let line = Line::new(
        "Teeth that would read true",
        exact.to_places(2),
        "drive teeth × axle × 20,168 / tire / 1,000",
        format!("{drive} × {} × 20,168 / {} / 1,000", ratio(axle), tire_said(tire)),
        "gear arithmetic; 1,000 cable turns a mile looked up",
    );
    Ok((exact, line, tire_remark(tire).into_iter().collect()))
}

fn choose(given: &Given<'_>) -> Worked {
    let (exact, line, remarks) = exact(given)?;
    let shelf = teeth(given, "shelf")?;
    let Some(best) = best_driven(exact, &shelf) else {
        return Amiss::clash("shelf", "Driven gears on the shelf must be 10 to 60 teeth.");
    };
    let listed: Vec<String> = shelf.iter().map(u32::to_string).collect();
    Ok(Outcome::default()
        .line(
            Line::new(
                "Driven gear to fit",
                format!("{} teeth", best.driven_teeth),
                "the gear on the shelf with the least error either way; of two alike the one that reads high",
                format!("least error for {} among {}", exact.to_places(2), listed.join(", ")),
                "exact for the gears given",
            )
            .plans("speedometer.driven_teeth", f64::from(best.driven_teeth)),
        )
        .line(line)
        .line(error_line(exact, best.driven_teeth))
        .line(at_60_line(best.error))
        .at_most("The error either way", best.error.abs().value(), LimitId::speedometer_error, given.limits())
        .remarks(remarks))
}

/// Teeth as they were typed, all whole.
fn teeth(given: &Given<'_>, name: &'static str) -> Result<Vec<u32>, Amiss> {
    let all = given.numbers::<One>(name)?;
    if let Some(broken) = all.iter().find(|teeth| teeth.value().fract() != 0.0) {
        let label = if name == "drives" { "Drive gears" } else { "Driven gears" };
        return Amiss::clash(name, format!("{label} on the shelf cannot be “{broken}”: teeth are whole."));
    }
    Ok(all.iter().map(|teeth| teeth.value() as u32).collect())
}

fn pairs(given: &Given<'_>) -> Worked {
    let (axle, tire) = (given.number::<One>("axle")?, given.tire("tire")?);
    let (drives, shelf) = (teeth(given, "drives")?, teeth(given, "shelf")?);
    let turns = turns_per_mile_shop(tire.diameter) * axle.value();
    let line = |(nth, pair): (usize, &Pair)| {
        let label = ["Best pair", "Next", "After that"][nth.min(2)];
        Line::new(
            label,
            format!("drive {}, driven {}, error {}", pair.drive_teeth, pair.driven_teeth, signed_percent(pair.error)),
            "drive teeth × axle × 20,168 / tire / 1,000 / driven teeth - 1, the least of all pairs",
            format!(
                "{} × {} × 20,168 / {} / 1,000 / {} - 1",
                pair.drive_teeth,
                ratio(axle),
                tire_said(tire),
                pair.driven_teeth
            ),
            "gear arithmetic; 1,000 cable turns a mile looked up",
        )
    };
    let pairs = best_pairs(turns, &drives, &shelf);
    let Some(best) = pairs.first() else { return Err(Amiss::Absent("shelf")) };
    let off = best.error.abs().value();
    let mut lines: Vec<Line> = pairs.iter().take(3).enumerate().map(line).collect();
    let driven = lines.remove(0).plans("speedometer.driven_teeth", f64::from(best.driven_teeth));
    Ok(Outcome::default()
        .line(driven)
        .lines(lines)
        .at_most("The error of the best pair either way", off, LimitId::speedometer_error, given.limits())
        .remarks(tire_remark(tire)))
}

fn off(given: &Given<'_>) -> Worked {
    let (exact, line, remarks) = exact(given)?;
    let (drive, driven) = (given.count("drive")?, given.count("driven")?);
    let (axle, tire) = (given.number::<One>("axle")?, given.tire("tire")?);
    let off = error(exact, driven);
    let correction = correction_ratio(exact, driven);
    Ok(Outcome::default()
        .line(error_line(exact, driven))
        .line(at_60_line(off))
        .line(line)
        .line(Line::new(
            "Ratio box that would put it right",
            correction.to_places(3),
            "fitted teeth / exact teeth, cable turns out for each turn in",
            format!("{driven} / {}", exact.to_places(3)),
            "exact",
        ))
        .line(Line::new(
            "Turns of the cable in a mile",
            cable_turns(drive, driven, axle, tire.diameter).to_whole(),
            "20,168 / tire × axle × drive teeth / driven teeth; a cable speedometer is made for 1,000",
            format!("20,168 / {} × {} × {drive} / {driven}", tire_said(tire), ratio(axle)),
            "gear arithmetic; 1,000 cable turns a mile looked up",
        ))
        .at_most("The error either way", off.abs().value(), LimitId::speedometer_error, given.limits())
        .remarks(remarks))
}

fn error_line(exact: Quantity<One>, driven: u32) -> Line {
    Line::new(
        "Error",
        signed_percent(error(exact, driven)),
        "exact teeth / fitted teeth - 1; plus reads high",
        format!("{} / {driven} - 1", exact.to_places(3)),
        "exact",
    )
}

fn at_60_line(off: Quantity<One>) -> Line {
    let sixty = Quantity::<MilePerHour>::new(60.0);
    Line::new(
        "Shown at a true 60 mph",
        shown(sixty, off).to_places(1),
        "60 × (1 + error)",
        format!("60 mph × (1 + {})", plain(off.value())),
        "exact",
    )
}

fn pulses(given: &Given<'_>) -> Worked {
    let (a_mile, road) = (given.number::<One>("a_mile")?, given.number::<MilePerHour>("road")?);
    Ok(Outcome::default()
        .line(Line::new(
            "Pulses",
            pulse_rate(a_mile.value(), road).to_places(1),
            "pulses in a mile × mph / 3,600",
            format!("{} × {} / 3,600", ratio(a_mile), short(road)),
            "definition; 4,000 a mile looked up in vehicle makers' manuals",
        ))
        .line(Line::new(
            "Pulses in a kilometer",
            plain((pulses_per_kilometre(a_mile.value()) * 10.0).round() / 10.0),
            "pulses in a mile / 1.609344",
            format!("{} / 1.609344", ratio(a_mile)),
            "definition of the mile",
        )))
}
