use super::rules;
use crate::job::{Bushing, DriveGear, Hub};
use crate::quantity::Quantity;

rules! {
    /// Measures the clearance between the pump gears and the face that closes them in.
    ///
    /// Too tight, the faces score each other; too loose, the pump loses pressure and volume. A tight pump is
    /// lapped or gets other gears, a loose one gets gears or is replaced. Source: public military manual
    /// TM 9-2320-289-34, 0.0008 to 0.0035 in.
    "PMP-01" Stop Teardown {
        accepts: false,
        title: "Pump gears have too little or too much room",
        shop: "By straightedge and feeler, the clearance over the pump gears is out of limits. When it is tight, lap \
               or change the gears; when it is loose, change the gears or the pump.",
        customer: Some("The gears in your oil pump do not fit as they should. The pump would lose pressure or damage \
                        itself, so it gets other gears or is replaced."),
        fix: "Lap or change the gears, or replace the pump.",
        basis: "Public military manual TM 9-2320-289-34, 0.0008 to 0.0035 in.",
        limits: [pump_face_least, pump_face_most],
        when: |j, _, l| j.pump.face_clear_in.below(l.pump_face_least) | j.pump.face_clear_in.above(l.pump_face_most),
        fires: |j| j.pump.face_clear_in.set(Quantity::new(0.005)),
        clears: |j| j.pump.face_clear_in.set(Quantity::new(0.002)),
    }

    /// Looks at the bushing in which the converter's hub runs.
    ///
    /// Worn or out of its place, it leaks at the front and lets the pump gears scuff. A new one walks again
    /// unless the cause is found: runout, the converter's gap or its balance. Source: memory, high.
    "PMP-02" Stop Teardown {
        accepts: false,
        title: "Pump bushing no longer carries the converter hub",
        shop: "Replace the pump bushing and lock it in place. Then find what made it wear or walk: look at the \
               runout, the converter's gap and its balance.",
        customer: Some("A bearing in your oil pump is worn or has moved. We will replace it, and look for what \
                        caused it."),
        fix: "Replace and lock the bushing, and find the cause.",
        basis: "Memory, high.",
        when: |j, _, _| j.pump.bushing.is_not(Bushing::Good),
        fires: |j| j.pump.bushing.set(Bushing::Walked),
        clears: |j| j.pump.bushing.set(Bushing::Good),
    }

    /// Asks whether the two halves of the pump were held in line while they were tightened.
    ///
    /// A clamp or sleeve around both holds them. Out of line, the pump binds on its way into the case, or
    /// cracks. Source: common practice.
    "PMP-03" Stop Assembly {
        accepts: false,
        title: "Pump halves were bolted up without lining them up",
        shop: "Loosen the bolts between the pump halves, hold the halves round with the clamp or sleeve, and tighten \
               again. Out of line, the pump binds on its way into the case, or cracks.",
        customer: None,
        fix: "Align the halves again before their bolts are tightened.",
        basis: "Common practice.",
        when: |j, _, _| j.pump.aligned.no(),
        fires: |j| j.pump.aligned.set(false),
        clears: |j| j.pump.aligned.set(true),
    }

    /// Asks which side of the pump drive gear is up.
    ///
    /// The wrong way, it meets the converter's hub and breaks at bolt-up. Whoever is not sure opens the pump once
    /// more. Source: memory, high.
    "PMP-04" Stop Assembly {
        accepts: false,
        title: "Pump gear lies the wrong way up, or nobody has looked",
        shop: "The drive gear is upside down, or nobody has looked. A gear that lies the wrong way is hit by the \
               converter's hub and breaks. Open the pump once more and look.",
        customer: None,
        fix: "Take the pump apart and lay the drive gear as its marks show.",
        basis: "Memory, high.",
        when: |j, _, _| j.pump.drive_gear.is_not(DriveGear::Correct),
        fires: |j| j.pump.drive_gear.set(DriveGear::UpsideDown),
        clears: |j| j.pump.drive_gear.set(DriveGear::Correct),
    }

    /// Looks for new seals under the heads of the pump bolts.
    ///
    /// A leak there runs down to the front seal and is blamed on it, and the unit comes out again for nothing.
    /// Source: memory, high.
    "PMP-05" Caution Assembly {
        accepts: false,
        title: "Pump bolts without new seals",
        shop: "Put a new sealing washer on every pump bolt. A leak here looks like a leaking front seal, and the unit \
               comes out again for the wrong part.",
        customer: None,
        fix: "Fit new seals to all pump bolts.",
        basis: "Memory, high.",
        when: |j, _, _| j.pump.bolt_seals.no(),
        fires: |j| j.pump.bolt_seals.set(false),
        clears: |j| j.pump.bolt_seals.set(true),
    }

    /// Looks at the hub of the converter where it runs in seal and bushing.
    ///
    /// A grooved hub wears out both in the rebuilt unit. What a fingernail cannot feel may be polished; anything
    /// deeper goes to the converter builder. Source: common practice.
    "PMP-06" Stop Intake {
        accepts: true,
        title: "Converter hub has a groove worn into it",
        shop: "Bushing and seal, both new, would run on that groove and wear out at once. Polish it only while no \
               groove catches a fingernail; beyond that, have the converter rebuilt or replace it.",
        customer: Some("The neck of the big round part at the front of your unit is grooved. It would ruin the new \
                        seal and leak. It must be repaired or replaced."),
        fix: "Repair or replace the converter.",
        basis: "Common practice.",
        when: |j, _, _| j.converter.hub.is_not(Hub::Smooth),
        fires: |j| j.converter.hub.set(Hub::Grooved),
        clears: |j| j.converter.hub.set(Hub::Smooth),
    }
}
