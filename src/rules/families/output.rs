use super::rules;
use crate::job::{DriveLayout, Job, Length, OutputEnd, ShaftKind, Tail, UseKind, YokeKind};
use crate::rules::parts::{SMALL_OUTPUT, SPRAG_34};

/// Yokes that slide on the output shaft.
const SLIP_YOKES: &[YokeKind] = &[YokeKind::Slip, YokeKind::SlipRecessed];

rules! {
    /// Compares the splines of the yoke and of the output shaft.
    ///
    /// A yoke with 32 splines and a shaft with 27 never go together, and nothing can be done to either. Source:
    /// common practice.
    "OUT-01" Stop Intake {
        accepts: false,
        title: "Yoke does not slide onto this output shaft",
        shop: "The yoke does not go on this output shaft: their spline counts differ. Count both again, then get the \
               yoke that matches the shaft.",
        customer: Some("The part that joins your driveshaft to the unit does not fit its shaft. It must be changed \
                        for one that does."),
        fix: "Get a yoke with the spline count of the output shaft.",
        basis: "Common practice.",
        when: |j, _, _| j.yoke.spline.differs_from(&j.output.spline),
        fires: |j| j.output.spline.set(SMALL_OUTPUT),
        clears: |j| {
            j.output.spline.set(32);
            j.yoke.spline.set(32);
        },
    }

    /// Looks for the O-ring left on an output shaft that takes a slip yoke.
    ///
    /// Under a slip yoke the ring seals nothing; it can come off in pieces and travel. Source: common practice.
    "OUT-02" Caution Assembly {
        accepts: false,
        title: "Slip yoke cannot go home over the O-ring",
        shop: "A slip yoke needs no O-ring on the shaft end. It seals nothing there and can come off in pieces. Pull \
               it off before the yoke goes on.",
        customer: None,
        fix: "Take the O-ring off the output shaft.",
        basis: "Common practice.",
        when: |j, _, _| j.yoke.kind.is(YokeKind::Slip) & j.output.o_ring.yes(),
        fires: |j| {
            j.yoke.kind.set(YokeKind::Slip);
            j.output.o_ring.set(true);
        },
        clears: |j| {
            j.yoke.kind.set(YokeKind::Slip);
            j.output.o_ring.set(false);
        },
    }

    /// Looks for the O-ring under a slip yoke with a recess.
    ///
    /// At full bump the recess slides over the ring and jams there. The shaft then has no slip left. Source:
    /// common practice.
    "OUT-03" Stop Assembly {
        accepts: false,
        title: "Recess of this yoke would meet the O-ring",
        shop: "The recess in this yoke slides over the O-ring at full bump and does not come back, so the driveshaft \
               has no slip left. Take the ring off.",
        customer: None,
        fix: "Take the O-ring off the output shaft.",
        basis: "Common practice.",
        when: |j, _, _| j.yoke.kind.is(YokeKind::SlipRecessed) & j.output.o_ring.yes(),
        fires: |j| {
            j.yoke.kind.set(YokeKind::SlipRecessed);
            j.output.o_ring.set(true);
        },
        clears: |j| {
            j.yoke.kind.set(YokeKind::SlipRecessed);
            j.output.o_ring.set(false);
        },
    }

    /// Looks for a bolted yoke without its O-ring.
    ///
    /// The splines are open to the inside of the unit. Without ring and sealer the bolt's thread is the way out for
    /// the fluid. Source: common practice.
    "OUT-04" Caution Assembly {
        accepts: false,
        title: "Yoke bolted on with no O-ring",
        shop: "Fluid will run along the splines and out round the yoke bolt. Fit the O-ring on the shaft and put \
               sealer under the washer.",
        customer: None,
        fix: "Fit the O-ring, and sealer under the washer.",
        basis: "Common practice.",
        when: |j, _, _| j.yoke.kind.is(YokeKind::BoltOn) & j.output.o_ring.no(),
        fires: |j| {
            bolted_yoke(j);
            j.output.o_ring.set(false);
        },
        clears: bolted_yoke,
    }

    /// Looks for a driveline in which nothing can slide.
    ///
    /// The axle moves, so the driveshaft has to change its length. With a bolted yoke and a one-piece shaft
    /// every bump is a hammer blow on the output shaft. Source: memory, high.
    "OUT-05" Stop Intake {
        accepts: false,
        title: "Driveline has nothing that slides",
        shop: "A bolted yoke and a one-piece shaft leave nothing to slide, so the axle beats on the output shaft at \
               every bump. Fit a driveshaft with a slip joint, or go over to a slip yoke.",
        customer: Some("Your driveshaft must get longer and shorter as the axle moves, and this one cannot. Each \
                        bump would hit your unit, so a part that slides is needed."),
        fix: "Fit a driveshaft with a slip joint, or a slip yoke.",
        basis: "Memory, high.",
        when: |j, _, _| j.yoke.kind.is(YokeKind::BoltOn) & j.driveshaft.kind.is(ShaftKind::Fixed),
        fires: |j| {
            bolted_yoke(j);
            j.driveshaft.kind.set(ShaftKind::Fixed);
        },
        clears: bolted_yoke,
    }

    /// Looks for a driveline that can slide in two places.
    ///
    /// With two slips nothing holds the shaft lengthwise; it wanders, and it whips. Source: memory, medium.
    "OUT-06" Caution Intake {
        accepts: false,
        title: "Driveline slides in two places",
        shop: "Slip yoke and slip joint together leave the shaft free to wander and whip. Keep one slip: fit a \
               one-piece shaft behind a slip yoke.",
        customer: Some("Your driveshaft can slide in two places, but it should slide in only one. It could shake at \
                        speed, so we advise another shaft."),
        fix: "Fit a one-piece driveshaft.",
        basis: "Memory, medium.",
        when: |j, _, _| j.yoke.kind.one_of(SLIP_YOKES) & j.driveshaft.kind.is(ShaftKind::SlipJoint),
        fires: |j| j.driveshaft.kind.set(ShaftKind::SlipJoint),
        clears: |j| j.driveshaft.kind.set(ShaftKind::Fixed),
    }

    /// Looks for a slip yoke on a rear housing that cannot carry it.
    ///
    /// Only the slip housing has the long bushing and the seal that a sliding yoke runs in. Source: common
    /// practice.
    "OUT-07" Stop Intake {
        accepts: false,
        title: "Rear housing cannot carry a slip yoke",
        shop: "Truck, heavy-bearing and four-wheel housings have no bushing and seal for a sliding yoke. Change the \
               rear housing to the slip kind.",
        customer: Some("The rear end of this unit is made for another kind of driveshaft. It needs a different rear \
                        housing to work with yours."),
        fix: "Fit a slip rear housing with bushing and seal.",
        basis: "Common practice.",
        when: |j, _, _| j.yoke.kind.one_of(SLIP_YOKES) & j.output.tail.is_not(Tail::Slip),
        fires: |j| j.output.tail.set(Tail::TruckFixed),
        clears: |j| j.output.tail.set(Tail::Slip),
    }

    /// Looks for the output shaft of a four-wheel drive in a two-wheel vehicle.
    ///
    /// The rear planetary group has to come out for another shaft, so it is now or with the next teardown. Source:
    /// common practice.
    "OUT-08" Stop Teardown {
        accepts: false,
        title: "Output shaft is for four-wheel drive",
        shop: "This core came out of a four-wheel drive. While the rear planetary group is on the bench, change its \
               output shaft for the two-wheel one, and get a slip rear housing.",
        customer: Some("This unit came from a four-wheel drive. For your vehicle it needs another shaft and another \
                        housing at the back."),
        fix: "Exchange the output shaft and the rear housing.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.vehicle.drive_layout.is(DriveLayout::TwoWheel) & j.output.shaft_layout.is(DriveLayout::FourWheel)
        },
        fires: |j| j.output.shaft_layout.set(DriveLayout::FourWheel),
        clears: |j| j.output.shaft_layout.set(DriveLayout::TwoWheel),
    }

    /// Compares the length of the output shaft with that of the rear housing.
    ///
    /// Short goes with short and long with long; mixed, the yoke has no spline or no room. About 9.5 in of bare shaft
    /// belongs to the 4.5 in housing. Source: common practice.
    "OUT-09" Stop Teardown {
        accepts: false,
        title: "Long and short parts mixed at the tail",
        shop: "The output shaft is of one length and the rear housing of the other. The bare short shaft measures \
               about 9.5 in and belongs in the 4.5 in housing; the long pair stays together. Match them.",
        customer: Some("The shaft and the housing at the back of your unit come in two lengths. Yours are mixed, so \
                        one of them must be changed."),
        fix: "Use shaft and housing of the same length.",
        basis: "Common practice.",
        when: |j, _, _| j.output.length.differs_from(&j.output.tail_length),
        fires: |j| j.output.length.set(Length::Long),
        clears: |j| {
            j.output.length.set(Length::Short);
            j.output.tail_length.set(Length::Short);
        },
    }

    /// Finds the small 27-spline output shaft in a job that is hard on it.
    ///
    /// It is the thinnest shaft behind the gears. The short 32-spline shaft goes in with its housing while the
    /// unit is apart. Source: common practice; the torque line is a shop setting.
    "OUT-10" Caution Spec {
        accepts: true,
        title: "Output shaft with 27 splines on work too hard for it",
        shop: "The 27-spline output is the weak spot at this use or torque. Fit the short shaft with 32 splines and \
               its rear housing now; later the unit has to come apart for it.",
        customer: Some("The shaft at the back of your unit is the smaller kind. It is the weak spot for the way you \
                        use your vehicle. We can fit the stronger one while it is open."),
        fix: "Fit the short 32-spline shaft with its rear housing.",
        basis: "Common practice; the torque line is a shop setting.",
        limits: [small_output_torque],
        when: |j, _, l| {
            j.output.spline.is(SMALL_OUTPUT)
                & (j.usage.kind.one_of(&[UseKind::Drag, UseKind::Pull, UseKind::Tow, UseKind::Offroad])
                    | j.engine.torque_lbft.above(l.small_output_torque))
        },
        fires: |j| {
            small_long_output(j);
            j.usage.kind.set(UseKind::Drag);
            j.usage.road_driven.set(false);
            j.one_way.elements.set(SPRAG_34);
        },
        clears: |j| {
            small_long_output(j);
            j.usage.kind.set(UseKind::Street);
        },
    }
}

/// A truck's rear end: a bolted yoke, sealed, on a shaft with a slip joint.
fn bolted_yoke(j: &mut Job) {
    j.yoke.kind.set(YokeKind::BoltOn);
    j.output.end.set(OutputEnd::TappedBoltOn);
    j.output.o_ring.set(true);
    j.output.tail.set(Tail::TruckFixed);
    j.driveshaft.kind.set(ShaftKind::SlipJoint);
}

/// The small output shaft with the yoke and the housing that go with it.
fn small_long_output(j: &mut Job) {
    j.output.spline.set(SMALL_OUTPUT);
    j.yoke.spline.set(SMALL_OUTPUT);
    j.output.length.set(Length::Long);
    j.output.tail_length.set(Length::Long);
}
