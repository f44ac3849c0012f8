use super::rules;
use crate::job::{BrakeKind, Connector, Job, Kickdown};
use crate::quantity::Quantity;

rules! {
    /// Looks for a way out of the case for the wire of an inside solenoid.
    ///
    /// The wire runs through the connector that kickdown once used; without one the brake cannot be worked. Choose
    /// the connector with the valve body, not afterwards. Source: common practice.
    "VLV-08" Stop Spec {
        accepts: false,
        title: "The brake solenoid's wire cannot leave this case",
        shop: "The solenoid of this brake gets its current through the old kickdown connector, and this case has none \
               that can be used. Fit a connector.",
        customer: None,
        fix: "Fit a connector in the case.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.valve_body.brake.is(BrakeKind::Internal)
                & j.case.connector.one_of(&[Connector::None, Connector::Blanked])
        },
        fires: |j| {
            inside_brake(j);
            j.case.connector.set(Connector::Blanked);
        },
        clears: |j| {
            inside_brake(j);
            j.case.connector.set(Connector::OneWire);
        },
    }

    /// Finds kickdown and an inside brake on the one connector.
    ///
    /// One connector cannot feed both, and a valve body with a brake has no kickdown to feed. Take the kickdown
    /// wiring off before the brake is wired. Source: common practice, inferred.
    "VLV-09" Stop Spec {
        accepts: false,
        title: "One case connector, and two circuits that need it",
        shop: "The connector cannot serve kickdown and brake at once, and a hand-shifted valve body has no kickdown \
               anyway. Take the kickdown wiring off and give the connector to the brake.",
        customer: Some("The wire for your full-throttle downshift will feed the trans brake instead. With this brake \
                        you shift by hand."),
        fix: "Wire the connector for the brake alone.",
        basis: "Common practice, inferred.",
        when: |j, _, _| j.valve_body.brake.is(BrakeKind::Internal) & j.control.kickdown.is(Kickdown::Electric),
        fires: |j| {
            inside_brake(j);
            j.control.kickdown.set(Kickdown::Electric);
        },
        clears: inside_brake,
    }

    /// Says of an inside solenoid that it is out of sight.
    ///
    /// Solenoids do stick, and this one is found out only with the pan off. Try it wet on the bench while it can
    /// still be reached. Source: common practice.
    "VLV-10" Note Spec {
        accepts: true,
        title: "Brake solenoid can only be reached through the pan",
        shop: "Once the pan is on, nobody can see or test this solenoid, and they do stick. Try it wet on the bench \
               first. Where it has to be reached later, choose the outside kind.",
        customer: Some("The part that works your trans brake sits under the oil pan. To look at it, somebody has to \
                        let the oil out first. A kind that sits outside is easier to reach."),
        fix: "Try the solenoid in fluid on the bench, or choose the kind that sits outside.",
        basis: "Common practice.",
        when: |j, _, _| j.valve_body.brake.is(BrakeKind::Internal),
        fires: inside_brake,
        clears: |j| {
            j.valve_body.brake.set(BrakeKind::External);
            j.case.bridge_lowered.set(true);
        },
    }

    /// Measures the room around an outside solenoid.
    ///
    /// Too close to the exhaust it cooks; too close to floor or shield it is knocked off. Find it at the mock-up,
    /// while things can still be moved. Source: memory, low.
    "VLV-11" Caution Assembly {
        accepts: false,
        title: "Outside solenoid has too little room around it",
        shop: "There is too little room between the solenoid and the floor, the shield or the exhaust. Move what is \
               in the way or fit a heat shield, or it will be cooked or knocked off.",
        customer: Some("The part that works your trans brake sits close to other parts of the car. We will show you \
                        the gap and what can be done."),
        fix: "Make room, or fit a heat shield.",
        basis: "Memory, low.",
        limits: [solenoid_gap],
        when: |j, _, l| {
            j.valve_body.brake.is(BrakeKind::External) & j.trans_brake.solenoid_clear_in.below(l.solenoid_gap)
        },
        fires: |j| {
            j.valve_body.brake.set(BrakeKind::External);
            j.trans_brake.solenoid_clear_in.set(Quantity::new(0.2));
        },
        clears: |j| {
            j.valve_body.brake.set(BrakeKind::External);
            j.trans_brake.solenoid_clear_in.set(Quantity::new(0.8));
        },
    }
}

/// A brake with its solenoid in the pan and the connector to itself.
fn inside_brake(j: &mut Job) {
    j.valve_body.brake.set(BrakeKind::Internal);
    j.control.kickdown.set(Kickdown::None);
}
