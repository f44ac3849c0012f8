use super::rules;
use crate::job::{BrakeKind, Cooler, Fitted, Job, Modulator, ShiftOrder, UseKind, ValveBodyKind};
use crate::quantity::Quantity;

rules! {
    /// Finds shifting by hand on a vehicle that works or goes to work.
    ///
    /// The driver must think of every shift, and whoever forgets one stays in low. Say so while the choice is still
    /// open. Source: common practice.
    "VLV-22" Caution Spec {
        accepts: true,
        title: "A working vehicle that has to be shifted by hand",
        shop: "The driver has to make every shift, and one who forgets stays in low. Ask whether that is really \
               wanted here; an automatic valve body is the other choice.",
        customer: Some("This unit never shifts by itself. Every shift is yours to make, and if you forget, it stays in \
                        low gear."),
        fix: "Fit an automatic valve body.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.valve_body.kind.is(ValveBodyKind::Manual)
                & j.usage.kind.one_of(&[UseKind::Tow, UseKind::Street, UseKind::Offroad])
        },
        fires: |j| {
            tow(j);
            j.valve_body.kind.set(ValveBodyKind::Manual);
            j.control.governor.set(Fitted::Removed);
            j.control.modulator.set(Modulator::RemovedPlugged);
        },
        clears: tow,
    }

    /// Finds a trans brake on a vehicle that tows, works or leaves the road.
    ///
    /// One push on its button locks the driveline, whatever the vehicle is doing and pulling. Leave it out. If the
    /// customer insists, it takes a control that is dead while the vehicle moves, and a signature. Source: common
    /// practice.
    "VLV-23" Stop Spec {
        accepts: true,
        title: "This vehicle's work has no place for a trans brake",
        shop: "One touch of the button stops the wheels while a load pushes from behind, and that can hurt people. \
               Leave the brake out. If it has to be, its control must be dead while the vehicle moves, and the \
               customer signs for it.",
        customer: Some("A trans brake holds the wheels still. Set off at the wrong moment, it can throw this vehicle \
                        off the road and hurt people. We advise you not to have one."),
        fix: "Build it without a trans brake.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.valve_body.brake.is_not(BrakeKind::None) & j.usage.kind.one_of(&[UseKind::Tow, UseKind::Offroad])
        },
        fires: |j| {
            tow(j);
            outside_brake(j);
        },
        clears: |j| {
            outside_brake(j);
            j.usage.kind.set(UseKind::Drag);
            j.usage.road_driven.set(false);
        },
    }

    /// Compares the order of the shifter's gate with that of the valve body.
    ///
    /// Mixed, the driver pulls low where he wants high. Nobody can learn to live with that; one of the two has to be
    /// exchanged. Source: memory, high.
    "VLV-24" Stop Spec {
        accepts: false,
        title: "Shifter and valve body have different shift orders",
        shop: "The gate of the shifter is of one order and the valve body of the other, so the driver reaches for high \
               and gets low. Exchange one of the two.",
        customer: Some("Your shifter is made for the other shift order. You could get low gear when you want high, so \
                        it must be changed to match."),
        fix: "Fit a gate of the same order as the valve body.",
        basis: "Memory, high.",
        when: |j, _, _| j.shifter.pattern.differs_from(&j.valve_body.pattern),
        fires: |j| {
            j.valve_body.pattern.set(ShiftOrder::Reverse);
            j.shifter.pattern.set(ShiftOrder::Forward);
        },
        clears: |j| {
            j.valve_body.pattern.set(ShiftOrder::Reverse);
            j.shifter.pattern.set(ShiftOrder::Reverse);
        },
    }

    /// Looks for the relay that carries the current of the brake's coil.
    ///
    /// Without it the contacts of the button carry the coil, and they burn. Fit a relay and a fuse. Source: common
    /// practice, 12-gauge feed.
    "VLV-25" Caution Delivery {
        accepts: false,
        title: "Full solenoid current runs through the button",
        shop: "The contacts of the button carry the whole current of the coil and will burn. Fit a relay and a fuse, \
               and feed them with 12-gauge wire.",
        customer: Some("Your trans brake needs a relay (a switch for strong current) and a fuse. Without them your \
                        button will burn."),
        fix: "Fit a relay and a fuse.",
        basis: "Common practice.",
        when: |j, _, _| j.valve_body.brake.is_not(BrakeKind::None) & j.trans_brake.relay.no(),
        fires: |j| {
            outside_brake(j);
            j.trans_brake.relay.set(false);
        },
        clears: |j| {
            outside_brake(j);
            j.trans_brake.relay.set(true);
        },
    }

    /// Reads the voltage at the solenoid while the brake is on.
    ///
    /// A weak solenoid lets the car creep and lets go slowly. The feed or the ground is to blame; put it right
    /// before the car leaves the line on it. Source: memory, low.
    "VLV-26" Caution Test {
        accepts: false,
        title: "Brake solenoid gets too few volts to hold",
        shop: "With this little voltage at the solenoid while it is applied, the car creeps and the brake lets go \
               slowly. Mend the feed and the ground, and measure again with the wheels chocked.",
        customer: Some("Your trans brake gets too little power. The car could creep at the line, so the wires need to \
                        be made better."),
        fix: "Mend the feed and the ground of the solenoid.",
        basis: "Memory, low.",
        limits: [brake_volts],
        when: |j, _, l| j.valve_body.brake.is_not(BrakeKind::None) & j.trans_brake.volts.below(l.brake_volts),
        fires: |j| {
            outside_brake(j);
            j.trans_brake.volts.set(Quantity::new(10.4));
        },
        clears: |j| {
            outside_brake(j);
            j.trans_brake.volts.set(Quantity::new(12.6));
        },
    }

    /// Looks for the lock that keeps a trans brake off while the car rolls on the road.
    ///
    /// An elbow on the button stops the driveline and the rear wheels with it. A switch that allows the brake in first
    /// gear only, and a guard over the button, keep that from happening. Source: common practice.
    "VLV-27" Stop Delivery {
        accepts: true,
        title: "The trans brake can lock the wheels while it rolls",
        shop: "An elbow on the button would stop the rear wheels at full speed. The car leaves for the road only with \
               an interlock: a first-gear switch, and a guard over the button.",
        customer: Some("If somebody hits the trans brake button while you drive, your rear wheels stop dead. The car \
                        needs an interlock (a switch that rules this out) first."),
        fix: "Fit a first-gear switch and a guarded button.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.valve_body.brake.is_not(BrakeKind::None) & j.usage.road_driven.yes() & j.trans_brake.speed_lock.no()
        },
        fires: |j| {
            outside_brake(j);
            j.trans_brake.speed_lock.set(false);
        },
        clears: |j| {
            outside_brake(j);
            j.trans_brake.speed_lock.set(true);
        },
    }
}

/// A vehicle that tows, well cooled.
fn tow(j: &mut Job) {
    j.usage.kind.set(UseKind::Tow);
    j.cooling.cooler.set(Cooler::Both);
}

/// A hand-shifted valve body with its brake solenoid outside.
fn outside_brake(j: &mut Job) {
    j.valve_body.kind.set(ValveBodyKind::Manual);
    j.valve_body.brake.set(BrakeKind::External);
    j.case.bridge_lowered.set(true);
}
