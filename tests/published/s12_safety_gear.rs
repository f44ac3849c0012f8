//! Safety gear: which specification a rule asks for, and at which pass a class asks for it.
//!
//! Thresholds differ by body, class and year and are never the program's own: a job carries what the shop typed from
//! the current book. Held here are the specification numbers, and that "or quicker" and "or faster" take the line itself.

use crate::check::{Check, Source, Trust};
use endplay::job::{BrakeKind, Choice, FlexplateShield, FlexplateSpec, Job, UseKind, facts};
use endplay::quantity::Quantity;
use endplay::rules::{Known, Limits, rule_named};

const TITLES: Source = Source("title list of the certification body's specifications", Trust::Read);
const TITLES_30: Source = Source("rule text that calls 30.1 the flexplate shield", Trust::Quoted);
const CLASS_RULES: Source =
    Source("10.99 or quicker, as a United States body words the line for a damper", Trust::Memory);
const FASTER: Source = Source("a United States body's class rules: 9.99 or quicker, or 135 mph", Trust::Memory);
const ALWAYS: Source =
    Source("a truck-pull body's rules, 2024: every automatic has a 4.1 shield; trans brake prohibited", Trust::Read);
const BRAKE: Source =
    Source("an Australian body's rules, 2019/20, 4.9.1: all trans-brake vehicles have a 4.1 shield", Trust::Read);
const PERIODS: Source =
    Source("sources conflict on how long a label is valid: the shop reads the label", Trust::Memory);

fn asks_for(code: &str, spec: &str) -> String {
    let rule = rule_named(code).unwrap_or_else(|| panic!("{code} is in the rule book"));
    if rule.fix.contains(&format!("SFI {spec}")) { spec.to_owned() } else { format!("“{}”", rule.fix) }
}

/// What a rule says of a race car without any gear in a class that asks as `class` says.
fn says(code: &str, class: impl Fn(&mut Job)) -> &'static str {
    let mut job = Job::plain();
    job.usage.raced.set(true);
    job.usage.kind.set(UseKind::Drag);
    class(&mut job);
    match rule_named(code).map(|rule| rule.verdict(&job, &Limits::default())) {
        Some(Known::Yes(true, _)) => "asked for",
        Some(Known::Yes(false, _)) => "not asked for",
        _ => "cannot tell",
    }
}

fn pass(job: &mut Job, seconds: f64, mph: f64) {
    job.event.quarter_mile_s.set(Quantity::new(seconds));
    job.event.trap_mph.set(Quantity::new(mph));
}

pub fn checks() -> Vec<Check> {
    let shield_at = |seconds: f64, mph: f64| {
        says("SFT-01", |job| {
            job.class_table.shield_s.set(Quantity::new(10.99));
            job.class_table.shield_mph.set(Quantity::new(135.0));
            job.class_table.shield_always.set(false);
            job.class_table.shield_with_brake.set(false);
            pass(job, seconds, mph);
        })
    };
    let plate_at = |seconds: f64, mph: f64| {
        says("SFT-03", |job| {
            job.class_table.flexplate_s.set(Quantity::new(9.99));
            job.class_table.flexplate_mph.set(Quantity::new(135.0));
            pass(job, seconds, mph);
        })
    };
    let always = says("SFT-01", |job| job.class_table.shield_always.set(true));
    let dates = ["shield.expires", "flexplate.expires", "flexplate.shield_expires"];
    let periods = dates.map(|path| {
        let how = facts().iter().find(|fact| fact.path == path).map_or("", |fact| fact.how);
        let from_the_label = how.contains("label") && how.contains("shop's table");
        PERIODS.words(
            format!("{path} comes from"),
            if from_the_label { "label and shop" } else { how },
            "label and shop",
        )
    });
    [
        TITLES.words("transmission shield", asks_for("SFT-01", "4.1"), "4.1"),
        TITLES.words("flexplate", asks_for("SFT-03", "29.1"), "29.1"),
        TITLES_30.words("flexplate shield", asks_for("SFT-05", "30.1"), "30.1"),
        TITLES.words("flexplate on the form", FlexplateSpec::Sfi291.label(), "SFI 29.1"),
        TITLES_30.words("flexplate shield on the form", FlexplateShield::Sfi301.label(), "SFI 30.1"),
        CLASS_RULES.words("shield at 10.99", shield_at(10.99, 120.0), "asked for"),
        CLASS_RULES.words("shield at 11.00", shield_at(11.00, 120.0), "not asked for"),
        FASTER.words("shield at 135 mph", shield_at(11.50, 135.0), "asked for"),
        FASTER.words("shield at 134.9 mph", shield_at(11.50, 134.9), "not asked for"),
        FASTER.words("certified flexplate at 9.99", plate_at(9.99, 130.0), "asked for"),
        FASTER.words("certified flexplate at 10.00", plate_at(10.00, 130.0), "not asked for"),
        ALWAYS.words("shield without any time", always, "asked for"),
    ]
    .into_iter()
    .chain(brake())
    .chain(periods)
    .collect()
}

fn brake() -> [Check; 2] {
    let with_brake = |shield_with_brake: bool| {
        says("SFT-01", move |job| {
            job.valve_body.brake.set(BrakeKind::Internal);
            job.class_table.shield_always.set(false);
            job.class_table.shield_with_brake.set(shield_with_brake);
            job.class_table.shield_s.set(Quantity::new(10.99));
            job.class_table.shield_mph.set(Quantity::new(135.0));
            pass(job, 13.0, 100.0);
        })
    };
    [
        BRAKE.words("shield with a trans brake", with_brake(true), "asked for"),
        BRAKE.words("shield with a trans brake in a class that does not say so", with_brake(false), "not asked for"),
    ]
}
