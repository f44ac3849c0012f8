//! An engine's torque curve as a shop has it: points from a printed sheet, straight lines between.

use crate::quantity::{PoundFoot, Quantity, Rpm};

/// One point of the curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Engine speed.
    pub speed: Quantity<Rpm>,
    /// Torque there, at full throttle.
    pub torque: Quantity<PoundFoot>,
}

/// Two points or more, speeds rising, torques above nought.
///
/// Nothing is said about speeds outside its points: the curve is not stretched.
#[derive(Clone, Debug, PartialEq)]
pub struct TorqueCurve(Vec<Point>);

/// Why points make no curve; prints as a sentence for the person who typed them.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum NoCurve {
    /// Fewer than two points.
    #[error("a torque curve wants at least 2 points, {given} given")]
    TooFew {
        /// How many were given.
        given: usize,
    },
    /// A speed or a torque that no engine has.
    #[error("point {place} of the torque curve is {speed} and {torque}; both have to be above 0")]
    Impossible {
        /// Counted from 1.
        place: usize,
        /// Its speed.
        speed: Quantity<Rpm>,
        /// Its torque.
        torque: Quantity<PoundFoot>,
    },
    /// A speed not above the one before.
    #[error(
        "point {place} of the torque curve is at {speed}, not above {before} before it; write them with rising rpm"
    )]
    NotRising {
        /// Counted from 1.
        place: usize,
        /// Its speed.
        speed: Quantity<Rpm>,
        /// The speed of the point before.
        before: Quantity<Rpm>,
    },
}

impl TorqueCurve {
    /// Takes points in the order of their speeds.
    ///
    /// # Errors
    /// [`NoCurve`], for the first thing that is wrong.
    pub fn new(points: Vec<Point>) -> Result<Self, NoCurve> {
        if points.len() < 2 {
            return Err(NoCurve::TooFew { given: points.len() });
        }
        let mut before: Option<Quantity<Rpm>> = None;
        for (index, Point { speed, torque }) in points.iter().copied().enumerate() {
            let place = index + 1;
            let sound = |value: f64| value.is_finite() && value > 0.0;
            if !sound(speed.value()) || !sound(torque.value()) {
                return Err(NoCurve::Impossible { place, speed, torque });
            }
            if let Some(before) = before.filter(|before| speed <= *before) {
                return Err(NoCurve::NotRising { place, speed, before });
            }
            before = Some(speed);
        }
        Ok(Self(points))
    }

    /// The points, speeds rising.
    pub fn points(&self) -> &[Point] {
        &self.0
    }

    /// Torque at a speed on the straight line between its neighbours; `None` outside the points.
    pub fn at(&self, speed: Quantity<Rpm>) -> Option<Quantity<PoundFoot>> {
        let (left, right) = self.pieces().find(|(left, right)| left.speed <= speed && speed <= right.speed)?;
        let share = (speed - left.speed) / (right.speed - left.speed);
        Some(left.torque + (right.torque - left.torque) * share)
    }

    /// Neighbouring points, from the lowest speed up.
    pub(super) fn pieces(&self) -> impl Iterator<Item = (&Point, &Point)> {
        self.0.iter().zip(self.0.iter().skip(1))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn curve(points: &[(f64, f64)]) -> Result<TorqueCurve, NoCurve> {
        let point =
            |&(speed, torque): &(f64, f64)| Point { speed: Quantity::new(speed), torque: Quantity::new(torque) };
        TorqueCurve::new(points.iter().map(point).collect())
    }

    #[test]
    fn torque_stands_on_the_line_between_two_points_and_nowhere_else() {
        let curve = curve(&[(2000.0, 300.0), (3000.0, 400.0), (5000.0, 300.0)]).expect("a curve");
        let at = |speed| curve.at(Quantity::new(speed)).map(Quantity::value);
        assert_eq!(at(2000.0), Some(300.0));
        assert_eq!(at(2250.0), Some(325.0));
        assert_eq!(at(3000.0), Some(400.0));
        assert_eq!(at(4500.0), Some(325.0));
        assert_eq!(at(5000.0), Some(300.0));
        assert_eq!((at(1999.0), at(5001.0), at(f64::NAN)), (None, None, None));
    }

    #[test]
    fn what_is_no_curve_says_which_point_and_why() {
        let refused = |points: &[(f64, f64)]| curve(points).expect_err("no curve").to_string();
        assert!(refused(&[]).contains("at least 2 points, 0 given"));
        assert!(refused(&[(2000.0, 300.0)]).contains("1 given"));
        assert!(refused(&[(2000.0, 300.0), (2000.0, 310.0)]).contains("point 2"));
        assert!(refused(&[(2000.0, 300.0), (1000.0, 310.0)]).contains("1000 rpm, not above 2000 rpm"));
        assert!(refused(&[(2000.0, 300.0), (3000.0, 0.0)]).contains("above 0"));
        assert!(refused(&[(-1.0, 300.0), (3000.0, 300.0)]).contains("point 1"));
        assert!(refused(&[(1000.0, f64::NAN), (3000.0, 300.0)]).contains("point 1"));
        assert!(refused(&[(1000.0, 300.0), (f64::INFINITY, 300.0)]).contains("point 2"));
    }
}
