use super::rules;
use crate::job::{ConverterOrigin, CoolerAction, Job};
use crate::quantity::Quantity;

rules! {
    /// Looks for the old converter in a unit that failed with debris or coolant in it.
    ///
    /// What the failure left behind hides in the converter and cannot be flushed out; it would come back into
    /// the fresh unit. Source: common practice, looked up.
    "CNV-14" Stop Intake {
        accepts: true,
        title: "The converter went through the failure and is used again",
        shop: "Debris or coolant was found, and a converter cannot be flushed clean of it. Order another one, or send \
               it to be cut open, cleaned and put together anew.",
        customer: Some("Dirt from the failure hides in your old converter (the fluid drive behind your engine). It \
                        cannot be washed out and would ruin the rebuilt unit. It must be changed or rebuilt."),
        fix: "Fit a rebuilt or a new converter.",
        basis: "Common practice, looked up.",
        when: |j, _, _| {
            (j.case.failure_debris.yes() | j.case.coolant_found.yes())
                & j.converter.origin.is(ConverterOrigin::Reused)
        },
        fires: |j| {
            after_debris(j);
            j.converter.origin.set(ConverterOrigin::Reused);
        },
        clears: |j| {
            after_debris(j);
            j.converter.origin.set(ConverterOrigin::New);
        },
    }

    /// Compares the end play inside the converter with the wear limit.
    ///
    /// Play grows as the thrust pieces inside wear, and they cannot be reached. A worn converter is replaced.
    /// Source: looked up, up to 0.024 in.
    "CNV-15" Stop Teardown {
        accepts: true,
        title: "Converter is worn inside",
        shop: "The end play inside the converter is over the limit, so its thrust pieces are worn. Nothing can be \
               done from outside: replace the converter.",
        customer: Some("The converter (the fluid drive behind your engine) is worn out inside. You need another one."),
        fix: "Replace the converter.",
        basis: "Looked up: up to 0.024 in.",
        limits: [converter_end_play],
        when: |j, _, l| j.converter.end_play_in.above(l.converter_end_play),
        fires: |j| j.converter.end_play_in.set(Quantity::new(0.04)),
        clears: |j| j.converter.end_play_in.set(Quantity::new(0.012)),
    }

    /// Looks for a converter that is not fully home in the pump.
    ///
    /// Drawn up with the bell bolts, a converter that is not home breaks the pump at once. Three drops and a
    /// depth written down show that it is. Source: common practice.
    "CNV-16" Stop Delivery {
        accepts: false,
        title: "Converter is not home in the pump",
        shop: "Turn and push the converter until three drops were felt. Write down its depth from the bell face, and \
               strap it in so that it cannot slide out on the way.",
        customer: None,
        fix: "Seat the converter, note the depth and strap it in.",
        basis: "Common practice.",
        when: |j, _, _| j.converter.seated.no(),
        fires: |j| j.converter.seated.set(false),
        clears: |j| j.converter.seated.set(true),
    }

    /// Looks at how much fluid is in the converter before it goes on.
    ///
    /// An empty converter lets the pump run dry at the first start. A quart poured in beforehand prevents it.
    /// Source: common practice.
    "CNV-17" Caution Delivery {
        accepts: false,
        title: "Converter has too little fluid to go on",
        shop: "Pour fluid into the converter before it goes on, a quart or what the shop has set. Dry, the pump has \
               nothing to work with at the first start.",
        customer: None,
        fix: "Fill fluid into the converter.",
        basis: "Common practice.",
        limits: [converter_prefill],
        when: |j, _, l| j.converter.prefill_qt.below(l.converter_prefill),
        fires: |j| j.converter.prefill_qt.set(Quantity::new(0.0)),
        clears: |j| j.converter.prefill_qt.set(Quantity::new(1.0)),
    }

    /// Compares the reach of the converter bolts with the depth of the pads.
    ///
    /// A bolt that is too long bottoms and dimples the cover: the face inside is ruined, or the cover leaks.
    /// Shorter bolts prevent it. Source: memory, high.
    "CNV-18" Stop Delivery {
        accepts: false,
        title: "Bolts would go through the converter pads into the cover",
        shop: "The bolts reach deeper than the pads allow. They would dimple the cover, ruin the face inside or make \
               it leak. Use shorter bolts.",
        customer: None,
        fix: "Use shorter bolts.",
        basis: "Memory, high.",
        when: |j, _, _| j.converter.bolt_reach_in.more_than(&j.converter.pad_depth_in),
        fires: |j| {
            j.converter.bolt_reach_in.set(Quantity::new(0.62));
            j.converter.pad_depth_in.set(Quantity::new(0.5));
        },
        clears: |j| j.converter.bolt_reach_in.set(Quantity::new(0.4)),
    }
}

/// A unit that failed with debris, its cooler and filter seen to.
fn after_debris(j: &mut Job) {
    j.case.failure_debris.set(true);
    j.cooling.action.set(CoolerAction::Replaced);
    j.cooling.inline_filter.set(true);
}
