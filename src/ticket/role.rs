//! Who may do what.

use super::coded::coded;
use Action::*;

coded! {
    /// What a member of staff is in the shop.
    Role {
        /// Takes units in, talks with customers, hands over.
        Desk = "desk", "Front desk";
        /// Takes apart, measures, builds.
        Technician = "technician", "Technician";
        /// Answers for the shop.
        Owner = "owner", "Owner";
    }
}

coded! {
    /// Something a member of staff may be allowed to do.
    Action {
        /// Read tickets, the board, histories.
        ReadTickets = "read_tickets", "read tickets";
        /// Open a ticket for a unit.
        TakeIn = "take_in", "take a unit in";
        /// Write down or correct facts and choices.
        ChangeFacts = "change_facts", "change facts";
        /// Change what the customer asked for, the words of the ticket.
        ChangeWords = "change_words", "change what the customer asked for";
        /// Change the price.
        ChangePrice = "change_price", "change the price";
        /// Change a customer's or vehicle's particulars.
        ChangeContact = "change_contact", "change customer and vehicle particulars";
        /// Promise a date.
        ChangePromise = "change_promise", "promise a date";
        /// Say who holds the next move.
        ChangeWaits = "change_waits", "say who the job waits for";
        /// Move a ticket to another stage.
        MoveStage = "move_stage", "move a job to another stage";
        /// Record that the customer declined the job.
        GiveUp = "give_up", "close a job as declined";
        /// Pass a closed gate with a written reason.
        OverrideGate = "override_gate", "pass a gate that is closed";
        /// Write a note.
        WriteNote = "write_note", "write a note";
        /// Type a class table, or a new version of one.
        WriteClassTables = "write_class_tables", "type class tables";
        /// Make, list and revoke customer links.
        ManageLinks = "manage_links", "make or revoke customer links";
        /// Take a customer's answer at the counter.
        CounterSign = "counter_sign", "take a signature at the counter";
        /// List, add and disable staff.
        ManageStaff = "manage_staff", "manage staff";
        /// Change the shop's own particulars.
        ManageShop = "manage_shop", "change the shop's particulars";
        /// Write rules of the shop's own, try them, switch them on and off.
        ManageRules = "manage_rules", "write rules of the shop's own";
        /// Move a limit of the rule book. Reading the limits is reading the rule book: all staff may.
        ChangeLimits = "change_limits", "change the shop's limits";
        /// Set aside, for one job and in writing, a caution or note that asks nothing of the customer; bring back
        /// whatever is set aside, which is the safe way round.
        SetAside = "set_aside", "set a finding aside, or bring one back";
        /// Set aside a stop, which opens a gate, or what the customer has to accept, which takes a tick off a paper.
        SetAsideGrave = "set_aside_grave", "set aside a stop or what the customer has to accept";
        /// Change one's own password, sign out.
        OwnAccount = "own_account", "change their own password";
    }
}

/// May a person of this role do this?
pub const fn may(role: Role, action: Action) -> bool {
    match role {
        Role::Owner => true,
        Role::Desk => {
            !matches!(action, OverrideGate | ManageStaff | ManageShop | ManageRules | ChangeLimits | SetAsideGrave)
        }
        Role::Technician => matches!(
            action,
            ReadTickets | TakeIn | ChangeFacts | ChangeWords | ChangeWaits | MoveStage | WriteNote | OwnAccount
        ),
    }
}

impl Action {
    /// Whose work it is, for the sentence that refuses somebody else.
    pub fn whose(self) -> String {
        let roles: Vec<_> = Role::ALL.iter().filter(|role| may(**role, self)).map(|role| role.label()).collect();
        match roles.split_last() {
            Some((last, [])) => (*last).to_owned(),
            Some((last, rest)) => format!("{} or {last}", rest.join(", ")),
            None => String::new(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_owner_passes_gates_and_runs_the_shop() {
        for action in [OverrideGate, ManageStaff, ManageShop, ManageRules, ChangeLimits, SetAsideGrave] {
            assert!(may(Role::Owner, action));
            assert!(!may(Role::Desk, action), "{}", action.label());
            assert!(!may(Role::Technician, action), "{}", action.label());
        }
    }

    #[test]
    fn a_technician_touches_neither_money_nor_the_customers_papers() {
        for action in [ChangePrice, ChangeContact, ChangePromise, GiveUp, ManageLinks, CounterSign, SetAside] {
            assert!(!may(Role::Technician, action), "{}", action.label());
            assert!(may(Role::Desk, action), "{}", action.label());
        }
    }

    #[test]
    fn everybody_reads_writes_notes_and_moves_jobs() {
        for role in Role::ALL {
            for action in [ReadTickets, WriteNote, MoveStage, ChangeFacts, ChangeWaits, OwnAccount] {
                assert!(may(*role, action), "{} should {}", role.label(), action.label());
            }
        }
        assert_eq!(ChangePrice.whose(), "Front desk or Owner");
    }
}
