//! Shafts in torsion and involute splines.

use crate::check::{Check, Source, Trust};
use endplay::calc::shaft::{power, stress, stress_metric, torque_at, torque_from_power};
use endplay::calc::spline::{Spline, nearest};
use endplay::quantity::Quantity;

const TORSION: Source =
    Source("civil-engineering formulas, p. 21; answers computed apart, by integral too", Trust::Computed);
const POWER: Source = Source("definition of the horsepower, computed apart", Trust::Computed);
const SPLINES: Source = Source("ANSI B92.1 formulas on an engineering reference page, computed apart", Trust::Computed);

pub fn checks() -> Vec<Check> {
    let solid =
        |torque: f64, outside: f64| stress(Quantity::new(torque), Quantity::new(outside), Quantity::new(0.0)).value();
    let metric = |outside: f64, bore: f64| {
        stress_metric(Quantity::new(1000.0), Quantity::new(outside), Quantity::new(bore)).value()
    };
    let back = torque_at(Quantity::new(61_115.0), Quantity::new(1.0), Quantity::new(0.0)).value();
    let torque = torque_from_power(Quantity::new(100.0), Quantity::new(1750.0));
    let torsion = [
        TORSION.number("1,000 lb-ft, 1.000 in, psi", solid(1000.0, 1.0), 61_115.0, 1.0),
        TORSION.number("1,000 lb-ft, 1.375 in, psi", solid(1000.0, 1.375), 23_510.0, 1.0),
        TORSION.number("1,000 N·m, 30 mm, MPa", metric(30.0, 0.0), 188.63, 0.005),
        TORSION.number("1,000 N·m, 40/20 mm, MPa", metric(40.0, 20.0), 84.88, 0.005),
        TORSION.number("61,115 psi in 1.000 in, lb-ft", back, 1000.0, 0.02),
        POWER.number("100 hp at 1,750, lb-in", torque.value() * 12.0, 3601.4, 0.1),
        POWER.number(
            "lb-in of one horsepower at one rpm",
            torque_from_power(Quantity::new(1.0), Quantity::new(1.0)).value() * 12.0,
            63_025.36,
            0.01,
        ),
        POWER.number(
            "N·m of one kilowatt at one rpm",
            torque_from_power(Quantity::new(1.0 / 0.745_699_872), Quantity::new(1.0)).to_newton_metres().value(),
            9549.3,
            0.05,
        ),
        POWER.number(
            "300.12 lb-ft at 1,750, hp",
            power(Quantity::new(3601.4 / 12.0), Quantity::new(1750.0)).value(),
            100.0,
            0.002,
        ),
    ];
    // Pitch diameter, base circle, shaft major, hub minor, tooth.
    let rows = [
        (32, 24, [1.333_33, 1.154_70, 1.375_00, 1.291_67, 0.065_45]),
        (27, 24, [1.125_00, 0.974_28, 1.166_67, 1.083_33, 0.065_45]),
        (30, 24, [1.250_00, 1.082_53, 1.291_67, 1.208_33, 0.065_45]),
        (10, 8, [1.250_00, 1.082_53, 1.375_00, 1.125_00, 0.196_35]),
    ];
    let splines = rows.into_iter().flat_map(|(teeth, pitch, published)| {
        let spline = Spline { teeth, pitch };
        let found = [
            ("pitch diameter", spline.pitch_diameter()),
            ("base circle", spline.base_diameter()),
            ("shaft major", spline.shaft_major()),
            ("hub minor", spline.hub_minor()),
            ("tooth", spline.tooth()),
        ];
        found.into_iter().zip(published).map(move |((what, found), published)| {
            SPLINES.number(format!("{} {what}", spline.name()), found.value(), published, 1e-5)
        })
    });
    let matched = nearest(32, Quantity::new(1.375)).map_or(String::from("none"), |(spline, _)| spline.name());
    let roots = Spline { teeth: 32, pitch: 24 };
    let rest = [
        SPLINES.words("32 teeth, 1.375 in over them", matched, "32T 24/48"),
        SPLINES.number("32T 24/48 hub root, flat", roots.hub_major_flat().value(), 33.35 / 24.0, 1e-5),
        SPLINES.number("32T 24/48 hub root, rounded", roots.hub_major_fillet().value(), 33.8 / 24.0, 1e-5),
        SPLINES.number("32T 24/48 circular pitch", roots.circular_pitch().value(), 0.130_90, 1e-5),
    ];
    torsion.into_iter().chain(splines).chain(rest).collect()
}
