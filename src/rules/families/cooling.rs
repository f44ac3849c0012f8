use super::rules;
use crate::job::{Cooler, CoolerAction, Hose, PortThread, UseKind};
use crate::quantity::Quantity;
use crate::rules::parts::SPRAG_34;

rules! {
    /// Compares the thread of the cooler fittings with that of the ports in the case.
    ///
    /// A taper fitting wedges a straight port open until the case splits; the other way round, the few threads that
    /// meet leak and tear out. A split port cannot be saved. Source: common practice; taper pipe thread is ASME
    /// B1.20.1.
    "COL-01" Stop Assembly {
        accepts: false,
        title: "Cooler fitting and port have different threads",
        shop: "Do not turn this fitting in. A taper fitting splits a straight port, and a straight one leaks and \
               strips in a taper port. Test the port by hand and get fittings to match.",
        customer: Some("The cooler line fittings have the wrong thread for your case. Forced in, they would crack \
                        it. We will use the right ones."),
        fix: "Get fittings with the thread of the ports.",
        basis: "Common practice; standard ASME B1.20.1 for taper pipe thread.",
        when: |j, _, _| j.cooling.fitting.differs_from(&j.cooling.port),
        fires: |j| j.cooling.fitting.set(PortThread::Taper),
        clears: |j| {
            j.cooling.port.set(PortThread::Taper);
            j.cooling.fitting.set(PortThread::Taper);
        },
    }

    /// Looks for a straight fitting without its sealing washer.
    ///
    /// The thread of a straight fitting does not seal; the washer does. Tightening harder only strips the port.
    /// Source: common practice.
    "COL-02" Caution Assembly {
        accepts: false,
        title: "Nothing seals the straight cooler fitting",
        shop: "A straight fitting is sealed by its washer, so this one will leak however tight it is. Put a new \
               washer on, start the fitting with the fingers until it stops, then snug it.",
        customer: None,
        fix: "Fit a new sealing washer.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.cooling.port.is(PortThread::Straight)
                & j.cooling.fitting.is(PortThread::Straight)
                & j.cooling.fitting_washer.no()
        },
        fires: |j| j.cooling.fitting_washer.set(false),
        clears: |j| j.cooling.fitting_washer.set(true),
    }

    /// Asks for a new cooler after a failure that left debris.
    ///
    /// Fine metal stays between the fins whatever is pumped through, and comes out into the rebuilt unit.
    /// Source: common practice (looked up).
    "COL-03" Stop Delivery {
        accepts: true,
        title: "Debris was found and the old cooler is still there",
        shop: "The failure left debris, and what lodges between the fins of a cooler never comes out whole. Fit a \
               new cooler and flush the lines.",
        customer: Some("Bits of metal from the old failure sit in your cooler and cannot be washed out. They would \
                        ruin the rebuilt unit, so the cooler must be new."),
        fix: "Fit a new cooler and flush the lines.",
        basis: "Common practice (looked up).",
        when: |j, _, _| j.case.failure_debris.yes() & j.cooling.action.is_not(CoolerAction::Replaced),
        fires: |j| {
            j.case.failure_debris.set(true);
            j.cooling.inline_filter.set(true);
        },
        clears: |j| {
            j.case.failure_debris.set(true);
            j.cooling.inline_filter.set(true);
            j.cooling.action.set(CoolerAction::Replaced);
        },
    }

    /// Asks whether the cooler was cleaned at all.
    ///
    /// Whatever wore off the old parts sits in the cooler and reaches the rebuilt unit in the first minute.
    /// Source: common practice (looked up).
    "COL-04" Stop Delivery {
        accepts: true,
        title: "Old debris may still sit in the cooler",
        shop: "Do not start the engine on this cooler. Flush it in both directions and dry it with air, glasses on \
               and the pressure turned down, or replace it.",
        customer: Some("Old dirt in your cooler would run into the rebuilt unit. We cannot stand behind our work \
                        unless the cooler is cleaned or new."),
        fix: "Flush the cooler both ways, or replace it.",
        basis: "Common practice (looked up).",
        when: |j, _, _| j.cooling.cooler.is_not(Cooler::None) & j.cooling.action.is(CoolerAction::None),
        fires: |j| j.cooling.action.set(CoolerAction::None),
        clears: |j| j.cooling.action.set(CoolerAction::Flushed),
    }

    /// Times one quart out of the cooler return at hot idle.
    ///
    /// A slow return means a blocked cooler or a pinched line; the unit overheats and its rear end starves of
    /// oil. Source: common practice, one quart in 20 seconds.
    "COL-05" Stop Test {
        accepts: false,
        title: "Too little fluid comes back from the cooler",
        shop: "One quart takes too long to come out of the cooler return at hot idle. The fluid is hot: keep hands \
               and face away. Find the pinched line or the blocked cooler before the road test.",
        customer: Some("Too little fluid flows through your cooler. Your unit would get too hot, so we will find \
                        what blocks it."),
        fix: "Clear or replace the line or the cooler.",
        basis: "Common practice, one quart in 20 seconds.",
        limits: [cooler_flow],
        when: |j, _, l| j.cooling.flow_s_per_qt.above(l.cooler_flow),
        fires: |j| j.cooling.flow_s_per_qt.set(Quantity::new(32.0)),
        clears: |j| j.cooling.flow_s_per_qt.set(Quantity::new(16.0)),
    }

    /// Looks for a road vehicle without a cooler.
    ///
    /// In traffic the converter heats the fluid faster than the case can shed it. Source: common practice.
    "COL-06" Stop Spec {
        accepts: true,
        title: "Road vehicle without a cooler",
        shop: "Fit a cooler. Without one, slow traffic overheats the fluid until the unit fails.",
        customer: Some("Your vehicle has no cooler for this unit. In slow traffic the fluid would burn in a few \
                        minutes and ruin the unit. It needs a cooler."),
        fix: "Fit a cooler.",
        basis: "Common practice.",
        when: |j, _, _| j.cooling.cooler.is(Cooler::None) & j.usage.road_driven.yes(),
        fires: |j| {
            j.cooling.cooler.set(Cooler::None);
            j.cooling.action.set(CoolerAction::None);
            j.usage.road_driven.set(true);
        },
        clears: |j| {
            j.cooling.cooler.set(Cooler::None);
            j.cooling.action.set(CoolerAction::None);
            j.usage.road_driven.set(false);
        },
    }

    /// Looks for a vehicle that tows, or crawls off the road, with the radiator's cooler alone.
    ///
    /// The radiator's own cooler cannot bring the fluid below the coolant, and under load that is hot already.
    /// Source: common practice.
    "COL-07" Caution Spec {
        accepts: true,
        title: "Only the radiator cools a hard-working unit",
        shop: "Towing and slow off-road work make more heat than the radiator's cooler can take. Mount a second \
               cooler where air reaches it, and let the fluid pass the radiator first.",
        customer: Some("Towing and slow off-road driving make a lot of heat. We strongly advise a second cooler. \
                        Heat is what ends most units."),
        fix: "Add an outside cooler after the radiator.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.usage.kind.one_of(&[UseKind::Tow, UseKind::Offroad]) & j.cooling.cooler.is(Cooler::Radiator)
        },
        fires: |j| j.usage.kind.set(UseKind::Tow),
        clears: |j| {
            j.usage.kind.set(UseKind::Tow);
            j.cooling.cooler.set(Cooler::Both);
        },
    }

    /// Looks for hose that is not made for hot fluid under pressure.
    ///
    /// Fuel and heater hose soften in hot fluid and burst, often over the exhaust, and that is a fire. Source:
    /// standard SAE J1532, confidence medium.
    "COL-08" Stop Delivery {
        accepts: false,
        title: "Wrong hose on the cooler lines",
        shop: "This hose is not made for hot fluid under pressure. It softens and bursts, as fuel and heater hose \
               do, and near the exhaust that is a fire. Change it for rated hose or steel line.",
        customer: Some("The cooler hose on your vehicle is the wrong kind. It can burst and spray hot fluid on the \
                        exhaust, which can start a fire. You need a new hose."),
        fix: "Fit hose rated to SAE J1532 or better, or steel line.",
        basis: "Standard SAE J1532, confidence medium.",
        when: |j, _, _| j.cooling.hose.is(Hose::Unrated),
        fires: |j| j.cooling.hose.set(Hose::Unrated),
        clears: |j| j.cooling.hose.set(Hose::Rated),
    }

    /// Looks for small cooler lines on a job that makes much heat.
    ///
    /// Small lines hold the flow back whatever cooler hangs on them. Dash-6 has a 9/16-18 thread and is nominal
    /// 3/8 in. Source: standard SAE J514 for the thread; the size is memory, medium.
    "COL-09" Caution Spec {
        accepts: false,
        title: "Cooler lines are too thin for this work",
        shop: "These lines are too small for the heat this use makes. Change all of it to dash-6, which is nominal \
               3/8 in; one small piece left in holds the rest back.",
        customer: Some("Your cooler lines are thin for the way you use your vehicle. We advise larger ones, so that \
                        more fluid gets cooled."),
        fix: "Fit dash-6 lines for the whole run.",
        basis: "Standard SAE J514 for dash-6 thread 9/16-18; the size is memory, medium.",
        limits: [cooler_line],
        when: |j, _, l| {
            j.cooling.line_id_in.below(l.cooler_line)
                & j.usage.kind.one_of(&[UseKind::Tow, UseKind::Offroad, UseKind::Drag, UseKind::Pull])
        },
        fires: |j| {
            j.cooling.line_id_in.set(Quantity::new(0.25));
            j.usage.kind.set(UseKind::Drag);
            j.usage.road_driven.set(false);
            j.one_way.elements.set(SPRAG_34);
        },
        clears: |j| {
            j.cooling.line_id_in.set(Quantity::new(0.34));
            j.usage.kind.set(UseKind::Drag);
            j.usage.road_driven.set(false);
            j.one_way.elements.set(SPRAG_34);
        },
    }

    /// Asks for a filter in the cooler return after a failure that left debris.
    ///
    /// Even with a new cooler something is left in the lines and the case; a magnetic filter holds it back
    /// until the first service. Source: common practice.
    "COL-10" Caution Delivery {
        accepts: false,
        title: "No filter in the cooler return after a failure",
        shop: "The failure left debris, and some of it is still on its way. Put a magnetic filter into the return \
               line and look inside when the unit comes back for its first service.",
        customer: Some("A few bits of metal from the old failure may still be on their way. A small filter in the \
                        line catches them before they do harm."),
        fix: "Fit a magnetic filter in the return line.",
        basis: "Common practice.",
        when: |j, _, _| j.case.failure_debris.yes() & j.cooling.inline_filter.no(),
        fires: |j| {
            j.case.failure_debris.set(true);
            j.cooling.action.set(CoolerAction::Replaced);
        },
        clears: |j| {
            j.case.failure_debris.set(true);
            j.cooling.action.set(CoolerAction::Replaced);
            j.cooling.inline_filter.set(true);
        },
    }

    /// Asks for both coolers where a heavy trailer is pulled.
    ///
    /// Above this weight one cooler of either kind is not enough, and only a temperature gauge tells the driver
    /// in time. Source: shop setting.
    "COL-11" Caution Spec {
        accepts: true,
        title: "Heavy trailer and only part of the cooling it needs",
        shop: "A trailer this heavy wants the radiator's cooler and an outside one, and a temperature gauge that the \
               driver can see. Fit what is missing.",
        customer: Some("Your trailer is heavy and will make the fluid hot. Please have two coolers, and a gauge that \
                        shows the heat, so that you can stop before harm is done."),
        fix: "Fit the second cooler and a temperature gauge.",
        basis: "Shop setting.",
        limits: [heavy_trailer],
        when: |j, _, l| j.vehicle.tow_weight_lb.above(l.heavy_trailer) & j.cooling.cooler.is_not(Cooler::Both),
        fires: |j| {
            j.usage.kind.set(UseKind::Tow);
            j.vehicle.tow_weight_lb.set(Quantity::new(7000.0));
            j.cooling.cooler.set(Cooler::External);
        },
        clears: |j| {
            j.usage.kind.set(UseKind::Tow);
            j.vehicle.tow_weight_lb.set(Quantity::new(7000.0));
            j.cooling.cooler.set(Cooler::Both);
        },
    }
}
