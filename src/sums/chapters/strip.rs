//! The quarter mile: an estimate with its honest band, the power behind a slip, whether a slip hangs together.

use crate::calc::quarter_mile::{
    BAND, Constants, Estimate, IDEAL, MEASURED, Slip, USUAL_PRODUCT, elapsed_time, power_from_speed, slip, trap_speed,
};
use crate::quantity::{Horsepower, MilePerHour, One, PoundMass, Quantity, Second, Unit};
use crate::sums::declaration::{Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

const WEIGHT: Input = Input::number::<PoundMass>("weight", "Weight with driver and fuel", (200.0, 30000.0), "3400")
    .hint("A scale slip beats a guess.")
    .fact("vehicle.weight_lb");
const POWER: Input = Input::number::<Horsepower>("power", "Power at the crank", (10.0, 10000.0), "500");
const TRAP: Input = Input::number::<MilePerHour>("trap", "Trap speed", (20.0, 350.0), "120").fact("event.trap_mph");

const RULES: &str =
    "An estimate is no entry ticket: what a class asks for goes by the slip, and by whoever runs the event.";

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "strip-estimate",
        title: "Quarter mile from power and weight",
        what: "About what a car of this power and weight runs, with the band that no estimate gets out of.",
        inputs: &[POWER, WEIGHT],
        work: estimate,
        care: RULES,
    },
    Sum {
        name: "strip-power",
        title: "Power behind a trap speed",
        what: "The power at the crank that a trap speed speaks of.",
        inputs: &[TRAP, WEIGHT],
        work: behind,
        care: "",
    },
    Sum {
        name: "strip-slip",
        title: "Does a time slip hang together?",
        what: "Whether trap speed and time belong to one ordinary run, or one of them is lifted, botched or mistyped.",
        inputs: &[
            TRAP,
            Input::number::<Second>("time", "Time over the quarter mile", (3.0, 60.0), "11.6")
                .fact("event.quarter_mile_s"),
        ],
        work: together,
        care: RULES,
    },
];

/// A number with the band around it.
fn with_band<U: Unit>(
    label: &str,
    estimate: Estimate<U>,
    formula: &'static str,
    put_in: String,
    source: &'static str,
) -> Line {
    let value = format!(
        "{} to {}, about {}",
        Quantity::<One>::new(estimate.least.value()).to_places(2),
        Quantity::<One>::new(estimate.most.value()).to_places(2),
        estimate.about.to_places(2)
    );
    Line::new(label, value, formula, put_in, source)
}

fn estimate(given: &Given<'_>) -> Worked {
    let (power, weight) = (given.number::<Horsepower>("power")?, given.number::<PoundMass>("weight")?);
    let both = |constants: Constants| (trap_speed(constants, power, weight), elapsed_time(constants, power, weight));
    let (speed, time) = both(MEASURED);
    let (fastest, quickest) = both(IDEAL);
    let (p, w) = (short(power), short(weight));
    Ok(Outcome::default()
        .line(with_band(
            "Time",
            time,
            "6.0 × ∛(weight / power), 5 % either way",
            format!("{} × ∛({w} / {p}) ± 5 %", plain(MEASURED.time)),
            MEASURED.source,
        ))
        .line(with_band(
            "Trap speed",
            speed,
            "225 × ∛(power / weight), 5 % either way",
            format!("{} × ∛({p} / {w}) ± 5 %", plain(MEASURED.speed)),
            MEASURED.source,
        ))
        .line(Line::new(
            "No car is quicker than",
            format!("{} at {}", quickest.about.to_places(2), fastest.about.to_places(1)),
            "4.8026 × ∛(weight / power); 281.1 × ∛(power / weight)",
            format!("{} × ∛({w} / {p}); {} × ∛({p} / {w})", plain(IDEAL.time), plain(IDEAL.speed)),
            IDEAL.source,
        ))
        .remark("The band is that of well-driven cars. A bad start is worth more than anything in this sum."))
}

fn behind(given: &Given<'_>) -> Worked {
    let (trap, weight) = (given.number::<MilePerHour>("trap")?, given.number::<PoundMass>("weight")?);
    let power_at = |speed| power_from_speed(MEASURED, speed, weight);
    let (slower, faster) = (power_at(trap * (1.0 - BAND.value())), power_at(trap * (1.0 + BAND.value())));
    Ok(Outcome::default()
        .line(Line::new(
            "Power at the crank",
            power_at(trap).to_whole(),
            "weight × (mph / 225)³",
            format!("{} × ({} / {})³", short(weight), short(trap), plain(MEASURED.speed)),
            MEASURED.source,
        ))
        .line(Line::new(
            "It may be",
            format!("{} to {}", slower.to_whole(), faster.to_whole()),
            "the same with 5 % less and 5 % more speed",
            format!("{} × ({} × 0.95 and × 1.05 / {})³", short(weight), short(trap), plain(MEASURED.speed)),
            MEASURED.source,
        ))
        .remark("An error in the speed counts three times: 5 % of speed is 16 % of power."))
}

fn together(given: &Given<'_>) -> Worked {
    let (trap, time) = (given.number::<MilePerHour>("trap")?, given.number::<Second>("time")?);
    let told = match slip(trap, time) {
        Slip::Plausible => "they belong together",
        Slip::SlowStart => "too long a time for the speed: a bad start, or a slip of the pen",
        Slip::SlowFinish => "too short a time for the speed: lifted before the line, or a slip of the pen",
    };
    let [low, high] = USUAL_PRODUCT;
    Ok(Outcome::default().line(Line::new(
        "Speed and time",
        told,
        "speed × time of an ordinary run is 1,340 to 1,450, whatever the power and weight",
        format!(
            "{} × {} is {}, against {} to {}",
            short(trap),
            short(time),
            plain((trap.value() * time.value()).round()),
            plain(low),
            plain(high)
        ),
        "memory, medium",
    )))
}
