use super::rules;
use crate::job::{CaseVariant, CenterSeal, Demand, Fact, Job, SealDemand, UseKind};
use crate::quantity::{Inch, Quantity};
use crate::rules::{Limits, Together, Truth};

/// Does the drum have its middle seal the other way than the builder sheet wants it?
fn seal_differs(j: &Job) -> Truth {
    (j.direct.center_seal.known(), j.valve_body.center_seal.known()).together().map(|(fitted, wanted)| {
        !matches!((fitted, wanted), (CenterSeal::In, SealDemand::In) | (CenterSeal::Out, SealDemand::Out))
    })
}

/// Does the clearance of a pack lie outside what the shop allows for so many frictions?
fn clearance_out(clearance: &Fact<Quantity<Inch>>, frictions: &Fact<u32>, limits: &Limits) -> Truth {
    let for_all = |each: Quantity<Inch>| frictions.known().map(|count| each * f64::from(count));
    clearance.less_than(&for_all(limits.pack_clear_least)) | clearance.more_than(&for_all(limits.pack_clear_most))
}

rules! {
    /// Looks for an open reverse feed behind a direct drum that has no middle seal.
    ///
    /// Without the seal both piston areas share one oil, and an open feed lets it out again: the clutch never
    /// gets its pressure. A plug, a blocking plate or the seal closes the leak. Source: memory, high.
    "CLT-01" Stop Assembly {
        accepts: false,
        title: "Third loses its pressure through the reverse passage",
        shop: "The middle seal is out, so both areas of the direct piston share their oil, and it runs away through \
               the reverse feed. Close that feed with a plug or with a plate made for it, or fit the seal again.",
        customer: None,
        fix: "Plug or block the reverse feed, or fit the middle seal.",
        basis: "Memory, high.",
        when: |j, _, _| {
            j.direct.center_seal.is(CenterSeal::Out) & j.case.feed_plugged.no() & j.valve_body.blocks_feed.no()
        },
        fires: joined_feed,
        clears: |j| {
            joined_feed(j);
            j.case.feed_plugged.set(true);
            j.valve_body.feed_plug.set(Demand::Either);
        },
    }

    /// Compares the middle seal in the direct drum with what the valve body wants.
    ///
    /// A valve body is made for a split feed or for a joined one, and works with no other. Seal, rings, plug
    /// and valve body are one set. Source: the builder sheet; memory, medium.
    "CLT-02" Stop Assembly {
        accepts: false,
        title: "The middle seal is the wrong choice for this valve body",
        shop: "The builder sheet wants the middle seal of the direct drum one way and the drum has it the other. \
               Change the seal, or take another valve body.",
        customer: None,
        fix: "Fit or leave out the seal as the builder sheet says, or change the valve body.",
        basis: "Builder sheet; memory, medium.",
        when: |j, _, _| j.valve_body.center_seal.one_of(&[SealDemand::In, SealDemand::Out]) & seal_differs(j),
        fires: |j| {
            j.valve_body.center_seal.set(SealDemand::Out);
            j.direct.center_seal.set(CenterSeal::In);
        },
        clears: |j| {
            j.valve_body.center_seal.set(SealDemand::In);
            j.direct.center_seal.set(CenterSeal::In);
        },
    }

    /// Holds the clearance of the forward pack against the window for its number of frictions.
    ///
    /// Too tight, the pack drags and burns; too loose, it takes hold late and hard. Another steel or pressure
    /// plate brings it back. Source: common practice; the two limits are memory, low.
    "CLT-03" Stop Assembly {
        accepts: false,
        title: "Forward pack is set too tight or too loose",
        shop: "The clearance of the forward pack lies outside what is allowed for its frictions. Aim for 0.010 in \
               each; change steels or the pressure plate, then measure again.",
        customer: None,
        fix: "Fit steels or a pressure plate of another thickness.",
        basis: "Common practice; the limits are memory, low.",
        limits: [pack_clear_least, pack_clear_most],
        when: |j, _, l| clearance_out(&j.forward.clear_in, &j.forward.frictions, l),
        fires: |j| j.forward.clear_in.set(Quantity::new(0.02)),
        clears: |j| j.forward.clear_in.set(Quantity::new(0.05)),
    }

    /// Holds the clearance of the direct pack against the window for its number of frictions.
    ///
    /// In first the drum turns backwards at 0.84 times the input's speed, and plates without room drag all that time.
    /// Another steel or pressure plate brings it back. Source: common practice; the two limits are memory, low; the
    /// 0.84 follows from the gear ratios.
    "CLT-04" Stop Assembly {
        accepts: false,
        title: "Direct pack is set too tight or too loose",
        shop: "The clearance of the direct pack lies outside what is allowed for its frictions. In first the drum \
               turns backwards at 0.84 times the input's speed, so plates without room drag. Aim for 0.010 in each and \
               change steels.",
        customer: None,
        fix: "Fit steels of another thickness.",
        basis: "Common practice; the limits are memory, low; 0.84 is derived.",
        limits: [pack_clear_least, pack_clear_most],
        when: |j, _, l| clearance_out(&j.direct.clear_in, &j.direct.frictions, l),
        fires: |j| j.direct.clear_in.set(Quantity::new(0.14)),
        clears: |j| j.direct.clear_in.set(Quantity::new(0.06)),
    }

    /// Holds the clearance of the intermediate pack against the window for its number of frictions.
    ///
    /// This pack makes second gear. Too tight it drags, too loose it takes hold late; another steel brings it
    /// back. Source: common practice; the two limits are memory, low.
    "CLT-05" Stop Assembly {
        accepts: false,
        title: "Intermediate pack is set too tight or too loose",
        shop: "The pack that makes second gear has a clearance outside what is allowed for its frictions. Aim for \
               0.010 in each; change steels, then measure once more.",
        customer: None,
        fix: "Fit a steel of another thickness.",
        basis: "Common practice; the limits are memory, low.",
        limits: [pack_clear_least, pack_clear_most],
        when: |j, _, l| clearance_out(&j.intermediate.clear_in, &j.intermediate.frictions, l),
        fires: |j| j.intermediate.clear_in.set(Quantity::new(0.01)),
        clears: |j| j.intermediate.clear_in.set(Quantity::new(0.035)),
    }

    /// Finds the light-duty relative in a job that is hard on it.
    ///
    /// Inside, its packs are thinner and its output shaft is smaller than in the heavy unit. Better parts go in now,
    /// while it is apart, or a heavy core is used instead. Source: common practice; the torque line is a shop setting.
    "CLT-06" Caution Teardown {
        accepts: true,
        title: "A lighter sister of this unit on heavy work",
        shop: "This core has fewer clutch plates and a smaller output shaft inside, and this use or torque is hard on \
               it. Either the heavy unit's drums, plates and output shaft go in, or the job starts from a heavy \
               core.",
        customer: Some("Inside, your unit is the lighter kind. For what you do with it, it needs stronger parts. We \
                        can also start from a heavier one."),
        fix: "Fit heavy-duty drums, plates and output, or use another core.",
        basis: "Common practice; the torque line is a shop setting.",
        limits: [light_duty_torque],
        when: |j, _, l| {
            j.case.variant.is(CaseVariant::LightDuty)
                & (j.usage.kind.one_of(&[UseKind::Tow, UseKind::Offroad, UseKind::Drag, UseKind::Pull])
                    | j.engine.torque_lbft.above(l.light_duty_torque))
        },
        fires: |j| {
            j.case.variant.set(CaseVariant::LightDuty);
            j.usage.kind.set(UseKind::Tow);
        },
        clears: |j| {
            j.case.variant.set(CaseVariant::LightDuty);
            j.usage.kind.set(UseKind::Street);
        },
    }
}

/// A direct drum without its middle seal, and a valve body that takes it either way.
fn joined_feed(j: &mut Job) {
    j.direct.center_seal.set(CenterSeal::Out);
    j.valve_body.center_seal.set(SealDemand::Either);
}
