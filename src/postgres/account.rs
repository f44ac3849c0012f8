//! The user of the operating system the database runs as.
//!
//! PostgreSQL refuses to run as root. Started by root, Endplay keeps root for
//! itself and hands the server to an unprivileged user; started by an ordinary
//! user, everything runs as that one.

use std::os::unix::fs::MetadataExt;
use std::path::Path;
use std::process::Command;

use super::StartError;

/// Who may run the database when root starts Endplay; the first that exists.
pub const CANDIDATES: [&str; 3] = ["endplay", "postgres", "nobody"];

/// A user of the operating system.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Account {
    /// The login name, or the number where it has none.
    pub name: String,
    /// The user's number.
    pub uid: u32,
    /// The number of the user's own group.
    pub gid: u32,
    /// Whether the server has to change to this user because root starts it.
    pub switch: bool,
}

impl Account {
    /// The account for the cluster in `cluster`, which need not exist yet.
    ///
    /// # Errors
    /// When the cluster belongs to a user it cannot run as, or root finds
    /// nobody to run it as.
    pub fn for_cluster(cluster: &Path) -> Result<Self, StartError> {
        let owner = std::fs::metadata(cluster).ok().map(|m| m.uid());
        let own = rustix::process::geteuid().as_raw();
        let wrong = |owner: u32, account: &str| StartError::WrongOwner {
            folder: cluster.into(),
            owner: name_of(owner),
            account: account.into(),
        };
        if own != 0 {
            let gid = rustix::process::getegid().as_raw();
            return match owner {
                Some(owner) if owner != own => Err(wrong(owner, &own_name())),
                _ => Ok(Self { name: own_name(), uid: own, gid, switch: false }),
            };
        }
        let first = CANDIDATES.iter().find_map(|name| look_up(name));
        let account = match owner {
            None => first.ok_or(StartError::NoAccount)?,
            Some(0) => return Err(wrong(0, &first.ok_or(StartError::NoAccount)?.name)),
            Some(owner) => look_up(&owner.to_string()).ok_or_else(|| wrong(owner, "a user this machine knows"))?,
        };
        Ok(account)
    }

    /// A command that runs `program` as this account.
    ///
    /// With `tied`, the kernel tells the program to stop (SIGINT: PostgreSQL's
    /// fast shutdown) when the *thread* that starts it ends, so that even a
    /// killed Endplay leaves no server behind. It needs util-linux's `setpriv`;
    /// without that, the next start deals with what was left.
    pub fn command(&self, program: &Path, tied: bool) -> Command {
        use std::os::unix::process::CommandExt;
        let setpriv = ["/usr/bin/setpriv", "/bin/setpriv"].iter().map(Path::new).find(|p| p.is_file());
        let mut command = match setpriv {
            Some(setpriv) if tied || self.switch => {
                let mut command = Command::new(setpriv);
                if self.switch {
                    command.args(["--reuid", &self.uid.to_string(), "--regid", &self.gid.to_string()]);
                    command.arg("--clear-groups");
                }
                if tied {
                    command.args(["--pdeathsig", "INT"]);
                }
                command.arg("--").arg(program);
                command
            }
            _ => {
                let mut command = Command::new(program);
                if self.switch {
                    command.uid(self.uid).gid(self.gid); // drops root's other groups as well
                }
                command
            }
        };
        // Own group: Ctrl-C in a terminal reaches Endplay alone, which then stops the server when its turn comes.
        command.process_group(0).current_dir("/");
        command.env_clear().env("PATH", "/usr/local/bin:/usr/bin:/bin").env("LC_ALL", "C.UTF-8").env("TZ", "UTC");
        command
    }

    /// The topmost folder on the way to `folder` that this account may not
    /// enter; nothing when the way is open.
    pub fn barred_from<'a>(&self, folder: &'a Path) -> Option<&'a Path> {
        let may_enter = |place: &Path| {
            let status = self.command(Path::new("/usr/bin/test"), false).arg("-x").arg(place).status();
            status.is_ok_and(|s| s.success())
        };
        if !self.switch || may_enter(folder) {
            return None;
        }
        let mut way: Vec<&Path> = folder.ancestors().collect();
        way.reverse();
        way.into_iter().find(|place| !may_enter(place))
    }
}

/// The name of the user who runs this program.
pub fn own_name() -> String {
    name_of(rustix::process::geteuid().as_raw())
}

fn name_of(uid: u32) -> String {
    look_up(&uid.to_string()).map_or_else(|| uid.to_string(), |account| account.name)
}

/// Looks a name or a number up in the machine's list of users.
fn look_up(key: &str) -> Option<Account> {
    let told = Command::new("getent").args(["passwd", key]).output().ok()?;
    parse(std::str::from_utf8(&told.stdout).ok()?)
}

/// Reads one line of the list of users: name:password:uid:gid:...
fn parse(line: &str) -> Option<Account> {
    let mut parts = line.trim().split(':');
    let name = parts.next()?.to_owned();
    let uid = parts.nth(1)?.parse().ok()?;
    let gid = parts.next()?.parse().ok()?;
    Some(Account { name, uid, gid, switch: rustix::process::geteuid().is_root() && uid != 0 })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_of_the_list_of_users_is_read() {
        let account = parse("postgres:x:101:104:PostgreSQL administrator,,,:/var/lib/postgresql:/bin/bash\n");
        let account = account.expect("a whole line");
        assert_eq!((account.name.as_str(), account.uid, account.gid), ("postgres", 101, 104));
        assert_eq!(parse(""), None);
        assert_eq!(parse("half:x"), None);
    }

    #[test]
    fn the_account_is_never_root() {
        let account = Account::for_cluster(Path::new("/nowhere/cluster-15")).expect("some user exists");
        assert_ne!(account.uid, 0);
        assert_eq!(account.switch, rustix::process::geteuid().is_root());
    }
}
