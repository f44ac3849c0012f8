//! Jobs out of a stream, one at a time, none of them longer than a job can be.

use std::io::{self, BufRead, Read};

/// Longest text taken for one job. A job with every fact written down has about 12,000 bytes.
pub const LONGEST: usize = 1024 * 1024;

/// The text of one job, as bytes that may not even be text.
#[derive(Debug, PartialEq)]
pub enum Text {
    /// All of it.
    Whole(Vec<u8>),
    /// It went on past [`LONGEST`] and was passed over.
    TooLong,
}

/// Where the text of a job begins in its file, and the text.
#[derive(Debug, PartialEq)]
pub struct Piece {
    /// Its first line, counted from 1.
    pub line: usize,
    /// What stands there.
    pub text: Text,
}

/// Jobs one a line; lines with nothing on them are passed over.
pub struct Lines<R> {
    reader: R,
    line: usize,
}

impl<R: BufRead> Lines<R> {
    /// Starts at the first line.
    pub fn new(reader: R) -> Self {
        Self { reader, line: 0 }
    }

    /// The next line with something on it; none at the end.
    ///
    /// # Errors
    /// When the stream cannot be read on.
    pub fn next_piece(&mut self) -> io::Result<Option<Piece>> {
        loop {
            let mut bytes = Vec::new();
            let read = (&mut self.reader).take(LONGEST as u64 + 1).read_until(b'\n', &mut bytes)?;
            if read == 0 {
                return Ok(None);
            }
            self.line += 1;
            let ended = bytes.last() == Some(&b'\n');
            if !ended && read > LONGEST {
                self.reader.skip_until(b'\n')?;
                return Ok(Some(Piece { line: self.line, text: Text::TooLong }));
            }
            if !bytes.trim_ascii().is_empty() {
                return Ok(Some(Piece { line: self.line, text: Text::Whole(bytes) }));
            }
        }
    }

    /// Everything from here to the end of the stream, after a beginning already taken from it.
    ///
    /// # Errors
    /// When the stream cannot be read on.
    pub fn rest_after(self, beginning: Piece) -> io::Result<Piece> {
        let Piece { line, text: Text::Whole(mut bytes) } = beginning else { return Ok(beginning) };
        let room = (LONGEST + 1).saturating_sub(bytes.len());
        self.reader.take(room as u64).read_to_end(&mut bytes)?;
        let text = if bytes.len() > LONGEST { Text::TooLong } else { Text::Whole(bytes) };
        Ok(Piece { line, text })
    }
}

/// Is this the beginning of a JSON text that goes on, rather than one that is whole or broken?
pub fn goes_on(piece: &Piece) -> bool {
    match &piece.text {
        Text::Whole(bytes) => {
            let bytes = bytes.strip_prefix("\u{feff}".as_bytes()).unwrap_or(bytes);
            serde_json::from_slice::<serde::de::IgnoredAny>(bytes).is_err_and(|error| error.is_eof())
        }
        Text::TooLong => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pieces(text: &[u8]) -> Vec<Piece> {
        let mut lines = Lines::new(text);
        std::iter::from_fn(|| lines.next_piece().unwrap()).collect()
    }

    fn whole(line: usize, text: &str) -> Piece {
        Piece { line, text: Text::Whole(text.as_bytes().to_vec()) }
    }

    #[test]
    fn blank_lines_are_passed_over_and_still_counted() {
        assert_eq!(pieces(b"{}\n\n  \r\n{ }"), [whole(1, "{}\n"), whole(4, "{ }")]);
        assert_eq!(pieces(b""), []);
        assert_eq!(pieces(b"\n\n"), []);
    }

    #[test]
    fn a_line_beyond_all_measure_is_passed_over_and_the_next_is_read() {
        let mut text = vec![b'x'; 3 * LONGEST];
        text.extend_from_slice(b"\n{}\n");
        assert_eq!(pieces(&text), [Piece { line: 1, text: Text::TooLong }, whole(2, "{}\n")]);
    }

    #[test]
    fn a_line_of_the_longest_length_is_still_read() {
        let mut text = vec![b' '; LONGEST - 1];
        text.push(b'1');
        assert!(matches!(pieces(&text)[..], [Piece { line: 1, text: Text::Whole(_) }]));
    }

    #[test]
    fn an_open_brace_goes_on_and_a_broken_or_whole_text_does_not() {
        assert!(goes_on(&whole(1, "{\n")));
        assert!(goes_on(&whole(1, "{\"bell\": {\n")));
        assert!(!goes_on(&whole(1, "{}\n")));
        assert!(!goes_on(&whole(1, "{]\n")));
    }

    #[test]
    fn the_rest_of_a_stream_joins_its_beginning() {
        let mut lines = Lines::new(&b"{\n\"bell\": null\n}\n"[..]);
        let beginning = lines.next_piece().unwrap().unwrap();
        assert_eq!(lines.rest_after(beginning).unwrap(), whole(1, "{\n\"bell\": null\n}\n"));
    }
}
