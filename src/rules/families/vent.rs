use super::rules;
use crate::job::{BrakeKind, Cooler, Job, UseKind, VentFitting, VentOutlet, VentPort};

/// Uses that make the fluid foam, or stand in water.
const HARD_ON_THE_VENT: &[UseKind] = &[UseKind::StreetStrip, UseKind::Drag, UseKind::Pull, UseKind::Offroad];

/// A unit for an off-road vehicle with both coolers, as such a vehicle wants them.
fn offroad(j: &mut Job) {
    j.usage.kind.set(UseKind::Offroad);
    j.cooling.cooler.set(Cooler::Both);
}

rules! {
    /// Looks where a drip from an open vent would land.
    ///
    /// Foaming fluid leaves by the vent, hot. On the exhaust it can catch fire under the vehicle, so it is led
    /// away by a hose. The thread for it is cut while the case is bare. Source: common practice; taper pipe
    /// thread is ASME B1.20.1.
    "VNT-01" Stop Spec {
        accepts: true,
        title: "Vent sits where its drips can start a fire",
        shop: "Fluid from this vent lands on the exhaust and can catch fire. Lead it away: tap the vent 1/8-27 taper \
               pipe while the case is bare, and run a fitting and a hose to a place away from heat.",
        customer: Some("Hot fluid can come out of your unit and drip on the exhaust. That can start a fire. It needs a \
                        hose that leads the fluid away."),
        fix: "Tap the vent and run a hose away from the exhaust.",
        basis: "Common practice; standard ASME B1.20.1 for taper pipe thread.",
        when: |j, _, _| j.vehicle.vent_over_exhaust.yes() & j.vent.outlet.is(VentOutlet::Open),
        fires: |j| {
            j.vehicle.vent_over_exhaust.set(true);
            j.vent.outlet.set(VentOutlet::Open);
        },
        clears: |j| {
            j.vehicle.vent_over_exhaust.set(true);
            j.vent.outlet.set(VentOutlet::Hose);
        },
    }

    /// Finds a trans brake on a unit whose vent does not end in a can.
    ///
    /// While the brake holds, the fluid foams and is thrown out of the vent. A can that breathes, mounted higher,
    /// catches it. Source: common practice.
    "VNT-02" Caution Spec {
        accepts: true,
        title: "Brake foam has no can to be caught in",
        shop: "While the brake holds, the fluid foams and is thrown out of the vent. Fit a catch can that is itself \
               vented, higher than the vent.",
        customer: Some("While the trans brake holds your car, fluid can be pushed out of the unit. We advise a small \
                        can that catches it. Some racing classes ask for one."),
        fix: "Lead the vent up into a catch can that can itself breathe.",
        basis: "Common practice.",
        when: |j, _, _| j.valve_body.brake.is_not(BrakeKind::None) & j.vent.outlet.is_not(VentOutlet::CatchCan),
        fires: |j| {
            j.valve_body.brake.set(BrakeKind::External);
            j.vent.outlet.set(VentOutlet::Hose);
        },
        clears: |j| {
            j.valve_body.brake.set(BrakeKind::External);
            j.vent.outlet.set(VentOutlet::CatchCan);
        },
    }

    /// Spots a vent that is still the pressed tube in a unit that will be used hard.
    ///
    /// A threaded vent takes a hose or a can. Cutting the thread is easy in a bare case, and drops chips into a
    /// closed one. Source: common practice.
    "VNT-03" Note Assembly {
        accepts: false,
        title: "Vent could be threaded now, while the unit is apart",
        shop: "The vent is still the pressed tube, and this unit will be used hard. Offer to tap it now: after \
               assembly the chips would fall into the unit.",
        customer: Some("While your unit is apart, we can cut a thread for a hose into its vent. Once it is closed, \
                        metal chips would fall inside."),
        fix: "Offer to tap the vent before the unit is closed.",
        basis: "Common practice.",
        when: |j, _, _| j.vent.port.is(VentPort::FactoryTube) & j.usage.kind.one_of(HARD_ON_THE_VENT),
        fires: |j| {
            offroad(j);
            j.vent.port.set(VentPort::FactoryTube);
        },
        clears: |j| {
            offroad(j);
            j.vent.port.set(VentPort::TappedPipe18);
            j.vent.fitting_angle.set(VentFitting::Angled);
        },
    }

    /// Looks at the angle of the fitting in a tapped vent.
    ///
    /// A fitting that stands straight cannot be reached with a wrench once the unit is in, so it can neither be
    /// tightened nor taken out. Source: common practice.
    "VNT-04" Caution Assembly {
        accepts: false,
        title: "Vent fitting stands where no wrench can turn it",
        shop: "The fitting stands straight, and in the vehicle no wrench will swing on it. Use an elbow, or tap the \
               hole again at a slight angle and wash the case afterwards.",
        customer: None,
        fix: "Use an elbow, or tap the hole again at an angle.",
        basis: "Common practice.",
        when: |j, _, _| j.vent.port.is(VentPort::TappedPipe18) & j.vent.fitting_angle.is(VentFitting::Straight),
        fires: |j| {
            j.vent.port.set(VentPort::TappedPipe18);
            j.vent.fitting_angle.set(VentFitting::Straight);
        },
        clears: |j| {
            j.vent.port.set(VentPort::TappedPipe18);
            j.vent.fitting_angle.set(VentFitting::Angled);
        },
    }

    /// Asks whether air passes through the vent.
    ///
    /// A warm unit has to breathe. With the vent closed, pressure builds up until it pushes the seals out.
    /// Source: TM 9-2320-387-24 checks the breather; memory, high.
    "VNT-05" Stop Assembly {
        accepts: false,
        title: "The unit cannot breathe: its vent is shut",
        shop: "Pressure builds up behind a blocked vent and pushes the seals out. Clear it, and blow through it by \
               mouth through a clean hose to know that it is open.",
        customer: None,
        fix: "Clear the vent.",
        basis: "TM 9-2320-387-24 checks the breather; memory, high.",
        when: |j, _, _| j.vent.blocked.yes(),
        fires: |j| j.vent.blocked.set(true),
        clears: |j| j.vent.blocked.set(false),
    }

    /// Follows the vent hose and looks for a low place.
    ///
    /// Fluid stays in a low loop and closes the hose as surely as a plug. Source: memory, medium.
    "VNT-06" Caution Delivery {
        accepts: false,
        title: "Fluid can collect in a sag of the vent hose",
        shop: "Fluid that collects in the low loop seals the hose, and the unit can no longer breathe. Run the hose \
               again so that it rises all the way to its end.",
        customer: None,
        fix: "Run the hose so that it rises all the way.",
        basis: "Memory, medium.",
        when: |j, _, _| j.vent.line_dips.yes(),
        fires: |j| j.vent.line_dips.set(true),
        clears: |j| j.vent.line_dips.set(false),
    }

    /// Finds a catch can with an open top on a vehicle that is driven on the road.
    ///
    /// Rain and wash water run in and from there towards the unit. A breather with a cover keeps it out; else the
    /// can is drained before events. Source: common practice.
    "VNT-07" Note Delivery {
        accepts: false,
        title: "A can without a lid, on a vehicle used on the road",
        shop: "Rain and wash water get into a can that is open on top. Fit a covered breather, or tell the customer \
               to drain the can before every event.",
        customer: Some("Your catch can is open on top, so rain and wash water can get in. Please drain it before \
                        each event, or ask us for a cover."),
        fix: "Fit a covered breather.",
        basis: "Common practice.",
        when: |j, _, _| j.vent.can_open_top.yes() & j.usage.road_driven.yes(),
        fires: |j| j.vent.can_open_top.set(true),
        clears: |j| j.vent.can_open_top.set(false),
    }

    /// Finds an off-road vehicle whose vent ends open at the case.
    ///
    /// A hot unit that is dipped into water cools, and draws the water in through the vent. Source: common
    /// practice.
    "VNT-08" Caution Spec {
        accepts: true,
        title: "Water can get in through a low vent without a hose",
        shop: "In a water crossing the hot unit cools and draws water in through its open vent. Run a hose from the \
               vent to a high point.",
        customer: Some("In deep water your unit cools down and sucks water in at its vent. A hose that ends high up \
                        helps to keep the water out."),
        fix: "Run the vent hose to a high point.",
        basis: "Common practice.",
        when: |j, _, _| j.usage.kind.is(UseKind::Offroad) & j.vent.outlet.is(VentOutlet::Open),
        fires: |j| {
            offroad(j);
            j.vent.outlet.set(VentOutlet::Open);
        },
        clears: |j| {
            offroad(j);
            j.vent.outlet.set(VentOutlet::Hose);
        },
    }

    /// Asks whether the drain of the catch can is protected.
    ///
    /// A unit that is carried by itself rests on it, and it is knocked off. Source: common practice.
    "VNT-09" Note Delivery {
        accepts: false,
        title: "First bump can take the drain off the catch can",
        shop: "Carried or shipped by itself, the unit rests on whatever is lowest, and here that is the drain of the \
               can. Box it in for the trip, or take the can off and send it along loose.",
        customer: Some("To move your unit, we guard the drain of your catch can or take the can off. If it came off, \
                        please put it back before you drive."),
        fix: "Guard the drain, or send the can along loose.",
        basis: "Common practice.",
        when: |j, _, _| j.vent.outlet.is(VentOutlet::CatchCan) & j.vent.can_drain_guarded.no(),
        fires: |j| {
            j.vent.outlet.set(VentOutlet::CatchCan);
            j.vent.can_drain_guarded.set(false);
        },
        clears: |j| {
            j.vent.outlet.set(VentOutlet::CatchCan);
            j.vent.can_drain_guarded.set(true);
        },
    }
}
