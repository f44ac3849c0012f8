//! One PostgreSQL server for a whole test run.
//!
//! `cargo test` and `cargo nextest run` start many test processes. The first
//! that needs a database starts a server in memory and a small guardian beside
//! it; the others find it by the process that runs them all. When that process
//! is gone, the guardian stops the server and clears its folder away.

use std::fs::{File, Permissions};
use std::os::unix::fs::PermissionsExt;
use std::os::unix::process::CommandExt;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use endplay::postgres::{self, Cluster, Durability, Folder, Ready, StartError, programs};
use rustix::fs::FlockOperation;

/// Watches the runner ($1, started at $2) and ends the server ($3) and its folder ($4) after it.
const GUARDIAN: &str = r#"
while [ "$(cut -d' ' -f22 /proc/$1/stat 2>/dev/null)" = "$2" ] && [ -d "/proc/$3" ]; do sleep 0.3; done
kill -INT "$3" 2>/dev/null
for i in 1 2 3 4 5 6 7 8 9 10; do [ -d "/proc/$3" ] || break; sleep 0.3; done
kill -QUIT "$3" 2>/dev/null
rm -rf "$4" "$4.lock"
"#;

/// The server of this run; started by whoever comes first.
pub fn shared() -> Cluster {
    let runner = rustix::process::getppid().expect("a test has a parent").as_raw_nonzero().get();
    let born = birth(runner).expect("the parent lives");
    let user = rustix::process::geteuid().as_raw();
    let folder = memory().join(format!("endplay-tests-{user}-{runner}-{born}"));

    let gate = File::options().create(true).append(true).open(folder.with_extension("lock")).expect("a lock file");
    rustix::fs::flock(&gate, FlockOperation::LockExclusive).expect("the lock is given in turn");
    clear_dead_runs(user);
    // The lock on the folder itself is only held while its cluster is made or looked at.
    let folder = Folder::open(&folder).expect("a folder in memory");
    let places = programs::usual_places(&std::env::var("PATH").unwrap_or_default());
    let found = programs::find(&places).expect("PostgreSQL is installed");
    if let Some(cluster) = Cluster::running(&folder, &found).expect("a readable folder") {
        return cluster;
    }
    start(&folder, &found, runner, &born).expect("the test server starts")
}

fn start(folder: &Folder, found: &[postgres::Programs], runner: i32, born: &str) -> Result<Cluster, StartError> {
    let cluster = Cluster::prepare(folder, found, Durability::ThrowAway)?;
    let_everybody_in(folder);
    let mut server = cluster.command(false)?.spawn().expect("the server's program runs");
    let log = || std::fs::read_to_string(cluster.log()).unwrap_or_default();
    assert!(matches!(postgres::wait_until_ready(cluster.path(), &mut server), Ready::Yes), "{}", log());
    #[expect(clippy::zombie_processes, reason = "the guardian outlives this process on purpose")]
    let _guardian = Command::new("/bin/sh")
        .args(["-c", GUARDIAN, "guardian", &runner.to_string(), born, &server.id().to_string()])
        .arg(folder.path())
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .process_group(0)
        .current_dir("/")
        .spawn()
        .expect("a shell runs");
    Ok(cluster)
}

/// Tests make roles of their own; whoever can enter the socket's folder may take any.
fn let_everybody_in(folder: &Folder) {
    let (config, hba) = (folder.config().join("local.conf"), folder.config().join("tests_hba.conf"));
    std::fs::write(&hba, "local all all trust\n").expect("a writable folder");
    std::fs::write(config, format!("hba_file = '{}'\n", hba.display())).expect("a writable folder");
    std::fs::set_permissions(hba, Permissions::from_mode(0o644)).expect("a writable folder");
}

/// Memory if the machine gives enough of it, otherwise the folder for temporary files.
fn memory() -> PathBuf {
    let shm = Path::new("/dev/shm");
    let roomy = rustix::fs::statvfs(shm).is_ok_and(|s| s.f_bavail * s.f_frsize > 2 << 30);
    if roomy { shm.into() } else { std::env::temp_dir() }
}

/// When a process started, in the kernel's ticks; nothing when there is none.
fn birth(pid: i32) -> Option<String> {
    let stat = std::fs::read_to_string(format!("/proc/{pid}/stat")).ok()?;
    // The name in brackets may hold spaces; the start is the twentieth word after it.
    let (_, after) = stat.rsplit_once(')')?;
    after.split_whitespace().nth(19).map(str::to_owned)
}

/// Removes what a run left behind whose guardian was killed with it.
fn clear_dead_runs(user: u32) {
    let prefix = format!("endplay-tests-{user}-");
    for entry in memory().read_dir().into_iter().flatten().flatten() {
        let name = entry.file_name().to_string_lossy().into_owned();
        let Some((pid, born)) = name.strip_prefix(&prefix).and_then(|rest| rest.split_once('-')) else { continue };
        let dead = pid.parse().is_ok_and(|pid| birth(pid).as_deref() != Some(born.trim_end_matches(".lock")));
        if dead {
            clear(&entry.path());
        }
    }
}

fn clear(left_behind: &Path) {
    if left_behind.is_file() {
        std::fs::remove_file(left_behind).ok();
        return;
    }
    for entry in left_behind.read_dir().into_iter().flatten().flatten() {
        if entry.file_name().to_string_lossy().starts_with("cluster-") {
            postgres::stop_left_over(&entry.path()).expect("a left-over test server stops");
        }
    }
    std::fs::remove_dir_all(left_behind).ok();
}
