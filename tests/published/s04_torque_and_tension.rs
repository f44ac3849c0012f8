//! Proof loads, torque factors, torque and clamp load.

use crate::check::{Check, Source, Trust};
use endplay::calc::thread::Form;
use endplay::calc::thread::engaged::{Metals, bolt_shear_area, hole_shear_area, least_engagement};
use endplay::calc::thread::table::{metric_thread, unified};
use endplay::calc::thread::tension::{
    CLASSES, GRADES, PERMANENT, TORQUE_FACTORS, USED_AGAIN, factor_from_friction, find, load, proof_load, stress,
    torque,
};
use endplay::quantity::{Inch, Millimetre, Quantity};

const J429: Source = Source("machine-design textbook, 9th ed., p. 433, table 8-9 (SAE J429)", Trust::Read);
const CLASS: Source = Source("machine-design textbook, 9th ed., p. 435, table 8-11 (ISO 898-1)", Trust::Read);
const PROOF: Source = Source("ISO 898-1 table of proof loads, coarse thread", Trust::Quoted);
const BREAKING: Source = Source("ISO 898-1 table of tensile loads, coarse thread", Trust::Quoted);
const FACTORS: Source = Source("machine-design textbook, 9th ed., p. 439, table 8-15", Trust::Read);
const SHARES: Source = Source("machine-design textbook, 9th ed., section 8-9", Trust::Read);
const EXAMPLE: Source = Source("machine-design textbook, 9th ed., p. 439, example 8-3", Trust::Read);
const EXAMPLE_COMPUTED: Source = Source("the same example, computed apart from eq. 8-26 and 8-27", Trust::Computed);
const CHART: Source = Source("fastener dealer's torque chart, grade 2, K 0.20", Trust::Quoted);
const COMPUTED: Source = Source("0.75 of the proof load and T = K d F, computed apart", Trust::Computed);
const SHEAR: Source = Source("ring sheared in the thread drawn as triangles, computed apart", Trust::Computed);

fn inch(name: &str) -> Form<Inch> {
    unified(name).unwrap_or_else(|| panic!("{name} is in the table")).form
}

fn metric(name: &str) -> Form<Millimetre> {
    metric_thread(name).unwrap_or_else(|| panic!("{name} is in the table")).form
}

fn factor(state: &str) -> f64 {
    TORQUE_FACTORS.iter().find(|(name, _)| *name == state).map_or(f64::NAN, |(_, factor)| *factor)
}

pub fn checks() -> Vec<Check> {
    [grades(), loads(), example(), settings(), engagement()].concat()
}

fn grades() -> Vec<Check> {
    let inch_rows = [
        ("2", 0.5, [55.0, 74.0, 57.0]),
        ("5", 0.5, [85.0, 120.0, 92.0]),
        ("5", 1.25, [74.0, 105.0, 81.0]),
        ("8", 0.5, [120.0, 150.0, 130.0]),
    ];
    let inch_grades = inch_rows.into_iter().flat_map(|(name, size, ksi)| {
        let row = find(GRADES, name, Quantity::new(size)).unwrap_or_else(|| panic!("grade {name} is in the table"));
        ["proof", "tensile", "yield"].into_iter().zip([row.proof, row.tensile, row.yielding]).zip(ksi).map(
            move |((what, found), published)| {
                J429.number(format!("grade {name} at {size} in, {what}, ksi"), found.value() / 1000.0, published, 1e-9)
            },
        )
    });
    let metric_rows = [("8.8", 20.0, [600.0, 830.0, 660.0]), ("10.9", 10.0, [830.0, 1040.0, 940.0])];
    let metric_grades = metric_rows.into_iter().flat_map(|(name, size, megapascals)| {
        let row = find(CLASSES, name, Quantity::new(size)).unwrap_or_else(|| panic!("class {name} is in the table"));
        ["proof", "tensile", "yield"].into_iter().zip([row.proof, row.tensile, row.yielding]).zip(megapascals).map(
            move |((what, found), published)| {
                CLASS.number(format!("class {name} at {size} mm, {what}, MPa"), found.value(), published, 1e-9)
            },
        )
    });
    let factors = [("not plated, black", 0.30), ("zinc plated", 0.20), ("lubricated", 0.18), ("cadmium plated", 0.16)]
        .map(|(state, published)| FACTORS.number(state, factor(state), published, 1e-9));
    let shares = [
        SHARES.number("used again", USED_AGAIN.value(), 0.75, 1e-9),
        SHARES.number("permanent", PERMANENT.value(), 0.90, 1e-9),
    ];
    inch_grades.chain(metric_grades).chain(factors).chain(shares).collect()
}

fn loads() -> Vec<Check> {
    // Proof load and least tensile load, newtons.
    let rows = [
        ("8.8", "M6x1", 11_600.0, None),
        ("8.8", "M8x1.25", 21_200.0, Some(29_200.0)),
        ("8.8", "M10x1.5", 33_700.0, Some(46_400.0)),
        ("8.8", "M12x1.75", 48_900.0, Some(67_400.0)),
        ("10.9", "M6x1", 16_700.0, None),
        ("10.9", "M8x1.25", 30_400.0, Some(38_100.0)),
        ("10.9", "M10x1.5", 48_100.0, Some(60_300.0)),
        ("10.9", "M12x1.75", 70_000.0, Some(87_700.0)),
    ];
    let mut checks = Vec::new();
    for (class, name, proof, tensile) in rows {
        let form = metric(name);
        let row = find(CLASSES, class, form.major).unwrap_or_else(|| panic!("class {class} is in the table"));
        // Printed to whole hundreds, the smallest of all half a per cent down.
        let within = if proof < 12_000.0 { 0.007 * proof } else { 0.003 * proof };
        checks.push(PROOF.number(format!("{name} {class}, N"), proof_load(&form, row.proof).value(), proof, within));
        if let Some(tensile) = tensile {
            let found = load(&form, row.tensile).value();
            checks.push(BREAKING.number(format!("{name} {class}, N"), found, tensile, 0.005 * tensile));
        }
    }
    checks
}

fn example() -> Vec<Check> {
    let form = inch("3/4-16");
    let clamp = Quantity::new(25_000.0);
    let (k, friction) = (Quantity::new(0.20), Quantity::new(0.15));
    let full = factor_from_friction(&form, friction, friction);
    vec![
        EXAMPLE.number("3/4-16, stress area", form.tensile_area().value(), 0.373, 0.0005),
        EXAMPLE.number("25 kip in 3/4-16, ksi", stress(&form, clamp).value() / 1000.0, 67.02, 0.1),
        EXAMPLE_COMPUTED.number("short form, lb-in", torque(k, &form, clamp).value() * 12.0, 3750.0, 1e-6),
        EXAMPLE_COMPUTED.number("full form, lb-in", torque(full, &form, clamp).value() * 12.0, 3551.0, 3.5),
        EXAMPLE_COMPUTED.number("K of the full form", full.value(), 0.189_39, 0.000_02),
    ]
}

fn settings() -> Vec<Check> {
    // Pounds of clamp, then pound-feet at a factor.
    let rows = [
        (CHART, "2", "1/4-20", 1312.0, None),
        (CHART, "2", "3/8-16", 3197.0, Some((0.20, 20.0))),
        (CHART, "2", "7/16-14", 4385.0, Some((0.20, 32.0))),
        (CHART, "2", "1/2-13", 5853.0, Some((0.20, 48.8))),
        (COMPUTED, "5", "3/8-16", 4941.0, Some((0.20, 30.9))),
        (COMPUTED, "5", "3/8-16", 4941.0, Some((0.15, 23.2))),
        (COMPUTED, "5", "5/16-18", 3340.0, Some((0.20, 17.4))),
        (COMPUTED, "5", "5/16-18", 3340.0, Some((0.15, 13.1))),
    ];
    let mut checks = Vec::new();
    for (source, grade, name, pounds, wrench) in rows {
        let form = inch(name);
        let row = find(GRADES, grade, form.major).unwrap_or_else(|| panic!("grade {grade} is in the table"));
        let clamp = proof_load(&form, row.proof) * USED_AGAIN.value();
        let k = wrench.map_or(String::new(), |(k, _)| format!(" (K {k})"));
        checks.push(source.number(format!("{name} grade {grade}, lbf{k}"), clamp.value(), pounds, 0.002 * pounds));
        if let Some((k, published)) = wrench {
            let found = torque(Quantity::new(k), &form, clamp).value();
            checks.push(source.number(format!("{name} grade {grade}, lb-ft at K {k}"), found, published, 0.06));
        }
    }
    for (class, name, kilonewtons, newton_metres) in [("8.8", "M8x1.25", 15.92, 25.5), ("10.9", "M10x1.5", 36.1, 72.2)]
    {
        let form = metric(name);
        let row = find(CLASSES, class, form.major).unwrap_or_else(|| panic!("class {class} is in the table"));
        let clamp = proof_load(&form, row.proof) * USED_AGAIN.value();
        let found = torque(Quantity::new(0.2), &form, clamp).value();
        checks.push(COMPUTED.number(format!("{name} {class}, kN"), clamp.value() / 1000.0, kilonewtons, 0.02));
        checks.push(COMPUTED.number(format!("{name} {class}, N·m"), found, newton_metres, 0.05));
    }
    checks
}

/// Basic sizes, one diameter engaged.
fn engagement() -> Vec<Check> {
    let (inch, metric) = (inch("3/8-16"), metric("M10x1.5"));
    let in_a_case = Metals { bolt: Quantity::new(800.0), hole: Quantity::new(240.0) };
    vec![
        SHEAR.number("3/8-16, bolt", bolt_shear_area(&inch, inch.major).value(), 0.271_559, 1e-5),
        SHEAR.number("3/8-16, hole", hole_shear_area(&inch, inch.major).value(), 0.386_563, 1e-5),
        SHEAR.number("M10, bolt", bolt_shear_area(&metric, metric.major).value(), 197.3596, 1e-3),
        SHEAR.number("M10, hole", hole_shear_area(&metric, metric.major).value(), 274.8894, 1e-3),
        SHEAR.number(
            "M10 8.8 in 240 MPa, least engagement, mm",
            least_engagement(&metric, in_a_case).value(),
            14.0637,
            1e-3,
        ),
    ]
}
