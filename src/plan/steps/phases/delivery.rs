use super::{Phase::Delivery, Step};
use crate::job::{GearCut, ValveBodyKind};
use crate::rules::{Ask as _, YesNo as _};

pub(super) static STEPS: &[Step] = &[
    Step::new(
        "DL-01",
        Delivery,
        "Hand over the build summary",
        "Print the build summary or send its link. See that every finding is on it and that the customer signed this \
         version and no older one.",
        "What is not on the signed paper was never agreed.",
    )
    .hold(),
    Step::new(
        "DL-02",
        Delivery,
        "Hang on the dry tags",
        "Hang a tag that says dry on the dipstick and on the converter.",
        "A unit that is started without fluid loses its pump within a minute.",
    )
    .reads(&["fluid.dry_tag"])
    .when(|j| j.fluid.shipped_dry.yes(), |j| j.fluid.shipped_dry.set(true), |j| j.fluid.shipped_dry.set(false)),
    Step::new(
        "DL-03",
        Delivery,
        "Read out the note about noise",
        "Read the note about gear noise to the customer and see that it was understood.",
        "Straight gears whine in every gear but high, and whoever expects it does not bring the car back for it.",
    )
    .when(
        |j| j.gears.cut.is(GearCut::Straight) & j.usage.road_driven.yes(),
        |j| j.gears.cut.set(GearCut::Straight),
        |j| {
            j.gears.cut.set(GearCut::Straight);
            j.usage.road_driven.set(false);
        },
    ),
    Step::new(
        "DL-04",
        Delivery,
        "Write the label dates on the summary",
        "Write the date of each safety label on the summary, and which of them runs out first.",
        "The customer plans the season by them.",
    )
    .when(|j| j.usage.raced.yes(), |j| j.usage.raced.set(true), |j| j.usage.raced.set(false)),
    Step::new(
        "DL-05",
        Delivery,
        "Give out the shift card",
        "Give the customer a card for the dash that shows the order of the gears.",
        "With a manual valve body nothing keeps the driver from the wrong gear but knowing it.",
    )
    .when(
        |j| j.valve_body.kind.is(ValveBodyKind::Manual),
        |j| j.valve_body.kind.set(ValveBodyKind::Manual),
        |j| j.valve_body.kind.set(ValveBodyKind::Auto),
    ),
];
