//! Finding PostgreSQL's server programs on the machine.

use std::path::{Path, PathBuf};
use std::process::Command;

use super::{OLDEST_MAJOR, StartError};

/// A folder with `postgres` and `initdb` of one version.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Programs {
    /// The folder that holds both.
    pub bin: PathBuf,
    /// The major version, for example 15.
    pub major: u32,
}

impl Programs {
    /// The path of one of the programs.
    pub fn path(&self, program: &str) -> PathBuf {
        self.bin.join(program)
    }
}

/// Every usable set of server programs in `places`, the newest first.
///
/// # Errors
/// [`StartError::NoPrograms`] when there is none, [`StartError::TooOld`] when
/// all of them are older than version 15.
pub fn find(places: &[PathBuf]) -> Result<Vec<Programs>, StartError> {
    let mut found: Vec<Programs> = Vec::new();
    for place in places {
        // A link in /usr/local/bin leads to the real folder, where the programs look for their own files.
        let Some(bin) = real_folder(place) else { continue };
        if found.iter().any(|p| p.bin == bin) {
            continue;
        }
        if let Some(major) = version(&bin.join("postgres")) {
            found.push(Programs { bin, major });
        }
    }
    found.sort_by_key(|p| std::cmp::Reverse(p.major));
    match found.first() {
        None => Err(StartError::NoPrograms { looked: places.to_vec() }),
        Some(newest) if newest.major < OLDEST_MAJOR => Err(StartError::TooOld { newest: newest.major }),
        Some(_) => {
            found.retain(|p| p.major >= OLDEST_MAJOR);
            Ok(found)
        }
    }
}

/// Where distributions put the programs, then what the search path `path`
/// (as in the variable PATH) and `pg_config` know.
pub fn usual_places(path: &str) -> Vec<PathBuf> {
    let mut places = Vec::new();
    places.extend(numbered("/usr/lib/postgresql", "", "bin")); // Debian, Ubuntu
    places.extend(numbered("/usr", "pgsql-", "bin")); // Red Hat family, PostgreSQL's own packages
    places.extend(numbered("/usr/libexec", "postgresql", "")); // Alpine
    places.push("/usr/local/pgsql/bin".into()); // built from source
    places.extend(path.split(':').filter(|p| p.starts_with('/')).map(PathBuf::from));
    if let Ok(told) = Command::new("pg_config").arg("--bindir").output() {
        places.extend(std::str::from_utf8(&told.stdout).ok().map(|dir| PathBuf::from(dir.trim())));
    }
    let mut seen = std::collections::HashSet::new();
    places.retain(|p| p.is_dir() && seen.insert(p.clone()));
    places
}

/// The folders `parent/<prefix><number>/<below>`.
fn numbered(parent: &str, prefix: &str, below: &str) -> Vec<PathBuf> {
    let Ok(entries) = std::fs::read_dir(parent) else { return Vec::new() };
    entries
        .flatten()
        .filter(|e| e.file_name().to_string_lossy().strip_prefix(prefix).is_some_and(|n| n.parse::<u32>().is_ok()))
        .map(|e| e.path().join(below))
        .collect()
}

fn real_folder(place: &Path) -> Option<PathBuf> {
    let postgres = place.join("postgres").canonicalize().ok()?;
    let bin = postgres.parent()?;
    bin.join("initdb").is_file().then(|| bin.to_path_buf())
}

fn version(postgres: &Path) -> Option<u32> {
    let told = Command::new(postgres).arg("--version").output().ok()?;
    major(std::str::from_utf8(&told.stdout).ok()?)
}

/// The major version in the answer of `postgres --version`.
fn major(told: &str) -> Option<u32> {
    let number = told.trim().strip_prefix("postgres (PostgreSQL) ")?;
    let digits = number.split(|c: char| !c.is_ascii_digit()).next()?;
    digits.parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_major_version_is_read_from_what_the_program_says() {
        assert_eq!(major("postgres (PostgreSQL) 15.18 (Debian 15.18-0+deb12u1)\n"), Some(15));
        assert_eq!(major("postgres (PostgreSQL) 17beta1"), Some(17));
        assert_eq!(major("postgres (PostgreSQL) 9.6.24"), Some(9));
        assert_eq!(major("psql (PostgreSQL) 15.18"), None);
        assert_eq!(major(""), None);
    }

    #[test]
    fn without_programs_the_sentence_names_the_places_and_the_package() {
        let error = find(&["/nowhere/bin".into()]).expect_err("there is no such folder");
        let sentence = error.to_string();
        assert!(sentence.contains("/nowhere/bin"), "{sentence}");
        assert!(sentence.contains("apt-get install postgresql"), "{sentence}");
    }

    #[test]
    fn the_machine_has_the_programs_these_tests_need() {
        let found = find(&usual_places(&std::env::var("PATH").unwrap_or_default())).expect("PostgreSQL is installed");
        assert!(found.iter().all(|p| p.major >= OLDEST_MAJOR));
        assert!(found.is_sorted_by_key(|p| std::cmp::Reverse(p.major)), "the newest stands first");
    }
}
