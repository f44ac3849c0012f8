//! Fluid: expansion, level, volume.

use crate::check::{Check, Source, Trust};
use endplay::calc::fluid::{
    BASE, CUBIC_INCHES_IN_QUART, GROWTH_A_DEGREE, Part, density_at, expansion, growth, growth_by_rule, level_rise,
    pan_volume, to_cubic_inches, to_quarts, volume_factor,
};
use endplay::quantity::Quantity;

const TABLE_54D: Source =
    Source("ASTM D1250-80, table 54D, constants in a public code file; computed apart", Trust::Computed);
const RULE: Source = Source("a fluids engineer, quoted: 0.0007 a degree Celsius", Trust::Quoted);
const LEVEL: Source = Source("growth over surface, computed apart", Trust::Computed);
const UNITS: Source = Source("definitions: gallon 231 in³, inch 2.54 cm", Trust::Computed);

const LITRES_IN_QUART: f64 = 0.946_352_946;

pub fn checks() -> Vec<Check> {
    let density = Quantity::new(860.0);
    let hot = [
        (40.0, 0.981_65, 844.2, 1.87),
        (80.0, 0.951_94, 818.7, 5.05),
        (93.3, 0.941_98, 810.1, 6.16),
        (100.0, 0.936_95, 805.8, 6.73),
    ]
    .into_iter()
    .flat_map(|(celsius, factor, at, percent)| {
        let celsius_at = Quantity::new(celsius);
        [
            TABLE_54D.number(format!("{celsius} °C, factor"), volume_factor(density, celsius_at).value(), factor, 1e-5),
            TABLE_54D.number(format!("{celsius} °C, kg/m³"), density_at(density, celsius_at).value(), at, 0.05),
            TABLE_54D.number(
                format!("{celsius} °C, growth in per cent"),
                100.0 * growth(density, BASE, celsius_at).value(),
                percent,
                0.005,
            ),
        ]
    });
    let (cold, warm) = (Quantity::new(20.0), Quantity::new(80.0));
    let grown = growth(density, cold, warm).value();
    let by_rule = growth_by_rule(cold, warm).value();
    // 0.35 by 0.30 m in square inches; millimetres of rise.
    let surface = Quantity::new(0.35 * 0.30 / 0.0254 / 0.0254);
    let more = Quantity::new(11.0 * grown / LITRES_IN_QUART);
    let pan = [Part { length: Quantity::new(11.0), width: Quantity::new(10.5), depth: Quantity::new(2.0) }];
    let rest = [
        TABLE_54D.number("expansion at 860 kg/m³", expansion(density), 0.000_730, 5e-7),
        TABLE_54D.number("20 to 80 °C, growth in per cent", 100.0 * grown, 4.66, 0.005),
        RULE.number("a degree", GROWTH_A_DEGREE, 0.0007, 1e-12),
        RULE.number("12 L, litres a degree", 12.0 * growth_by_rule(cold, Quantity::new(21.0)).value(), 0.0084, 1e-9),
        RULE.number("20 to 80 °C, growth in per cent", 100.0 * by_rule, 4.2, 1e-9),
        LEVEL.number("11 L from 20 to 80 °C, litres more", 11.0 * grown, 0.51, 0.005),
        LEVEL.number("in a pan of 0.35 by 0.30 m, mm", level_rise(more, surface).value() * 25.4, 4.9, 0.05),
        UNITS.number("cubic inches in a quart", CUBIC_INCHES_IN_QUART, 231.0 / 4.0, 1e-12),
        UNITS.number(
            "litre in cubic inches",
            to_cubic_inches(Quantity::new(1.0 / LITRES_IN_QUART)).value(),
            61.0237,
            5e-5,
        ),
        UNITS.number(
            "quart in litres",
            to_quarts(Quantity::new(1000.0 / 2.54_f64.powi(3))).value(),
            1.0 / LITRES_IN_QUART,
            1e-7,
        ),
        UNITS.number("pan of 11 × 10.5 × 2 in, quarts", pan_volume(&pan, Quantity::new(0.0)).value(), 4.0, 1e-12),
    ];
    hot.chain(rest).collect()
}
