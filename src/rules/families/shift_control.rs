use super::rules;
use crate::job::{
    Fitted, GovernorBore, Induction, Job, Kickdown, Modulator, VacuumSource, ValveBodyKind,
};
use crate::quantity::Quantity;

rules! {
    /// Looks for a governor bore that nothing closes.
    ///
    /// Fluid is pumped straight out of it. A cover or a blank with its seal closes it, whether a governor sits
    /// inside or not. Source: common practice; memory, high.
    "VLV-12" Stop Assembly {
        accepts: false,
        title: "Governor hole in the case has no cover",
        shop: "Nothing closes the governor bore, and the oil will dump out of it as soon as the pump turns. Fit a \
               cover with its gasket or O-ring.",
        customer: None,
        fix: "Fit a cover with a gasket or an O-ring.",
        basis: "Common practice; memory, high.",
        when: |j, _, _| j.control.governor_bore.is(GovernorBore::Open),
        fires: |j| {
            by_hand(j);
            j.control.governor_bore.set(GovernorBore::Open);
        },
        clears: |j| j.control.governor_bore.set(GovernorBore::Closed),
    }

    /// Finds a governor left in behind a hand-shifted valve body.
    ///
    /// It has nothing to do there; it only leaks oil. Take it out unless the sheet keeps it.
    /// Source: common practice; memory, medium.
    "VLV-13" Caution Assembly {
        accepts: false,
        title: "Governor still in place where a lever does the shifting",
        shop: "With this valve body the governor does nothing but leak oil. Take it out unless the sheet says to keep \
               it, and turn the cover round or blank it.",
        customer: None,
        fix: "Take the governor out and keep its bore closed.",
        basis: "Common practice; memory, medium.",
        when: |j, _, _| j.valve_body.kind.is(ValveBodyKind::Manual) & j.control.governor.is(Fitted::Fitted),
        fires: |j| j.valve_body.kind.set(ValveBodyKind::Manual),
        clears: |j| {
            j.valve_body.kind.set(ValveBodyKind::Manual);
            j.control.governor.set(Fitted::Removed);
        },
    }

    /// Finds the vacuum hose still on behind a hand-shifted valve body.
    ///
    /// The hose has no task left. If the capsule leaks, the engine draws fluid in through it. Take the hose off and
    /// cap the port. Source: common practice; memory, high.
    "VLV-14" Caution Assembly {
        accepts: false,
        title: "A vacuum line feeds a modulator nobody needs any more",
        shop: "This valve body needs no vacuum, and a leaking capsule would feed fluid to the engine through the \
               hose. Take the hose off and cap the port on the engine.",
        customer: Some("The old vacuum hose has no task any more. We take it off and put a cap on the engine, so \
                        that no fluid is drawn in."),
        fix: "Take the hose off and cap the engine port.",
        basis: "Common practice; memory, high.",
        when: |j, _, _| j.valve_body.kind.is(ValveBodyKind::Manual) & j.control.modulator.is(Modulator::Connected),
        fires: |j| {
            by_hand(j);
            j.control.modulator.set(Modulator::Connected);
        },
        clears: by_hand,
    }

    /// Looks for a modulator bore that nothing closes.
    ///
    /// With neither capsule nor plug in it the fluid runs out. A clamp has to hold either of them in. Source: common
    /// practice; memory, high.
    "VLV-15" Stop Assembly {
        accepts: false,
        title: "Modulator hole in the case is neither used nor plugged",
        shop: "The modulator is out and nothing closes its bore, so the fluid will run out. Close it with the plug \
               made for it, or put a modulator back: new O-ring, clamp tight.",
        customer: None,
        fix: "Close the bore, with a plug or with a clamped modulator on a new O-ring.",
        basis: "Common practice; memory, high.",
        when: |j, _, _| j.control.modulator.is(Modulator::RemovedOpen),
        fires: |j| {
            by_hand(j);
            j.control.modulator.set(Modulator::RemovedOpen);
        },
        clears: by_hand,
    }

    /// Looks for the governor of a unit that is to shift by itself.
    ///
    /// The governor tells it the road speed. Without one it never shifts up. Fit one while the spec is written, and
    /// look at its gear. Source: memory, high.
    "VLV-16" Stop Spec {
        accepts: false,
        title: "Nothing tells the valve body when to upshift",
        shop: "An automatic valve body shifts up by its governor, and there is none in this unit. It would stay in \
               first. Fit one and look closely at its gear.",
        customer: Some("Your unit lacks a part that it needs to shift up by itself. You would be left in first gear, \
                        so we will fit one."),
        fix: "Fit a governor with a sound gear.",
        basis: "Memory, high.",
        when: |j, _, _| j.valve_body.kind.is(ValveBodyKind::Auto) & j.control.governor.is(Fitted::Removed),
        fires: |j| j.control.governor.set(Fitted::Removed),
        clears: |j| j.control.governor.set(Fitted::Fitted),
    }

    /// Looks for a connected modulator on a unit that is to shift by itself.
    ///
    /// It sets pressure and shift timing. Without it the pressure stays full, and every shift comes late and hard.
    /// Fit it and put the hose on. Source: memory, high.
    "VLV-17" Stop Spec {
        accepts: false,
        title: "Automatic shifts, and no modulator that could time them",
        shop: "With no modulator at work this unit has full pressure all day, and its shifts come late and harsh. Fit \
               one and connect the vacuum hose.",
        customer: Some("The part that times your shifts is not hooked up. Every shift would come late, with a bang, \
                        and the unit would not last. So we need to connect it."),
        fix: "Fit the modulator and connect its hose.",
        basis: "Memory, high.",
        when: |j, _, _| j.valve_body.kind.is(ValveBodyKind::Auto) & j.control.modulator.is_not(Modulator::Connected),
        fires: |j| j.control.modulator.set(Modulator::FittedNoHose),
        clears: |j| j.control.modulator.set(Modulator::Connected),
    }

    /// Looks for a source of vacuum on a unit that is to shift by itself.
    ///
    /// The modulator works on vacuum and is no use without it. A diesel, for one, may have none to give; then a pump
    /// makes it, or the shifts are worked some other way. Source: memory, high.
    "VLV-18" Stop Spec {
        accepts: false,
        title: "The modulator needs vacuum and this engine offers none",
        shop: "The modulator of this unit has nothing to work with: the engine has no source of vacuum. Fit a vacuum \
               pump, or choose another way to control the shifts.",
        customer: Some("The shifts of your unit are worked by vacuum (suction), and your engine has none to give. It \
                        needs a pump."),
        fix: "Give the modulator a vacuum pump, or build without a modulator.",
        basis: "Memory, high.",
        when: |j, _, _| j.valve_body.kind.is(ValveBodyKind::Auto) & j.engine.vacuum_source.is(VacuumSource::None),
        fires: |j| {
            j.engine.vacuum_source.set(VacuumSource::None);
            j.engine.induction.set(Induction::Diesel);
        },
        clears: |j| {
            j.engine.vacuum_source.set(VacuumSource::Pump);
            j.engine.induction.set(Induction::Diesel);
        },
    }

    /// Reads the vacuum of an engine that has to work a modulator.
    ///
    /// A modulator works poorly on little vacuum, which is what a big cam gives at idle. The shifts then come late
    /// and firm. An adjustable capsule or a pump helps. Source: memory, medium.
    "VLV-19" Caution Spec {
        accepts: true,
        title: "Too little vacuum for even shifts",
        shop: "The modulator works poorly on the little vacuum that this engine pulls at idle. Fit an adjustable \
               capsule or a vacuum pump, or let the customer accept late, firm shifts.",
        customer: Some("Your engine makes little vacuum (suction) at idle, so the shifts will come later and firmer \
                        than stock. Another part or a pump can help."),
        fix: "Fit an adjustable capsule or a vacuum pump.",
        basis: "Memory, medium.",
        limits: [idle_vacuum],
        when: |j, _, l| {
            j.valve_body.kind.is(ValveBodyKind::Auto)
                & j.engine.vacuum_source.is(VacuumSource::Manifold)
                & j.engine.idle_vacuum_inhg.below(l.idle_vacuum)
        },
        fires: |j| j.engine.idle_vacuum_inhg.set(Quantity::new(9.0)),
        clears: |j| j.engine.idle_vacuum_inhg.set(Quantity::new(16.0)),
    }

    /// Looks for boost that can get into the modulator.
    ///
    /// The modulator expects vacuum. Under boost it works backwards, or it bursts. A check valve or a rated capsule
    /// keeps it out; the pressure that boost asks for must then come from somewhere else. Source: memory, medium.
    "VLV-20" Caution Spec {
        accepts: false,
        title: "Turbo or blower pressure gets into the modulator hose",
        shop: "Under boost the hose brings pressure where the modulator expects vacuum: it works backwards, or it \
               bursts. Fit a check valve or a capsule rated for boost, and find another way to raise the pressure \
               under boost.",
        customer: Some("Boost from your engine can get into the part that sets your shifts and harm it. The hose that \
                        leads there must be protected."),
        fix: "Fit a check valve or a capsule rated for boost.",
        basis: "Memory, medium.",
        when: |j, _, _| {
            j.valve_body.kind.is(ValveBodyKind::Auto)
                & j.engine.induction.is(Induction::Boosted)
                & j.engine.vacuum_source.is(VacuumSource::Manifold)
                & j.control.modulator_boost_protected.no()
        },
        fires: |j| j.engine.induction.set(Induction::Boosted),
        clears: |j| {
            j.engine.induction.set(Induction::Boosted);
            j.control.modulator_boost_protected.set(true);
        },
    }

    /// Looks for the switch that a wired kickdown needs.
    ///
    /// A wire alone does nothing: without the switch at the pedal there is no downshift at full throttle. Fit it, or
    /// tell the customer. Source: memory, high.
    "VLV-21" Caution Assembly {
        accepts: false,
        title: "Kickdown has a wire and nothing that switches it",
        shop: "The kickdown wire is there and no switch at the pedal works it. Fit the switch, or tell the customer \
               that there will be no downshift at full throttle.",
        customer: Some("Your unit can drop a gear at full throttle, but no switch at the pedal tells it to. It will \
                        not do so until one is fitted."),
        fix: "Fit a switch at the pedal.",
        basis: "Memory, high.",
        when: |j, _, _| {
            j.valve_body.kind.is(ValveBodyKind::Auto)
                & j.control.kickdown.is(Kickdown::Electric)
                & j.control.kickdown_switch.no()
        },
        fires: |j| j.control.kickdown_switch.set(false),
        clears: |j| j.control.kickdown_switch.set(true),
    }
}

/// A hand-shifted valve body, with what only automatic shifts need taken out and closed.
fn by_hand(j: &mut Job) {
    j.valve_body.kind.set(ValveBodyKind::Manual);
    j.control.governor.set(Fitted::Removed);
    j.control.modulator.set(Modulator::RemovedPlugged);
}
