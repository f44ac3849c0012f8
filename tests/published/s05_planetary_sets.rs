//! Ratios and reactions of planetary sets.

use crate::check::{Check, Source, Trust};
use endplay::calc::gear_set::{
    direct_drum_speed, direct_share_in_third, direct_share_on_brake, first_from_others, forward_reaction,
    reverse_reaction,
};
use endplay::quantity::{One, Quantity};

const FAMILY: Source = Source("encyclopaedia's ratio tables of a three-speed family", Trust::Read);
const SUITE: Source = Source("public test suite of a gear-train library: 30, 18, 66 teeth", Trust::Read);
const EXERCISE: Source =
    Source("exercise text, suns 57 and 28, 80 and 37 teeth; answers computed apart", Trust::Computed);
const TEETH: Source = Source("tooth counts that assemble, ratios computed apart", Trust::Computed);
const BENCH: Source = Source("shop handbook's worked sums, checked by another program", Trust::Computed);

fn ratio(value: f64) -> Quantity<One> {
    Quantity::new(value)
}

pub fn checks() -> Vec<Check> {
    // Second, reverse, and the first gear that follows from them.
    let firsts = [
        (FAMILY, "2.479/1.479/2.086", 1.479, 2.086, 2.479, 0.0015),
        (FAMILY, "2.733/1.562/2.086", 1.562, 2.086, 2.733, 0.0015),
        (FAMILY, "2.714/1.500/2.429", 1.500, 2.429, 2.714, 0.0015),
        (SUITE, "2.4545/1.4545/2.2", 1.0 + 30.0 / 66.0, 66.0 / 30.0, 2.4545, 0.000_05),
        (EXERCISE, "57/28 and 80/37", 1.491, 80.0 / 37.0, 2.553, 0.001),
        (TEETH, "30/62", 1.0 + 30.0 / 62.0, 62.0 / 30.0, 2.4839, 0.000_05),
        (TEETH, "34/66", 1.0 + 34.0 / 66.0, 66.0 / 34.0, 2.5152, 0.000_05),
    ]
    .map(|(source, what, second, reverse, first, within)| {
        source.number(format!("{what}, first"), first_from_others(ratio(second), ratio(reverse)).value(), first, within)
    });
    let input = Quantity::new(500.0);
    let drum = |gear| direct_drum_speed(ratio(gear), ratio(1.48), Quantity::new(6500.0)).value();
    let reactions = [
        BENCH.number("reaction in first, 500 lb-ft", forward_reaction(ratio(2.48), input).value(), 740.0, 0.5),
        BENCH.number("reaction in reverse, 500 lb-ft", reverse_reaction(ratio(2.08), input).value(), 1540.0, 0.5),
        BENCH.number("drum in first, rpm", drum(2.48), -5460.0, 5.0),
        BENCH.number("drum in second, rpm", drum(1.48), 0.0, 1e-9),
        BENCH.number("drum in third, rpm", drum(1.0), 6500.0, 1e-9),
        BENCH.number("third, share of the direct clutch", direct_share_in_third(ratio(1.48)).value(), 0.324, 0.0005),
        BENCH.number(
            "on the brake, share of the direct clutch",
            direct_share_on_brake(ratio(2.48), ratio(2.08)).value(),
            0.544,
            0.0005,
        ),
    ];
    firsts.into_iter().chain(reactions).collect()
}
