//! The sources of the rules: every chapter registered, no number hidden in a condition.

use std::fs;
use std::path::{Path, PathBuf};

fn chapters() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/rules/families");
    let files = fs::read_dir(folder).expect("the chapters").map(|entry| entry.expect("an entry").path());
    files.filter(|path| path.file_name().is_some_and(|name| name != "mod.rs")).collect()
}

#[test]
fn every_file_of_rules_is_a_chapter_of_the_book() {
    let mut files: Vec<_> =
        chapters().iter().map(|path| path.file_stem().unwrap_or_default().to_string_lossy().into_owned()).collect();
    let mut registered: Vec<_> = endplay::rules::chapters().iter().map(|chapter| chapter.file.to_owned()).collect();
    files.sort();
    registered.sort();
    assert_eq!(files, registered);
}

/// The text without comments and without what stands in quotes.
fn bare(text: &str) -> String {
    let mut bare = String::new();
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        match c {
            '/' if chars.peek() == Some(&'/') => {
                while chars.next().is_some_and(|c| c != '\n') {}
                bare.push('\n');
            }
            '"' => {
                while let Some(c) = chars.next().filter(|c| *c != '"') {
                    if c == '\\' {
                        chars.next();
                    }
                }
            }
            other => bare.push(other),
        }
    }
    bare
}

/// Everything but the examples: what is left may hold no number.
fn conditions(text: &str) -> String {
    let mut kept = String::new();
    let mut skipping = false;
    for line in bare(text).lines() {
        let trimmed = line.trim_start();
        let indent = line.len() - trimmed.len();
        if trimmed.starts_with("fires:") || trimmed.starts_with("clears:") {
            skipping = true;
        } else if indent <= 4 {
            skipping = false;
        }
        if !skipping {
            kept.push_str(line);
            kept.push('\n');
        }
    }
    kept
}

/// Figures that are not part of a name.
fn figures(text: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut before = ' ';
    for (at, c) in text.char_indices() {
        if c.is_ascii_digit() && !before.is_alphanumeric() && !"_.".contains(before) {
            let in_number = |c: &char| c.is_alphanumeric() || "_.".contains(*c);
            found.push(text[at..].chars().take_while(in_number).collect());
        }
        before = c;
    }
    found
}

#[test]
fn no_number_hides_in_a_condition() {
    for path in chapters() {
        let text = fs::read_to_string(&path).expect("a source file");
        let kept = conditions(&text);
        assert!(kept.contains("when:"), "{}", path.display());
        assert_eq!(figures(&kept), Vec::<String>::new(), "{}", path.display());
    }
}

/// The scan is itself checked, or it could pass by seeing nothing.
#[test]
fn the_scan_sees_a_number_in_a_condition_and_not_in_an_example() {
    let text = "    \"XYZ-01\" Stop Intake {\n        title: \"7 holes\",\n        when: |j, _, l| j.a.b.above(SPRAG_34) // 5\n            \
                & j.c.below(0.25),\n        fires: |j| {\n            j.a.b.set(9);\n        },\n        \
                clears: |j| j.a.b.set(8),\n    }\n";
    assert_eq!(figures(&conditions(text)), ["0.25"]);
}
