//! The converter behind a real engine: stall by its torque curve, capacity factor, efficiency, time on the brake.

use super::converter::STALL_CARE;
use super::shared::{CONVERTER_FLUID, CONVERTER_METAL, ENGINE_TORQUE, RATED, STALL, brake_power_line, ratio};
use crate::calc::converter::heat::time_to;
use crate::calc::converter::stall::{Meeting, Stall, stall};
use crate::calc::converter::table::Row;
use crate::calc::converter::torque_curve::{Point, TorqueCurve};
use crate::calc::converter::{CapacityFactor, brake_power};
use crate::quantity::{AtCelsius, Kilogram, One, PoundFoot, Quantity, Rpm, Second};
use crate::rules::LimitId;
use crate::sums::declaration::{Amiss, Input, Measure, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

const FACTOR_SOURCE: &str = "definition of the capacity factor: SAE J643 (looked up in a summary)";

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "stall-by-curve",
        title: "Stall by the engine's torque curve",
        what: "Where the engine's torque curve meets what the held converter takes: the stall to expect behind this very \
               engine.",
        inputs: &[
            STALL,
            RATED,
            Input::rows(
                "curve",
                "Torque curve",
                &[Measure::of::<Rpm>(100.0, 15000.0), Measure::of::<PoundFoot>(1.0, 5000.0)],
                (2, 30),
                "2000 400; 3000 470; 4000 520; 5000 540; 6000 500",
            )
            .hint("Speed and torque of each point, points with a semicolon or a line between them, speeds rising."),
        ],
        work: by_curve,
        care: STALL_CARE,
    },
    Sum {
        name: "capacity-factor",
        title: "Converter capacity factor",
        what: "How loosely a converter couples, from one stall: the number that compares converters.",
        inputs: &[
            Input::number::<Rpm>("stall", "Stall speed", (500.0, 9000.0), "3200").fact("converter.stall_rpm"),
            Input::number::<PoundFoot>("rated", "Torque at that stall", (20.0, 3000.0), "500")
                .fact("converter.rated_torque_lbft"),
        ],
        work: factor,
        care: STALL_CARE,
    },
    Sum {
        name: "converter-efficiency",
        title: "Converter efficiency and heat",
        what: "What comes out of a converter at one speed ratio, and what turns to heat.",
        inputs: &[
            Input::ratio("speed_ratio", "Speed ratio, turbine / pump", (0.0, 0.999), "0.8"),
            Input::ratio("torque_ratio", "Torque ratio there", (0.0, 5.0), "1.15"),
            Input::number::<Rpm>("pump", "Engine speed", (100.0, 15000.0), "3000"),
            ENGINE_TORQUE,
        ],
        work: efficiency,
        care: "",
    },
    Sum {
        name: "brake-time",
        title: "Time on the trans brake until too warm",
        what: "How long the brake may be held until fluid and steel have warmed to a limit, with nothing led away.",
        inputs: &[
            ENGINE_TORQUE,
            Input::number::<Rpm>("held", "Stall speed", (500.0, 9000.0), "4098"),
            CONVERTER_FLUID,
            CONVERTER_METAL,
            Input::temperature("from", "Temperature before", (-20.0, 150.0), "180 F"),
            Input::temperature("limit", "Warmest allowed", (0.0, 200.0), "275 F"),
        ],
        work: hold,
        care: STALL_CARE,
    },
];

fn by_curve(given: &Given<'_>) -> Worked {
    let (label, rated) = (given.number::<Rpm>("stall")?, given.number::<PoundFoot>("rated")?);
    let points = given.pairs::<Rpm, PoundFoot>("curve")?;
    let points = points.into_iter().map(|(speed, torque)| Point { speed, torque }).collect();
    let curve = match TorqueCurve::new(points) {
        Ok(curve) => curve,
        Err(none) => return Amiss::clash("curve", format!("Torque curve cannot be that: {none}.")),
    };
    let held = CapacityFactor::from_stall(label, rated);
    let line = |label: &'static str, meeting: &Meeting| {
        Line::new(
            label,
            meeting.speed.to_whole(),
            "where engine torque = (rpm / K)², straight lines between the points of the curve",
            format!("both are {} with K {}, at", meeting.torque.to_whole(), plain(held.0)),
            FACTOR_SOURCE,
        )
    };
    let from = |point: &Point| format!("{} at {}", point.torque.to_whole(), point.speed.to_whole());
    let stall = stall(&curve, held);
    let expected = stall.from_idle();
    let outcome = Outcome::default().lines(expected.iter().map(|meeting| line("Stall here", meeting)));
    let outcome = match &stall {
        Stall::At(meeting) if expected.is_none() => outcome
            .line(line("The curves meet", meeting))
            .remark("They meet where the engine does not stay by itself: it climbs past, or never gets there."),
        Stall::At(_) => outcome,
        Stall::Several(meetings) => outcome
            .lines(meetings.iter().map(|meeting| line("The curves meet", meeting)))
            .remark(if expected.is_some() {
                "They meet more than once: coming up from idle the engine stops at the first place that holds."
            } else {
                "They meet more than once, and at the first point the converter takes more than the engine makes: where the \
                 engine stops, this curve does not tell."
            }),
        Stall::AboveTheCurve(last) => outcome.remark(format!(
            "Up to the last point the engine makes more than the converter takes ({}): it stalls above the curve.",
            from(last)
        )),
        Stall::BelowTheCurve(first) => outcome.remark(format!(
            "From the first point on the converter takes more than the engine makes ({}): it stalls below the curve.",
            from(first)
        )),
    };
    Ok(outcome.line(factor_line(label, rated)).by_curve(curve))
}

fn factor_line(stall: Quantity<Rpm>, torque: Quantity<PoundFoot>) -> Line {
    let factor = CapacityFactor::from_stall(stall, torque);
    Line::new(
        "Capacity factor K",
        format!("{:.1}", factor.0),
        "rpm / √lb-ft; a larger one stalls higher",
        format!("{} / √{}", short(stall), short(torque)),
        FACTOR_SOURCE,
    )
}

fn factor(given: &Given<'_>) -> Worked {
    let (stall, torque) = (given.number::<Rpm>("stall")?, given.number::<PoundFoot>("rated")?);
    let factor = CapacityFactor::from_stall(stall, torque);
    let line = factor_line(stall, torque);
    Ok(Outcome::default().line(line).line(Line::new(
        "The same on a metric sheet",
        format!("{:.1}", factor.metric()),
        "K / √1.3558, rpm / √N·m",
        format!("{:.1} / √1.3558", factor.0),
        "definition",
    )))
}

fn efficiency(given: &Given<'_>) -> Worked {
    let (speed_ratio, torque_ratio) = (given.number::<One>("speed_ratio")?, given.number::<One>("torque_ratio")?);
    let (pump, torque) = (given.number::<Rpm>("pump")?, given.number::<PoundFoot>("torque")?);
    // The factor is not asked for: nothing here depends on it.
    let row = Row { speed_ratio, factor: CapacityFactor(1.0), torque_ratio };
    if row.efficiency() > Quantity::new(1.0) {
        let message = format!(
            "Torque ratio there cannot be {}: times {} it would give out more power than comes in.",
            ratio(torque_ratio),
            ratio(speed_ratio)
        );
        return Amiss::clash("torque_ratio", message);
    }
    let power = brake_power(torque, pump);
    Ok(Outcome::default()
        .line(Line::new(
            "Efficiency",
            row.efficiency().to_percent(1),
            "speed ratio × torque ratio",
            format!("{} × {}", ratio(speed_ratio), ratio(torque_ratio)),
            "definition",
        ))
        .line(Line::new(
            "Turbine speed",
            row.turbine_speed(pump).to_whole(),
            "engine speed × speed ratio",
            format!("{} × {}", short(pump), ratio(speed_ratio)),
            "definition",
        ))
        .line(Line::new(
            "Turned to heat",
            row.heat(power).to_places(1),
            "power in × (1 - efficiency); power in = torque × rpm / 7,043",
            format!("{} × (1 - {})", power.to_places(1), plain(row.efficiency().value())),
            "energy balance",
        )))
}

/// No stall hold is longer, whatever the heat says. Source: common practice.
const LONGEST_HOLD: Quantity<Second> = Quantity::new(5.0);

fn hold(given: &Given<'_>) -> Worked {
    let (torque, held) = (given.number::<PoundFoot>("torque")?, given.number::<Rpm>("held")?);
    let (fluid, metal) = (given.number::<Kilogram>("fluid")?, given.number::<Kilogram>("metal")?);
    let (from, limit) = (given.number::<AtCelsius>("from")?, given.number::<AtCelsius>("limit")?);
    let power = brake_power(torque, held);
    let Some(time) = time_to(from, limit, power, fluid, metal) else { return Err(Amiss::Absent("torque")) };
    let outcome = Outcome::default()
        .line(Line::new(
            "Held at most",
            time.to_places(1),
            "(limit - before) × (2.0 × kg fluid + 0.46 × kg steel) / kW, temperatures in °C",
            format!(
                "({} - {}) × (2.0 × {} + 0.46 × {}) / {}",
                limit.to_places(1),
                from.to_places(1),
                short(fluid),
                short(metal),
                power.to_places(0)
            ),
            "energy balance with nothing led away; heat of the fluid memory, high",
        ))
        .line(brake_power_line(torque, held));
    let warm = (limit <= from).then(|| "It is that warm already: no hold at all.".to_owned());
    let long = (time > LONGEST_HOLD).then(|| {
        format!(
            "That is by the heat alone. Let go after {} all the same: band, seals and converter stand no longer hold.",
            LONGEST_HOLD.to_whole()
        )
    });
    let warmer = if limit > from { limit.value() - from.value() } else { 0.0 };
    let outcome = outcome.at_most("The warming in that hold", warmer, LimitId::brake_heat, given.limits());
    Ok(outcome
        .remarks(warm)
        .remarks(long)
        .remark("The fluid at the stator gets hotter than the middle of it all: stay well under."))
}
