//! From the unit to the axle.

use super::group;
use crate::job::Bound::{Any, NotNegative, Positive};
use crate::job::Plain::{Number, Unknown, Word, YesNo};
use crate::job::choices::{ShaftKind, TubeMaterial};
use crate::quantity::{Degree, Inch, Quantity};

group! {
    /// The driveshaft: length, tube, joints, angles and loop.
    Driveshaft "driveshaft" {
        kind: ShaftKind {
            sheet: Outside, bound: Any, plain: Word("fixed"),
            label: "Driveshaft", note: "",
            how: "Look along it for a sliding joint in the shaft itself.",
            why: "Somewhere the line has to give, and in one place only: with none, parts break; with two, the shaft \
                  floats.",
        }
        loop_fitted: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "Driveshaft loop", note: "",
            how: "Look just behind the front joint for a steel hoop that the shaft runs through.",
            why: "It keeps a broken shaft from digging in or coming through the floor.",
        }
        loop_distance_in: Quantity<Inch> {
            sheet: Outside, bound: NotNegative, plain: Unknown,
            label: "Loop behind the front joint", note: "to the middle of the joint",
            how: "Measure along the shaft with a tape, exhaust cold and vehicle on rated stands.",
            why: "A loop too far back does not hold the end that breaks off.",
        }
        length_in: Quantity<Inch> {
            sheet: Measured, bound: Positive, plain: Number(48.0),
            label: "Driveshaft length", note: "joint center to joint center",
            how: "Measure with a tape between the centers of the two joint caps, at ride height.",
            why: "A long shaft starts to whip at a lower speed.",
        }
        od_in: Quantity<Inch> {
            sheet: Measured, bound: Positive, plain: Number(3.0),
            label: "Tube outside diameter", note: "",
            how: "Measure the plain tube with a caliper, away from welds and weights.",
            why: "A larger tube can turn faster before it whips.",
        }
        wall_in: Quantity<Inch> {
            sheet: Measured, bound: NotNegative, plain: Number(0.083),
            label: "Tube wall thickness", note: "",
            how: "Ask the maker, or read it with an ultrasonic gauge on clean tube.",
            why: "It has a small part in the speed at which the tube whips.",
        }
        material: TubeMaterial {
            sheet: Outside, bound: Any, plain: Word("steel"),
            label: "Driveshaft tube", note: "",
            how: "Hold a magnet to it: it sticks to steel.",
            why: "The two metals whip at slightly different speeds.",
        }
        front_angle_deg: Quantity<Degree> {
            sheet: Measured, bound: Any, plain: Number(2.0),
            label: "Front joint angle", note: "",
            how: "Lay an angle gauge on the output shaft's line and on the tube, at ride height, and take the \
                difference.",
            why: "A steep joint shakes and wears.",
        }
        rear_angle_deg: Quantity<Degree> {
            sheet: Measured, bound: Any, plain: Number(2.0),
            label: "Rear joint angle", note: "",
            how: "Lay an angle gauge on the tube and on the axle's pinion line, at ride height, and take the \
                difference.",
            why: "It should come close to the front angle, so that the two cancel.",
        }
        remeasured: bool {
            sheet: Paper, bound: Any, plain: YesNo(true),
            label: "Driveshaft measured again", note: "",
            how: "Look for the signed line on the build sheet with the new length.",
            why: "A changed rear end moves the yoke, and a shaft of the old length bottoms or pulls out.",
        }
    }
}
