//! Torque and stress in the units of a metric joint.

use super::{Megapascal, NewtonMetre, PoundFoot, Psi, Quantity};

/// Newton metres in a pound-force foot; from the inch, the pound and standard gravity, all exact.
const NEWTON_METRES_IN_POUND_FOOT: f64 = 1.355_817_948_331_4;
/// Megapascals in a pound-force a square inch; likewise.
const MEGAPASCALS_IN_PSI: f64 = 0.006_894_757_293_168;

impl Quantity<PoundFoot> {
    /// The same torque in newton metres.
    pub fn to_newton_metres(self) -> Quantity<NewtonMetre> {
        Quantity::new(self.value() * NEWTON_METRES_IN_POUND_FOOT)
    }
}

impl Quantity<Psi> {
    /// The same stress in megapascals.
    pub fn to_megapascals(self) -> Quantity<Megapascal> {
        Quantity::new(self.value() * MEGAPASCALS_IN_PSI)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_metric_joint_gets_the_torque_and_the_stress_that_were_meant() {
        // Published conversion tables: 100 lb-ft is 135.58 N·m, 145.038 psi is one megapascal.
        assert!((Quantity::<PoundFoot>::new(100.0).to_newton_metres().value() - 135.58).abs() < 0.005);
        assert!((Quantity::<Psi>::new(145.037_737_73).to_megapascals().value() - 1.0).abs() < 1e-9);
        // The way back through what people type.
        let typed = Quantity::<PoundFoot>::from_typed("50 nm").expect("a torque").to_newton_metres();
        assert!((typed.value() - 50.0).abs() < 1e-9);
    }
}
