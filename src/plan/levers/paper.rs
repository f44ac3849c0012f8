use super::lever_table;

lever_table! {
    "paper-permanent-ack" "Have the customer sign the permanent changes" {
        work: "Show the customer each change that cannot be undone, on its own line, and wait for the signature before \
               the drill.",
        minutes: 0, parts: 0, undo: Freely,
        sets: |j, s| s.aim(&j.paper.permanent_ack, true),
    }
    "paper-customer-parts" "Have the customer sign for their own parts" {
        work: "Have the customer sign the line for the parts they brought.",
        minutes: 0, parts: 0, undo: Freely,
        sets: |j, s| s.aim(&j.paper.customer_parts_ack, true),
    }
    "paper-change-order" "Have the change order signed" {
        work: "Send the customer what changed, why and the new price, and wait for the signature.",
        minutes: 0, parts: 0, undo: Freely,
        sets: |j, s| s.aim(&j.paper.change_signed, true),
    }
    "paper-sign-current" "Have the present version signed" {
        work: "Send the customer the present version of the job and wait for the signature.",
        minutes: 0, parts: 0, undo: Freely,
        sets: |j, s| {
            if let Some(version) = j.paper.spec_version.value() {
                s.aim(&j.paper.signed_version, *version);
            }
        },
    }
}
