//! The gates between stages: what must be signed and clear before work goes on.

use super::approval::Approval;
use super::coded::coded;
use super::stage::{Stage, Way};
use serde::{Deserialize, Serialize};

coded! {
    /// Something that must be so before a stage may be entered.
    Gate {
        /// The customer has allowed the unit to be taken apart.
        IntakeAuthorised = "intake_authorised", "Teardown authorised";
        /// The customer has signed what is going to be built.
        RevisionSigned = "revision_signed", "Current version signed";
        /// No finding stands that must be put right first.
        NoOpenStop = "no_open_stop", "No open stop";
    }
}

/// How a ticket stands before its gates.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Standing {
    /// The teardown authorisation.
    pub intake: Approval,
    /// The customer's answer to the current revision.
    pub build: Approval,
    /// The titles of the stops among the current findings.
    pub open_stops: Vec<String>,
    /// The titles of the stops that would be decided but for something that is only planned.
    pub only_planned: Vec<String>,
    /// Gates an owner passed with a reason that still holds for what stands now.
    pub overridden: Vec<Gate>,
}

/// An owner's decision to pass a closed gate.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Override {
    /// The gate.
    pub gate: Gate,
    /// Why, in writing. It stays on the ticket.
    pub reason: String,
}

/// Why a move is refused: what is missing and what to do about it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refusal {
    /// The gate, when it is one and an owner could pass it.
    pub gate: Option<Gate>,
    /// The sentence for the person.
    pub message: String,
}

/// The fewest characters of a written reason that can say anything.
const SHORTEST_REASON: usize = 5;

impl Gate {
    /// Must this gate be open to enter that stage?
    pub fn guards(self, to: Stage) -> bool {
        match self {
            _ if to == Stage::Declined => false,
            Self::IntakeAuthorised => to >= Stage::Teardown,
            Self::RevisionSigned | Self::NoOpenStop => to >= Stage::Machining,
        }
    }

    /// What keeps it closed, in a sentence; nothing when it is open.
    pub fn closed_because(self, standing: &Standing) -> Option<String> {
        match self {
            Self::IntakeAuthorised => match standing.intake {
                Approval::Signed => None,
                Approval::Declined => Some(
                    "The customer declined to have the unit taken apart. Talk to them, then ask for a new signature."
                        .to_owned(),
                ),
                Approval::Missing | Approval::Void => Some(
                    "The customer has not signed the teardown authorisation. Send the intake link, or take the \
                     signature at the counter."
                        .to_owned(),
                ),
            },
            Self::RevisionSigned => match standing.build {
                Approval::Signed => None,
                Approval::Missing => Some(
                    "The customer has not signed the current version. Send the summary link, or take the signature \
                     at the counter."
                        .to_owned(),
                ),
                Approval::Void => Some(
                    "What the customer signed has changed since, so that signature no longer holds. Send the new summary \
                     for signing."
                        .to_owned(),
                ),
                Approval::Declined => Some(
                    "The customer declined the current version. Change what they asked for and send it again, or \
                     close the job as declined."
                        .to_owned(),
                ),
            },
            Self::NoOpenStop => {
                let stands = (!standing.open_stops.is_empty()).then(|| {
                    let stops = standing.open_stops.join("; ");
                    format!("These must be put right first: {stops}. Fix them, or correct the facts they rest on.")
                });
                let waits = (!standing.only_planned.is_empty()).then(|| {
                    let stops = standing.only_planned.join("; ");
                    format!(
                        "These cannot be ruled out on a plan: {stops}. Do what is planned, then write down what was \
                         measured, tried or signed."
                    )
                });
                let said: Vec<String> = stands.into_iter().chain(waits).collect();
                (!said.is_empty()).then(|| said.join(" "))
            }
        }
    }
}

/// May the ticket move? All that is missing is said at once.
///
/// A move back and a decline need a written `reason`; `overrides` name the gates an owner passes now.
///
/// # Errors
/// One [`Refusal`] for each thing that stands in the way.
pub fn may_move(
    from: Stage,
    to: Stage,
    reason: &str,
    standing: &Standing,
    overrides: &[Override],
) -> Result<Way, Vec<Refusal>> {
    let plain = |message: String| Refusal { gate: None, message };
    let Some(way) = from.way_to(to) else { return Err(vec![plain(no_such_move(from, to))]) };
    let mut refusals = Vec::new();
    if way != Way::Forward && too_short(reason) {
        let what = if way == Way::Back { "goes back" } else { "is declined" };
        refusals.push(plain(format!("Write down why the job {what}; a few words are enough.")));
    }
    for gate in Gate::ALL.iter().copied().filter(|gate| gate.guards(to)) {
        let Some(message) = gate.closed_because(standing) else { continue };
        if standing.overridden.contains(&gate) {
            continue;
        }
        match overrides.iter().find(|given| given.gate == gate) {
            Some(given) if !too_short(&given.reason) => {}
            Some(_) => refusals.push(Refusal {
                gate: Some(gate),
                message: format!("{message} To pass this gate, write down why; the reason stays on the ticket."),
            }),
            None => refusals.push(Refusal { gate: Some(gate), message }),
        }
    }
    if refusals.is_empty() { Ok(way) } else { Err(refusals) }
}

fn too_short(reason: &str) -> bool {
    reason.trim().chars().count() < SHORTEST_REASON
}

fn no_such_move(from: Stage, to: Stage) -> String {
    if from == to {
        return format!("The job is already at {}.", to.label());
    }
    if !from.open() {
        return format!("The job is {} and cannot move any more. Open a new ticket.", from.label().to_lowercase());
    }
    let onward: Vec<_> =
        from.moves().into_iter().filter(|(_, way)| *way == Way::Forward).map(|(stage, _)| stage.label()).collect();
    format!(
        "A job at {} cannot go straight to {}. The next stage is {}.",
        from.label(),
        to.label(),
        onward.join(" or ")
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use Approval::*;

    fn standing(intake: Approval, build: Approval, stops: &[&str]) -> Standing {
        let open_stops = stops.iter().map(|stop| (*stop).to_owned()).collect();
        Standing { intake, build, open_stops, only_planned: Vec::new(), overridden: Vec::new() }
    }

    fn all_clear() -> Standing {
        standing(Signed, Signed, &[])
    }

    #[test]
    fn every_move_outside_the_table_is_refused_with_a_sentence() {
        for from in Stage::ALL {
            for to in Stage::ALL {
                let answer = may_move(*from, *to, "because we must", &all_clear(), &[]);
                assert_eq!(answer.is_ok(), from.way_to(*to).is_some(), "{} to {}", from.label(), to.label());
                if let Err(refusals) = answer {
                    assert_eq!(refusals.len(), 1);
                    assert!(refusals[0].message.ends_with('.') && refusals[0].gate.is_none());
                }
            }
        }
    }

    #[test]
    fn nothing_comes_apart_without_the_authorisation() {
        for (intake, word) in [(Missing, "has not signed the teardown"), (Declined, "declined")] {
            let refusals = may_move(Stage::Spec, Stage::Teardown, "", &standing(intake, Signed, &[]), &[]);
            let refusals = refusals.expect_err("the gate is closed");
            assert!(refusals[0].message.contains(word), "{}", refusals[0].message);
        }
        assert_eq!(
            may_move(Stage::Spec, Stage::Teardown, "", &standing(Signed, Missing, &["x"]), &[]),
            Ok(Way::Forward)
        );
    }

    #[test]
    fn nothing_irreversible_and_no_assembly_while_unsigned_or_stopped() {
        let moves = [(Stage::Parts, Stage::Machining), (Stage::Parts, Stage::Assembly), (Stage::Assembly, Stage::Test)];
        for (from, to) in moves {
            for build in [Missing, Void, Declined] {
                let refusals = may_move(from, to, "", &standing(Signed, build, &["Bell holes differ"]), &[]);
                let gates: Vec<_> = refusals.expect_err("both are closed").into_iter().map(|r| r.gate).collect();
                assert_eq!(gates, [Some(Gate::RevisionSigned), Some(Gate::NoOpenStop)]);
            }
            assert_eq!(may_move(from, to, "", &all_clear(), &[]), Ok(Way::Forward));
        }
        assert_eq!(may_move(Stage::Quote, Stage::Parts, "", &standing(Signed, Missing, &["x"]), &[]), Ok(Way::Forward));
    }

    #[test]
    fn a_stop_that_was_only_planned_away_keeps_the_gate_shut() {
        let planned = Standing { only_planned: vec!["End play out of limits".into()], ..all_clear() };
        let refused = may_move(Stage::Assembly, Stage::Test, "", &planned, &[]).expect_err("the gate is closed");
        assert_eq!(refused[0].gate, Some(Gate::NoOpenStop));
        assert!(refused[0].message.starts_with("These cannot be ruled out on a plan: End play out of limits."));
        let both = Standing { open_stops: vec!["Bell holes differ".into()], ..planned };
        let message = Gate::NoOpenStop.closed_because(&both).expect("closed");
        assert!(message.contains("put right first: Bell holes differ.") && message.contains("End play"), "{message}");
    }

    #[test]
    fn going_back_and_giving_up_want_a_reason_but_giving_up_wants_no_signature() {
        assert!(may_move(Stage::Test, Stage::Assembly, "   ", &all_clear(), &[]).is_err());
        assert_eq!(may_move(Stage::Test, Stage::Assembly, "leaks at the pan", &all_clear(), &[]), Ok(Way::Back));
        let bare = standing(Missing, Missing, &["x"]);
        assert!(may_move(Stage::Quote, Stage::Declined, "", &bare, &[]).is_err());
        assert_eq!(may_move(Stage::Quote, Stage::Declined, "too dear", &bare, &[]), Ok(Way::GiveUp));
    }

    #[test]
    fn an_override_opens_its_own_gate_only_and_only_with_a_reason() {
        let bare = standing(Signed, Missing, &["Bell holes differ"]);
        let pass = |gate, reason: &str| Override { gate, reason: reason.into() };
        let go = |overrides: &[Override]| may_move(Stage::Parts, Stage::Machining, "", &bare, overrides);
        let one = go(&[pass(Gate::RevisionSigned, "signed on paper")]).expect_err("the stop still stands");
        assert_eq!(one.len(), 1);
        assert_eq!(one[0].gate, Some(Gate::NoOpenStop));
        let short = go(&[pass(Gate::RevisionSigned, "signed on paper"), pass(Gate::NoOpenStop, " ok ")]);
        assert!(short.expect_err("a reason is missing")[0].message.contains("write down why"));
        let both = [pass(Gate::RevisionSigned, "signed on paper"), pass(Gate::NoOpenStop, "new ring on its way")];
        assert_eq!(go(&both), Ok(Way::Forward));
        let kept = Standing { overridden: vec![Gate::RevisionSigned, Gate::NoOpenStop], ..bare.clone() };
        assert_eq!(may_move(Stage::Assembly, Stage::Test, "", &kept, &[]), Ok(Way::Forward));
    }
}
