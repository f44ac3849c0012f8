//! What the other elements of a build hold: sums of the same kind as for the direct clutch, each for one element.
//!
//! A job has no facts for these parts, so what is typed here is kept by putting the sum on it.

use super::bands::{self, GRABS, holds_so};
use super::clutches::{TEARS, holds};
use super::drums::wedge;
use crate::quantity::{Degree, Inch, PoundFoot, PoundForce, Psi, SquareInch};
use crate::sums::declaration::{Input, Sum};

const FRICTION: Input = Input::ratio("friction", "Friction of the lining", (0.03, 0.4), "0.13")
    .hint("In fluid; 0.10 to 0.17 for paper (memory, high).");
const PLATES: Input = Input::count("plates", "Lined plates", (1, 12), "5");
const PRESSURE: Input = Input::number::<Psi>("pressure", "Line pressure at the pack", (5.0, 500.0), "150");
const PISTON: Input = Input::number::<SquareInch>("piston", "Piston area in use", (1.0, 60.0), "15.0");
const SPRINGS: Input = Input::number::<PoundForce>("springs", "Release spring force, applied", (0.0, 3000.0), "250");
const RADIUS: Input = Input::number::<Inch>("radius", "Mean radius of the lining", (0.5, 10.0), "2.5")
    .hint("Outside and inside diameter of the lining, together, divided by four.");
const NEED: Input = Input::number::<PoundFoot>("need", "Torque it has to hold", (1.0, 10000.0), "450")
    .hint("Before any margin. Leave it blank to see only what the pack holds.")
    .optional();

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
        inputs: &[
            FRICTION,
            PLATES.fact("forward.frictions"),
            PRESSURE.fact("bench.line_stall_psi"),
            PISTON,
            SPRINGS,
            RADIUS,
            NEED,
        ],
        work: holds,
        care: TEARS,
    },
    Sum {
        name: "intermediate-holds",
        title: "What the intermediate clutch holds",
        what: "The torque the intermediate clutch holds with its plates, piston, pressure and springs. Put on a job, it \
               stands in the job's picture of loads.",
        inputs: &[
            FRICTION,
            PLATES.fact("intermediate.frictions"),
            PRESSURE.fact("bench.line_stall_psi"),
            PISTON,
            SPRINGS,
            RADIUS,
            NEED,
        ],
        work: holds,
        care: TEARS,
    },
    Sum {
        name: "direct-holds-in-reverse",
        title: "What the direct clutch holds in reverse",
        what: "The torque the direct clutch holds as it backs up: at the pressure of reverse, and with the area that is fed \
               then. Put on a job, it stands in the job's picture of loads.",
        inputs: &[
            FRICTION.fact("direct.friction_mu"),
            PLATES.fact("direct.frictions"),
            PRESSURE.hint("In reverse, where it is raised: read it there."),
            PISTON.hint("In reverse, often both areas together."),
            SPRINGS.fact("direct.spring_lb"),
            RADIUS.fact("direct.mean_radius_in"),
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
