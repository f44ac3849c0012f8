//! The running server: a child process with a thread that looks after it.
//!
//! The kernel ties a child to the *thread* that started it, so one thread
//! starts the server, waits for its end, and starts it again when that end was
//! not ordered.

use std::io::{Read, Seek, SeekFrom};
use std::path::Path;
use std::process::Child;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, PoisonError, mpsc};
use std::time::{Duration, Instant};

use rustix::process::{Pid, Signal, WaitId, WaitIdOptions, kill_process, waitid};
use tokio::sync::watch;

use super::{Cluster, StartError, stray};

/// How long recovery after a crash may take before a start counts as failed.
const START_PATIENCE: Duration = Duration::from_secs(120);
/// How long an ordered stop may take before everything is dropped (the data
/// stays whole; the next start recovers it), and before the kernel ends it.
const STOP_PATIENCE: Duration = Duration::from_secs(3);
const DROP_PATIENCE: Duration = Duration::from_secs(1);
/// More unordered ends than this within the window, and it is given up.
const MOST_RESTARTS: usize = 5;
const RESTART_WINDOW: Duration = Duration::from_secs(600);

/// How the server is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Health {
    /// It takes connections.
    Up,
    /// It ended unasked and is being started again.
    Restarting,
    /// It ended unasked too often; the sentence says what it wrote last.
    GivenUp(String),
    /// It was told to stop.
    Stopped,
}

/// A running server. Dropped without [`Server::stop`], it is stopped as well.
#[derive(Debug)]
pub struct Server {
    shared: Arc<Shared>,
    ended: mpsc::Receiver<()>,
}

#[derive(Debug)]
struct Shared {
    cluster: Cluster,
    /// The server's process while it runs and has not been collected.
    pid: Mutex<Option<Pid>>,
    stopping: AtomicBool,
    health: watch::Sender<Health>,
}

impl Server {
    /// Starts the server and returns when it takes connections.
    ///
    /// # Errors
    /// What the server wrote before it gave up, or a full disk.
    pub fn start(cluster: Cluster) -> Result<Self, StartError> {
        let health = watch::Sender::new(Health::Restarting);
        let shared = Arc::new(Shared { cluster, pid: Mutex::new(None), stopping: AtomicBool::new(false), health });
        let (started, first) = mpsc::channel();
        let (end, ended) = mpsc::channel();
        let keeper = shared.clone();
        let thread = std::thread::Builder::new().name("postgres".into()).spawn(move || {
            keeper.keep(&started);
            end.send(()).ok();
        });
        thread.map_err(|e| StartError::from_io(shared.cluster.folder(), e))?;
        match first.recv() {
            Ok(Ok(())) => Ok(Self { shared, ended }),
            Ok(Err(error)) => Err(error),
            Err(_) => Err(shared.failed("The thread that starts it ended.")),
        }
    }

    /// How the server is, now and later.
    pub fn health(&self) -> watch::Receiver<Health> {
        self.shared.health.subscribe()
    }

    /// Stops the server: connections are ended, everything is written down.
    /// Takes a few seconds at most.
    pub fn stop(self) {
        self.end();
    }

    fn end(&self) {
        self.shared.stopping.store(true, Ordering::SeqCst);
        for (signal, patience) in [(Signal::INT, STOP_PATIENCE), (Signal::QUIT, DROP_PATIENCE)] {
            self.shared.signal(signal);
            match self.ended.recv_timeout(patience) {
                Err(mpsc::RecvTimeoutError::Timeout) => {}
                Ok(()) | Err(mpsc::RecvTimeoutError::Disconnected) => return,
            }
        }
        self.shared.signal(Signal::KILL);
        for pid in stray::processes(self.shared.cluster.path()) {
            kill_process(pid, Signal::KILL).ok();
        }
        self.ended.recv_timeout(DROP_PATIENCE).ok();
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.end();
    }
}

impl Shared {
    fn keep(&self, started: &mpsc::Sender<Result<(), StartError>>) {
        let mut child = match self.launch() {
            Ok(child) => child,
            Err(error) => {
                started.send(Err(error)).ok();
                return;
            }
        };
        started.send(Ok(())).ok();
        let mut restarts: Vec<Instant> = Vec::new();
        loop {
            self.health.send_replace(Health::Up);
            self.collect(&mut child);
            if self.stopping.load(Ordering::SeqCst) {
                self.cluster.tidy();
                self.health.send_replace(Health::Stopped);
                return;
            }
            self.health.send_replace(Health::Restarting);
            tracing::error!("the database server ended unasked; starting it again");
            restarts.retain(|at| at.elapsed() < RESTART_WINDOW);
            restarts.push(Instant::now());
            let again = match restarts.len() {
                n if n > MOST_RESTARTS => Err(self.failed(&self.log_since(0))),
                _ => self.cluster.clear().and_then(|()| self.launch()),
            };
            match again {
                Ok(next) => child = next,
                Err(error) => {
                    self.cluster.clear().ok();
                    let sentence = format!("The database server ended and did not come back. {error}");
                    self.health.send_replace(Health::GivenUp(sentence));
                    return;
                }
            }
        }
    }

    /// Starts the process and waits until it takes connections.
    fn launch(&self) -> Result<Child, StartError> {
        let log_before = std::fs::metadata(self.cluster.log()).map_or(0, |m| m.len());
        let mut child = {
            let mut pid = self.pid.lock().unwrap_or_else(PoisonError::into_inner);
            if self.stopping.load(Ordering::SeqCst) {
                return Err(self.failed("It was told to stop."));
            }
            let child = self.cluster.command(true)?.spawn();
            let child = child.map_err(|e| StartError::from_io(self.cluster.folder(), e))?;
            *pid = Pid::from_raw(child.id().cast_signed());
            child
        };
        match wait_until_ready(self.cluster.path(), &mut child) {
            Ready::Yes => Ok(child),
            Ready::Ended => {
                self.collect(&mut child);
                Err(self.failed(&self.log_since(log_before)))
            }
            Ready::TooLate => {
                self.signal(Signal::QUIT);
                self.collect(&mut child);
                Err(self.failed(&format!("It was not ready after {} seconds.", START_PATIENCE.as_secs())))
            }
        }
    }

    /// Waits for the process to end, and forgets its number before the kernel may give it to another.
    fn collect(&self, child: &mut Child) {
        if let Some(pid) = Pid::from_raw(child.id().cast_signed()) {
            let options = WaitIdOptions::EXITED | WaitIdOptions::NOWAIT;
            while matches!(waitid(WaitId::Pid(pid), options), Err(rustix::io::Errno::INTR)) {}
        }
        let mut pid = self.pid.lock().unwrap_or_else(PoisonError::into_inner);
        child.wait().ok();
        *pid = None;
    }

    fn signal(&self, signal: Signal) {
        if let Some(pid) = *self.pid.lock().unwrap_or_else(PoisonError::into_inner) {
            kill_process(pid, signal).ok();
        }
    }

    fn failed(&self, said: &str) -> StartError {
        StartError::from_output(self.cluster.folder(), "The database server (postgres)", said)
    }

    /// The last lines the server wrote after the byte `before` of its log.
    fn log_since(&self, before: u64) -> String {
        const MOST: u64 = 2_000;
        let read = || -> std::io::Result<String> {
            let mut file = std::fs::File::open(self.cluster.log())?;
            let size = file.metadata()?.len();
            file.seek(SeekFrom::Start(before.max(size.saturating_sub(MOST))))?;
            let mut bytes = Vec::new();
            file.read_to_end(&mut bytes)?;
            Ok(String::from_utf8_lossy(&bytes).into_owned())
        };
        read().unwrap_or_default()
    }
}

/// What became of a start.
pub enum Ready {
    /// It takes connections.
    Yes,
    /// Its process ended first.
    Ended,
    /// It lives but takes too long.
    TooLate,
}

/// Waits until the server of `cluster`, running as `child`, takes connections.
/// It says so itself in its lock file: the number of its process in the first
/// line, how it is in the eighth.
pub fn wait_until_ready(cluster: &Path, child: &mut Child) -> Ready {
    let own = child.id().to_string();
    let until = Instant::now() + START_PATIENCE;
    while Instant::now() < until {
        let text = std::fs::read_to_string(cluster.join("postmaster.pid")).unwrap_or_default();
        let mut lines = text.lines();
        if lines.next() == Some(&own) && lines.nth(6).is_some_and(|state| state.trim() == "ready") {
            return Ready::Yes;
        }
        if has_ended(child) {
            return Ready::Ended;
        }
        std::thread::sleep(Duration::from_millis(5));
    }
    Ready::TooLate
}

/// Whether the process has ended, leaving it for `collect` to take away.
fn has_ended(child: &Child) -> bool {
    let options = WaitIdOptions::EXITED | WaitIdOptions::NOWAIT | WaitIdOptions::NOHANG;
    let pid = Pid::from_raw(child.id().cast_signed());
    pid.is_none_or(|pid| !matches!(waitid(WaitId::Pid(pid), options), Ok(None)))
}
