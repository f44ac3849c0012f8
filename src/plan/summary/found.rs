//! What was seen and measured on the unit, as far as it means something to its owner.

use super::say::{Say, chosen, inches};
use crate::job::{AirChecks, BellKind, CaseHistory, Crack, Hub, ParkPawl, RaceState};
use crate::quantity::short;

pub(super) fn lines(say: &Say<'_>) -> Vec<String> {
    // What is only planned nobody has found.
    let (job, case) = (&say.seen, &say.seen.case);
    let not_ours = |step: &str| !say.done_here.contains_key(step);
    [
        chosen(&job.bell.kind, |bell| {
            Some(match bell {
                BellKind::Integral => "The bell, the cone in front, is cast in one piece with the case.",
                BellKind::BoltOn => "The bell, the cone in front, is a part of its own that is bolted on.",
            })
        }),
        chosen(&case.history, |history| {
            Some(match history {
                CaseHistory::Original => "The case looks as it was made.",
                CaseHistory::OtherValveBody => "Somebody changed the case before, to suit other parts.",
                CaseHistory::Unknown => "Nobody can tell us who worked on the case before.",
            })
        }),
        chosen(&case.crack, |crack| {
            Some(match crack {
                Crack::None => "We looked for cracks in the case and saw none.",
                Crack::Suspected => "The case may be cracked. We have to look closer.",
                Crack::Found => "The case is cracked.",
            })
        }),
        chosen(&case.coolant_found, |coolant| {
            Some(if coolant { "There is coolant in the unit." } else { "There is no coolant in the unit." })
        }),
        chosen(&case.failure_debris, |debris| {
            debris.then_some("We found bits of metal or clutch that came off when it failed.")
        }),
        chosen(&case.park_pawl, |park| {
            Some(match park {
                ParkPawl::Works => "Park holds.",
                ParkPawl::Removed => "The part that holds it in park has been taken out.",
                ParkPawl::Fails => "Park does not hold.",
            })
        }),
        chosen(&job.converter.hub, |hub| {
            Some(match hub {
                Hub::Smooth => "The converter joins engine and gears. Its neck is smooth.",
                Hub::Grooved => "The converter joins engine and gears. A groove is worn into its neck.",
            })
        }),
        chosen(&job.one_way.race_state, |surface| {
            (surface != RaceState::Smooth).then_some("Second gear needs a ring to grip. That ring is damaged.")
        }),
        chosen(&case.feed_plugged, |plugged| {
            (plugged && not_ours("MC-09"))
                .then_some("An earlier builder drove a plug into one oil passage of the case.")
        }),
        chosen(&case.passage_ball, |ball| {
            (ball && not_ours("MC-08"))
                .then_some("An earlier builder drove a steel ball into one oil passage of the case.")
        }),
        chosen(&case.bridge_lowered, |lowered| {
            (lowered && not_ours("MC-07")).then_some("An earlier builder ground down a small bridge inside the case.")
        }),
        say.sourced(&case.threads_bad, |count| match count {
            0 => "The bolt holes of the case are sound".into(),
            1 => "One bolt hole of the case is worn out".into(),
            more => format!("{more} bolt holes of the case are worn out"),
        }),
    ]
    .into_iter()
    .flatten()
    .collect()
}

pub(super) fn measured(say: &Say<'_>) -> Vec<String> {
    let (bench, job) = (&say.seen.bench, &say.seen);
    [
        say.sourced(&bench.front_end_play_in, |play| {
            format!("The front shaft can slide {} back and forth", inches(*play, 4))
        }),
        say.sourced(&bench.rear_end_play_in, |play| {
            format!("The rear shaft can slide {} back and forth", inches(*play, 4))
        }),
        chosen(&bench.air_checks, |air| {
            Some(match air {
                AirChecks::Pass => "We tried each clutch with air. All passed.",
                AirChecks::Fail => "We tried each clutch with air. One failed.",
                AirChecks::NotDone => "We have not tried the clutches with air yet.",
            })
        }),
        say.sourced(&bench.line_drive_idle_psi, |pressure| {
            format!("Oil pressure in drive, hot and idling: {}", pressure.to_whole())
        }),
        say.sourced(&bench.line_stall_psi, |pressure| {
            format!("Oil pressure at full gas in first gear: {}", pressure.to_whole())
        }),
        say.sourced(&bench.line_reverse_idle_psi, |pressure| {
            format!("Oil pressure in reverse, hot and idling: {}", pressure.to_whole())
        }),
        say.sourced(&job.converter.gap_in, |gap| {
            format!("The gap between converter and engine before bolting: {}", inches(*gap, 3))
        }),
        say.sourced(&job.cooling.flow_s_per_qt, |flow| {
            format!("The cooler sends back one quart in {} seconds", short(flow.value(), 1))
        }),
    ]
    .into_iter()
    .flatten()
    .collect()
}
