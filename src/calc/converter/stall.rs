//! Stall behind a real engine: where its torque curve meets what the held converter takes.
//!
//! A held converter takes torque with the square of speed, (N / K)². The
//! engine climbs until it takes as much as the engine makes. With a peaky
//! engine the two can meet more than once, or nowhere on the curve.

use super::CapacityFactor;
use super::torque_curve::{Point, TorqueCurve};
use crate::quantity::{PoundFoot, Quantity, Rpm};

/// One meeting of the two curves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Meeting {
    /// Engine speed.
    pub speed: Quantity<Rpm>,
    /// Torque of either.
    pub torque: Quantity<PoundFoot>,
    /// Whether the engine stays there by itself: above it the converter takes more than the engine makes.
    pub holds: bool,
}

/// Where an engine stalls against a held converter.
#[derive(Clone, Debug, PartialEq)]
pub enum Stall {
    /// At one speed.
    At(Meeting),
    /// The curves meet more than once, speeds rising; coming up from idle the engine stops at the first that holds.
    Several(Vec<Meeting>),
    /// At every speed of the curve the engine makes more than the converter takes: stall lies above the last point.
    AboveTheCurve(Point),
    /// At every speed of the curve the converter takes more than the engine makes: stall lies below the first point.
    BelowTheCurve(Point),
}

impl Stall {
    /// The speed at which an engine brought up from idle stops; `None` where the curve does not tell.
    ///
    /// Of several meetings it is the first that holds, provided that the engine gets there: if the converter takes
    /// more from the first point on, the engine does not get past it, and the curve does not tell.
    pub fn from_idle(&self) -> Option<Meeting> {
        match self {
            Self::At(meeting) => Some(*meeting).filter(|meeting| meeting.holds),
            Self::Several(meetings) => meetings.first().copied().filter(|meeting| meeting.holds),
            Self::AboveTheCurve(_) | Self::BelowTheCurve(_) => None,
        }
    }
}

/// Solves N = K √T(N) on every straight piece of the curve.
///
/// On a piece torque is a + b N, so N² − K² b N − K² a = 0. K of the held
/// converter, above nought. Source: definition of the capacity factor (SAE J643).
pub fn stall(engine: &TorqueCurve, held: CapacityFactor) -> Stall {
    let mut meetings: Vec<Meeting> = Vec::new();
    for (left, right) in engine.pieces() {
        for meeting in on_piece(left, right, held) {
            // The end of one piece is the beginning of the next.
            let again = meetings.last().is_some_and(|last| (last.speed / meeting.speed - 1.0).abs() < 1e-9);
            if !again {
                meetings.push(meeting);
            }
        }
    }
    for meeting in &mut meetings {
        meeting.holds = holds(engine, held, meeting.speed);
    }
    match (meetings.len(), engine.points()) {
        (0, [first, .., last]) => {
            if surplus(first, held) > 0.0 {
                Stall::AboveTheCurve(*last)
            } else {
                Stall::BelowTheCurve(*first)
            }
        }
        (1, _) => Stall::At(meetings[0]),
        _ => Stall::Several(meetings),
    }
}

/// Torque made less torque taken at a point, lb-ft.
fn surplus(point: &Point, held: CapacityFactor) -> f64 {
    point.torque.value() - held.torque_at(point.speed).value()
}

fn on_piece(left: &Point, right: &Point, held: CapacityFactor) -> impl Iterator<Item = Meeting> + use<> {
    let (from, to) = (left.speed.value(), right.speed.value());
    let slope = (right.torque - left.torque).value() / (to - from);
    let at_nought = left.torque.value() - slope * from;
    let square = held.0 * held.0;
    let half = square * slope / 2.0;
    let under = half * half + square * at_nought;
    let roots = if under < 0.0 { [f64::NAN; 2] } else { [half - under.sqrt(), half + under.sqrt()] };
    // A meeting at the very end of a piece is not lost to rounding.
    let (least, most) = (from * (1.0 - 1e-12), to * (1.0 + 1e-12));
    roots.into_iter().filter(move |speed| (least..=most).contains(speed)).map(move |speed| {
        let speed = Quantity::new(speed);
        Meeting { speed, torque: held.torque_at(speed), holds: false }
    })
}

/// Whether just above the speed the converter takes more; at the end of the curve, whether just below it takes less.
fn holds(engine: &TorqueCurve, held: CapacityFactor, speed: Quantity<Rpm>) -> bool {
    let near = |factor: f64| {
        let speed = speed * factor;
        engine.at(speed).map(|torque| surplus(&Point { speed, torque }, held))
    };
    match (near(1.0 - 1e-6), near(1.0 + 1e-6)) {
        (Some(below), Some(above)) => below > 0.0 && above < 0.0,
        (Some(below), None) => below > 0.0,
        (None, Some(above)) => above < 0.0,
        (None, None) => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn curve(points: &[(f64, f64)]) -> TorqueCurve {
        let point =
            |&(speed, torque): &(f64, f64)| Point { speed: Quantity::new(speed), torque: Quantity::new(torque) };
        TorqueCurve::new(points.iter().map(point).collect()).expect("a curve")
    }

    #[test]
    fn a_flat_curve_stalls_where_the_square_root_says() {
        let flat = curve(&[(1000.0, 400.0), (6000.0, 400.0)]);
        let Stall::At(meeting) = stall(&flat, CapacityFactor(200.0)) else { panic!("one stall") };
        assert!((meeting.speed.value() - 4000.0).abs() < 1e-6 && (meeting.torque.value() - 400.0).abs() < 1e-6);
        assert!(meeting.holds);
        assert_eq!(stall(&flat, CapacityFactor(200.0)).from_idle(), Some(meeting));
    }

    #[test]
    fn a_meeting_on_a_point_of_the_curve_is_counted_once() {
        let kinked = curve(&[(1000.0, 300.0), (4000.0, 400.0), (6000.0, 300.0)]);
        let found = stall(&kinked, CapacityFactor(200.0));
        assert!(matches!(&found, Stall::At(meeting) if (meeting.speed.value() - 4000.0).abs() < 1e-6 && meeting.holds));
        let at_the_end = stall(&curve(&[(1000.0, 400.0), (4000.0, 400.0)]), CapacityFactor(200.0));
        assert!(matches!(&at_the_end, Stall::At(meeting) if meeting.holds), "{at_the_end:?}");
        let at_the_start = stall(&curve(&[(4000.0, 400.0), (5000.0, 400.0)]), CapacityFactor(200.0));
        assert!(matches!(&at_the_start, Stall::At(meeting) if meeting.holds), "{at_the_start:?}");
    }

    #[test]
    fn a_curve_that_ends_before_the_stall_says_on_which_side() {
        let engine = curve(&[(2000.0, 300.0), (3000.0, 350.0)]);
        let at = |speed| Point { speed: Quantity::new(speed), torque: engine.at(Quantity::new(speed)).expect("on it") };
        assert_eq!(stall(&engine, CapacityFactor(300.0)), Stall::AboveTheCurve(at(3000.0)));
        assert_eq!(stall(&engine, CapacityFactor(80.0)), Stall::BelowTheCurve(at(2000.0)));
        assert_eq!(stall(&engine, CapacityFactor(300.0)).from_idle(), None);
    }

    #[test]
    fn a_boosted_engine_that_wakes_late_meets_the_converter_more_than_once() {
        // Weak below, steep when the boost comes: caught at 2,000, and again far above if it gets there.
        let boosted = curve(&[(1000.0, 120.0), (2500.0, 140.0), (3500.0, 520.0), (6500.0, 500.0)]);
        let Stall::Several(meetings) = stall(&boosted, CapacityFactor(190.0)) else { panic!("several") };
        let holds: Vec<bool> = meetings.iter().map(|meeting| meeting.holds).collect();
        assert_eq!(holds, [true, false, true], "{meetings:?}");
        let found = stall(&boosted, CapacityFactor(190.0)).from_idle().expect("the lowest");
        assert!(found.speed < Quantity::new(2500.0), "{found:?}");
        // Held from the first point on: the engine does not get up to the later meetings.
        let dead = curve(&[(2500.0, 100.0), (3500.0, 520.0), (6500.0, 500.0)]);
        let caught = stall(&dead, CapacityFactor(190.0));
        assert!(matches!(&caught, Stall::Several(meetings) if !meetings[0].holds), "{caught:?}");
        assert_eq!(caught.from_idle(), None);
    }

    #[test]
    fn a_curve_that_only_touches_is_no_place_to_stay() {
        // Straight line tangent to (N / 100)² at 4,000: torque 1,600, slope 0.8.
        let tangent = curve(&[(3500.0, 1200.0), (4500.0, 2000.0)]);
        match stall(&tangent, CapacityFactor(100.0)) {
            Stall::At(meeting) => assert!(!meeting.holds),
            // Rounding may part the line and the curve; then the converter takes more everywhere.
            other => assert!(matches!(other, Stall::BelowTheCurve(_)), "{other:?}"),
        }
    }

    proptest! {
        #[test]
        fn walking_up_the_curve_finds_the_same_meetings(
            torques in prop::collection::vec(80.0..700.0f64, 2..7), k in 100.0..280.0f64,
        ) {
            let points: Vec<_> = torques.iter().enumerate().map(|(i, torque)| (1000.0 + 900.0 * i as f64, *torque)).collect();
            let (engine, held) = (curve(&points), CapacityFactor(k));
            let found = match stall(&engine, held) {
                Stall::At(meeting) => vec![meeting],
                Stall::Several(meetings) => meetings,
                Stall::AboveTheCurve(_) | Stall::BelowTheCurve(_) => Vec::new(),
            };
            for meeting in &found {
                let made = engine.at(meeting.speed).expect("on the curve").value();
                prop_assert!((made - meeting.torque.value()).abs() < 1e-6 * made);
                prop_assert!((meeting.speed.value() - k * made.sqrt()).abs() < 1e-6 * meeting.speed.value());
            }
            // Changes of sign of the surplus on a fine walk, each near one meeting.
            let last = points[points.len() - 1].0;
            let surplus_at = |speed: f64| engine.at(Quantity::new(speed)).map_or(0.0, |made| made.value() - (speed / k).powi(2));
            let steps = 20_000;
            let at = |step: u32| 1000.0 + (last - 1000.0) * f64::from(step) / f64::from(steps);
            let crossed = (0..steps).filter(|step| surplus_at(at(*step)).signum() != surplus_at(at(step + 1)).signum());
            let crossed: Vec<f64> = crossed.map(at).collect();
            prop_assert_eq!(crossed.len(), found.len());
            for (walked, meeting) in crossed.iter().zip(&found) {
                prop_assert!((walked - meeting.speed.value()).abs() < 0.5);
                prop_assert_eq!(meeting.holds, surplus_at(*walked) > 0.0);
            }
        }
    }
}
