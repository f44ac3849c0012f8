//! End play, washers and pack clearance.

use crate::check::{Check, Source, Trust};
use endplay::calc::fit::{Dimension, Part, Pick, Window, chain, choose, each_steel, landings, wanted};
use endplay::quantity::{Inch, Quantity};

const EXAMPLE: Source = Source("machine-design textbook, 9th ed., p. 20, example 1-3", Trust::Read);
const SQUARES: Source = Source("the same example, root of the sum of squares computed apart", Trust::Computed);
const BENCH: Source = Source("shop handbook's worked sums, checked by another program", Trust::Computed);

fn inch(value: f64) -> Quantity<Inch> {
    Quantity::new(value)
}

pub fn checks() -> Vec<Check> {
    [stack(), washer(), steels()].concat()
}

fn stack() -> Vec<Check> {
    let of = |last: f64| {
        let sizes = [(1.750, 0.003, true), (0.750, 0.001, false), (0.120, 0.005, false), (last, 0.001, false)];
        chain(&sizes.map(|(size, give, opens)| Dimension { size: inch(size), give: inch(give), opens }))
    };
    let (gap, tight) = (of(0.875), of(0.867));
    vec![
        EXAMPLE.number("mean gap", gap.gap.value(), 0.005, 1e-9),
        EXAMPLE.number("worst case", gap.worst.value(), 0.010, 1e-9),
        EXAMPLE.number("least gap", (gap.gap - gap.worst).value(), -0.005, 1e-9),
        EXAMPLE.number("greatest gap", (gap.gap + gap.worst).value(), 0.015, 1e-9),
        EXAMPLE.number("least gap with d = 0.867", (tight.gap - tight.worst).value(), 0.003, 1e-9),
        SQUARES.number("statistical", gap.likely.value(), 0.006, 1e-9),
    ]
}

fn washer() -> Vec<Check> {
    let window = Window { least: inch(0.003), aim: inch(0.012), most: inch(0.024) };
    let set = [0.062, 0.073, 0.084, 0.095, 0.106, 0.117, 0.128].map(|size| Part { size: inch(size), give: inch(0.0) });
    let all = landings(inch(0.073), inch(0.031), inch(0.0), &window, &set);
    let (size, left) = match choose(&all, &window) {
        Pick::Fits(best) => (set[best.part].size.value(), best.result.value()),
        Pick::NoneFits { .. } | Pick::NoParts => (f64::NAN, f64::NAN),
    };
    vec![
        BENCH.number("washer wanted", wanted(inch(0.073), inch(0.031), inch(0.012)).value(), 0.092, 1e-9),
        BENCH.number("nearest step", size, 0.095, 1e-9),
        BENCH.number("play it leaves", left, 0.009, 1e-9),
    ]
}

fn steels() -> Vec<Check> {
    let steel = |clearance: f64, target: f64, changed: u32| {
        each_steel(inch(0.068), inch(clearance), inch(target), changed).value()
    };
    vec![
        BENCH.number("0.140 to 0.060 with 4 steels, each", steel(0.140, 0.060, 4), 0.088, 1e-9),
        BENCH.number("0.140 to 0.060 with 1 steel", steel(0.140, 0.060, 1), 0.148, 1e-9),
        BENCH.number("0.040 to 0.060 with 2 steels, each", steel(0.040, 0.060, 2), 0.058, 1e-9),
    ]
}
