//! Quarter-mile estimates.

use crate::check::{Check, Source, Trust};
use endplay::calc::quarter_mile::{IDEAL, MEASURED, USUAL_PRODUCT, elapsed_time, power_from_speed, trap_speed};
use endplay::quantity::Quantity;

const BOOK: Source = Source("In Praise of Simple Physics, p. 33", Trust::Read);
const IDEAL_POWER: Source = Source("constant power without loss, v = (3 P s / m)^⅓, computed apart", Trust::Computed);
const INTEGRATED: Source =
    Source("the same run integrated as a differential equation, computed apart", Trust::Computed);
const USUAL: Source = Source("speed × time of customers' slips", Trust::Memory);

pub fn checks() -> Vec<Check> {
    let (power, weight) = (Quantity::new(400.0), Quantity::new(3500.0));
    let speed = trap_speed(IDEAL, power, weight);
    let time = elapsed_time(IDEAL, power, weight);
    // SI: 402.336 m in the quarter, watts and kilograms; the power back from the speed.
    let metres_a_second = (3.0 * 400.0 * 745.699_872 * 402.336 / (3500.0 * 0.453_592_37_f64)).cbrt();
    let back = power_from_speed(IDEAL, Quantity::new(136.41), weight);
    vec![
        BOOK.number("constant of speed", MEASURED.speed, 225.0, 1e-9),
        IDEAL_POWER.number("constant of speed", IDEAL.speed, 281.10, 0.005),
        IDEAL_POWER.number("constant of time", IDEAL.time, 4.8026, 0.000_05),
        IDEAL_POWER.number("speed × time", IDEAL.speed * IDEAL.time, 1350.0, 0.05),
        IDEAL_POWER.number("400 hp, 3,500 lb, mph", speed.about.value(), 136.41, 0.13),
        IDEAL_POWER.number("400 hp, 3,500 lb, s", time.about.value(), 9.8965, 0.0098),
        IDEAL_POWER.number(
            "400 hp, 3,500 lb, by the metric form, mph",
            metres_a_second / 0.447_04,
            speed.about.value(),
            0.13,
        ),
        IDEAL_POWER.number("136.41 mph, 3,500 lb, hp", back.value(), 400.0, 1.2),
        INTEGRATED.number("400 hp, 3,500 lb, mph", speed.about.value(), 136.4123, 0.13),
        INTEGRATED.number("400 hp, 3,500 lb, s", time.about.value(), 9.896_47, 0.0098),
        USUAL.number("least", USUAL_PRODUCT[0], 1340.0, 1e-9),
        USUAL.number("most", USUAL_PRODUCT[1], 1450.0, 1e-9),
    ]
}
