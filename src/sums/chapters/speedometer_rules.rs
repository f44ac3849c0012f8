//! A dial's error held against the rules that are written on it.

use super::shared::signed_percent;
use crate::calc::speedometer::{error_at_60, shown};
use crate::calc::speedometer_rule::Tolerance;
use crate::quantity::{MilePerHour, One};
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

pub(super) const SUMS: &[Sum] = &[Sum {
    name: "speedometer-rules",
    title: "Speedometer error against the rules",
    what: "Whether a dial that is off by so much keeps each of the rules that are written on speedometers.",
    inputs: &[
        Input::percent("error", "Error of the dial", (-50.0, 50.0), "6")
            .hint("Above nought it reads high, below nought low. The sum on speedometer error gives it."),
        Input::number::<MilePerHour>("road", "True road speed", (5.0, 250.0), "60")
            .hint("The speed it is judged at. A rule for one speed only is judged at its own."),
    ],
    work: judged,
    care: "A dial that reads low lets people drive faster than they know. None of these rules is the law everywhere, and \
           which one holds here nobody can tell from this page: ask locally.",
}];

/// What the rule asks, in words.
const fn asks(rule: Tolerance) -> (&'static str, &'static str) {
    match rule {
        Tolerance::Truck => ("Buses and trucks", "5 mph either way at 50 mph; it says nothing at other speeds"),
        Tolerance::Unece39 => {
            ("New vehicles in many countries", "never below the true speed, at most a tenth and 4 km/h above it")
        }
        Tolerance::J2976 => ("Voluntary standard", "from 1 % below the true speed to 4 % above it"),
    }
}

fn judged(given: &Given<'_>) -> Worked {
    let (error, road) = (given.number::<One>("error")?, given.number::<MilePerHour>("road")?);
    let share = format!("(1 + {})", plain(error.value()));
    let mut outcome = Outcome::default()
        .line(Line::new(
            "The dial shows",
            shown(road, error).to_places(1),
            "true speed × (1 + error)",
            format!("{} × {share}", short(road)),
            "exact: gears are off by the same share at every speed",
        ))
        .line(Line::new(
            "Off at a true 60 mph",
            error_at_60(error).to_places(1),
            "60 × error",
            format!("60 mph × {}", plain(error.value())),
            "exact",
        ));
    for rule in Tolerance::ALL {
        let at = rule.only_at().unwrap_or(road);
        let (Some((low, high)), Some(kept)) = (rule.band(at), rule.kept(at, error)) else {
            return Err(Amiss::Absent("road"));
        };
        let (who, formula) = asks(rule);
        let said = format!(
            "{who}: at a true {} the dial shows {}, {} {} to {}.",
            short(at),
            shown(at, error).to_places(1),
            if kept { "within" } else { "outside" },
            low.to_places(1),
            high.to_places(1)
        );
        outcome = outcome
            .line(Line::new(
                format!("{who}, may show at {}", short(at)),
                format!("{} to {}", low.to_places(1), high.to_places(1)),
                formula,
                format!("at a true {}", short(at)),
                rule.source(),
            ))
            .ruled(kept, said, rule.source());
    }
    Ok(outcome.remark(format!(
        "An error of {} is judged, from the gears alone: a worn tire adds to it.",
        signed_percent(error)
    )))
}
