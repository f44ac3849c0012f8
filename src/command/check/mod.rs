//! `endplay check`: jobs in, findings out.
//!
//! A file whose name ends in `.jsonl` holds one job a line and is read line by
//! line; any other file holds one job. Standard input (`-`) may be either: if
//! its first line is not the beginning of a longer JSON text, it is one job a
//! line. Whatever cannot be read is said on standard error with file, line and
//! path, and the rest goes on.

mod lines;
mod report;

use crate::job::{Job, JobError};
use crate::rules::{Limits, judge};
use lines::{LONGEST, Lines, Piece, Text, goes_on};
use std::fs::File;
use std::io::{self, BufRead, BufReader, BufWriter, Write};
use std::path::Path;
use std::process::ExitCode;
use std::thread;

/// How the findings are printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub enum Format {
    /// For people
    Text,
    /// One object a job, one job a line
    Json,
}

/// What came of a run, worst first when it ends.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Outcome {
    /// A stop is among the findings.
    pub stop: bool,
    /// Something could not be read.
    pub unreadable: bool,
}

impl Outcome {
    /// The exit status: 2 when something could not be read, 1 when there is a stop, else 0.
    pub fn status(self) -> u8 {
        match self {
            Self { unreadable: true, .. } => 2,
            Self { stop: true, .. } => 1,
            _ => 0,
        }
    }
}

/// Runs the command on standard input and output.
pub fn run(files: &[String], format: Format) -> ExitCode {
    let threads = thread::available_parallelism().map_or(1, usize::from);
    let mut out = BufWriter::with_capacity(1 << 16, io::stdout().lock());
    let mut complaints = io::stderr().lock();
    let done = check(files, format, threads, &mut io::stdin().lock(), &mut out, &mut complaints);
    ExitCode::from(ended(done.and_then(|outcome| out.flush().map(|()| outcome)), &mut complaints))
}

/// The exit status of a run, with a word about findings that could not be written.
fn ended(done: io::Result<Outcome>, complaints: &mut dyn Write) -> u8 {
    match done {
        Ok(outcome) => outcome.status(),
        Err(error) => {
            // Whoever closed the pipe has seen enough and needs no word. But a stop may be among what was not
            // written, so it is no success either.
            if error.kind() != io::ErrorKind::BrokenPipe {
                writeln!(complaints, "The findings could not be written: {error}.").ok();
            }
            2
        }
    }
}

/// Checks every file in turn, keeping the order of the jobs.
///
/// # Errors
/// Only when the findings cannot be written; what cannot be read is part of the outcome.
pub fn check(
    files: &[String],
    format: Format,
    threads: usize,
    stdin: &mut dyn BufRead,
    out: &mut dyn Write,
    complaints: &mut dyn Write,
) -> io::Result<Outcome> {
    let limits = Limits::default();
    let mut run = Run { format, threads, limits, out, complaints, outcome: Outcome::default() };
    for file in files {
        if file == "-" {
            run.stream("standard input", Lines::new(&mut *stdin), None)?;
        } else {
            match File::open(file) {
                Ok(opened) => run.stream(file, Lines::new(BufReader::new(opened)), Some(Path::new(file)))?,
                Err(error) => run.unreadable(file, &error)?,
            }
        }
    }
    Ok(run.outcome)
}

struct Run<'a> {
    format: Format,
    threads: usize,
    limits: Limits,
    out: &'a mut dyn Write,
    complaints: &'a mut dyn Write,
    outcome: Outcome,
}

/// What one job gave.
struct Answer {
    printed: String,
    complaints: String,
    outcome: Outcome,
}

/// Lines judged in one go: enough to keep every core busy, few enough to hold.
const BATCH_LINES: usize = 2048;
const BATCH_BYTES: usize = 8 * 1024 * 1024;

impl Run<'_> {
    fn stream(&mut self, name: &str, mut lines: Lines<impl BufRead>, path: Option<&Path>) -> io::Result<()> {
        let by_line = path.map(|path| path.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("jsonl")));
        let first = match lines.next_piece() {
            Ok(Some(first)) => first,
            // A file of no lines holds no jobs; any other empty file lacks the one it should hold.
            Ok(None) if by_line == Some(true) => return Ok(()),
            Ok(None) => return self.answer(name, &[Piece { line: 1, text: Text::Whole(Vec::new()) }]),
            Err(error) => return self.unreadable(name, &error),
        };
        if !by_line.unwrap_or_else(|| !goes_on(&first)) {
            return match lines.rest_after(first) {
                Ok(whole) => self.answer(name, &[whole]),
                Err(error) => self.unreadable(name, &error),
            };
        }
        let mut batch = vec![first];
        let mut bytes = 0;
        loop {
            match lines.next_piece() {
                Ok(Some(piece)) => {
                    if let Text::Whole(text) = &piece.text {
                        bytes += text.len();
                    }
                    batch.push(piece);
                    if batch.len() >= BATCH_LINES || bytes >= BATCH_BYTES {
                        self.answer(name, &batch)?;
                        batch.clear();
                        bytes = 0;
                    }
                }
                Ok(None) => return self.answer(name, &batch),
                Err(error) => {
                    self.answer(name, &batch)?;
                    return self.unreadable(name, &error);
                }
            }
        }
    }

    /// Judges a batch on every core and prints the answers in the order of the jobs.
    fn answer(&mut self, name: &str, batch: &[Piece]) -> io::Result<()> {
        let (format, limits) = (self.format, &self.limits);
        let judge_all = |pieces: &[Piece]| -> io::Result<Vec<Answer>> {
            pieces.iter().map(|piece| judged(name, piece, format, limits)).collect()
        };
        let share = batch.len().div_ceil(self.threads.max(1)).max(1);
        let answers = if share >= batch.len() {
            judge_all(batch)?
        } else {
            let judged = thread::scope(|scope| {
                let shares: Vec<_> = batch.chunks(share).map(|pieces| scope.spawn(|| judge_all(pieces))).collect();
                shares.into_iter().map(joined).collect::<io::Result<Vec<_>>>()
            });
            judged?.into_iter().flatten().collect()
        };
        answers.into_iter().try_for_each(|answer| self.print(answer))
    }

    fn unreadable(&mut self, name: &str, why: &io::Error) -> io::Result<()> {
        let message = format!("It cannot be read: {why}.");
        let error = refusal(name, "a file or a pipe that can be read", message);
        let answer = refused(name, 1, self.format, &[error])?;
        self.print(answer)
    }

    fn print(&mut self, answer: Answer) -> io::Result<()> {
        self.out.write_all(answer.printed.as_bytes())?;
        self.complaints.write_all(answer.complaints.as_bytes())?;
        self.outcome.stop |= answer.outcome.stop;
        self.outcome.unreadable |= answer.outcome.unreadable;
        Ok(())
    }
}

/// A thread's answers; a thread that fell over takes the whole run down rather than losing its jobs unseen.
fn joined<T>(share: thread::ScopedJoinHandle<'_, T>) -> T {
    share.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))
}

fn judged(name: &str, piece: &Piece, format: Format, limits: &Limits) -> io::Result<Answer> {
    let job = match read(&piece.text) {
        Ok(job) => job,
        Err(errors) => return refused(name, piece.line, format, &errors),
    };
    let verdicts = judge(&job, limits);
    let mut printed = match format {
        Format::Json => report::json(&job, &verdicts)?,
        Format::Text => report::text(&format!("{name}:{}", piece.line), &job, &verdicts),
    };
    printed.push('\n');
    let outcome = Outcome { stop: verdicts.has_stop(), unreadable: false };
    Ok(Answer { printed, complaints: String::new(), outcome })
}

fn read(text: &Text) -> Result<Job, Vec<JobError>> {
    let Text::Whole(bytes) = text else {
        let message = format!("This is longer than a job can be ({} KiB), so it was passed over.", LONGEST / 1024);
        return Err(vec![refusal("", "a job of at most 1 MiB", message)]);
    };
    match std::str::from_utf8(bytes) {
        Ok(text) => Job::from_json(text),
        Err(_) => {
            let message = "This is not text in UTF-8, so it cannot be read.".to_owned();
            Err(vec![refusal(&String::from_utf8_lossy(bytes), "one JSON object, as text in UTF-8", message)])
        }
    }
}

/// Something wrong with the whole text of a job.
fn refusal(given: &str, allowed: &str, message: String) -> JobError {
    let given: String = given.chars().take(200).collect();
    JobError { path: String::new(), given: given.into(), allowed: allowed.to_owned(), message, line: None }
}

fn refused(name: &str, first_line: usize, format: Format, errors: &[JobError]) -> io::Result<Answer> {
    let mut printed = match format {
        Format::Json => report::refusal_json(errors)?,
        Format::Text => format!("{name}:{first_line}: not read, {} to put right\n", errors.len()),
    };
    printed.push('\n');
    let mut complaints = String::new();
    for error in errors {
        let line = first_line + error.line.unwrap_or(1).saturating_sub(1);
        let path = if error.path.is_empty() { String::new() } else { format!("{}: ", error.path) };
        complaints.push_str(&format!("{name}:{line}: {path}{}\n", error.message));
    }
    Ok(Answer { printed, complaints, outcome: Outcome { stop: false, unreadable: true } })
}

#[cfg(test)]
mod tests;
