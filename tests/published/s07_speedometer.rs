//! Speedometer drive: teeth, error, pulses, tolerances.

use crate::check::{Check, Source, Trust};
use endplay::calc::speedometer::{
    CABLE_TURNS, best_pairs, correction_ratio, error, error_at_60, exact_driven_teeth, exact_driven_teeth_at,
    pulse_rate, pulses_per_kilometre, shown,
};
use endplay::calc::speedometer_rule::Tolerance;
use endplay::quantity::{MilePerHour, One, Quantity};

const ARITHMETIC: Source = Source("drive × axle × turns / 1,000, exact fractions, computed apart", Trust::Computed);
const PRACTICE: Source = Source("1,000 cable turns a mile (SAE J678 practice)", Trust::Memory);
const MAKERS: Source = Source("several vehicle makers' manuals: 4,000 pulses a mile", Trust::Read);
const PULSES: Source = Source("pulses a mile × 60 / 3,600, computed apart", Trust::Computed);
const TRUCK: Source = Source("49 CFR 393.82", Trust::Read);
const R39: Source = Source("UN regulation 39, quoted text", Trust::Quoted);
const J2976: Source = Source("SAE J2976 (2022), abstract page", Trust::Quoted);
const BENCH: Source = Source("shop handbook's worked sums, checked by another program", Trust::Computed);

fn exact(drive: u32, axle: f64, turns: f64) -> Quantity<One> {
    exact_driven_teeth_at(drive, Quantity::new(axle), Quantity::new(turns), CABLE_TURNS)
}

fn mph(value: f64) -> Quantity<MilePerHour> {
    Quantity::new(value)
}

pub fn checks() -> Vec<Check> {
    // Drive, axle, turns, exact driven teeth, nearest gear, its error in per cent.
    let gears =
        [(7, 3.73, 700.0, 18.277, 18, 1.54), (8, 3.55, 760.0, 21.584, 22, -1.89), (8, 4.10, 690.0, 22.632, 23, -1.60)]
            .into_iter()
            .flat_map(|(drive, axle, turns, teeth, nearest, percent)| {
                let found = exact(drive, axle, turns);
                let all: Vec<u32> = (10..60).collect();
                let best = best_pairs(Quantity::new(axle * turns), &[drive], &all);
                let chosen = best.first().map_or(f64::NAN, |pair| f64::from(pair.driven_teeth));
                let what = format!("{drive} teeth, {axle}, {turns} turns");
                [
                    ARITHMETIC.number(format!("{what}, exact"), found.value(), teeth, 1e-9),
                    ARITHMETIC.number(format!("{what}, chosen"), chosen, f64::from(nearest), 1e-9),
                    ARITHMETIC.number(
                        format!("{what}, error in per cent"),
                        100.0 * error(found, nearest).value(),
                        percent,
                        0.01,
                    ),
                    ARITHMETIC.number(
                        format!("{what}, mph off at 60"),
                        error_at_60(error(found, nearest)).value(),
                        0.6 * percent,
                        0.006,
                    ),
                    ARITHMETIC.number(
                        format!("{what}, correction"),
                        correction_ratio(found, nearest).value(),
                        f64::from(nearest) / teeth,
                        1e-9,
                    ),
                ]
            });
    let at_28_5 = exact_driven_teeth(8, Quantity::new(3.73), Quantity::new(28.5));
    let band = |rule: Tolerance, speed: f64| {
        rule.band(mph(speed)).map_or((f64::NAN, f64::NAN), |(low, high)| (low.value(), high.value()))
    };
    // At 100 km/h regulation 39 allows 100 to 114 km/h.
    let hundred = 100.0 / 1.609_344;
    let kept = |rule: Tolerance, kilometres: f64, shows: f64| {
        let error = Quantity::new(shows / kilometres - 1.0);
        let said = rule.kept(mph(kilometres / 1.609_344), error);
        said.map_or("nothing said", |kept| if kept { "kept" } else { "broken" })
    };
    let fifty = 50.0 * 1.609_344;
    let rest = [
        BENCH.number("8 teeth, 3.73, 28.5 in", at_28_5.value(), 21.1, 0.05),
        BENCH.number("19 fitted, error", error(at_28_5, 19).value(), 0.11, 0.005),
        BENCH.number("19 fitted, shown at a true 60", shown(mph(60.0), error(at_28_5, 19)).value(), 66.7, 0.05),
        PRACTICE.number("cable turns a kilometre", CABLE_TURNS.value() / 1.609_344, 621.37, 0.005),
        MAKERS.number("4,000 a mile, Hz at 60", pulse_rate(4000.0, mph(60.0)).value(), 66.67, 0.005),
        MAKERS.number("4 pulses a cable turn, a mile", 4.0 * CABLE_TURNS.value(), 4000.0, 1e-9),
        PULSES.number("8,000 a mile, Hz at 60", pulse_rate(8000.0, mph(60.0)).value(), 133.3, 0.05),
        PULSES.number("16,000 a mile, Hz at 60", pulse_rate(16_000.0, mph(60.0)).value(), 266.7, 0.05),
        PULSES.number("128,000 a mile, Hz at 60", pulse_rate(128_000.0, mph(60.0)).value(), 2133.3, 0.05),
        PULSES.number("4,000 a mile, a kilometre", pulses_per_kilometre(4000.0), 2485.48, 0.01),
        TRUCK.number("lowest at 50", band(Tolerance::Truck, 50.0).0, 45.0, 1e-9),
        TRUCK.number("highest at 50", band(Tolerance::Truck, 50.0).1, 55.0, 1e-9),
        R39.number("lowest at 100 km/h", band(Tolerance::Unece39, hundred).0 * 1.609_344, 100.0, 1e-9),
        R39.number("highest at 100 km/h", band(Tolerance::Unece39, hundred).1 * 1.609_344, 114.0, 1e-9),
        R39.words("40 km/h shown as 48", kept(Tolerance::Unece39, 40.0, 48.0), "kept"),
        R39.words("40 km/h shown as 48.1", kept(Tolerance::Unece39, 40.0, 48.1), "broken"),
        R39.words("80 km/h shown as 92", kept(Tolerance::Unece39, 80.0, 92.0), "kept"),
        R39.words("120 km/h shown as 136.1", kept(Tolerance::Unece39, 120.0, 136.1), "broken"),
        R39.words("80 km/h shown as 79.9", kept(Tolerance::Unece39, 80.0, 79.9), "broken"),
        TRUCK.words("50 mph shown as 55", kept(Tolerance::Truck, fifty, 1.1 * fifty), "kept"),
        TRUCK.words("50 mph shown as 44.9", kept(Tolerance::Truck, fifty, 44.9 * 1.609_344), "broken"),
        TRUCK.words("100 km/h", kept(Tolerance::Truck, 100.0, 100.0), "nothing said"),
        J2976.words("100 km/h shown as 104", kept(Tolerance::J2976, 100.0, 104.0), "kept"),
        J2976.words("100 km/h shown as 98.9", kept(Tolerance::J2976, 100.0, 98.9), "broken"),
        J2976.number("lowest at 60", band(Tolerance::J2976, 60.0).0, 59.4, 1e-9),
        J2976.number("highest at 60", band(Tolerance::J2976, 60.0).1, 62.4, 1e-9),
    ];
    gears.chain(rest).collect()
}
