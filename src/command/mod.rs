//! The command line: what each command does, in terms of the rooms above.

pub mod check;
mod demo;
mod health;
mod rules;
pub mod serve;
pub mod site;
mod wrap;

use std::fmt::Write as _;
use std::io::{IsTerminal as _, Write as _};
use std::process::ExitCode;

use clap::{CommandFactory, FromArgMatches, Parser, Subcommand};
use tracing_subscriber::EnvFilter;

use crate::settings::{LogFormat, Settings, VARIABLES};

#[derive(Debug, Parser)]
#[command(name = "endplay", version, about, disable_help_subcommand = true)]
struct Cli {
    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// The web service; what happens when no command is given
    Serve {
        /// Read the settings, say what they are, and stop
        #[arg(long)]
        check_config: bool,
    },
    /// The web service with an invented shop, on a database that is gone afterwards
    Demo,
    /// Holds jobs against the rule book
    ///
    /// The exit status is 0 when no job has a stop, 1 when one has, and 2 when a job could not be read or the answer could not be written.
    Check {
        /// Job files; - is standard input, .jsonl holds one job a line
        #[arg(required = true)]
        files: Vec<String>,
        /// How the findings are printed
        #[arg(long, value_enum, default_value = "text")]
        format: check::Format,
    },
    /// The rule book, or one rule whole
    Rules {
        /// A code such as THR-01, or the letters of a family
        code: Option<String>,
    },
}

/// Runs the command the program was started with.
///
/// Exit status 0: done; 1: it failed, with a sentence on standard error;
/// 2: the command line or the settings could not be read.
pub fn run() -> ExitCode {
    let matches = Cli::command().after_long_help(variables()).get_matches();
    let cli = Cli::from_arg_matches(&matches).unwrap_or_else(|e| e.exit());
    match cli.command.unwrap_or(Command::Serve { check_config: false }) {
        Command::Serve { check_config } => with_settings(|settings| {
            if check_config {
                print!("{}", serve::described(&settings));
                return ExitCode::SUCCESS;
            }
            finish(serve::run(settings))
        }),
        Command::Demo => with_settings(|settings| finish(demo::run(settings))),
        Command::Check { files, format } => check::run(&files, format),
        Command::Rules { code } => rules::run(code.as_deref()),
    }
}

/// Reads the settings, starts the log, and hands both on.
fn with_settings(then: impl FnOnce(Settings) -> ExitCode) -> ExitCode {
    let lossy = |s: std::ffi::OsString| s.to_string_lossy().into_owned();
    let vars = std::env::vars_os().map(|(name, value)| (lossy(name), lossy(value)));
    match Settings::read(vars, rustix::process::geteuid().is_root()) {
        Ok((settings, warnings)) => {
            start_log(settings.log);
            for warning in warnings {
                tracing::warn!("{warning}");
            }
            then(settings)
        }
        Err(problems) => {
            for problem in problems {
                eprintln!("{problem}");
            }
            ExitCode::from(2)
        }
    }
}

/// Turns an outcome into the exit status and the sentence that explains it.
fn finish(outcome: Result<(), site::Failure>) -> ExitCode {
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            eprintln!("{failure}");
            ExitCode::FAILURE
        }
    }
}

/// Prints a line for the person who started the program; someone who closed
/// the other end of the pipe does not want it.
pub fn say(line: &str) {
    writeln!(std::io::stdout(), "{line}").ok();
}

fn start_log(format: LogFormat) {
    let filter = EnvFilter::new("info,sqlx=warn");
    let colours = std::io::stderr().is_terminal();
    let log = tracing_subscriber::fmt().with_env_filter(filter).with_writer(std::io::stderr).with_ansi(colours);
    match format {
        LogFormat::Text => log.with_target(false).init(),
        LogFormat::Json => log.json().flatten_event(true).init(),
    }
}

fn variables() -> String {
    let mut text = String::from("Settings come from the environment:\n");
    for v in VARIABLES {
        // Writing to a string cannot fail.
        write!(text, "\n  {}\n      {}\n      Not set: {}.\n", v.name, v.meaning, v.default).ok();
    }
    text
}
