//! Starts that cannot be: each a sentence with the remedy, and nothing damaged.

use std::fs::Permissions;
use std::io::ErrorKind;
use std::net::TcpListener;
use std::os::unix::fs::PermissionsExt;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::service::{Scratch, Service, cluster, is_root, refusal};

/// Whether `said` is one line that holds all of `words`.
#[track_caller]
fn assert_says(said: &str, words: &[&str]) {
    for word in words {
        assert!(said.contains(word), "\"{word}\" is missing in: {said}");
    }
    assert_eq!(said.trim().lines().count(), 1, "one sentence, not a log: {said}");
}

fn names(folder: &Path) -> Vec<String> {
    let entries = folder.read_dir().expect("readable").flatten();
    let mut names: Vec<_> = entries.map(|e| e.file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}

#[test]
fn a_second_start_on_the_same_folder_names_the_first() {
    let scratch = Scratch::new();
    let first = scratch.start();
    let (data, process) = (scratch.data().display().to_string(), format!("process {}", first.pid()));
    assert_says(&scratch.refusal(), &["already running", &data, &process, "ENDPLAY_DATA"]);
    assert_eq!(first.status("/readyz"), Some(200), "the first goes on");
    first.stop();
}

#[test]
fn a_foreign_folder_is_not_touched() {
    let scratch = Scratch::new();
    std::fs::create_dir(scratch.data()).expect("writable");
    std::fs::write(scratch.data().join("letter.txt"), "dear").expect("writable");
    assert_says(&scratch.refusal(), &["was not made by Endplay", "nothing in it was touched", "ENDPLAY_DATA"]);
    assert_eq!(names(&scratch.data()), ["letter.txt"]);
}

#[test]
fn data_of_another_major_version_is_not_touched() {
    let scratch = Scratch::new();
    let old = scratch.data().join("cluster-14");
    std::fs::create_dir_all(&old).expect("writable");
    std::fs::write(scratch.data().join("endplay-data"), "").expect("writable");
    std::fs::write(old.join("PG_VERSION"), "14\n").expect("writable");
    assert_says(&scratch.refusal(), &["made by PostgreSQL 14", "nothing was changed", "apt-get install postgresql-14"]);
    assert_eq!(names(&old), ["PG_VERSION"]);
    assert_eq!(names(&scratch.data()), ["cluster-14", "endplay-data", "lock"]);
}

#[test]
fn a_renamed_folder_does_not_mislead_it() {
    let scratch = Scratch::new();
    scratch.start().stop();
    let version = scratch.cluster().expect("a cluster").join("PG_VERSION");
    std::fs::write(version, "14\n").expect("writable");
    assert_says(&scratch.refusal(), &["made by PostgreSQL 14", "apt-get install postgresql-14"]);
}

#[test]
fn missing_server_programs_are_named_with_their_package() {
    let scratch = Scratch::new();
    let empty = scratch.path().join("empty");
    std::fs::create_dir(&empty).expect("writable");
    let said = refusal(scratch.program().env("ENDPLAY_PG_BIN", &empty));
    let place = empty.display().to_string();
    assert_says(&said, &[&place, "apt-get install postgresql.", "ENDPLAY_PG_BIN", "DATABASE_URL"]);
}

#[test]
fn programs_that_are_too_old_are_refused() {
    let scratch = Scratch::new();
    let bin = fake_programs(scratch.path(), "14.2", "exit 1", "exit 1");
    let said = refusal(scratch.program().env("ENDPLAY_PG_BIN", bin));
    assert_says(&said, &["version 14", "15 or newer", "apt-get install postgresql"]);
}

#[test]
fn a_taken_port_is_named_with_the_variable_that_changes_it() {
    let scratch = Scratch::new();
    let other = TcpListener::bind("127.0.0.1:0").expect("a free port");
    let address = other.local_addr().expect("an address");
    let said = refusal(scratch.program().env("ENDPLAY_LISTEN", address.to_string()));
    assert_says(&said, &[&format!("port {}", address.port()), "already taken", "ENDPLAY_LISTEN=127.0.0.1:"]);
    assert_eq!(scratch.cluster(), None, "no database was made for a service that cannot serve");
}

#[test]
fn an_address_of_another_machine_is_refused() {
    let scratch = Scratch::new();
    let said = refusal(scratch.program().env("ENDPLAY_LISTEN", "192.0.2.1:8080"));
    assert_says(&said, &["192.0.2.1", "does not belong to this machine", "ENDPLAY_LISTEN"]);
}

#[test]
fn a_folder_out_of_reach_is_named() {
    let scratch = Scratch::new();
    let closed = scratch.path().join("closed");
    std::fs::create_dir(&closed).expect("writable");
    // Root may write anywhere, but the user who runs the database cannot follow; others cannot even write.
    let (mode, words) = if is_root() { (0o700, "may not enter") } else { (0o500, "cannot be used") };
    std::fs::set_permissions(&closed, Permissions::from_mode(mode)).expect("our own folder");
    let said = refusal(scratch.program().env("ENDPLAY_DATA", closed.join("data")));
    assert_says(&said, &[&closed.display().to_string(), words, "ENDPLAY_DATA"]);
}

#[test]
fn a_full_disk_is_called_by_its_name_and_leaves_nothing_half_made() {
    let scratch = Scratch::new();
    let mut data = scratch.data();
    let said = match SmallDisk::mount(&scratch, "20m") {
        Some(disk) => {
            data = disk.0.join("data");
            let said = refusal(scratch.program().env("ENDPLAY_DATA", &data));
            assert_eq!(cluster(&data), None, "a half-made database would be taken for a whole one");
            said
        }
        // Without the right to mount one, the program's own complaint stands for the full disk.
        None => {
            let full = "echo 'initdb: error: could not write file: No space left on device' >&2; exit 1";
            let bin = fake_programs(scratch.path(), "15.3", full, "exit 1");
            refusal(scratch.program().env("ENDPLAY_PG_BIN", bin))
        }
    };
    assert_says(&said, &["disk", "is full", "Free some space", "ENDPLAY_DATA"]);
    assert_eq!(cluster(&data), None, "a half-made database would be taken for a whole one");
}

#[test]
fn a_disk_that_fills_up_later_harms_nothing() {
    let scratch = Scratch::new();
    let Some(disk) = SmallDisk::mount(&scratch, "120m") else {
        scratch.start().stop();
        let major = scratch.cluster().and_then(|c| Some(c.to_str()?.rsplit('-').next()?.to_owned()));
        let full = "echo 'FATAL: could not write lock file: No space left on device' >&2; exit 1";
        let bin = fake_programs(scratch.path(), &major.expect("a number"), "exit 1", full);
        let said = refusal(scratch.program().env("ENDPLAY_PG_BIN", bin));
        assert_says(&said, &["is full", "what was saved before is unharmed"]);
        scratch.start().stop();
        return;
    };
    let on_disk = || {
        let mut program = scratch.program();
        program.env("ENDPLAY_DATA", disk.0.join("data"));
        program
    };
    Service::start(on_disk(), scratch.path()).stop();
    let filler = disk.0.join("filler");
    let filled = std::io::copy(&mut std::io::repeat(0), &mut std::fs::File::create(&filler).expect("writable"));
    assert_eq!(filled.expect_err("it is full now").kind(), ErrorKind::StorageFull);
    assert_says(&refusal(&mut on_disk()), &["is full", "what was saved before is unharmed"]);
    std::fs::remove_file(filler).expect("our own file");
    Service::start(on_disk(), scratch.path()).stop();
}

#[test]
fn wrong_settings_are_all_named_before_anything_is_touched() {
    let scratch = Scratch::new();
    let told = scratch.program().env("ENDPLAY_LISTEN", "here").env("ENDPLAY_LOG", "xml").output();
    let told = told.expect("the program runs");
    assert_eq!(told.status.code(), Some(2));
    let said = String::from_utf8(told.stderr).expect("text");
    assert!(said.contains("ENDPLAY_LISTEN is \"here\"") && said.contains("ENDPLAY_LOG is \"xml\""), "{said}");
    assert!(!scratch.data().exists());
}

/// A small disk in memory, mounted for one test.
struct SmallDisk(PathBuf);

impl SmallDisk {
    /// Nothing when this user may not mount one.
    fn mount(scratch: &Scratch, size: &str) -> Option<Self> {
        let place = scratch.path().join("disk");
        std::fs::create_dir(&place).expect("writable");
        let mut mount = Command::new("mount");
        mount.args(["-t", "tmpfs", "-o", &format!("size={size},mode=755"), "small"]).arg(&place);
        let mounted = is_root() && mount.status().is_ok_and(|s| s.success());
        mounted.then(|| Self(place))
    }
}

impl Drop for SmallDisk {
    fn drop(&mut self) {
        Command::new("umount").arg("--lazy").arg(&self.0).status().ok();
    }
}

/// Server programs that say they are `version`, and otherwise do as told.
fn fake_programs(scratch: &Path, version: &str, initdb: &str, server: &str) -> PathBuf {
    let bin = scratch.join("bin");
    std::fs::create_dir(&bin).expect("writable");
    let server = format!("[ \"$1\" = --version ] && exec echo 'postgres (PostgreSQL) {version}'\n{server}");
    for (name, does) in [("postgres", server.as_str()), ("initdb", initdb)] {
        let path = bin.join(name);
        std::fs::write(&path, format!("#!/bin/sh\n{does}\n")).expect("writable");
        std::fs::set_permissions(path, Permissions::from_mode(0o755)).expect("our own file");
    }
    bin
}
