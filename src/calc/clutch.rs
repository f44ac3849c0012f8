//! Plate clutches: what a pack can hold and what it must.

use crate::quantity::{Inch, Length, One, PoundFoot, PoundForce, Psi, Quantity, SquareInch};

/// A pack as built and measured.
#[derive(Clone, Copy, Debug)]
pub struct Pack {
    /// Friction of the lined plates in fluid (0.10 to 0.17 for paper: memory, high).
    pub friction: Quantity<One>,
    /// Lined plates, each rubbing on both faces.
    pub plates: u32,
    /// Line pressure on the piston.
    pub pressure: Quantity<Psi>,
    /// Area of the piston the pressure stands on.
    pub piston: Quantity<SquareInch>,
    /// Force of the release springs at the applied length.
    pub springs: Quantity<PoundForce>,
    /// Mean radius of the lining.
    pub mean_radius: Quantity<Inch>,
}

/// Torque a pack can hold: friction × 2 × plates × (pressure × area − springs) × mean radius / 12.
///
/// Source: exact for the mean radius given ([`mean_radius_worn`] or
/// [`mean_radius_new`]); areas measured by the shop. Negative when the springs
/// are stronger than the pressure: the pack is not applied at all.
pub fn capacity(pack: &Pack) -> Quantity<PoundFoot> {
    Quantity::new(
        pack.friction.value()
            * 2.0
            * f64::from(pack.plates)
            * (pack.pressure.value() * pack.piston.value() - pack.springs.value())
            * pack.mean_radius.value()
            / 12.0,
    )
}

/// Torque the direct clutch must hold, margin included: margin × the larger of third gear and brake.
///
/// Third: (second − 1) / second × engine torque × coupling. Brake, where a
/// trans brake is fitted: its share of turbine torque (`on_brake`).
/// Source: derived; margin and coupling are shop settings.
pub fn direct_need(
    second_ratio: Quantity<One>,
    engine_torque: Quantity<PoundFoot>,
    coupling: Quantity<One>,
    on_brake: Option<Quantity<PoundFoot>>,
    margin: Quantity<One>,
) -> Quantity<PoundFoot> {
    let third = super::gear_set::direct_share_in_third(second_ratio).value() * engine_torque.value() * coupling.value();
    let brake = on_brake.map_or(0.0, Quantity::value);
    Quantity::new(margin.value() * third.max(brake))
}

/// Torque through the direct clutch on the brake: share × engine torque × stall torque ratio.
///
/// Share from [`direct_share_on_brake`](super::gear_set::direct_share_on_brake). Source: derived.
pub fn direct_load_on_brake(
    share: Quantity<One>,
    engine_torque: Quantity<PoundFoot>,
    stall_ratio: Quantity<One>,
) -> Quantity<PoundFoot> {
    Quantity::new(share.value() * engine_torque.value() * stall_ratio.value())
}

/// Working radius of a run-in pack, uniform wear: (outer + inner) / 2.
///
/// Source: any machine-design text. Outer larger than inner, both positive.
pub fn mean_radius_worn<U: Length>(outer: Quantity<U>, inner: Quantity<U>) -> Quantity<U> {
    (outer + inner) * 0.5
}

/// Working radius of a new pack, uniform pressure: ⅔ (outer³ − inner³) / (outer² − inner²).
///
/// Never smaller than [`mean_radius_worn`]; within 0.7 % of it once inner / outer
/// is above 0.75, as it is in transmission plates.
pub fn mean_radius_new<U: Length>(outer: Quantity<U>, inner: Quantity<U>) -> Quantity<U> {
    let (outer, inner) = (outer.value(), inner.value());
    // The cubes and squares divided by (outer − inner), which keeps thin rings exact.
    Quantity::new(2.0 / 3.0 * (outer * outer + outer * inner + inner * inner) / (outer + inner))
}

/// Force that brings a run-in lining to its pressure at the inner edge: 2π p inner (outer − inner).
pub fn force_worn(pressure: Quantity<Psi>, outer: Quantity<Inch>, inner: Quantity<Inch>) -> Quantity<PoundForce> {
    Quantity::new(std::f64::consts::TAU * pressure.value() * inner.value() * (outer.value() - inner.value()))
}

/// Force that puts a new lining under an even pressure: π p (outer² − inner²).
pub fn force_new(pressure: Quantity<Psi>, outer: Quantity<Inch>, inner: Quantity<Inch>) -> Quantity<PoundForce> {
    let (outer, inner) = (outer.value(), inner.value());
    Quantity::new(std::f64::consts::PI * pressure.value() * (outer - inner) * (outer + inner))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::{Check, all, integral};
    use crate::quantity::Millimetre;
    use proptest::prelude::*;

    /// The shop's own margin unless it moves it.
    const MARGIN: Quantity<One> = Quantity::new(1.25);
    const PSI_IN_MEGAPASCAL: f64 = 145.037_737_73;
    const NEWTONS_IN_POUND: f64 = 4.448_221_615_26;

    fn inches(value: f64) -> Quantity<Inch> {
        Quantity::new(value)
    }

    fn millimetres(value: f64) -> Quantity<Millimetre> {
        Quantity::new(value)
    }

    fn direct_pack(pressure: f64, piston: f64) -> Pack {
        Pack {
            friction: Quantity::new(0.13),
            plates: 6,
            pressure: Quantity::new(pressure),
            piston: Quantity::new(piston),
            springs: Quantity::new(250.0),
            mean_radius: Quantity::new(2.5),
        }
    }

    /// Torque of one face by adding up rings of lining, pressure free to vary with radius.
    fn face_torque(friction: impl Fn(f64) -> f64, pressure: impl Fn(f64) -> f64, inner: f64, outer: f64) -> f64 {
        integral(inner, outer, 500, |r| friction(r) * pressure(r) * std::f64::consts::TAU * r * r)
    }

    #[test]
    fn agrees_with_published_packs() {
        let shop = "shop handbook, clutch capacity and need";
        let bank = "exam question bank with key: 250/50 mm plate";
        let wet = "exercise text, wet multi-disc clutch 90/150 mm, 1 MPa, friction 0.10, 400 N·m";
        let dry = "lecturer's problem page: 140/200 mm, friction 0.5, 1 MPa at the inner edge";
        let exercise = "exercise text: 12 kW at 1,500 rpm, 50/100 mm radii, friction 0.35";
        let both = "5.0/4.0 in plates, 10 faces, friction 0.12, 1,000 lbf, computed apart";

        let split = capacity(&direct_pack(150.0, 13.5));
        let joined = capacity(&direct_pack(190.0, 24.0));
        let share = crate::calc::gear_set::direct_share_on_brake(Quantity::new(2.48), Quantity::new(2.08));
        let brake = direct_load_on_brake(share, Quantity::new(560.0), Quantity::new(2.0));
        let need = direct_need(Quantity::new(1.48), Quantity::new(560.0), Quantity::new(1.10), Some(brake), MARGIN);

        let worn_125_25 = mean_radius_worn(millimetres(125.0), millimetres(25.0)).value();
        let new_125_25 = mean_radius_new(millimetres(125.0), millimetres(25.0)).value();

        let megapascal = Quantity::new(PSI_IN_MEGAPASCAL);
        let wet_force = force_worn(megapascal, millimetres(75.0).to_inches(), millimetres(45.0).to_inches());
        let wet_radius = mean_radius_worn(millimetres(75.0), millimetres(45.0)).value();
        let wet_face = 0.10 * wet_force.value() * NEWTONS_IN_POUND * wet_radius / 1000.0;
        let dry_force = force_worn(megapascal, millimetres(100.0).to_inches(), millimetres(70.0).to_inches());
        let dry_radius = mean_radius_worn(millimetres(100.0), millimetres(70.0)).value();
        let dry_kilonewtons = dry_force.value() * NEWTONS_IN_POUND / 1000.0;

        let power_torque = 12_000.0 / (1500.0 * std::f64::consts::TAU / 60.0);
        let per_pair = 0.35 * 1000.0 * mean_radius_worn(millimetres(100.0), millimetres(50.0)).value() / 1000.0;

        let faces = |radius: Quantity<Inch>| 10.0 * 0.12 * 1000.0 * radius.value() / 12.0;
        all(&[
            Check { source: shop, what: "split feed holds", computed: split.value(), published: 577.0, within: 0.5 },
            Check { source: shop, what: "joined feed holds", computed: joined.value(), published: 1401.0, within: 0.5 },
            Check { source: shop, what: "need on the brake", computed: brake.value(), published: 609.0, within: 0.5 },
            Check { source: shop, what: "need with margin", computed: need.value(), published: 761.0, within: 0.5 },
            Check {
                source: bank,
                what: "force new / worn",
                computed: worn_125_25 / new_125_25,
                published: 0.871,
                within: 0.0005,
            },
            Check { source: wet, what: "torque a face, N·m", computed: wet_face, published: 50.89, within: 0.051 },
            Check { source: wet, what: "faces", computed: 400.0 / wet_face, published: 7.86, within: 0.005 },
            Check {
                source: wet,
                what: "force on 8 faces, N",
                computed: 400_000.0 / (8.0 * 0.10 * wet_radius),
                published: 8333.0,
                within: 1.0,
            },
            Check { source: dry, what: "force, kN", computed: dry_kilonewtons, published: 13.19, within: 0.013 },
            Check {
                source: dry,
                what: "torque, N·m",
                computed: 2.0 * 0.5 * dry_kilonewtons * dry_radius,
                published: 1121.5,
                within: 1.1,
            },
            Check {
                source: exercise,
                what: "pairs",
                computed: power_torque / per_pair,
                published: 2.91,
                within: 0.003,
            },
            Check {
                source: exercise,
                what: "force on 3 pairs, N",
                computed: 1000.0 * power_torque / (3.0 * per_pair),
                published: 970.0,
                within: 1.0,
            },
            Check {
                source: both,
                what: "worn",
                computed: faces(mean_radius_worn(inches(2.5), inches(2.0))),
                published: 225.0,
                within: 0.05,
            },
            Check {
                source: both,
                what: "new",
                computed: faces(mean_radius_new(inches(2.5), inches(2.0))),
                published: 225.9,
                within: 0.05,
            },
        ]);
    }

    #[test]
    fn friction_that_grows_with_radius_follows_the_exam_key() {
        // Friction 0.01 a millimetre of radius, 20 to 40 mm, 18.85 kN·mm: the key says 0.5 MPa.
        let torque = face_torque(|r| 0.01 * r, |_| 0.5, 20.0, 40.0);
        assert!((torque - 18_850.0).abs() < 5.0, "{torque}");
    }

    #[test]
    fn thin_rings_make_new_and_worn_agree() {
        let ratio =
            |inner: f64| mean_radius_new(inches(1.0), inches(inner)) / mean_radius_worn(inches(1.0), inches(inner));
        let source = "ratio of the two theories, computed apart";
        all(&[
            Check { source, what: "0.6", computed: ratio(0.6), published: 1.0208, within: 0.000_05 },
            Check { source, what: "0.7", computed: ratio(0.7), published: 1.0104, within: 0.000_05 },
            Check { source, what: "0.8", computed: ratio(0.8), published: 1.0041, within: 0.000_05 },
            Check { source, what: "0.9", computed: ratio(0.9), published: 1.0009, within: 0.000_05 },
        ]);
        assert!(ratio(0.75) - 1.0 < 0.007 && ratio(0.70) - 1.0 > 0.007);
    }

    #[test]
    fn without_a_brake_only_third_gear_counts() {
        let third =
            direct_need(Quantity::new(1.48), Quantity::new(500.0), Quantity::new(1.0), None, Quantity::new(1.0));
        assert!((third.value() - 162.0).abs() < 0.5, "shop handbook: 162 lb-ft at 500");
    }

    #[test]
    fn springs_stronger_than_the_pressure_leave_nothing_to_hold_with() {
        assert!(capacity(&direct_pack(18.0, 13.5)).value() < 0.0);
        assert!(capacity(&direct_pack(19.0, 13.5)).value() > 0.0);
    }

    proptest! {
        #[test]
        fn adding_up_rings_gives_the_same_torque(inner in 0.5..5.0f64, width in 0.05..4.0f64, pressure in 1.0..500.0f64) {
            let outer = inner + width;
            let new = force_new(Quantity::new(pressure), inches(outer), inches(inner)).value()
                * mean_radius_new(inches(outer), inches(inner)).value();
            let rings = face_torque(|_| 1.0, |_| pressure, inner, outer);
            prop_assert!((new / rings - 1.0).abs() < 1e-9, "even pressure: {new} and {rings}");

            let worn = force_worn(Quantity::new(pressure), inches(outer), inches(inner)).value()
                * mean_radius_worn(inches(outer), inches(inner)).value();
            let rings = face_torque(|_| 1.0, |r| pressure * inner / r, inner, outer);
            prop_assert!((worn / rings - 1.0).abs() < 1e-9, "even wear: {worn} and {rings}");
        }

        #[test]
        fn the_worn_radius_is_never_the_larger(inner in 0.1..5.0f64, width in 0.0..4.0f64) {
            let (inner, outer) = (inches(inner), inches(inner + width));
            prop_assert!(mean_radius_new(outer, inner).value() >= mean_radius_worn(outer, inner).value() * (1.0 - 1e-15));
            prop_assert!(mean_radius_new(outer, inner) <= outer * (1.0 + 1e-15));
        }

        #[test]
        fn more_pressure_or_area_holds_more(pressure in 0.0..300.0f64, piston in 1.0..40.0f64, more in 0.1..50.0f64) {
            let pack = capacity(&direct_pack(pressure, piston));
            prop_assert!(capacity(&direct_pack(pressure + more, piston)) > pack);
            prop_assert!(capacity(&direct_pack(pressure + 0.1, piston + more)) > pack);
        }

        #[test]
        fn the_need_is_the_larger_of_the_two_times_the_margin(torque in 50.0..3000.0f64, brake in 0.0..3000.0f64) {
            let need = |on_brake| direct_need(Quantity::new(1.48), Quantity::new(torque), Quantity::new(1.10), on_brake, MARGIN).value();
            let with = need(Some(Quantity::new(brake)));
            prop_assert!(with >= need(None) && with >= 1.25 * brake);
            prop_assert!(with == need(None) || with == 1.25 * brake);
        }
    }
}
