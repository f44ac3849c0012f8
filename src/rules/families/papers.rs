use super::rules;
use crate::quantity::Quantity;
use crate::rules::Together as _;

rules! {
    /// Looks for parts the customer brought without a signed line about them.
    ///
    /// If such a part fails, the two sides remember differently what was said. Inspect it, photograph it, list it, and
    /// have it signed that the shop does not answer for it. Source: common practice.
    "COM-01" Caution Spec {
        accepts: true,
        title: "Parts brought along are not signed for",
        shop: "The customer brought parts, and no signed line says who answers for them. Inspect, photograph and list \
               each one. The shop gives no warranty on them, and the customer signs that before they are fitted.",
        customer: Some("You brought some parts of your own. We fit them without our warranty, and we ask you to sign \
                        that you know this."),
        fix: "Get the signed line about parts brought along.",
        basis: "Common practice.",
        when: |j, _, _| j.paper.customer_parts.yes() & j.paper.customer_parts_ack.no(),
        fires: |j| {
            j.paper.customer_parts.set(true);
            j.paper.customer_parts_ack.set(false);
        },
        clears: |j| {
            j.paper.customer_parts.set(true);
            j.paper.customer_parts_ack.set(true);
        },
    }

    /// Compares the running total with the estimate the customer signed.
    ///
    /// Work that goes on past the agreed margin ends in a dispute and may not have to be paid. Spend nothing more
    /// before the customer has signed what, why, price and date. Source: common practice; local law may set another
    /// margin.
    "COM-02" Stop Spec {
        accepts: true,
        title: "Price has outgrown what the customer signed for",
        shop: "The total has passed the signed estimate by more than the agreed margin. Spend nothing more. Write down \
               what was added, why, what it costs and when it will be done; go on when the customer has signed it.",
        customer: Some("The price has gone above what you signed for. We stop here until you have seen the new one and \
                        said yes."),
        fix: "Send a change order and have it signed.",
        basis: "Common practice; local law may set another margin.",
        limits: [estimate_margin],
        when: |j, _, l| {
            let over = (j.paper.current_total.known(), j.paper.quoted_total.known())
                .together()
                .map(|(current, quoted)| current > quoted * l.estimate_margin.value());
            over & j.paper.change_signed.no()
        },
        fires: |j| {
            j.paper.current_total.set(Quantity::new(2500.0));
            j.paper.quoted_total.set(Quantity::new(2000.0));
            j.paper.change_signed.set(false);
        },
        clears: |j| {
            j.paper.current_total.set(Quantity::new(2500.0));
            j.paper.quoted_total.set(Quantity::new(2000.0));
            j.paper.change_signed.set(true);
        },
    }

    /// Compares the version the customer signed with the version the spec has now.
    ///
    /// A signature covers what was shown and nothing that changed afterward. Send the new version and wait for it
    /// before the unit leaves. Source: common practice.
    "COM-03" Stop Delivery {
        accepts: true,
        title: "The customer signed another version than this one",
        shop: "The spec changed after the customer signed, so the signature covers another build than this one. Send \
               the current version, and do not hand over the unit before it is signed.",
        customer: Some("What we build is no longer what you signed. Please read the new version, and sign it if you \
                        agree."),
        fix: "Send the current version and have it signed.",
        basis: "Common practice.",
        when: |j, _, _| j.paper.signed_version.differs_from(&j.paper.spec_version),
        fires: |j| {
            j.paper.signed_version.set(Quantity::new(2.0));
            j.paper.spec_version.set(Quantity::new(3.0));
        },
        clears: |j| {
            j.paper.signed_version.set(Quantity::new(3.0));
            j.paper.spec_version.set(Quantity::new(3.0));
        },
    }
}
