//! After a kill the next start recovers by itself, and nothing is left running.

use std::os::unix::fs::MetadataExt;
use std::process::Command;

use rustix::process::{Signal, kill_process, kill_process_group};
use sqlx::postgres::PgConnectOptions;
use sqlx::{Connection, Executor, PgConnection};

use crate::service::{NOBODY, Scratch, Service, is_root, until};

/// Does `work` on the private server as the owner of the schema.
fn on_server<T>(scratch: &Scratch, work: impl AsyncFnOnce(&mut PgConnection) -> T) -> T {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
    runtime.block_on(async {
        let options = PgConnectOptions::new().socket(scratch.data().join("socket")).username("endplay_owner");
        let mut connection = PgConnection::connect_with(&options.database("endplay")).await.expect("a server");
        work(&mut connection).await
    })
}

fn write(scratch: &Scratch) {
    on_server(scratch, async |c| {
        c.execute("CREATE TABLE proof AS SELECT 42 AS number").await.expect("the server obeys");
    });
}

fn read(scratch: &Scratch) -> i32 {
    on_server(scratch, async |c| sqlx::query_scalar("SELECT number FROM proof").fetch_one(c).await.expect("a row"))
}

/// Starts the program once more, looks for what was written before, and stops it.
#[track_caller]
fn assert_the_next_start_has_it_all(scratch: &Scratch) {
    let service = scratch.start();
    assert_eq!(service.status("/readyz"), Some(200));
    assert_eq!(read(scratch), 42);
    service.stop();
    scratch.assert_nothing_runs();
}

#[test]
fn a_killed_program_takes_its_server_along() {
    let scratch = Scratch::new();
    let service = scratch.start();
    write(&scratch);
    service.kill();
    until("the server has followed", || scratch.processes().is_empty());
    assert_the_next_start_has_it_all(&scratch);
}

#[test]
fn a_start_right_after_a_killed_group_waits_for_the_old_server() {
    let scratch = Scratch::new();
    let mut service = scratch.start();
    write(&scratch);
    kill_process_group(service.pid(), Signal::KILL).expect("it runs");
    service.wait();
    assert_the_next_start_has_it_all(&scratch);
}

#[test]
fn a_killed_program_and_server_leave_nothing_in_the_way() {
    let scratch = Scratch::new();
    let service = scratch.start();
    write(&scratch);
    kill_process(scratch.postmaster().expect("a server"), Signal::KILL).expect("it runs");
    service.kill();
    assert_the_next_start_has_it_all(&scratch);
}

#[test]
fn a_stray_server_is_found_and_stopped() {
    let scratch = Scratch::new();
    let service = scratch.start();
    write(&scratch);
    service.stop();
    // What a system without parent-death signals leaves behind: the same server, tied to nobody.
    let cluster = scratch.cluster().expect("a cluster");
    let line = std::fs::read_to_string(cluster.join("postmaster.opts")).expect("the server notes how it was started");
    let line = line.replace('"', "");
    let mut words = line.split_whitespace();
    let mut stray = Command::new(if is_root() { "setpriv" } else { "env" });
    if is_root() {
        let owner = std::fs::metadata(&cluster).expect("readable");
        stray.args([format!("--reuid={}", owner.uid()), format!("--regid={}", owner.gid()), "--clear-groups".into()]);
    }
    let mut stray = stray.arg(words.next().expect("a program")).args(words).spawn().expect("a server starts");
    until("the stray serves", || scratch.postmaster().is_some());

    let mut ended = None;
    std::thread::scope(|scope| {
        // Its end has to be collected, as the system's first process does for orphans.
        let collector = scope.spawn(|| stray.wait().expect("our child"));
        let service = scratch.start();
        ended = collector.join().ok();
        assert!(service.said().contains("left over from an earlier run"), "{}", service.said());
        assert_eq!(read(&scratch), 42);
        service.stop();
    });
    assert!(ended.is_some_and(|status| status.success()), "the stray was stopped in good order: {ended:?}");
    scratch.assert_nothing_runs();
}

#[test]
fn a_first_start_killed_at_any_moment_is_made_good_by_the_next() {
    let scratch = Scratch::new();
    for moment in [20, 120, 250, 400, 700] {
        scratch.start_for(moment, Signal::KILL);
    }
    let service = scratch.first_start();
    assert_eq!(service.status("/readyz"), Some(200));
    service.stop();
    scratch.assert_nothing_runs();
}

#[test]
fn a_server_that_ends_unasked_is_started_again() {
    let scratch = Scratch::new();
    let service = scratch.start();
    write(&scratch);
    let before = scratch.postmaster();
    kill_process(before.expect("a server"), Signal::KILL).expect("it runs");
    until("a new server serves", || {
        assert_eq!(service.status("/healthz"), Some(200), "the program itself lives on");
        scratch.postmaster() != before && service.status("/readyz") == Some(200)
    });
    assert_eq!(read(&scratch), 42);
    service.stop();
    scratch.assert_nothing_runs();
}

#[test]
fn a_server_that_ends_again_and_again_is_given_up_with_a_sentence() {
    let scratch = Scratch::new();
    let mut service = scratch.start();
    let (mut last, mut status) = (None, None);
    until("the program gives up", || {
        // Each server once, as soon as it is there.
        if let Some(pid) = scratch.postmaster().filter(|pid| Some(*pid) != last) {
            last = kill_process(pid, Signal::KILL).is_ok().then_some(pid);
        }
        if service.status("/healthz").is_none() {
            status = Some(service.wait());
        }
        status.is_some()
    });
    assert_eq!(status.and_then(|s| s.code()), Some(1), "{}", service.said());
    assert!(service.said().contains("The database server ended and did not come back."), "{}", service.said());
    scratch.assert_nothing_runs();
}

#[test]
fn a_frozen_server_shows_as_not_ready_until_it_thaws() {
    let scratch = Scratch::new();
    let service = scratch.start();
    assert_eq!(service.status("/readyz"), Some(200));
    let servers = scratch.servers();
    servers.iter().for_each(|pid| kill_process(*pid, Signal::STOP).expect("it runs"));
    assert_eq!(service.status("/readyz"), Some(503));
    assert_eq!(service.status("/healthz"), Some(200));
    servers.iter().for_each(|pid| kill_process(*pid, Signal::CONT).expect("it runs"));
    until("it is ready again", || service.status("/readyz") == Some(200));
    service.stop();
}

#[test]
fn even_a_frozen_server_is_gone_after_an_ordered_stop() {
    let scratch = Scratch::new();
    let service = scratch.start();
    write(&scratch);
    scratch.servers().iter().for_each(|pid| kill_process(*pid, Signal::STOP).expect("it runs"));
    service.stop();
    scratch.assert_nothing_runs();
    assert_the_next_start_has_it_all(&scratch);
}

#[test]
fn an_ordinary_users_killed_service_recovers_as_well() {
    let scratch = Scratch::new();
    Service::start(scratch.program_as_ordinary_user(), scratch.path()).kill();
    let service = Service::start(scratch.program_as_ordinary_user(), scratch.path());
    assert_eq!(service.status("/readyz"), Some(200));
    if is_root() {
        let owner = std::fs::metadata(scratch.cluster().expect("a cluster")).expect("readable").uid();
        assert_eq!(owner, NOBODY, "everything runs as the user who started it");
    }
    service.stop();
    scratch.assert_nothing_runs();
}
