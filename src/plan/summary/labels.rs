//! Safety gear with a date on its label, and the rule book that asks for it.

use super::say::{Say, day};
use crate::job::{FlexplateShield, FlexplateSpec, ShieldKind};

pub(super) fn lines(say: &Say<'_>) -> Vec<String> {
    let (shield, plate) = (&say.job.shield, &say.job.flexplate);
    let has_shield = shield.kind.value().is_some_and(|kind| *kind != ShieldKind::None);
    let has_plate = plate.spec.value().is_some_and(|spec| *spec != FlexplateSpec::None);
    let has_plate_shield = plate.shield.value().is_some_and(|kind| *kind != FlexplateShield::None);
    let dated = [
        ("The shield around the transmission", has_shield, &shield.expires),
        ("The flexplate, the plate between engine and converter,", has_plate, &plate.expires),
        ("The shield around the plate behind the engine", has_plate_shield, &plate.shield_expires),
    ];
    let mut lines = Vec::new();
    let mut first_to_end = None;
    for (name, fitted, expires) in dated {
        match expires.value() {
            _ if !fitted => {}
            None => lines.push(format!("{name} has a label, but we do not know its date yet.")),
            Some(date) => {
                lines.extend(say.sourced(expires, |date| format!("{name} is good until {}", day(*date))));
                first_to_end = Some(first_to_end.map_or(*date, |first| std::cmp::min(first, *date)));
            }
        }
    }
    if lines.len() > 1
        && let Some(date) = first_to_end
    {
        lines.push(format!("The first of these dates is {}.", day(date)));
    }
    if say.job.usage.raced.value() == Some(&true) {
        let year = &say.job.class_table.year;
        lines.extend(match year.value() {
            Some(year_of_book) if say.is_our_habit(year.id()) => Some(format!(
                "We checked against the class rules of {}, as we copied them from the book.",
                year_of_book.0
            )),
            _ => say.sourced(year, |year| format!("We checked against the class rules of {}", year.0)),
        });
        lines.push("Rules change. The rule book of your class and the official at the event decide, not we.".into());
    }
    lines
}
