//! What the shop plans to do and has not done yet, part by part, in words for the customer.
//!
//! A planned fact no longer shows as a finding, so the paper has to say what is going to happen instead.

use super::say::{HowKnown, Say};
use crate::job::{FactId, Sheet, fact_ids};
use std::collections::BTreeSet;

pub(super) fn lines(say: &Say<'_>) -> Vec<String> {
    // A reading that a plan left blank has no value yet, and is planned all the same.
    let planned = |fact: &FactId| say.how_known(*fact) == Some(HowKnown::WePlan);
    let (mut parts, mut checks) = (BTreeSet::new(), BTreeSet::new());
    for fact in fact_ids().filter(planned) {
        let said = fact.declaration();
        let group = subject(said.path);
        match said.sheet {
            Sheet::Spec | Sheet::Outside | Sheet::Inside if say.is_known(fact) => parts.insert(group),
            Sheet::Paper => false,
            _ => checks.insert(group),
        };
    }
    let mut lines: Vec<String> = WORK.iter().filter(|(group, ..)| parts.contains(group)).map(told_part).collect();
    lines.extend(WORK.iter().filter(|(group, ..)| checks.contains(group)).map(told_check));
    if !lines.is_empty() {
        lines.push("None of this is done yet. We do it after you have signed.".to_owned());
    }
    lines
}

/// What a fact is told under: itself, when it has words of its own, and its group otherwise.
fn subject(path: &'static str) -> &'static str {
    match WORK.iter().find(|(subject, ..)| *subject == path) {
        Some((own, ..)) => own,
        None => path.split_once('.').map_or(path, |(group, _)| group),
    }
}

fn told_part((_, part, _): &(&str, &str, &str)) -> String {
    format!("We plan {part}.")
}

fn told_check((_, _, check): &(&str, &str, &str)) -> String {
    format!("We will check {check} again. Until then we do not call it fine.")
}

/// Each group of the job file, and facts that are something else than their group: what is planned when a choice or a part is, and what is checked when a reading is awaited.
const WORK: &[(&str, &str, &str)] = &[
    ("use", "for a use that differs from what we wrote down first. Please check it", "how you use it"),
    ("vehicle", "for other facts about your vehicle than we wrote down first. Please check them", "your vehicle"),
    ("engine", "for other facts about your engine than we wrote down first. Please check them", "how the engine fits"),
    (
        "engine.dowels",
        "to fit the steel pins that set the unit straight on the engine",
        "the steel pins between unit and engine",
    ),
    ("event", "for other race times or days than we wrote down first. Please check them", "your event"),
    ("class_table", "by other rules of your class than we wrote down first", "the rules of your class"),
    (
        "case",
        "to fit another case or work on this one. The case is the shell of the unit",
        "the case, the shell of the unit",
    ),
    ("bell", "to change how the bell fits. The bell is the front of the shell", "the bell, the front of the shell"),
    ("pump", "to work on the pump. It pushes the fluid", "the pump that pushes the fluid"),
    (
        "valve_body",
        "to fit or set up another valve body. It steers the shifts",
        "the valve body that steers the shifts",
    ),
    ("control", "to work on the parts that tell the unit when to shift", "the parts that tell the unit when to shift"),
    (
        "trans_brake",
        "to change the trans brake. It holds the car on the line",
        "the trans brake that holds the car on the line",
    ),
    ("forward", "to change the forward clutch. It drives you ahead", "the forward clutch that drives you ahead"),
    (
        "direct",
        "to change the direct clutch. It drives top gear and reverse",
        "the direct clutch for top gear and reverse",
    ),
    ("intermediate", "to change the clutch for second gear", "the clutch for second gear"),
    (
        "one_way",
        "to fit another one-way clutch. It turns one way and locks the other",
        "the one-way clutches that lock one way",
    ),
    ("bands", "to change the bands. They hold a drum still to make a gear", "the bands that hold a drum still"),
    ("gears", "to change gears or shafts", "the gears and shafts"),
    ("output", "to change the end of the unit where the driveshaft goes in", "the end where the driveshaft goes in"),
    (
        "yoke",
        "to fit another yoke. It joins the driveshaft to the unit",
        "the yoke that joins the driveshaft to the unit",
    ),
    ("driveshaft", "to change the driveshaft or its loop", "the driveshaft"),
    (
        "converter",
        "to fit another converter. It joins engine and gears through fluid",
        "the converter that joins engine and gears",
    ),
    (
        "flexplate",
        "to fit another flexplate or shield. The flexplate joins engine and converter",
        "the flexplate that joins engine and converter",
    ),
    ("shield", "to fit or change the shield around the bell", "the shield around the bell"),
    ("cooling", "to change how the fluid is cooled", "how well the cooler lets the fluid through"),
    ("fluid", "to use another fluid or another fill", "the fluid"),
    ("vent", "to change the vent. It lets air in and out", "the vent that lets air in and out"),
    ("pan", "to fit another pan, filter or bolt. The pan holds the fluid", "the pan that holds the fluid"),
    ("stick", "to fit another dipstick or tube. It shows how much fluid there is", "the dipstick"),
    ("mount", "to fit another mount. It carries the unit in the frame", "the mount that carries the unit"),
    ("shifter", "to change the shift lever or its switches", "the shift lever and its switches"),
    ("speedometer", "to change what drives your speedometer", "what drives your speedometer"),
    ("threads", "to fit nuts or bolts of the right thread", "the threads of nuts and bolts"),
    ("bench", "to set the unit up anew on the bench", "the unit on the bench"),
];

#[cfg(test)]
mod tests {
    use super::super::reading;
    use super::*;
    use crate::job::{GROUPS, fact_named};

    #[test]
    fn every_group_that_can_be_planned_has_its_words_and_a_child_of_twelve_reads_them() {
        let named: BTreeSet<&str> = WORK.iter().map(|(group, ..)| *group).collect();
        let papers = ["order", "paper"];
        let missing: Vec<_> = GROUPS
            .iter()
            .map(|(group, _)| *group)
            .filter(|group| !named.contains(group) && !papers.contains(group))
            .collect();
        assert!(missing.is_empty(), "{missing:?}");
        let known: BTreeSet<&str> = GROUPS.iter().map(|(group, _)| *group).collect();
        assert!(named.iter().all(|one| known.contains(one) || fact_named(one).is_some()) && named.len() == WORK.len());
        assert_eq!((subject("engine.dowels"), subject("engine.max_rpm")), ("engine.dowels", "engine"));
        for entry in WORK {
            for line in [told_part(entry), told_check(entry)] {
                assert!(reading::age(&line) <= 12.0, "{:.1}: {line}", reading::age(&line));
            }
        }
    }
}
