//! Servers left over from an earlier run that was killed.
//!
//! Every process of a PostgreSQL server works *in* the folder of its cluster,
//! so the kernel's list of processes shows them all, also those whose parent
//! is gone; one that has only just begun names the folder on its command line.
//! The caller holds the lock on the data folder: whatever is found
//! belongs to a run that is over.

use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use rustix::process::{Pid, Signal, kill_process};

use super::StartError;

/// How long a left-over server may take at each step: to finish on its own
/// (it was told to when its parent ended), when told to drop everything, and
/// when the kernel ends it.
const PATIENCE: [(Signal, Duration); 3] = [
    (Signal::INT, Duration::from_secs(10)),
    (Signal::QUIT, Duration::from_secs(5)),
    (Signal::KILL, Duration::from_secs(5)),
];

/// Stops every server process that still works in `cluster`.
///
/// # Errors
/// When one of them outlives even the kernel's order to end.
pub fn clear(cluster: &Path) -> Result<(), StartError> {
    for (signal, patience) in PATIENCE {
        let strays = processes(cluster);
        if strays.is_empty() {
            return forget_reused_number(cluster);
        }
        tracing::warn!(?strays, ?signal, "stopping a database server left over from an earlier run");
        // The first process tells its own children; without it, each has to be told.
        let first = postmaster(cluster).filter(|p| strays.contains(p) && signal != Signal::KILL);
        for pid in first.map_or(strays, |p| vec![p]) {
            kill_process(pid, signal).ok();
        }
        let until = Instant::now() + patience;
        while Instant::now() < until && !processes(cluster).is_empty() {
            std::thread::sleep(Duration::from_millis(20));
        }
    }
    match processes(cluster).first() {
        None => forget_reused_number(cluster),
        Some(pid) => Err(StartError::StrayStays { folder: cluster.into(), pid: pid.as_raw_nonzero().get() }),
    }
}

/// The process whose number stands in the server's own lock file.
pub fn postmaster(cluster: &Path) -> Option<Pid> {
    let text = std::fs::read_to_string(cluster.join("postmaster.pid")).ok()?;
    // A server that is only being made writes its number with a minus.
    let number = text.lines().next()?.trim().parse().ok().filter(|n| *n > 0)?;
    Pid::from_raw(number)
}

/// The server processes that work in `cluster`.
pub fn processes(cluster: &Path) -> Vec<Pid> {
    let Ok(entries) = std::fs::read_dir("/proc") else { return Vec::new() };
    entries
        .flatten()
        .filter_map(|e| Pid::from_raw(e.file_name().to_str()?.parse().ok()?))
        .filter(|pid| works_in(*pid, cluster))
        .collect()
}

fn works_in(pid: Pid, cluster: &Path) -> bool {
    let of = |name: &str| PathBuf::from(format!("/proc/{}/{name}", pid.as_raw_nonzero()));
    // Someone's shell may stand in the folder as well; it is not ours to stop.
    let inside = || {
        std::fs::read_link(of("cwd")).is_ok_and(|cwd| cwd == cluster)
            && std::fs::read_to_string(of("comm")).is_ok_and(|comm| comm.trim() == "postgres")
    };
    inside() || std::fs::read(of("cmdline")).is_ok_and(|line| names_cluster(&line, cluster))
}

/// Whether a command line (words ended by zero bytes) starts a server in `cluster`.
fn names_cluster(line: &[u8], cluster: &Path) -> bool {
    let words: Vec<&[u8]> = line.split(|byte| *byte == 0).collect();
    let folder = cluster.as_os_str().as_encoded_bytes();
    words.windows(3).any(|w| w[0].ends_with(b"/postgres") && w[1] == b"-D" && w[2] == folder)
}

/// After a crash the number in the lock file may meanwhile belong to an
/// unrelated process, and PostgreSQL would refuse to start beside it.
fn forget_reused_number(cluster: &Path) -> Result<(), StartError> {
    let alive = postmaster(cluster).is_some_and(|pid| Path::new("/proc").join(pid.to_string()).exists());
    if alive {
        std::fs::remove_file(cluster.join("postmaster.pid")).map_err(|e| StartError::from_io(cluster, e))?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_server_of_this_very_cluster_is_ours() {
        let cluster = Path::new("/data/cluster-15");
        assert!(names_cluster(b"/usr/bin/setpriv\0--\0/bin/postgres\0-D\0/data/cluster-15\0-c\0x\0", cluster));
        assert!(!names_cluster(b"/bin/postgres\0-D\0/data/cluster-155\0", cluster));
        assert!(!names_cluster(b"vi\0/data/cluster-15\0", cluster));
        assert!(!names_cluster(b"", cluster));
    }

    #[test]
    fn an_unrelated_process_in_the_lock_file_is_left_alone() {
        let cluster = std::env::temp_dir().join(format!("endplay-stray-{}", std::process::id()));
        std::fs::create_dir(&cluster).expect("a new folder");
        let lock_file = cluster.join("postmaster.pid");
        std::fs::write(&lock_file, format!("{}\n/somewhere\n", std::process::id())).expect("writable");
        clear(&cluster).expect("nothing to stop");
        assert!(!lock_file.exists(), "the server would have refused to start beside this test");
        std::fs::remove_dir(&cluster).expect("empty again");
    }
}
