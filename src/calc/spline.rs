//! Involute splines of 30°, inch series: sizes from tooth count and pitch, and the pitch from what is measured.
//!
//! Which pitch a given transmission's shaft has is in no public standard:
//! count the teeth, measure over them, and compare.

use crate::quantity::{Inch, One, PoundFoot, Psi, Quantity};
use std::f64::consts::PI;

/// Cosine of the pressure angle, 30°.
const COSINE: f64 = 0.866_025_403_784_438_6;

/// A spline: how many teeth, and how many of them go on an inch of pitch diameter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spline {
    /// Teeth, 6 or more.
    pub teeth: u32,
    /// The first number of the pitch: 24 of `24/48`.
    pub pitch: u32,
}

/// Pitches of the standard series (standard: ANSI B92.1; 2.5/5 left out, nothing here is that coarse).
pub const PITCHES: [u32; 14] = [3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32, 40, 48, 64];

/// Source for all sizes: ANSI B92.1-1970 (looked up on an engineering reference page).
///
/// The minor diameter of the shaft is left out: its rule changes with the pitch, and the copies in circulation disagree.
impl Spline {
    /// Pitch diameter: N / P.
    pub fn pitch_diameter(self) -> Quantity<Inch> {
        self.over_pitch(0.0)
    }

    /// Base circle of the involute: D cos 30°.
    pub fn base_diameter(self) -> Quantity<Inch> {
        self.pitch_diameter() * COSINE
    }

    /// Distance from tooth to tooth along the pitch circle: π / P.
    pub fn circular_pitch(self) -> Quantity<Inch> {
        Quantity::new(PI / f64::from(self.pitch))
    }

    /// Basic width of a tooth and of a space on the pitch circle: π / (2 P).
    pub fn tooth(self) -> Quantity<Inch> {
        self.circular_pitch() * 0.5
    }

    /// Outside diameter of the shaft, what a caliper reads over the teeth: (N + 1) / P.
    pub fn shaft_major(self) -> Quantity<Inch> {
        self.over_pitch(1.0)
    }

    /// Bore of the hub, inside its teeth: (N − 1) / P.
    pub fn hub_minor(self) -> Quantity<Inch> {
        self.over_pitch(-1.0)
    }

    /// Root diameter of the hub with flat roots, side fit: (N + 1.35) / P.
    pub fn hub_major_flat(self) -> Quantity<Inch> {
        self.over_pitch(1.35)
    }

    /// Root diameter of the hub with rounded roots: (N + 1.8) / P.
    pub fn hub_major_fillet(self) -> Quantity<Inch> {
        self.over_pitch(1.8)
    }

    /// As called out: `32T 24/48`.
    pub fn name(self) -> String {
        format!("{}T {}/{}", self.teeth, self.pitch, 2 * self.pitch)
    }

    fn over_pitch(self, more: f64) -> Quantity<Inch> {
        Quantity::new((f64::from(self.teeth) + more) / f64::from(self.pitch))
    }
}

/// The standard spline of so many teeth whose outside diameter is nearest to a reading, and how far it is off (reading − standard).
///
/// `None` without teeth or reading. A plausible match is not yet the right
/// one: worn tips read small, and there are splines outside this series.
pub fn nearest(teeth: u32, measured_major: Quantity<Inch>) -> Option<(Spline, Quantity<Inch>)> {
    let off = |spline: &Spline| measured_major - spline.shaft_major();
    let all = PITCHES.into_iter().map(|pitch| Spline { teeth, pitch });
    let best = all.min_by(|left, right| off(left).abs().value().total_cmp(&off(right).abs().value()))?;
    (teeth > 0 && measured_major.value() > 0.0).then(|| (best, off(&best)))
}

/// Shares of a spline's load.
#[derive(Clone, Copy, Debug)]
pub struct Service {
    /// Roughness of the drive: 1.0 smooth to 2.8 heavy shock.
    pub application: Quantity<One>,
    /// How much of the load the worst teeth carry: 1.0 well aligned, more when not.
    pub distribution: Quantity<One>,
    /// Fatigue life: 1.0 for 10,000 cycles of torque, less for more.
    pub life: Quantity<One>,
}

/// Approximate shear stress in the teeth at the pitch line: 4 Ka Km T / (D N L t Kf), T in lb-in.
///
/// Half of the teeth taken as carrying. `length` is the part engaged, `tooth` the width at the pitch line.
/// Source: machinists' handbook (memory, medium).
pub fn tooth_shear(
    spline: Spline,
    length: Quantity<Inch>,
    torque: Quantity<PoundFoot>,
    service: Service,
) -> Quantity<Psi> {
    let load = 4.0 * service.application.value() * service.distribution.value() * torque.value() * 12.0;
    let area = spline.pitch_diameter().value() * f64::from(spline.teeth) * length.value() * spline.tooth().value();
    Quantity::new(load / (area * service.life.value()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    #[test]
    fn a_counted_and_measured_shaft_finds_its_pitch() {
        let (found, off) = nearest(32, Quantity::new(1.372)).expect("a shaft");
        assert_eq!((found.name().as_str(), found.pitch), ("32T 24/48", 24));
        assert!((off.value() + 0.003).abs() < 1e-12, "worn tips read small");
        assert_eq!(nearest(10, Quantity::new(1.374)).map(|(spline, _)| spline.pitch), Some(8));
        assert_eq!(nearest(0, Quantity::new(1.0)), None);
        assert_eq!(nearest(30, Quantity::new(0.0)), None);
        // A shaft that fits nothing is told by how far it is off.
        let (_, off) = nearest(32, Quantity::new(1.8)).expect("nearest of all");
        assert!(off.abs().value() > 0.1);
    }

    #[test]
    fn a_smooth_spline_is_a_torque_on_half_of_its_teeth() {
        let smooth =
            Service { application: Quantity::new(1.0), distribution: Quantity::new(1.0), life: Quantity::new(1.0) };
        let spline = Spline { teeth: 30, pitch: 24 };
        let stress = tooth_shear(spline, Quantity::new(1.5), Quantity::new(500.0), smooth).value();
        // Torque at the pitch radius, over the shear area of fifteen teeth.
        let force = 500.0 * 12.0 / (1.25 / 2.0);
        assert!(same(stress, force / (15.0 * 1.5 * PI / 48.0)), "{stress}");
        let rough =
            Service { application: Quantity::new(2.0), distribution: Quantity::new(1.5), life: Quantity::new(0.5) };
        assert!(same(tooth_shear(spline, Quantity::new(1.5), Quantity::new(500.0), rough).value(), stress * 6.0));
    }

    proptest! {
        #[test]
        fn a_shaft_goes_into_its_own_hub(teeth in 6u32..60, place in 0usize..14) {
            let spline = Spline { teeth, pitch: PITCHES[place] };
            prop_assert!(spline.hub_minor() < spline.pitch_diameter() && spline.pitch_diameter() < spline.shaft_major());
            prop_assert!(spline.shaft_major() < spline.hub_major_flat() && spline.hub_major_flat() < spline.hub_major_fillet());
            prop_assert!(spline.base_diameter() < spline.pitch_diameter());
            // So many teeth and spaces go once round the pitch circle.
            let round = 2.0 * f64::from(teeth) * spline.tooth().value();
            prop_assert!(same(round, PI * spline.pitch_diameter().value()));
            prop_assert_eq!(nearest(teeth, spline.shaft_major()).map(|(found, _)| found), Some(spline));
        }
    }
}
