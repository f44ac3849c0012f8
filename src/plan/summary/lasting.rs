//! Changes that stay for good. Each is said on its own line, so that nobody signs for one unseen.

use super::say::Say;
use crate::job::{BellKind, BridgeDemand, Demand, Fact, SpeedometerDrive, SpeedometerKind, VentFitting, VentPort};
use crate::plan::steps::permanent_work;

pub(super) fn lines(say: &Say<'_>) -> Vec<String> {
    let mut lines: Vec<String> = planned(say).into_iter().map(str::to_owned).collect();
    if lines.is_empty() {
        lines.push(
            if is(&say.job.paper.permanent_mods, true) || permanent_work(say.job, say.added).value() == Some(&true) {
                "A change that stays for good is part of this job, but this page does not name it yet. Ask us which \
                 one before you sign."
            } else {
                "So far we plan no change that stays for good. If one is needed, we ask you first."
            }
            .into(),
        );
    }
    lines
}

fn planned(say: &Say<'_>) -> Vec<&'static str> {
    let (job, case, sheet) = (say.job, &say.job.case, &say.job.valve_body);
    let bolt_on = is(&job.bell.kind, BellKind::BoltOn) || is(&job.bell.cut_planned, true);
    let needs_hole = |has: &Fact<u32>, wants: &Fact<u32>| match (has.value(), wants.value()) {
        (Some(has), Some(wants)) => has < wants,
        _ => false,
    };
    let added = |code: &str| say.added.iter().any(|added| added == code);
    let tapped = matches!(job.vent.fitting_angle.value(), Some(VentFitting::Angled | VentFitting::Straight));
    [
        (
            is(&job.bell.cut_planned, true),
            "We saw off the bell, the cone that is cast on the front of your case. It can never be put back. From then \
             on this case needs a bell that is bolted on.",
        ),
        (
            bolt_on && needs_hole(&job.pump.holes, &case.pump_bosses),
            "We drill more bolt holes through the rim of the pump. The holes stay.",
        ),
        (
            bolt_on && needs_hole(&case.pump_tapped, &case.pump_bosses) || added("MC-03"),
            "We drill and thread spare bolt places in the case. The holes stay.",
        ),
        (
            is(&sheet.bridge, BridgeDemand::Required) && !is(&case.bridge_lowered, true) || added("MC-07"),
            "We grind down a small bridge inside the case. The metal cannot be put back.",
        ),
        (
            is(&sheet.passage_ball, Demand::Required) && !is(&case.passage_ball, true) || added("MC-08"),
            "We drive a steel ball into one oil passage of the case. It hardly ever comes out again. Some other control \
             parts will then not work in this case.",
        ),
        (
            is(&sheet.feed_plug, Demand::Required) && !is(&case.feed_plugged, true) || added("MC-09"),
            "We drive a plug into one oil passage of the case. Getting it out again is hard and may not work.",
        ),
        (
            tapped && !is(&job.vent.port, VentPort::TappedPipe18) || added("MC-04"),
            "We cut a thread into the vent hole. It can be closed later, but not made as it was.",
        ),
        (
            added("MC-10"),
            "We grind out the ring at the rear that your driveshaft slides in, so that it fits. Only a new ring undoes it.",
        ),
        (
            is(&job.speedometer.kind, SpeedometerKind::Gps) && is(&job.speedometer.drive, SpeedometerDrive::Steel),
            "If the steel speedometer gear has to come off its shaft, that destroys the gear.",
        ),
    ]
    .into_iter()
    .filter_map(|(planned, text)| planned.then_some(text))
    .collect()
}

/// Is the fact known to have this value? Unknown is not a yes.
fn is<T: PartialEq>(fact: &Fact<T>, value: T) -> bool {
    fact.value() == Some(&value)
}
