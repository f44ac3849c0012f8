//! Why the private database server did not start, each with the remedy.

use std::io;
use std::path::{Path, PathBuf};

/// A start that did not happen. The text is a whole sentence for the person
/// at the terminal: what is wrong, and what to do about it.
#[derive(Debug, thiserror::Error)]
#[expect(missing_docs, reason = "the sentence of each variant says what its fields are")]
pub enum StartError {
    /// No PostgreSQL server on the machine.
    #[error(
        "No PostgreSQL server programs were found on this machine (looked in {}). \
         Install them, on Debian or Ubuntu with: apt-get install postgresql. \
         If they are somewhere else, name their folder in ENDPLAY_PG_BIN; \
         if a server runs elsewhere, name it in DATABASE_URL.",
        list(looked)
    )]
    NoPrograms { looked: Vec<PathBuf> },

    /// Server programs exist, but none is new enough.
    #[error(
        "The newest PostgreSQL on this machine is version {newest}; Endplay needs {} or newer. \
         Install a newer one, on Debian or Ubuntu with: apt-get install postgresql.",
        super::OLDEST_MAJOR
    )]
    TooOld { newest: u32 },

    /// The data was written by another major version.
    #[error(
        "The database in {} was made by PostgreSQL {made_by}, and this machine has only version {}. \
         PostgreSQL cannot open another version's files; nothing was changed. \
         Install the matching one (on Debian: apt-get install postgresql-{made_by}), \
         or name its folder in ENDPLAY_PG_BIN.",
        folder.display(), numbers(installed)
    )]
    OtherMajor { folder: PathBuf, made_by: u32, installed: Vec<u32> },

    /// Another Endplay works in the folder.
    #[error(
        "Endplay is already running with the data folder {}{}. \
         Use that one, or stop it first; a second service beside it needs its own folder in ENDPLAY_DATA.",
        folder.display(), process(*pid)
    )]
    AlreadyRunning { folder: PathBuf, pid: Option<u32> },

    /// The folder holds something that is not ours.
    #[error(
        "The folder {} is not empty and was not made by Endplay, so nothing in it was touched. \
         Name an empty or new folder in ENDPLAY_DATA.",
        folder.display()
    )]
    ForeignFolder { folder: PathBuf },

    /// The program may not read or write the folder.
    #[error(
        "The data folder {} cannot be used: {reason}. \
         Give {who} the right to write there, or name another folder in ENDPLAY_DATA.",
        folder.display()
    )]
    NoAccess { folder: PathBuf, who: String, reason: io::Error },

    /// The account of the database cannot get to the folder.
    #[error(
        "The database runs as the user {account}, who may not enter {}. \
         Name a data folder in ENDPLAY_DATA that this user can reach, for example /var/lib/endplay, \
         or open the way with: chmod o+x {}",
        barred.display(), barred.display()
    )]
    CannotEnter { account: String, barred: PathBuf },

    /// Files of the cluster belong to the wrong user.
    #[error(
        "The database folder {} belongs to {owner}, but the database would run as {account}. \
         Start Endplay as the user who made the folder, or as root hand it over with: chown -R {account} {}",
        folder.display(), folder.display()
    )]
    WrongOwner { folder: PathBuf, owner: String, account: String },

    /// Root, and nobody else to run the database as.
    #[error(
        "PostgreSQL refuses to run as root, and this machine has no user named {} to run it as. \
         Make one with: useradd --system endplay, or start Endplay as an ordinary user.",
        super::account::CANDIDATES.join(", ")
    )]
    NoAccount,

    /// No room.
    #[error(
        "The disk that holds {} is full, so the database cannot start; what was saved before is unharmed. \
         Free some space there, or name a folder on another disk in ENDPLAY_DATA, and start again.",
        folder.display()
    )]
    DiskFull { folder: PathBuf },

    /// A server from an earlier run does not go away.
    #[error(
        "A database server left over from an earlier run (process {pid}) still works in {} and does not stop. \
         End it by hand with: kill -9 {pid}, and start again.",
        folder.display()
    )]
    StrayStays { folder: PathBuf, pid: i32 },

    /// Some other user's folder stands where the socket should be.
    #[error(
        "The path of the data folder is too long for the database's socket, and {}, which would serve instead, \
         belongs to someone else. Name a folder with a shorter path in ENDPLAY_DATA.",
        folder.display()
    )]
    SocketTaken { folder: PathBuf },

    /// A server program failed for a reason of its own.
    #[error("{program} did not succeed. It said: {said}")]
    Program { program: String, said: String },

    /// The server runs but did not take its first statements.
    #[error("The private database server started but could not be set up: {0}")]
    SetUp(#[from] sqlx::Error),
}

impl StartError {
    /// Sorts an input/output failure at `folder` into a full disk or missing rights.
    pub fn from_io(folder: &Path, reason: io::Error) -> Self {
        match reason.kind() {
            io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => Self::DiskFull { folder: folder.into() },
            _ => Self::NoAccess { folder: folder.into(), who: super::account::own_name(), reason },
        }
    }

    /// Sorts what a server program printed before it failed.
    pub fn from_output(folder: &Path, program: &str, output: &str) -> Self {
        if output.contains("No space left on device") || output.contains("Disk quota exceeded") {
            return Self::DiskFull { folder: folder.into() };
        }
        let telling = ["FATAL:", "PANIC:", "HINT:", "error:", "hint:"];
        let mut lines: Vec<&str> = output.lines().filter(|l| telling.iter().any(|word| l.contains(word))).collect();
        if lines.is_empty() {
            lines = output.lines().collect();
        }
        let said = if lines.is_empty() { "(nothing)".into() } else { lines.join(" ") };
        Self::Program { program: program.into(), said }
    }
}

fn list(paths: &[PathBuf]) -> String {
    match paths {
        [] => "no folder at all".into(),
        _ => paths.iter().map(|p| p.display().to_string()).collect::<Vec<_>>().join(", "),
    }
}

fn numbers(versions: &[u32]) -> String {
    versions.iter().map(u32::to_string).collect::<Vec<_>>().join(", ")
}

fn process(pid: Option<u32>) -> String {
    pid.map(|pid| format!(" (process {pid})")).unwrap_or_default()
}
