//! The power flow of every range of the three-speed family, against one dense solve of 12 equations by nalgebra.

use crate::jobs::Dice;
use crate::measure::{by_turns, ratio};
use endplay::calc::power_flow::three_speed::{self, Fitted};
use endplay::calc::power_flow::{Input, Range};
use endplay::quantity::Quantity;
use nalgebra::{SMatrix, SVector};
use std::hint::black_box;

const ROUNDS: usize = 4001;
const TIMES: u32 = 4;
const RANGES: [Range; 8] = [
    three_speed::FIRST,
    three_speed::FIRST_HELD,
    three_speed::SECOND,
    three_speed::SECOND_HELD,
    three_speed::THIRD,
    three_speed::REVERSE,
    three_speed::BRAKE,
    three_speed::NEUTRAL,
];

pub fn against_a_dense_solve() {
    let train = three_speed::train(Quantity::new(62.0 / 30.0), Quantity::new(62.0 / 30.0), Fitted::default());
    let train = train.expect("a sound train");
    let input = Input { speed: Quantity::new(6500.0), torque: Quantity::new(500.0) };
    let mut dice = Dice(17);
    let mut thrown = || (dice.roll() % 2001) as f64 / 1000.0 - 1.0;
    // Its diagonal outweighs the rest, so it can be solved.
    let matrix = SMatrix::<f64, 12, 12>::from_fn(|row, column| if row == column { 13.0 } else { thrown() });
    let right = SVector::<f64, 12>::from_fn(|_, _| thrown());
    let (flows, solve) = by_turns(
        ROUNDS,
        || {
            (0..TIMES).for_each(|_| {
                for range in black_box(&RANGES) {
                    drop(black_box(train.flow(range, black_box(input))));
                }
            });
        },
        || {
            (0..TIMES).for_each(|_| {
                black_box(black_box(matrix).lu().solve(black_box(&right)));
            })
        },
    );
    let micros = |time: std::time::Duration| time.as_secs_f64() * 1e6 / f64::from(TIMES);
    println!(
        "power flow of {} ranges / one dense 12 x 12 solve: {:.1}  ({:.1} us against {:.2} us; reach 20 us or less)",
        RANGES.len(),
        ratio(flows, solve),
        micros(flows),
        micros(solve),
    );
}
