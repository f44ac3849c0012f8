//! `endplay check` on a hundred thousand lines, on one core and on two, and what it holds in memory.

use crate::jobs::{Dice, thrown};
use crate::measure::{ratio, timed};
use std::fs::{self, File};
use std::io::{BufWriter, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Duration;

const LINES: usize = 100_000;

pub fn a_long_file() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR"));
    fs::create_dir_all(folder).expect("a folder of the build's own");
    let long = written(&folder.join("long.jsonl"), LINES);
    let short = written(&folder.join("short.jsonl"), LINES / 10);
    let text = fs::read_to_string(&long).expect("it was just written");
    let parsing = timed(&mut || {
        for line in text.lines() {
            let read: serde_json::Value = serde_json::from_str(line).expect("it is JSON");
            drop(std::hint::black_box(read));
        }
    });
    drop(text);
    let (one, short_memory) = (checked(&long, "0"), checked(&short, "0").1);
    let two = checked(&long, "0,1");
    for (cores, (time, memory)) in [("one core", one), ("two cores", two)] {
        println!(
            "check of {LINES} jobs on {cores}: {:.0} jobs/s, {:.2} times the parsing alone on one core, {} KiB at most",
            LINES as f64 / time.as_secs_f64(),
            ratio(time, parsing),
            memory,
        );
    }
    println!("check on two cores / on one: {:.2} of the time", ratio(two.0, one.0));
    println!("memory for {LINES} lines / for {}: {:.2}", LINES / 10, one.1 as f64 / short_memory as f64);
    for file in [long, short] {
        fs::remove_file(file).ok();
    }
}

fn written(file: &Path, lines: usize) -> PathBuf {
    let mut dice = Dice(13);
    let jobs: Vec<String> = (0..500).map(|_| thrown(&mut dice, 10, 40).to_json().to_string()).collect();
    let mut out = BufWriter::new(File::create(file).expect("a file of the build's own"));
    for line in 0..lines {
        writeln!(out, "{}", jobs[line % jobs.len()]).expect("room on the disk");
    }
    out.flush().expect("room on the disk");
    file.to_owned()
}

/// How long a check takes on these cores, and the most memory it held, in KiB.
fn checked(file: &Path, cores: &str) -> (Duration, u64) {
    let mut most = 0;
    let time = timed(&mut || {
        let mut child = Command::new("taskset")
            .args(["--cpu-list", cores, env!("CARGO_BIN_EXE_endplay"), "check", "--format", "json"])
            .arg(file)
            .stdout(Stdio::null())
            .spawn()
            .expect("taskset of util-linux runs the program");
        while child.try_wait().expect("it can be asked").is_none() {
            let status = fs::read_to_string(format!("/proc/{}/status", child.id())).unwrap_or_default();
            let held = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
            let held = held.and_then(|held| held.trim().strip_suffix(" kB")).and_then(|held| held.parse().ok());
            most = most.max(held.unwrap_or_default());
            std::thread::sleep(Duration::from_millis(5));
        }
    });
    (time, most)
}
