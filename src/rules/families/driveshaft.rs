use super::rules;
use crate::job::{OutputEnd, ParkDrum, YokeKind};
use crate::quantity::Quantity;

/// Yokes that slide on the output shaft.
const SLIP_YOKES: &[YokeKind] = &[YokeKind::Slip, YokeKind::SlipRecessed];

rules! {
    /// Measures a slip yoke that is too tight in the tail bushing.
    ///
    /// A tight yoke heats, seizes, and pushes the bushing out. Honing to fit is normal, with the customer's own
    /// yoke in hand and before the shaft goes in. Source: common practice for honing; the limit is memory, low.
    "OUT-11" Stop Assembly {
        accepts: false,
        title: "Yoke binds in the tail bushing",
        shop: "The yoke has too little clearance in the tail bushing and would seize when hot. Hone the bushing to \
               this yoke before the output shaft goes in, wash out the grit, and never force it.",
        customer: None,
        fix: "Hone the bushing to the yoke.",
        basis: "Common practice for honing; the limit is memory, low.",
        limits: [yoke_clear_least],
        when: |j, _, l| j.yoke.clear_in.below(l.yoke_clear_least),
        fires: |j| j.yoke.clear_in.set(Quantity::new(0.0005)),
        clears: |j| j.yoke.clear_in.set(Quantity::new(0.003)),
    }

    /// Measures a slip yoke that is loose in the tail bushing.
    ///
    /// A loose yoke shakes, beats the seal open and leaks. Source: memory, low.
    "OUT-12" Caution Assembly {
        accepts: false,
        title: "Rear seal will leak round a wobbling yoke",
        shop: "The yoke has too much clearance in the tail bushing. Expect a leak at the rear seal and a shake at \
               speed. Renew the bushing, or the yoke if its surface is worn.",
        customer: None,
        fix: "Renew the bushing or the yoke.",
        basis: "Memory, low.",
        limits: [yoke_clear_most],
        when: |j, _, l| j.yoke.clear_in.above(l.yoke_clear_most),
        fires: |j| j.yoke.clear_in.set(Quantity::new(0.009)),
        clears: |j| j.yoke.clear_in.set(Quantity::new(0.004)),
    }

    /// Measures how much spline stays engaged when the axle hangs.
    ///
    /// A slip yoke that runs off its spline drops the front of the driveshaft onto the road. Source: common
    /// practice; the number is memory, low.
    "OUT-13" Stop Delivery {
        accepts: false,
        title: "Too little spline engaged with the axle hanging",
        shop: "With the axle at full droop too little spline is left in the yoke, and the shaft can come out. Have \
               the driveshaft made longer, or fit a longer yoke, and measure again at droop.",
        customer: Some("When your axle hangs down, the driveshaft could come out of the unit. That is a danger on \
                        the road, so the shaft must be made longer."),
        fix: "Have a longer driveshaft made, or fit a longer yoke.",
        basis: "Common practice; the number is memory, low.",
        limits: [droop_engaged],
        when: |j, _, l| j.yoke.kind.one_of(SLIP_YOKES) & j.yoke.engaged_droop_in.below(l.droop_engaged),
        fires: |j| j.yoke.engaged_droop_in.set(Quantity::new(1.2)),
        clears: |j| j.yoke.engaged_droop_in.set(Quantity::new(2.5)),
    }

    /// Measures the room left in front of the slip yoke with the axle fully up.
    ///
    /// A yoke that bottoms drives the output shaft into the unit. At ride height 0.75 to 1.0 in is wanted.
    /// Source: common practice.
    "OUT-14" Stop Delivery {
        accepts: false,
        title: "Yoke can bottom when the axle comes up",
        shop: "At full bump the yoke has too little room and would ram the output shaft into the unit. Have the \
               driveshaft shortened; at ride height 0.75 to 1.0 in of room is wanted.",
        customer: Some("Your driveshaft is too long. Over a bump it would push into the unit and break it, so the \
                        shaft must be made shorter."),
        fix: "Have the driveshaft shortened.",
        basis: "Common practice; 0.75 to 1.0 in is wanted at ride height.",
        limits: [bump_gap],
        when: |j, _, l| j.yoke.kind.one_of(SLIP_YOKES) & j.yoke.gap_bump_in.below(l.bump_gap),
        fires: |j| j.yoke.gap_bump_in.set(Quantity::new(0.1)),
        clears: |j| j.yoke.gap_bump_in.set(Quantity::new(0.75)),
    }

    /// Holds the highest shaft speed against the speed at which the tube would whip.
    ///
    /// Close to its critical speed a shaft bows, shakes and wears everything around it. Diameter and length
    /// decide; steel and aluminum hardly differ. Source: the formula is exact for a plain tube; the share is
    /// common practice.
    "OUT-15" Caution Spec {
        accepts: true,
        title: "Driveshaft is near the speed at which it whips",
        shop: "At the highest engine speed the driveshaft runs above the usable share of its critical speed. Choose \
               a tube of larger diameter, or a shorter one.",
        customer: Some("When you drive flat out, the driveshaft starts to bend like a skipping rope. It may shake \
                        and wear out parts. A thicker shaft would run smoothly."),
        fix: "Fit a larger or a shorter tube.",
        basis: "The formula is exact for a plain tube; the usable share is common practice.",
        numbers: [critical_share],
        limits: [critical_near, critical_at],
        when: |_, d, l| d.critical_share.above(l.critical_near) & d.critical_share.at_most(l.critical_at),
        fires: |j| j.engine.max_rpm.set(Quantity::new(7000.0)),
        clears: |j| j.engine.max_rpm.set(Quantity::new(5200.0)),
    }

    /// Finds a driveshaft that would turn at its critical speed.
    ///
    /// There the tube bows out and breaks, and a broken shaft comes through the floor or lifts the car. Source:
    /// the formula is exact for a plain tube.
    "OUT-16" Stop Spec {
        accepts: true,
        title: "Driveshaft would run at the speed at which it whips",
        shop: "Do not let this shaft run at that speed: it will bow out and break. Take a larger tube, a shorter one, \
               a two-piece shaft, or bring the highest engine speed down.",
        customer: Some("When you drive flat out, the driveshaft can bend and break. A broken shaft can hurt people, \
                        so it must be changed before you go that fast."),
        fix: "Fit a larger, a shorter or a two-piece driveshaft, or lower the highest speed.",
        basis: "The formula is exact for a plain tube.",
        numbers: [critical_share],
        limits: [critical_at],
        when: |_, d, l| d.critical_share.above(l.critical_at),
        fires: |j| j.engine.max_rpm.set(Quantity::new(8000.0)),
        clears: |j| {
            j.engine.max_rpm.set(Quantity::new(8000.0));
            j.driveshaft.length_in.set(Quantity::new(40.0));
            j.driveshaft.od_in.set(Quantity::new(3.5));
        },
    }

    /// Compares the working angles of the two driveshaft joints.
    ///
    /// Each joint speeds the shaft up and slows it down twice a turn. Two equal small angles cancel; large or
    /// unequal ones shake the car and wear the joints. Source: common practice.
    "OUT-17" Caution Delivery {
        accepts: false,
        title: "Driveshaft joints bend too far or not alike",
        shop: "The front joint works at too large an angle, or the two angles differ too much, and it will shake. \
               Shim the rear mount or the axle, then measure both angles again.",
        customer: Some("The driveshaft does not sit straight enough and could make your car shake. We will adjust \
                        how it sits and then measure it again."),
        fix: "Shim the rear mount or the axle.",
        basis: "Common practice.",
        limits: [joint_angle, joint_difference],
        when: |j, _, l| {
            j.driveshaft.front_angle_deg.above(l.joint_angle)
                | j.driveshaft.front_angle_deg.apart_from(&j.driveshaft.rear_angle_deg).above(l.joint_difference)
        },
        fires: |j| j.driveshaft.front_angle_deg.set(Quantity::new(4.5)),
        clears: |j| j.driveshaft.rear_angle_deg.set(Quantity::new(2.5)),
    }

    /// Asks for a new driveshaft measurement after the rear end of the unit was changed.
    ///
    /// Another housing or shaft moves the yoke. The old driveshaft may then bottom, or hang by an inch. Source:
    /// common practice.
    "OUT-18" Stop Delivery {
        accepts: false,
        title: "Driveshaft was measured for another rear end",
        shop: "The rear end was changed, so the yoke stands in another place. With the car at ride height, on a lift \
               or on rated stands, take the length between the joints before it leaves.",
        customer: Some("The back of your unit was changed, so your driveshaft may now be too long or too short. We \
                        must measure it before you drive."),
        fix: "Measure the driveshaft at ride height.",
        basis: "Common practice.",
        when: |j, _, _| j.output.tail_changed.yes() & j.driveshaft.remeasured.no(),
        fires: |j| {
            j.output.tail_changed.set(true);
            j.driveshaft.remeasured.set(false);
        },
        clears: |j| {
            j.output.tail_changed.set(true);
            j.driveshaft.remeasured.set(true);
        },
    }

    /// Looks for a road vehicle that lost its only parking brake with the heavy rear housing.
    ///
    /// On that housing the brake drum stands behind the unit. When the drum goes and the axle has no brake of
    /// its own, nothing holds the parked vehicle. Source: memory, high.
    "OUT-19" Stop Intake {
        accepts: true,
        title: "Vehicle lost its only parking brake",
        shop: "The drum behind the heavy rear housing was the parking brake, and the axle has none. Have a parking \
               brake fitted at the axle before the vehicle goes on the road.",
        customer: Some("Without this part your vehicle has no parking brake. It could roll away. Have another brake \
                        fitted before you drive on the road."),
        fix: "Fit a parking brake at the axle.",
        basis: "Memory, high.",
        when: |j, _, _| {
            j.output.park_drum.is(ParkDrum::Removed) & j.vehicle.axle_park_brake.no() & j.usage.road_driven.yes()
        },
        fires: |j| {
            j.output.park_drum.set(ParkDrum::Removed);
            j.vehicle.axle_park_brake.set(false);
        },
        clears: |j| {
            j.output.park_drum.set(ParkDrum::Removed);
            j.vehicle.axle_park_brake.set(true);
        },
    }

    /// Notes a shaft end that is tapped for a bolt although a slip yoke is used.
    ///
    /// The tapped hole does nothing under a slip yoke, and no harm. Source: common practice.
    "OUT-20" Note Intake {
        accepts: false,
        title: "Shaft is tapped for a bolted yoke and a slip yoke is used",
        shop: "The output shaft is tapped for a bolted yoke and a slip yoke is used. The hole does no harm. Leave it \
               as it is.",
        customer: None,
        fix: "Nothing needs to be done.",
        basis: "Common practice.",
        when: |j, _, _| j.output.end.is(OutputEnd::TappedBoltOn) & j.yoke.kind.is(YokeKind::Slip),
        fires: |j| j.output.end.set(OutputEnd::TappedBoltOn),
        clears: |j| j.output.end.set(OutputEnd::Plain),
    }
}
