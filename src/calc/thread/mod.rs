//! Screw threads of the 60° form, inch (Unified) and metric (ISO): basic sizes.
//!
//! Both systems share one form: a sharp triangle of height H = (√3 / 2) × pitch,
//! cut flat. They differ in how the root of the bolt is made, so several
//! "minor diameters" of one thread are in print. Each has its own name here:
//!
//! | name | is | 1/4-20 |
//! | --- | --- | --- |
//! | [`Form::internal_minor`] | bore of the nut, d − 1.25 H | 0.1959 |
//! | [`Form::external_minor`], inch | rounded bolt root (UNR), d − 1.375 H | 0.1905 |
//! | [`Form::external_minor`], metric rule on the same thread | d − 1.4167 H | 0.1887 |
//! | [`Form::stress_root`] | sharpest root, d − 1.5 H | 0.1850 |

pub mod class;
pub mod clearance;
pub mod engaged;
pub mod insert;
pub mod look_alike;
pub mod table;
pub mod tension;

use crate::quantity::{Diameter, Inch, Length, Millimetre, One, Quantity};
use std::f64::consts::PI;

/// Height of the sharp triangle for a pitch of one: √3 / 2.
const HEIGHT: f64 = 0.866_025_403_784_438_6;

/// Height a percent of thread is reckoned on in the United States: 1.5 H, that is 1.299038 pitch.
const FULL_THREAD: f64 = 1.5 * HEIGHT;

/// A thread's basic form: outside diameter and pitch, in inches or millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Form<U: Length> {
    /// Major (outside) diameter.
    pub major: Quantity<U>,
    /// Distance from one thread to the next.
    pub pitch: Quantity<U>,
}

impl<U: Length> Form<U> {
    /// Pitch diameter of bolt and nut: d − 0.75 H = d − 0.649519 P (standard: ASME B1.1, ISO 724).
    pub fn pitch_diameter(&self) -> Quantity<U> {
        self.cut(0.75)
    }

    /// Minor diameter of the **internal** thread, D1: d − 1.25 H = d − 1.082532 P (standard: ASME B1.1, ISO 724).
    pub fn internal_minor(&self) -> Quantity<U> {
        self.cut(1.25)
    }

    /// Sharpest root a bolt may have: d − 1.5 H = d − 1.299038 P (textbook value for the stress area).
    pub fn stress_root(&self) -> Quantity<U> {
        self.cut(1.5)
    }

    /// Percent of thread a drill leaves, United States convention: (d − drill) / (1.299038 P).
    ///
    /// 1.0 is a full sharp thread; tap drills leave about 0.75. Reckoned on
    /// the true 5/8 H contact height the same drills read 0.87 to 0.92, so
    /// never compare the two. Below zero the drill is bigger than the thread.
    pub fn percent_thread(&self, drill: Quantity<U>) -> Quantity<One> {
        Quantity::new((self.major - drill).value() / (FULL_THREAD * self.pitch.value()))
    }

    /// Percent of thread on the height that really touches, 5/8 H: (d − drill) / (d − D1).
    ///
    /// Metric charts use this one. The same drill reads a fifth higher than by
    /// [`Self::percent_thread`]; above 1.0 the bore is under the nut's smallest.
    pub fn percent_contact(&self, drill: Quantity<U>) -> Quantity<One> {
        Quantity::new((self.major - drill) / (self.major - self.internal_minor()))
    }

    /// Drill for a percent of thread, United States convention: d − percent × 1.299038 P.
    pub fn drill_for(&self, percent: Quantity<One>) -> Quantity<U> {
        self.major - self.pitch * (FULL_THREAD * percent.value())
    }

    /// Engaged thread counted in bolt diameters; aluminum wants 1.5 or more (common practice).
    pub fn engagement(&self, engaged: Quantity<U>) -> Quantity<Diameter> {
        Quantity::new(engaged / self.major)
    }

    /// Length that gives so many diameters of engagement.
    pub fn length_for(&self, engagement: Quantity<Diameter>) -> Quantity<U> {
        self.major * engagement.value()
    }

    /// The same form in millimetres.
    pub fn to_millimetres(&self) -> Form<Millimetre> {
        Form { major: self.major.to_millimetres(), pitch: self.pitch.to_millimetres() }
    }

    fn cut(&self, heights: f64) -> Quantity<U> {
        self.major - self.pitch * (heights * HEIGHT)
    }
}

impl Form<Inch> {
    /// A Unified thread from its major diameter in inches and its threads an inch.
    pub const fn unified(major: f64, threads_per_inch: f64) -> Self {
        Self { major: Quantity::new(major), pitch: Quantity::new(1.0 / threads_per_inch) }
    }

    /// Threads in one inch.
    pub fn threads_per_inch(&self) -> f64 {
        1.0 / self.pitch.value()
    }

    /// Minor diameter of the **bolt**, rounded root (UNR): d − 1.375 H = d − 1.190786 P (standard: ASME B1.1, 2003 on).
    pub fn external_minor(&self) -> Quantity<Inch> {
        self.cut(1.375)
    }

    /// Tensile stress area: π/4 × (d − 0.974279 P)², 9√3/16 exactly (standard: ASME B1.1, appendix B).
    pub fn tensile_area(&self) -> Quantity<<Inch as Length>::Area> {
        circle(self.cut(1.125).value())
    }
}

impl Form<Millimetre> {
    /// A metric thread from its major diameter and pitch in millimetres.
    pub const fn metric(major: f64, pitch: f64) -> Self {
        Self { major: Quantity::new(major), pitch: Quantity::new(pitch) }
    }

    /// Minor diameter of the **bolt**, d3: d − 17/12 H = d − 1.226869 P (standard: ISO 898-1).
    pub fn external_minor(&self) -> Quantity<Millimetre> {
        self.cut(17.0 / 12.0)
    }

    /// Nominal stress area: π/4 × ((pitch diameter + bolt minor) / 2)² = π/4 × (d − 0.938194 P)² (standard: ISO 898-1).
    pub fn tensile_area(&self) -> Quantity<<Millimetre as Length>::Area> {
        circle((self.pitch_diameter() + self.external_minor()).value() / 2.0)
    }
}

fn circle<A>(diameter: f64) -> Quantity<A> {
    Quantity::new(PI / 4.0 * diameter * diameter)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    #[test]
    fn the_radial_addendum_is_not_taken_for_a_diameter() {
        // A package's own test has 9.513 for M10: d − 3/8 H, once instead of twice.
        let pitch_diameter = Form::metric(10.0, 1.5).pitch_diameter().value();
        assert!((pitch_diameter - 9.026).abs() < 1e-3 && (pitch_diameter - 9.513).abs() > 0.4);
    }

    #[test]
    fn engagement_counts_diameters() {
        let form = Form::metric(10.0, 1.5);
        assert!(same(form.length_for(Quantity::new(1.5)).value(), 15.0), "shop handbook: M10 wants 15 mm");
        assert!(form.engagement(Quantity::new(14.9)).value() < 1.5);
        assert!(form.engagement(Quantity::new(15.0)).value() >= 1.5);
    }

    proptest! {
        #[test]
        fn the_form_drawn_as_triangles_has_the_same_diameters(major in 3.0..30.0f64, pitch in 0.3..3.0f64) {
            // Flanks of 60° meet a pitch apart; each flat is a part of the pitch wide.
            let height = pitch / 2.0 / 30.0_f64.to_radians().tan();
            let sharp = major + 2.0 * height / 8.0;
            let form = Form::metric(major, pitch);
            // On the pitch line thread and groove are equally wide: half way down the sharp triangle.
            prop_assert!(same(form.pitch_diameter().value(), sharp - height));
            prop_assert!(same(form.internal_minor().value(), sharp - 2.0 * height * 0.75));
            prop_assert!(same(form.stress_root().value(), major - 2.0 * height * 0.75));
        }

        #[test]
        fn the_diameters_stand_in_order(major in 3.0..30.0f64, part in 0.05..0.25f64) {
            let metric = Form::metric(major, major * part);
            prop_assert!(metric.major > metric.pitch_diameter() && metric.pitch_diameter() > metric.internal_minor());
            prop_assert!(metric.internal_minor() > metric.external_minor() && metric.external_minor() > metric.stress_root());
            let unified = Form::unified(major, 1.0 / (major * part));
            prop_assert!(unified.internal_minor() > unified.external_minor());
            prop_assert!(unified.external_minor().value() > metric.external_minor().value());
        }

        #[test]
        fn a_finer_thread_of_one_size_is_the_stronger_one(major in 6.0..30.0f64, pitch in 0.5..2.0f64, finer in 0.3..0.95f64) {
            let area = |pitch| Form::metric(major, pitch).tensile_area().value();
            prop_assert!(area(pitch * finer) > area(pitch));
            prop_assert!(area(pitch) < std::f64::consts::PI / 4.0 * major * major);
        }

        #[test]
        fn a_larger_drill_leaves_less_thread(drill in 5.0..9.9f64, more in 0.01..0.1f64) {
            let percent = |drill| Form::metric(10.0, 1.5).percent_thread(Quantity::new(drill)).value();
            prop_assert!(percent(drill + more) < percent(drill));
            prop_assert!(percent(10.0) == 0.0 && percent(10.1) < 0.0);
            let form = Form::metric(10.0, 1.5);
            prop_assert!(same(form.drill_for(Quantity::new(percent(drill))).value(), drill));
            // Of 1.5 H the nut's own bore takes 1.25: that is 1.2 times as much on the contact height.
            prop_assert!(same(form.percent_contact(Quantity::new(drill)).value(), 1.2 * percent(drill)));
        }
    }
}
