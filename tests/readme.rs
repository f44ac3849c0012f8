//! What the README shows is what the program does.

use std::fs;
use std::path::Path;
use std::process::Command;

/// The text of the fenced block after this mark.
fn block(readme: &str, mark: &str) -> String {
    let (_, after) = readme.split_once(&format!("<!-- {mark} -->")).expect("the mark stands in the README");
    let mut lines = after.lines().skip_while(|line| !line.starts_with("```")).skip(1).peekable();
    assert!(lines.peek().is_some(), "no block after {mark}");
    lines.take_while(|line| !line.starts_with("```")).map(|line| format!("{line}\n")).collect()
}

#[test]
fn the_sample_job_comes_to_what_is_printed_below_it() {
    let readme = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("README.md")).expect("the README");
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("readme");
    fs::create_dir_all(&folder).expect("a folder of the build's own");
    fs::write(folder.join("job.json"), block(&readme, "sample job")).expect("the sample is written");
    let ran = Command::new(env!("CARGO_BIN_EXE_endplay"))
        .args(["check", "job.json"])
        .current_dir(&folder)
        .output()
        .expect("the program runs");
    let said = String::from_utf8(ran.stdout).expect("text");
    let shown = block(&readme, "sample answer");
    assert!(shown.contains("STOP") && shown.contains("CAUTION"), "{shown}");
    assert!(said.starts_with(&shown), "the README shows\n{shown}\nand the program says\n{said}");
    let rest = &said[shown.len()..];
    for follows in ["Cannot be decided yet", "Steps of this job"] {
        assert!(rest.contains(follows), "{rest}");
    }
    let open = readme.split_once("each of the ").and_then(|(_, rest)| rest.split_once(" waits")).expect("the count").0;
    assert!(shown.contains(&format!("; {open} cannot be decided yet")), "{open} of {shown}");
    assert_eq!(ran.status.code(), Some(1), "a stop");
}
