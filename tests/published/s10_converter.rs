//! Torque converter: stall, table, heat, fluid, spacer.

use crate::check::{Check, Source, Trust};
use endplay::calc::converter::heat::{fluid_rise, mass, oil_heat, time_to};
use endplay::calc::converter::stall::{Stall, stall};
use endplay::calc::converter::table::{Row, Table};
use endplay::calc::converter::torque_curve::{Point, TorqueCurve};
use endplay::calc::converter::{
    CapacityFactor, GAP_AIMED, brake_power, off_the_label, pilot_engaged, spacer, stall_at, temperature_rise,
    turbine_torque,
};
use endplay::quantity::{Kilowatt, Quantity};

const TABLE: Source = Source("21-point demonstration converter in two public code bases", Trust::Read);
const APART: Source = Source("the demonstration converter, straight lines, computed apart", Trust::Computed);
const FACTOR: Source = Source("K = N / √T (SAE J643), computed apart", Trust::Computed);
const MEETING: Source = Source("N = K √T(N) on straight pieces, solved apart by bisection", Trust::Computed);
const REFERENCE: Source =
    Source("EU regulation 2017/2400, annex VI: T × (1,000 / n)²; computed apart", Trust::Computed);
const OIL: Source = Source("NBS miscellaneous publication 97, formula as quoted, computed apart", Trust::Computed);
const ENGINE_OIL: Source = Source("table for unused engine oil", Trust::Quoted);
const ADIABATIC: Source = Source("P t / (ρ V c), computed apart", Trust::Computed);
const BENCH: Source = Source("shop handbook's worked sums, checked by another program", Trust::Computed);

/// Speed ratio, capacity factor, torque ratio.
const DEMONSTRATION: [(f64, f64, f64); 12] = [
    (0.0, 137.4652, 2.232),
    (0.1, 137.0650, 2.075),
    (0.2, 135.8644, 1.975),
    (0.3, 135.6644, 1.846),
    (0.4, 137.5653, 1.720),
    (0.5, 140.3666, 1.564),
    (0.6, 145.2689, 1.409),
    (0.7, 152.8725, 1.254),
    (0.8, 162.9773, 1.096),
    (0.85, 172.7820, 1.012),
    (0.90, 197.6938, 0.999),
    (0.94, 244.5160, 1.002),
];

pub fn checks() -> Vec<Check> {
    [stalls(), table(), couples(), meetings(), warmth(), bench()].concat()
}

fn stalls() -> Vec<Check> {
    let stall_of = |factor: f64, torque: f64| CapacityFactor(factor).speed_at(Quantity::new(torque));
    let at_300 = stall_of(137.4652, 300.0);
    let power = brake_power(Quantity::new(300.0), at_300);
    let moved = stall_at(Quantity::new(3000.0), Quantity::new(480.0), Quantity::new(400.0));
    let factor = CapacityFactor::from_stall(at_300, Quantity::new(300.0));
    let reference = factor.torque_at(Quantity::new(1000.0));
    vec![
        FACTOR.number("K 137.4652 behind 300, rpm", at_300.value(), 2381.0, 2.4),
        FACTOR.number("K 200 behind 400, rpm", stall_of(200.0, 400.0).value(), 4000.0, 4.0),
        FACTOR.number("K 160 behind 350, rpm", stall_of(160.0, 350.0).value(), 2993.0, 3.0),
        FACTOR.number("a fifth more torque", moved.value() / 3000.0, 1.0954, 0.0011),
        FACTOR.number(
            "2,381 rpm at 300 lb-ft, K",
            CapacityFactor::from_stall(Quantity::new(2381.0), Quantity::new(300.0)).0,
            137.4652,
            0.14,
        ),
        FACTOR.number("metric over inch factor", CapacityFactor(1.0).metric(), 0.858_81, 0.000_01),
        FACTOR.number("inch over metric factor", CapacityFactor::from_metric(0.858_81).0, 1.0, 0.000_01),
        FACTOR.number(
            "torque taken at 4,000 with K 200",
            CapacityFactor(200.0).torque_at(Quantity::new(4000.0)).value(),
            400.0,
            1e-9,
        ),
        FACTOR.number("heat of 300 at stall, kW", power.value(), 101.4, 0.11),
        FACTOR.number("heat of 300 at stall, hp", power.value() / 0.745_699_872, 136.0, 0.14),
        FACTOR.number("heat of 300 at stall, Btu/min", power.value() * 56.869_03, 5768.0, 5.8),
        REFERENCE.number("reference torque, lb-ft", reference.value(), 52.92, 0.053),
        REFERENCE.number("reference torque, N·m", reference.value() * 1.355_817_948, 71.75, 0.072),
    ]
}

fn demonstration() -> Table {
    let rows = DEMONSTRATION.map(|(speed, factor, torque)| Row {
        speed_ratio: Quantity::new(speed),
        factor: CapacityFactor(factor),
        torque_ratio: Quantity::new(torque),
    });
    Table::new(rows.into()).unwrap_or_else(|refused| panic!("real data was refused: {refused}"))
}

fn table() -> Vec<Check> {
    let table = demonstration();
    let mut checks = Vec::new();
    for (speed, factor, torque) in DEMONSTRATION {
        let row = table.at(Quantity::new(speed));
        let (found, ratio) = row.map_or((f64::NAN, f64::NAN), |row| (row.factor.0, row.torque_ratio.value()));
        checks.push(TABLE.number(format!("K at {speed}"), found, factor, 1e-9));
        checks.push(TABLE.number(format!("torque ratio at {speed}"), ratio, torque, 1e-9));
    }
    // Efficiency is speed ratio × torque ratio; at stall all of the power is heat, at 0.8 an eighth.
    for (speed, efficiency, heat) in
        [(0.0, 0.0, 100.0), (0.5, 0.782, 21.8), (0.8, 0.8768, 12.32), (0.94, 0.941_88, 5.812)]
    {
        let row = table.at(Quantity::new(speed));
        let found = row.map_or(f64::NAN, |row| row.efficiency().value());
        let warm = row.map_or(f64::NAN, |row| row.heat(Quantity::<Kilowatt>::new(100.0)).value());
        checks.push(FACTOR.number(format!("efficiency at {speed}"), found, efficiency, 1e-9));
        checks.push(FACTOR.number(format!("heat of 100 kW at {speed}"), warm, heat, 1e-9));
    }
    checks
}

/// Where its torque ratio comes down to one: 12 parts of the 13 from 0.85 to 0.90.
fn couples() -> Vec<Check> {
    let found = demonstration().coupling_point();
    vec![
        APART.number("coupling point", found.map_or(f64::NAN, |row| row.speed_ratio.value()), 0.896_154, 1e-6),
        APART.number("K there", found.map_or(f64::NAN, |row| row.factor.0), 195.7775, 1e-3),
    ]
}

fn meetings() -> Vec<Check> {
    let curve = |points: &[(f64, f64)]| {
        let point =
            |&(speed, torque): &(f64, f64)| Point { speed: Quantity::new(speed), torque: Quantity::new(torque) };
        TorqueCurve::new(points.iter().map(point).collect()).unwrap_or_else(|refused| panic!("{refused}"))
    };
    let street = curve(&[(1500.0, 310.0), (2500.0, 380.0), (3500.0, 420.0), (4500.0, 410.0), (5500.0, 350.0)]);
    let boosted = curve(&[(1000.0, 120.0), (2500.0, 140.0), (3500.0, 520.0), (6500.0, 500.0)]);
    let speeds = |engine: &TorqueCurve, factor: f64| match stall(engine, CapacityFactor(factor)) {
        Stall::At(meeting) => vec![meeting.speed.value()],
        Stall::Several(meetings) => meetings.iter().map(|meeting| meeting.speed.value()).collect(),
        Stall::AboveTheCurve(_) | Stall::BelowTheCurve(_) => Vec::new(),
    };
    let mut checks = Vec::new();
    let mut take = |what: &str, found: Vec<f64>, published: &[f64]| {
        checks.push(MEETING.number(format!("{what}, meetings"), found.len() as f64, published.len() as f64, 1e-9));
        for (place, (found, published)) in found.into_iter().zip(published).enumerate() {
            checks.push(MEETING.number(format!("{what}, meeting {}, rpm", place + 1), found, *published, 0.01));
        }
    };
    take("street engine, K 137.4652", speeds(&street, 137.4652), &[2709.007]);
    take("street engine, K 220", speeds(&street, 220.0), &[4456.996]);
    take("boosted engine, K 190", speeds(&boosted, 190.0), &[2217.681, 2639.417, 4310.108]);
    checks
}

fn warmth() -> Vec<Check> {
    let heat = |celsius: f64| oil_heat(Quantity::new(0.888), Quantity::new(celsius)).value();
    let quarts = 9.5 / 0.946_352_946;
    let fluid = mass(Quantity::new(quarts), Quantity::new(820.0));
    let rise = fluid_rise(Quantity::new(100.0), Quantity::new(5.0), fluid, Quantity::new(2.1)).value();
    let time = time_to(Quantity::new(80.0), Quantity::new(150.0), Quantity::new(100.0), fluid, Quantity::new(0.0));
    vec![
        OIL.number("68 °F", heat(20.0), 1.860, 0.001),
        OIL.number("140 °F", heat(60.0), 2.004, 0.001),
        OIL.number("212 °F", heat(100.0), 2.148, 0.001),
        // The formula reads 1 to 3 % under the table.
        ENGINE_OIL.number("20 °C", heat(20.0), 1.88, 0.03 * 1.88),
        ENGINE_OIL.number("60 °C", heat(60.0), 2.05, 0.03 * 2.05),
        ENGINE_OIL.number("100 °C", heat(100.0), 2.22, 0.033 * 2.22),
        ADIABATIC.number("100 kW, 5 s, 9.5 L, °C", rise, 30.6, 0.05),
        ADIABATIC.number("100 kW, 5 s, 9.5 L, °F", rise * 1.8, 55.0, 0.06),
        ADIABATIC.number("9.5 L at 820 kg/m³, kg", fluid.value(), 7.79, 0.0005),
        ADIABATIC.number("seconds from 80 to 150 °C at 100 kW", time.map_or(f64::NAN, Quantity::value), 10.906, 0.001),
    ]
}

fn bench() -> Vec<Check> {
    let here = stall_at(Quantity::new(3200.0), Quantity::new(820.0), Quantity::new(500.0));
    let power = brake_power(Quantity::new(820.0), here);
    let warm = temperature_rise(Quantity::new(477.0), Quantity::new(3.0), Quantity::new(5.0), Quantity::new(12.0));
    let gap = spacer(Quantity::new(0.220), GAP_AIMED);
    vec![
        BENCH.number("3,200 at 500, behind 820", here.value(), 4098.0, 0.5),
        BENCH.number(
            "4,098 against a label of 3,200",
            off_the_label(here, Quantity::new(3200.0)).value(),
            0.281,
            0.0005,
        ),
        BENCH.number("heat of 820 at 4,098, kW", power.value(), 477.0, 0.5),
        BENCH.number("3 s with 5 kg and 12 kg, °C", warm.value(), 92.0, 0.5),
        BENCH.number("spacer for a gap of 0.220", gap.value(), 0.064, 0.0005),
        BENCH.number(
            "pilot left",
            pilot_engaged(Quantity::new(0.55), Quantity::new(0.064), Quantity::new(0.20)).value(),
            0.286,
            1e-9,
        ),
        BENCH.number(
            "turbine torque of 560",
            turbine_torque(Quantity::new(560.0), Quantity::new(2.0)).value(),
            1120.0,
            1e-9,
        ),
    ]
}
