//! The slip yoke: how far it is in at droop, ride and bump, and a shaft's new length after a tail swap.

use crate::quantity::{Degree, Inch, Quantity};

/// A yoke as it stands at ride height.
#[derive(Clone, Copy, Debug)]
pub struct Yoke {
    /// Spline engaged at ride height.
    pub engaged: Quantity<Inch>,
    /// Way left before the yoke bottoms, at ride height.
    pub room: Quantity<Inch>,
}

/// Distance between the joint centres with the axle in its three places, measured on the vehicle.
#[derive(Clone, Copy, Debug)]
pub struct Distances {
    /// Axle hanging.
    pub droop: Quantity<Inch>,
    /// Standing on its wheels.
    pub ride: Quantity<Inch>,
    /// Axle against its stop.
    pub bump: Quantity<Inch>,
}

/// The yoke over the whole travel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Travel {
    /// Least way left before it bottoms, anywhere in the travel; below nought it has hit.
    pub least_room: Quantity<Inch>,
    /// Least spline engaged, anywhere in the travel; at or below nought it has come out.
    pub least_engaged: Quantity<Inch>,
    /// From the deepest place to the furthest.
    pub total: Quantity<Inch>,
}

/// Follows a yoke from droop to bump.
///
/// It comes out by as much as the distance grows over ride height, and goes in
/// by as much as it shrinks. The three measured places are taken as the ends:
/// where the axle swings through a longer or shorter distance between them,
/// measure there, too. Source: geometry.
pub fn travel(yoke: Yoke, distances: Distances) -> Travel {
    let longest = larger(larger(distances.droop, distances.ride), distances.bump);
    let shortest = smaller(smaller(distances.droop, distances.ride), distances.bump);
    Travel {
        least_room: yoke.room - (distances.ride - shortest),
        least_engaged: yoke.engaged - (longest - distances.ride),
        total: longest - shortest,
    }
}

fn larger(left: Quantity<Inch>, right: Quantity<Inch>) -> Quantity<Inch> {
    if right > left { right } else { left }
}

fn smaller(left: Quantity<Inch>, right: Quantity<Inch>) -> Quantity<Inch> {
    if right < left { right } else { left }
}

/// Distance between the joint centres after the rear end of the transmission has moved back by `longer`:
/// √(L² − 2 L Δ cos β + Δ²).
///
/// β is the angle of the front joint. A tail that is shorter counts negative
/// and makes the distance longer. Source: geometry, law of cosines.
pub fn distance_after_swap(
    before: Quantity<Inch>,
    longer: Quantity<Inch>,
    front_angle: Quantity<Degree>,
) -> Quantity<Inch> {
    let (length, moved) = (before.value(), longer.value());
    let square = length * length - 2.0 * length * moved * front_angle.value().to_radians().cos() + moved * moved;
    Quantity::new(square.sqrt())
}

/// Length to build the shaft to after a tail swap, joint centre to joint centre.
///
/// The old length, changed as the distance changes, less what the new yoke's
/// joint stands further from its spline's stop than the old one's
/// (`yoke_longer`). Measure again before cutting. Source: geometry.
pub fn length_after_swap(
    before: Quantity<Inch>,
    tail_longer: Quantity<Inch>,
    yoke_longer: Quantity<Inch>,
    front_angle: Quantity<Degree>,
) -> Quantity<Inch> {
    distance_after_swap(before, tail_longer + yoke_longer, front_angle)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    fn inches(value: f64) -> Quantity<Inch> {
        Quantity::new(value)
    }

    fn yoke() -> Yoke {
        Yoke { engaged: inches(2.5), room: inches(1.0) }
    }

    fn over(droop: f64, ride: f64, bump: f64) -> Travel {
        travel(yoke(), Distances { droop: inches(droop), ride: inches(ride), bump: inches(bump) })
    }

    #[test]
    fn the_yoke_comes_out_at_droop_and_goes_in_at_bump() {
        let usual = over(50.75, 50.0, 49.75);
        assert_eq!(usual, Travel { least_room: inches(0.75), least_engaged: inches(1.75), total: inches(1.0) });
    }

    #[test]
    fn an_axle_whose_distance_only_grows_takes_nothing_of_the_room() {
        // Ride height is the shortest place: an axle that swings on the pinion's own line.
        let swung = over(50.5, 50.0, 50.25);
        assert_eq!(swung, Travel { least_room: inches(1.0), least_engaged: inches(2.0), total: inches(0.5) });
        // An axle that moves away from the transmission as it comes up: bump is the furthest place.
        let away = over(49.5, 50.0, 50.75);
        assert_eq!(away, Travel { least_room: inches(0.5), least_engaged: inches(1.75), total: inches(1.25) });
        assert!(over(53.0, 50.0, 50.0).least_engaged.value() < 0.0, "it has come out");
        assert!(over(50.0, 50.0, 48.5).least_room.value() < 0.0, "it has hit");
    }

    #[test]
    fn a_longer_tail_shortens_a_straight_shaft_by_just_as_much() {
        let after = |longer, yoke, angle| {
            length_after_swap(inches(54.0), inches(longer), inches(yoke), Quantity::new(angle)).value()
        };
        assert!(same(after(6.0, 0.0, 0.0), 48.0));
        assert!(same(after(-3.0, 0.0, 0.0), 57.0));
        assert!(same(after(6.0, 0.5, 0.0), 47.5));
        assert!(after(6.0, 0.0, 3.0) > 48.0 && after(6.0, 0.0, 3.0) < 48.02, "a bent joint costs little");
    }

    proptest! {
        #[test]
        fn the_new_distance_is_that_of_the_drawing(length in 30.0..80.0f64, moved in -10.0..10.0f64, angle in 0.0..12.0f64) {
            let radians = angle.to_radians();
            let (along, across) = (length * radians.cos() - moved, length * radians.sin());
            let drawn = along.hypot(across);
            prop_assert!(same(distance_after_swap(inches(length), inches(moved), Quantity::new(angle)).value(), drawn));
        }

        #[test]
        fn nothing_is_lost_of_the_yoke(droop in 48.0..52.0f64, ride in 48.0..52.0f64, bump in 48.0..52.0f64) {
            let travelled = over(droop, ride, bump);
            let lost = (yoke().room - travelled.least_room) + (yoke().engaged - travelled.least_engaged);
            prop_assert!((lost - travelled.total).abs().value() < 1e-9 && travelled.total.value() >= 0.0);
        }
    }
}
