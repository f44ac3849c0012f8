//! Driveshaft: critical speed by named model, joint angles, unevenness.

use crate::check::{Check, Source, Trust};
use endplay::calc::driveshaft::{TubeConstant, critical_speed, critical_speed_mass_at_midspan, tube_constant};
use endplay::calc::joint::{angle_limit, unevenness};
use endplay::calc::slip_yoke::{distance_after_swap, length_after_swap};
use endplay::job::TubeMaterial;
use endplay::quantity::Quantity;
use endplay::rules::Limits;
use std::f64::consts::TAU;

const BENCH: Source = Source("shop handbook's worked sums, checked by another program", Trust::Computed);
const EULER: Source = Source("Euler–Bernoulli closed form, computed apart", Trust::Computed);
const DIFFERENCES: Source = Source("finite differences of the beam, computed apart", Trust::Computed);
const SUPPLIER: Source = Source("drive-shaft supplier's joint selection page", Trust::Quoted);
const DESIGN: Source =
    Source("machine-design textbook, 9th ed., p. 386, example 7-5; answer computed apart", Trust::Computed);
const PRINT: Source = Source("textbook problem with answers, 4 ft × 3 in × 1/8 in: all mass at mid-span", Trust::Read);
const SPREAD: Source = Source("the same tube with its mass spread, computed apart", Trust::Computed);
const QUIET: Source = Source("page quoting the joint guide's two-joint table (SAE AE-7): 400 rad/s²", Trust::Quoted);
const COMMON: Source = Source("widely used angle table: 1,000 rad/s²", Trust::Memory);
const EXACT: Source = Source("asin(√a / ω), computed apart", Trust::Computed);
const COSINES: Source = Source("law of cosines, computed apart", Trust::Computed);

const PSI_IN_GIGAPASCAL: f64 = 145_037.737_73;
const KILOGRAMS_M3_IN_POUND_IN3: f64 = 27_679.904_71;
const POUNDS_IN_SLUG: f64 = 386.088_582_677 / 12.0;

fn metric_tube(gigapascal: f64, kilograms_m3: f64) -> TubeConstant {
    tube_constant(
        Quantity::new(gigapascal * PSI_IN_GIGAPASCAL),
        Quantity::new(kilograms_m3 / KILOGRAMS_M3_IN_POUND_IN3),
    )
}

fn whip(tube: TubeConstant, outside: f64, wall: f64, length: f64) -> f64 {
    critical_speed(tube, Quantity::new(outside), Quantity::new(wall), Quantity::new(length)).value()
}

/// The constant the program reckons with until a shop moves it.
fn stock(material: TubeMaterial) -> TubeConstant {
    Limits::default().tube(material)
}

pub fn checks() -> Vec<Check> {
    [constants(), tubes(), joints(), swap()].concat()
}

fn constants() -> Vec<Check> {
    let book = tube_constant(Quantity::new(30e6), Quantity::new(0.283));
    let steel = metric_tube(207.0, 7850.0);
    vec![
        EULER.number("constant, 30e6 psi", book.0, 4.767e6, 500.0),
        EULER.number("constant, 207 GPa", steel.0, 4.763e6, 1000.0),
        EULER.number("constant, 6061", metric_tube(68.9, 2700.0).0, 4.686e6, 500.0),
        EULER.number("constant in millimetres, 207 GPa", steel.0 * 25.4, 1.210e8, 1e5),
        SUPPLIER.number("constant of steel", stock(TubeMaterial::Steel).0, 4.8e6, 0.05e6),
        SUPPLIER.number("constant of steel in millimetres", stock(TubeMaterial::Steel).0 * 25.4, 1.21e8, 5e5),
    ]
}

fn tubes() -> Vec<Check> {
    let (steel, aluminum) = (metric_tube(207.0, 7850.0), metric_tube(68.9, 2700.0));
    let solid = tube_constant(Quantity::new(30e6), Quantity::new(0.282));
    let slugs = |modulus, density: f64| tube_constant(Quantity::new(modulus), Quantity::new(density * POUNDS_IN_SLUG));
    let (print_steel, print_aluminum) = (slugs(29e6, 0.008_83), slugs(10e6, 0.003_05));
    let lumped = |tube| {
        critical_speed_mass_at_midspan(tube, Quantity::new(3.0), Quantity::new(0.125), Quantity::new(48.0)).value()
    };
    vec![
        BENCH.number("steel 3.0 × 0.083 × 60", whip(stock(TubeMaterial::Steel), 3.0, 0.083, 60.0), 5468.0, 0.5),
        BENCH.number("steel 3.0 × 0.083 × 48", whip(stock(TubeMaterial::Steel), 3.0, 0.083, 48.0), 8544.0, 0.5),
        BENCH.number("steel 3.5 × 0.083 × 40", whip(stock(TubeMaterial::Steel), 3.5, 0.083, 40.0), 14_411.0, 0.5),
        EULER.number(
            "aluminum 3.5 × 0.125 × 55, the shop's constant",
            whip(stock(TubeMaterial::Aluminum), 3.5, 0.125, 55.0),
            7389.4,
            7.4,
        ),
        EULER.number("steel 3.0 × 0.083 × 52", whip(steel, 3.0, 0.083, 52.0), 7270.0, 7.3),
        DIFFERENCES.number("steel 3.0 × 0.083 × 52", whip(steel, 3.0, 0.083, 52.0), 7270.2, 36.0),
        EULER.number("steel 3.5 × 0.083 × 55", whip(steel, 3.5, 0.083, 55.0), 7612.0, 7.6),
        DIFFERENCES.number("steel 3.5 × 0.083 × 55", whip(steel, 3.5, 0.083, 55.0), 7611.8, 38.0),
        EULER.number("6061 3.5 × 0.125 × 55", whip(aluminum, 3.5, 0.125, 55.0), 7399.0, 7.4),
        DIFFERENCES.number("6061 3.5 × 0.125 × 55", whip(aluminum, 3.5, 0.125, 55.0), 7398.8, 37.0),
        DESIGN.number("1 in solid on 31 in, rpm", whip(solid, 1.0, 0.5, 31.0), 4968.0, 5.0),
        DESIGN.number("1 in solid on 31 in, rad/s", whip(solid, 1.0, 0.5, 31.0) * TAU / 60.0, 520.3, 0.52),
        PRINT.number("steel", lumped(print_steel), 5800.0, 5.8),
        PRINT.number("aluminum", lumped(print_aluminum), 5795.0, 5.8),
        SPREAD.number("steel", whip(print_steel, 3.0, 0.125, 48.0), 8262.0, 8.3),
        SPREAD.number("aluminum", whip(print_aluminum, 3.0, 0.125, 48.0), 8255.0, 8.3),
    ]
}

fn joints() -> Vec<Check> {
    let rows = [
        (QUIET, 400.0, 1500.0, 7.3, 0.05),
        (QUIET, 400.0, 1600.0, 6.9, 0.05),
        (QUIET, 400.0, 1700.0, 6.5, 0.051),
        (EXACT, 400.0, 1500.0, 7.31, 0.01),
        (EXACT, 400.0, 1600.0, 6.86, 0.01),
        (EXACT, 400.0, 1700.0, 6.45, 0.01),
        (COMMON, 1000.0, 3000.0, 5.8, 0.05),
        (COMMON, 1000.0, 2000.0, 8.7, 0.05),
        (COMMON, 1000.0, 1500.0, 11.5, 0.12),
        (EXACT, 1000.0, 3000.0, 5.78, 0.01),
        (EXACT, 1000.0, 2000.0, 8.68, 0.01),
        (EXACT, 1000.0, 1500.0, 11.61, 0.01),
    ];
    let angles = rows.map(|(source, limit, rpm, published, within)| {
        let found = angle_limit(Quantity::new(limit), Quantity::new(rpm)).map_or(f64::NAN, Quantity::value);
        source.number(format!("{limit} rad/s² at {rpm} rpm"), found, published, within)
    });
    let supplier = SUPPLIER.number("unevenness of 2.98°", unevenness(Quantity::new(2.98)).value(), 0.0027, 0.000_02);
    angles.into_iter().chain([supplier]).collect()
}

fn swap() -> Vec<Check> {
    let after = |moved: f64, angle: f64| {
        distance_after_swap(Quantity::new(54.0), Quantity::new(moved), Quantity::new(angle)).value()
    };
    let built =
        length_after_swap(Quantity::new(54.0), Quantity::new(6.0), Quantity::new(0.5), Quantity::new(3.0)).value();
    vec![
        COSINES.number("54 in, tail 6 in longer, 3°", after(6.0, 3.0), 48.009_249_7, 1e-6),
        COSINES.number("54 in, tail 4 in shorter, 3°", after(-4.0, 3.0), 57.994_896_0, 1e-6),
        COSINES.number("54 in, tail 6 and yoke 1/2 in longer, 3°", built, 47.510_125_9, 1e-6),
    ]
}
