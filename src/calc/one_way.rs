//! What the intermediate one-way clutch must hold in second gear.

use crate::quantity::{One, PoundFoot, Quantity};

/// Torque on the outer race in second: (second ratio − 1) × torque × coupling × shock.
///
/// The bare (ratio − 1) is derived: it is the reaction on a held sun gear.
/// Coupling, by which the converter still multiplies when second takes hold, and shock are shop settings. Ratio above 1,
/// torque at the flywheel.
pub fn second_gear_load(
    second_ratio: Quantity<One>,
    engine_torque: Quantity<PoundFoot>,
    coupling: Quantity<One>,
    shock: Quantity<One>,
) -> Quantity<PoundFoot> {
    Quantity::new((second_ratio.value() - 1.0) * engine_torque.value() * coupling.value() * shock.value())
}

/// Load as a share of what the shop lets this clutch carry; above 1 it is too much.
pub fn load_share(load: Quantity<PoundFoot>, limit: Quantity<PoundFoot>) -> Quantity<One> {
    Quantity::new(load / limit)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::{Check, all, same};
    use proptest::prelude::*;

    fn load(second: f64, torque: f64, shock: f64) -> Quantity<PoundFoot> {
        second_gear_load(Quantity::new(second), Quantity::new(torque), Quantity::new(1.10), Quantity::new(shock))
    }

    fn share(torque: f64, limit: f64) -> f64 {
        load_share(load(1.48, torque, 2.0), Quantity::new(limit)).value()
    }

    #[test]
    fn agrees_with_the_handbook() {
        let shop = "shop handbook, intermediate one-way clutch";
        all(&[
            Check {
                source: shop,
                what: "820 lb-ft, shock 2.0",
                computed: load(1.48, 820.0, 2.0).value(),
                published: 866.0,
                within: 0.5,
            },
            Check { source: shop, what: "against 450", computed: share(820.0, 450.0), published: 1.92, within: 0.005 },
            Check {
                source: shop,
                what: "against 1,500",
                computed: share(820.0, 1500.0),
                published: 0.58,
                within: 0.005,
            },
            Check {
                source: "same factors, computed apart",
                what: "380 lb-ft, street",
                computed: load(1.48, 380.0, 1.5).value(),
                published: 300.96,
                within: 0.005,
            },
        ]);
    }

    #[test]
    fn the_limit_lies_between_two_neighbouring_torques() {
        assert!(share(426.0, 450.0) < 1.0);
        assert!(share(427.0, 450.0) > 1.0);
    }

    proptest! {
        #[test]
        fn without_factors_it_is_what_output_torque_gains(second in 1.01..3.0f64, torque in 10.0..3000.0f64) {
            // Torque in plus reaction equals torque out, whatever the gears look like inside.
            let bare = second_gear_load(Quantity::new(second), Quantity::new(torque), Quantity::new(1.0), Quantity::new(1.0));
            prop_assert!(same(torque + bare.value(), second * torque));
        }

        #[test]
        fn it_grows_with_each_of_its_parts(second in 1.1..2.5f64, torque in 50.0..2000.0f64, shock in 1.0..3.0f64, more in 0.01..1.0f64) {
            let now = load(second, torque, shock);
            prop_assert!(load(second + more, torque, shock) > now);
            prop_assert!(load(second, torque + more, shock) > now);
            prop_assert!(load(second, torque, shock + more) > now);
            prop_assert_eq!(load(1.0, torque, shock).value(), 0.0, "no reduction, no reaction");
        }
    }
}
