//! Driveshaft: the speed at which a plain tube whips, and what its joints stand.

use crate::quantity::{Degree, Inch, One, PoundPerCubicInch, Psi, Quantity, RadianPerSecondSquared, Rpm};
use std::f64::consts::{PI, TAU};

/// Whip constant of a tube, in inches and rpm: critical rpm = constant × √(OD² + ID²) / length².
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TubeConstant(pub f64);

/// Steel, 4.77e6 (physics: 30,000,000 psi, 0.283 lb/in³; suppliers print 4.8e6).
pub const STEEL: TubeConstant = TubeConstant(4.77e6);

/// Aluminum, 4.68e6 (physics: 6061, 68.9 GPa, 2,700 kg/m³).
pub const ALUMINUM: TubeConstant = TubeConstant(4.68e6);

/// Share of the critical speed the shop uses, 0.75 (common practice; suppliers say 0.65 to 0.70).
pub const USABLE_SHARE: Quantity<One> = Quantity::new(0.75);

/// Standard gravity, in/s²: turns a weight density into a mass density.
const GRAVITY: f64 = 386.088_582_677;

/// Constant of another metal from its modulus and weight density: (30π / 4) × √(E g / w).
///
/// Source: Euler–Bernoulli beam, pinned ends, mass spread along the tube.
pub fn tube_constant(modulus: Quantity<Psi>, density: Quantity<PoundPerCubicInch>) -> TubeConstant {
    TubeConstant(30.0 * PI / 4.0 * (modulus.value() * GRAVITY / density.value()).sqrt())
}

/// First critical speed with the mass **spread along the tube**: constant × √(OD² + ID²) / length².
///
/// Plain tube, pinned ends, joint centre to joint centre; yokes and a slip
/// joint bring it down. Wall less than half the diameter, positive length.
/// This is the figure to use. Source: Euler–Bernoulli beam.
pub fn critical_speed(
    tube: TubeConstant,
    outside: Quantity<Inch>,
    wall: Quantity<Inch>,
    length: Quantity<Inch>,
) -> Quantity<Rpm> {
    let (outside, wall, length) = (outside.value(), wall.value(), length.value());
    let inside = outside - 2.0 * wall;
    Quantity::new(tube.0 * (outside * outside + inside * inside).sqrt() / (length * length))
}

/// First critical speed with **all the mass at mid-span**: [`critical_speed`] × √48 / π².
///
/// A textbook simplification, 30 % low; kept so that a printed answer made this
/// way (5,800 rpm for a 4 ft, 3 in tube) can be recognised. Do not build to it.
pub fn critical_speed_mass_at_midspan(
    tube: TubeConstant,
    outside: Quantity<Inch>,
    wall: Quantity<Inch>,
    length: Quantity<Inch>,
) -> Quantity<Rpm> {
    critical_speed(tube, outside, wall, length) * (48.0_f64.sqrt() / (PI * PI))
}

/// Highest engine speed as a share of the critical speed (direct drive, so the shaft turns with the engine).
pub fn critical_share(highest: Quantity<Rpm>, critical: Quantity<Rpm>) -> Quantity<One> {
    Quantity::new(highest / critical)
}

/// Longest tube that keeps a speed at or below a share of its critical speed.
///
/// [`critical_speed`] solved for length: √(constant × √(OD² + ID²) × share / speed).
pub fn longest_tube(
    tube: TubeConstant,
    outside: Quantity<Inch>,
    wall: Quantity<Inch>,
    highest: Quantity<Rpm>,
    share: Quantity<One>,
) -> Quantity<Inch> {
    let at_one_inch = critical_speed(tube, outside, wall, Quantity::new(1.0));
    Quantity::new((at_one_inch.value() * share.value() / highest.value()).sqrt())
}

/// Largest joint angle that keeps the angular acceleration under a limit: asin(√limit / ω).
///
/// Approximate peak ω² sin²β, within 2 % of exact to 12°. `None` when the
/// limit is not reached at any angle (a shaft that hardly turns). 400 rad/s²
/// reproduces the quiet-running table quoted from the joint guide (6.5° at
/// 1,700 rpm), 1,000 rad/s² the widely used one (5.8° at 3,000 rpm; memory, high).
pub fn joint_angle_limit(limit: Quantity<RadianPerSecondSquared>, speed: Quantity<Rpm>) -> Option<Quantity<Degree>> {
    let sine = limit.value().sqrt() / radians_per_second(speed);
    (sine < 1.0).then(|| Quantity::new(sine.asin().to_degrees()))
}

/// Peak angular acceleration of the driven side of one joint: ω² sin²β (approximate, see [`joint_angle_limit`]).
pub fn joint_acceleration(speed: Quantity<Rpm>, angle: Quantity<Degree>) -> Quantity<RadianPerSecondSquared> {
    let omega = radians_per_second(speed);
    let sine = angle.value().to_radians().sin();
    Quantity::new(omega * omega * sine * sine)
}

/// Slowest and fastest of the driven side as a share of the driving side: cos β and 1 / cos β.
///
/// Source: geometry of one cross joint. Angle below 90°.
pub fn joint_speed_range(angle: Quantity<Degree>) -> (Quantity<One>, Quantity<One>) {
    let cosine = angle.value().to_radians().cos();
    (Quantity::new(cosine), Quantity::new(1.0 / cosine))
}

/// Unevenness of one joint, (fastest − slowest) / mean speed in: tan β × sin β.
///
/// A supplier keeps it at or below 0.0027, which is 2.98°. Source: geometry.
pub fn joint_unevenness(angle: Quantity<Degree>) -> Quantity<One> {
    let angle = angle.value().to_radians();
    Quantity::new(angle.tan() * angle.sin())
}

fn radians_per_second(speed: Quantity<Rpm>) -> f64 {
    speed.value() * TAU / 60.0
}
