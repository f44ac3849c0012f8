use super::{Phase::Intake, SeenPaper, Step, hazard};
use crate::job::{CrankFlange, FlexplateSpec, ShieldKind, UpperHole};
use crate::rules::{Ask as _, YesNo as _};

pub(super) static STEPS: &[Step] = &[
    Step::new(
        "IN-01",
        Intake,
        "Tag everything and take four photos",
        "Put the ticket number on the unit, on the converter and on every loose part. Photograph the unit from four \
         sides.",
        "Parts that lie in one shop together get mixed, and a crack that nobody photographed at the door becomes the \
         shop's crack.",
    )
    .hurts(hazard::LIFTING),
    Step::new(
        "IN-02",
        Intake,
        "Fill in the outside sheet",
        "Look the closed unit over and write down what it is. Try a thread gauge in every group of threads; the eye \
         cannot tell an inch thread from a metric one.",
        "A rear housing or a thread that somebody changed long ago decides which parts fit now.",
    ),
    Step::new(
        "IN-03",
        Intake,
        "Find out what the cooler ports are",
        "Turn both gauge fittings into the cooler ports with your fingers only. Write down whether the port is straight \
         or tapered.",
        "Driven into a port with straight thread, a tapered fitting bursts the case.",
    ),
    Step::new(
        "IN-04",
        Intake,
        "Photograph the safety labels",
        "Clean and photograph the label of each shield and flexplate so that the date can be read. Write the dates down.",
        "At the track the date on the label decides, however good the part looks.",
    )
    .hurts(hazard::SHIELDS)
    .when(
        |j| {
            j.usage.raced.yes()
                | j.shield.kind.is_not(ShieldKind::None)
                | j.flexplate.spec.is_not(FlexplateSpec::None)
        },
        |j| j.shield.kind.set(ShieldKind::Blanket),
        |j| j.flexplate.spec.set(FlexplateSpec::None),
    ),
    Step::new(
        "IN-05",
        Intake,
        "Look up the class",
        "Find the customer's class in the shop's class table and check that the table comes from the book of the event's \
         year.",
        "Rules change from year to year. The official at the event has the last word, and the table only prepares for \
         it.",
    )
    .when(|j| j.usage.raced.yes(), |j| j.usage.raced.set(true), |j| j.usage.raced.set(false)),
    Step::new(
        "IN-06",
        Intake,
        "Measure the crank flange",
        "Measure how far the crank flange stands from the rear face of the block. See whether an adapter is needed and \
         whether the one at hand is right.",
        "With the wrong depth the converter leaves its pilot or pushes the pump apart.",
    )
    .when(
        |j| j.engine.upper_hole.is(UpperHole::Absent) | j.engine.crank_flange.is(CrankFlange::Short0400),
        |j| j.engine.crank_flange.set(CrankFlange::Short0400),
        |j| j.engine.crank_flange.set(CrankFlange::Standard),
    ),
    Step::new(
        "IN-07",
        Intake,
        "Drain it and look at the fluid",
        "Drain the fluid, look at it, smell it and pull a magnet through it. Photograph the open pan. Tell the customer \
         the same day when there is coolant or metal in it.",
        "Coolant or metal changes the whole job and its price, and the customer should hear it before more is spent.",
    )
    .hurts(hazard::HOT_FLUID),
    Step::new(
        "IN-08",
        Intake,
        "Have the teardown authorized",
        "Get the customer's signature for taking the unit apart. The paper also says what happens to the core and to a \
         unit that is never fetched.",
        "A unit that has been apart may not go together again as it was, so it is the customer who decides.",
    )
    .sees(SeenPaper::Teardown),
];
