use super::rules;
use crate::job::CrankFlange;
use crate::quantity::Quantity;
use crate::rules::parts::DUAL_DRILLED;

rules! {
    /// Finds a gap between converter and flexplate so small that the bolts would crush the pump.
    ///
    /// The converter has no room to move forward: the pump breaks when the bell is drawn up, or when all is
    /// hot. Nothing is bolted until the cause is found. Source: common practice; 1/8 to 3/16 in was looked up.
    "CNV-01" Stop Delivery {
        accepts: false,
        title: "Converter gap is too small for the pump",
        shop: "With so little gap the pump is crushed at bolt-up or once it is hot. Bolt nothing. Find out why: the \
               converter is not seated, its pilot is the wrong one, or it is the wrong converter.",
        customer: Some("The converter (the fluid drive behind your engine) sits too close and would break the oil \
                        pump. We bolt nothing up until that is put right."),
        fix: "Seat the converter again, or fit another one.",
        basis: "Common practice; 1/8 to 3/16 in was looked up.",
        limits: [gap_crushing],
        when: |j, _, l| j.converter.gap_in.below(l.gap_crushing),
        fires: |j| j.converter.gap_in.set(Quantity::new(0.03)),
        clears: |j| j.converter.gap_in.set(Quantity::new(0.156)),
    }

    /// Finds a gap that is there, but smaller than wanted.
    ///
    /// It may be a true reading of a tight fit or a slip of the gauge. Three pads and the crank end play tell.
    /// Source: common practice; 1/8 to 3/16 in was looked up.
    "CNV-02" Caution Delivery {
        accepts: false,
        title: "Converter gap is on the tight side",
        shop: "The gap is smaller than wanted. Push the converter fully back, measure at three pads again, and check \
               the crank end play before anything is bolted.",
        customer: None,
        fix: "Measure the gap and the crank end play again.",
        basis: "Common practice; 1/8 to 3/16 in was looked up.",
        limits: [gap_crushing, gap_tight],
        when: |j, _, l| j.converter.gap_in.at_least(l.gap_crushing) & j.converter.gap_in.below(l.gap_tight),
        fires: |j| j.converter.gap_in.set(Quantity::new(0.09)),
        clears: |j| j.converter.gap_in.set(Quantity::new(0.14)),
    }

    /// Finds a gap that wants spacers.
    ///
    /// Drawn forward this far, the converter hub comes a little too far out of the pump. Equal spacers at every
    /// pad bring it back, at the cost of some pilot. Source: common practice, looked up.
    "CNV-03" Caution Delivery {
        accepts: false,
        title: "Converter gap is on the wide side",
        shop: "Put spacers of equal thickness under every pad: the gap less 5/32 in. Then check how much of the \
               pilot is still in the crank, because spacers take some away.",
        customer: None,
        fix: "Fit equal spacers at every pad.",
        basis: "Common practice, looked up.",
        limits: [gap_wide, gap_too_wide],
        when: |j, _, l| j.converter.gap_in.above(l.gap_wide) & j.converter.gap_in.at_most(l.gap_too_wide),
        fires: |j| j.converter.gap_in.set(Quantity::new(0.22)),
        clears: |j| j.converter.gap_in.set(Quantity::new(0.17)),
    }

    /// Finds a gap so wide that the pump is only half driven.
    ///
    /// Converter and pump are engaged only part of the way at the tangs. It is spaced, or it is the wrong
    /// converter. Source: common practice.
    "CNV-04" Stop Delivery {
        accepts: false,
        title: "Converter gap leaves the pump half driven",
        shop: "Pulled forward this far, the converter engages the pump tangs only in part. Space it and check the \
               pilot, or find out whether this is the wrong converter.",
        customer: Some("The converter (the fluid drive behind your engine) sits too far from it to drive the oil \
                        pump well. It must be spaced or changed before it can run."),
        fix: "Fit equal spacers at every pad, or another converter.",
        basis: "Common practice.",
        limits: [gap_too_wide],
        when: |j, _, l| j.converter.gap_in.above(l.gap_too_wide),
        fires: |j| j.converter.gap_in.set(Quantity::new(0.31)),
        clears: |j| j.converter.gap_in.set(Quantity::new(0.16)),
    }

    /// Works out how much of the pilot is held in the crank after spacers and recess.
    ///
    /// The pilot alone centers the converter behind the engine. Held too little, it runs out of true and shakes
    /// itself apart; a longer pilot or an adapter holds it. Source: common practice, looked up.
    "CNV-05" Stop Delivery {
        accepts: false,
        title: "Nothing centres the converter on the crank",
        shop: "Too little of the pilot is left in the crank once spacers and recess are taken off, so nothing \
               centers the converter. Fit a longer pilot or a crank adapter and measure again.",
        customer: Some("The converter (the fluid drive behind your engine) is not held in the middle of the engine \
                        shaft. It would shake itself apart, so it needs a longer center piece."),
        fix: "Fit a pilot extension or a crank adapter.",
        basis: "Common practice, looked up.",
        numbers: [pilot_engaged],
        limits: [pilot_held],
        when: |_, d, l| d.pilot_engaged.below(l.pilot_held),
        fires: |j| {
            j.converter.pilot_length_in.set(Quantity::new(0.55));
            j.flexplate.pilot_recess_in.set(Quantity::new(0.6));
        },
        clears: |j| {
            j.converter.pilot_length_in.set(Quantity::new(0.55));
            j.flexplate.pilot_recess_in.set(Quantity::new(0.2));
        },
    }

    /// Looks for an engine with the short crank flange and no adapter for it.
    ///
    /// On late engines the crank ends about 0.400 in earlier, out of reach of pilot and flexplate. A hub adapter and a
    /// flat flexplate make up for it. Source: memory, high.
    "CNV-06" Stop Intake {
        accepts: true,
        title: "Crank flange sits too far forward and has no adapter",
        shop: "This crank ends about 0.400 in short of where the unit expects it. Order a hub adapter with a flat \
               flexplate, then measure gap and pilot.",
        customer: Some("The end of your engine's shaft sits too far forward for this unit. It needs an adapter (a \
                        part that fills the space) before the two can be joined."),
        fix: "Fit the crank adapter with a flat flexplate.",
        basis: "Memory, high.",
        when: |j, _, _| j.engine.crank_flange.is(CrankFlange::Short0400) & j.engine.crank_adapter.no(),
        fires: |j| {
            j.engine.crank_flange.set(CrankFlange::Short0400);
            j.engine.crank_adapter.set(false);
        },
        clears: |j| {
            j.engine.crank_flange.set(CrankFlange::Short0400);
            j.engine.crank_adapter.set(true);
        },
    }

    /// Compares the bolt circles of flexplate and converter.
    ///
    /// There are two circles, and some flexplates are drilled for both. The wrong one is changed; its holes are
    /// never slotted to fit. Source: memory, high.
    "CNV-07" Stop Intake {
        accepts: false,
        title: "Flexplate holes do not line up with the converter pads",
        shop: "The holes of this flexplate do not meet the pads of the converter. Do not slot them. Fit a flexplate \
               with the right circle, or one that is drilled for both.",
        customer: Some("The flexplate (the thin disc on your engine) does not match the part that is bolted to it. \
                        Another disc with the right holes is needed."),
        fix: "Fit a flexplate with the right bolt circle.",
        basis: "Memory, high.",
        when: |j, _, _| {
            j.flexplate.bolt_circle_in.is_not(DUAL_DRILLED)
                & j.flexplate.bolt_circle_in.differs_from(&j.converter.bolt_circle_in)
        },
        fires: |j| {
            j.flexplate.bolt_circle_in.set(Quantity::new(10.75));
            j.converter.bolt_circle_in.set(Quantity::new(11.5));
        },
        clears: |j| {
            j.flexplate.bolt_circle_in.set(DUAL_DRILLED);
            j.converter.bolt_circle_in.set(Quantity::new(11.5));
        },
    }
}
