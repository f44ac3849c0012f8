//! What the other elements of a build hold: sums of the same kind as for the direct clutch, each for one element.
//!
//! A job has no facts for these parts, so what is typed here is kept by putting the sum on it.

use super::bands::{self, GRABS, holds_so};
use super::clutches::{NEED, TEARS, holds};
use super::drums::wedge;
use super::shared::{self, PLATES, PRESSURE};
use crate::quantity::{Degree, Inch, PoundForce};
use crate::sums::declaration::{Input, Sum};

// Of other packs than the direct clutch a job knows at most how many plates there are.
const FRICTION: Input = shared::FRICTION.of_no_fact();
const PISTON: Input = shared::PISTON.of_no_fact();
const SPRINGS: Input = shared::SPRINGS.of_no_fact();
const RADIUS: Input =
    shared::RADIUS.of_no_fact().hint("Outside and inside diameter of the lining, together, divided by four.");

/// A pack with so many plates by this fact.
const fn pack(plates: &'static str) -> [Input; 7] {
    [FRICTION, PLATES.fact(plates), PRESSURE, PISTON, SPRINGS, RADIUS, NEED]
}

const BAND: &[Input] = &[
    bands::PRESSURE,
    bands::PISTON,
    bands::SPRING,
    bands::LEVER,
    bands::FRICTION,
    bands::WRAP,
    bands::DRUM,
    bands::DRAG,
];

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "forward-holds",
        title: "What the forward clutch holds",
        what: "The torque the forward clutch holds with its plates, piston, pressure and springs. Put on a job, it stands \
               in the job's picture of loads.",
        inputs: &pack("forward.frictions"),
        work: holds,
        care: TEARS,
    },
    Sum {
        name: "intermediate-holds",
        title: "What the intermediate clutch holds",
        what: "The torque the intermediate clutch holds with its plates, piston, pressure and springs. Put on a job, it \
               stands in the job's picture of loads.",
        inputs: &pack("intermediate.frictions"),
        work: holds,
        care: TEARS,
    },
    Sum {
        name: "direct-holds-in-reverse",
        title: "What the direct clutch holds in reverse",
        what: "The torque the direct clutch holds as it backs up: at the pressure of reverse, and with the area that is fed \
               then. Put on a job, it stands in the job's picture of loads.",
        inputs: &[
            shared::FRICTION,
            PLATES,
            PRESSURE.of_no_fact().hint("In reverse, where it is raised: read it there."),
            PISTON.hint("In reverse, often both areas together."),
            shared::SPRINGS,
            shared::RADIUS,
            NEED,
        ],
        work: holds,
        care: TEARS,
    },
    Sum {
        name: "front-band-holds",
        title: "What the front band holds",
        what: "The torque the front band holds in second, with its servo and the way its drum drags it. Put on a job, it \
               stands in the job's picture of loads.",
        inputs: BAND,
        work: holds_so,
        care: GRABS,
    },
    Sum {
        name: "rear-band-holds",
        title: "What the rear band holds",
        what: "The torque the rear band holds in first or on the trans brake, with its servo and the way its drum drags it. \
               Put on a job, it stands in the job's picture of loads.",
        inputs: BAND,
        work: holds_so,
        care: GRABS,
    },
    Sum {
        name: "rear-band-holds-in-reverse",
        title: "What the rear band holds in reverse",
        what: "The torque the rear band holds as it backs up: at the pressure of reverse, and the way its drum drags it then. \
               Put on a job, it stands in the job's picture of loads.",
        inputs: BAND,
        work: holds_so,
        care: GRABS,
    },
    Sum {
        name: "low-one-way-holds",
        title: "What the low one-way clutch holds",
        what: "The torque the rollers of the low one-way clutch carry, at the force their maker allows on each. Put on a \
               job, it stands in the job's picture of loads.",
        inputs: &[
            Input::count("rollers", "Rollers", (1, 60), "12"),
            Input::number::<Degree>("angle", "Wedge angle, race to ramp", (0.5, 30.0), "7"),
            Input::number::<PoundForce>("force", "Force allowed on each, on the race", (1.0, 50_000.0), "4000"),
            Input::number::<Inch>("race", "Race diameter", (0.5, 15.0), "5.0"),
            Input::number::<Inch>("roller", "Roller diameter", (0.05, 2.0), "0.30"),
            Input::number::<Inch>("length", "Roller length", (0.05, 3.0), "0.75"),
            Input::choice("side", "Round race", super::drums::side_words, "inner"),
        ],
        work: wedge,
        care: "A low one-way clutch that lets go drops the vehicle out of first at full torque. Which way it goes on, and \
               that it holds, is tried by hand on the bench.",
    },
];
