//! The command line.

fn main() -> std::process::ExitCode {
    endplay::command::run()
}
