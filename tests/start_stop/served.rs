//! The plain start.

use std::collections::HashSet;
use std::os::unix::fs::MetadataExt;
use std::path::Path;
use std::process::Command;

use endplay::service::{Failure, Key, SetUp};
use sqlx::postgres::PgConnectOptions;

use crate::service::{Scratch, Service, is_root};

#[test]
fn with_nothing_but_a_folder_it_serves() {
    let scratch = Scratch::new();
    let service = scratch.first_start();
    assert_eq!(service.status("/healthz"), Some(200));
    assert_eq!(service.status("/readyz"), Some(200));
    assert_eq!(service.status("/no-such-page"), Some(404));
    service.stop();
}

#[test]
fn the_owners_link_is_printed_until_the_shop_is_set_up_and_never_again() {
    let scratch = Scratch::new();
    let service = scratch.first_start();
    let link = service.setup_link().expect("a link on the first start").to_owned();
    assert!(link.starts_with(&format!("{}/setup/", service.url())), "{link}");
    let pass = link.rsplit('/').next().expect("the pass").to_owned();
    set_up(&scratch, &pass).expect("the link opens");
    assert!(matches!(set_up(&scratch, &pass), Err(Failure::LinkClosed)), "it opens once");
    assert!(!service.said().contains(&pass), "a secret does not belong in a log");
    service.stop();

    let service = scratch.start();
    assert_eq!(service.setup_link(), None);
    service.stop();
}

/// Sets the shop up as the owner does on the page behind the link.
fn set_up(scratch: &Scratch, pass: &str) -> Result<(), Failure> {
    let answers = SetUp {
        shop: "Millrace Transmission".into(),
        phone: "555 0100".into(),
        zone: "America/Chicago".into(),
        name: "Ida Quill".into(),
        password: "slow brass kettle on a shelf".into(),
    };
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
    runtime.block_on(async {
        let database = PgConnectOptions::new().socket(scratch.data().join("socket")).username("endplay_service");
        let pool = endplay::store::pool::lazy(database.database("endplay"));
        let service = endplay::service::Service::new(pool, endplay::service::judge);
        service.set_up(pass, Key::fresh(), answers, "test").await
    })
}

#[test]
fn it_serves_for_an_ordinary_user() {
    let scratch = Scratch::new();
    let service = Service::start(scratch.program_as_ordinary_user(), scratch.path());
    assert_eq!(service.status("/readyz"), Some(200));
    service.stop();
}

#[test]
fn a_deep_folder_with_an_odd_name_serves_too() {
    let scratch = Scratch::new();
    let mut program = scratch.program();
    let deep = scratch.path().join(format!("o'neil \"bob\", {}/data", "x".repeat(100)));
    program.env("ENDPLAY_DATA", deep);
    let service = Service::start(program, scratch.path());
    assert_eq!(service.status("/readyz"), Some(200));
    service.stop();
    scratch.assert_nothing_runs();
}

#[test]
fn the_database_runs_unprivileged_off_the_network_and_with_checksums() {
    let scratch = Scratch::new();
    let service = scratch.first_start();
    let (cluster, server) = (scratch.cluster().expect("a cluster"), scratch.postmaster().expect("a server"));

    let status = std::fs::read_to_string(format!("/proc/{server}/status")).expect("it runs");
    let users = status.lines().find_map(|l| l.strip_prefix("Uid:")).expect("a line").trim();
    assert!(users.split_whitespace().all(|uid| uid != "0"), "the database runs as {users}");

    for private in [scratch.data().join("socket"), cluster.clone()] {
        let mode = std::fs::metadata(&private).expect("it is there").mode() & 0o777;
        assert_eq!(mode, 0o700, "only its own user enters {}", private.display());
    }
    assert_eq!(ports_of(server.as_raw_nonzero().get()), 0, "the database listens on a network");

    // The first word of how the server was started leads to the tool that reads its control file.
    let line = std::fs::read_to_string(cluster.join("postmaster.opts")).expect("readable");
    let bin = Path::new(line.split_whitespace().next().expect("a program")).parent().expect("a folder");
    let told = Command::new(bin.join("pg_controldata")).arg(&cluster).output().expect("the tool runs");
    let told = String::from_utf8_lossy(&told.stdout).into_owned();
    let checksums = told.lines().find_map(|l| l.strip_prefix("Data page checksum version:")).expect("a line");
    assert_eq!(checksums.trim(), "1");
    service.stop();
}

#[test]
fn another_user_cannot_get_at_the_database() {
    let scratch = Scratch::new();
    let service = scratch.start();
    let (socket, secrets) = (scratch.data().join("socket/.s.PGSQL.5432"), scratch.data().join("postgres.log"));
    for place in [&socket, &secrets] {
        let parent = place.parent().expect("a folder");
        let closed = [place.as_path(), parent].iter().any(|p| {
            let mode = std::fs::metadata(p).expect("it is there").mode();
            mode & 0o077 == 0
        });
        assert!(closed, "{} is open to others", place.display());
    }
    if is_root() {
        let mut other = Command::new("setpriv");
        other.args(["--reuid=65534", "--regid=65534", "--clear-groups", "test", "-e"]).arg(&socket);
        assert!(!other.status().expect("setpriv runs").success(), "another user sees {}", socket.display());
    }
    service.stop();
}

/// How many TCP ports a process listens on, by the kernel's own tables.
fn ports_of(pid: i32) -> usize {
    let mut own = HashSet::new();
    for entry in std::fs::read_dir(format!("/proc/{pid}/fd")).expect("readable").flatten() {
        let link = std::fs::read_link(entry.path()).unwrap_or_default().to_string_lossy().into_owned();
        own.extend(link.strip_prefix("socket:[").and_then(|l| l.strip_suffix(']')).map(str::to_owned));
    }
    let tables = ["/proc/net/tcp", "/proc/net/tcp6"].map(|t| std::fs::read_to_string(t).unwrap_or_default());
    let rows = tables.iter().flat_map(|t| t.lines()).map(|l| l.split_whitespace().collect::<Vec<_>>());
    // The fourth word says how a socket stands (0A: listening), the tenth is its number.
    rows.filter(|row| row.get(3) == Some(&"0A") && row.get(9).is_some_and(|number| own.contains(*number))).count()
}
