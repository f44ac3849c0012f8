//! An ordered stop ends everything and loses nothing.

use std::io::{Read, Write};
use std::net::TcpStream;

use rustix::process::{Signal, kill_process};

use crate::service::{Scratch, until};

#[test]
fn both_orders_leave_no_process_and_a_database_at_rest() {
    for order in [Signal::TERM, Signal::INT] {
        let scratch = Scratch::new();
        let mut service = scratch.start();
        assert_eq!(service.status("/readyz"), Some(200));
        service.signal(order);
        let status = service.wait();
        assert!(status.success(), "{order:?}: {status}: {}", service.said());
        scratch.assert_nothing_runs();
        let log = std::fs::read_to_string(scratch.data().join("postgres.log")).expect("a log");
        assert!(log.trim_end().ends_with("database system is shut down"), "{log}");
    }
}

#[test]
fn a_request_that_never_ends_does_not_hold_it_up() {
    let scratch = Scratch::new();
    let service = scratch.start();
    let mut half = TcpStream::connect(service.url().trim_start_matches("http://")).expect("it serves");
    half.write_all(b"GET /healthz HTTP/1.1\r\nHost: localhost\r\n").expect("it reads");
    service.stop();
    scratch.assert_nothing_runs();
}

#[test]
fn an_open_request_still_gets_its_answer() {
    let scratch = Scratch::new();
    let service = scratch.start();
    // The question whether it is ready hangs for a second while the database is frozen.
    let servers = scratch.servers();
    servers.iter().for_each(|pid| kill_process(*pid, Signal::STOP).expect("it runs"));
    let mut asking = TcpStream::connect(service.url().trim_start_matches("http://")).expect("it serves");
    asking.write_all(b"GET /readyz HTTP/1.1\r\nHost: localhost\r\n\r\n").expect("it reads");
    until("the request has arrived", || service.status("/healthz") == Some(200));
    service.signal(Signal::TERM);
    let mut answer = String::new();
    asking.read_to_string(&mut answer).expect("an answer");
    assert!(answer.starts_with("HTTP/1.1 503") && answer.ends_with("the database does not answer\n"), "{answer}");
    servers.iter().for_each(|pid| kill_process(*pid, Signal::CONT).expect("it runs"));
    service.stop();
    scratch.assert_nothing_runs();
}

#[test]
fn a_start_that_is_stopped_half_way_ends_in_good_order() {
    for moment in [30, 200, 500] {
        let scratch = Scratch::new();
        scratch.start_for(moment, Signal::TERM);
        until("the last process is gone", || scratch.processes().is_empty());
        scratch.first_start().stop();
    }
}
