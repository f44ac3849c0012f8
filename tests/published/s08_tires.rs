//! Tire sizes, turns a mile, road speed and shifts.

use crate::check::{Check, Source, Trust};
use endplay::calc::shift::{Final, recovers_to, speeds};
use endplay::calc::tire::{Size, cruise_speed, turns_per_mile_geometric, turns_per_mile_rolling, turns_per_mile_shop};
use endplay::quantity::{Inch, Quantity};

const RULE: Source = Source("ISO 4000-1 rule in inches, computed apart", Trust::Computed);
const PAGES: Source = Source("tire size pages", Trust::Quoted);
const ROLLING: Source = Source("3.05 diameters a turn, computed apart", Trust::Computed);
const MEASURED: Source = Source("one measured loaded radius, 14.94 in", Trust::Quoted);
const CODES: Source = Source("rim codes of ISO 4000-1: 14, 15, 16", Trust::Memory);
const BENCH: Source = Source("shop handbook's worked sums, checked by another program", Trust::Computed);
const GEARS: Source = Source("ratio arithmetic of 2.48, 1.48, 1.00 at 6,500 rpm, computed apart", Trust::Computed);

fn diameter(typed: &str) -> Quantity<Inch> {
    typed.parse::<Size>().unwrap_or_else(|unread| panic!("{unread}")).diameter().0
}

fn turns(typed: &str) -> f64 {
    turns_per_mile_geometric(diameter(typed)).value()
}

fn rolling(typed: &str) -> f64 {
    turns_per_mile_rolling(diameter(typed)).value()
}

pub fn checks() -> Vec<Check> {
    let rows = [
        (RULE, "275/60R15", 27.992, 720.5, Some(742.1), 0.001),
        (PAGES, "31x10.50R15", 31.0, 650.6, Some(670.1), 1e-9),
        (PAGES, "235/75R15", 28.88, 698.4, Some(719.4), 0.01),
        (RULE, "265/70R17", 31.606, 638.1, Some(657.3), 0.001),
        (RULE, "215/65R15", 26.004, 775.6, Some(798.9), 0.001),
        (RULE, "255/60R15", 27.047, 745.7, Some(768.0), 0.001),
        (PAGES, "185/70-14", 24.196_85, 833.5, None, 1e-5),
        (PAGES, "195/50-15", 22.677_165, 889.4, None, 1e-6),
    ];
    let sizes = rows.into_iter().flat_map(|(source, size, inches, free, rolled, within)| {
        let own = [
            source.number(format!("{size}, in"), diameter(size).value(), inches, within),
            source.number(format!("{size}, turns a mile"), turns(size), free, 0.1),
        ];
        own.into_iter().chain(
            rolled.map(|rolled| ROLLING.number(format!("{size}, rolling turns a mile"), rolling(size), rolled, 0.1)),
        )
    });
    let millimetres = [("275/60R15", 711.0), ("235/75R15", 733.5)].map(|(size, published)| {
        RULE.number(format!("{size}, mm"), diameter(size).to_millimetres().value(), published, 0.05)
    });
    // A rim code in millimetres is the inch rim rounded.
    let codes = [(14.0, 356.0), (15.0, 381.0), (16.0, 406.0)].map(|(rim, code)| {
        CODES.number(format!("rim {rim}"), Quantity::<Inch>::new(rim).to_millimetres().value(), code, 0.5)
    });
    let last = Final { axle: Quantity::new(3.90), tire: Quantity::new(26.0) };
    let engine = Quantity::new(6500.0);
    let ratios = [2.48, 1.48, 1.0].map(Quantity::new);
    let in_gear = speeds(&ratios, engine, last);
    let rest = [
        PAGES.number("185/70-14 over 195/50-15", diameter("185/70-14") / diameter("195/50-15"), 1.067_013_9, 1e-7),
        PAGES.number("265/70R17, turns a mile, two decimals", turns("265/70R17"), 638.13, 0.05),
        MEASURED.number("turns a mile", turns_per_mile_geometric(Quantity::new(2.0 * 14.94)).value(), 674.97, 0.1),
        BENCH.number("28.5 in, turns a mile", turns_per_mile_shop(Quantity::new(28.5)).value(), 708.0, 0.5),
        BENCH.number("6,500 in first, mph", in_gear[0].value(), 52.0, 0.05),
        BENCH.number("6,500 in third, mph", in_gear[2].value(), 128.9, 0.05),
        BENCH.number(
            "65 mph in third, rpm",
            cruise_speed(Quantity::new(65.0), last.axle, last.tire).value(),
            3277.0,
            0.5,
        ),
        GEARS.number("first to second, rpm", recovers_to(engine, ratios[0], ratios[1]).value(), 3879.03, 0.01),
        GEARS.number("second to third, rpm", recovers_to(engine, ratios[1], ratios[2]).value(), 4391.89, 0.01),
    ];
    sizes.chain(millimetres).chain(codes).chain(rest).collect()
}
