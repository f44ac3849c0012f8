//! Text for a terminal: broken between words, hung under its first line.

use std::fmt::Write as _;

/// How wide text is set.
const WIDTH: usize = 96;

/// Adds a paragraph: `lead` before the first line, as much blank before the others.
pub fn paragraph(out: &mut String, lead: &str, text: &str) {
    let indent = lead.chars().count();
    let mut line = lead.to_owned();
    let mut column = indent;
    for word in text.split_whitespace() {
        let length = word.chars().count();
        if column > indent && column + 1 + length > WIDTH {
            push_line(out, &line);
            line = " ".repeat(indent);
            column = indent;
        }
        if column > indent {
            line.push(' ');
            column += 1;
        }
        line.push_str(word);
        column += length;
    }
    push_line(out, &line);
}

fn push_line(out: &mut String, line: &str) {
    // Writing to a string cannot fail.
    writeln!(out, "{}", line.trim_end()).ok();
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_break_between_words_and_hang_under_the_first() {
        let mut out = String::new();
        paragraph(&mut out, "To do: ", &"measure ".repeat(20));
        let lines: Vec<_> = out.lines().collect();
        assert_eq!(lines.len(), 2);
        assert!(lines[0].starts_with("To do: measure") && lines[0].len() <= WIDTH);
        assert!(lines[1].starts_with("       measure") && !lines[1].starts_with("        "));
    }

    #[test]
    fn a_word_wider_than_the_page_stands_alone_and_nothing_is_lost() {
        let mut out = String::new();
        let long = "x".repeat(200);
        paragraph(&mut out, "  ", &format!("a {long} b"));
        assert_eq!(out, format!("  a\n  {long}\n  b\n"));
    }
}
