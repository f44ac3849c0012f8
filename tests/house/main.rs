//! House rules that the compiler does not know: which room may use which, what the pure rooms must
//! not touch, and how long a file may grow.

use std::fs;
use std::path::{Path, PathBuf};

/// The rooms from the ground up. A file uses only rooms that stand before its own.
const ROOMS: [&str; 15] = [
    "quantity", "calc", "job", "rules", "plan", "sums", "picture", "ticket", "store", "service", "web", "postgres",
    "settings", "demo", "command",
];

/// Rooms that only compute: same input, same answer, on any machine, at any time.
const PURE: [&str; 8] = ["quantity", "calc", "job", "rules", "plan", "sums", "picture", "ticket"];

/// What would make a pure room depend on the moment or the machine.
const IMPURE: [&str; 12] = [
    "tokio",
    "sqlx",
    "axum",
    "async fn",
    "std::env",
    "std::fs",
    "std::net",
    "std::process",
    "SystemTime",
    "Instant::now",
    "Timestamp::now",
    "Zoned::now",
];

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn files_under(folder: &Path, ending: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut folders = vec![folder.to_path_buf()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).into_iter().flatten().flatten() {
            let path = entry.path();
            if path.is_dir() {
                if path.file_name().is_some_and(|name| name != "vendor" && name != "target") {
                    folders.push(path);
                }
            } else if path.to_string_lossy().ends_with(ending) {
                found.push(path);
            }
        }
    }
    found.sort();
    found
}

/// `src/rules/known.rs` and `src/settings.rs` stand in the rooms `rules` and `settings`.
fn room_of(path: &Path) -> Option<String> {
    let inside = path.strip_prefix(root().join("src")).ok()?;
    let first = inside.components().next()?.as_os_str().to_string_lossy().into_owned();
    Some(first.trim_end_matches(".rs").to_owned())
}

/// The rooms a source text names as `crate::room`, with the line.
fn rooms_used(text: &str) -> Vec<(usize, String)> {
    let mut used = Vec::new();
    for (number, line) in text.lines().enumerate() {
        if line.trim_start().starts_with("//") {
            continue;
        }
        for (at, _) in line.match_indices("crate::") {
            let rest = &line[at + "crate::".len()..];
            let names: Vec<&str> = match rest.strip_prefix('{') {
                Some(list) => list.split(',').collect(),
                None => vec![rest],
            };
            for name in names {
                let name: String = name.trim().chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
                used.push((number + 1, name));
            }
        }
    }
    used
}

#[test]
fn every_room_uses_only_rooms_above_its_own() {
    let mut broken = Vec::new();
    for path in files_under(&root().join("src"), ".rs") {
        let room = room_of(&path).expect("a file under src");
        let Some(own) = ROOMS.iter().position(|name| *name == room) else {
            assert!(["lib", "main"].contains(&room.as_str()), "{} stands in no known room", path.display());
            continue;
        };
        for (line, name) in rooms_used(&fs::read_to_string(&path).expect("a source file")) {
            if ROOMS.iter().position(|known| *known == name).is_some_and(|other| other > own) {
                broken.push(format!("{}:{line}: {room} must not know {name}", path.display()));
            }
        }
    }
    assert!(broken.is_empty(), "{}", broken.join("\n"));
}

#[test]
fn pure_rooms_touch_no_clock_no_wire_no_disk() {
    let mut broken = Vec::new();
    for room in PURE {
        for path in files_under(&root().join("src").join(room), ".rs") {
            let text = fs::read_to_string(&path).expect("a source file");
            for (number, line) in text.lines().enumerate().filter(|(_, line)| !line.trim_start().starts_with("//")) {
                for word in IMPURE.iter().filter(|word| line.contains(**word)) {
                    broken.push(format!("{}:{}: {word}", path.display(), number + 1));
                }
            }
        }
    }
    assert!(broken.is_empty(), "{}", broken.join("\n"));
}

#[test]
fn no_file_outgrows_one_idea() {
    let mut long = Vec::new();
    for (folder, ending) in
        [("src", ".rs"), ("tests", ".rs"), ("static", ".js"), ("static", ".css"), ("templates", ".html")]
    {
        for path in files_under(&root().join(folder), ending) {
            let lines = fs::read_to_string(&path).expect("a text file").lines().count();
            if lines > 400 {
                long.push(format!("{}: {lines} lines", path.display()));
            }
        }
    }
    assert!(long.is_empty(), "{}", long.join("\n"));
}

#[test]
fn no_page_reaches_outside_the_shop() {
    let mut found = Vec::new();
    for (folder, ending) in [("templates", ".html"), ("static", ".js"), ("static", ".css")] {
        for path in files_under(&root().join(folder), ending) {
            let text = fs::read_to_string(&path).expect("a text file");
            for (number, line) in text.lines().enumerate() {
                let names_a_host = line.contains("http://") || line.contains("https://") || line.contains("\"//");
                let only_a_namespace = line.contains("http://www.w3.org/");
                if names_a_host && !only_a_namespace {
                    found.push(format!("{}:{}: {}", path.display(), number + 1, line.trim()));
                }
            }
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn pages_carry_no_script_or_style_of_their_own() {
    let mut found = Vec::new();
    for path in files_under(&root().join("templates"), ".html") {
        let text = fs::read_to_string(&path).expect("a template");
        for (number, line) in text.lines().enumerate() {
            let inline_script = line.contains("<script") && !line.contains("src=");
            let inline_handler =
                [" onclick=", " onchange=", " onsubmit=", " onload="].iter().any(|word| line.contains(word));
            if inline_script || inline_handler || line.contains("<style") || line.contains(" style=") {
                found.push(format!("{}:{}: {}", path.display(), number + 1, line.trim()));
            }
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn statements_name_their_columns_and_their_shop() {
    let mut found = Vec::new();
    for (folder, ending) in [("src", ".rs"), ("migrations", ".sql")] {
        for path in files_under(&root().join(folder), ending) {
            let text = fs::read_to_string(&path).expect("a source file").to_lowercase();
            if text.contains("select *") || text.contains("returning *") {
                found.push(path.display().to_string());
            }
        }
    }
    assert!(found.is_empty(), "these take whatever columns come: {}", found.join(", "));
}

/// The reader of `use` lines is itself checked, or the edge test could pass by seeing nothing.
#[test]
fn the_edge_reader_sees_plain_and_braced_imports() {
    let text = "use crate::web::Page;\nuse crate::{store, job::Job};\n// crate::service is only talked about\n";
    let seen: Vec<String> = rooms_used(text).into_iter().map(|(_, name)| name).collect();
    assert_eq!(seen, ["web", "store", "job"]);
    assert!(files_under(&root().join("src"), ".rs").len() > 10, "the walk finds the sources");
}
