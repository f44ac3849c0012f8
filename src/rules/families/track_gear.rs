use super::rules;
use crate::job::{BrakeKind, Job, ParkPawl, ShieldKind, ShifterKind, UseKind, ValveBodyKind, VentOutlet, Year};
use crate::quantity::Quantity;
use crate::rules::examples::{raced_with_gear, slower_with_gear};
use crate::rules::parts::SPRAG_34;
use jiff::civil::date;

rules! {
    /// Looks for a trans brake in a class that forbids it.
    ///
    /// Built all the same, the car cannot run, and the valve body was bought for nothing. Settle it before parts are
    /// ordered: another valve body, or another class. Source: the shop's class table; some pulling classes forbid
    /// it (looked up).
    "SFT-09" Stop Spec {
        accepts: true,
        title: "Trans brake in a class that races without one",
        shop: "By its class table this car races without a trans brake, and one is planned. Choose a valve body \
               without a brake, or settle with the customer on another class, before parts are ordered.",
        customer: Some("Your class rules out a trans brake (it holds the car still under power). Please choose a build \
                        without it, or another class. The official decides."),
        fix: "Build without the brake, or change the class.",
        basis: "The shop's class table; some pulling classes forbid it (looked up).",
        when: |j, _, _| {
            j.usage.raced.yes() & j.valve_body.brake.is_not(BrakeKind::None) & j.class_table.brake_allowed.no()
        },
        fires: |j| {
            raced_on_the_brake(j);
            j.class_table.brake_allowed.set(false);
        },
        clears: raced_on_the_brake,
    }

    /// Looks for an aftermarket floor shifter that lets the lever slide into reverse.
    ///
    /// A hurried hand in reverse at speed throws the vehicle and wrecks the unit. A lockout makes reverse a movement
    /// that has to be meant. Source: rulebooks looked up.
    "SFT-10" Stop Intake {
        accepts: true,
        title: "Floor shifter has no lockout before reverse",
        shop: "Nothing keeps the lever of this aftermarket floor shifter out of reverse. Fit a lockout, or a shifter \
               that has one, and try it with the engine off before anybody drives.",
        customer: Some("Nothing stops the lever of your shifter from going into reverse by mistake. It needs a lock \
                        that prevents this. Please have it fitted first."),
        fix: "Fit a reverse lockout.",
        basis: "Rulebooks looked up.",
        when: |j, _, _| j.shifter.kind.is(ShifterKind::FloorAftermarket) & j.shifter.reverse_lockout.no(),
        fires: |j| {
            j.shifter.kind.set(ShifterKind::FloorAftermarket);
            j.shifter.reverse_lockout.set(false);
        },
        clears: |j| {
            j.shifter.kind.set(ShifterKind::FloorAftermarket);
            j.shifter.reverse_lockout.set(true);
        },
    }

    /// Looks for an engine that can be cranked with a gear in.
    ///
    /// The vehicle jumps off and can run somebody over, in the shop as well as in the pits. Until the switch works,
    /// chock the wheels and crank in park or neutral only. Source: rulebooks looked up.
    "SFT-11" Stop Intake {
        accepts: true,
        title: "Engine cranks with a gear in",
        shop: "The engine can be cranked in gear, so the vehicle can jump off and hurt somebody. Fit or mend the \
               neutral switch. Until then chock the wheels, hold the brake, and crank in park or neutral only.",
        customer: Some("Your engine can be started while it is in gear. The car could jump and hurt somebody, so this \
                        must be fixed first."),
        fix: "Fit or mend the neutral switch.",
        basis: "Rulebooks looked up.",
        when: |j, _, _| j.shifter.neutral_switch.no(),
        fires: |j| j.shifter.neutral_switch.set(false),
        clears: |j| j.shifter.neutral_switch.set(true),
    }

    /// Looks for a race car whose class asks for a driveshaft loop and that has none.
    ///
    /// A shaft that comes loose at the front is a danger to whoever sits above it, and without the loop the car is
    /// not let run. Have the loop in before the car is handed over. Source: the shop's class table.
    "SFT-12" Stop Delivery {
        accepts: true,
        title: "Class asks for a driveshaft loop and there is none",
        shop: "At this time on these tires the class table asks for a loop around the driveshaft, and none is fitted. \
               Fit one near the front joint before the car leaves, and check the current rulebook.",
        customer: Some("The way you plan to run, your class asks for a steel loop around the driveshaft. Your car has \
                        none. Please have one fitted before you run."),
        fix: "Fit a driveshaft loop.",
        basis: "The shop's class table.",
        numbers: [need_loop],
        when: |j, d, _| d.need_loop.yes() & j.driveshaft.loop_fitted.no(),
        fires: |j| {
            raced_with_gear(j);
            j.driveshaft.loop_fitted.set(false);
            j.driveshaft.loop_distance_in.forget();
        },
        clears: raced_with_gear,
    }

    /// Measures how far behind the front joint the driveshaft loop sits.
    ///
    /// Too far back, it leaves a loose shaft room to swing, and an inspector will say so. Move it forward to where
    /// the current rulebook wants it. Source: a rulebook looked up (152 mm).
    "SFT-13" Stop Delivery {
        accepts: false,
        title: "Loop is too far from the front joint to hold the shaft",
        shop: "The loop sits farther behind the center of the front joint than the limit allows. Move it forward, \
               measure again with a tape, and compare with the figure in the current rulebook.",
        customer: Some("The steel loop around your driveshaft sits too far back. It must move closer to the front end \
                        of the shaft."),
        fix: "Move the loop forward, toward the front joint.",
        basis: "A rulebook looked up (152 mm).",
        limits: [loop_distance],
        when: |j, _, l| j.driveshaft.loop_fitted.yes() & j.driveshaft.loop_distance_in.above(l.loop_distance),
        fires: |j| {
            raced_with_gear(j);
            j.driveshaft.loop_distance_in.set(Quantity::new(9.0));
        },
        clears: |j| {
            raced_with_gear(j);
            j.driveshaft.loop_distance_in.set(Quantity::new(5.0));
        },
    }

    /// Looks for a trans brake without a shield where no class asks for one.
    ///
    /// The brake loads the unit to its utmost at standstill, and the driver sits beside a thin case. A shield is good
    /// advice all the same; the customer decides and says so. Source: common practice.
    "SFT-14" Caution Spec {
        accepts: true,
        title: "Trans brake and no shield, though none is asked for",
        shop: "No class asks for a shield here, but the case is thin and sits beside the driver's legs. With a trans \
               brake recommend a shield anyway, and have the customer say if they go without.",
        customer: Some("The case is thin and sits beside your legs. With the brake you chose we advise a shield, even \
                        where no rule asks for one. You may go without it."),
        fix: "Fit a shield, or have it accepted in writing that there is none.",
        basis: "Common practice.",
        numbers: [need_shield],
        when: |j, d, _| {
            j.valve_body.brake.is_not(BrakeKind::None) & j.shield.kind.is(ShieldKind::None) & d.need_shield.no()
        },
        fires: |j| {
            j.valve_body.kind.set(ValveBodyKind::Manual);
            j.valve_body.brake.set(BrakeKind::External);
            j.usage.kind.set(UseKind::Drag);
            j.usage.road_driven.set(false);
            j.one_way.elements.set(SPRAG_34);
            j.vent.outlet.set(VentOutlet::CatchCan);
        },
        clears: |j| j.valve_body.brake.set(BrakeKind::None),
    }

    /// Compares the year of the class table with the year of the event.
    ///
    /// An older book may ask for less than the new one. Read the current book, ask the official, and type the table
    /// anew. Source: common practice.
    "SFT-15" Caution Spec {
        accepts: true,
        title: "Class rules were typed from an earlier year's book",
        shop: "The class table was typed from an older rulebook than that of the event's year, so what it asks for may \
               have changed. Read the current book, ask the official, and type a table for that year.",
        customer: Some("The class rules we worked from are older than your event. They may say something else by now. \
                        Please ask the official what counts this year."),
        fix: "Type the class table from the book of the event's year.",
        basis: "Common practice.",
        numbers: [event_year],
        when: |j, d, _| j.usage.raced.yes() & j.class_table.year.less_than(&d.event_year),
        fires: |j| {
            raced_with_gear(j);
            j.class_table.year.set(Year(2026));
        },
        clears: raced_with_gear,
    }

    /// Measures the smallest gap between the shield and what is around it.
    ///
    /// Where it touches it rubs through, rattles and carries heat. Move the exhaust, never the shield's own metal.
    /// Source: shop setting.
    "SFT-16" Caution Assembly {
        accepts: false,
        title: "Too little room around the shield",
        shop: "At mock-up the shield has less room than the limit to exhaust, floor or solenoid; it would rub, rattle \
               and carry heat. Move the exhaust or the other part. Do not cut or bend the shield.",
        customer: None,
        fix: "Move the exhaust or whatever else is too close.",
        basis: "Shop setting.",
        limits: [shield_gap],
        when: |j, _, l| j.shield.kind.is_not(ShieldKind::None) & j.shield.clear_in.below(l.shield_gap),
        fires: |j| {
            raced_with_gear(j);
            j.shield.clear_in.set(Quantity::new(0.1));
        },
        clears: |j| {
            raced_with_gear(j);
            j.shield.clear_in.set(Quantity::new(0.5));
        },
    }

    /// Looks for a vehicle that is driven on the road and whose park does not hold.
    ///
    /// Left alone on a slope it rolls away. It must not go on the road until pawl, rod and what they work on hold.
    /// Source: common practice.
    "SFT-17" Stop Delivery {
        accepts: true,
        title: "Vehicle can roll away in park",
        shop: "Park does not hold, so the vehicle can roll away when it is left alone. It does not go on the road like \
               this. Mend or replace the pawl or its rod, and try it on a slope with the wheels chocked.",
        customer: Some("Park does not hold your car. It could roll away, so park must be mended before you drive on \
                        the road."),
        fix: "Repair the park pawl or its rod.",
        basis: "Common practice.",
        when: |j, _, _| j.case.park_pawl.is_not(ParkPawl::Works) & j.usage.road_driven.yes(),
        fires: |j| j.case.park_pawl.set(ParkPawl::Removed),
        clears: |j| j.case.park_pawl.set(ParkPawl::Works),
    }

    /// Notes a shield that is out of date in a car whose class asks for none.
    ///
    /// It may stay on for what protection it gives; nobody should take it later for one in date. Its date goes on the
    /// summary. Source: common practice, inferred.
    "SFT-18" Note Delivery {
        accepts: true,
        title: "Shield nobody asks for is out of date",
        shop: "The class table asks for no shield here, so one that is out of date may stay on; it still stops \
               something. Put its date on the summary, or somebody will one day take it for a current one.",
        customer: Some("The label on your shield runs out before your event. By our table your class asks for no \
                        shield, so you may leave it on. It still helps to protect you."),
        fix: "Nothing has to be done; have it certified again if wanted.",
        basis: "Common practice, inferred.",
        numbers: [need_shield],
        when: |j, d, _| {
            j.shield.kind.is_not(ShieldKind::None) & d.need_shield.no() & j.shield.expires.less_than(&j.event.date)
        },
        fires: |j| {
            slower_with_gear(j);
            j.shield.expires.set(date(2026, 1, 1));
        },
        clears: slower_with_gear,
    }
}

/// The car with all its gear, on a trans brake.
fn raced_on_the_brake(j: &mut Job) {
    raced_with_gear(j);
    j.valve_body.kind.set(ValveBodyKind::Manual);
    j.valve_body.brake.set(BrakeKind::External);
}
