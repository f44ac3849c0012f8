use super::rules;
use crate::job::{BellKind, BellPattern, Crack, EnginePattern, Job, UpperHole};
use crate::quantity::Quantity;
use crate::rules::parts::FULL_RING;
use crate::rules::{Together, Truth};

/// Are the bolt patterns of bell and engine two different ones?
fn patterns_differ(j: &Job) -> Truth {
    (j.bell.pattern.known(), j.engine.pattern.known()).together().map(|(bell, engine)| {
        !matches!(
            (bell, engine),
            (BellPattern::PatternA, EnginePattern::PatternA) | (BellPattern::PatternB, EnginePattern::PatternB)
        )
    })
}

rules! {
    /// Compares the bolt pattern of the bell with that of the engine.
    ///
    /// Two patterns are common and a few cases carry both. Nothing else on the job matters until the unit can
    /// be bolted to its engine. Source: common practice.
    "CSE-01" Stop Intake {
        accepts: true,
        title: "Bell does not bolt to this engine",
        shop: "The bolt pattern of the bell is not the pattern of this engine. Find a case with the right pattern, \
               use an adapter, or cut the bell off and hang a bolt-on bell.",
        customer: Some("The bolt holes of your unit and your engine do not line up. You can choose a plate that goes \
                        between them, another unit, or a new front housing that fits."),
        fix: "Find a case of the engine's pattern, fit an adapter between the two, or build with a bolt-on bell.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.engine.pattern.is(EnginePattern::Other)
                | (j.bell.pattern.is_not(BellPattern::Both)
                    & j.engine.pattern.one_of(&[EnginePattern::PatternA, EnginePattern::PatternB])
                    & patterns_differ(j))
        },
        fires: |j| j.bell.pattern.set(BellPattern::PatternB),
        clears: |j| {
            j.bell.pattern.set(BellPattern::Both);
            j.engine.pattern.set(EnginePattern::PatternB);
        },
    }

    /// Counts the pump bolts that could really hold a bolt-on bell.
    ///
    /// The ring of a bolt-on bell hangs on the pump bolts alone. The shortest count of ring, case and pump
    /// decides, and six is not a number to plan on. Source: common practice; how grave it is, is the shop's
    /// judgement.
    "CSE-02" Stop Intake {
        accepts: true,
        title: "Too few bolts to hang a bolt-on bell from",
        shop: "The ring of a bolt-on bell hangs on the pump bolts, and here too few of them can be used. Drill and \
               tap the spare boss if the casting has one, or build on a case with eight places.",
        customer: Some("The new front housing would hang on only six bolts. That is too few to be safe. We can add \
                        a seventh bolt if the metal allows it, or use another case."),
        fix: "Drill and tap the spare boss for seven bolts, or find a case with eight places.",
        basis: "Common practice; the severity is shop judgement.",
        numbers: [usable_bolts],
        limits: [bell_bolts_too_few],
        when: |j, d, l| j.bell.kind.is(BellKind::BoltOn) & d.usable_bolts.at_most(l.bell_bolts_too_few),
        fires: |j| j.bell.kind.set(BellKind::BoltOn),
        clears: |j| j.bell.kind.set(BellKind::Integral),
    }

    /// Finds an eight-hole ring on a case that offers only seven places.
    ///
    /// Some castings have no metal for the eighth bolt. Seven work when they are pulled up evenly; the next
    /// builder and the customer should know of it. Source: common practice.
    "CSE-03" Caution Intake {
        accepts: true,
        title: "Seven of eight places hold the bolt-on bell",
        shop: "The ring has eight holes, but one place is missing on the case or the pump. Seven bolts do the work \
               if they are torqued evenly. Write it on the tag, so that the next builder knows.",
        customer: Some("Seven bolts will hold your front housing instead of eight, as your case has no metal for \
                        the last one. Many are built so, and you should know it."),
        fix: "Accept it in writing, or build on a case with eight places.",
        basis: "Common practice.",
        numbers: [usable_bolts],
        limits: [bell_bolts_too_few],
        when: |j, d, l| {
            j.bell.kind.is(BellKind::BoltOn)
                & j.bell.ring_holes.is(FULL_RING)
                & d.usable_bolts.above(l.bell_bolts_too_few)
                & d.usable_bolts.below(FULL_RING)
        },
        fires: |j| {
            j.bell.kind.set(BellKind::BoltOn);
            j.case.pump_bosses.set(7);
            j.pump.holes.set(8);
            j.case.pump_tapped.set(7);
        },
        clears: |j| {
            j.bell.kind.set(BellKind::BoltOn);
            j.case.pump_bosses.set(8);
            j.pump.holes.set(8);
            j.case.pump_tapped.set(8);
        },
    }

    /// Finds a pump with fewer holes than the ring and the case could use.
    ///
    /// The flange can be drilled to match, with the ring as a template, as long as that is done before the
    /// final wash. Source: common practice.
    "CSE-04" Caution Spec {
        accepts: false,
        title: "Pump flange has fewer holes than the case",
        shop: "Ring and case could take more bolts than the pump has holes for. Drill the pump flange with the bell \
               ring as a template, deburr it, and do it before the wash; or fit a pump that has the holes.",
        customer: Some("The oil pump needs one or two more bolt holes to match your case. We drill them before the \
                        parts are washed."),
        fix: "Drill and deburr the pump flange, or fit another pump.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.bell.kind.is(BellKind::BoltOn) & j.pump.holes.less_than(&j.bell.ring_holes.lesser_of(&j.case.pump_bosses))
        },
        fires: |j| {
            j.bell.kind.set(BellKind::BoltOn);
            j.case.pump_bosses.set(8);
            j.pump.holes.set(7);
            j.case.pump_tapped.set(8);
        },
        clears: |j| {
            j.bell.kind.set(BellKind::BoltOn);
            j.case.pump_bosses.set(8);
            j.pump.holes.set(8);
            j.case.pump_tapped.set(8);
        },
    }

    /// Compares the tapped bosses with the bolts that are counted on.
    ///
    /// A boss that is drilled but not tapped, or planned and forgotten, is found when the bell is already on
    /// the bench. Source: common practice.
    "CSE-05" Stop Assembly {
        accepts: false,
        title: "More bell bolts are planned than bosses with a thread",
        shop: "More bolts are planned for the bell than there are tapped bosses. Finish the tapping, chase every \
               thread, wash out the chips, and count again.",
        customer: Some("One bolt hole that we plan to use still has to be threaded. We will finish it before the \
                        unit is closed."),
        fix: "Tap the missing boss and correct the count.",
        basis: "Common practice.",
        numbers: [usable_bolts],
        when: |j, d, _| j.bell.kind.is(BellKind::BoltOn) & j.case.pump_tapped.less_than(&d.usable_bolts),
        fires: |j| {
            j.bell.kind.set(BellKind::BoltOn);
            j.case.pump_bosses.set(8);
            j.pump.holes.set(8);
        },
        clears: |j| {
            j.bell.kind.set(BellKind::BoltOn);
            j.case.pump_bosses.set(8);
            j.pump.holes.set(8);
            j.case.pump_tapped.set(8);
        },
    }

    /// Notes an engine block without the upper bell hole.
    ///
    /// Late blocks leave that hole out, and there is coolant behind the place. Five bolts and both dowels
    /// carry the bell. Source: common practice.
    "CSE-06" Note Intake {
        accepts: true,
        title: "This block has no hole for the top bell bolt",
        shop: "This is a late block without the upper hole. Five bolts and both dowels carry the bell. Never drill the \
               block there: coolant stands behind it.",
        customer: Some("Your engine is a newer kind, and one of the six front bolts has nothing to go into. We use \
                        the other five bolts and two steel pins instead."),
        fix: "Nothing to do but make sure that both dowels are there.",
        basis: "Common practice.",
        when: |j, _, _| j.engine.upper_hole.is(UpperHole::Absent),
        fires: |j| j.engine.upper_hole.set(UpperHole::Absent),
        clears: |j| j.engine.upper_hole.set(UpperHole::Present),
    }

    /// Looks for a shield or dipstick bracket that wants the bolt a late block cannot take.
    ///
    /// The bracket shares the upper bell hole. Where the block has none, the bell itself is threaded with a
    /// coil insert and the bolt comes from behind. Source: common practice.
    "CSE-07" Stop Spec {
        accepts: false,
        title: "A bracket needs the bolt that this block cannot take",
        shop: "The shield or the dipstick tube hangs on the upper bell bolt, and this block has no hole for it. Fit \
               a 3/8-16 coil insert in the bell hole, flush or below, and bolt the bracket from behind.",
        customer: Some("One bracket needs a bolt that your engine cannot take. We put a thread in the housing \
                        itself, so the bracket can be bolted there."),
        fix: "Fit a thread insert in the upper bell hole.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.engine.upper_hole.is(UpperHole::Absent)
                & (j.shield.uses_upper_hole.yes() | j.stick.uses_upper_hole.yes())
                & j.bell.insert_fitted.no()
        },
        fires: |j| {
            j.engine.upper_hole.set(UpperHole::Absent);
            j.stick.uses_upper_hole.set(true);
        },
        clears: |j| {
            j.engine.upper_hole.set(UpperHole::Absent);
            j.stick.uses_upper_hole.set(true);
            j.bell.insert_fitted.set(true);
        },
    }

    /// Stops work on a case that is cracked or may be.
    ///
    /// A crack grows with heat and load and ends in a burst case or an oil fire. It cannot be judged by eye.
    /// Source: memory, high.
    "CSE-08" Stop Teardown {
        accepts: true,
        title: "Nobody can trust this case: it is cracked or may be",
        shop: "Do not build on this case. Check it with dye. Replace it, unless a licensed welder and a machinist \
               both agree on a repair that stays away from the bores.",
        customer: Some("Your case is cracked, or may be. A cracked case can leak hot oil or break, so we stop here \
                        until you decide. Most often the safe way is another case."),
        fix: "Replace the case.",
        basis: "Memory, high.",
        when: |j, _, _| j.case.crack.is_not(Crack::None),
        fires: |j| j.case.crack.set(Crack::Found),
        clears: |j| j.case.crack.set(Crack::None),
    }

    /// Counts the dowels that locate the bell on the engine.
    ///
    /// Bolts clamp, dowels locate. With one missing the unit sits off centre and wears the pump bushing.
    /// Source: memory, high.
    "CSE-09" Stop Intake {
        accepts: false,
        title: "A dowel between engine and bell is missing",
        shop: "Bolts only clamp the bell; the dowels locate it. With one missing the unit runs off centre and eats \
               its pump bushing. Have both dowels in the block before the unit goes up.",
        customer: Some("Two small steel pins line your unit up with the engine. One is missing, and we will fit it \
                        first. Without it the parts would wear out early."),
        fix: "Fit both dowels.",
        basis: "Memory, high.",
        limits: [dowels],
        when: |j, _, l| j.engine.dowels.below(l.dowels),
        fires: |j| j.engine.dowels.set(1),
        clears: |j| j.engine.dowels.set(2),
    }

    /// Reads the runout of the bell bore, swept with an indicator from the crank.
    ///
    /// A bore off centre bends the converter hub against the pump on every turn. Offset dowels move the bell by
    /// half the runout. Source: memory, medium; 0.005 to 0.010 in is used in the trade.
    "CSE-10" Caution Assembly {
        accepts: false,
        title: "Bell does not run true to the crank",
        shop: "The bell bore swept more than the limit in total, so the converter hub would work against the pump. \
               Fit offset dowels that move the bell by half the runout, then sweep it again.",
        customer: Some("The front housing sits a little off centre from the engine. We will move it with special \
                        pins and then measure it again."),
        fix: "Fit offset dowels and sweep the bore again.",
        basis: "Memory, medium; 0.005 to 0.010 in is used in the trade.",
        limits: [bell_runout],
        when: |j, _, l| j.bell.runout_in.above(l.bell_runout),
        fires: |j| j.bell.runout_in.set(Quantity::new(0.014)),
        clears: |j| j.bell.runout_in.set(Quantity::new(0.006)),
    }

    /// Reminds everybody that sawing off the cast bell is final.
    ///
    /// The bosses, the pump holes and the signature come first, because no saw cut was ever taken back.
    /// Source: common practice, inferred.
    "CSE-11" Caution Spec {
        accepts: true,
        title: "A cut bell never goes back",
        shop: "Keep the saw away until four things are done: bosses counted, pump looked over, new bell on hand, and \
               the customer's signature for the cut.",
        customer: Some("We plan to cut the front off your case. This cannot be undone. From then on it will only \
                        bolt up with a separate front housing."),
        fix: "Get the customer's signature before the cut.",
        basis: "Common practice, inferred.",
        when: |j, _, _| j.bell.cut_planned.yes(),
        fires: |j| j.bell.cut_planned.set(true),
        clears: |j| j.bell.cut_planned.set(false),
    }

    /// Compares the plate between engine and unit with the reach of the converter.
    ///
    /// A mid plate pushes the unit back by its thickness. Unless the converter's pads and pilot grow by as
    /// much, the pilot leaves the crank. Source: common practice (looked up).
    "CSE-12" Stop Spec {
        accepts: false,
        title: "Mid plate without a longer converter",
        shop: "The mid plate pushes the unit back, and the converter does not reach that much further. Its pads and \
               its pilot both have to grow by the thickness of the plate.",
        customer: Some("The plate behind your engine moves the unit back. The big round part between the two must \
                        be made longer, so that it still reaches."),
        fix: "Have the converter's pads and pilot extended by the thickness of the plate.",
        basis: "Common practice (looked up).",
        when: |j, _, _| j.engine.mid_plate_in.any() & j.converter.extension_in.less_than(&j.engine.mid_plate_in),
        fires: |j| j.engine.mid_plate_in.set(Quantity::new(0.25)),
        clears: |j| {
            j.engine.mid_plate_in.set(Quantity::new(0.25));
            j.converter.extension_in.set(Quantity::new(0.25));
        },
    }
}
