//! Starting the real program in a folder of its own, and looking at what it does.

use std::fs::{File, Permissions};
use std::io::{BufRead, BufReader};
use std::mem::ManuallyDrop;
use std::os::unix::fs::PermissionsExt;
use std::os::unix::process::CommandExt;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, ExitStatus, Output, Stdio};
use std::sync::OnceLock;
use std::sync::atomic::{AtomicU32, Ordering};
use std::time::{Duration, Instant};

use rustix::process::{Pid, Signal, kill_process};

/// An unprivileged user every system has.
pub const NOBODY: u32 = 65_534;

pub fn is_root() -> bool {
    rustix::process::geteuid().is_root()
}

/// A folder for one test; gone at its end, with everything that still runs in it.
pub struct Scratch(PathBuf);

impl Scratch {
    pub fn new() -> Self {
        static NUMBER: AtomicU32 = AtomicU32::new(0);
        let name = format!("endplay-start-{}-{}", std::process::id(), NUMBER.fetch_add(1, Ordering::Relaxed));
        let path = std::env::temp_dir().join(name);
        std::fs::create_dir(&path).expect("a new folder");
        std::fs::set_permissions(&path, Permissions::from_mode(0o755)).expect("our own folder");
        Self(path)
    }

    pub fn path(&self) -> &Path {
        &self.0
    }

    pub fn data(&self) -> PathBuf {
        self.0.join("data")
    }

    /// The program, to be started with this folder's data on a free port.
    pub fn program(&self) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_endplay"));
        self.set_up(&mut command);
        command
    }

    /// The same as an ordinary user, whoever runs the tests.
    pub fn program_as_ordinary_user(&self) -> Command {
        if !is_root() {
            return self.program();
        }
        // The user may not be able to enter the folder the program was built in.
        let program = self.0.join("endplay");
        if !program.exists() {
            std::fs::copy(env!("CARGO_BIN_EXE_endplay"), &program).expect("room for a copy");
            std::os::unix::fs::chown(&self.0, Some(NOBODY), Some(NOBODY)).expect("root may");
        }
        let mut command = Command::new("setpriv");
        command.args(["--reuid=65534", "--regid=65534", "--clear-groups"]).arg(program);
        self.set_up(&mut command);
        command
    }

    fn set_up(&self, command: &mut Command) {
        for (name, _) in std::env::vars_os() {
            if ["ENDPLAY_", "DATABASE_"].iter().any(|ours| name.to_string_lossy().starts_with(ours)) {
                command.env_remove(name);
            }
        }
        command.env("ENDPLAY_DATA", self.data()).env("ENDPLAY_LISTEN", "127.0.0.1:0");
        command.stdin(Stdio::null()).current_dir("/").process_group(0);
    }

    /// Starts the program and waits until it serves. The first time, on a copy of a folder that was
    /// in use before: to make a database takes longer than most tests.
    pub fn start(&self) -> Service {
        if !self.data().exists() {
            let copied = Command::new("cp").arg("-a").arg(used_before()).arg(self.data()).status();
            assert!(copied.is_ok_and(|status| status.success()), "the folder is copied");
        }
        self.first_start()
    }

    /// Starts the program on the folder as it is, and waits until it serves.
    pub fn first_start(&self) -> Service {
        Service::start(self.program(), &self.0)
    }

    /// Starts the program and does `then` with it after some milliseconds.
    #[track_caller]
    pub fn start_for(&self, milliseconds: u64, then: Signal) {
        let said = self.0.join("said");
        let mut program = self.program();
        program.stdout(Stdio::null()).stderr(File::create(&said).expect("a writable folder"));
        let mut child = program.spawn().expect("the program runs");
        std::thread::sleep(Duration::from_millis(milliseconds));
        let pid = Pid::from_raw(child.id().cast_signed()).expect("a number");
        kill_process(pid, then).expect("it runs");
        child.wait().expect("our child");
        let said = std::fs::read_to_string(said).expect("readable");
        assert!(!said.contains("panicked"), "{said}");
    }

    /// Starts the program, which is expected to refuse, and gives what it said.
    pub fn refusal(&self) -> String {
        refusal(&mut self.program())
    }

    /// Everything that still runs for this folder.
    pub fn processes(&self) -> Vec<Process> {
        let ours = self.0.to_string_lossy().into_owned();
        let mut found = Vec::new();
        for entry in std::fs::read_dir("/proc").expect("the kernel's list").flatten() {
            let number = entry.file_name().to_str().and_then(|n| n.parse().ok());
            let Some(pid) = number.and_then(Pid::from_raw) else { continue };
            let line = std::fs::read(entry.path().join("cmdline")).unwrap_or_default();
            let line = String::from_utf8_lossy(&line).replace('\0', " ");
            let cwd = std::fs::read_link(entry.path().join("cwd")).unwrap_or_default();
            if line.contains(&ours) || cwd.starts_with(&self.0) {
                found.push(Process { pid, line });
            }
        }
        found
    }

    /// The processes of the private server.
    pub fn servers(&self) -> Vec<Pid> {
        let server = |p: &Process| p.line.starts_with("postgres:") || p.line.contains("/postgres -D");
        self.processes().into_iter().filter(server).map(|p| p.pid).collect()
    }

    /// The first process of the private server; nothing while there is none.
    pub fn postmaster(&self) -> Option<Pid> {
        let text = std::fs::read_to_string(self.cluster()?.join("postmaster.pid")).ok()?;
        Pid::from_raw(text.lines().next()?.trim().parse().ok().filter(|n| *n > 0)?)
    }

    /// The folder of the database's files; nothing while there is none.
    pub fn cluster(&self) -> Option<PathBuf> {
        cluster(&self.data())
    }

    #[track_caller]
    pub fn assert_nothing_runs(&self) {
        let left = self.processes();
        assert!(left.is_empty(), "still running: {left:?}");
    }
}

/// A process that belongs to a test.
#[derive(Debug)]
#[allow(dead_code, reason = "the line is for the message of a failed test")]
pub struct Process {
    pub pid: Pid,
    pub line: String,
}

impl Drop for Scratch {
    fn drop(&mut self) {
        for process in self.processes() {
            kill_process(process.pid, Signal::KILL).ok();
        }
        std::fs::remove_dir_all(&self.0).ok();
    }
}

/// A data folder of a service that was stopped in good order; gone when the tests end.
fn used_before() -> &'static Path {
    const REMOVER: &str = r#"while [ -d "/proc/$1" ]; do sleep 0.3; done; rm -rf "$2""#;
    static FOLDER: OnceLock<PathBuf> = OnceLock::new();
    FOLDER.get_or_init(|| {
        let scratch = ManuallyDrop::new(Scratch::new());
        #[expect(clippy::zombie_processes, reason = "it outlives this process on purpose")]
        let _remover = Command::new("/bin/sh")
            .args(["-c", REMOVER, "remover", &std::process::id().to_string()])
            .arg(scratch.path())
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .process_group(0)
            .spawn()
            .expect("a shell runs");
        scratch.first_start().stop();
        scratch.data()
    })
}

/// The folder of the database's files in the data folder `data`.
pub fn cluster(data: &Path) -> Option<PathBuf> {
    let mut entries = data.read_dir().ok()?.flatten().map(|e| e.path());
    entries.find(|p| p.file_name().is_some_and(|n| n.to_string_lossy().starts_with("cluster-")))
}

/// Runs a program that is expected to refuse; gives its sentence.
#[track_caller]
pub fn refusal(command: &mut Command) -> String {
    let Output { status, stdout, stderr } = command.output().expect("the program runs");
    let said = String::from_utf8(stderr).expect("text");
    assert_eq!(status.code(), Some(1), "it should have refused: {said}{}", String::from_utf8_lossy(&stdout));
    assert!(!said.contains("panicked"), "{said}");
    said
}

/// The program while it serves.
pub struct Service {
    child: Child,
    url: String,
    printed: Vec<String>,
    said: PathBuf,
}

impl Service {
    pub fn start(mut command: Command, scratch: &Path) -> Self {
        let said = scratch.join("said");
        let child = command.stdout(Stdio::piped()).stderr(File::create(&said).expect("a writable folder")).spawn();
        let mut child = child.expect("the program runs");
        let lines = BufReader::new(child.stdout.take().expect("a pipe")).lines();
        let (mut printed, mut url) = (Vec::new(), None);
        for line in lines.map_while(Result::ok) {
            url = line.strip_prefix("Endplay serves on ").map(str::to_owned);
            printed.push(line);
            if url.is_some() {
                break;
            }
        }
        let Some(url) = url else {
            child.wait().expect("our child");
            panic!("it does not serve: {}", std::fs::read_to_string(said).unwrap_or_default());
        };
        Self { child, url, printed, said }
    }

    pub fn pid(&self) -> Pid {
        Pid::from_raw(self.child.id().cast_signed()).expect("a number")
    }

    pub fn url(&self) -> &str {
        &self.url
    }

    /// The link for the owner it printed before it served.
    pub fn setup_link(&self) -> Option<&str> {
        self.printed.iter().map(String::as_str).find(|line| line.contains("/setup/"))
    }

    /// What it wrote on standard error so far.
    pub fn said(&self) -> String {
        std::fs::read_to_string(&self.said).unwrap_or_default()
    }

    /// The status of the answer to `path`; nothing when there is none.
    pub fn status(&self, path: &str) -> Option<u16> {
        let url = format!("{}{path}", self.url);
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
        let client = reqwest::Client::builder().timeout(Duration::from_secs(5)).build().expect("a client");
        runtime.block_on(async { client.get(url).send().await.ok().map(|answer| answer.status().as_u16()) })
    }

    pub fn signal(&self, signal: Signal) {
        kill_process(self.pid(), signal).expect("it runs");
    }

    /// Waits for its end.
    pub fn wait(&mut self) -> ExitStatus {
        let mut status = None;
        until("the program ends", || {
            status = self.child.try_wait().expect("our child");
            status.is_some()
        });
        status.expect("it has ended")
    }

    pub fn kill(mut self) {
        self.signal(Signal::KILL);
        self.wait();
    }

    /// Stops it in good order.
    #[track_caller]
    pub fn stop(mut self) {
        self.signal(Signal::TERM);
        let status = self.wait();
        assert!(status.success(), "{status}: {}", self.said());
    }
}

impl Drop for Service {
    fn drop(&mut self) {
        self.child.kill().ok();
        self.child.wait().ok();
    }
}

/// Waits until `happened`, and fails when it never does.
#[track_caller]
pub fn until(what: &str, mut happened: impl FnMut() -> bool) {
    let end = Instant::now() + Duration::from_secs(60);
    while !happened() {
        assert!(Instant::now() < end, "waited in vain until {what}");
        std::thread::sleep(Duration::from_millis(20));
    }
}
