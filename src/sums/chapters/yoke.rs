//! The slip yoke over the travel of the axle, and a driveshaft's length after a tail swap.

use crate::calc::slip_yoke::{Distances, Yoke, length_after_swap, travel};
use crate::quantity::{Degree, Inch};
use crate::rules::LimitId;
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, short};

const UNDER: &str = "Measured under a vehicle that stands on its wheels or on stands, never on a jack. A yoke that bottoms \
                     breaks the case, one that comes out drops the shaft.";

const GEOMETRY: &str = "geometry, from the three places measured";

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "slip-yoke",
        title: "Slip yoke at droop, ride and bump",
        what: "How far the yoke is in over the whole travel of the axle, from the distance between the joints in its three \
               places.",
        inputs: &[
            Input::number::<Inch>("engaged", "Spline engaged at ride height", (0.0, 12.0), "3.0"),
            Input::number::<Inch>("room", "Way left before it bottoms, at ride height", (0.0, 6.0), "1.0"),
            Input::number::<Inch>("droop", "Joint to joint, axle hanging", (5.0, 150.0), "48.6"),
            Input::number::<Inch>("ride", "Joint to joint, on its wheels", (5.0, 150.0), "48.0")
                .fact("driveshaft.length_in"),
            Input::number::<Inch>("bump", "Joint to joint, axle on its stop", (5.0, 150.0), "47.5"),
        ],
        work: slip,
        care: UNDER,
    },
    Sum {
        name: "tail-swap",
        title: "Driveshaft length after a tail swap",
        what: "The length to build the driveshaft to when the new tail or its yoke stands further back, or less far.",
        inputs: &[
            Input::number::<Inch>("before", "Joint center to joint center now", (5.0, 150.0), "48")
                .fact("driveshaft.length_in"),
            Input::number::<Inch>("tail", "New tail is longer by", (-30.0, 30.0), "4.25")
                .hint("Below nought when shorter."),
            Input::number::<Inch>("yoke", "New yoke's joint stands further out by", (-10.0, 10.0), "0")
                .hint("From the spline's stop; below nought when less far."),
            Input::number::<Degree>("front", "Front joint angle", (0.0, 45.0), "2.0")
                .fact("driveshaft.front_angle_deg"),
        ],
        work: swap,
        care: UNDER,
    },
];

fn slip(given: &Given<'_>) -> Worked {
    let yoke = Yoke { engaged: given.number("engaged")?, room: given.number("room")? };
    let distances =
        Distances { droop: given.number("droop")?, ride: given.number("ride")?, bump: given.number("bump")? };
    let travel = travel(yoke, distances);
    let limits = given.limits();
    let ends = format!("{}, {}, {}", short(distances.droop), short(distances.ride), short(distances.bump));
    Ok(Outcome::default()
        .line(Line::new(
            "Least spline engaged",
            travel.least_engaged.to_places(3),
            "engaged at ride - (longest distance - distance at ride)",
            format!("{} - (longest of {ends} - {})", short(yoke.engaged), short(distances.ride)),
            GEOMETRY,
        ))
        .line(Line::new(
            "Least way left before it bottoms",
            travel.least_room.to_places(3),
            "way left at ride - (distance at ride - shortest distance)",
            format!("{} - ({} - shortest of {ends})", short(yoke.room), short(distances.ride)),
            GEOMETRY,
        ))
        .line(Line::new(
            "Travel of the yoke",
            travel.total.to_places(3),
            "longest distance - shortest distance",
            format!("longest - shortest of {ends}"),
            GEOMETRY,
        ))
        .at_least("The way left at ride height", yoke.room.value(), LimitId::ride_free_least, limits)
        .at_most("The way left at ride height", yoke.room.value(), LimitId::ride_free_most, limits)
        .at_least("The spline engaged at its least", travel.least_engaged.value(), LimitId::droop_engaged, limits)
        .at_least("The way left at its least", travel.least_room.value(), LimitId::bump_gap, limits)
        .remark("Where the axle swings through a longer or shorter distance between those places, measure there, too."))
}

fn swap(given: &Given<'_>) -> Worked {
    let (before, tail) = (given.number::<Inch>("before")?, given.number::<Inch>("tail")?);
    let (yoke, front) = (given.number::<Inch>("yoke")?, given.number::<Degree>("front")?);
    let taken = (tail + yoke).value() * front.value().to_radians().cos();
    if taken >= before.value() {
        let message = format!(
            "Tail longer by cannot be {}: with the yoke it takes the whole length of the shaft, {}.",
            short(tail),
            short(before)
        );
        return Amiss::clash("tail", message);
    }
    let length = length_after_swap(before, tail, yoke, front);
    Ok(Outcome::default()
        .line(
            Line::new(
                "Build the shaft to",
                length.to_places(2),
                "√(L² - 2 L Δ cos β + Δ²), Δ = tail longer + yoke further out, β the front joint's angle",
                format!(
                    "√({0}² - 2 × {0} × ({1} + {2}) × cos {3} + ({1} + {2})²)",
                    short(before),
                    short(tail),
                    short(yoke),
                    short(front)
                ),
                "geometry, law of cosines",
            )
            .plans("driveshaft.length_in", (length.value() * 100.0).round() / 100.0),
        )
        .remark("Measure again with the new tail in the vehicle before anything is cut."))
}
