//! What the unit goes into.

use super::group;
use crate::job::Bound::{Any, NotNegative, Positive};
use crate::job::Plain::{Number, Word, YesNo};
use crate::job::choices::{DriveLayout, EngineMount, TireKind};
use crate::quantity::{Inch, One, PoundMass, Quantity};

group! {
    /// The vehicle around the unit: its weight, wheels, mounts and brakes.
    Vehicle "vehicle" {
        drive_layout: DriveLayout {
            sheet: Spec, bound: Any, plain: Word("two_wheel"),
            label: "Driven wheels", note: "",
            how: "Ask, then look at the back of the unit: a transfer case, or the bolt circle for one, means four.",
            why: "It decides which output shaft and rear housing the unit must have.",
        }
        weight_lb: Quantity<PoundMass> {
            sheet: Spec, bound: NotNegative, plain: Number(3600.0),
            label: "Vehicle weight", note: "ready to run, with driver and fuel",
            how: "Ask for a scale slip. When there is none, write the owner's figure down and mark it as told.",
            why: "Weight turns into heat and clutch load, and it limits how high the stall speed may sensibly be.",
        }
        tow_weight_lb: Quantity<PoundMass> {
            sheet: Spec, bound: NotNegative, plain: Number(0.0),
            label: "Trailer weight", note: "loaded, 0 when nothing is towed",
            how: "Ask what the trailer weighs with its usual load on it, not what it weighs empty.",
            why: "It decides how much cooler the unit needs and how low the stall speed must stay.",
        }
        vent_over_exhaust: bool {
            sheet: Outside, bound: Any, plain: YesNo(false),
            label: "Vent ends above the exhaust", note: "",
            how: "With the exhaust in place and cold, sight straight down from the end of the vent and see what a drip \
                would land on.",
            why: "Fluid that foams out onto a hot pipe can catch fire.",
        }
        axle_park_brake: bool {
            sheet: Outside, bound: Any, plain: YesNo(true),
            label: "Parking brake at the axle holds", note: "",
            how: "On level ground, with chocks a hand's width off the tires, pull the brake, select neutral and push \
                the vehicle by hand.",
            why: "Where the unit has lost its own brake or its park pawl, this one is all that holds the vehicle.",
        }
        tire_diameter_in: Quantity<Inch> {
            sheet: Spec, bound: Positive, plain: Number(27.0),
            label: "Tire diameter", note: "driven tire, standing under its load",
            how: "Chalk the tire and the floor, roll the vehicle one full turn in a straight line and divide that \
                distance by 3.1416. Keep feet clear of the wheels.",
            why: "Road speed, cruising engine speed and the speedometer gears all come out of it.",
        }
        axle_ratio: Quantity<One> {
            sheet: Spec, bound: Positive, plain: Number(3.42),
            label: "Axle ratio", note: "driveshaft turns for one turn of the wheels",
            how: "Read the tag on the axle. Without one, set the vehicle on rated stands in neutral, mark wheel and \
                shaft, turn both wheels together and count.",
            why: "Together with the tire it gives the engine speed on the road and the speedometer gears.",
        }
        tire_kind: TireKind {
            sheet: Spec, bound: Any, plain: Word("street"),
            label: "Driven tires", note: "",
            how: "Look at the tread: tires made without a road tread count as slicks.",
            why: "The rulebook asks for a driveshaft loop sooner on slicks, because they shock the driveline harder.",
        }
        engine_mount: EngineMount {
            sheet: Spec, bound: Any, plain: Word("rubber"),
            label: "Engine mounts", note: "",
            how: "Look at both engine mounts and ask when they were last changed: soft rubber, firm plastic, or bare \
                metal.",
            why: "The mount at the transmission must never be stiffer than these, or the case does their work and \
                cracks.",
        }
        ground_strap: bool {
            sheet: Outside, bound: Any, plain: YesNo(true),
            label: "Ground strap from engine to body", note: "",
            how: "Look for a heavy cable or braid from the engine or the bell to the body, and tug it at both ends.",
            why: "Without it the starter's current looks for another way, through cables, bearings and bushings.",
        }
    }
}
