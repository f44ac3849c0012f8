//! What a wrench setting makes of a bolt: clamp load, and how little of it is certain.
//!
//! The same torque gives clamp loads a quarter or more apart, because nine
//! tenths of it go into friction. A torque is never better than that band.

use super::Form;
use crate::quantity::{
    Inch, Length, Megapascal, Millimetre, Newton, NewtonMetre, One, PoundFoot, PoundForce, Psi, Quantity, Unit,
};
use std::f64::consts::PI;

/// A system of units in which area × stress is force, and force × length ÷ `LENGTHS_IN_ARM` is torque.
pub trait System: Length {
    /// Unit of force.
    type Force: Unit;
    /// Unit of stress.
    type Stress: Unit;
    /// Unit of torque.
    type Torque: Unit;
    /// How many of this length make the arm the torque is counted in: 12 in a foot, 1,000 mm in a metre.
    const LENGTHS_IN_ARM: f64;

    /// Tensile stress area by this system's own standard.
    fn tensile_area(form: &Form<Self>) -> Quantity<Self::Area>;
}

impl System for Inch {
    type Force = PoundForce;
    type Stress = Psi;
    type Torque = PoundFoot;
    const LENGTHS_IN_ARM: f64 = 12.0;

    fn tensile_area(form: &Form<Self>) -> Quantity<Self::Area> {
        form.tensile_area()
    }
}

impl System for Millimetre {
    type Force = Newton;
    type Stress = Megapascal;
    type Torque = NewtonMetre;
    const LENGTHS_IN_ARM: f64 = 1000.0;

    fn tensile_area(form: &Form<Self>) -> Quantity<Self::Area> {
        form.tensile_area()
    }
}

/// Share of the proof load for a bolt that is used again, 0.75 (machine-design textbook, 9th ed.).
pub const USED_AGAIN: Quantity<One> = Quantity::new(0.75);

/// Share of the proof load for a joint never opened again, 0.90 (same source).
pub const PERMANENT: Quantity<One> = Quantity::new(0.90);

/// How far the clamp load of one bolt may lie off, 0.30 either way, with a good wrench (common practice: 25 to 30 %).
///
/// Ten lubricated bolts in a laboratory spread by 8.4 % (one standard
/// deviation; machine-design textbook, 9th ed., table 8-14): that is the best, not the rule.
pub const SCATTER: Quantity<One> = Quantity::new(0.30);

/// Torque factor K by the state of the threads (machine-design textbook, 9th ed., table 8-15).
pub const TORQUE_FACTORS: &[(&str, f64)] =
    &[("not plated, black", 0.30), ("zinc plated", 0.20), ("lubricated", 0.18), ("cadmium plated", 0.16)];

/// The load a bolt must bear without lengthening: stress area × proof stress.
pub fn proof_load<U: System>(form: &Form<U>, proof: Quantity<U::Stress>) -> Quantity<U::Force> {
    load(form, proof)
}

/// Force at which a stress is reached over the stress area of the thread.
pub fn load<U: System>(form: &Form<U>, stress: Quantity<U::Stress>) -> Quantity<U::Force> {
    Quantity::new(U::tensile_area(form).value() * stress.value())
}

/// Stress in the thread under a force: force / stress area.
pub fn stress<U: System>(form: &Form<U>, force: Quantity<U::Force>) -> Quantity<U::Stress> {
    Quantity::new(force.value() / U::tensile_area(form).value())
}

/// Torque for a clamp load by the short form: K × d × F.
///
/// K from [`TORQUE_FACTORS`] or measured; 0.1 to 0.4. Source: machine-design
/// textbook, 9th ed., section 8-8.
pub fn torque<U: System>(factor: Quantity<One>, form: &Form<U>, clamp: Quantity<U::Force>) -> Quantity<U::Torque> {
    Quantity::new(factor.value() * form.major.value() * clamp.value() / U::LENGTHS_IN_ARM)
}

/// Clamp load a torque gives by the short form: T / (K × d).
pub fn clamp<U: System>(factor: Quantity<One>, form: &Form<U>, torque: Quantity<U::Torque>) -> Quantity<U::Force> {
    Quantity::new(torque.value() * U::LENGTHS_IN_ARM / (factor.value() * form.major.value()))
}

/// Least and most clamp load that one wrench setting may give: ∓ `scatter`.
pub fn clamp_band<F: Unit>(clamp: Quantity<F>, scatter: Quantity<One>) -> (Quantity<F>, Quantity<F>) {
    (clamp * (1.0 - scatter.value()), clamp * (1.0 + scatter.value()))
}

/// Torque factor from friction, the full form for threads of 60°:
/// (dm / 2d) × (tan λ + f sec 30°) / (1 − f tan λ sec 30°) + 0.625 fc.
///
/// dm is the mean of d and the sharpest root, tan λ = P / (π dm). Friction in
/// the thread `f` and under the head `fc`, 0 to about 0.5; the head's mean
/// diameter taken as 1.25 d. Source: machine-design textbook, 9th ed., eq. 8-26.
pub fn factor_from_friction<U: System>(form: &Form<U>, thread: Quantity<One>, head: Quantity<One>) -> Quantity<One> {
    let mean = (form.major + form.stress_root()).value() / 2.0;
    let climb = form.pitch.value() / (PI * mean);
    let rub = thread.value() / 30.0_f64.to_radians().cos();
    let in_thread = mean / (2.0 * form.major.value()) * (climb + rub) / (1.0 - climb * rub);
    Quantity::new(in_thread + 0.625 * head.value())
}

/// Strength of a bolt's steel, as marked on its head, over a range of sizes.
#[derive(Clone, Copy, Debug)]
pub struct Grade<U: System> {
    /// `5`, `8.8`.
    pub name: &'static str,
    /// Smallest major diameter it is given for.
    pub from: Quantity<U>,
    /// Largest major diameter it is given for.
    pub to: Quantity<U>,
    /// Stress it must bear without lengthening.
    pub proof: Quantity<U::Stress>,
    /// Stress at which it breaks.
    pub tensile: Quantity<U::Stress>,
    /// Stress at which it begins to stretch for good.
    pub yielding: Quantity<U::Stress>,
    /// Where the row was read.
    pub source: &'static str,
}

const fn grade<U: System>(name: &'static str, sizes: [f64; 2], strength: [f64; 3], source: &'static str) -> Grade<U> {
    Grade {
        name,
        from: Quantity::new(sizes[0]),
        to: Quantity::new(sizes[1]),
        proof: Quantity::new(strength[0]),
        tensile: Quantity::new(strength[1]),
        yielding: Quantity::new(strength[2]),
        source,
    }
}

const J429: &str = "standard: SAE J429, by a machine-design textbook, 9th ed., table 8-9";
const ISO_898: &str = "standard: ISO 898-1, by a machine-design textbook, 9th ed., table 8-11";
const ISO_898_SMALL: &str = "standard: ISO 898-1, proof from its table of proof loads; yield memory, high";

/// Inch grades; head marks none, three, six lines.
pub const GRADES: &[Grade<Inch>] = &[
    grade("2", [0.25, 0.75], [55e3, 74e3, 57e3], J429),
    grade("5", [0.25, 1.0], [85e3, 120e3, 92e3], J429),
    grade("5", [1.125, 1.5], [74e3, 105e3, 81e3], J429),
    grade("8", [0.25, 1.5], [120e3, 150e3, 130e3], J429),
];

/// Metric property classes, stamped on the head.
///
/// 8.8 has two rows: 600 MPa is not to be taken for 16 mm and under.
pub const CLASSES: &[Grade<Millimetre>] = &[
    grade("8.8", [5.0, 16.0], [580.0, 800.0, 640.0], ISO_898_SMALL),
    grade("8.8", [16.001, 36.0], [600.0, 830.0, 660.0], ISO_898),
    grade("10.9", [5.0, 36.0], [830.0, 1040.0, 940.0], ISO_898),
];

/// The row of a table for a grade and a size; `None` where the standard gives none.
pub fn find<U: System>(table: &'static [Grade<U>], name: &str, major: Quantity<U>) -> Option<&'static Grade<U>> {
    table.iter().find(|row| row.name == name.trim() && row.from <= major && major <= row.to)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    #[test]
    fn a_grade_is_known_only_in_the_sizes_it_is_given_for() {
        let proof = |name, major| find(GRADES, name, Quantity::new(major)).map(|row| row.proof.value());
        assert_eq!(proof("5", 0.375), Some(85e3));
        assert_eq!(proof("5", 1.0), Some(85e3));
        assert_eq!(proof("5", 1.125), Some(74e3));
        assert_eq!(proof("5", 1.05), None, "between the two rows nothing is guessed");
        assert_eq!(proof("2", 0.875), None);
        assert_eq!(proof("9", 0.375), None);
        let metric = |name, major| find(CLASSES, name, Quantity::new(major)).map(|row| row.proof.value());
        assert_eq!(metric("8.8", 16.0), Some(580.0), "600 holds above 16 mm only");
        assert_eq!(metric("8.8", 20.0), Some(600.0));
        assert_eq!(metric("10.9", 4.0), None);
    }

    #[test]
    fn a_bolt_is_proved_before_it_yields_and_yields_before_it_breaks() {
        for row in GRADES {
            assert!(row.proof < row.yielding && row.yielding < row.tensile, "{}", row.name);
        }
        for row in CLASSES {
            assert!(row.proof < row.yielding && row.yielding < row.tensile, "{}", row.name);
        }
    }

    proptest! {
        #[test]
        fn the_torque_for_a_clamp_load_gives_that_load(k in 0.1..0.4f64, newtons in 1e3..1e5f64, major in 5.0..20.0f64) {
            let form = Form::metric(major, 0.15 * major);
            let wrench = torque(Quantity::new(k), &form, Quantity::new(newtons));
            prop_assert!(same(clamp(Quantity::new(k), &form, wrench).value(), newtons));
            let (least, most) = clamp_band(Quantity::<Newton>::new(newtons), SCATTER);
            prop_assert!(same(least.value() + most.value(), 2.0 * newtons) && least < most);
        }

        #[test]
        fn one_bolt_in_either_system_is_the_same_bolt(k in 0.1..0.4f64, lbf in 500.0..9000.0f64, major in 0.2..0.8f64, psi in 3e4..15e4f64) {
            let inch = Form::unified(major, 5.0 / major);
            let metric = inch.to_millimetres();
            let newtons_in_pound = 0.453_592_37 * 9.806_65;
            let pound_feet = torque(Quantity::new(k), &inch, Quantity::new(lbf)).value();
            let newton_metres = torque(Quantity::new(k), &metric, Quantity::new(lbf * newtons_in_pound)).value();
            prop_assert!((newton_metres / pound_feet / 1.355_817_948_3 - 1.0).abs() < 1e-9);
            // The two standards' stress areas differ by less than half a per cent.
            let megapascals = psi * 6.894_757_293_168e-3;
            let pounds = load(&inch, Quantity::new(psi)).value();
            prop_assert!((load(&metric, Quantity::new(megapascals)).value() / newtons_in_pound / pounds - 1.0).abs() < 0.02);
            prop_assert!(same(stress(&inch, load(&inch, Quantity::new(psi))).value(), psi));
        }

        #[test]
        fn without_friction_a_turn_of_the_wrench_is_a_pitch_of_lift(major in 4.0..20.0f64, part in 0.08..0.2f64) {
            // Energy: torque × 2π = force × pitch, so K × d × 2π = pitch.
            let form = Form::metric(major, part * major);
            let k = factor_from_friction(&form, Quantity::new(0.0), Quantity::new(0.0)).value();
            prop_assert!(same(k * major * 2.0 * PI, form.pitch.value()));
        }

        #[test]
        fn more_friction_wants_more_torque(f in 0.02..0.3f64, more in 0.01..0.1f64) {
            let form = Form::unified(0.375, 16.0);
            let k = |thread: f64, head: f64| factor_from_friction(&form, Quantity::new(thread), Quantity::new(head)).value();
            prop_assert!(k(f + more, f) > k(f, f) && same(k(f, f + more) - k(f, f), 0.625 * more));
        }
    }
}
