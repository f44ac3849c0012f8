//! The database's own files: made once, checked at every start.

use std::fs::{File, Permissions};
use std::io::{ErrorKind, Write};
use std::os::unix::fs::{OpenOptionsExt, PermissionsExt};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use sqlx::postgres::PgConnectOptions;

use super::{ADMIN, Account, Folder, Programs, StartError, account, config, folder, stray};

/// Whether the data is meant to outlive the run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Durability {
    /// A shop's data: on the disk before it is acknowledged.
    Lasting,
    /// A demonstration or a test: fast, and worthless after a power cut.
    ThrowAway,
}

/// A cluster that is ready to be started.
#[derive(Debug, Clone)]
pub struct Cluster {
    path: PathBuf,
    folder: PathBuf,
    config: PathBuf,
    log: PathBuf,
    socket: PathBuf,
    programs: Programs,
    account: Account,
}

impl Cluster {
    /// Makes the cluster in `folder` when there is none, checks it when there
    /// is one, and writes its settings. `found` are the machine's programs,
    /// the newest first.
    ///
    /// # Errors
    /// Another major version's data, missing rights, a full disk.
    pub fn prepare(folder: &Folder, found: &[Programs], durability: Durability) -> Result<Self, StartError> {
        let programs = choose(folder, found)?;
        let path = folder.cluster(programs.major);
        let account = Account::for_cluster(&path)?;
        if let Some(barred) = account.barred_from(folder.path()) {
            return Err(StartError::CannotEnter { account: account.name, barred: barred.into() });
        }
        if path.exists() {
            check_version(&path, &programs, found)?;
        } else {
            make(&path, &programs, &account, durability)?;
        }
        let cluster = Self::describe(folder, path, programs, account)?;
        cluster.clear()?;
        put_away(&cluster.log);
        write_config(&cluster.config, &cluster.socket, durability)
            .map_err(|e| StartError::from_io(folder.path(), e))?;
        Ok(cluster)
    }

    /// Stops what an earlier run left behind, and removes its socket: the lock
    /// file beside it may hold a number that belongs to another process by now.
    ///
    /// # Errors
    /// When a left-over server does not stop.
    pub fn clear(&self) -> Result<(), StartError> {
        stray::clear(&self.path)?;
        let failed = |e| StartError::from_io(&self.folder, e);
        for entry in self.socket.read_dir().map_err(failed)? {
            std::fs::remove_file(entry.map_err(failed)?.path()).map_err(failed)?;
        }
        Ok(())
    }

    /// Takes away a socket folder that had to stand outside the data folder.
    pub fn tidy(&self) {
        if !self.socket.starts_with(&self.folder) {
            std::fs::remove_dir(&self.socket).ok();
        }
    }

    /// The cluster in `folder` if a server already works in it, for those who
    /// share a server someone else looks after.
    ///
    /// # Errors
    /// Another major version's data, missing rights.
    pub fn running(folder: &Folder, found: &[Programs]) -> Result<Option<Self>, StartError> {
        let programs = choose(folder, found)?;
        let path = folder.cluster(programs.major);
        if stray::processes(&path).is_empty() {
            return Ok(None);
        }
        let account = Account::for_cluster(&path)?;
        Self::describe(folder, path, programs, account).map(Some)
    }

    fn describe(folder: &Folder, path: PathBuf, programs: Programs, account: Account) -> Result<Self, StartError> {
        Ok(Self {
            socket: folder.socket(&account)?,
            folder: folder.path().into(),
            config: folder.config(),
            log: folder.log(),
            path,
            programs,
            account,
        })
    }

    /// The folder of the database's files.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// The data folder they lie in.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// What the server writes about itself.
    pub fn log(&self) -> &Path {
        &self.log
    }

    /// The command that runs the server in the foreground; see
    /// [`Account::command`] for `tied`.
    ///
    /// # Errors
    /// When the log cannot be written.
    pub fn command(&self, tied: bool) -> Result<Command, StartError> {
        let failed = |e| StartError::from_io(&self.folder, e);
        let log = File::options().append(true).create(true).mode(0o600).open(&self.log).map_err(failed)?;
        let mut command = self.account.command(&self.programs.path("postgres"), tied);
        command.arg("-D").arg(&self.path);
        command.arg("-c").arg(format!("config_file={}", self.config.join("postgresql.conf").display()));
        command.stdin(Stdio::null()).stdout(log.try_clone().map_err(failed)?).stderr(log);
        Ok(command)
    }

    /// How to connect to `database` as `role`.
    pub fn options(&self, role: &str, database: &str) -> PgConnectOptions {
        PgConnectOptions::new_without_pgpass()
            .socket(&self.socket)
            .port(5432)
            .username(role)
            .database(database)
            .application_name("endplay")
    }
}

/// The programs for the data that is there, or the newest for a new cluster.
fn choose(folder: &Folder, found: &[Programs]) -> Result<Programs, StartError> {
    let installed = || found.iter().map(|p| p.major).collect();
    match folder.newest_cluster() {
        Some(major) => found.iter().find(|p| p.major == major).cloned().ok_or_else(|| StartError::OtherMajor {
            folder: folder.path().into(),
            made_by: major,
            installed: installed(),
        }),
        None => found.first().cloned().ok_or(StartError::NoPrograms { looked: Vec::new() }),
    }
}

/// The files themselves say which version wrote them; a renamed folder must not mislead the server.
fn check_version(path: &Path, programs: &Programs, found: &[Programs]) -> Result<(), StartError> {
    let written = std::fs::read_to_string(path.join("PG_VERSION")).map_err(|e| StartError::from_io(path, e))?;
    match written.trim().parse() {
        Ok(made_by) if made_by != programs.major => Err(StartError::OtherMajor {
            folder: path.into(),
            made_by,
            installed: found.iter().map(|p| p.major).collect(),
        }),
        _ => Ok(()),
    }
}

/// Makes a new cluster beside its final place and moves it there whole, so
/// that an interrupted or failed start leaves nothing that looks finished.
fn make(path: &Path, programs: &Programs, account: &Account, durability: Durability) -> Result<(), StartError> {
    let folder = path.parent().unwrap_or(path);
    let failed = |e| StartError::from_io(folder, e);
    let unfinished = path.with_extension("new");
    if unfinished.exists() {
        stray::clear(&unfinished)?;
        std::fs::remove_dir_all(&unfinished).map_err(failed)?;
    }
    folder::make_for(&unfinished, account)?;
    let mut initdb = account.command(&programs.path("initdb"), true);
    initdb.arg("--pgdata").arg(&unfinished).args(["--username", ADMIN, "--auth", "peer"]);
    initdb.args(["--data-checksums", "--encoding", "UTF8", "--locale", "C.UTF-8"]);
    initdb.arg("--no-sync"); // a thousand files one by one; all at once below takes a fraction of that
    let told = initdb.stdin(Stdio::null()).output().map_err(failed)?;
    if !told.status.success() {
        std::fs::remove_dir_all(&unfinished).ok();
        let said = String::from_utf8_lossy(&told.stderr);
        return Err(StartError::from_output(folder, "Making the database (initdb)", &said));
    }
    let disk = File::open(folder).map_err(failed)?;
    let write_out = || match durability {
        Durability::Lasting => rustix::fs::syncfs(&disk).map_err(|e| failed(e.into())),
        Durability::ThrowAway => Ok(()),
    };
    write_out()?;
    std::fs::rename(&unfinished, path).map_err(failed)?;
    write_out()
}

fn write_config(config: &Path, socket: &Path, durability: Durability) -> std::io::Result<()> {
    std::fs::create_dir_all(config)?;
    std::fs::set_permissions(config, Permissions::from_mode(0o755))?;
    let files = [
        ("postgresql.conf", config::postgresql_conf(socket, config, durability)),
        ("pg_hba.conf", config::pg_hba_conf()),
        ("pg_ident.conf", config::pg_ident_conf(&account::own_name())),
    ];
    for (name, text) in files {
        let file = config.join(name);
        std::fs::write(&file, text)?;
        std::fs::set_permissions(&file, Permissions::from_mode(0o644))?;
    }
    match File::create_new(config.join("local.conf")) {
        Ok(mut file) => {
            file.set_permissions(Permissions::from_mode(0o644))?;
            file.write_all(b"# Settings of your own for the database; they win over postgresql.conf.\n")
        }
        Err(e) if e.kind() == ErrorKind::AlreadyExists => Ok(()),
        Err(e) => Err(e),
    }
}

/// Keeps one older log beside the current one, so that the two stay small.
fn put_away(log: &Path) {
    const LONG: u64 = 5_000_000;
    if std::fs::metadata(log).is_ok_and(|m| m.len() > LONG) {
        // The old log is a help, not data: a start does not fail over it.
        std::fs::rename(log, log.with_extension("log.old")).ok();
    }
}
