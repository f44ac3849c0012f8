use super::rules;
use crate::job::{Fact, Demand};
use crate::rules::{Ask as _, Truth};

/// Were both done, this one after that one? A step at place 0 of the log is not part of the job.
fn done_after(this: &Fact<u32>, that: &Fact<u32>) -> Truth {
    this.any() & that.any() & this.more_than(that)
}

rules! {
    /// Asks whether the case was washed after its vent had been tapped.
    ///
    /// Chips from the drill lie in the case and travel to the pump and the valves on the first start. Only another
    /// wash brings them out. Source: common practice.
    "SEQ-01" Stop Assembly {
        accepts: false,
        title: "Vent was cut into a case already washed",
        shop: "The vent was drilled and tapped after the final wash, so there are chips in the case. Strip it as far as \
               needed, wash again, and log the new wash.",
        customer: None,
        fix: "Wash the case again.",
        basis: "Common practice.",
        when: |j, _, _| done_after(&j.order.vent_tap, &j.order.final_wash),
        fires: |j| {
            j.order.vent_tap.set(25);
            j.order.final_wash.set(20);
        },
        clears: |j| {
            j.order.vent_tap.set(10);
            j.order.final_wash.set(20);
        },
    }

    /// Asks whether the case was washed after a boss had been drilled.
    ///
    /// The pump boss opens toward the pump, so its chips are the first thing the pump swallows. Wash again before
    /// anything is assembled. Source: common practice, inferred.
    "SEQ-02" Stop Assembly {
        accepts: false,
        title: "Pump boss was drilled after the case had been washed",
        shop: "The pump boss was drilled after the final wash, and its chips would go straight into the pump. Wash the \
               case again before anything else goes in, and log the new wash.",
        customer: None,
        fix: "Wash the case again.",
        basis: "Common practice, inferred.",
        when: |j, _, _| done_after(&j.order.boss_drill, &j.order.final_wash),
        fires: |j| j.order.boss_drill.set(25),
        clears: |j| j.order.boss_drill.set(9),
    }

    /// Asks whether the case was washed after thread inserts had gone in.
    ///
    /// Tapping leaves chips, and every coil insert leaves a broken-off tang that somebody has to find. Wash again and
    /// count the tangs. Source: common practice, inferred.
    "SEQ-03" Stop Assembly {
        accepts: false,
        title: "Thread inserts were set into a case already washed",
        shop: "Thread inserts went in after the final wash. Chips and broken tangs may lie in the case. Wash it again, \
               and count the tangs: one for every insert.",
        customer: None,
        fix: "Wash the case once more and find one tang for each insert.",
        basis: "Common practice, inferred.",
        when: |j, _, _| done_after(&j.order.insert, &j.order.final_wash),
        fires: |j| j.order.insert.set(22),
        clears: |j| j.order.insert.set(11),
    }

    /// Asks whether the case was washed after its bridge had been ground.
    ///
    /// Grinding dust settles in the passages that feed the valves, and valves stick on it. Wash and blow the passages
    /// out again. Source: common practice, inferred.
    "SEQ-04" Stop Assembly {
        accepts: false,
        title: "Grinding dust from the bridge came after the final wash",
        shop: "The bridge was ground down after the final wash, so there is grinding dust in the passages to the \
               valves. Wash again and blow every passage out; glasses on, 30 psi or less.",
        customer: None,
        fix: "Wash the case again and blow out its passages.",
        basis: "Common practice, inferred.",
        when: |j, _, _| done_after(&j.order.bridge, &j.order.final_wash),
        fires: |j| {
            j.order.bridge.set(21);
            j.case.bridge_lowered.set(true);
        },
        clears: |j| {
            j.order.bridge.set(12);
            j.case.bridge_lowered.set(true);
        },
    }

    /// Compares the places of plugs or balls and of the valve body in the job log.
    ///
    /// They sit beneath the valve body and are driven in before it goes on. Logged the other way round, either the
    /// log is wrong or the body must come off. Source: common practice, inferred.
    "SEQ-05" Stop Assembly {
        accepts: false,
        title: "Valve body was on before the passages were closed",
        shop: "A feed plug or a passage ball was driven after the valve body went on, but its place is beneath it. \
               Take the valve body off, look at the plug, and put it back with a new gasket and its torque.",
        customer: None,
        fix: "Take the valve body off and fit it again.",
        basis: "Common practice, inferred.",
        when: |j, _, _| done_after(&j.order.plug, &j.order.valve_body_fit),
        fires: |j| {
            j.order.plug.set(65);
            j.case.feed_plugged.set(true);
            j.valve_body.feed_plug.set(Demand::Either);
        },
        clears: |j| {
            j.order.plug.set(15);
            j.case.feed_plugged.set(true);
            j.valve_body.feed_plug.set(Demand::Either);
        },
    }

    /// Compares the places of the one-way clutch's direction test and of the drum in the job log.
    ///
    /// Once the drum is in, its clutch can no longer be turned by hand, and a clutch put in backwards means no second
    /// gear. Pull the drum and test. Source: common practice, inferred.
    "SEQ-06" Stop Assembly {
        accepts: false,
        title: "One-way clutch was tried only after its drum was in",
        shop: "The direction of the one-way clutch cannot be tested once the drum is in, so this test proves nothing. \
               Pull the drum, test it in the hand, and log it before the drum goes back.",
        customer: None,
        fix: "Pull the drum and test the one-way clutch.",
        basis: "Common practice, inferred.",
        when: |j, _, _| j.order.one_way_check.more_than(&j.order.drum_fit),
        fires: |j| {
            j.order.one_way_check.set(45);
            j.order.drum_fit.set(40);
        },
        clears: |j| {
            j.order.one_way_check.set(30);
            j.order.drum_fit.set(40);
        },
    }

    /// Compares the places of the front end play reading and of the pump's torque in the job log.
    ///
    /// A pump that is not drawn home reads as play that is not there, and the washer is chosen by that number. Read
    /// again. Source: common practice.
    "SEQ-07" Stop Assembly {
        accepts: false,
        title: "Pump bolts were torqued only after the play was read",
        shop: "The front end play was read before the pump was at its torque, so the number means nothing, and neither \
               does the washer chosen by it. Torque the pump and read again.",
        customer: None,
        fix: "Read the front end play again.",
        basis: "Common practice.",
        when: |j, _, _| j.order.front_end_play.less_than(&j.order.pump_torque),
        fires: |j| {
            j.order.front_end_play.set(48);
            j.order.pump_torque.set(50);
        },
        clears: |j| {
            j.order.front_end_play.set(52);
            j.order.pump_torque.set(50);
        },
    }

    /// Compares the places of the air checks and of the valve body in the job log.
    ///
    /// With the valve body on, the feeds are covered and air finds other ways. A test plate reaches them, or the body
    /// comes off. Source: common practice.
    "SEQ-08" Caution Assembly {
        accepts: false,
        title: "Air was tried on the clutches with the valve body on",
        shop: "The valve body covers the feeds, so air checks made after it went on say little. Check again through a \
               test plate, or take the valve body off and check each feed in turn.",
        customer: None,
        fix: "Check with a test plate, or take the valve body off.",
        basis: "Common practice.",
        when: |j, _, _| j.order.air_check.more_than(&j.order.valve_body_fit),
        fires: |j| {
            j.order.air_check.set(62);
            j.order.valve_body_fit.set(60);
        },
        clears: |j| {
            j.order.air_check.set(55);
            j.order.valve_body_fit.set(60);
        },
    }

    /// Compares the places of the first start and of the cooler's flushing in the job log.
    ///
    /// Whatever the old unit left in the cooler has then been pumped through the new one. See what arrived before it
    /// does more. Source: common practice.
    "SEQ-09" Stop Assembly {
        accepts: false,
        title: "The engine ran before the cooler was clean",
        shop: "The engine was started before the cooler was flushed or replaced, so old debris went through the new \
               unit. Let it cool, drain it, change the filter, and look closely at what lies in the pan.",
        customer: None,
        fix: "Drain it, change the filter, and inspect the pan.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.order.first_start.any() & j.order.cooler_flush.any() & j.order.first_start.less_than(&j.order.cooler_flush)
        },
        fires: |j| {
            j.order.first_start.set(66);
            j.order.cooler_flush.set(70);
        },
        clears: |j| {
            j.order.first_start.set(80);
            j.order.cooler_flush.set(70);
        },
    }

    /// Compares the places of bushing honing and of the output shaft in the job log.
    ///
    /// Honing grit eats bearings. With the shaft in, it stays in the tail and in the rear bearing, where no rag
    /// reaches. Pull the shaft and wash. Source: common practice, inferred.
    "SEQ-10" Stop Assembly {
        accepts: false,
        title: "Tail bushing was honed over a shaft already in place",
        shop: "The tail bushing was honed after the output shaft went in, so there is grit in the tail and in the rear \
               bearing. Pull the shaft and wash both before anything turns.",
        customer: None,
        fix: "Pull the output shaft and wash out the grit.",
        basis: "Common practice, inferred.",
        when: |j, _, _| j.order.bushing_hone.any() & j.order.bushing_hone.more_than(&j.order.output_fit),
        fires: |j| {
            j.order.bushing_hone.set(37);
            j.order.output_fit.set(35);
        },
        clears: |j| {
            j.order.bushing_hone.set(18);
            j.order.output_fit.set(35);
        },
    }

    /// Looks for a permanent change that the customer has not signed for.
    ///
    /// A cut, a drilled boss, a driven ball or plug cannot be taken back, and it is the customer's case. The signature
    /// comes before the drill; if it came too late, they hear of it today. Source: common practice.
    "SEQ-11" Stop Spec {
        accepts: true,
        title: "Cut, drilled or plugged before the customer had signed",
        shop: "What cannot be taken back needs the customer's signature on its own line first, whichever tool does it. \
               Get it before you go on. If it was already done, stop and tell the customer today.",
        customer: Some("This job changes your case in a way that cannot be undone. Please ask us whatever is not \
                        clear, and sign when you know what it is and agree to it."),
        fix: "Get the signature for each permanent change.",
        basis: "Common practice.",
        when: |j, _, _| j.paper.permanent_mods.yes() & j.paper.permanent_ack.no(),
        fires: |j| {
            j.paper.permanent_mods.set(true);
            j.paper.permanent_ack.set(false);
        },
        clears: |j| {
            j.paper.permanent_mods.set(true);
            j.paper.permanent_ack.set(true);
        },
    }
}
