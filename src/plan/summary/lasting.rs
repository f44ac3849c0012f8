//! Changes that stay for good. Each is said on its own line, so that nobody signs for one unseen.

use super::say::Say;
use crate::job::{
    BellKind, BridgeDemand, Demand, Fact, FactSet, Job, SpeedometerDrive, SpeedometerKind, VentFitting, VentPort,
};
use crate::plan::steps::{permanent_work, step_named};
use std::collections::BTreeMap;

/// One change that stays for good, planned or done in this shop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lasting {
    /// What a signature covers it by: the same before and after it is done.
    pub code: &'static str,
    /// The step that does it, when one does it alone.
    pub step: Option<&'static str>,
    /// What the customer is told: what we do, or what we have done.
    pub text: &'static str,
}

/// What this job changes for good, in the order of the paper: what is planned, and what this shop has done.
///
/// What the unit has only by a fact that is `planned` is still to be done, and so it is told. `added` are the codes of steps added by hand. `done_here` has each permanent step that was done: `true` while
/// it stands, `false` when it was taken back.
pub fn for_good(job: &Job, added: &[String], done_here: &BTreeMap<String, bool>, planned: FactSet) -> Vec<Lasting> {
    let lasting = |Change { code, planned, will, done_by }: Change| {
        let said = match done_by {
            None => planned.then_some(will),
            Some((step, done)) => match done_here.get(step) {
                Some(true) => Some(done),
                _ if planned || added.iter().any(|added| added == step) => Some(will),
                // Taken back, yet the unit has it: it came from here, whatever the log says of it now.
                Some(false) if has_it(step, job) => Some(done),
                _ => None,
            },
        };
        said.map(|text| Lasting { code, step: done_by.map(|(step, _)| step), text })
    };
    changes(job, planned).into_iter().filter_map(lasting).collect()
}

pub(super) fn lines(say: &Say<'_>) -> Vec<String> {
    let changes = for_good(say.job, say.added, say.done_here, say.planned);
    if !changes.is_empty() {
        return changes.into_iter().map(|change| change.text.to_owned()).collect();
    }
    let unnamed = is(&say.job.paper.permanent_mods, true)
        || permanent_work(say.job, say.added, say.planned).value() == Some(&true);
    let line = if unnamed {
        "A change that stays for good is part of this job, but this page does not name it yet. Ask us which one \
         before you sign."
    } else {
        "So far we plan no change that stays for good. If one is needed, we ask you first."
    };
    vec![line.to_owned()]
}

struct Change {
    code: &'static str,
    /// Do the facts call for it?
    planned: bool,
    will: &'static str,
    /// The step that does it, and what is said after that.
    done_by: Option<(&'static str, &'static str)>,
}

fn changes(job: &Job, by_plan: FactSet) -> [Change; 9] {
    let (case, sheet) = (&job.case, &job.valve_body);
    let bolt_on = is(&job.bell.kind, BellKind::BoltOn) || is(&job.bell.cut_planned, true);
    // A plan writes down what will be there. Until somebody has seen it, it is what has to be done.
    let lacks_hole = |has: &Fact<u32>, wants: &Fact<u32>| match (has.value(), wants.value()) {
        (Some(_), _) if by_plan.contains(has.id()) => true,
        (Some(has), Some(wants)) => has < wants,
        _ => false,
    };
    let lacks = |there: &Fact<bool>| !is(there, true) || by_plan.contains(there.id());
    let untapped = !is(&job.vent.port, VentPort::TappedPipe18) || by_plan.contains(job.vent.port.id());
    let tapped = matches!(job.vent.fitting_angle.value(), Some(VentFitting::Angled | VentFitting::Straight));
    [
        Change {
            code: "bell",
            planned: is(&job.bell.cut_planned, true),
            will: "We saw off the bell, the cone that is cast on the front of your case. It can never be put back. From \
                   then on this case needs a bell that is bolted on.",
            done_by: Some((
                "MC-02",
                "We have sawn off the bell, the cone that was cast on the front of your case. It can never be put \
                   back. Now this case needs a bell that is bolted on.",
            )),
        },
        Change {
            code: "pump_rim",
            planned: bolt_on && lacks_hole(&job.pump.holes, &case.pump_bosses),
            will: "We drill more bolt holes through the rim of the pump. The holes stay.",
            done_by: None,
        },
        Change {
            code: "case_holes",
            planned: bolt_on && lacks_hole(&case.pump_tapped, &case.pump_bosses),
            will: "We drill and thread spare bolt places in the case. The holes stay.",
            done_by: Some(("MC-03", "We have drilled and threaded spare bolt places in the case. The holes stay.")),
        },
        Change {
            code: "bridge",
            planned: is(&sheet.bridge, BridgeDemand::Required) && lacks(&case.bridge_lowered),
            will: "We grind down a small bridge inside the case. The metal cannot be put back.",
            done_by: Some((
                "MC-07",
                "We have ground down a small bridge inside the case. The metal cannot be put back.",
            )),
        },
        Change {
            code: "ball",
            planned: is(&sheet.passage_ball, Demand::Required) && lacks(&case.passage_ball),
            will: "We drive a steel ball into one oil passage of the case. It hardly ever comes out again. Some other \
                   control parts will then not work in this case.",
            done_by: Some((
                "MC-08",
                "We have driven a steel ball into one oil passage of the case. It hardly ever comes out again. Some \
                   other control parts will not work in this case.",
            )),
        },
        Change {
            code: "plug",
            planned: is(&sheet.feed_plug, Demand::Required) && lacks(&case.feed_plugged),
            will: "We drive a plug into one oil passage of the case. Getting it out again is hard and may not work.",
            done_by: Some((
                "MC-09",
                "We have driven a plug into one oil passage of the case. Getting it out again is hard and may not work.",
            )),
        },
        Change {
            code: "vent",
            planned: tapped && untapped,
            will: "We cut a thread into the vent hole. It can be closed later, but not made as it was.",
            done_by: Some((
                "MC-04",
                "We have cut a thread into the vent hole. It can be closed later, but not made as it was.",
            )),
        },
        Change {
            code: "bushing",
            planned: false,
            will: "We grind out the ring at the rear that your driveshaft slides in, so that it fits. Only a new ring \
                   undoes it.",
            done_by: Some((
                "MC-10",
                "We have ground out the ring at the rear that your driveshaft slides in, so that it fits. Only a new \
                   ring undoes it.",
            )),
        },
        Change {
            code: "speedometer_gear",
            planned: is(&job.speedometer.kind, SpeedometerKind::Gps)
                && is(&job.speedometer.drive, SpeedometerDrive::Steel),
            will: "If the steel speedometer gear has to come off its shaft, that destroys the gear.",
            done_by: None,
        },
    ]
}

/// Has the unit what this step would change?
fn has_it(step: &str, job: &Job) -> bool {
    step_named(step).and_then(|step| step.already).is_some_and(|already| already(job).value() == Some(&true))
}

/// Is the fact known to have this value? Unknown is not a yes.
fn is<T: PartialEq>(fact: &Fact<T>, value: T) -> bool {
    fact.value() == Some(&value)
}

#[cfg(test)]
mod tests;
