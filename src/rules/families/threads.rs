use super::rules;
use crate::job::{Length, ThreadSystem};
use crate::quantity::Quantity;

rules! {
    /// Compares the thread of the shift-shaft nut with the thread of the shaft it goes on.
    ///
    /// Inch and metric nuts of this size start on each other by hand and tear both threads as soon as a
    /// tool drives them. Gauge both before the nut goes on. Source: common practice.
    "THR-01" Stop Assembly {
        accepts: false,
        title: "Linkage nut does not belong on this shift shaft",
        shop: "The nut and the shift shaft are cut to different thread systems. The nut starts by hand and then \
               tears the shaft, so keep power tools away from it. Put a thread gauge on each and fit the nut that \
               belongs.",
        customer: Some("A small nut on your shift lever is the wrong kind for its shaft. We will fit the right one, \
                        so that the lever stays tight."),
        fix: "Fit a nut with the same thread as the shaft.",
        basis: "Common practice.",
        when: |j, _, _| j.threads.linkage_nut.differs_from(&j.threads.linkage_shaft),
        fires: |j| j.threads.linkage_shaft.set(ThreadSystem::Metric),
        clears: |j| {
            j.threads.linkage_shaft.set(ThreadSystem::Metric);
            j.threads.linkage_nut.set(ThreadSystem::Metric);
        },
    }

    /// Compares the mount bolts with the tapped holes in the rear housing.
    ///
    /// A 3/8-16 bolt runs several turns into an M10x1.5 hole before it binds, and then it takes the aluminum
    /// with it. Gauge the hole, then choose the bolt. Source: common practice; the threads themselves are
    /// ASME B1.1 and ISO 261.
    "THR-02" Stop Assembly {
        accepts: false,
        title: "Mount bolts do not suit the holes in the rear housing",
        shop: "The mount bolts and the holes are from different thread systems. A 3/8-16 bolt goes several turns \
               into an M10x1.5 hole, then it binds and strips the casting. Gauge the holes and get bolts to match.",
        customer: Some("The bolts that hold up the back of your unit do not fit its holes. Forcing them would tear \
                        the holes out, so we will use bolts that fit."),
        fix: "Use bolts of the right thread, long enough for one and a half diameters of engagement.",
        basis: "Common practice; standards ISO 261 and ASME B1.1 for the threads.",
        when: |j, _, _| j.threads.mount_bolt.differs_from(&j.threads.mount_hole),
        fires: |j| j.threads.mount_hole.set(ThreadSystem::Metric),
        clears: |j| {
            j.threads.mount_hole.set(ThreadSystem::Metric);
            j.threads.mount_bolt.set(ThreadSystem::Metric);
        },
    }

    /// Compares the bolt of the speedometer clip with its hole.
    ///
    /// M6x1.0 and 1/4-20 cross within two turns. The hole is small, in aluminum, and hard to reach once the
    /// unit is in the car. Source: common practice; the threads are ISO 261 and ASME B1.1.
    "THR-03" Stop Assembly {
        accepts: false,
        title: "Clip bolt of the speedometer will not hold in its hole",
        shop: "The bolt of the speedometer clip has the wrong thread for its hole. M6x1.0 and 1/4-20 jam after two \
               turns and ruin the hole. Measure the hole and fit its own bolt.",
        customer: Some("One small bolt that holds your speedometer drive has the wrong thread. We will change it."),
        fix: "Fit a clip bolt with the same thread as the hole.",
        basis: "Common practice; standards ISO 261 and ASME B1.1 for the threads.",
        when: |j, _, _| j.threads.speedometer_bolt.differs_from(&j.threads.speedometer_hole),
        fires: |j| j.threads.speedometer_hole.set(ThreadSystem::Metric),
        clears: |j| {
            j.threads.speedometer_hole.set(ThreadSystem::Metric);
            j.threads.speedometer_bolt.set(ThreadSystem::Metric);
        },
    }

    /// Looks for a unit that is metric at one end and inch at the other.
    ///
    /// Metric threads at the speedometer or the linkage and inch threads at the mount usually mean that the
    /// rear housing came from another unit. Nothing is wrong with that, but no thread can be taken for
    /// granted any more. Source: common practice, inferred.
    "THR-04" Note Intake {
        accepts: false,
        title: "Inch and metric threads side by side on this unit",
        shop: "Metric threads at the front or side and inch threads at the mount: somebody has changed the rear \
               housing at some time. Gauge and write down every group of holes before you order a bolt.",
        customer: Some("Your unit was put together from the parts of several others. That is common and does no \
                        harm. We look at the thread of each hole before we use it."),
        fix: "Gauge each group of threads and record it.",
        basis: "Common practice, inferred.",
        when: |j, _, _| {
            (j.threads.speedometer_hole.is(ThreadSystem::Metric) | j.threads.linkage_shaft.is(ThreadSystem::Metric))
                & j.threads.mount_hole.is(ThreadSystem::Inch)
        },
        fires: |j| {
            j.threads.speedometer_hole.set(ThreadSystem::Metric);
            j.threads.speedometer_bolt.set(ThreadSystem::Metric);
        },
        clears: |j| {
            j.threads.speedometer_hole.set(ThreadSystem::Metric);
            j.threads.speedometer_bolt.set(ThreadSystem::Metric);
            j.threads.mount_hole.set(ThreadSystem::Metric);
            j.threads.mount_bolt.set(ThreadSystem::Metric);
        },
    }

    /// Counts the failed case threads against those repaired so far.
    ///
    /// Tapping and fitting inserts makes chips, so every repair belongs before the final wash. The two counts
    /// have to be equal. Source: common practice.
    "THR-05" Stop Teardown {
        accepts: false,
        title: "Failed case threads are still waiting for repair",
        shop: "More holes in the case failed than have been repaired. Fit a coil insert in each before the final \
               wash: tap, wind in, break the tang, gauge. The two counts have to be equal.",
        customer: Some("Some bolt holes in your case are worn out. We fit steel threads in them so that the bolts \
                        hold again."),
        fix: "Fit an insert in each failed hole and bring the repaired count up to date.",
        basis: "Common practice.",
        when: |j, _, _| j.case.threads_bad.more_than(&j.case.threads_repaired),
        fires: |j| {
            j.case.threads_bad.set(4);
            j.case.threads_repaired.set(1);
        },
        clears: |j| {
            j.case.threads_bad.set(4);
            j.case.threads_repaired.set(4);
        },
    }

    /// Holds the insert in the upper bell hole against the engine face.
    ///
    /// An insert that stands proud keeps the bell off the block: the unit then sits at an angle to the crank
    /// and wears the pump. Source: common practice; insert sizes are ASME B18.29.1.
    "THR-06" Stop Assembly {
        accepts: false,
        title: "Thread insert sticks out of the bell face",
        shop: "The insert sticks out on the engine side, so the bell cannot seat square. Wind it deeper or replace \
               it, take the tang out, and check it again with a straightedge.",
        customer: Some("A steel thread in the front of your unit sticks out a little, and the unit would sit at an \
                        angle on the engine. We will set it deeper."),
        fix: "Wind the insert flush or below, or fit another.",
        basis: "Common practice; standard ASME B18.29.1 for insert sizes.",
        limits: [insert_proud],
        when: |j, _, l| j.bell.insert_fitted.yes() & j.bell.insert_proud_in.above(l.insert_proud),
        fires: |j| {
            j.bell.insert_fitted.set(true);
            j.bell.insert_proud_in.set(Quantity::new(0.01));
        },
        clears: |j| {
            j.bell.insert_fitted.set(true);
            j.bell.insert_proud_in.set(Quantity::new(-0.02));
        },
    }

    /// Holds the end of the bolt in that insert against the engine face.
    ///
    /// A bolt that comes through pushes the bell off the block like a proud insert does, and nobody sees it
    /// once the unit is up. Source: common practice.
    "THR-07" Stop Assembly {
        accepts: false,
        title: "Bracket bolt does not end flush with the bell",
        shop: "The bolt in the bell insert ends above the engine face and will hold the bell off the block. Shorten \
               it or put a washer under its head until it ends flush or below.",
        customer: Some("One bolt at the front of your unit is too long and would keep it away from the engine. We \
                        will fit a shorter one."),
        fix: "Use a shorter bolt, or a washer under the head.",
        basis: "Common practice.",
        limits: [insert_bolt_proud],
        when: |j, _, l| j.bell.insert_fitted.yes() & j.bell.insert_bolt_proud_in.above(l.insert_bolt_proud),
        fires: |j| {
            j.bell.insert_fitted.set(true);
            j.bell.insert_bolt_proud_in.set(Quantity::new(0.03));
        },
        clears: |j| {
            j.bell.insert_fitted.set(true);
            j.bell.insert_bolt_proud_in.set(Quantity::new(-0.01));
        },
    }

    /// Checks the length of the outside shift arm against the range switch.
    ///
    /// Cases with the range switch on the side take the long arm, cases without it the short one. The wrong
    /// arm moves the lever too far or not far enough. Source: common practice.
    "THR-08" Stop Spec {
        accepts: false,
        title: "Shift arm is the wrong length for this case",
        shop: "A case with the range switch on its side takes the long shift arm, and one without takes the short \
               arm. This arm is the other one, so the detents will not line up with the lever. Change the arm.",
        customer: Some("The shift arm on the side of your unit is made for another version. We will fit one of the \
                        right length, so that each gear lines up with the lever."),
        fix: "Fit the arm that goes with this case.",
        basis: "Common practice.",
        when: |j, _, _| {
            (j.shifter.side_switch.yes() & j.shifter.lever_length.is(Length::Short))
                | (j.shifter.side_switch.no() & j.shifter.lever_length.is(Length::Long))
        },
        fires: |j| j.shifter.side_switch.set(true),
        clears: |j| {
            j.shifter.side_switch.set(false);
            j.shifter.lever_length.set(Length::Short);
        },
    }

    /// Checks how much of the mount bolts' thread is engaged in the casting.
    ///
    /// Aluminum is soft: with too few threads engaged they pull out before the bolt is tight. One and a half
    /// bolt diameters is what the trade asks for. Source: common practice.
    "THR-09" Caution Assembly {
        accepts: false,
        title: "Mount bolts hold in too little thread",
        shop: "Too little thread is engaged in the cast aluminum of the rear housing, and it can pull out before \
               the bolt is tight. Use longer bolts, or fit steel inserts.",
        customer: Some("The bolts at the back of your unit are too short for its soft metal. We will use longer \
                        ones, so that they hold."),
        fix: "Fit longer bolts or inserts.",
        basis: "Common practice.",
        limits: [thread_engaged],
        when: |j, _, l| j.threads.mount_engage_d.below(l.thread_engaged),
        fires: |j| j.threads.mount_engage_d.set(Quantity::new(1.0)),
        clears: |j| j.threads.mount_engage_d.set(Quantity::new(1.6)),
    }
}
