//! How fast the rule book and the sums are, as ratios against a ceiling measured in the same run.
//!
//! `cargo bench` runs all of it and prints one line each. Times are medians of rounds in which both sides take
//! turns, so that a busy machine slows both alike; the ratio is what counts.

mod check;
#[path = "../it/web/client.rs"]
#[allow(dead_code, reason = "the tests of pages use more of it")]
mod client;
mod flow;
mod jobs;
mod measure;
mod pages;
mod rules;
mod shelf;
#[path = "../support/mod.rs"]
mod support;

fn main() {
    rules::against_parsing();
    flow::against_a_dense_solve();
    shelf::growth();
    pages::with_pictures();
    check::a_long_file();
}
