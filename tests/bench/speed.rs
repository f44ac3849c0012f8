//! How fast the rule book and the sums are, as ratios against a ceiling measured in the same run.
//!
//! `cargo bench` runs all of it and prints one line each. Times are medians of rounds in which both sides take
//! turns, so that a busy machine slows both alike; the ratio is what counts.

mod check;
mod flow;
mod jobs;
mod measure;
mod rules;
mod shelf;

fn main() {
    rules::against_parsing();
    flow::against_a_dense_solve();
    shelf::growth();
    check::a_long_file();
}
