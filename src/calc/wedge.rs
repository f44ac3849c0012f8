//! Inside a one-way clutch: whether its rollers wedge, what they carry, how hard they press on the race.

use crate::quantity::{Degree, Inch, Length, One, PoundFoot, PoundForce, Psi, Quantity};

/// Young's modulus of steel, 207 GPa (any machine-design text).
pub const STEEL: Quantity<Psi> = Quantity::new(30.02e6);

/// Poisson's ratio of steel.
const POISSON: f64 = 0.3;

/// Friction a roller needs so that it wedges instead of slipping: the tangent of half the wedge angle.
///
/// The angle is the one between race and ramp at the roller. Source: the balance of forces on the roller; derived.
pub fn friction_to_wedge(angle: Quantity<Degree>) -> Quantity<One> {
    Quantity::new((angle.value() / 2.0).to_radians().tan())
}

/// Torque of rollers that each press on the race by so much: rollers × force × race radius × tan(angle / 2).
///
/// Force square to the race. Source: the same balance.
pub fn torque(
    rollers: u32,
    force: Quantity<PoundForce>,
    race_radius: Quantity<Inch>,
    angle: Quantity<Degree>,
) -> Quantity<PoundFoot> {
    let pull = f64::from(rollers) * force.value() * friction_to_wedge(angle).value();
    Quantity::new(pull * race_radius.value() / 12.0)
}

/// Which way the race curves where a roller touches it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Race {
    /// An inner race: roller and race curve away from each other.
    Inner,
    /// An outer race, which lies around the roller.
    Outer,
}

/// Highest pressure where a steel roller presses on a steel race: √(force × E / (2π (1 − 0.3²) × length × radius)).
///
/// 1/radius is 1/roller ± 1/race, plus on an inner race. Roller smaller than an
/// outer race. Source: Hertz, line contact of two bodies of one steel.
pub fn contact_pressure<U: Length>(
    force: Quantity<PoundForce>,
    length: Quantity<U>,
    roller_radius: Quantity<U>,
    race_radius: Quantity<U>,
    race: Race,
) -> Quantity<Psi> {
    let curve = |radius: Quantity<U>| 1.0 / radius.to_inches().value();
    let curvature = match race {
        Race::Inner => curve(roller_radius) + curve(race_radius),
        Race::Outer => curve(roller_radius) - curve(race_radius),
    };
    let along = force.value() / length.to_inches().value();
    let softness = std::f64::consts::TAU * (1.0 - POISSON * POISSON);
    Quantity::new((along * STEEL.value() * curvature / softness).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::{Check, all, same};
    use crate::quantity::Millimetre;
    use proptest::prelude::*;

    const NEWTONS_IN_POUND: f64 = 4.448_221_615_26;
    const NEWTON_METRES_IN_POUND_FOOT: f64 = 1.355_817_948_331_4;
    const PSI_IN_MEGAPASCAL: f64 = 145.037_737_73;

    fn millimetres(value: f64) -> Quantity<Millimetre> {
        Quantity::new(value)
    }

    fn pressed(newtons: f64, roller: f64, race: f64, kind: Race) -> f64 {
        let force = Quantity::new(newtons / NEWTONS_IN_POUND);
        contact_pressure(force, millimetres(12.0), millimetres(roller), millimetres(race), kind).value()
            / PSI_IN_MEGAPASCAL
    }

    #[test]
    fn agrees_with_the_worked_example() {
        let source = "12 rollers of 4 mm on a race of 30 mm, 10 kN each, 6° wedge, computed apart";
        let radius = millimetres(30.0).to_inches();
        let found = torque(12, Quantity::new(10_000.0 / NEWTONS_IN_POUND), radius, Quantity::new(6.0));
        all(&[
            Check {
                source,
                what: "torque, N·m",
                computed: found.value() * NEWTON_METRES_IN_POUND_FOOT,
                published: 188.7,
                within: 0.05,
            },
            Check {
                source,
                what: "pressure, MPa",
                computed: pressed(10_000.0, 4.0, 30.0, Race::Inner),
                published: 2923.0,
                within: 2.9,
            },
            Check {
                source: "balance of forces",
                what: "friction at 6°",
                computed: friction_to_wedge(Quantity::new(6.0)).value(),
                published: 0.052_408,
                within: 1e-6,
            },
        ]);
    }

    proptest! {
        #[test]
        fn an_outer_race_is_kinder_than_an_inner_one(newtons in 100.0..20_000.0f64, roller in 2.0..8.0f64, more in 5.0..50.0f64) {
            let race = roller + more;
            prop_assert!(pressed(newtons, roller, race, Race::Outer) < pressed(newtons, roller, race, Race::Inner));
            // Four times the force, twice the pressure.
            prop_assert!(same(pressed(4.0 * newtons, roller, race, Race::Outer), 2.0 * pressed(newtons, roller, race, Race::Outer)));
        }
    }
}
