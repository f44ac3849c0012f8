use super::rules;
use crate::job::{Balance, BrakeKind, Job, UseKind, ValveBodyKind};
use crate::quantity::Quantity;
use crate::rules::parts::SPRAG_34;

rules! {
    /// Compares how flexplate and engine are balanced.
    ///
    /// Some engines carry an offset weight on the flexplate, others must not have one. Mixed, the whole shakes
    /// and wears the pump bushing. Source: memory, high.
    "CNV-19" Stop Intake {
        accepts: false,
        title: "Weights on the flexplate are not this engine's",
        shop: "Engine and flexplate are balanced in two different ways, one inside and one with an outside weight. \
               Get the flexplate that matches the engine.",
        customer: Some("The flexplate (the thin disc on your engine) is balanced for another kind of engine. It would \
                        shake, so the right one is needed."),
        fix: "Fit a flexplate balanced as the engine is.",
        basis: "Memory, high.",
        when: |j, _, _| j.flexplate.balance.differs_from(&j.engine.balance),
        fires: |j| {
            j.flexplate.balance.set(Balance::External);
            j.engine.balance.set(Balance::Internal);
        },
        clears: |j| {
            j.flexplate.balance.set(Balance::External);
            j.engine.balance.set(Balance::External);
        },
    }

    /// Compares the ring gear the starter is made for with the one on the flexplate.
    ///
    /// A starter nose for the other ring clashes and breaks teeth. Either of the two can be changed. Source:
    /// memory, high.
    "CNV-20" Stop Intake {
        accepts: false,
        title: "Starter and ring gear do not mesh",
        shop: "The starter is made for a ring gear with another number of teeth. It would grind and break them. \
               Match the starter nose to the ring, or the flexplate to the starter.",
        customer: Some("Your starter and the flexplate (the toothed disc that it turns) do not go together. One of \
                        the two must be changed."),
        fix: "Match starter and flexplate.",
        basis: "Memory, high.",
        when: |j, _, _| j.engine.starter_teeth.differs_from(&j.flexplate.teeth),
        fires: |j| {
            j.engine.starter_teeth.set(153);
            j.flexplate.teeth.set(168);
        },
        clears: |j| {
            j.engine.starter_teeth.set(153);
            j.flexplate.teeth.set(153);
        },
    }

    /// Compares the runout of the flexplate at the converter bolt circle with the limit.
    ///
    /// A flexplate out of true cracks in time and wipes out the pump bushing. Bent back it is no better, so it
    /// is replaced. Source: 0.008 in was looked up for passenger units; 0.010 in is the shop's.
    "CNV-21" Caution Delivery {
        accepts: false,
        title: "The flexplate wobbles",
        shop: "The flexplate wobbles more at the bolt circle than allowed; it will crack, and it wears the pump \
               bushing. Replace it, and do not try to bend it straight.",
        customer: None,
        fix: "Replace the flexplate.",
        basis: "0.008 in was looked up for passenger units; 0.010 in is a shop setting.",
        limits: [flexplate_runout],
        when: |j, _, l| j.flexplate.runout_in.above(l.flexplate_runout),
        fires: |j| j.flexplate.runout_in.set(Quantity::new(0.018)),
        clears: |j| j.flexplate.runout_in.set(Quantity::new(0.006)),
    }

    /// Works out how far one planned hold on the brake warms the converter.
    ///
    /// While the brake holds, all engine power turns to heat in a few quarts of fluid. A shorter hold and time
    /// to cool keep it from burning. Source: the energy balance; how far it may warm is the shop's to set.
    "CNV-22" Caution Spec {
        accepts: true,
        title: "Fluid gets too hot when held this long on the brake",
        shop: "On the brake all the engine's power becomes heat, and the planned hold warms the converter too far. \
               Shorten the hold, let it cool between rounds, and fit a cooler and a temperature gauge.",
        customer: Some("If you hold the car this long at the line, the fluid gets too hot. Hold it for less time and \
                        let it cool between rounds. A cooler and a heat gauge help."),
        fix: "Shorten the hold; fit a cooler and a temperature gauge.",
        basis: "Energy balance; the line is a shop setting.",
        numbers: [brake_rise],
        limits: [brake_heat],
        when: |_, d, l| d.brake_rise.above(l.brake_heat),
        fires: |j| held_on_the_brake(j, 650.0, 5000.0, 4.0),
        clears: |j| held_on_the_brake(j, 650.0, 5000.0, 1.5),
    }

    /// Looks for a lockup converter.
    ///
    /// This unit has no circuit that could work the clutch inside it. The converter belongs to another kind of
    /// unit. Source: memory, high.
    "CNV-23" Stop Spec {
        accepts: false,
        title: "This unit has nothing to work a lockup clutch with",
        shop: "This unit has no circuit for a lockup clutch, so the converter is one for another kind of unit. Order \
               a converter without lockup.",
        customer: Some("This converter (the fluid drive behind your engine) is made for another kind of unit. A \
                        different one is needed."),
        fix: "Fit a converter without lockup.",
        basis: "Memory, high.",
        when: |j, _, _| j.converter.lockup.yes(),
        fires: |j| j.converter.lockup.set(true),
        clears: |j| j.converter.lockup.set(false),
    }

    /// Looks for a converter that did not pass the trial fit.
    ///
    /// Input shaft, stator support and pump must all slide in by hand. A converter that does not fit on the bench will
    /// not fit under the car. Source: common practice.
    "CNV-24" Stop Assembly {
        accepts: false,
        title: "Converter does not slide onto these shafts",
        shop: "Try the converter on the input shaft, the stator support and the pump on the bench. It does not go on \
               all of them, so it is the wrong one.",
        customer: None,
        fix: "Fit another converter.",
        basis: "Common practice.",
        when: |j, _, _| j.converter.spline_ok.no(),
        fires: |j| j.converter.spline_ok.set(false),
        clears: |j| j.converter.spline_ok.set(true),
    }

    /// Compares the end play of the crankshaft with the limit.
    ///
    /// A crank that moves this far has a hurt thrust bearing, and whatever pushed it will push again. The cause
    /// comes first: gap, a swollen cover or cooler pressure. Source: memory, medium; the engine maker decides.
    "CNV-25" Caution Delivery {
        accepts: true,
        title: "The crank moves too far lengthwise",
        shop: "The thrust bearing of the crank is already hurt. Before the unit goes in, find out what pushed it: \
               the converter gap, a ballooned cover or pressure in the cooler. The engine maker's figure decides.",
        customer: Some("The bearing that keeps your engine's shaft from moving to and fro is worn. Have that put \
                        right before the unit goes in."),
        fix: "Have the engine seen to first.",
        basis: "Memory, medium; the engine maker's figure decides.",
        limits: [crank_end_play],
        when: |j, _, l| j.engine.crank_end_play_in.above(l.crank_end_play),
        fires: |j| j.engine.crank_end_play_in.set(Quantity::new(0.02)),
        clears: |j| j.engine.crank_end_play_in.set(Quantity::new(0.006)),
    }
}

/// A drag car of this torque, held on the brake for so many seconds at this stall.
fn held_on_the_brake(j: &mut Job, torque: f64, stall: f64, seconds: f64) {
    j.valve_body.brake.set(BrakeKind::External);
    j.valve_body.kind.set(ValveBodyKind::Manual);
    j.usage.kind.set(UseKind::Drag);
    j.usage.road_driven.set(false);
    j.engine.torque_lbft.set(Quantity::new(torque));
    j.converter.rated_torque_lbft.set(Quantity::new(torque));
    j.converter.stall_rpm.set(Quantity::new(stall));
    j.trans_brake.hold_s.set(Quantity::new(seconds));
    j.one_way.elements.set(SPRAG_34);
}
