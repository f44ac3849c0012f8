//! Unified and metric threads: basic sizes, areas, limits, drills, look-alikes.

use crate::check::{Check, Source, Trust};
use endplay::calc::thread::look_alike::compare;
use endplay::calc::thread::table::{METRIC, UNIFIED, metric_thread, unified};
use endplay::calc::thread::{Form, class};
use endplay::quantity::Inch;

const HANDBOOK: Source = Source("machinists' handbook, 31st ed., p. 1978, table 4a (ASME B1.1)", Trust::Read);
const TEXTBOOK: Source = Source("machine-design textbook, 9th ed., p. 413, table 8-2", Trust::Read);
const QUOTED: Source = Source("reference table quoting ASME B1.1", Trust::Quoted);
const METRIC_DIAMETERS: Source = Source("tool maker's thread-limit page (ISO 724)", Trust::Quoted);
const METRIC_AREAS: Source = Source("copy of the ISO 898-1 table", Trust::Quoted);
const METRIC_COMPUTED: Source = Source("ISO 724 and ISO 898-1 formulas, computed apart", Trust::Computed);
const LIMITS: Source = Source("public thread data labelled ASME B1.1-2019, classes 2A and 2B", Trust::Package);
const DRILLS: Source = Source("tap table of a public fastener data package", Trust::Package);
const PERCENT: Source = Source("percent of thread by the United States convention, computed apart", Trust::Computed);
const FOUR: Source = Source("the four minor diameters of 1/4-20 in print, computed apart", Trust::Computed);
const PAIRS: Source = Source("inch and metric pairs from the basic sizes, computed apart", Trust::Computed);

fn inch(name: &str) -> Form<Inch> {
    unified(name).unwrap_or_else(|| panic!("{name} is in the table")).form
}

pub fn checks() -> Vec<Check> {
    [basic_inch(), basic_metric(), limits(), drills(), four_minors(), pairs()].concat()
}

fn basic_inch() -> Vec<Check> {
    // Diameters from, area from; name, major, pitch diameter, nut minor, bolt minor, area.
    [
        (HANDBOOK, "1/4-20", 0.2500, 0.2175, 0.1959, 0.1905, 0.0318),
        (HANDBOOK, "5/16-18", 0.3125, 0.2764, 0.2524, 0.2464, 0.0524),
        (HANDBOOK, "3/8-16", 0.3750, 0.3344, 0.3073, 0.3005, 0.0775),
        (HANDBOOK, "7/16-14", 0.4375, 0.3911, 0.3602, 0.3525, 0.1063),
        (HANDBOOK, "1/2-13", 0.5000, 0.4500, 0.4167, 0.4084, 0.1419),
        (QUOTED, "1/2-20", 0.5000, 0.4675, 0.4459, 0.4405, 0.1599),
        (QUOTED, "7/16-20", 0.4375, 0.4050, 0.3834, 0.3780, 0.1187),
        (QUOTED, "9/16-18", 0.5625, 0.5264, 0.5024, 0.4964, 0.203),
    ]
    .into_iter()
    .flat_map(|(source, name, major, pitch, nut, bolt, area)| {
        let form = inch(name);
        [
            source.number(format!("{name} major"), form.major.value(), major, 1e-9),
            source.number(format!("{name} pitch diameter"), form.pitch_diameter().value(), pitch, 1e-4),
            source.number(format!("{name} nut minor"), form.internal_minor().value(), nut, 1e-4),
            source.number(format!("{name} bolt minor"), form.external_minor().value(), bolt, 1e-4),
            TEXTBOOK.number(format!("{name} stress area"), form.tensile_area().value(), area, 0.005 * area),
        ]
    })
    .collect()
}

fn basic_metric() -> Vec<Check> {
    [
        (METRIC_DIAMETERS, "M6x1", 5.350, 4.917, 4.773, 20.1, 20.123),
        (METRIC_DIAMETERS, "M8x1.25", 7.188, 6.647, 6.466, 36.6, 36.609),
        (METRIC_DIAMETERS, "M10x1.5", 9.026, 8.376, 8.160, 58.0, 57.990),
        (METRIC_COMPUTED, "M12x1.75", 10.863, 10.106, 9.853, 84.3, 84.267),
    ]
    .into_iter()
    .flat_map(|(source, name, pitch, nut, bolt, area, exact_area)| {
        let form = metric_thread(name).unwrap_or_else(|| panic!("{name} is in the table")).form;
        [
            source.number(format!("{name} pitch diameter"), form.pitch_diameter().value(), pitch, 1e-3),
            source.number(format!("{name} nut minor"), form.internal_minor().value(), nut, 1e-3),
            source.number(format!("{name} bolt minor"), form.external_minor().value(), bolt, 1e-3),
            METRIC_AREAS.number(format!("{name} stress area"), form.tensile_area().value(), area, 0.005 * area),
            METRIC_COMPUTED.number(format!("{name} stress area"), form.tensile_area().value(), exact_area, 1e-3),
        ]
    })
    .collect()
}

fn limits() -> Vec<Check> {
    // Bolt major, bolt pitch diameter, nut bore (three decimals in the data), nut pitch diameter.
    [
        ("1/4-20", [0.2408, 0.2489], [0.2127, 0.2164], [0.196, 0.207], [0.2175, 0.2224]),
        ("1/2-20", [0.4906, 0.4987], [0.4619, 0.4662], [0.446, 0.457], [0.4675, 0.4731]),
    ]
    .into_iter()
    .flat_map(|(name, major, pitch, bore, nut)| {
        let form = inch(name);
        let found = class::nut_bore(&form).unwrap_or_else(|| panic!("{name} has a rule for its bore"));
        [
            ("2A major", class::bolt_major(&form), major, 1e-4),
            ("2A pitch diameter", class::bolt_pitch_diameter(&form), pitch, 1e-4),
            ("2B bore", found, bore, 6e-4),
            ("2B pitch diameter", class::nut_pitch_diameter(&form), nut, 1e-4),
        ]
        .into_iter()
        .flat_map(move |(what, found, [least, most], within)| {
            [
                LIMITS.number(format!("{name} {what}, least"), found.least.value(), least, within),
                LIMITS.number(format!("{name} {what}, most"), found.most.value(), most, within),
            ]
        })
    })
    .collect()
}

fn drills() -> Vec<Check> {
    let inch_drills = [
        ("1/4-20", "no. 7", "7/32"),
        ("5/16-18", "F", "J"),
        ("3/8-16", "5/16", "Q"),
        ("7/16-14", "U", "25/64"),
        ("1/2-20", "29/64", "15/32"),
        ("9/16-18", "33/64", "17/32"),
    ];
    let metric_drills = [
        ("M6x1", "5.0 mm", "5.4 mm"),
        ("M8x1.25", "6.8 mm", "7.2 mm"),
        ("M10x1.5", "8.5 mm", "9.0 mm"),
        ("M12x1.75", "10.3 mm", "10.9 mm"),
    ];
    let stamped = |name: &str| {
        let inch = UNIFIED.iter().find(|row| row.name == name).map(|row| (row.drill.name, row.drill_hard.name));
        inch.or_else(|| METRIC.iter().find(|row| row.name == name).map(|row| (row.drill.name, row.drill_hard.name)))
            .unwrap_or(("none", "none"))
    };
    let named = inch_drills.into_iter().chain(metric_drills).flat_map(|(name, soft, hard)| {
        let (found, found_hard) = stamped(name);
        [
            DRILLS.words(format!("{name} tap drill"), found, soft),
            DRILLS.words(format!("{name} tap drill, hard metal"), found_hard, hard),
        ]
    });
    let percent = [("1/4-20", 75.4), ("5/16-18", 76.9), ("3/8-16", 77.0), ("7/16-14", 74.9), ("1/2-20", 72.2)];
    let left = percent.into_iter().flat_map(|(name, published)| {
        let row = unified(name).unwrap_or_else(|| panic!("{name} is in the table"));
        let found = 100.0 * row.form.percent_thread(row.drill.diameter).value();
        let contact = 100.0 * row.form.percent_contact(row.drill.diameter).value();
        [
            PERCENT.number(format!("{name}, percent of thread"), found, published, 0.05),
            // Printed as a range for all of them: 87 to 92 on the height of 5/8 H, the last digit rounded.
            PERCENT.number(format!("{name}, percent of the contact height"), contact, 89.5, 3.0),
        ]
    });
    named.chain(left).collect()
}

fn four_minors() -> Vec<Check> {
    let form = inch("1/4-20");
    let metric_rule = form.to_millimetres().external_minor().to_inches();
    vec![
        FOUR.number("nut", form.internal_minor().value(), 0.1959, 1e-4),
        FOUR.number("bolt, inch rule", form.external_minor().value(), 0.1905, 1e-4),
        FOUR.number("bolt, metric rule", metric_rule.value(), 0.1887, 1e-4),
        FOUR.number("stress root", form.stress_root().value(), 0.1850, 1e-4),
    ]
}

fn pairs() -> Vec<Check> {
    // Major, pitch share, pitch diameter, turns.
    [
        ("5/16-18", "M8x1.25", -0.0625, 0.129, -0.167, 1.9),
        ("3/8-16", "M10x1.5", -0.475, 0.058, -0.532, 4.3),
        ("1/4-20", "M6x1", 0.350, 0.27, 0.175, 0.9),
        ("1/4-28", "M6x1", 0.350, -0.093, 0.410, 2.7),
        ("7/16-14", "M12x1.75", -0.8875, 0.037, -0.929, 6.8),
        ("1/2-13", "M12x1.75", 0.700, 0.117, 0.568, 2.1),
        ("1/2-20", "M12x1.25", 0.700, 0.016, 0.687, 15.6),
        ("5/16-24", "M8x1", -0.0625, 0.058, -0.100, 4.3),
    ]
    .into_iter()
    .flat_map(|(left, right, major, share, pitch, turns)| {
        let metric = metric_thread(right).unwrap_or_else(|| panic!("{right} is in the table")).form;
        let found = compare(&inch(left), &metric);
        [
            PAIRS.number(format!("{left} and {right}, major"), found.major.value(), major, 1e-9),
            PAIRS.number(format!("{left} and {right}, pitch"), found.pitch_share.value(), share, 0.001),
            PAIRS.number(format!("{left} and {right}, pitch diameter"), found.pitch_diameter.value(), pitch, 0.001),
            PAIRS.number(format!("{left} and {right}, turns"), found.turns.value(), turns, 0.05),
        ]
    })
    .collect()
}
