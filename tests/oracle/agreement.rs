//! Three thousand jobs through the command line, each compared with the second reading.

use crate::jobs::{Dice, Known, job, line, thresholds, values};
use crate::language::{Book, Expression, Value};
use std::collections::{BTreeMap, BTreeSet};
use std::process::Command;

const JOBS: usize = 3000;

/// What one reading makes of one job.
#[derive(Debug, PartialEq)]
struct Reading {
    findings: BTreeSet<String>,
    undecided: BTreeMap<String, BTreeSet<String>>,
    clear: usize,
    steps: Vec<String>,
}

fn second_reading(book: &Book, known: &Known) -> (Reading, BTreeMap<String, Value>) {
    let facts = values(known);
    let mut reading = Reading { findings: BTreeSet::new(), undecided: BTreeMap::new(), clear: 0, steps: Vec::new() };
    for (code, condition) in &book.rules {
        match book.work_out(condition, &facts) {
            Ok(Value::Yes(true)) => {
                reading.findings.insert(code.clone());
            }
            Ok(_) => reading.clear += 1,
            Err(needs) => {
                reading.undecided.insert(code.clone(), needs);
            }
        }
    }
    let needed = |condition: &Option<Expression>| match condition {
        Some(condition) => book.work_out(condition, &facts) == Ok(Value::Yes(true)),
        None => true,
    };
    reading.steps =
        book.steps.iter().filter(|(_, condition)| needed(condition)).map(|(code, _)| code.clone()).collect();
    let numbers = book
        .derived
        .iter()
        .filter_map(|(name, formula)| book.work_out(formula, &facts).ok().map(|value| (name.clone(), value)));
    (reading, numbers.collect())
}

fn first_reading(report: &serde_json::Value) -> Reading {
    let list = |key: &str| report[key].as_array().expect("a list").clone();
    let text = |value: &serde_json::Value| value.as_str().expect("a text").to_owned();
    let needs = |open: &serde_json::Value| open["needs"].as_array().expect("a list").iter().map(text).collect();
    Reading {
        findings: list("findings").iter().map(|finding| text(&finding["code"])).collect(),
        undecided: list("undecided").iter().map(|open| (text(&open["code"]), needs(open))).collect(),
        clear: report["clear"].as_u64().expect("a count") as usize,
        steps: list("steps").iter().map(text).collect(),
    }
}

fn numbers_differ(printed: &serde_json::Value, worked_out: &BTreeMap<String, Value>) -> Option<String> {
    let printed = printed.as_object().expect("an object");
    let names: BTreeSet<&String> = printed.keys().collect();
    if names != worked_out.keys().collect() {
        return Some(format!("known here {names:?}, there {:?}", worked_out.keys()));
    }
    worked_out.iter().find_map(|(name, value)| {
        let same = match (value, &printed[name]) {
            (Value::Yes(a), serde_json::Value::Bool(b)) => a == b,
            (Value::Number(a), b) => b.as_f64().is_some_and(|b| (a - b).abs() <= 1e-9 * a.abs().max(b.abs())),
            _ => false,
        };
        (!same).then(|| format!("{name}: {} here, {value:?} there", printed[name]))
    })
}

#[test]
fn the_program_and_the_second_reading_agree_on_every_job() {
    let book = Book::read(include_str!("conditions.txt"));
    let near = thresholds(&book);
    let mut dice = Dice(20_240_611);
    let jobs: Vec<Known> = (0..JOBS).map(|_| job(&mut dice, &near)).collect();
    let file = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("oracle.jsonl");
    let text: String = jobs.iter().map(|known| line(known) + "\n").collect();
    std::fs::write(&file, text).expect("room for the jobs");
    let ran = Command::new(env!("CARGO_BIN_EXE_endplay"))
        .args(["check", "--format", "json"])
        .arg(&file)
        .output()
        .expect("the program runs");
    assert_eq!(String::from_utf8_lossy(&ran.stderr), "", "every job can be read");
    assert_eq!(ran.status.code(), Some(1), "there are stops among so many");

    let printed = String::from_utf8(ran.stdout).expect("text");
    let reports: Vec<serde_json::Value> =
        printed.lines().map(|line| serde_json::from_str(line).expect("one object a line")).collect();
    assert_eq!(reports.len(), JOBS);
    let mut seen: BTreeMap<&str, [bool; 3]> = BTreeMap::new();
    let mut steps_seen: BTreeMap<&str, [bool; 2]> = BTreeMap::new();
    for (known, report) in jobs.iter().zip(&reports) {
        let (there, numbers) = second_reading(&book, known);
        let here = first_reading(report);
        assert_eq!(here, there, "on {}", line(known));
        assert_eq!(numbers_differ(&report["derived"], &numbers), None, "on {}", line(known));
        for (code, _) in &book.steps {
            steps_seen.entry(code).or_default()[usize::from(there.steps.contains(code))] = true;
        }
        for (code, _) in &book.rules {
            let row = seen.entry(code).or_default();
            let verdict = if there.findings.contains(code) {
                0
            } else if there.undecided.contains_key(code) {
                1
            } else {
                2
            };
            row[verdict] = true;
        }
    }
    let unseen: Vec<_> = seen.iter().filter(|(_, row)| **row != [true; 3]).collect();
    assert!(unseen.is_empty(), "never seen to fire, wait and be clear: {unseen:?}");
    let always = |code: &str| book.steps.iter().any(|(step, condition)| step == code && condition.is_none());
    let one_way: Vec<_> = steps_seen.iter().filter(|(code, row)| **row != [true; 2] && !always(code)).collect();
    assert!(one_way.is_empty(), "never seen both needed and not needed: {one_way:?}");
}

#[test]
fn both_readings_know_the_same_rules_and_numbers() {
    let book = Book::read(include_str!("conditions.txt"));
    let here: BTreeSet<_> = endplay::rules::rules().map(|rule| rule.code.to_owned()).collect();
    let there: BTreeSet<_> = book.rules.iter().map(|(code, _)| code.clone()).collect();
    assert_eq!(here, there);
    let steps = endplay::plan::steps::steps().map(|step| step.code);
    assert!(steps.eq(book.steps.iter().map(|(code, _)| code.as_str())), "the same steps in the same order");
    let names: BTreeSet<_> = endplay::rules::DerivedId::ALL.iter().map(|id| id.declaration().path).collect();
    assert_eq!(names, book.derived.iter().map(|(name, _)| name.as_str()).collect());
}

/// The second reading is itself checked, or agreement could mean that both see nothing.
#[test]
fn the_second_reading_reads_as_the_trade_does() {
    let book = Book::read(include_str!("conditions.txt"));
    let known = |pairs: &[(&str, serde_json::Value)]| {
        values(&pairs.iter().map(|(path, value)| ((*path).to_owned(), value.clone())).collect())
    };
    let asked =
        |text: &str, facts: &[(&str, serde_json::Value)]| book.work_out(&crate::language::parse(text), &known(facts));
    let yes = |truth| Ok(Value::Yes(truth));
    let waits = |paths: &[&str]| Err(paths.iter().map(|path| (*path).to_owned()).collect::<BTreeSet<_>>());
    assert_eq!(asked("a.b > 1 and a.c", &[("a.b", 1.into())]), yes(false));
    assert_eq!(asked("a.b > 1 and a.c", &[("a.b", 2.into())]), waits(&["a.c"]));
    assert_eq!(asked("a.c or a.b > 1", &[("a.b", 2.into())]), yes(true));
    assert_eq!(asked("not a.c or a.b > 1", &[("a.b", 1.into())]), waits(&["a.c"]));
    assert_eq!(asked("min(a.b, a.c) < 0", &[("a.b", (-1).into())]), waits(&["a.c"]));
    assert_eq!(asked("1 if a.t else a.c", &[]), waits(&["a.t"]));
    assert_eq!(asked("2 * 3 ** 2 - 4 / 2 == 16", &[]), yes(true));
    assert_eq!(asked("a.k in (\"x\", \"y\")", &[("a.k", "y".into())]), yes(true));
    let load = [
        ("gears.second_ratio", 1.48.into()),
        ("engine.torque_lbft", 820.into()),
        ("use.kind", "street_strip".into()),
        ("one_way.kind", "sprag".into()),
    ];
    let share = "one_way.load_share";
    assert_eq!(asked(share, &load), waits(&["one_way.elements"]));
    let full = [load.as_slice(), &[("one_way.elements", 34.into())]].concat();
    let Ok(Value::Number(number)) = asked(share, &full) else { panic!("a number") };
    assert!((number - 0.48 * 820.0 * 1.1 * 2.0 / 1500.0).abs() < 1e-12);
}
