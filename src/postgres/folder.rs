//! The data folder: what lies where, whose it is, and the lock on it.

use std::fs::{DirBuilder, File, OpenOptions, Permissions};
use std::io::{Read, Seek, Write};
use std::os::unix::fs::{DirBuilderExt, MetadataExt, OpenOptionsExt, PermissionsExt};
use std::path::{Path, PathBuf};

use rustix::fs::FlockOperation;
use sha2::{Digest, Sha256};

use super::{Account, StartError};

/// The file that says the folder is Endplay's.
const MARKER: &str = "endplay-data";
const MARKER_TEXT: &str = "This folder holds the database of an Endplay service.\n\
                           Change or delete nothing in it while the service runs.\n";

/// The longest path the kernel takes for a socket is 107 bytes; PostgreSQL adds this name to the folder's.
const SOCKET_NAME: &str = "/.s.PGSQL.5432";
const LONGEST_SOCKET: usize = 107;

/// A data folder that is ours and locked for as long as this value lives.
#[derive(Debug)]
pub struct Folder {
    path: PathBuf,
    _lock: File,
}

impl Folder {
    /// Opens the data folder `path`, makes it when it is missing, and locks it.
    ///
    /// # Errors
    /// A folder with other things in it, one in use, or one without the rights.
    pub fn open(path: &Path) -> Result<Self, StartError> {
        let failed = |e| StartError::from_io(path, e);
        let mode = if rustix::process::geteuid().is_root() { 0o711 } else { 0o700 };
        if !path.exists() {
            DirBuilder::new().recursive(true).mode(0o755).create(path).map_err(failed)?;
            std::fs::set_permissions(path, Permissions::from_mode(mode)).map_err(failed)?;
        }
        let path = &path.canonicalize().map_err(failed)?;
        let mut strange = false;
        for entry in path.read_dir().map_err(failed)? {
            // A fresh disk has this one folder of its own.
            strange |= entry.map_err(failed)?.file_name() != "lost+found";
        }
        let marker = path.join(MARKER);
        if !marker.exists() {
            if strange {
                return Err(StartError::ForeignFolder { folder: path.clone() });
            }
            std::fs::write(&marker, MARKER_TEXT).map_err(failed)?;
        }
        let lock = lock(path)?;
        if rustix::process::geteuid().is_root() {
            // The database's account has to get through to its own part.
            std::fs::set_permissions(path, Permissions::from_mode(mode)).map_err(failed)?;
        }
        Ok(Self { path: path.clone(), _lock: lock })
    }

    /// The folder itself, as an absolute path without links.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// The database's files, with the major version in the name because no
    /// other version can read them.
    pub fn cluster(&self, major: u32) -> PathBuf {
        self.path.join(format!("cluster-{major}"))
    }

    /// The highest major version a cluster is there for.
    pub fn newest_cluster(&self) -> Option<u32> {
        let entries = self.path.read_dir().ok()?;
        entries.flatten().filter_map(|e| e.file_name().to_str()?.strip_prefix("cluster-")?.parse().ok()).max()
    }

    /// Where the server's settings lie.
    pub fn config(&self) -> PathBuf {
        self.path.join("config")
    }

    /// What the server writes about itself.
    pub fn log(&self) -> PathBuf {
        self.path.join("postgres.log")
    }

    /// Makes the folder of the server's socket, which only `account` (and
    /// root) can enter. A data folder with a long path gets it under /tmp.
    pub fn socket(&self, account: &Account) -> Result<PathBuf, StartError> {
        let inside = self.path.join("socket");
        let short = inside.as_os_str().len() + SOCKET_NAME.len() <= LONGEST_SOCKET;
        let socket = if short { inside } else { Path::new("/tmp").join(format!("endplay-{}", self.short_name())) };
        make_for(&socket, account)?;
        let made = std::fs::symlink_metadata(&socket).map_err(|e| StartError::from_io(&socket, e))?;
        if !made.is_dir() || made.uid() != account.uid || made.mode() & 0o077 != 0 {
            return Err(StartError::SocketTaken { folder: socket });
        }
        Ok(socket)
    }

    fn short_name(&self) -> String {
        let hash = Sha256::digest(self.path.as_os_str().as_encoded_bytes());
        hash.iter().take(8).map(|b| format!("{b:02x}")).collect()
    }
}

/// Makes the folder `path` if it is missing, for `account` alone.
pub fn make_for(path: &Path, account: &Account) -> Result<(), StartError> {
    let failed = |e| StartError::from_io(path, e);
    match DirBuilder::new().mode(0o700).create(path) {
        Ok(()) if account.switch => {
            std::os::unix::fs::chown(path, Some(account.uid), Some(account.gid)).map_err(failed)
        }
        Ok(()) => Ok(()),
        Err(e) if e.kind() == std::io::ErrorKind::AlreadyExists => Ok(()),
        Err(e) => Err(failed(e)),
    }
}

fn lock(path: &Path) -> Result<File, StartError> {
    let failed = |e| StartError::from_io(path, e);
    let mut options = OpenOptions::new();
    options.read(true).write(true).create(true).truncate(false).mode(0o600);
    let mut file = options.open(path.join("lock")).map_err(failed)?;
    match rustix::fs::flock(&file, FlockOperation::NonBlockingLockExclusive) {
        Ok(()) => {}
        Err(rustix::io::Errno::WOULDBLOCK) => {
            let mut holder = String::new();
            file.read_to_string(&mut holder).ok();
            return Err(StartError::AlreadyRunning { folder: path.into(), pid: holder.trim().parse().ok() });
        }
        Err(e) => return Err(failed(e.into())),
    }
    file.set_len(0).map_err(failed)?;
    file.rewind().map_err(failed)?;
    writeln!(file, "{}", std::process::id()).map_err(failed)?;
    Ok(file)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A folder of its own for one test, gone at its end.
    struct Scratch(PathBuf);
    impl Scratch {
        fn new(name: &str) -> Self {
            let path = std::env::temp_dir().join(format!("endplay-folder-{name}-{}", std::process::id()));
            std::fs::create_dir(&path).expect("a new folder");
            Self(path)
        }
    }
    impl Drop for Scratch {
        fn drop(&mut self) {
            std::fs::remove_dir_all(&self.0).ok();
        }
    }

    #[test]
    fn a_second_opening_is_told_who_holds_the_folder() {
        let scratch = Scratch::new("second");
        let _first = Folder::open(&scratch.0.join("data")).expect("a new folder opens");
        let error = Folder::open(&scratch.0.join("data")).expect_err("the folder is held");
        assert!(error.to_string().contains(&format!("process {}", std::process::id())), "{error}");
    }

    #[test]
    fn a_folder_can_be_opened_again_after_it_was_let_go() {
        let scratch = Scratch::new("again");
        drop(Folder::open(&scratch.0.join("data")).expect("a new folder opens"));
        assert_eq!(Folder::open(&scratch.0.join("data")).expect("it opens again").newest_cluster(), None);
    }

    #[test]
    fn a_foreign_folder_is_left_as_it_was() {
        let scratch = Scratch::new("foreign");
        std::fs::write(scratch.0.join("letter.txt"), "dear").expect("writable");
        let error = Folder::open(&scratch.0).expect_err("not ours");
        assert!(matches!(error, StartError::ForeignFolder { .. }), "{error}");
        let names: Vec<_> = scratch.0.read_dir().expect("readable").flatten().map(|e| e.file_name()).collect();
        assert_eq!(names, ["letter.txt"]);
    }

    #[test]
    fn an_empty_disk_with_its_own_lost_and_found_is_taken() {
        let scratch = Scratch::new("disk");
        std::fs::create_dir(scratch.0.join("lost+found")).expect("writable");
        Folder::open(&scratch.0).expect("a fresh disk is as good as an empty folder");
    }

    #[test]
    fn a_long_path_still_gets_a_socket_the_kernel_takes() {
        let scratch = Scratch::new("long");
        let folder = Folder::open(&scratch.0.join("x".repeat(100))).expect("a new folder opens");
        let account = Account::for_cluster(&folder.cluster(15)).expect("some user exists");
        let socket = folder.socket(&account).expect("a place for the socket");
        assert!(socket.as_os_str().len() + SOCKET_NAME.len() <= LONGEST_SOCKET, "{}", socket.display());
        assert_eq!(std::fs::metadata(&socket).expect("it is there").mode() & 0o777, 0o700);
        std::fs::remove_dir(&socket).expect("only the test's own");
    }
}
