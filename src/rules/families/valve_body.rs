use super::rules;
use crate::job::{BrakeKind, BridgeDemand, CaseHistory, Demand, Gasket};

/// Cases that may hold somebody's permanent changes.
const UNTRUSTED: &[CaseHistory] = &[CaseHistory::OtherValveBody, CaseHistory::Unknown];

rules! {
    /// Compares the gaskets laid out with those the builder's sheet asks for.
    ///
    /// A wrong gasket, or one where none belongs, lets one passage leak into the next. Put on exactly what the
    /// sheet names. Source: common practice.
    "VLV-01" Stop Assembly {
        accepts: false,
        title: "Gaskets on the bench are not those of the sheet",
        shop: "Lay out exactly what the valve-body sheet asks for: it may be no gasket, two from stock, or a set of \
               its own. Any other one lets the passages leak into each other.",
        customer: None,
        fix: "Get the gaskets that the sheet names.",
        basis: "Common practice.",
        when: |j, _, _| j.valve_body.gasket_plan.differs_from(&j.valve_body.gasket),
        fires: |j| {
            j.valve_body.gasket.set(Gasket::None);
            j.valve_body.gasket_plan.set(Gasket::Stock);
        },
        clears: |j| {
            j.valve_body.gasket.set(Gasket::Custom);
            j.valve_body.gasket_plan.set(Gasket::Custom);
        },
    }

    /// Looks for the plug in the direct-clutch feed that the sheet asks for.
    ///
    /// The plug and the valve body belong to one set, and once the valve body is on, nobody gets at the feed.
    /// Drive it before then. It is a lasting change, so the customer signs first. Source: common practice.
    "VLV-02" Stop Assembly {
        accepts: false,
        title: "The valve-body sheet wants a plug that is not in",
        shop: "This valve body wants the direct-clutch feed plugged, and the case has no plug. Get the signature for \
               the lasting change, then drive the cup plug while the face of the case is still bare.",
        customer: None,
        fix: "Drive the cup plug, once the customer has signed for it.",
        basis: "Common practice.",
        when: |j, _, _| j.valve_body.feed_plug.is(Demand::Required) & j.case.feed_plugged.no(),
        fires: |j| j.valve_body.feed_plug.set(Demand::Required),
        clears: |j| {
            j.valve_body.feed_plug.set(Demand::Required);
            j.case.feed_plugged.set(true);
        },
    }

    /// Finds an earlier builder's plug where this valve body needs the feed open.
    ///
    /// The direct clutch is fed through that passage, so plug and valve body contradict each other. One of them
    /// has to change before parts are ordered. Source: common practice, inferred.
    "VLV-03" Stop Spec {
        accepts: true,
        title: "Case feed is plugged and must be open",
        shop: "An earlier builder plugged the direct-clutch feed, and this valve body needs it open. Draw the plug \
               and leave a clean bore, or choose a valve body that wants the plug, or another case.",
        customer: Some("A past builder changed something inside your case. The control unit you chose needs a case \
                        without that change. One of the two must give way."),
        fix: "Draw the plug, or take another valve body or another case.",
        basis: "Common practice, inferred.",
        when: |j, _, _| j.valve_body.feed_plug.is(Demand::Forbidden) & j.case.feed_plugged.yes(),
        fires: |j| {
            j.valve_body.feed_plug.set(Demand::Forbidden);
            j.case.feed_plugged.set(true);
        },
        clears: |j| j.valve_body.feed_plug.set(Demand::Forbidden),
    }

    /// Looks for the passage ball that the sheet asks for.
    ///
    /// The ball closes a case passage that this valve body must not see open, and it practically never comes out
    /// again. Have the customer sign, then drive it as deep as the sheet says. Source: common practice.
    "VLV-04" Stop Assembly {
        accepts: false,
        title: "The valve-body sheet wants a ball that is not in",
        shop: "This valve body wants a ball in the case passage, and there is none. Get the signature first, because \
               it will never come out; then drive it to the depth that the sheet gives.",
        customer: None,
        fix: "Drive the ball, once the customer has signed for it.",
        basis: "Common practice.",
        when: |j, _, _| j.valve_body.passage_ball.is(Demand::Required) & j.case.passage_ball.no(),
        fires: |j| j.valve_body.passage_ball.set(Demand::Required),
        clears: |j| {
            j.valve_body.passage_ball.set(Demand::Required);
            j.case.passage_ball.set(true);
        },
    }

    /// Finds a ball in the case where this valve body needs the passage open.
    ///
    /// The ball is there for good, so it comes down to another case or another valve body. Better to know it before
    /// either is paid for. Source: common practice.
    "VLV-05" Stop Spec {
        accepts: true,
        title: "A ball in the case shuts what this body needs open",
        shop: "The ball in the case passage will not come out, and this valve body needs the passage open. Choose a \
               valve body that lives with the ball, or another case.",
        customer: Some("Someone closed a passage in your case for good. The control unit you chose needs that passage \
                        open, so we have to look for another unit or another case."),
        fix: "Take another valve body or another case.",
        basis: "Common practice.",
        when: |j, _, _| j.valve_body.passage_ball.is(Demand::Forbidden) & j.case.passage_ball.yes(),
        fires: |j| {
            j.valve_body.passage_ball.set(Demand::Forbidden);
            j.case.passage_ball.set(true);
        },
        clears: |j| {
            j.valve_body.passage_ball.set(Demand::Either);
            j.case.passage_ball.set(true);
        },
    }

    /// Looks at the small bridge near the modulator bore where a sheet or an outside solenoid wants it lower.
    ///
    /// The brake works through the fluid that passes over the bridge, so a high one makes it slow. Grinding makes
    /// chips; it belongs before the wash. Source: common practice.
    "VLV-06" Caution Spec {
        accepts: false,
        title: "Small bridge in the case has not been lowered",
        shop: "An outside solenoid, or the sheet, wants more flow than the small bridge lets through, and the brake \
               will be slow. Lower the bridge before the wash, and wash the chips out.",
        customer: None,
        fix: "Lower the bridge, then wash the case.",
        basis: "Common practice.",
        when: |j, _, _| {
            (j.valve_body.bridge.is(BridgeDemand::Required) | j.valve_body.brake.is(BrakeKind::External))
                & j.case.bridge_lowered.no()
        },
        fires: |j| j.valve_body.brake.set(BrakeKind::External),
        clears: |j| {
            j.valve_body.brake.set(BrakeKind::External);
            j.case.bridge_lowered.set(true);
        },
    }

    /// Asks for a map of a case that somebody else has changed, or may have.
    ///
    /// Plugs, balls and ground edges suit one valve body only. A valve body chosen without knowing them may not
    /// work in this case at all. Map and photograph the case first. Source: common practice.
    "VLV-07" Stop Teardown {
        accepts: false,
        title: "Changed or unknown case has not been mapped",
        shop: "Nobody can say what this case still allows. Before anyone chooses a valve body, draw what was plugged, \
               balled or ground onto the picture of the case, and take photographs.",
        customer: Some("Your case was changed before, or nobody can tell. We must see what was done to it before we \
                        order parts."),
        fix: "Map the case and photograph what you find.",
        basis: "Common practice.",
        when: |j, _, _| j.case.history.one_of(UNTRUSTED) & j.case.passages_mapped.no(),
        fires: |j| {
            j.case.history.set(CaseHistory::OtherValveBody);
            j.case.passages_mapped.set(false);
        },
        clears: |j| {
            j.case.history.set(CaseHistory::OtherValveBody);
            j.case.passages_mapped.set(true);
        },
    }
}
