use super::rules;
use crate::job::{BrakeKind, Job, Kickdown, PanDepth, ShieldKind, StickKind, UseKind, Year};
use crate::quantity::Quantity;
use crate::rules::Truth;
use jiff::civil::{Date, date};

/// Was the part made for another pan than the one it goes with?
fn for_another_pan(j: &Job, part: impl Fn(PanDepth) -> Truth) -> Truth {
    (j.pan.depth.is(PanDepth::Deep) & part(PanDepth::Shallow))
        | (j.pan.depth.is(PanDepth::Shallow) & part(PanDepth::Deep))
}

/// A shallow pan with the tube and the bolt that belong to it.
fn shallow_set(j: &mut Job) {
    j.pan.depth.set(PanDepth::Shallow);
    j.pan.filter_tube.set(PanDepth::Shallow);
    j.pan.filter_bolt.set(PanDepth::Shallow);
}

/// A steel shell around the case, with all its bolts, in date until then.
fn shielded(j: &mut Job, expires: Date, bolts: u32) {
    j.shield.kind.set(ShieldKind::Rigid);
    j.shield.expires.set(expires);
    j.shield.bolts_needed.set(bolts);
    j.shield.bolts_available.set(bolts);
}

/// A car raced on that day in an invented class, which asks for its safety gear from these times and speeds on.
fn raced(j: &mut Job, day: Date, gear_s: f64, gear_mph: f64) {
    j.usage.raced.set(true);
    j.event.date.set(day);
    j.class_table.year.set(Year(day.year()));
    j.class_table.brake_allowed.set(true);
    j.class_table.shield_always.set(false);
    j.class_table.shield_with_brake.set(false);
    for timed in [
        &mut j.class_table.shield_s,
        &mut j.class_table.flexplate_s,
        &mut j.class_table.loop_slick_s,
        &mut j.class_table.loop_street_s,
    ] {
        timed.set(Quantity::new(gear_s));
    }
    j.class_table.shield_mph.set(Quantity::new(gear_mph));
    j.class_table.flexplate_mph.set(Quantity::new(gear_mph));
}

rules! {
    /// Compares the filter tube with the depth of the pan.
    ///
    /// Too short, the pickup draws air; too long, the floor of the pan presses it flat. Whoever changes one changes
    /// the other. Source: common practice.
    "PAN-01" Stop Assembly {
        accepts: false,
        title: "Filter pickup is the wrong length for this pan",
        shop: "The pickup either ends above the fluid, where it draws air, or it is pressed flat on the floor of the \
               pan. Fit the tube that belongs to this pan.",
        customer: Some("The oil pan and the tube that sucks oil from it must be a pair, and here they are not. We \
                        will use the right tube."),
        fix: "Fit the tube that belongs to the pan.",
        basis: "Common practice.",
        when: |j, _, _| for_another_pan(j, |depth| j.pan.filter_tube.is(depth)),
        fires: |j| {
            j.pan.depth.set(PanDepth::Deep);
            j.pan.filter_tube.set(PanDepth::Shallow);
        },
        clears: |j| {
            j.pan.depth.set(PanDepth::Deep);
            j.pan.filter_tube.set(PanDepth::Deep);
        },
    }

    /// Compares the filter bolt and its spacer with the depth of the pan.
    ///
    /// Each depth of pan has a tube and a bolt of its own. The wrong bolt leaves the filter loose or crushes it.
    /// Source: common practice.
    "PAN-02" Stop Assembly {
        accepts: false,
        title: "Filter is not bolted at the height this pan needs",
        shop: "Whoever changes the pan changes its tube and its bolt with spacer as well. This bolt is the other \
               pan's: the filter would hang loose on it or be crushed.",
        customer: Some("The bolt that holds the oil filter was made for another pan than yours. We will use the one \
                        that belongs to it."),
        fix: "Fit the bolt and spacer that belong to the pan.",
        basis: "Common practice.",
        when: |j, _, _| for_another_pan(j, |depth| j.pan.filter_bolt.is(depth)),
        fires: |j| {
            j.pan.depth.set(PanDepth::Deep);
            j.pan.filter_bolt.set(PanDepth::Shallow);
        },
        clears: shallow_set,
    }

    /// Asks for the O-ring on the filter tube.
    ///
    /// Where it is missing the pump draws air, and the unit makes no pressure. Source: memory, high.
    "PAN-03" Stop Assembly {
        accepts: false,
        title: "O-ring of the filter tube is missing",
        shop: "Without its O-ring the tube lets the pump draw air, and the unit makes no pressure. Fit a new ring, \
               oiled, and feel it drag as the tube goes in.",
        customer: None,
        fix: "Fit a new, oiled O-ring.",
        basis: "Memory, high.",
        when: |j, _, _| j.pan.intake_o_ring.no(),
        fires: |j| j.pan.intake_o_ring.set(false),
        clears: |j| j.pan.intake_o_ring.set(true),
    }

    /// Holds the height of the pan above the ground against what the use needs.
    ///
    /// Rocks and bumps find a low pan first; off the road it takes more room than on it. Source: shop setting.
    "PAN-04" Caution Spec {
        accepts: true,
        title: "The pan is the lowest thing under the vehicle",
        shop: "The pan is closer to the ground than the shop likes for this use, and would be hit. Fit a skid plate, \
               or a shallower pan with its own tube and bolt.",
        customer: Some("The oil pan under your unit is the lowest part of it. A rock or a bump can break it. We advise \
                        a guard plate under it, or a pan that is less deep."),
        fix: "Fit a skid plate or a shallower pan.",
        basis: "Shop setting.",
        limits: [pan_ground_offroad, pan_ground_road],
        when: |j, _, l| {
            (j.usage.kind.is(UseKind::Offroad) & j.pan.ground_in.below(l.pan_ground_offroad))
                | (j.usage.kind.is_not(UseKind::Offroad)
                    & j.usage.road_driven.yes()
                    & j.pan.ground_in.below(l.pan_ground_road))
        },
        fires: |j| j.pan.ground_in.set(Quantity::new(3.5)),
        clears: |j| j.pan.ground_in.set(Quantity::new(6.0)),
    }

    /// Finds a trans brake whose solenoid has no room in the pan.
    ///
    /// Inside a shallow pan the solenoid fouls the pan or the filter. Source: memory, low.
    "PAN-05" Stop Spec {
        accepts: false,
        title: "No room for a brake solenoid above this pan",
        shop: "The solenoid of this brake sits inside and fouls a shallow pan or its filter. Change to the deep pan, \
               with the tube and the bolt that belong to it.",
        customer: Some("The trans brake sits inside your unit and needs more room than this oil pan has. It takes \
                        the deeper pan."),
        fix: "Fit the deep pan with its tube and bolt.",
        basis: "Memory, low.",
        when: |j, _, _| j.valve_body.brake.is(BrakeKind::Internal) & j.pan.depth.is(PanDepth::Shallow),
        fires: |j| {
            j.valve_body.brake.set(BrakeKind::Internal);
            j.control.kickdown.set(Kickdown::None);
            shallow_set(j);
        },
        clears: |j| {
            j.valve_body.brake.set(BrakeKind::Internal);
            j.control.kickdown.set(Kickdown::None);
            j.pan.depth.set(PanDepth::Deep);
        },
    }

    /// Asks whether dipstick tube and shield pass each other uncut.
    ///
    /// Neither may be cut to make room: a certified shield must stay as it was made. The tube is what gets
    /// exchanged.
    /// Source: common practice; rulebooks say that certified parts may not be altered.
    "PAN-06" Stop Spec {
        accepts: false,
        title: "Shield and dipstick tube are in each other's way",
        shop: "Tube and shield want the same room, and neither is cut to make any. Look for a tube with its bracket as \
               close to the bell bolt as you can get it.",
        customer: Some("The tube of your dipstick does not get past your shield. Nobody cuts into a shield, so we look \
                        for another tube."),
        fix: "Find another dipstick tube.",
        basis: "Common practice; rulebooks say that certified parts may not be altered.",
        when: |j, _, _| j.shield.kind.is_not(ShieldKind::None) & j.stick.clears_shield.no(),
        fires: |j| {
            shielded(j, date(2029, 1, 1), 4);
            j.event.date.set(date(2027, 5, 1));
            j.shield.clear_in.set(Quantity::new(0.5));
            j.stick.clears_shield.set(false);
        },
        clears: |j| {
            shielded(j, date(2029, 1, 1), 4);
            j.event.date.set(date(2027, 5, 1));
            j.stick.clears_shield.set(true);
        },
    }

    /// Compares the dipstick with what the class asks for at the pass that is planned.
    ///
    /// A stick that blows out puts fluid under the tires, so fast classes want one that locks. The class table is the
    /// shop's; what counts is this year's rulebook, as the official reads it. Source: common practice; the shop's
    /// class table.
    "PAN-07" Stop Spec {
        accepts: true,
        title: "Class asks for a dipstick that locks",
        shop: "At this pass the class table asks for a locking dipstick, and this one does not lock. Fit one that \
               does. What counts in the end is this year's rulebook, as the official at the track reads it.",
        customer: Some("At the time you plan to run, your racing class asks for a dipstick that locks. Yours does not, \
                        so it needs another. The official at the track decides."),
        fix: "Fit a locking dipstick.",
        basis: "Common practice; the shop's class table.",
        numbers: [need_locking_stick],
        when: |j, d, _| d.need_locking_stick.yes() & j.stick.locks.no(),
        fires: |j| {
            raced(j, date(2027, 5, 1), 9.0, 150.0);
            j.class_table.stick_s.set(Quantity::new(10.99));
            j.event.quarter_mile_s.set(Quantity::new(10.5));
            j.event.trap_mph.set(Quantity::new(126.0));
            j.stick.locks.set(false);
        },
        clears: |j| {
            raced(j, date(2027, 5, 1), 9.0, 150.0);
            j.class_table.stick_s.set(Quantity::new(10.99));
            j.event.quarter_mile_s.set(Quantity::new(12.5));
            j.event.trap_mph.set(Quantity::new(108.0));
            j.stick.locks.set(false);
        },
    }

    /// Asks what holds the dipstick tube in the case.
    ///
    /// Pressure blows out a tube that is only pushed in, and hot fluid sprays after it. Source: common practice.
    "PAN-08" Caution Spec {
        accepts: false,
        title: "Nothing keeps the dipstick tube in its hole",
        shop: "Pressure in the case blows out a tube that is only pushed in. Bolt its bracket on, or give it a stop \
               that holds it.",
        customer: Some("The tube of your dipstick is only pushed in and could come out, with hot fluid behind it. It \
                        needs a bracket that holds it."),
        fix: "Bolt on a bracket or fit a positive stop.",
        basis: "Common practice.",
        when: |j, _, _| j.stick.retained.no(),
        fires: |j| j.stick.retained.set(false),
        clears: |j| j.stick.retained.set(true),
    }

    /// Asks whether the full mark of the dipstick was checked on the bench.
    ///
    /// A stick from elsewhere shows a wrong level for as long as the unit runs. Source: memory, medium.
    "PAN-09" Caution Assembly {
        accepts: false,
        title: "Full mark of the dipstick is not checked",
        shop: "This stick may show a wrong level for as long as the unit runs. Hold it in its tube on the bench, compare \
               the full mark with the pan rail, and mark it again if it is off.",
        customer: None,
        fix: "Check the full mark and mark the stick again.",
        basis: "Memory, medium.",
        when: |j, _, _| j.stick.matches.no(),
        fires: |j| j.stick.matches.set(false),
        clears: |j| j.stick.matches.set(true),
    }

    /// Notes a fill tube of braided hose.
    ///
    /// Its bore is narrow: filling is slow and takes a special funnel, at the track too. It is screwed to the
    /// firewall. Source: common practice.
    "PAN-10" Note Spec {
        accepts: true,
        title: "The fill tube is a flexible one",
        shop: "A flexible tube has a narrow bore: it fills slowly, takes a special funnel at the track, and wants \
               screws in the firewall. A steel tube does without all that.",
        customer: Some("This kind of fill tube is narrow and slow. You will need its small funnel each time you add \
                        fluid."),
        fix: "Accept the funnel, or fit a steel tube.",
        basis: "Common practice.",
        when: |j, _, _| j.stick.kind.is(StickKind::Flexible),
        fires: |j| j.stick.kind.set(StickKind::Flexible),
        clears: |j| j.stick.kind.set(StickKind::Rigid),
    }
}
