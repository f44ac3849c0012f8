//! A database that goes away in the middle: people wait, nothing is lost, nothing is done twice.

use crate::shop;
use endplay::postgres::{self, ADMIN, Durability, Folder};
use endplay::service::{FirstStart, Key, Service, Who, WriteNote};
use endplay::store;
use rustix::process::{Pid, Signal, kill_process};
use sqlx::{Connection, PgConnection};
use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;
use uuid::Uuid;

/// A folder of its own that is gone afterwards.
struct Scratch(PathBuf);

impl Drop for Scratch {
    fn drop(&mut self) {
        std::fs::remove_dir_all(&self.0).ok();
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_server_killed_or_restarted_mid_write_costs_a_wait_and_nothing_else() {
    let scratch = Scratch(std::env::temp_dir().join(format!("endplay-restart-{}", std::process::id())));
    let folder = Folder::open(&scratch.0).expect("a folder");
    let path = std::env::var("PATH").unwrap_or_default();
    let server = postgres::start(folder, None, path, Durability::Lasting).await.expect("a server");
    let mut owner = PgConnection::connect_with(&server.owner()).await.expect("the owner may");
    store::MIGRATIONS.run_direct(None, &mut owner, false).await.expect("the migrations run");
    owner.close().await.expect("closed");

    let pool = store::pool::sized(6).connect_lazy_with(server.service());
    let service = Service::new(pool, shop::three_rules);
    let FirstStart::SetUpWith(pass) = service.first_start().await.expect("a first start") else { panic!("set up") };
    service.set_up(&pass.to_string(), Key::fresh(), shop::set_up_form(), "Desk").await.expect("set up");
    let owner = service.sign_in(pass.shop(), "Olive Marsh", shop::PASSWORD, "Desk").await.expect("signed in").caller;
    let who = Who::Staff(owner);
    let ticket = service.write(who.clone(), Key::fresh(), shop::take_in_form()).await.expect("taken in").ticket;

    let stop = Arc::new(AtomicBool::new(false));
    let writers: Vec<_> = (0..6)
        .map(|writer| {
            let (service, who, stop) = (service.clone(), who.clone(), stop.clone());
            tokio::spawn(async move {
                let mut acknowledged: Vec<Uuid> = Vec::new();
                while !stop.load(Ordering::Relaxed) {
                    let (key, text) = (Key::fresh(), format!("writer {writer}, note {}", acknowledged.len()));
                    service.write(who.clone(), key, WriteNote { ticket, text }).await.expect("a wait, not an error");
                    acknowledged.push(key.0);
                }
                acknowledged
            })
        })
        .collect();
    let admin = server.owner().username(ADMIN).database("postgres");
    for signal in [Signal::KILL, Signal::INT, Signal::KILL] {
        tokio::time::sleep(Duration::from_millis(300)).await;
        let postmaster = loop {
            match postmaster(&admin).await {
                Ok(pid) => break pid,
                Err(_) => tokio::time::sleep(Duration::from_millis(50)).await,
            }
        };
        kill_process(Pid::from_raw(postmaster).expect("a process"), signal).expect("it was running");
    }
    while PgConnection::connect_with(&server.owner()).await.is_err() {
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
    // Long enough for every writer to have written after the last restart.
    tokio::time::sleep(Duration::from_millis(1500)).await;
    stop.store(true, Ordering::Relaxed);
    let mut acknowledged = Vec::new();
    for writer in writers {
        acknowledged.extend(writer.await.expect("no writer met an error"));
    }
    assert!(acknowledged.len() > 20, "{} writes", acknowledged.len());

    let mut look = PgConnection::connect_with(&server.owner()).await.expect("the owner may");
    let mut written: Vec<Uuid> = sqlx::query_scalar("SELECT id FROM event WHERE happened->>'kind' = 'noted'")
        .fetch_all(&mut look)
        .await
        .expect("the events");
    written.sort();
    acknowledged.sort();
    assert_eq!(written, acknowledged, "exactly what was acknowledged is there, each once");
    server.stop().await;
}

async fn postmaster(admin: &sqlx::postgres::PgConnectOptions) -> sqlx::Result<i32> {
    let mut admin = PgConnection::connect_with(admin).await?;
    let file: String = sqlx::query_scalar("SELECT pg_read_file('postmaster.pid')").fetch_one(&mut admin).await?;
    Ok(file.lines().next().and_then(|line| line.trim().parse().ok()).expect("the first line is the process"))
}
