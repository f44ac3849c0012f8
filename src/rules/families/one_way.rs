use super::rules;
use crate::job::{Fitted, FreeTurn, Job, LowOneWay, Modulator, OneWayKind, RaceShape, RaceState, UseKind, ValveBodyKind};
use crate::quantity::Quantity;
use crate::rules::parts::{SPRAG_34, SPRAG_FACTORY, SPRAG_LARGE_HUB};

/// Uses that hit the drivetrain on purpose.
const HARD_LAUNCHES: &[UseKind] = &[UseKind::StreetStrip, UseKind::Drag, UseKind::Pull];

rules! {
    /// Finds tilting elements planned for a drum with ramps.
    ///
    /// A sprag wedges between two plain round surfaces. On ramps its elements tip over at the first load.
    /// Source: common practice.
    "OWC-01" Stop Spec {
        accepts: false,
        title: "Sprag on a drum with ramps",
        shop: "A sprag needs a plain round race, and this drum has ramps for rollers. Its elements would tip over at \
               the first load. Change the drum, or stay with rollers.",
        customer: Some("The stronger part you asked for will not go on the drum inside your unit. It takes another \
                        drum, and we will tell you what that costs."),
        fix: "Fit a drum with a round race, or use rollers.",
        basis: "Common practice.",
        when: |j, _, _| j.one_way.kind.is(OneWayKind::Sprag) & j.one_way.race_shape.is(RaceShape::Ramped),
        fires: |j| {
            j.one_way.race_shape.set(RaceShape::Ramped);
            j.one_way.elements.set(SPRAG_34);
        },
        clears: |j| {
            j.one_way.race_shape.set(RaceShape::Round);
            j.one_way.elements.set(SPRAG_34);
        },
    }

    /// Finds rollers planned for a drum without ramps.
    ///
    /// Rollers hold only where they can climb a ramp. On a round race they spin like a bearing and there is no
    /// second gear. Source: common practice, inferred.
    "OWC-02" Stop Spec {
        accepts: false,
        title: "Rollers without ramps to climb",
        shop: "Rollers wedge on ramps, and this drum has none. They would turn like a bearing and second gear would \
               not hold. Fit a sprag, or a drum with ramps.",
        customer: Some("Two parts inside your unit do not go together, and you would have no second gear. We will \
                        change one of them."),
        fix: "Fit a sprag, or a drum with ramps.",
        basis: "Common practice, inferred.",
        when: |j, _, _| j.one_way.kind.is(OneWayKind::Roller) & j.one_way.race_shape.is_not(RaceShape::Ramped),
        fires: |j| j.one_way.kind.set(OneWayKind::Roller),
        clears: |j| {
            j.one_way.kind.set(OneWayKind::Roller);
            j.one_way.race_shape.set(RaceShape::Ramped);
        },
    }

    /// Reads the hand test of the intermediate one-way clutch.
    ///
    /// With the rear face of the drum up, the outer race turns clockwise and locks the other way. Built in
    /// backwards, second is gone and third ties up. Source: common practice; TM 9-2320-387-24 has the same test.
    "OWC-03" Stop Assembly {
        accepts: false,
        title: "One-way clutch of the direct drum is in backwards",
        shop: "With the rear face of the drum up, the outer race has to run clockwise and lock the other way. This \
               one does not. Flip the cage and try it once more before the drum goes in.",
        customer: None,
        fix: "Turn the cage over and repeat the test.",
        basis: "Common practice; TM 9-2320-387-24 gives the same test.",
        when: |j, _, _| j.one_way.free.one_of(&[FreeTurn::Counterclockwise, FreeTurn::Both, FreeTurn::Neither]),
        fires: |j| j.one_way.free.set(FreeTurn::Counterclockwise),
        clears: |j| j.one_way.free.set(FreeTurn::Clockwise),
    }

    /// Asks for the hand test of the intermediate one-way clutch before the drum is in.
    ///
    /// The test takes seconds on the bench. Afterwards the whole unit comes apart for it. Source: common
    /// practice.
    "OWC-04" Stop Assembly {
        accepts: false,
        title: "One-way clutch has not been tested by hand",
        shop: "This is a hold point. Turn the outer race by hand, see that it runs clockwise only, and put your \
               initials to it before the drum goes into the case.",
        customer: None,
        fix: "Test the direction by hand and sign for it.",
        basis: "Common practice.",
        when: |j, _, _| j.one_way.free.is(FreeTurn::Unchecked),
        fires: |j| j.one_way.free.set(FreeTurn::Unchecked),
        clears: |j| j.one_way.free.set(FreeTurn::Clockwise),
    }

    /// Holds the torque on the one-way clutch in second against what the shop lets it carry.
    ///
    /// The load is second ratio less one, times engine torque, times what the converter still multiplies, times
    /// a factor for the use. Above its limit the clutch lives on luck. Source: the formula is exact; the limits
    /// are shop settings from memory, low.
    "OWC-05" Caution Spec {
        accepts: true,
        title: "More load than this shop likes on its one-way clutch",
        shop: "In second gear this one-way clutch carries more than the shop's figure for its kind. Go up one step \
               in elements, or take the use down.",
        customer: Some("At your power, one part inside would work harder than we like. It may last, or it may fail \
                        early. We advise the next stronger part."),
        fix: "Fit more elements, or plan for softer use.",
        basis: "The formula is exact; the limits are shop settings from memory, low.",
        numbers: [one_way_share],
        limits: [one_way_over, one_way_far_over],
        when: |_, d, l| d.one_way_share.above(l.one_way_over) & d.one_way_share.at_most(l.one_way_far_over),
        fires: |j| {
            j.engine.torque_lbft.set(Quantity::new(450.0));
            j.converter.rated_torque_lbft.set(Quantity::new(450.0));
            j.usage.kind.set(UseKind::Drag);
            j.usage.road_driven.set(false);
        },
        clears: |j| {
            j.engine.torque_lbft.set(Quantity::new(450.0));
            j.converter.rated_torque_lbft.set(Quantity::new(450.0));
            j.usage.kind.set(UseKind::Drag);
            j.usage.road_driven.set(false);
            j.one_way.elements.set(SPRAG_34);
        },
    }

    /// Finds a one-way clutch loaded so far past its limit that it must not be built.
    ///
    /// At this load the elements roll over and the race can burst. Source: the formula is exact; the limits are
    /// shop settings from memory, low.
    "OWC-06" Stop Spec {
        accepts: true,
        title: "Far more load than this one-way clutch should see",
        shop: "Do not build it like this. At such a load the elements roll over and the race can burst. Take the \
               next stronger clutch, with its drum if it needs one.",
        customer: Some("At your power, one part inside would break, so we do not build it like this. You can choose \
                        a stronger part, and we will show you the price."),
        fix: "Fit 34 elements, or 36 with their drum.",
        basis: "The formula is exact; the limits are shop settings from memory, low.",
        numbers: [one_way_share],
        limits: [one_way_far_over],
        when: |_, d, l| d.one_way_share.above(l.one_way_far_over),
        fires: |j| {
            j.engine.torque_lbft.set(Quantity::new(700.0));
            j.converter.rated_torque_lbft.set(Quantity::new(700.0));
            j.usage.kind.set(UseKind::Drag);
            j.usage.road_driven.set(false);
        },
        clears: |j| {
            j.engine.torque_lbft.set(Quantity::new(700.0));
            j.converter.rated_torque_lbft.set(Quantity::new(700.0));
            j.usage.kind.set(UseKind::Drag);
            j.usage.road_driven.set(false);
            j.one_way.elements.set(SPRAG_34);
        },
    }

    /// Keeps the 36-element clutch and the large-hub drum together.
    ///
    /// The set was made as a pair: its inner race is the larger hub, and no factory part runs on it. Source:
    /// common practice; memory, medium.
    "OWC-07" Stop Spec {
        accepts: false,
        title: "36 elements and the large-hub drum are not together",
        shop: "The 36-element clutch runs only on the large-hub drum, and that drum takes nothing else. One of the \
               two is missing here. Order them as a set.",
        customer: Some("The strongest part of this kind needs a drum made for it. The two are sold as a pair, and \
                        only one of them is planned."),
        fix: "Use the clutch and the drum as one set.",
        basis: "Common practice; memory, medium.",
        when: |j, _, _| {
            (j.one_way.elements.is(SPRAG_LARGE_HUB) & j.one_way.race_shape.is_not(RaceShape::RoundLarge))
                | (j.one_way.elements.is_not(SPRAG_LARGE_HUB) & j.one_way.race_shape.is(RaceShape::RoundLarge))
        },
        fires: |j| j.one_way.elements.set(SPRAG_LARGE_HUB),
        clears: |j| {
            j.one_way.elements.set(SPRAG_LARGE_HUB);
            j.one_way.race_shape.set(RaceShape::RoundLarge);
        },
    }

    /// Looks at the surface the one-way clutch wedges on.
    ///
    /// Dents, flakes and scores are where elements slip or break. The hard layer is thin, so it cannot be honed
    /// away. Source: common practice.
    "OWC-08" Stop Teardown {
        accepts: false,
        title: "Race of the one-way clutch is damaged",
        shop: "The race is marked. Anything that catches a fingernail will make the new elements slip or break. \
               Replace the drum; honing takes off the hard layer.",
        customer: Some("The surface of one drum inside your unit is damaged. New parts could not grip it, so \
                        the drum must be replaced."),
        fix: "Replace the drum.",
        basis: "Common practice.",
        when: |j, _, _| j.one_way.race_state.is_not(RaceState::Smooth),
        fires: |j| j.one_way.race_state.set(RaceState::Brinelled),
        clears: |j| j.one_way.race_state.set(RaceState::Smooth),
    }

    /// Spots a round race with the factory's elements in a unit that will be launched hard.
    ///
    /// The 34-element set drops into the same race. While the unit is apart it costs only the part. Source:
    /// common practice.
    "OWC-09" Note Spec {
        accepts: false,
        title: "A stronger one-way clutch would drop in now",
        shop: "The race is round and the factory elements are in it. The 34-element set drops into the same race. \
               Offer it now, while the unit is apart and it costs only the part.",
        customer: Some("While your unit is open, a key part can be made much stronger for a small price. Later the \
                        whole unit would have to come apart for it."),
        fix: "Offer the 34-element set.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.one_way.race_shape.is(RaceShape::Round)
                & j.one_way.kind.is(OneWayKind::Sprag)
                & j.one_way.elements.is(SPRAG_FACTORY)
                & j.usage.kind.one_of(HARD_LAUNCHES)
        },
        fires: |j| {
            j.usage.kind.set(UseKind::StreetStrip);
            j.engine.torque_lbft.set(Quantity::new(400.0));
            j.converter.rated_torque_lbft.set(Quantity::new(400.0));
        },
        clears: |j| j.usage.kind.set(UseKind::Street),
    }

    /// Reads the hand test of the rear one-way clutch, done on its support.
    ///
    /// Built in the wrong way, there is no first gear in drive. Source: memory, high.
    "OWC-10" Stop Assembly {
        accepts: false,
        title: "Rear one-way clutch is untried or the wrong way round",
        shop: "The rear one-way clutch is untested or the wrong way round, and then drive has no first gear. Test it \
               on the center support before the support goes in, and turn it over if need be.",
        customer: None,
        fix: "Test it on the center support and turn it over if it is wrong.",
        basis: "Memory, high.",
        when: |j, _, _| j.one_way.low.is_not(LowOneWay::Correct),
        fires: |j| j.one_way.low.set(LowOneWay::Unchecked),
        clears: |j| j.one_way.low.set(LowOneWay::Correct),
    }

    /// Finds a manual valve body that leaves first gear to the rear one-way clutch alone.
    ///
    /// Without the rear band in first, every launch and every wheel that spins and grips again lands on those
    /// rollers. Source: memory, medium.
    "OWC-11" Caution Spec {
        accepts: false,
        title: "Rear rollers take every launch alone",
        shop: "This valve body leaves the rear band off in first, so the rear rollers alone take each launch and \
               each wheel that spins and bites again. Choose one that applies the band, or look at the rollers each \
               season.",
        customer: Some("With the shift control you chose, one small part takes the blow of each launch. Another \
                        kind would share the load. Please talk to us before we build."),
        fix: "Choose another valve body, or inspect the rear rollers each season.",
        basis: "Memory, medium.",
        when: |j, _, _| {
            j.valve_body.kind.is(ValveBodyKind::Manual)
                & j.valve_body.low_band_first.no()
                & j.usage.kind.one_of(HARD_LAUNCHES)
        },
        fires: |j| {
            manual_drag(j);
            j.valve_body.low_band_first.set(false);
        },
        clears: |j| {
            manual_drag(j);
            j.valve_body.low_band_first.set(true);
        },
    }

    /// Asks whether the retaining ring of the outer race is seated all the way round.
    ///
    /// A ring that sits only in part of its groove walks out under load and lets the race go. Source: memory,
    /// high.
    "OWC-12" Stop Assembly {
        accepts: false,
        title: "The ring that keeps the race in is not in its groove",
        shop: "The snap ring of the outer race is not in its groove all the way round, and it will walk out under \
               load. Seat it and run a pick around it before you go on.",
        customer: None,
        fix: "Seat the ring in its groove all the way round.",
        basis: "Memory, high.",
        when: |j, _, _| j.one_way.ring_seated.no(),
        fires: |j| j.one_way.ring_seated.set(false),
        clears: |j| j.one_way.ring_seated.set(true),
    }
}

/// A drag unit with a manual valve body and nothing else amiss.
fn manual_drag(j: &mut Job) {
    j.valve_body.kind.set(ValveBodyKind::Manual);
    j.usage.kind.set(UseKind::Drag);
    j.usage.road_driven.set(false);
    j.one_way.elements.set(SPRAG_34);
    j.control.governor.set(Fitted::Removed);
    j.control.modulator.set(Modulator::RemovedPlugged);
}
