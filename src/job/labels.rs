//! What the groups of facts are called by people.

use super::Declaration;

impl Declaration {
    /// The name of the group it belongs to, as the job file spells it.
    pub fn group(&self) -> &'static str {
        self.path.split_once('.').map_or(self.path, |(group, _)| group)
    }
}

/// What people call the group of this name.
pub fn group_label(group: &'static str) -> &'static str {
    LABELS.iter().find(|(name, _)| *name == group).map_or(group, |(_, label)| label)
}

const LABELS: [(&str, &str); 35] = [
    ("use", "What it is for"),
    ("vehicle", "Vehicle"),
    ("engine", "Engine"),
    ("control", "How it knows when to shift"),
    ("flexplate", "Flexplate"),
    ("converter", "Converter"),
    ("bell", "Bell"),
    ("pump", "Pump"),
    ("case", "Case"),
    ("cooling", "Cooler and fittings"),
    ("vent", "Vent"),
    ("shifter", "Shifter"),
    ("threads", "Threads"),
    ("output", "Output shaft and rear housing"),
    ("yoke", "Yoke"),
    ("driveshaft", "Driveshaft"),
    ("speedometer", "Speedometer"),
    ("mount", "Mounts"),
    ("pan", "Pan and filter"),
    ("stick", "Dipstick"),
    ("shield", "Shields"),
    ("event", "Event"),
    ("class_table", "Class table"),
    ("one_way", "One-way clutches"),
    ("gears", "Gears"),
    ("direct", "Direct clutch"),
    ("bands", "Bands"),
    ("forward", "Forward clutch"),
    ("intermediate", "Intermediate clutch"),
    ("bench", "Read at assembly and test"),
    ("valve_body", "Valve body"),
    ("trans_brake", "Trans brake"),
    ("fluid", "Fluid"),
    ("order", "Order of the work"),
    ("paper", "Agreed, priced, signed"),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::GROUPS;

    #[test]
    fn every_group_has_a_heading_of_its_own() {
        for (name, declarations) in GROUPS {
            assert!(declarations.iter().all(|declaration| declaration.group() == *name), "{name}");
            let label = group_label(name);
            assert!(label != *name && label.starts_with(char::is_uppercase), "{name}");
        }
        assert_eq!(GROUPS.len(), LABELS.len());
    }
}
