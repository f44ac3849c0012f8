use super::*;
use serde_json::Value;
use std::io::Cursor;

/// What a run printed, complained of and came to.
struct Ran {
    out: String,
    complaints: String,
    status: u8,
}

fn checked(files: &[String], format: Format, threads: usize, stdin: &[u8]) -> Ran {
    let (mut out, mut complaints) = (Vec::new(), Vec::new());
    let outcome = check(files, format, threads, &mut Cursor::new(stdin), &mut out, &mut complaints).unwrap();
    let text = |bytes| String::from_utf8(bytes).unwrap();
    Ran { out: text(out), complaints: text(complaints), status: outcome.status() }
}

fn piped(stdin: &str) -> Ran {
    checked(&["-".to_owned()], Format::Json, 1, stdin.as_bytes())
}

fn objects(ran: &Ran) -> Vec<Value> {
    ran.out.lines().map(|line| serde_json::from_str(line).unwrap()).collect()
}

const STOP: &str = r#"{"engine": {"dowels": 1}}"#;

#[test]
fn a_finding_carries_the_contracts_names_in_order_and_no_others() {
    let ran = piped(STOP);
    let object = &objects(&ran)[0];
    let keys = |value: &Value| value.as_object().unwrap().keys().cloned().collect::<Vec<_>>();
    assert_eq!(keys(object), ["findings", "undecided", "clear", "derived", "steps"]);
    let finding = &object["findings"][0];
    assert_eq!(
        keys(finding),
        ["code", "severity", "title", "due", "customer_accepts", "shop", "customer", "fix", "basis", "facts"]
    );
    assert_eq!(finding["code"], "CSE-09");
    assert_eq!(finding["severity"], "stop");
    assert_eq!(finding["facts"], serde_json::json!({"engine.dowels": 1}));
    assert_eq!(finding["basis"], "Memory, high. Limit used: dowels at the bell 2 (memory, high).");
    assert_eq!(keys(&object["undecided"][0]), ["code", "due", "needs"]);
    assert_eq!(object["derived"], serde_json::json!({}));
    assert_eq!(ran.status, 1);
}

#[test]
fn what_is_worked_out_is_given_as_numbers_and_left_out_while_unknown() {
    let job = r#"{"speedometer": {"drive_teeth": 8, "driven_teeth": 20},
                  "vehicle": {"axle_ratio": 3.73, "tire_diameter_in": 28.5}, "use": {"raced": false}}"#;
    let object = &objects(&piped(job))[0];
    let derived = object["derived"].as_object().unwrap();
    let exact = derived["speedometer.exact_driven_teeth"].as_f64().unwrap();
    assert!((exact - 8.0 * 3.73 * 20168.0 / 28.5 / 1000.0).abs() < 1e-9);
    assert_eq!(derived["need.shield"], false);
    assert!(!derived.contains_key("use.cruise_rpm"));
}

#[test]
fn jobs_one_a_line_are_answered_one_a_line_in_their_order() {
    let lines = format!("{STOP}\n\n{{}}\n{{\"bell\": {{\"kinds\": 1}}}}\n{STOP}\n");
    let ran = piped(&lines);
    let objects = objects(&ran);
    assert_eq!(objects.len(), 4);
    assert_eq!(objects[0], objects[3]);
    assert!(objects[1]["findings"].as_array().unwrap().is_empty());
    let error = &objects[2]["errors"][0];
    assert_eq!(error["path"], "bell.kinds");
    assert_eq!(error.as_object().unwrap().keys().collect::<Vec<_>>(), ["path", "given", "allowed", "message"]);
    assert!(ran.complaints.starts_with("standard input:4: bell.kinds: "), "{}", ran.complaints);
    assert_eq!(ran.status, 2, "what cannot be read outweighs a stop");
}

#[test]
fn one_job_over_several_lines_is_one_job() {
    let ran = piped("{\n  \"engine\": {\n    \"dowels\": 7\n  }\n}\n");
    assert_eq!(objects(&ran).len(), 1);
    assert!(ran.complaints.starts_with("standard input:3: engine.dowels: "), "{}", ran.complaints);
}

#[test]
fn status_is_nought_without_a_stop_and_one_with() {
    assert_eq!(piped("{}").status, 0);
    assert_eq!(piped(STOP).status, 1);
    assert_eq!(piped("{").status, 2);
    assert_eq!(piped("").status, 2, "nothing at all is not a job");
}

#[test]
fn a_file_that_is_not_there_is_named_and_the_rest_goes_on() {
    let ran = checked(&["no/such/file.json".to_owned(), "-".to_owned()], Format::Json, 1, STOP.as_bytes());
    let objects = objects(&ran);
    assert_eq!(objects[0]["errors"][0]["given"], "no/such/file.json");
    assert_eq!(objects[1]["findings"][0]["code"], "CSE-09");
    assert!(ran.complaints.starts_with("no/such/file.json:1: It cannot be read: "), "{}", ran.complaints);
    assert_eq!(ran.status, 2);
}

#[test]
fn bytes_that_are_no_text_and_lines_beyond_measure_are_refused_one_by_one() {
    let mut lines = b"{}\n\xff\xfe\n".to_vec();
    lines.extend(vec![b'x'; LONGEST + 5]);
    lines.extend(b"\n{}\n");
    let ran = checked(&["-".to_owned()], Format::Json, 1, &lines);
    let objects = objects(&ran);
    assert_eq!(objects.len(), 4);
    assert!(objects[1]["errors"][0]["message"].as_str().unwrap().contains("UTF-8"));
    assert!(objects[2]["errors"][0]["message"].as_str().unwrap().contains("1024 KiB"));
    assert_eq!(objects[3], objects[0]);
}

#[test]
fn more_threads_change_nothing_of_what_is_printed() {
    // More than one batch, most of it quick to refuse.
    let count = BATCH_LINES + 500;
    let jobs: String = (0..count)
        .map(|n| match n % 40 {
            0 => format!("{STOP}\n"),
            1 => format!("{{\"bell\": {{\"runout_in\": 0.{n:04}}}}}\n"),
            2 => "not json\n".to_owned(),
            _ => format!("{{\"bell\": {n}}}\n"),
        })
        .collect();
    let alone = checked(&["-".to_owned()], Format::Json, 1, jobs.as_bytes());
    for threads in [2, 7] {
        let together = checked(&["-".to_owned()], Format::Json, threads, jobs.as_bytes());
        assert!(together.out == alone.out && together.complaints == alone.complaints);
    }
    assert_eq!(alone.out.lines().count(), count);
}

#[test]
fn people_read_what_to_do_its_basis_and_what_is_missing() {
    let ran = checked(&["-".to_owned()], Format::Text, 1, STOP.as_bytes());
    assert!(ran.out.starts_with("standard input:1: 1 stop, 0 cautions, 0 notes; "), "{}", ran.out);
    for part in ["STOP     CSE-09", "To do: Fit both dowels.", "Facts: engine.dowels 1", "Limit used: dowels at"] {
        assert!(ran.out.contains(part), "{part} in {}", ran.out);
    }
    assert!(ran.out.contains("CSE-10 (assembly): bell.runout_in"));
}

#[test]
fn the_steps_of_the_job_are_told_by_phase_with_what_the_others_wait_for() {
    let job = br#"{"bell": {"cut_planned": true}, "yoke": {"kind": "none"}}"#;
    let text = checked(&["-".to_owned()], Format::Text, 1, job).out;
    let steps = text.split_once("Steps of this job:").expect("a list of steps").1;
    for part in
        ["\n    Machining\n      HOLD MC-01  Look at", "\n           MC-02  Saw off", "HOLD WA-01  Wash the case"]
    {
        assert!(steps.contains(part), "{part} in {steps}");
    }
    let (sure, open) = steps.split_once("May be needed, once it is known").expect("a list of open steps");
    assert!(open.contains("\n           MC-03  bell.kind\n"), "{open}");
    for left_out in ["MC-10", "IS-06", "AS-15"] {
        assert!(!sure.contains(left_out) && !open.contains(left_out), "{left_out} in {steps}");
    }
    let json: serde_json::Value = serde_json::from_str(&checked(&["-".to_owned()], Format::Json, 1, job).out).unwrap();
    let codes: Vec<&str> = json["steps"].as_array().unwrap().iter().map(|code| code.as_str().unwrap()).collect();
    assert!(codes.starts_with(&["IN-01", "IN-02", "IN-03", "IN-07"]), "{codes:?}");
    assert!(codes.contains(&"MC-02") && !codes.contains(&"MC-03") && !codes.contains(&"MC-10"), "{codes:?}");
}

#[test]
fn findings_that_nobody_took_are_no_all_clear() {
    struct Closed(io::ErrorKind);
    impl Write for Closed {
        fn write(&mut self, _: &[u8]) -> io::Result<usize> {
            Err(self.0.into())
        }
        fn flush(&mut self) -> io::Result<()> {
            Ok(())
        }
    }
    for (kind, words) in [(io::ErrorKind::BrokenPipe, ""), (io::ErrorKind::StorageFull, "could not be written")] {
        let (mut stdin, mut complaints) = (Cursor::new("{}"), Vec::new());
        let done = check(&["-".to_owned()], Format::Json, 1, &mut stdin, &mut Closed(kind), &mut complaints);
        assert_eq!(ended(done, &mut complaints), 2);
        let complaints = String::from_utf8(complaints).unwrap();
        assert!(complaints.contains(words) && complaints.is_empty() == words.is_empty(), "{complaints}");
    }
}
