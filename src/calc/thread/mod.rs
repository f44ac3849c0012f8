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
